"""Look-alike pages: the decisive test first, then one table with nothing left out and nothing made up."""

from __future__ import annotations

import re
from collections.abc import Callable
from html import escape
from pathlib import Path
from typing import Any

import pytest

from keytool.figures import contrast
from keytool.figures.library_figures import of_entry
from keytool.library import Library
from keytool.library.wording import plain, showing_words
from keytool.pages.figure_files import PEN, FigureFiles
from keytool.pages.look_alikes import ROOM, look_alike_page, look_alikes_page
from tests.pages.conftest import PHONE, Seen


def rows(text: str, character: str) -> list[tuple[list[int], str]]:
    """What stands under a character: the columns and the words of each row."""
    part = re.search(rf'<section class="part ch"[^>]*><h2 id="{character}">.*?</section>', text, re.DOTALL)
    found = re.findall(
        r'<li><ul class="who".*?</ul><div class="t"[^>]*><span class="unseen">.*?</span>(.*?) <details', part[0] if part else "", re.DOTALL
    )
    columns = re.findall(r'<ul class="who".*?</ul>', part[0] if part else "", re.DOTALL)
    return [([int(at) - 1 for at in re.findall(r"--at:(\d+)", who)], words) for who, words in zip(columns, found, strict=True)]


def test_every_entry_stands_under_what_it_shows_and_under_nothing_else(library: Library):
    for these in library.look_alikes.values():
        text = look_alike_page(library, these, FigureFiles()).text
        assert text.index("Do this first") < text.index("plate strip") < text.index("part ch"), these.id
        assert "not stated" not in text
        for id in these.characters:
            character = library.characters[id]
            stated = {
                at: library.entries[each].statements[id] for at, each in enumerate(these.entries) if id in library.entries[each].statements
            }
            if len(stated) < 2:
                assert rows(text, id) == [], "one alone compares nothing"
                continue
            shown = rows(text, id)
            assert {at for who, _ in shown for at in who} == set(stated), (these.id, id)
            for who, words in shown:
                states = [each.id for each in character.states.values() if escape(each.name, quote=False) == words]
                for at in who:
                    says = escape(showing_words(library, stated[at]), quote=False)
                    assert says == words or states[0] in stated[at].showing.ids, (these.id, id, words)


def test_the_index_lists_every_set_once(library: Library):
    text = look_alikes_page(library).text
    for these in library.look_alikes.values():
        assert text.count(f'href="{these.id}.html"') == 1, these.id


@pytest.mark.browser
@pytest.mark.parametrize("columns", [2, 3, 4, 5, 6])
def test_a_set_is_read_on_a_phone_without_scrolling_sideways(visit: Callable[..., Seen], site: Path, library: Library, columns: int):
    sets = [each for each in library.look_alikes.values() if len(each.entries) == columns]
    for these in sets[:2]:
        page: Any = visit((site / "look-alikes" / f"{these.id}.html").as_uri(), **PHONE).page
        assert page.evaluate("document.documentElement.scrollWidth") <= 360, these.id
        assert page.locator(".strip li").count() == columns
        assert page.locator(".tri .thumb").first.is_visible()


@pytest.mark.browser
@pytest.mark.parametrize("width", [360, 1440])
def test_drawings_at_one_scale_stay_at_one_scale_at_every_width(visit: Callable[..., Seen], site: Path, library: Library, width: int):
    """The width of each picture, and that of the bar, against what they measure in µm."""
    seen = 0
    for these in list(library.look_alikes.values())[::6]:
        drawings = [of_entry(library, library.entries[each]) for each in these.entries]
        shown = contrast(drawings, *ROOM, pen=PEN)
        if not shown.one_scale or not all(drawings):
            continue
        page: Any = visit((site / "look-alikes" / f"{these.id}.html").as_uri(), viewport={"width": width, "height": 800}).page
        images = page.evaluate("[...document.querySelectorAll('.strip img')].map(each => each.getBoundingClientRect().width)")
        scales = [image / each.frame.width for image, each in zip(images, shown.drawings, strict=True) if each]
        bar = page.evaluate("parseFloat(getComputedStyle(document.querySelector('.one-bar .bar'), '::before').width)")
        assert max(scales) == pytest.approx(min(scales), rel=0.03), these.id
        assert bar == pytest.approx(shown.drawings[0].bar.length * scales[0], rel=0.12), these.id
        seen += 1
    assert seen


def test_each_entry_leads_to_its_sets(library: Library):
    from keytool.identify import ground
    from keytool.pages.entry_page import entry_page

    grounds = [ground(library, key) for key in library.keys.values()]
    these = next(iter(library.look_alikes.values()))
    for entry in these.entries:
        text = entry_page(library, grounds, library.entries[entry]).text
        assert f'href="../look-alikes/{these.id}.html"' in text
        assert plain(library, these.title)[:8] in text
