"""The page of a key in a browser: printed without JavaScript, one question at a time with it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import CANNOT_TELL, Answer, Answers, Ground, address, arrivals, carried, ground, stand
from keytool.library import Library
from keytool.library.wording import name_of, plain, sureness_words
from tests.pages.conftest import PHONE, Seen

pytestmark = pytest.mark.browser

Visit = Callable[..., Seen]
SMALL_TARGETS = """() => [...document.querySelectorAll(
        '.wm-key button, .wm-key a.wm-lead, .wm-key a.wm-button, .wm-before > summary, .md-header__button')]
    .filter(each => each.checkVisibility())
    .map(each => [each.textContent.trim(), each.getBoundingClientRect()])
    .filter(([, box]) => box.width > 0 && (box.width < 48 || box.height < 48))
    .map(([name, box]) => [name, box.width, box.height])"""


@pytest.fixture(scope="session")
def it(library: Library, start_key: str) -> Ground:
    return ground(library, library.keys[start_key])


def url(site: Path, key: str, walk: str = "") -> str:
    return f"{(site / 'keys' / key).as_uri()}.html" + (f"#{walk}" if walk else "")


def asked(page: Any) -> str:
    return str(page.locator(".wm-asked h3").inner_text())


def a_walk(it: Ground) -> Answers:
    """The longest walk of the printed key."""

    def longest(at: str) -> Answers:
        leads = it.key.couplets[at].leads.values()
        return max(((Answer(at, lead.id), *(longest(lead.couplet) if lead.couplet else ())) for lead in leads), key=len)

    return longest(it.key.first)


def press(page: Any, it: Ground, answer: Answer) -> None:
    page.keyboard.press("u" if answer.lead == CANNOT_TELL else str(1 + list(it.key.couplets[answer.couplet].leads).index(answer.lead)))


def test_without_javascript_the_whole_key_is_there_and_linked(visit: Visit, site: Path, library: Library):
    for key in library.keys.values():
        page = visit(url(site, key.id), java_script_enabled=False).page
        for couplet in key.couplets.values():
            block = page.locator(f'[data-couplet="{couplet.id}"]')
            assert block.locator("h3").is_visible() and plain(library, couplet.asks) in block.locator("h3").inner_text()
            assert block.locator(".wm-number").inner_text() == str(couplet.number)
            for lead in couplet.leads.values():
                link = block.locator(f'[data-lead="{lead.id}"]')
                assert plain(library, lead.text) in link.inner_text()
                if lead.couplet:
                    assert link.get_attribute("href") == f"#couplet-{lead.couplet}"
                    assert f"→ {key.couplets[lead.couplet].number}" in link.inner_text()
                else:
                    assert name_of(library, lead.goes_to) in link.inner_text()
        for caution in key.cautions:
            assert page.locator(".wm-before").get_by_text(library.cautions[caution].title, exact=True).is_visible()
        assert page.locator(".wm-controls").count() == 0


def test_without_javascript_a_lead_goes_to_its_couplet(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id), java_script_enabled=False).page
    couplet = it.key.couplets[it.key.first]
    lead = next(each for each in couplet.leads.values() if each.couplet)
    page.locator(f'[data-couplet="{couplet.id}"] [data-lead="{lead.id}"]').click()
    assert page.url.endswith(f"#couplet-{lead.couplet}")


def test_one_question_at_a_time(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id)).page
    assert page.locator(".wm-couplet:visible h3").count() == 1
    assert asked(page) == plain(it.library, it.key.couplets[it.key.first].asks)
    assert page.locator(".wm-asked .wm-look").is_visible()


def test_a_walk_by_keyboard_reaches_its_end(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id)).page
    answers = a_walk(it)
    for index, each in enumerate(answers):
        assert asked(page) == plain(it.library, it.key.couplets[each.couplet].asks)
        press(page, it, each)
        assert page.url.endswith("#" + address(answers[: index + 1]))
    standing = stand(it, answers)
    arrival = arrivals(it, answers, standing)[0]
    shown = page.locator(".wm-arrival").inner_text()
    assert name_of(it.library, arrival.end) in shown and sureness_words(arrival.sure) in shown
    for rival in arrival.rivals:
        assert name_of(it.library, rival.end) in shown
        assert plain(it.library, it.key.couplets[rival.couplet].asks) in shown
    assert f"{len(standing.possible)} of {len(it.members)}" in page.locator(".wm-left").inner_text()


def test_a_walk_by_tap_and_its_trail(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id), **PHONE).page
    answers = a_walk(it)
    for each in answers:
        page.locator(f'.wm-asked [data-lead="{each.lead}"]').tap()
    assert page.locator(".wm-arrival h2").first.is_visible()
    steps = page.locator(".wm-step")
    assert steps.count() == len(answers)
    steps.nth(0).tap()
    assert asked(page) == plain(it.library, it.key.couplets[it.key.first].asks)


def test_every_end_of_every_key_says_what_python_says(visit: Visit, site: Path, library: Library):
    for key in library.keys.values():
        it = ground(library, key)
        page = visit(url(site, key.id)).page
        for end in it.within:
            answers = walk_to(it, end)
            page.evaluate("hash => { location.hash = hash }", address(answers))
            arrival = arrivals(it, answers, stand(it, answers))[0]
            page.locator(".wm-arrival h2").filter(has_text=name_of(library, end)).wait_for(timeout=2000)
            assert sureness_words(arrival.sure) in page.locator(".wm-sure").inner_text()
            onward = page.locator(".wm-onward a").get_attribute("href")
            there = carried(library, key, answers[-1].couplet, answers[-1].lead) if end in library.keys else ""
            assert onward == (f"{end}.html{'#' * bool(there)}{there}" if end in library.keys else f"../entries/{end}.html")
            if end in library.entries and library.entries[end].would_tell:
                assert plain(library, library.entries[end].would_tell) in page.locator(".wm-arrival").inner_text()


def walk_to(it: Ground, end: str = "", couplet: str = "") -> Answers:
    """The shortest walk of the printed key to an end or to a couplet."""
    waiting: list[tuple[str, Answers]] = [(it.key.first, ())]
    while waiting:
        at, answers = waiting.pop(0)
        for lead in it.key.couplets[at].leads.values():
            steps = (*answers, Answer(at, lead.id))
            if lead.couplet == couplet if couplet else not lead.couplet and lead.goes_to == end:
                return steps
            if lead.couplet:
                waiting.append((lead.couplet, steps))
    raise AssertionError(end or couplet)


def test_back_is_one_step_back_by_button_key_and_browser(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id)).page
    first, second, third = a_walk(it)[:3]

    def now_asks(each: Answer) -> None:
        page.locator(f'.wm-asked[data-couplet="{each.couplet}"] h3').wait_for(timeout=3000)

    now_asks(first)
    press(page, it, first)
    now_asks(second)
    page.locator(".wm-controls button", has_text="Back").click()
    now_asks(first)
    press(page, it, first)
    press(page, it, second)
    now_asks(third)
    page.keyboard.press("b")
    now_asks(second)
    page.go_back()
    now_asks(first)
    page.go_forward()
    now_asks(second)
    page.keyboard.press("Backspace")
    now_asks(first)
    assert page.locator(".wm-step").count() == 0


def test_cannot_tell_keeps_everything_possible_and_goes_on(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id)).page
    page.locator(".wm-controls button", has_text="Cannot tell").click()
    answers = (Answer(it.key.first, CANNOT_TELL),)
    standing = stand(it, answers)
    assert page.url.endswith("#" + address(answers))
    assert f"{len(it.members)} of {len(it.members)}" in page.locator(".wm-left").inner_text()
    assert asked(page) == plain(it.library, it.key.couplets[standing.asks].asks)
    while standing.asks:
        page.keyboard.press("u")
        answers = (*answers, Answer(standing.asks, CANNOT_TELL))
        standing = stand(it, answers)
    assert page.locator(".wm-one-of").count() == len(standing.ends)


def likeliest(it: Ground, answers: Answers) -> str:
    """The end with most chance of those that can still be reached."""
    standing = stand(it, answers)
    given = {each.couplet: each.lead for each in answers}
    ends, seen, waiting = set(), set(), [it.key.first]
    while waiting:
        at = waiting.pop()
        if at in seen:
            continue
        seen.add(at)
        leads = it.key.couplets[at].leads
        told = given.get(at, CANNOT_TELL)
        live = [told] if told != CANNOT_TELL else [id for id in leads if any(id in it.may[at][one] for one in standing.possible)]
        for lead in (leads[id] for id in live):
            (waiting.append if lead.couplet else ends.add)(lead.goes_to)
    return min(ends, key=lambda end: (-round(sum(standing.chance[id] for id in it.within[end]), 9), end))


def test_the_likeliest_end_is_said_as_what_it_is(visit: Visit, site: Path, library: Library):
    """An end that cannot be told is not passed over in favour of a rarer one with a name."""
    said = set()
    for key in library.keys.values():
        it = ground(library, key)
        page = visit(url(site, key.id)).page
        assert "Likeliest" not in page.locator(".wm-left").inner_text(), "before the first look there is nothing to go by"
        for couplet in list(key.couplets)[1:8]:
            answers = walk_to(it, couplet=couplet)
            page.evaluate("hash => { location.hash = hash }", address(answers))
            page.locator(f'.wm-asked[data-couplet="{couplet}"]').wait_for(state="attached")
            end = likeliest(it, answers)
            kind = "key" if end in library.keys else library.entries[end].kind
            words = {"key": "goes on in another key, ", "cannot-be-told": "cannot be told, "}.get(kind, "")
            assert f"Likeliest end: {words}{name_of(library, end)}: " in page.locator(".wm-left").inner_text()
            said.add(words)
    assert len(said) == 3


def test_a_shortcut_is_folded_and_stays_away_from_an_answer(visit: Visit, site: Path, library: Library):
    shortcut = next(iter(library.shortcuts.values()))
    it = ground(library, library.keys[shortcut.key])
    page = visit(url(site, shortcut.key)).page
    fold = page.locator(".wm-shortcut")
    assert f"fails at {len({each.entry for each in shortcut.fails})} entries" in fold.locator("summary").first.inner_text()
    assert fold.locator("q").first.is_hidden()
    page.evaluate("hash => { location.hash = hash }", address(a_walk(it)))
    page.locator(".wm-arrival h2").first.wait_for()
    assert fold.is_hidden()
    linked = visit(url(site, shortcut.key, f"shortcut-{shortcut.id}")).page
    assert linked.locator(".wm-shortcut q").first.is_visible(), "a link to it opens it"


def test_a_link_brings_the_walk_back(visit: Visit, site: Path, it: Ground):
    answers = a_walk(it)[:2]
    page = visit(url(site, it.key.id, address(answers))).page
    assert page.locator(".wm-step").count() == 2
    assert asked(page) == plain(it.library, it.key.couplets[stand(it, answers).asks].asks)
    page.locator(".wm-controls button", has_text="Back").click()
    page.wait_for_function("hash => location.hash === hash", arg="#" + address(answers[:1]))
    assert page.locator(".wm-step").count() == 1


def test_a_link_that_no_longer_fits_says_so_and_goes_on(visit: Visit, site: Path, it: Ground):
    first = a_walk(it)[0]
    seen = visit(url(site, it.key.id, f"{address((first,))}/gone=away"))
    assert "'gone' is not a couplet" in seen.page.locator(".wm-message").inner_text()
    assert seen.page.locator(".wm-step").count() == 1 and seen.said == []


def test_the_link_can_be_copied_or_taken_by_hand(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id, address(a_walk(it)[:1]))).page
    page.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject(new Error('denied')); }")
    page.locator("button", has_text="Copy a link").click()
    assert page.locator(".wm-link").input_value() == page.url


def test_the_whole_key_can_be_seen_and_left_again(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id)).page
    page.locator("button", has_text="whole key").click()
    assert page.locator(".wm-couplet:visible").count() == len(it.key.couplets)
    page.locator("button", has_text="one question").click()
    assert page.locator(".wm-couplet:visible h3").count() == 1
    linked = visit(url(site, it.key.id, f"couplet-{list(it.key.couplets)[-1]}")).page
    assert linked.locator(".wm-couplet:visible").count() == len(it.key.couplets)


def test_targets_are_large_and_nothing_scrolls_sideways_on_a_phone(visit: Visit, site: Path, library: Library):
    for key in library.keys.values():
        page = visit(url(site, key.id), **PHONE).page
        it = ground(library, key)
        for end in (None, *list(it.within)[:3]):
            if end:
                page.evaluate("hash => { location.hash = hash }", address(walk_to(it, end)))
            small = page.evaluate(SMALL_TARGETS)
            assert small == []
            assert page.evaluate("document.documentElement.scrollWidth") <= 360


def test_question_and_leads_are_seen_without_scrolling_on_a_phone(visit: Visit, site: Path, library: Library):
    """All that is needed to answer: the question, how to see it, every lead, and Cannot tell and Back."""
    below = []
    for key in library.keys.values():
        it = ground(library, key)
        page = visit(url(site, key.id), **PHONE).page
        for couplet in list(key.couplets)[1:]:
            page.evaluate("hash => { location.hash = hash }", address(walk_to(it, couplet=couplet)))
            page.locator(f'.wm-asked[data-couplet="{couplet}"]').wait_for(state="attached")
            low = page.evaluate(
                "Math.max(...[...document.querySelectorAll('.wm-asked .wm-lead')].map(e => e.getBoundingClientRect().bottom))"
            )
            if low > 740 - 60:
                below.append((key.id, couplet, round(low)))
    assert len(below) <= sum(len(key.couplets) for key in library.keys.values()) // 10, below


def test_drawings_of_a_couplet_are_to_one_scale(visit: Visit, site: Path, library: Library):
    """Unless the page says otherwise, one micrometre is as long in every drawing of a question, whatever the window."""
    key = next(iter(library.keys.values()))
    for width in (360, 1000):
        page = visit(url(site, key.id), viewport={"width": width, "height": 800}, java_script_enabled=False).page
        for block in page.locator(".wm-couplet").all():
            if "not at one scale" in block.inner_text():
                continue
            zoom = [svg.bounding_box()["width"] / float(svg.get_attribute("width")) for svg in block.locator("svg.wm-figure").all()]
            assert not zoom or max(zoom) < 1.01 * min(zoom)


def test_printing_gives_the_whole_key_and_no_chrome(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id, address(a_walk(it)))).page
    page.emulate_media(media="print")
    assert page.locator(".wm-couplet:visible").count() == len(it.key.couplets)
    for chrome in (".md-header", ".md-tabs", ".wm-controls", ".wm-tools", ".wm-trail", ".md-footer", ".wm-arrival"):
        assert page.locator(f"{chrome}:visible").count() == 0, chrome
    assert page.locator(".wm-goes:visible").count() == sum(len(each.leads) for each in it.key.couplets.values())
