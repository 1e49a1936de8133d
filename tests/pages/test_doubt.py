"""After "cannot tell": what to change at the microscope, and a page that does not ask about what cannot apply."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import ground
from keytool.library import Library
from keytool.pages.figure_files import FigureFiles
from keytool.pages.key_page import key_page
from keytool.pages.page_writer import Writer
from keytool.pages.undecided_help import undecided_help
from tests.pages.conftest import PHONE, Seen
from tests.pages.test_key_page import WAIT, url

Visit = Callable[..., Seen]


def test_every_advice_is_a_step_of_one_guide_or_a_character(library: Library):
    for word in library.vocabulary["in-doubt"].values():
        steps = [guide.id for guide in library.guides.values() for step in guide.steps if step.id == word.id]
        assert len(steps) + (word.id in library.characters) == 1, word.id


def test_every_advice_links_to_where_it_is_said_in_full(library: Library):
    html = undecided_help(Writer(library, "keys/threads.md"))
    for word in library.vocabulary["in-doubt"].values():
        assert word.label in html
        assert f'#step-{word.id}"' in html or f'characters/index.html#{word.id}"' in html, word.id


def test_the_advice_is_hidden_without_the_script(library: Library):
    text = key_page(ground(library, next(iter(library.keys.values()))), FigureFiles()).text
    assert '<section class="part wm-stuck-part" hidden>' in text


def twice_unsure(visit: Visit, site: Path, start_key: str, **how: Any) -> Any:
    page = visit(url(site, start_key), **how).page
    for _ in range(2):
        before = page.url
        page.keyboard.press("u")
        page.wait_for_function("before => location.href !== before", arg=before, timeout=WAIT)
    return page


@pytest.mark.browser
def test_two_in_a_row_bring_the_advice_and_an_answer_takes_it_away(visit: Visit, site: Path, start_key: str):
    page = twice_unsure(visit, site, start_key)
    advice = page.locator(".wm-stuck-part")
    advice.wait_for(timeout=WAIT)
    assert advice.locator("li").count() > 2
    page.keyboard.press("1")
    advice.wait_for(state="hidden", timeout=WAIT)


@pytest.mark.browser
def test_cannot_tell_does_not_go_on_for_ever(visit: Visit, site: Path, library: Library):
    """Whoever can tell nothing is told so after a few questions, not after forty."""
    for key in list(library.keys.values())[:4]:
        page = visit(url(site, key.id), **PHONE).page
        for _ in range(20):
            if page.locator(".wm-arrival").count():
                break
            before = page.url
            page.locator('[data-does="cannot-tell"]').tap()
            page.wait_for_function("before => location.href !== before || document.querySelector('.wm-arrival')", arg=before, timeout=WAIT)
            page.wait_for_timeout(30)
        page.locator(".wm-arrival").wait_for(timeout=WAIT)
        if "Not settled" in page.locator(".wm-arrival h2").inner_text():
            assert "#add=" in page.locator(".wm-count-as").get_attribute("href"), "what is not settled is counted all the same"
            assert page.locator(".wm-count-as").inner_text().startswith("Count it as: ")
