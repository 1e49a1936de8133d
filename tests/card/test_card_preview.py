"""The picture of a card's side for the screen: the same marks as on paper."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from pdf_marks import pages

from keytool.card import INKS, laid_out

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module", params=["sheet", "pocket"])
def made(request, library):
    return laid_out(library, ["naked-amoebae"], "A4", form=request.param)


def test_a_preview_says_and_measures_what_the_paper_does(made) -> None:
    root = ElementTree.fromstring(made.preview())
    paper = pages(made.pdf())[0]
    width, height = map(float, root.attrib["viewBox"].split()[2:])
    assert (width, height) == pytest.approx((paper.width, paper.height), abs=0.01)
    assert root.find(f"{SVG}title").text == "Naked amoebae: bench card, side 1"
    said = "".join(text.text for text in root.iter(f"{SVG}text"))
    assert re.sub(r"[\s\u00a0]", "", said) == re.sub(r"[\s\u00a0]", "", paper.words)


def test_words_stand_where_the_paper_has_them(made) -> None:
    root = ElementTree.fromstring(made.preview())
    turned = {text for group in root.iter(f"{SVG}g") if "transform" in group.attrib for text in group.iter(f"{SVG}text")}
    shown = [(float(text.get("x")), float(text.get("y"))) for text in root.iter(f"{SVG}text") if text not in turned]
    printed = [(text.x, text.y) for text in pages(made.pdf())[0].texts if not text.turned]
    assert len(shown) == len(printed)
    for (x, y), (paper_x, paper_y) in zip(shown, printed, strict=True):
        assert (x, y) == pytest.approx((paper_x, paper_y), abs=0.02)


def test_a_preview_needs_nothing_else_and_is_the_same_twice(made, library) -> None:
    assert made.preview() == made.preview()
    assert "href" not in made.preview() and "<image" not in made.preview() and "<script" not in made.preview()


def test_a_preview_shows_its_version_of_ink(library) -> None:
    cards = {name: laid_out(library, ["naked-amoebae"], "A4", ink=name) for name in INKS}
    looks = {name: "".join(made.preview(side) for side in range(len(made.sides))) for name, made in cards.items()}
    reversed_ends = looks["normal"].count('rx="0.9" fill="#000000"')
    assert reversed_ends > 2 and looks["light"].count('rx="0.9" fill="none" stroke="#000000"') == reversed_ends
    white = re.compile(r'<text [^>]*fill="#ffffff"')
    assert white.search(looks["normal"]) and not white.search(looks["light"])
    assert INKS["normal"].plates.colours["accent"] in looks["normal"] and INKS["normal"].plates.colours["accent"] not in looks["strong"]
