"""Cards to cut and pockets to fold: the arithmetic of the sheet, marks, and sides that register."""

from __future__ import annotations

import re
from io import BytesIO
from itertools import pairwise

import pytest
from pdf_marks import pages
from pypdf import PdfReader

from keytool.card import PAPERS, NoSuchForm, card
from keytool.card.compact_header import CHECK_WORDS
from keytool.card.form import CLEAR_MM, CUT_MARGIN_MM, FOLD_MARGIN_MM, FORMS, SEAL_MM, form_named
from keytool.card.impose import CUT_WORDS, FOLD_WORDS, HAIR, folds, sides
from keytool.card.ink import Rule, Words, marks

ADDRESS = "https://tarn-end.example/soil"
WAYS = [(paper, lying) for paper in ("A4", "Letter") for lying in (True, False)]


@pytest.mark.parametrize(("paper", "lying"), WAYS)
def test_a_panel_is_half_the_sheet_one_way_and_a_quarter_the_other(paper: str, lying: bool) -> None:
    sheet = PAPERS[paper].size(lying)
    form = form_named("pocket", sheet)
    assert sorted(form.face) == pytest.approx(sorted((PAPERS[paper].width / 2, PAPERS[paper].height / 4)))
    assert len(form.spots) == 8 and {spot.side for spot in form.spots} == {0}
    covered = sorted((round(spot.x / form.face[0]), round(spot.y / form.face[1])) for spot in form.spots)
    across, down = (4, 2) if lying else (2, 4)
    assert covered == sorted((x, y) for x in range(across) for y in range(down))


@pytest.mark.parametrize(("paper", "lying"), WAYS)
def test_the_folded_strip_reads_upright_in_order_on_both_faces(paper: str, lying: bool) -> None:
    """Fold the sheet in the mind: along the long middle, print outside, and turn the strip over like a page."""
    sheet = PAPERS[paper].size(lying)
    form = form_named("pocket", sheet)
    front, back = [], []
    for number, spot in enumerate(form.spots, 1):
        centre = (spot.x + form.face[0] / 2, spot.y + form.face[1] / 2)
        if lying:
            # The lower half swings back about the level middle and comes to lie behind the upper, standing on its head unless
            # it was printed so; turned over like a page, right and left change places.
            if centre[1] < sheet[1] / 2:
                front.append((centre[0], number, spot.turned))
            else:
                back.append((sheet[0] - centre[0], number, not spot.turned))
        elif centre[0] < sheet[0] / 2:
            front.append((centre[1], number, spot.turned))
        else:
            back.append((centre[1], number, spot.turned))
    assert [(number, turned) for _, number, turned in sorted(front)] == [(n, False) for n in (1, 2, 3, 4)]
    assert [(number, turned) for _, number, turned in sorted(back)] == [(n, False) for n in (5, 6, 7, 8)]


@pytest.fixture(scope="module", params=WAYS, ids=lambda way: f"{way[0]}-{'lying' if way[1] else 'upright'}")
def pocket(request, library):
    paper, lying = request.param
    data = card(library, ["naked-amoebae"], paper, form="pocket", landscape=lying, site_address=ADDRESS)
    return form_named("pocket", PAPERS[paper].size(lying)), data


def test_nothing_lies_across_or_near_a_fold_but_its_marks(pocket) -> None:
    form, data = pocket
    upright, level = folds(form)
    assert len(upright) + len(level) == 4
    near = FOLD_MARGIN_MM - 0.01
    for page in pages(data):
        spans = [(min(x), max(x), min(y), max(y)) for path in page.paths for x, y in [tuple(zip(*path, strict=True))]]
        spans += [(left, right, top, bottom) for left, top, right, bottom in (text.box for text in page.texts)]
        on_folds = 0
        for left, right, top, bottom in spans:
            if any(left == pytest.approx(x, abs=0.01) == right for x in upright) or any(
                top == pytest.approx(y, abs=0.01) == bottom for y in level
            ):
                on_folds += 1
                continue
            assert all(right <= x - near or left >= x + near for x in upright)
            assert all(bottom <= y - near or top >= y + near for y in level)
            assert left >= CLEAR_MM - 0.01 and right <= page.width - CLEAR_MM + 0.01
            assert top >= CLEAR_MM - 0.01 and bottom <= page.height - CLEAR_MM + 0.01
        ends = 3 * 2 * 4
        assert on_folds == ends + 3 * 3 * 2, "three dashes at both ends of four folds and on each arm of three crosses"


def test_a_pocket_says_how_to_fold_it_and_has_one_check_bar(pocket) -> None:
    form, data = pocket
    words = re.sub(r"\s+", " ", " ".join(page.words for page in pages(data)))
    assert FOLD_WORDS[form.sheet[0] > form.sheet[1]] in words
    assert words.count(CHECK_WORDS) == len(pages(data))
    bars = [line for page in pages(data) for line in page.lines if line.length == pytest.approx(50, abs=0.05) and line.weight > 0.5]
    assert len(bars) == len(pages(data))
    sheets = len(pages(data))
    places = [f"sheet {sheet} of {sheets} · panel {n}" for sheet in range(1, sheets + 1) for n in range(1, 9)]
    assert all(each in words for each in (places if sheets > 1 else [f"panel {n} of 8" for n in range(1, 9)]))


def test_panels_are_read_in_order(library) -> None:
    data = card(library, ["naked-amoebae"], "A4", form="pocket", landscape=True)
    at = [pages(data)[0].words.find(f"panel {n} of") for n in range(1, 9)]
    assert -1 not in at and at == sorted(at)


def marked_corners(page):
    """The corners of the cards on a page, where the lines of each pair of cut marks cross."""
    hairs = [line for line in page.lines if line.weight == pytest.approx(HAIR, abs=0.005) and line.length == pytest.approx(2.5, abs=0.01)]
    level = {(round(line.start[1], 2), round(min(line.start[0], line.end[0]), 2)) for line in hairs if line.start[1] == line.end[1]}
    upright = {(round(line.start[0], 2), round(min(line.start[1], line.end[1]), 2)) for line in hairs if line.start[0] == line.end[0]}
    return {x for x, _ in upright}, {y for y, _ in level}


CUTS = [(form, paper, lying) for form in ("halves", "quarters") for paper in ("A4", "Letter") for lying in (True, False)]


@pytest.fixture(scope="module", params=CUTS, ids=lambda cut: f"{cut[0]}-{cut[1]}-{'lying' if cut[2] else 'upright'}")
def cut_card(request, library):
    form, paper, lying = request.param
    data = card(library, ["naked-amoebae"], paper, form=form, landscape=lying, site_address=ADDRESS)
    return form_named(form, PAPERS[paper].size(lying)), data


def test_cut_marks_stand_at_every_corner_and_leave_room_for_film(cut_card) -> None:
    form, data = cut_card
    for page in pages(data):
        xs, ys = marked_corners(page)
        for spot in form.spots:
            assert any(x == pytest.approx(spot.x, abs=0.01) for x in xs)
            assert any(x == pytest.approx(spot.x + form.face[0], abs=0.01) for x in xs)
            assert any(y == pytest.approx(spot.y, abs=0.01) for y in ys)
            assert any(y == pytest.approx(spot.y + form.face[1], abs=0.01) for y in ys)
        for found, size in ((sorted(xs), page.width), (sorted(ys), page.height)):
            gaps = [after - before for before, after in pairwise([0.0, *found, size])]
            assert gaps[0] >= SEAL_MM and gaps[-1] >= SEAL_MM
            assert all(gap >= 2 * SEAL_MM - 0.01 for gap in gaps[2:-1:2])


def test_what_belongs_to_a_card_keeps_off_its_cut(cut_card) -> None:
    form, data = cut_card
    inner = CUT_MARGIN_MM - 0.01
    for number, page in enumerate(pages(data)):
        cards = [(s.x, s.y, s.x + form.face[0], s.y + form.face[1]) for s in form.spots if s.side == number % 2]
        below = max(bottom for *_, bottom in cards)
        for left, top, right, bottom in (text.box for text in page.texts):
            inside = [c for c in cards if c[0] + inner <= left and right <= c[2] - inner and c[1] + inner <= top and bottom <= c[3] - inner]
            assert inside or top >= below, "words lie in one card, or below them all"
            assert left >= CLEAR_MM and right <= page.width - CLEAR_MM and bottom <= page.height - CLEAR_MM


def test_the_words_for_cutting_fit_between_their_marks(cut_card) -> None:
    form, data = cut_card
    for page in pages(data):
        below = max(spot.y for spot in form.spots) + form.face[1]
        outside = [text for text in page.texts if text.y > below]
        assert len(outside) == len(CUT_WORDS), "each in one line"
        xs, _ = marked_corners(page)
        for text in outside:
            assert not any(text.x - 0.5 < x < text.x + text.width + 0.5 for x in xs)


@pytest.mark.parametrize("flip", ["long", "short"])
@pytest.mark.parametrize("lying", [True, False])
@pytest.mark.parametrize("form", ["halves", "quarters"])
def test_the_back_of_each_card_lies_behind_its_front(form: str, lying: bool, flip: str) -> None:
    width, height = PAPERS["A4"].size(lying)
    made = form_named(form, (width, height), flip)
    about_upright_edge = (flip == "long") != lying
    fronts, backs = made.spots[::2], made.spots[1::2]
    for front, back in zip(fronts, backs, strict=True):
        assert (front.side, back.side) == (0, 1)
        # Seen from the back, the sheet's left is its right (or, turned over its upper edge, its top is its bottom).
        behind = (width - back.x - made.face[0], back.y) if about_upright_edge else (back.x, height - back.y - made.face[1])
        assert behind == pytest.approx((front.x, front.y))


@pytest.mark.parametrize("flip", ["long", "short"])
def test_front_and_back_of_a_printed_card_are_sides_one_and_two(library, flip: str) -> None:
    data = card(library, ["first-look"], "A4", form="quarters", landscape=False, flip=flip)
    made = form_named("quarters", PAPERS["A4"].size(False), flip)
    front, back = PdfReader(BytesIO(data)).pages[:2]
    total = 2 * sum(spot.side == 0 for spot in made.spots)
    for number, spot in enumerate(made.spots):
        page = (front, back)[spot.side]
        assert f"side {number + 1} of {total}" in words_in(page, spot.x, spot.y, *made.face)
    assert f"turned over the {flip} edge" in front.extract_text().replace("\u00a0", " ")
    viewer = PdfReader(BytesIO(data)).trailer["/Root"]["/ViewerPreferences"]
    assert viewer["/Duplex"] == f"/DuplexFlip{flip.capitalize()}Edge"


@pytest.mark.parametrize("flip", [None, "long", "short"])
@pytest.mark.parametrize("lying", [True, False])
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", ["sheet", "halves", "quarters"])
def test_what_is_printed_at_a_spot_lies_behind_the_same_card_on_the_back(name: str, paper: str, lying: bool, flip: str | None) -> None:
    """Every form with two sides: a pin through the paper at any cut line of the front comes out on that cut line of the back."""
    width, height = PAPERS[paper].size(lying)
    made = form_named(name, (width, height), flip)
    upright_edge = flip is None or (flip == "long") == (height > width)

    def through(x: float, y: float) -> tuple[float, float]:
        return (width - x, y) if upright_edge else (x, height - y)

    cards = [[(Words(10.0, 8.0, f"front {n}", 9),), (Words(10.0, 8.0, f"back {n}", 9),)] for n in range(len(made.spots) // 2)]
    front, back = (list(marks(side)) for side in sides(made, cards, flip))
    at = [{mark.text: (mark.x, mark.y) for mark in side if isinstance(mark, Words)} for side in (front, back)]
    left, top = 10.0 + made.inset[0], 8.0 + made.inset[1]
    for n in range(len(cards)):
        fronts, backs = ((x - left, y - top) for x, y in (at[0][f"front {n}"], at[1][f"back {n}"]))
        corners = [(x, y) for x in (0, made.face[0]) for y in (0, made.face[1])]
        pierced = {tuple(round(each, 9) for each in through(fronts[0] + x, fronts[1] + y)) for x, y in corners}
        assert pierced == {(round(backs[0] + x, 9), round(backs[1] + y, 9)) for x, y in corners}
    cuts = [[mark for mark in side if isinstance(mark, Rule)] for side in (front, back)]
    lines = [{frozenset(((round(c.x, 6), round(c.y, 6)), (round(c.x2, 6), round(c.y2, 6)))) for c in each} for each in cuts]
    assert len(lines[0]) == (0 if name == "sheet" else 8 * len(cards))
    pinned = {frozenset(tuple(round(value, 6) for value in through(*end)) for end in line) for line in lines[0]}
    assert pinned == lines[1], "the cut marks of both sides cover each other"


def words_in(page, x: float, y: float, width: float, height: float) -> str:
    """The text that starts within a rectangle given in mm from the top left."""
    found = []
    mm, high = 25.4 / 72, float(page.mediabox.height)

    def visit(text, matrix, _text_matrix, *_):
        across, down = _text_matrix[4] * mm, (high - _text_matrix[5]) * mm
        if x <= across <= x + width and y <= down <= y + height:
            found.append(text)

    page.extract_text(visitor_text=visit)
    return "".join(found).replace("\u00a0", " ")


def test_a_single_small_card_fills_its_sheet_with_copies(buttons) -> None:
    page = pages(card(buttons, ["buttons"], "A4", form="quarters", landscape=False))[0]
    assert page.words.count(CHECK_WORDS) == 4
    assert len(re.findall(r"side 1 of \d", page.words)) == 4


def test_every_sheet_but_the_last_has_a_back_so_that_the_printer_keeps_step(library) -> None:
    made = pages(card(library, ["first-look", "naked-amoebae"], "A4", form="halves"))
    assert len(made) % 2 == 0


def test_every_form_says_what_it_is_and_unknown_ones_are_named(buttons) -> None:
    assert set(FORMS) == {"sheet", "halves", "quarters", "pocket", "booklet"}
    with pytest.raises(NoSuchForm, match=r"'roll'.*sheet, halves, quarters, pocket, booklet"):
        card(buttons, ["buttons"], "A4", form="roll")
