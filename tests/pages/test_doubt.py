"""After "cannot tell": the page says why the number jumps, that nothing was ruled out, and what to change at the microscope."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import CANNOT_TELL, Answer, Answers, Ground, doubt, ground, stand
from keytool.identify.doubt import CHANGE, LEAVE_OUT, NOTHING_OUT, SEVERAL, jump_words
from keytool.library import Library
from keytool.pages.key_page import key_page
from keytool.pages.page_writer import Writer
from keytool.pages.undecided_help import undecided_help
from tests.pages.conftest import PHONE, Seen

Visit = Callable[..., Seen]


def opened(visit: Visit, site: Path, it: Ground, **how: Any) -> Any:
    return visit((site / "keys" / f"{it.key.id}.html").as_uri(), **how).page


def doubtful(it: Ground, most: int) -> list[Answers]:
    """The walk that tells nothing, after each of its first answers."""
    answers: Answers = ()
    found = []
    while (asks := stand(it, answers).asks) and len(answers) < most:
        answers = (*answers, Answer(asks, CANNOT_TELL))
        found.append(answers)
    return found


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
    text = key_page(ground(library, next(iter(library.keys.values())))).text
    assert f'<details class="wm-stuck" hidden data-search-exclude><summary>{CHANGE}</summary>' in text


@pytest.mark.browser
def test_the_page_says_what_python_says_about_a_walk_that_tells_nothing(visit: Visit, site: Path, library: Library):
    jumps = 0
    for key in library.keys.values():
        it = ground(library, key)
        page = opened(visit, site, it)
        for answers in doubtful(it, 5):
            page.keyboard.press("u")
            standing = stand(it, answers)
            now = doubt(it, answers, standing)
            said = f"{jump_words(now.open, key.couplets[standing.asks].number)} {LEAVE_OUT}" if now.jumps else LEAVE_OUT
            assert page.locator(".wm-jump").text_content() == said, (key.id, answers)
            assert NOTHING_OUT in page.locator(".wm-left").inner_text()
            assert page.locator(".wm-stuck").is_visible() == now.is_stuck == (len(answers) >= SEVERAL)
            jumps += now.jumps
    assert jumps > 5


@pytest.mark.browser
def test_an_answer_that_tells_something_ends_the_advice(visit: Visit, site: Path, library: Library, start_key: str):
    page = opened(visit, site, ground(library, library.keys[start_key]))
    for key in "uu":
        page.keyboard.press(key)
    page.locator(".wm-stuck > summary").click()
    assert page.locator(".wm-stuck li").first.is_visible()
    page.keyboard.press("1")
    assert page.locator(".wm-stuck").is_hidden()
    assert NOTHING_OUT not in page.locator(".wm-left").inner_text()


@pytest.mark.browser
def test_from_the_advice_one_goes_back_to_the_first_question_left_open(visit: Visit, site: Path, library: Library, start_key: str):
    it = ground(library, library.keys[start_key])
    page = opened(visit, site, it, **PHONE)
    for key in "1uuu":
        page.keyboard.press(key)
    told = Answer(it.key.first, next(iter(it.key.couplets[it.key.first].leads)))
    page.locator(".wm-stuck > summary").tap()
    page.locator(".wm-stuck .wm-again button").tap()
    page.locator(f'.wm-asked[data-couplet="{stand(it, (told,)).asks}"]').wait_for(timeout=3000)
    assert page.locator(".wm-step").count() == 1
    assert page.locator(".wm-stuck").is_hidden()


@pytest.mark.browser
def test_an_answer_moves_the_focus_to_the_question_and_the_number_is_announced(visit: Visit, site: Path, library: Library, start_key: str):
    page = opened(visit, site, ground(library, library.keys[start_key]))
    page.keyboard.press("u")
    assert page.evaluate("document.activeElement === document.querySelector('.wm-asked h3')")
    for part in (".wm-left", ".wm-jump"):
        assert page.locator(part).get_attribute("role") == "status"
    headings = page.evaluate("[...document.querySelectorAll('main :is(h1, h2, h3)')].filter(e => e.checkVisibility()).map(e => e.tagName)")
    assert headings[:3] == ["H1", "H2", "H3"], "no level is left out while one question is shown"


@pytest.mark.browser
def test_the_advice_is_not_printed(visit: Visit, site: Path, library: Library, start_key: str):
    page = opened(visit, site, ground(library, library.keys[start_key]))
    for key in "uuuu":
        page.keyboard.press(key)
    page.emulate_media(media="print")
    assert page.locator(".wm-stuck").is_hidden() and page.locator(".wm-jump").is_hidden()
