"""Look-alike pages: the decisive test first, then one table with nothing left out and nothing made up."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from keytool.library import Library
from keytool.library.wording import name_of, plain
from keytool.pages.look_alikes import look_alike_page, look_alikes_page
from tests.pages.conftest import PHONE, Seen


def test_every_set_has_its_rows_and_says_plainly_what_is_not_stated(library: Library):
    for these in library.look_alikes.values():
        text = look_alike_page(library, these).text
        body = text[text.index("<tbody") : text.index("</tbody>")]
        assert body.count("<tr") == len(these.characters), these.id
        stated = sum(character in library.entries[entry].statements for entry in these.entries for character in these.characters)
        assert body.count("not stated") == len(these.entries) * len(these.characters) - stated, these.id
        assert text.index("Do this first") < text.index("<table"), these.id
        assert re.search(r"wm-first.*?wm-basis", text, re.DOTALL), these.id


def test_the_index_lists_every_set_once(library: Library):
    text = look_alikes_page(library).text
    for these in library.look_alikes.values():
        assert text.count(f'href="{these.id}.html"') == 1, these.id


@pytest.mark.browser
@pytest.mark.parametrize("columns", [2, 3, 4, 5, 6])
def test_a_set_is_read_on_a_phone_without_scrolling_sideways(visit: Callable[..., Seen], site: Path, library: Library, columns: int):
    sets = [each for each in library.look_alikes.values() if len(each.entries) == columns]
    for these in sets[:3]:
        page: Any = visit((site / "look-alikes" / f"{these.id}.html").as_uri(), **PHONE).page
        assert page.evaluate("document.documentElement.scrollWidth") <= 360, these.id
        assert page.get_by_role("columnheader").count() == columns
        assert page.get_by_role("rowheader").count() == len(these.characters)
        wide = page.evaluate(
            "[...document.querySelectorAll('.wm-compared :is(th, td)')].filter(e => e.scrollWidth > e.clientWidth + 1).map(e => e.innerText)"
        )
        assert wide == [], these.id
        if columns > 3:
            for entry in these.entries:
                whose = page.locator("tbody tr").first.locator(".wm-whose", has_text=name_of(library, entry)).first
                assert whose.is_visible(), "where cells stand below each other each says whose it is"


@pytest.mark.browser
def test_drawings_of_a_set_are_to_one_scale_or_the_page_says_so(visit: Callable[..., Seen], site: Path, library: Library):
    for these in list(library.look_alikes.values())[::9]:
        page: Any = visit((site / "look-alikes" / f"{these.id}.html").as_uri(), **PHONE).page
        if page.get_by_text("not at one scale").count():
            continue
        bars = page.evaluate("""() => [...document.querySelectorAll('.wm-compared thead svg')].map(svg => {
            const bar = svg.querySelector('[data-part="scale-bar"]') || svg.querySelector('[class*="scale"]');
            return bar ? [bar.getBoundingClientRect().width, svg.textContent.match(/[\\d.]+ [µm]+$/)?.[0]] : null; })""")
        lengths = {round(each[0]) for each in bars if each}
        assert len(lengths) <= 1, (these.id, bars)


def test_each_entry_leads_to_its_sets(library: Library):
    from keytool.identify import ground
    from keytool.pages.entry_page import entry_page

    grounds = [ground(library, key) for key in library.keys.values()]
    these = next(iter(library.look_alikes.values()))
    for entry in these.entries:
        text = entry_page(library, grounds, library.entries[entry]).text
        assert f'href="../look-alikes/{these.id}.html"' in text
        assert plain(library, these.title)[:8] in text
