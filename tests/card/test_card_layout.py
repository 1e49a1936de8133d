"""Measuring before drawing: lines, columns, plates, and what happens when nothing fits."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pdf_marks import pages

from keytool.card import DoesNotFit, card
from keytool.card.content import content
from keytool.card.couplet import UNLIKE, Style, couplet_block
from keytool.card.flow import BLOCK_GAP, PLATES, columns
from keytool.card.ink import Block, Picture, Rule, Words, marks
from keytool.card.model import CardCouplet
from keytool.card.qr import MODULE_MM, qr_block
from keytool.card.typeface import SMALLEST_LEAD, Sizes, missing, width
from keytool.card.words import Run, longest_word, row_width, set_lines

words = st.lists(st.text("abcdefghij", min_size=1, max_size=12), min_size=1, max_size=40)


@given(words, st.floats(20, 120), st.booleans())
def test_lines_hold_every_word_once_and_keep_within_the_width(made, room, even) -> None:
    text = (Run(" ".join(made)),)
    lines = set_lines(text, 9.0, max(room, longest_word(text, 9.0)), even)
    assert " ".join(run.text for row in lines.rows for run in row).split() == made
    assert all(row_width(row, 9.0) <= lines.room + 1e-6 for row in lines.rows)
    assert lines.height == pytest.approx(len(lines.rows) * 9 * 1.2 * 25.4 / 72)


def test_a_raised_mark_stays_with_its_figure() -> None:
    text = (Run("at "), Run("14\u00a0µm"), Run("~", raised=True), Run(" or more of it"))
    for room in range(12, 60):
        rows = set_lines(text, 9.0, float(room), False).rows
        ended = ["".join(run.text for run in row) for row in rows]
        assert any("14\u00a0µm~" in row for row in ended)


def test_the_smallest_lead_is_readable() -> None:
    assert SMALLEST_LEAD >= 8
    for lead in (SMALLEST_LEAD, 10, 12.5):
        sizes = Sizes(lead)
        assert sizes.question > sizes.lead and min(sizes.small, sizes.group, sizes.fine) >= 7


def test_the_typeface_has_the_marks_and_the_trade_letters() -> None:
    assert missing("●◐○◌=→⚠µ×·≥½°é") == ""
    assert missing("a釦") == "釦"
    assert width("ii", False, 9) == pytest.approx(2 * width("i", False, 9))


def blocks_of(heights: list[float]):
    """Blocks that grow with their plate."""
    return lambda number, plate: Block(heights[number] + plate, (Words(0, 1, str(number), 9),))


@given(st.lists(st.floats(5, 40), min_size=1, max_size=12), st.integers(1, 6))
def test_columns_hold_every_block_in_order_and_never_overflow(heights, most) -> None:
    made = columns(blocks_of(heights), len(heights), [120.0] * most)
    if made is None:
        # No more than the tightest filling can hold: with that many columns the smallest plates do not go in either.
        count, left = 1, -1.0
        for height in heights:
            need = height + PLATES[0]
            if left < 0:
                left = 120 - need
            elif left >= need + BLOCK_GAP:
                left -= need + BLOCK_GAP
            else:
                count, left = count + 1, 120 - need
        assert count > most
        return
    assert len(made) <= most
    assert [mark.text for column in made for mark in marks(column.pieces)] == [str(number) for number in range(len(heights))]
    assert all(column.filled <= 120 + 1e-6 for column in made)
    for column in made:
        tops = [mark.y for mark in marks(column.pieces)]
        assert all(lower > upper for upper, lower in pairwise(tops))


def couplets_of(library, key: str) -> list[CardCouplet]:
    return [block for block in content(library, library.keys[key]).blocks if isinstance(block, CardCouplet)]


@pytest.fixture(scope="session")
def real_couplets(library, real_key: str) -> list[CardCouplet]:
    return couplets_of(library, real_key)


@pytest.mark.parametrize("wide", [60.0, 67.0, 91.0, 139.0])
@pytest.mark.parametrize("plate", [12.5, 20.0, 38.0])
def test_plates_of_a_couplet_share_one_scale_with_one_true_bar_or_each_has_its_own(real_couplets, wide: float, plate: float) -> None:
    for couplet in real_couplets:
        block = couplet_block(couplet, wide, Style(Sizes(9.0)), plate)
        assert block is not None
        made = list(marks(block.pieces))
        pictures = [mark for mark in made if isinstance(mark, Picture)]
        assert len(pictures) == sum(1 for lead in couplet.leads if lead.drawing)
        labels = [
            (mark, after)
            for mark, after in pairwise(made)
            if isinstance(mark, Words) and isinstance(after, Rule) and re.fullmatch(r"[\d.]+ (µm|mm)", mark.text)
        ]
        said = "".join(mark.text for mark in made if isinstance(mark, Words))
        assert (UNLIKE.replace(" ", "") in said.replace(" ", "")) != couplet.one_scale
        assert len(labels) == (min(1, len(pictures)) if couplet.one_scale else len(pictures))
        assert not couplet.one_scale or len({picture.mm_per_um for picture in pictures}) <= 1
        for (label, bar), picture in zip(labels, pictures, strict=False):
            number, unit = label.text.split()
            assert bar.x2 - bar.x == pytest.approx(float(number) * (1000 if unit == "mm" else 1) * picture.mm_per_um)


def test_no_plate_is_a_speck_unless_its_size_is_what_tells(library, real_key: str) -> None:
    small = []
    for couplet, asked in zip(couplets_of(library, real_key), library.keys[real_key].couplets.values(), strict=True):
        size_tells = any(library.characters[each].is_number for each in asked.characters)
        assert couplet.one_scale or not size_tells
        block = couplet_block(couplet, 91.0, Style(Sizes(9.0)), 20.0)
        for picture in (mark for mark in marks(block.pieces) if isinstance(mark, Picture)):
            box = picture.drawing.box
            if not size_tells and max(box.width, box.height) * picture.mm_per_um < 4.5:
                small.append(couplet.number)
    assert not small


@pytest.mark.parametrize("wide", [60.0, 91.0, 139.0])
def test_nothing_of_a_couplet_overlaps_or_leaves_its_column(real_couplets, wide: float) -> None:
    for couplet in real_couplets:
        block = couplet_block(couplet, wide, Style(Sizes(9.5)), 20.0)
        assert block is not None
        boxes = [box_of(mark) for mark in marks(block.pieces) if isinstance(mark, Words | Picture)]
        for left, top, right, bottom in boxes:
            assert -0.01 <= left <= right <= wide + 0.01 and -0.01 <= top <= bottom <= block.height + 0.01
        for number, one in enumerate(boxes):
            for other in boxes[number + 1 :]:
                assert not overlap(one, other), f"couplet {couplet.number}"


def box_of(mark: Words | Picture) -> tuple[float, float, float, float]:
    if isinstance(mark, Picture):
        return mark.x, mark.y, mark.x + mark.drawing.box.width * mark.mm_per_um, mark.y + mark.drawing.box.height * mark.mm_per_um
    high = mark.pt * 25.4 / 72
    hangs = 0.22 if set(mark.text) & set("gjpqy,;()µ/") else 0.02
    return mark.x, mark.y - 0.74 * high, mark.x + width(mark.text, mark.bold, mark.pt), mark.y + hangs * high


def overlap(one, other) -> bool:
    give = 0.05
    return one[0] < other[2] - give and other[0] < one[2] - give and one[1] < other[3] - give and other[1] < one[3] - give


def test_the_same_picture_twice_is_no_contrast(drawn_buttons) -> None:
    key = drawn_buttons.keys["buttons"]
    leads = key.couplets["holes"].leads
    same = {id: replace(lead, figure=leads["open"].figure) for id, lead in leads.items()}
    couplets = {**key.couplets, "holes": replace(key.couplets["holes"], leads=same)}
    library = replace(drawn_buttons, keys={"buttons": replace(key, couplets=couplets)})
    first = couplets_of(library, "buttons")[0]
    assert [lead.drawing for lead in first.leads] == [None, None]


def test_the_paper_is_turned_the_way_that_takes_fewer_sides(library) -> None:
    lying, upright, chosen = (len(pages(card(library, ["naked-amoebae"], "A5", landscape=way))) for way in (True, False, None))
    assert lying != upright
    assert chosen == min(lying, upright)


def test_what_cannot_fit_is_said_with_how_much_and_what_would_do(buttons) -> None:
    key = buttons.keys["buttons"]
    couplet = replace(key.couplets["holes"], look="turn the button until light falls through it, and " * 70)
    library = replace(buttons, keys={"buttons": replace(key, couplets={**key.couplets, "holes": couplet})})
    with pytest.raises(DoesNotFit) as caught:
        card(library, ["buttons"], "A5", landscape=True)
    message = str(caught.value)
    assert re.search(r"'Buttons' does not fit on A5 \(210 × 148 mm\) at readable sizes: couplet 1 is \d+ mm too high\.", message)
    assert re.search(r"It fits on: .*\bA4\b", message)


def test_what_fits_no_paper_says_so(buttons) -> None:
    key = buttons.keys["buttons"]
    leads = {id: replace(lead, text="light falls through it and " * 900) for id, lead in key.couplets["holes"].leads.items()}
    couplet = replace(key.couplets["holes"], leads=leads)
    library = replace(buttons, keys={"buttons": replace(key, couplets={**key.couplets, "holes": couplet})})
    with pytest.raises(DoesNotFit, match="fits on no paper"):
        card(library, ["buttons"], "A4")


def test_the_code_is_the_one_the_standard_gives() -> None:
    import segno

    address = "https://tarn-end.example/soil/keys/nematode-mouthparts.html"
    wanted = [list(row) for row in segno.make(address, error="m", micro=False, boost_error=False).matrix]
    block = qr_block(address)
    drawn = [[0] * len(wanted) for _ in wanted]
    for panel in marks(block.pieces):
        for x in range(round(panel.x / MODULE_MM), round((panel.x + panel.width) / MODULE_MM)):
            drawn[round(panel.y / MODULE_MM)][x] += 1
    assert drawn == wanted
    assert MODULE_MM >= 0.4
