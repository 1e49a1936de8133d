"""The short card: one sheet, everything met most at its true size, nothing over anything else, every word readable."""

from __future__ import annotations

import re
from math import hypot

import pytest

from keytool.card import CardError, short_card
from keytool.card.field_layout import Thing, laid
from keytool.card.ink import Picture, Words, marks
from keytool.card.short_card import SIZES
from keytool.figures.field import box_of
from keytool.figures.whole_body import whole_of
from tests.card.pdf_marks import pages


@pytest.mark.parametrize(
    ("paper", "form", "sides"), [("A4", "sheet", 2), ("Letter", "sheet", 2), ("A4", "pocket", 1), ("Letter", "pocket", 1)]
)
def test_it_is_one_sheet_and_says_everything_that_is_met(library, paper: str, form: str, sides: int) -> None:
    made = pages(short_card(library, paper, form=form).pdf())
    assert len(made) == sides
    words = re.sub(r"\s", "", "".join(page.words for page in made))
    for met in library.short_card.met:
        assert re.sub(r"\s", "", library.entries[met.entry].name) in words
    for caution in library.short_card.cautions:
        assert re.sub(r"\s", "", library.cautions[caution].title) in words
    assert "check:thisbaris50mm" in words and "Whichkeygoeson" in words


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_no_line_of_the_pocket_lies_on_another(library, paper: str) -> None:
    (page,) = pages(short_card(library, paper, form="pocket").pdf())
    boxes = [(text.size, text.box) for text in page.texts if text.width > 1]
    for number, (size, (left, top, right, bottom)) in enumerate(boxes):
        for other, (left_2, top_2, right_2, bottom_2) in boxes[number + 1 :]:
            across, down = min(right, right_2) - max(left, left_2), min(bottom, bottom_2) - max(top, top_2)
            assert across <= 0.5 or down <= 0.15 * min(size, other), (left, top, left_2, top_2)


def test_the_ring_and_all_in_it_are_at_one_scale(library) -> None:
    """On paper the ring is as wide as the field is in µm, times one scale; a 25 mm² photograph of it would show the same."""
    card = short_card(library, "A4", field_diameters={40: 0.5})
    for side, across in zip(card.sides, (5000.0, 500.0), strict=True):
        (picture,) = [each for each in side if isinstance(each, Picture)]
        ring = next(shape for shape in reversed(picture.drawing.shapes) if shape.part == "field")
        width = box_of((ring,)).width
        assert width == pytest.approx(across, rel=0.01)
        assert 120 < width * picture.mm_per_um < 200


def test_names_and_looks_can_be_read_at_arms_length(library) -> None:
    """At 60 cm an x-height of 0.547 em gives 10 minutes of arc or more from about 9.5 pt: 2 * atan(h / 2d)."""
    card = short_card(library, "A4")
    bold = [each.pt for side in card.sides for each in side if isinstance(each, Words) and each.bold]
    assert max(bold) >= 17 and SIZES[-1][0] >= 10
    assert sum(pt >= 9.5 for pt in bold) >= len(library.short_card.met)


def test_nothing_lies_outside_the_ring_and_little_over_another(library) -> None:
    met = [each for each in library.short_card.met if each.power == 400]
    drawings = [whole_of(library.entries[each.draw], 450) for each in met]
    things = [Thing(drawing, n % 2 == 0, 40.0 * (n - 5)) for n, drawing in enumerate(drawings)]
    found = laid(things, 450, 0.5)
    assert all(hypot(x, y) <= 225 for x, y in found.points)


def test_its_own_words_are_refused_where_it_has_none(library, buttons) -> None:
    with pytest.raises(CardError, match="no short card"):
        short_card(buttons, "A4")
    with pytest.raises(CardError, match="comes as sheet or pocket"):
        short_card(library, "A4", form="quarters")
    with pytest.raises(CardError, match="does not fit"):
        short_card(library, "A5")


def test_the_same_library_gives_the_same_bytes(library) -> None:
    assert short_card(library, "A4").pdf() == short_card(library, "A4").pdf()
    assert all(list(marks(side)) for side in short_card(library, "A4").sides)
