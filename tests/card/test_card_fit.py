"""A key that strangers add: it fits, or the message says by how much it does not and what would make it fit."""

from __future__ import annotations

import re
from dataclasses import replace
from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pdf_marks import pages
from pypdf import PdfReader

from keytool.card import FORMS, DoesNotFit, card
from keytool.library import load
from keytool.library.model import Key, Library
from keytool.library.show import plain
from tests.conftest import copy_mini

LACK = re.compile(
    r"'Buttons' does not fit on .+ \([\d.]+ × [\d.]+ mm\) at readable sizes: "
    r"(.+ is \d+ mm too high|.+ is too wide for any column)\. It fits on(: .+| no paper there is: .+)\."
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
@given(st.integers(1, 60), st.integers(0, 30), st.sampled_from(list(FORMS)), st.sampled_from(["A4", "A5", "Letter"]), st.booleans())
def test_a_new_key_fits_or_says_what_would_make_it_fit(plain_buttons, times: int, look: int, form: str, paper: str, lying: bool) -> None:
    key = lengthened(plain_buttons.keys["buttons"], times, look)
    library = with_key(plain_buttons, key)
    try:
        data = card(library, ["buttons"], paper, form=form, landscape=lying)
    except DoesNotFit as error:
        assert LACK.fullmatch(str(error)), str(error)
        return
    words = re.sub(r"[\s\u00a0●◐○~=]", "", " ".join(page.words for page in pages(data)))
    for couplet in key.couplets.values():
        assert re.sub(r"[\s~]", "", f"{couplet.number}{plain(library, couplet.asks)}") in words
        for lead in couplet.leads.values():
            assert re.sub(r"[\s~]", "", plain(library, lead.text)) in words
    assert min(min(page.sizes) for page in pages(data)) >= 7


def test_what_is_said_to_make_it_fit_does(plain_buttons) -> None:
    library = with_key(plain_buttons, lengthened(plain_buttons.keys["buttons"], 30, 2))
    with pytest.raises(DoesNotFit) as caught:
        card(library, ["buttons"], "A4", form="pocket", landscape=True)
    message = str(caught.value)
    assert "does not fit on a pocket of A4 (74.25 × 105 mm)" in message
    assert "A4 as sheet" in message
    for larger in re.findall(r"A4 as (\w+)", message):
        assert card(library, ["buttons"], "A4", form=larger, landscape=False)
    assert ("A4 set dense" in message) == fits(library, dense=True)


def fits(library: Library, **wish) -> bool:
    try:
        return bool(card(library, ["buttons"], "A4", form="pocket", landscape=True, **wish))
    except DoesNotFit:
        return False


def test_a_dense_card_takes_fewer_sides_and_keeps_to_the_smallest_sizes(library) -> None:
    dense = card(library, ["nematode-mouthparts"], "A4", dense=True)
    assert len(pages(dense)) < len(pages(card(library, ["nematode-mouthparts"], "A4")))
    sizes = set().union(*(page.sizes for page in pages(dense)))
    assert min(sizes) == 7
    words = re.sub(r"[\s\u00a0●◐○~=]", "", " ".join(page.words for page in pages(dense)))
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
