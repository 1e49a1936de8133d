"""Cards of look-alike sets and of entries: the test first, drawings at one scale, a table of the same characters."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from pdf_marks import pages

from keytool.card import NothingAsked, NotInLibrary, card
from keytool.card.comparison import entries_content, look_alike_content
from keytool.card.couplet import Style
from keytool.card.ink import Picture, Rule, Words, marks
from keytool.card.model import Compared, Row
from keytool.card.table import UNLIKE, compared_block, row_block
from keytool.card.typeface import Sizes
from keytool.library.wording import mark, plain, showing_words

SET = "knobs-plain-or-quill"


def squeezed(text: str) -> str:
    return re.sub(r"[\s\u00a0]", "", text)


def words_of(data: bytes) -> str:
    return squeezed(" ".join(page.words for page in pages(data)))


@pytest.mark.parametrize("form", ["sheet", "halves", "quarters", "pocket"])
def test_a_set_says_the_test_first_then_shows_and_compares(library, form: str) -> None:
    these = library.look_alikes[SET]
    words = words_of(card(library, [], "A4", look_alikes=[SET], form=form))
    first = words.index(squeezed("Do this first" + plain(library, these.decisive.text) + mark(library, these.decisive.basis)))
    names = words.index(squeezed(library.entries[these.entries[0]].name), first + 1)
    assert first < names
    # A sheet of cards to cut is printed front by front and then back by back, so only the others are read in order.
    in_order = form in {"sheet", "pocket"}
    at = names
    for id in these.characters:
        at = words.find(squeezed(library.characters[id].name), at if in_order else 0)
        assert at >= 0, f"{id} is missing or out of order"
        for entry in these.entries:
            statement = library.entries[entry].statements.get(id)
            said = showing_words(library, statement) + mark(library, statement.basis) if statement else "not stated"
            at = words.find(squeezed(said), at)
            assert at >= 0, f"{id} of {entry}"
    for id in {each for entry in these.entries for each in library.entries[entry].cautions}:
        assert squeezed(plain(library, library.cautions[id].brief)) in words


def test_sets_stand_on_one_side_of_a_sheet(library) -> None:
    """Every fourth set, and all of six: the table is better seen whole."""
    tried = [id for n, (id, these) in enumerate(library.look_alikes.items()) if n % 4 == 0 or len(these.entries) == 6]
    assert not [id for id in tried if len(pages(card(library, [], "A4", look_alikes=[id]))) > 1]


def heads(library):
    for these in library.look_alikes.values():
        content = look_alike_content(library, these)
        yield these, next(block for block in content.blocks if isinstance(block, Compared))


@pytest.mark.parametrize("width", [196.0, 283.0, 86.0, 64.0])
def test_drawings_share_one_scale_with_one_true_bar_or_each_has_its_own(library, width: float) -> None:
    kinds = set()
    for these, head in heads(library):
        block = compared_block(head, width, Style(Sizes(8.0)), 12.0)
        assert block, these.id
        made = list(marks(block.pieces))
        pictures = [each for each in made if isinstance(each, Picture)]
        labels = [
            (one, after)
            for one, after in pairwise(made)
            if isinstance(one, Words) and isinstance(after, Rule) and re.fullmatch(r"[\d.]+ (µm|mm)", one.text)
        ]
        kinds.add(head.one_scale)
        if head.one_scale:
            assert len({picture.mm_per_um for picture in pictures}) <= 1 and len(labels) == min(1, len(pictures))
        else:
            assert len(labels) == len(pictures)
        assert head.one_scale != any(isinstance(each, Words) and each.text.startswith(UNLIKE.split()[0]) for each in made)
        for (label, bar), picture in zip(labels, pictures, strict=False):
            number, unit = label.text.split()
            assert bar.x2 - bar.x == pytest.approx(float(number) * (1000 if unit == "mm" else 1) * picture.mm_per_um)
    assert kinds == {True, False}


@pytest.mark.parametrize("width", [196.0, 64.0])
def test_nothing_of_a_head_leaves_its_width_or_covers_its_neighbour(library, width: float) -> None:
    for these, head in heads(library):
        block = compared_block(head, width, Style(Sizes(8.0)), 12.0)
        assert block
        boxes = [
            (each.x, each.y, each.x + each.drawing.box.width * each.mm_per_um, each.y + each.drawing.box.height * each.mm_per_um)
            for each in marks(block.pieces)
            if isinstance(each, Picture)
        ]
        for number, (left, top, right, bottom) in enumerate(boxes):
            assert left >= -0.01 and right <= width + 0.01 and top >= 0 and bottom <= block.height + 0.01, these.id
            for other in boxes[number + 1 :]:
                assert right <= other[0] + 0.01 or bottom <= other[1] + 0.01, these.id


def test_a_row_too_narrow_for_columns_becomes_a_list_with_names(library) -> None:
    content = look_alike_content(library, library.look_alikes[SET])
    row = next(block for block in content.blocks if isinstance(block, Row))
    told = {
        width: " ".join(each.text for each in marks(row_block(row, width, Style(Sizes(8.0))).pieces) if isinstance(each, Words))
        for width in (196.0, 64.0)
    }
    assert all(f"{name}:" in told[64.0] and f"{name}:" not in told[196.0] for name in row.names)


def test_entries_are_told_apart_by_what_they_say_of_each_other_and_where_they_differ(library) -> None:
    one, other = library.entries["pratylenchus"], library.entries["aphelenchus"]
    words = words_of(card(library, [], "A4", entries=[one.id, other.id]))
    says = [each for here, there in ((one, other), (other, one)) for each in here.mistaken_for if each.entry == there.id]
    assert squeezed("Do this first") in words and any(squeezed(plain(library, each.by)) in words for each in says)
    rows = [block for block in entries_content(library, [one, other], {}).blocks if isinstance(block, Row)]
    assert rows[0].cells[0][0].text == one.summary
    for row in rows[1:]:
        shown = ["".join(run.text for run in cell if not run.raised) for cell in row.cells]
        assert shown[0] != shown[1] and "not stated" not in shown


def test_a_single_entry_shows_all_it_states_and_what_it_is_mistaken_for(library) -> None:
    entry = library.entries["pratylenchus"]
    words = words_of(card(library, [], "A4", entries=[entry.id], site_address="https://tarn-end.example"))
    for id, statement in entry.statements.items():
        assert squeezed(library.characters[id].name) in words
        assert squeezed(showing_words(library, statement) + mark(library, statement.basis)) in words
    for mistake in entry.mistaken_for:
        assert squeezed(f"Not {library.entries[mistake.entry].name}: {plain(library, mistake.by)}") in words


def test_keys_sets_and_entries_can_stand_on_one_card(library) -> None:
    data = card(library, ["naked-amoebae"], "A4", look_alikes=[SET], entries=["plectus"])
    words = " ".join(page.words for page in pages(data))
    titles = ["Naked amoebae", library.look_alikes[SET].title, library.entries["plectus"].name]
    at = [words.find(each) for each in titles]
    assert -1 not in at and at == sorted(at)
    assert f"side {len(pages(data))} of {len(pages(data))}" in pages(data)[-1].words


def test_what_is_not_there_is_named_and_nothing_is_no_card(library) -> None:
    with pytest.raises(NotInLibrary, match=r"no look-alike set 'knobs'.*There are: "):
        card(library, [], "A4", look_alikes=["knobs"])
    with pytest.raises(NotInLibrary, match="no entry 'yeti'"):
        card(library, [], "A4", entries=["yeti"])
    with pytest.raises(NothingAsked, match="which key"):
        card(library, [], "A4")
