"""The page of the bench cards: ready ones with what they are, and a form whose command the command line takes."""

from __future__ import annotations

import re
import shlex
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from keytool.card import FORMS, INKS, card, laid_out
from keytool.cli.card import card_command
from keytool.cli.site import extras
from keytool.library import Library, Loaded, load
from keytool.pages import Extras
from keytool.pages.card_form import form_preview
from keytool.pages.cards_page import cards_page, preview, ready
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
    keys = loaded.library.keys
    wanted = {ready(key, "A4") for key in keys} | {preview(key, "A4") for key in keys} | {form_preview(form) for form in FORMS}
    assert {path for path in made if path.startswith("cards/")} == wanted
    for path in wanted:
        assert made[path].startswith(b"%PDF" if path.endswith(".pdf") else b"<svg")


def test_ready_cards_and_forms_can_be_looked_at_before_printing(library: Library):
    key = "naked-amoebae"
    made = laid_out(library, [key], "A4")
    files = {ready(key, "A4"): made.pdf(), preview(key, "A4"): made.preview().encode(), form_preview("pocket"): b"<svg/>"}
    text = cards_page(library, Extras(files, papers=("A4",), forms=FORMS)).text
    for path in (preview(key, "A4"), form_preview("pocket")):
        assert re.search(rf'<img src="{path}" alt="[^"]+" loading="lazy"', text)
    assert text.count("<img ") == 2


def test_the_form_offers_every_form_ink_and_set(library: Library):
    text = cards_page(library, Extras(papers=("A4",), forms=FORMS, inks={ink.name: ink.about for ink in INKS.values()})).text
    for form, about in FORMS.items():
        assert f'value="{form}"' in text and f"{form}: {about}" in text
    for ink in INKS.values():
        assert f'value="{ink.name}"' in text and f"{ink.name}: {ink.about}" in text
    assert all(f'<option value="{id}"' in text for id in library.look_alikes)


@pytest.mark.browser
def test_the_form_writes_a_command_that_is_understood(visit: Callable[..., Seen], site: Path, library: Library):
    seen = visit((site / "cards.html").as_uri(), **PHONE)
    page: Any = seen.page
    command = page.locator("[data-card-command]")
    assert command.inner_text() == "wetmount card --key first-look -o card.pdf"
    page.locator("[name=key][value=threads]").check()
    page.locator("[name=paper]").select_option("A5")
    page.locator("[name=way][value='--landscape']").check()
    page.locator("[name=field][data-objective='40']").fill("0.45")
    page.locator("[name=division][data-objective='4']").fill("25")
    page.locator("[name=look-alike]").select_option("tiny-knobs")
    page.locator("[name=entries]").fill("plectus, acrobeles")
    page.locator("[name=form][value=halves]").check()
    page.locator("[name=ink][value=strong]").check()
    page.locator("[name=dense]").check()
    page.locator("[name=flip][value=long]").check()
    page.locator("[name=address]").fill("https://example.org/our soil's site")
    words = shlex.split(command.inner_text())
    assert words[:2] == ["wetmount", "card"]
    given = card_command.make_context("card", words[2:]).params
    assert given["keys"] == ("first-look", "threads") and given["paper"] == "A5" and given["landscape"] is True
    assert given["fields"] == ("40=0.45",) and given["address"] == "https://example.org/our soil's site"
    assert given["look_alikes"] == ("tiny-knobs",) and given["entries"] == ("plectus", "acrobeles")
    assert (given["form"], given["ink"], given["dense"], given["flip"]) == ("halves", "strong", True, "long")
    assert given["divisions"] == ("4=25",)
    page.locator("[name=look-alike]").select_option("")
    page.locator("[name=entries]").fill("")
    for key in ("first-look", "threads"):
        page.locator(f"[name=key][value={key}]").uncheck()
    assert command.inner_text() == "Choose at least one key, look-alike set or entry."
    assert seen.said == []
