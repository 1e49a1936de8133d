"""A key as a booklet: the pages lie so that the sheets, laid on each other and folded, read in order."""

from __future__ import annotations

import pytest
from pypdf import PdfReader

from keytool.card import card
from keytool.card.form import FAR_LEAD, form_named
from keytool.card.impose import page_pairs
from keytool.card.papers import PAPERS
from tests.card.pdf_marks import pages

BY_HAND = {4: [(4, 1), (2, 3)], 8: [(8, 1), (2, 7), (6, 3), (4, 5)], 12: [(12, 1), (2, 11), (10, 3), (4, 9), (8, 5), (6, 7)]}
"""Left and right page of each side, the outer sheet first: written on sheets of paper that were folded and numbered by hand."""


@pytest.mark.parametrize("count", BY_HAND)
def test_pages_lie_as_on_sheets_folded_by_hand(count: int) -> None:
    assert [(left + 1, right + 1) for left, right in page_pairs(count)] == BY_HAND[count]


def test_a_page_is_half_the_sheet_and_the_two_meet_at_the_fold() -> None:
    form = form_named("booklet", PAPERS["A4"].size(False))
    assert form.sheet == (297, 210) and form.face == (148.5, 210), "an A4 sheet folded in the middle gives A5, to half a millimetre"
    assert [spot.x for spot in form.spots] == [0, 148.5, 0, 148.5]


def test_every_page_of_a_key_is_there_once_and_the_sheets_are_whole(library) -> None:
    import io

    data = card(library, ["naked-amoebae"], "A4", form="booklet")
    sides = pages(data)
    assert len(sides) % 2 == 0
    box = PdfReader(io.BytesIO(data)).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx((297 / 25.4 * 72, 210 / 25.4 * 72), abs=0.1)
    words = " ".join(side.words for side in sides)
    total = next(n for n in range(1, 60) if f"page {n} of {n}" in words)
    assert all(words.count(f"page {n} of {total}") == 1 for n in range(1, total + 1))
    assert -(-total // 4) * 2 == len(sides)


def test_what_lies_beside_the_microscope_has_leads_that_are_read_at_arms_length() -> None:
    assert form_named("sheet", PAPERS["A4"].size(True)).least_lead == FAR_LEAD == 9.5
    assert form_named("quarters", PAPERS["A4"].size(True)).least_lead < FAR_LEAD
