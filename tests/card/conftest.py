"""Cards that the tests share: of the mini library, of the mini library with plates, and of the real keys."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from keytool.card import card
from keytool.library import load
from keytool.library.model import Figure, Library

PLATES = {
    ("holes", "closed"): Figure("nematode-head", {"width": 20, "spear": "stylet", "accent": "spear"}),
    ("holes", "open"): Figure("nematode-head", {"width": 40, "stoma": "barrel", "tooth": "large-dorsal", "accent": "tooth"}),
    ("rim", "raised"): Figure("nematode-head", {"reach": "gullet", "gullet": "tylenchoid", "accent": "bulb"}),
}


@pytest.fixture
def buttons(mini) -> Library:
    """The mini library."""
    return load(mini).library


@pytest.fixture
def drawn_buttons(buttons: Library) -> Library:
    """The mini library with plates beside three of its leads."""
    key = buttons.keys["buttons"]
    couplets = {
        id: replace(couplet, leads={lead_id: replace(lead, figure=PLATES.get((id, lead_id))) for lead_id, lead in couplet.leads.items()})
        for id, couplet in key.couplets.items()
    }
    return replace(buttons, keys={**buttons.keys, "buttons": replace(key, couplets=couplets)})


@pytest.fixture(scope="session", params=["first-look", "nematode-mouthparts"])
def real_key(request, library: Library) -> str:
    return request.param


@pytest.fixture(scope="session")
def card_of(library: Library) -> Callable[[str], bytes]:
    """Makes the A4 card of a real key, with a site address; of each key once."""
    return cache(lambda key: card(library, [key], "A4", site_address="https://tarn-end.example/soil"))


@pytest.fixture(scope="session")
def real_card(real_key: str, card_of: Callable[[str], bytes]) -> bytes:
    return card_of(real_key)


@pytest.fixture(scope="session")
def real_cards(library: Library, card_of: Callable[[str], bytes]) -> dict[str, bytes]:
    return {key: card_of(key) for key in library.keys}
