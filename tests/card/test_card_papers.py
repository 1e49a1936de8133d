"""Papers against the rules that define them, and pages against their papers."""

from __future__ import annotations

from io import BytesIO

import pytest
from pdf_marks import pages
from pypdf import PdfReader

from keytool.card import PAPERS, NoSuchPaper, card, paper_named

ISO_216 = {f"A{n}": n for n in range(11)}


@pytest.mark.parametrize("name", [name for name in PAPERS if name in ISO_216])
def test_a_papers_are_one_square_metre_halved(name: str) -> None:
    # ISO 216: A0 is 841 by 1189 mm (1 m² with sides 1 : √2); each next size halves the longer side, whole mm, rounded down.
    short, long = round(1000 / 2**0.25), round(1000 * 2**0.25)
    for _ in range(ISO_216[name]):
        short, long = long // 2, short
    assert (PAPERS[name].width, PAPERS[name].height) == (short, long)


def test_letter_is_eight_and_a_half_by_eleven_inches() -> None:
    assert (PAPERS["Letter"].width, PAPERS["Letter"].height) == pytest.approx((215.9, 279.4))


def test_papers_stand_from_small_to_large() -> None:
    areas = [paper.width * paper.height for paper in PAPERS.values()]
    assert areas == sorted(areas)
    assert all(paper.width < paper.height for paper in PAPERS.values())


@pytest.mark.parametrize("written", ["A4", "a4", " letter ", "LETTER"])
def test_a_paper_is_found_however_it_is_written(written: str) -> None:
    assert paper_named(written).name.lower() == written.strip().lower()


def test_an_unknown_paper_is_named_with_those_there_are() -> None:
    with pytest.raises(NoSuchPaper, match=r"'A9'.*A5, Letter, A4"):
        paper_named("A9")


@pytest.mark.parametrize("name", PAPERS)
@pytest.mark.parametrize("landscape", [True, False])
def test_every_page_is_exactly_the_paper(buttons, name: str, landscape: bool) -> None:
    data = card(buttons, ["buttons"], name, landscape=landscape)
    width, height = PAPERS[name].size(landscape)
    assert (width > height) == landscape
    for page in pages(data):
        assert page.width == pytest.approx(width, abs=0.005)
        assert page.height == pytest.approx(height, abs=0.005)
    for page in PdfReader(BytesIO(data)).pages:
        assert page.cropbox == page.mediabox
        assert not page.rotation
