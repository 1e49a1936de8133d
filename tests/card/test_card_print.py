"""What a printer and a ruler will find: true lengths, readable sizes, clear edges, vectors and embedded type."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from io import BytesIO

import pytest
from pdf_marks import pages
from pypdf import PdfReader

from keytool.card import card
from keytool.card.compact_header import CHECK_WORDS
from keytool.card.form import CLEAR_MM, MARGIN_MM
from keytool.card.header_footer import FINE
from keytool.library import root
from keytool.library.locate import VARIABLE
from keytool.library.wording import plain


@pytest.fixture(params=["A4", "A5", "Letter"])
def drawn_card(request, drawn_buttons) -> bytes:
    return card(drawn_buttons, ["buttons"], request.param, site_address="https://tarn-end.example/soil")


def fonts_of(data: bytes):
    for page in PdfReader(BytesIO(data)).pages:
        for font in page["/Resources"]["/Font"].values():
            yield font.get_object()["/DescendantFonts"][0].get_object()


def check_bar(page):
    """The heavy level line that begins where the words below it, a little indented, begin."""
    words = [(x, y) for x, y, size, *_ in page.texts if size == pytest.approx(FINE) and x == pytest.approx(MARGIN_MM + 1.5, abs=0.01)]
    assert len(words) == 1
    above = [line for line in page.lines if line.start[1] == line.end[1] and 0 < words[0][1] - line.start[1] < 5]
    return max(above, key=lambda line: line.weight)


def test_the_check_bar_is_fifty_millimetres_on_every_side(drawn_card: bytes, real_cards) -> None:
    for data in (drawn_card, *real_cards.values()):
        for page in pages(data):
            assert CHECK_WORDS == "check: this bar is 50 mm" and CHECK_WORDS in page.words
            assert check_bar(page).length == pytest.approx(50, abs=0.05)


def test_nothing_stands_outside_the_clear_edge(drawn_card: bytes, real_cards) -> None:
    for data in (drawn_card, *real_cards.values()):
        for page in pages(data):
            assert page.points and page.texts
            for x, y in page.points:
                assert CLEAR_MM <= x <= page.width - CLEAR_MM and CLEAR_MM <= y <= page.height - CLEAR_MM
            for left, top, right, bottom in (text.box for text in page.texts):
                assert left >= CLEAR_MM and right <= page.width - CLEAR_MM
                assert top >= CLEAR_MM and bottom <= page.height - CLEAR_MM


def test_no_type_is_smaller_than_seven_points(drawn_card: bytes, real_cards) -> None:
    for data in (drawn_card, *real_cards.values()):
        assert min(min(page.sizes) for page in pages(data)) >= 7


def test_all_is_drawn_and_nothing_is_an_image(drawn_card: bytes, real_cards) -> None:
    for data in (drawn_card, *real_cards.values()):
        assert all(not page.operators & {"Do", "BI", "sh"} for page in pages(data))
        assert b"/Subtype /Image" not in data


def test_type_is_embedded_and_only_the_letters_used(drawn_card: bytes, real_cards) -> None:
    for data in (drawn_card, *real_cards.values()):
        for font in fonts_of(data):
            name, descriptor = font["/BaseFont"], font["/FontDescriptor"].get_object()
            assert "DejaVuSansCondensed" in name and name[7] == "+", "not a subset"
            assert "/FontFile2" in descriptor


def test_title_language_and_true_size_are_asked_for(drawn_card: bytes) -> None:
    reader = PdfReader(BytesIO(drawn_card))
    assert reader.metadata.title == "Buttons: bench card"
    root = reader.trailer["/Root"]
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/PrintScaling"] == "/None"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]


def test_the_back_stands_upright_when_the_sheet_is_turned_like_a_page(buttons) -> None:
    for landscape, edge in ((True, "/DuplexFlipShortEdge"), (False, "/DuplexFlipLongEdge")):
        reader = PdfReader(BytesIO(card(buttons, ["buttons"], "A5", landscape=landscape)))
        assert reader.trailer["/Root"]["/ViewerPreferences"]["/Duplex"] == edge


def test_the_same_library_gives_the_same_bytes(drawn_buttons) -> None:
    wish = (drawn_buttons, ["buttons"], "A4")
    assert card(*wish, site_address="https://tarn-end.example") == card(*wish, site_address="https://tarn-end.example")


def test_other_runs_give_the_same_bytes(tmp_path) -> None:
    shutil.copytree(root() / "keydata", tmp_path / "keydata")
    code = (
        "import hashlib; from keytool.card import card; from keytool.library import load, root; "
        "data = card(load(root()).library, ['first-look'], 'A4', site_address='https://tarn-end.example/soil'); "
        "print(hashlib.sha256(data).hexdigest())"
    )
    runs = [
        subprocess.run(
            [sys.executable, "-c", code],
            capture_output=True,
            text=True,
            check=True,
            env={**os.environ, VARIABLE: str(tmp_path), "PYTHONHASHSEED": seed},
        )
        for seed in ("1", "7")
    ]
    assert runs[0].stdout == runs[1].stdout
    assert len(runs[0].stdout.strip()) == 64


def test_the_outline_leads_to_every_couplet(library, real_key: str, real_card: bytes) -> None:
    reader = PdfReader(BytesIO(real_card))
    title, under = reader.outline
    key = library.keys[real_key]
    assert title.title == key.title
    entered = [each.title for each in under]
    assert [each for each in entered if each[0].isdigit()] == [f"{c.number}  {plain(library, c.asks)}" for c in key.couplets.values()]
    for each in under:
        if each.title[0].isdigit():
            words = pages(real_card)[reader.get_destination_page_number(each)].words
            assert re.sub(r"\W", "", each.title.split("  ")[1]) in re.sub(r"\W", "", words)


def test_copies_of_a_card_are_entered_once(buttons) -> None:
    titles = [
        each.title for each in PdfReader(BytesIO(card(buttons, ["buttons"], "A4", form="quarters"))).outline if not isinstance(each, list)
    ]
    assert titles == ["Buttons"]


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="poppler is not installed")
def test_another_reader_finds_the_text_in_the_same_order(library, real_key: str, real_card: bytes) -> None:
    said = subprocess.run(["pdftotext", "-raw", "-", "-"], input=real_card, capture_output=True, check=True).stdout.decode()
    words = re.sub(r"[\s\u00a0●◐○◌=]", "", said)
    at = 0
    for couplet in library.keys[real_key].couplets.values():
        for text in (couplet.asks, *(lead.text for lead in couplet.leads.values())):
            at = words.find(re.sub(r"[\s~]", "", plain(library, text)), at)
            assert at >= 0, f"couplet {couplet.number}: '{text}'"


@pytest.mark.parametrize("wish", [{"form": "pocket"}, {"form": "quarters"}, {"ink": "light"}, {"ink": "strong"}, {"dense": True}])
def test_every_version_is_vector_in_readable_type_and_the_same_twice(library, wish) -> None:
    made = [card(library, ["naked-amoebae"], "A4", site_address="https://tarn-end.example", **wish) for _ in range(2)]
    assert made[0] == made[1]
    for page in pages(made[0]):
        assert not page.operators & {"Do", "BI", "sh"}
        assert min(page.sizes) >= 7
        for left, top, right, bottom in (text.box for text in page.texts):
            assert left >= CLEAR_MM - 0.01 and top >= CLEAR_MM - 0.01
            assert right <= page.width - CLEAR_MM + 0.01 and bottom <= page.height - CLEAR_MM + 0.01
    reader = PdfReader(BytesIO(made[0]))
    assert reader.metadata.title == "Naked amoebae: bench card" and reader.trailer["/Root"]["/Lang"] == "en"
    assert "CC BY 4.0" in reader.metadata.subject
