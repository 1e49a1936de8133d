"""A card in a language a third longer than English still fits its sheet, and nothing of what was gathered is left in English."""

from __future__ import annotations

import io

import pytest
from pypdf import PdfReader

from keytool.card.make import short_card
from keytool.library import Loaded
from tests.mock_language import english_left, in_mock, mocked


@pytest.mark.parametrize(("form", "sides"), [("sheet", 2), ("pocket", 1)])
def test_the_short_card_fits_in_a_longer_language(loaded: Loaded, form: str, sides: int) -> None:
    pages = PdfReader(io.BytesIO(short_card(in_mock(loaded.library), "A4", form=form).pdf())).pages
    text = " ".join(page.extract_text() for page in pages)
    assert len(pages) == sides
    assert mocked("My microscope") in " ".join(text.split())
    assert english_left(loaded, text) == []
