"""Cards that the tests share: of the mini library, of the mini library with plates, and of the real keys."""

from __future__ import annotations

import fcntl
import os
from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from keytool.card import card
from keytool.library import load
from keytool.library.model import Figure, Library
from keytool.library.save import save

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


WORKER = os.environ.get("PYTEST_XDIST_WORKER", "")
"""The process that runs these tests, where several do."""


@pytest.fixture(scope="session")
def card_of(library: Library, tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], bytes]:
    """Makes the A4 card of a real key, with a site address; of each key once, whichever process asks first."""
    base = tmp_path_factory.getbasetemp()
    shared = (base.parent if WORKER else base) / "cards"
    shared.mkdir(exist_ok=True)

    def made(key: str) -> bytes:
        file = shared / f"{key}.pdf"
        with (shared / f"{key}.lock").open("w") as lock:
            fcntl.flock(lock, fcntl.LOCK_EX)
            if not file.exists():
                save(file, card(library, [key], "A4", site_address="https://tarn-end.example/soil"))
        return file.read_bytes()

    return cache(made)


@pytest.fixture(scope="session")
def real_card(real_key: str, card_of: Callable[[str], bytes]) -> bytes:
    return card_of(real_key)


@pytest.fixture(scope="session")
def real_cards(library: Library, card_of: Callable[[str], bytes]) -> dict[str, bytes]:
    keys = list(library.keys)
    made = {key: card_of(key) for key in (keys if WORKER[-1:] in ("", "0") else reversed(keys))}  # so that two processes share the work
    return {key: made[key] for key in keys}
