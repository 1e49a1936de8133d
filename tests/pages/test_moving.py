"""Live fields on pages: where something is said to move, and the scripts nowhere else."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from keytool.figures.motion import manners_of
from keytool.identify import address, ground
from keytool.library import Library
from keytool.pages.movement import MOVEMENT, WHOLE, moving_leads
from tests.pages.conftest import PHONE, Seen
from tests.pages.test_key_page import walk_to

FIELD = re.compile(r'<div data-live-field[^>]*><script type="application/json">(.*?)</script>', re.DOTALL)


def test_scripts_stand_only_on_pages_that_have_a_field(texts: dict[str, str]):
    with_field = {path for path, text in texts.items() if "data-live-field" in text}
    assert {path for path, text in texts.items() if "live-field.js" in text} == with_field
    assert {path.partition("/")[0] for path in with_field} >= {"entries", "live-field.md"}


def test_an_entry_has_a_field_exactly_where_a_manner_names_it(texts: dict[str, str], library: Library):
    for entry in library.entries.values():
        found = FIELD.findall(texts[f"entries/{entry.id}.md"])
        assert len(found) == bool(manners_of(library, entry)), entry.id
        for each in found:
            assert {manner.id for manner in manners_of(library, entry)} <= {mover["id"] for mover in json.loads(each)["movers"]}


def test_the_own_page_holds_every_manner_and_words_for_them(texts: dict[str, str], library: Library):
    text = texts["live-field.md"]
    (field,) = map(json.loads, FIELD.findall(text))
    assert {mover["id"] for mover in field["movers"] if mover["on"]} == set(WHOLE)
    for mover in field["movers"]:
        assert f"<p>{mover['name']}: " in text
    assert set(WHOLE) <= library.manners.keys()


def test_only_questions_about_movement_alone_have_fields_and_only_of_what_comes_there(library: Library):
    found = 0
    for key in library.keys.values():
        it = ground(library, key)
        for couplet in key.couplets.values():
            block = moving_leads(it, couplet)
            if not set(couplet.characters) <= MOVEMENT:
                assert block is None, couplet.id
            elif block:
                found += 1
                assert 1 <= block.count("data-live-field") <= len(couplet.leads)
                for each in FIELD.findall(block):
                    assert sum(mover["on"] for mover in json.loads(each)["movers"]) <= 5
    assert found >= 1
    strand = moving_leads(ground(library, library.keys["first-look"]), library.keys["first-look"].couplets["long-movement"])
    shown = {mover["id"] for each in FIELD.findall(strand or "") for mover in json.loads(each)["movers"]}
    assert shown and not shown & {"leap", "settle", "run-and-tumble"}, (
        f"{sorted(shown)}: no ball and no dot at a question about long things"
    )


@pytest.mark.browser
def test_a_field_is_drawn_on_each_kind_of_page(visit: Callable[..., Seen], site: Path, library: Library):
    mover = next(entry for entry in library.entries.values() if manners_of(library, entry))
    it = ground(library, library.keys["first-look"])
    walk = address(walk_to(it, couplet="long-movement"))
    for path in ("live-field.html", f"entries/{mover.id}.html", f"keys/first-look.html#{walk}"):
        seen = visit(f"{site.as_uri()}/{path}", **PHONE)
        page: Any = seen.page
        if "keys/" in path:
            assert page.locator("canvas:visible").count() == 0, "folded until asked for"
            page.locator(".wm-couplet .wm-moving > summary").tap()
        canvas = page.locator("canvas:visible").first
        canvas.scroll_into_view_if_needed()
        page.wait_for_function(
            """() => [...document.querySelectorAll('canvas')].some(c => c.width > 100 &&
                c.getContext('2d').getImageData(0, 0, c.width, c.height).data.some((v, i) => i % 4 === 3 && v))"""
        )
        assert seen.said == []
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
