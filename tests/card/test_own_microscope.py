"""Your own field and scale reach every text of a card, and what no microscope has is refused."""

from __future__ import annotations

import re

import pytest

from keytool.card import Impossible, card, paper_named
from keytool.card.own_microscope import all_fields
from tests.card.pdf_marks import pages


def squeezed(data: bytes) -> str:
    return re.sub(r"\s", "", "".join(page.words for page in pages(data)))


def test_one_field_gives_the_others(library) -> None:
    """Field number 18.48 mm from 0.462 mm with the 40x objective; 18.48 / 4 = 4.62 mm."""
    assert all_fields(library, {40: 0.462}) == pytest.approx({4: 4.62, 40: 0.462})
    words = squeezed(card(library, ["first-look"], "A4", field_diameters={40: 0.462}))
    assert "Yourfieldofview:at40×(4×objective)4.62mm·at400×(40×objective)0.462mm." in words


def test_your_own_scale_stands_in_the_couplets_too(library) -> None:
    words = squeezed(card(library, ["nematode-mouthparts"], "A4", divisions={4: 31, 40: 3.1}))
    assert "25µm" not in re.findall(r"[\d.]+µm[^a-z]*toadivision", words)
    assert "3.1µm" in words


@pytest.mark.parametrize(
    ("wish", "message"),
    [
        ({"field_diameters": {40: 450}}, "A field of 450 mm with the 40× objective cannot be: from 0.125 to 0.75 mm can."),
        ({"field_diameters": {40: 0.001}}, "cannot be: from 0.125 to 0.75 mm can."),
        ({"divisions": {40: 250}}, "A scale division of 250 µm with the 40× objective cannot be: from 0.25 to 25 µm can."),
        ({"site_address": "javascript:alert(1)"}, "is not a web address"),
        ({"site_address": "https://x.example/\u202egnp"}, "is not a web address"),
        ({"site_address": "https://x.example/" + "a" * 5000}, "at most 300 can be read from a card"),
    ],
)
def test_what_cannot_be_is_refused_with_what_can(library, wish, message: str) -> None:
    with pytest.raises(Impossible, match=re.escape(message)):
        card(library, ["first-look"], "A4", **wish)


def test_a_paper_is_found_in_capitals_or_not() -> None:
    assert paper_named(" letter").name == paper_named("LETTER").name == "Letter"
