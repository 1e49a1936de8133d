"""The page of the bench cards: ready ones with what they are, and a form whose command the command line takes."""

from __future__ import annotations

import shlex
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from keytool.card import card
from keytool.cli.card import card_command
from keytool.cli.site import extras
from keytool.library import Library, Loaded, load
from keytool.pages import Extras
from keytool.pages.cards_page import cards_page, ready
from tests.pages.conftest import PHONE, Seen


def test_without_ready_cards_the_page_says_how_to_get_them(library: Library):
    text = cards_page(library, Extras()).text
    assert "wetmount site --cards" in text and ".pdf&quot;" not in text and "(PDF)" not in text


def test_a_ready_card_is_linked_with_its_sides_and_size(library: Library):
    key = library.keys["naked-amoebae"]
    made = card(library, [key.id], "A4")
    text = cards_page(library, Extras({ready(key.id, "A4"): made}, papers=("A5", "A4"))).text
    assert f'href="cards/{key.id}-A4.pdf"' in text and f"{round(len(made) / 1000)} kB" in text
    assert f"{made.count(b'/Type /Page') - made.count(b'/Type /Pages')} side" in text
    assert text.count("(PDF)") == 1


def test_the_command_line_adds_cards_only_when_asked(mini_root: Path):
    loaded: Loaded = load(mini_root)
    assert not [path for path in extras(loaded).files if path.startswith("cards/")]
    made = extras(loaded, cards=True).files
    assert {path for path in made if path.startswith("cards/")} == {ready(key, "A4") for key in loaded.library.keys}
    assert all(made[path].startswith(b"%PDF") for path in made if path.startswith("cards/"))


@pytest.mark.browser
def test_the_form_writes_a_command_that_is_understood(visit: Callable[..., Seen], site: Path, library: Library):
    seen = visit((site / "cards.html").as_uri(), **PHONE)
    page: Any = seen.page
    command = page.locator("[data-card-command]")
    assert command.inner_text() == "wetmount card --key first-look -o card.pdf"
    page.locator("[name=key][value=threads]").check()
    page.locator("[name=paper]").select_option("A5")
    page.locator("[name=way][value='--landscape']").check()
    page.locator("[data-objective='40']").fill("0.45")
    page.locator("[name=address]").fill("https://example.org/our soil's site")
    words = shlex.split(command.inner_text())
    assert words[:2] == ["wetmount", "card"]
    given = card_command.make_context("card", words[2:]).params
    assert given["keys"] == ("first-look", "threads") and given["paper"] == "A5" and given["landscape"] is True
    assert given["fields"] == ("40=0.45",) and given["address"] == "https://example.org/our soil's site"
    for key in ("first-look", "threads"):
        page.locator(f"[name=key][value={key}]").uncheck()
    assert command.inner_text() == "Choose at least one key."
    assert seen.said == []
