"""A key that strangers add: it fits, or the message says by how much it does not and what would make it fit."""

from __future__ import annotations

import re
from dataclasses import replace
from io import BytesIO

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from pdf_marks import pages
from pypdf import PdfReader

from keytool.card import FORMS, PAPERS, DoesNotFit, card
from keytool.card.colophon import Imprint
from keytool.card.comparison import look_alike_content
from keytool.card.content import content
from keytool.card.form import form_named
from keytool.card.layout import fits as fits_area
from keytool.card.make import Bench
from keytool.card.model import CardCouplet
from keytool.card.split_block import continued
from keytool.library import load
from keytool.library.model import Key, Library
from keytool.library.wording import plain
from tests.conftest import copy_mini

LACK = re.compile(
    r"'Buttons' does not fit on .+ \([\d.]+ × [\d.]+ mm\) at readable sizes: "
    r".+ is \d+ mm too (high|wide)\. It fits on(: .+| no paper there is: .+)\."
)


@pytest.fixture(scope="module")
def plain_buttons(tmp_path_factory) -> Library:
    return load(copy_mini(tmp_path_factory.mktemp("buttons") / "mini")).library


def with_key(library: Library, key: Key) -> Library:
    return replace(library, keys={key.id: key})


def lengthened(key: Key, times: int, look: int) -> Key:
    """The key with every lead said so many times over, and with so many sentences of how to see it."""
    couplets = {
        id: replace(
            couplet,
            look=" ".join(["Hold the button to the window and turn it."] * look),
            leads={each: replace(lead, text=" and ".join([lead.text] * times)) for each, lead in couplet.leads.items()},
        )
        for id, couplet in key.couplets.items()
    }
    return replace(key, couplets=couplets)


@settings(max_examples=25, deadline=None)
@example(1, 0, "booklet", "A4", False)
@given(st.integers(1, 60), st.integers(0, 30), st.sampled_from(list(FORMS)), st.sampled_from(["A4", "A5", "Letter"]), st.booleans())
def test_a_new_key_fits_or_says_what_would_make_it_fit(plain_buttons, times: int, look: int, form: str, paper: str, lying: bool) -> None:
    key = lengthened(plain_buttons.keys["buttons"], times, look)
    library = with_key(plain_buttons, key)
    try:
        data = card(library, ["buttons"], paper, form=form, landscape=lying)
    except DoesNotFit as error:
        assert LACK.fullmatch(str(error)), str(error)
        return
    words = re.sub(r"[\s\u00a0●◐○◌=]", "", " ".join(page.words for page in pages(data)))
    for couplet in key.couplets.values():
        assert re.sub(r"[\s~]", "", f"{couplet.number}{plain(library, couplet.asks)}") in words
        for lead in couplet.leads.values():
            assert re.sub(r"[\s~]", "", plain(library, lead.text)) in words
    assert min(size for page in pages(data) for size in page.sizes) >= 7


def test_what_is_said_to_make_it_fit_does(plain_buttons) -> None:
    library = with_key(plain_buttons, lengthened(plain_buttons.keys["buttons"], 30, 2))
    with pytest.raises(DoesNotFit) as caught:
        card(library, ["buttons"], "A4", form="pocket", landscape=True)
    message = str(caught.value)
    assert "does not fit on a pocket of A4 (74.25 × 105 mm)" in message
    assert "A4 as sheet" in message
    for larger in re.findall(r"A4 as (\w+)", message):
        assert card(library, ["buttons"], "A4", form=larger, landscape=True)
    assert ("A4 set dense" in message) == fits(library, dense=True)


def fits(library: Library, **wish) -> bool:
    try:
        return bool(card(library, ["buttons"], "A4", form="pocket", landscape=True, **wish))
    except DoesNotFit:
        return False


def test_a_dense_card_takes_fewer_sides_and_keeps_to_the_smallest_sizes(library) -> None:
    dense = card(library, ["nematode-mouthparts"], "A5", dense=True)
    assert len(pages(dense)) < len(pages(card(library, ["nematode-mouthparts"], "A5")))
    sizes = set().union(*(page.sizes for page in pages(dense)))
    assert min(sizes) == 7
    words = re.sub(r"[\s\u00a0●◐○◌=]", "", " ".join(page.words for page in pages(dense)))
    for couplet in library.keys["nematode-mouthparts"].couplets.values():
        for lead in couplet.leads.values():
            assert re.sub(r"[\s~]", "", plain(library, lead.text)) in words
    assert "Howtoseeeach:onthelargercard." in words


@pytest.mark.parametrize("wish", [{"dense": True}, {"form": "pocket"}, {"form": "quarters"}, {}])
def test_leads_are_never_under_eight_points(library, wish) -> None:
    shown: list[tuple[str, float]] = []
    for page in PdfReader(BytesIO(card(library, ["naked-amoebae"], "A4", **wish))).pages:
        page.extract_text(visitor_text=lambda text, _cm, _tm, _font, size: shown.append((text.replace("\u00a0", " ").strip(), size)))
    for couplet in library.keys["naked-amoebae"].couplets.values():
        for lead in couplet.leads.values():
            sizes = [size for text, size in shown if len(text) > 6 and plain(library, lead.text).startswith(text)]
            assert sizes and min(sizes) >= 8


def test_a_couplet_too_high_for_a_panel_goes_on_in_the_next(plain_buttons) -> None:
    key = lengthened(plain_buttons.keys["buttons"], 20, 2)
    (sheet,) = pages(card(with_key(plain_buttons, key), ["buttons"], "A4", form="pocket", landscape=True))
    words = re.sub(r"[\s\u00a0●◐○◌=]", "", sheet.words)
    parted = 0
    for couplet in key.couplets.values():
        number, asked = couplet.number, re.sub(r"[\s~]", "", plain(plain_buttons, couplet.asks))
        leads = [re.sub(r"[\s~]", "", plain(plain_buttons, lead.text)) for lead in couplet.leads.values()]
        goes_on = f"{number}{asked}(continued)" in words
        parted += goes_on
        halves = (leads[0], f"Moreanswersto{number}follow", f"{number}{asked}(continued)", leads[-1])
        at = -1
        for said in (f"{number}{asked}", *(halves if goes_on else leads)):
            at = words.find(said, at + 1)
            assert at >= 0, said
        assert words.count(f"{number}{asked}") == (2 if goes_on else 1)
    assert parted and "couplets 1 to 1" not in sheet.words


def test_what_is_parted_is_all_there_and_as_even_as_fits(library) -> None:
    blocks = content(library, library.keys["nematode-mouthparts"]).blocks
    couplets = [block for block in blocks if isinstance(block, CardCouplet)]
    parted = continued(blocks, lambda block: not isinstance(block, CardCouplet) or len(block.leads) < 3)
    assert [block for block in parted if not isinstance(block, CardCouplet)] == [b for b in blocks if not isinstance(b, CardCouplet)]
    for couplet in couplets:
        parts = [block for block in parted if isinstance(block, CardCouplet) and block.number == couplet.number]
        if len(couplet.leads) > 4:
            assert parts == [couplet], "in two halves or not at all"
            continue
        assert tuple(lead for part in parts for lead in part.leads) == couplet.leads
        assert [part.goes_on for part in parts] == [True] * (len(parts) - 1) + [False]
        assert len(parts) == 1 or abs(len(parts[0].leads) - len(parts[1].leads)) <= 1


def test_every_key_and_set_of_the_library_fits_every_pocket(library) -> None:
    imprint = Imprint(library.version, "2026-01-01", "https://tarn-end.example")
    bench = Bench(library, imprint, dense=False)
    every = [content(library, key) for key in library.keys.values()]
    every += [look_alike_content(library, these) for n, these in enumerate(library.look_alikes.values()) if n % 4 == 0]
    for paper in ("A4", "Letter"):
        for lying in (True, False):
            form = form_named("pocket", PAPERS[paper].size(lying))
            assert not [what.title for what in every if not fits_area(what, bench.area(what, form))]


def test_what_is_too_wide_says_by_how_much(library) -> None:
    with pytest.raises(DoesNotFit, match=r"a column of leads is 14 mm too wide\. It fits on: "):
        card(library, ["naked-amoebae"], "A5", form="pocket", landscape=True)
