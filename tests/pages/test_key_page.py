"""The page of a key: a first question that is a key without any script, and one question at a time with it."""

from __future__ import annotations

import gzip
import re
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

import pytest

from keytool.identify import Answer, Answers, Ground, Leg, Trail, compiled, compiled_for, evaluate, ground, sure_leads
from keytool.library import Library
from keytool.library.wording import name_of, plain
from tests.pages.conftest import PHONE, Seen

pytestmark = pytest.mark.browser

Visit = Callable[..., Seen]
WAIT = 20_000
"""ms; the machine that runs the tests may be busy."""
WINDOWS = {"phone with bars": (390, 664), "desk": (1440, 900), "phone on its side": (844, 390)}
SHIFT = """() => { self.shifted = 0; new PerformanceObserver(list => list.getEntries().forEach(each => {
    if (!each.hadRecentInput) self.shifted += each.value; })).observe({type: 'layout-shift', buffered: true}); }"""
SMALL_TARGETS = """() => [...document.querySelectorAll('main :is(button, summary, a.wm-lead, a.btn, .btn)')]
    .filter(each => each.checkVisibility() && !each.closest('details.wm-basis, details.basis'))
    .map(each => [each.textContent.trim().slice(0, 40), each.getBoundingClientRect()])
    .filter(([, box]) => box.width > 0 && (box.width < 43.9 || box.height < 43.9))
    .map(([name, box]) => [name, box.width, box.height])"""


@pytest.fixture(scope="session")
def it(library: Library, start_key: str) -> Ground:
    return ground(library, library.keys[start_key])


def url(site: Path, key: str, walk: str = "") -> str:
    return f"{(site / 'keys' / key).as_uri()}.html" + (f"#{walk}" if walk else "")


def address(answers: Answers) -> str:
    return "/".join(f"{each.couplet}={each.lead}" for each in answers)


def question(page: Any) -> Any:
    return page.locator(".wm-key > .wm-couplet")


def asks(page: Any, couplet: str) -> None:
    """Waits until a couplet is asked, and nothing else is."""
    page.locator(f'.wm-key > .wm-couplet[data-couplet="{couplet}"]').wait_for(timeout=WAIT)
    assert question(page).count() == 1


SURE: dict[str, Mapping[str, str]] = {}


def passed_over(it: Ground) -> Mapping[str, str]:
    """The questions passed over as likely while one key is walked, each with the answer taken."""
    if it.key.id not in SURE:
        SURE[it.key.id] = sure_leads(compiled_for(it.library, it.key), it.key.id)
    return SURE[it.key.id]


def walks(it: Ground, at: str = "", before: Answers = ()) -> Iterator[Answers]:
    """Every walk of a key from its first question to an end or another key, as it is asked."""
    couplet = it.key.couplets[at or it.key.first]
    taken = passed_over(it).get(couplet.id)
    for lead in couplet.leads.values():
        steps = before if lead.id == taken else (*before, Answer(couplet.id, lead.id))
        if taken and lead.id != taken:
            continue
        if lead.couplet:
            yield from walks(it, lead.couplet, steps)
        else:
            yield steps


def walk_to(it: Ground, end: str = "", couplet: str = "") -> Answers:
    """The shortest walk of the key to an end or to a couplet; what is passed over as likely is answered only where it is not so."""
    waiting: list[tuple[str, Answers]] = [(it.key.first, ())]
    while waiting:
        at, answers = waiting.pop(0)
        for lead in it.key.couplets[at].leads.values():
            steps = answers if passed_over(it).get(at) == lead.id else (*answers, Answer(at, lead.id))
            if lead.couplet == couplet if couplet else not lead.couplet and lead.goes_to == end:
                return steps
            if lead.couplet:
                waiting.append((lead.couplet, steps))
    raise AssertionError(end or couplet)


def to_a_name(it: Ground) -> Answers:
    """The longest walk of the key that ends at an entry which is then named; the longest of all where none is."""
    model = compiled(it.library)
    ends = [each for each in walks(it) if it.key.couplets[each[-1].couplet].leads[each[-1].lead].end]
    for each in sorted(ends, key=len, reverse=True):
        if evaluate(model, Trail(legs=(Leg(it.key.id, each),))).result.verdict:
            return each
    return max(ends, key=len)


def press(page: Any, it: Ground, each: Answer) -> None:
    page.keyboard.press(str(1 + list(it.key.couplets[each.couplet].leads).index(each.lead)))


# --- without a script ------------------------------------------------------------------------------------


def test_the_page_is_its_first_question_and_each_answer_leads_on_without_a_script(visit: Visit, site: Path, library: Library):
    for key in library.keys.values():
        page = visit(url(site, key.id), java_script_enabled=False, **PHONE).page
        first = key.couplets[key.first]
        assert question(page).count() == 1 and plain(library, first.asks) == question(page).locator("h2").inner_text()
        for lead in first.leads.values():
            link = page.locator(f'[data-lead="{lead.id}"]')
            assert plain(library, lead.text) in link.inner_text()
            there = urlsplit(link.evaluate("each => each.href"))
            file = Path(unquote(there.path))
            assert file.is_file() and (not there.fragment or f'id="{there.fragment}"' in file.read_text("utf-8")), (key.id, lead.id)


def test_the_whole_key_has_every_couplet_lead_and_end_without_a_script(visit: Visit, site: Path, library: Library):
    for key in library.keys.values():
        page = visit(url(site, f"whole/{key.id}"), java_script_enabled=False).page
        shown = page.evaluate(
            """() => Object.fromEntries([...document.querySelectorAll('[data-couplet]')].map(each => [each.dataset.couplet, [
                each.querySelector('h2').textContent, each.querySelector('.wm-number').textContent,
                [...each.querySelectorAll('[data-lead]')].map(lead => [lead.dataset.lead, lead.getAttribute('href'),
                    lead.querySelector('.wm-goes').textContent])]]))"""
        )
        assert list(shown) == list(key.couplets)
        for couplet in key.couplets.values():
            asked, number, leads = shown[couplet.id]
            assert asked == plain(library, couplet.asks) and number == str(couplet.number)
            for (id, href, goes), lead in zip(leads, couplet.leads.values(), strict=True):
                assert id == lead.id
                if lead.couplet:
                    assert href == f"#couplet-{lead.couplet}" and goes == f"→ {key.couplets[lead.couplet].number}"
                else:
                    assert name_of(library, lead.goes_to) in goes
        for caution in key.cautions:
            assert page.locator(".wm-before").get_by_text(library.cautions[caution].title, exact=True).is_visible()
        assert page.locator(f'a[href="../{key.id}.html"]').count(), "it leads back to one question at a time"


def test_printing_the_whole_key_leaves_out_what_is_only_pressed(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, f"whole/{it.key.id}")).page
    page.emulate_media(media="print")
    assert page.locator(".wm-couplet:visible").count() == len(it.key.couplets)
    for chrome in (".dock", ".wm-one-by-one", ".top nav"):
        assert page.locator(f"{chrome}:visible").count() == 0, chrome


# --- light and still --------------------------------------------------------------------------------------


def test_a_first_visit_is_light(visit: Visit, site: Path, library: Library):
    """At most 160 kB, packed as a web server would, in at most 15 requests: all that a browser fetches for a key's page."""
    for key in library.keys.values():
        seen = visit(url(site, key.id), viewport={"width": 390, "height": 844})
        seen.page.wait_for_load_state("networkidle")
        files = [Path(unquote(urlsplit(each).path)) for each in dict.fromkeys(seen.requests) if each.startswith("file:")]
        weight = sum(len(gzip.compress(each.read_bytes(), 6)) for each in files)
        assert len(files) <= 15 and weight <= 160_000, (key.id, len(files), weight)


def test_nothing_jumps_as_the_page_comes_nor_with_an_answer(visit: Visit, site: Path, browser: Any, it: Ground):
    """Layout shift under 0.02."""
    for size in ({"width": 390, "height": 664}, {"width": 1440, "height": 900}):
        context = browser.new_context(viewport=size)
        page = context.new_page()
        page.add_init_script(f"({SHIFT})()")
        page.goto(url(site, it.key.id), wait_until="networkidle")
        page.wait_for_timeout(200)
        assert page.evaluate("self.shifted") < 0.02, size
        context.close()


def test_figures_are_files_that_pages_share(site: Path, it: Ground):
    first = (site / "keys" / f"{it.key.id}.html").read_text("utf-8")
    whole = (site / "keys" / "whole" / f"{it.key.id}.html").read_text("utf-8")
    mine = set(re.findall(r"figures/\w+\.svg", first))
    assert mine and mine <= set(re.findall(r"figures/\w+\.svg", whole))
    assert not re.search(r'<article[^>]*wm-couplet.*?<svg class="wm-figure', whole, re.DOTALL)


# --- a walk ----------------------------------------------------------------------------------------------------


def test_a_walk_by_keyboard_only_reaches_its_end(visit: Visit, site: Path, library: Library):
    it = ground(library, library.keys["nematode-mouthparts"])
    page = visit(url(site, it.key.id)).page
    answers = to_a_name(it)
    for index, each in enumerate(answers):
        asks(page, each.couplet)
        press(page, it, each)
        assert unquote(page.url).endswith("#" + address(answers[: index + 1]))
    head = page.locator(".wm-arrival h2")
    head.wait_for(timeout=WAIT)
    assert page.locator(".wm-arrival .odds").inner_text().endswith("in 100")
    assert page.evaluate("document.activeElement === document.querySelector('.wm-arrival h2')")
    assert page.locator(".pairs > li").count() <= 5, "at most five names"
    page.keyboard.press("b")
    asks(page, answers[-1].couplet)


def test_a_walk_by_touch_only_keeps_its_trail_and_an_early_answer_can_be_changed(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id), **PHONE).page
    answers = to_a_name(it)[:3]
    for each in answers:
        asks(page, each.couplet)
        page.locator(f'.wm-couplet [data-lead="{each.lead}"]').tap()
    steps = page.locator(".wm-step")
    page.wait_for_function("count => document.querySelectorAll('.wm-step').length === count", arg=3, timeout=WAIT)
    steps.nth(1).tap()
    asks(page, answers[1].couplet)
    assert page.locator(".wm-said-before").get_attribute("data-lead") == answers[1].lead
    other = next(each for each in it.key.couplets[answers[1].couplet].leads if each != answers[1].lead)
    page.locator(f'.wm-couplet [data-lead="{other}"]').tap()
    page.wait_for_function("part => decodeURIComponent(location.hash).includes(part)", arg=f"{answers[1].couplet}={other}", timeout=WAIT)
    assert f"{answers[2].couplet}={answers[2].lead}" in unquote(page.url), "what was answered after it stays"


def test_back_is_one_step_back_by_button_key_and_browser(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id)).page
    first, second, third = max(walks(it), key=len)[:3]
    asks(page, first.couplet)
    press(page, it, first)
    asks(page, second.couplet)
    page.locator('[data-does="back"]').click()
    asks(page, first.couplet)
    press(page, it, first)
    press(page, it, second)
    asks(page, third.couplet)
    page.keyboard.press("Backspace")
    asks(page, second.couplet)
    page.go_back()
    asks(page, first.couplet)
    page.go_forward()
    asks(page, second.couplet)


def test_a_reload_in_the_middle_and_a_link_bring_the_walk_back(visit: Visit, site: Path, it: Ground):
    answers = max(walks(it), key=len)[:3]
    page = visit(url(site, it.key.id, address(answers[:2]))).page
    asks(page, answers[2].couplet)
    page.reload()
    asks(page, answers[2].couplet)
    page.locator('[data-does="cannot-tell"]').click()
    page.wait_for_function("() => location.hash.includes('cannot-tell')", timeout=WAIT)
    there = question(page).locator("h2").inner_text()
    page.reload()
    page.locator(".wm-key > .wm-couplet h2", has_text=there).wait_for(timeout=WAIT)


def test_cannot_tell_asks_on_and_what_it_may_be_can_be_seen_at_any_time(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id), **PHONE).page
    first = max(walks(it), key=len)[0]
    page.locator(f'[data-lead="{first.lead}"]').tap()
    page.locator('[data-does="cannot-tell"]').tap()
    page.wait_for_function("() => location.hash.includes('cannot-tell')", timeout=WAIT)
    fold = page.locator(".wm-now > summary")
    fold.tap()
    page.locator(".wm-now .big").wait_for(timeout=WAIT)
    assert page.locator(".wm-left").get_attribute("role") == "status"


def test_what_was_seen_besides_is_told_at_any_step_and_taken_back(visit: Visit, site: Path, library: Library):
    page = visit(url(site, "nematode-mouthparts"), **PHONE).page
    before = question(page).locator("h2").inner_text()
    page.locator('[data-does="also"]').tap()
    page.locator(".wm-say input").wait_for(timeout=WAIT)
    page.locator(".wm-say input").fill("tail drawn out")
    row = page.locator(".wm-say .seen .wm-row", has_text="Tail: ").first
    row.wait_for(timeout=WAIT)
    page.locator(".wm-say .wm-take").tap()
    page.wait_for_function("() => location.hash.includes('saw:tail=')", timeout=WAIT)
    question(page).wait_for(timeout=WAIT)
    assert question(page).locator("h2").inner_text() == before, "the walk goes on where it was"
    page.locator(".wm-take-back").last.tap()
    page.wait_for_function("() => !location.hash.includes('saw:')", timeout=WAIT)


def test_another_key_goes_on_with_the_whole_trail_and_back_leads_to_the_last_question(
    visit: Visit, site: Path, it: Ground, library: Library
):
    answers = walk_to(it, "threads")
    page = visit(url(site, it.key.id, address(answers[:-1]))).page
    asks(page, answers[-1].couplet)
    press(page, it, answers[-1])
    page.wait_for_url("**/keys/threads.html#**", timeout=WAIT)
    page.locator(".trail").wait_for(timeout=WAIT)
    assert page.locator(".trail > li").count() == len(answers)
    assert address(answers) in unquote(page.url)
    assert page.url.count("key:threads") == 1, "the key gone on to is named once"
    page.go_back()
    page.wait_for_url(f"**/keys/{it.key.id}.html#**", timeout=WAIT)
    asks(page, answers[-1].couplet)


def test_a_link_to_a_couplet_of_the_printed_key_still_works(visit: Visit, site: Path, it: Ground):
    last = list(it.key.couplets)[-1]
    page = visit(url(site, it.key.id, f"couplet-{last}")).page
    page.wait_for_url(f"**/keys/whole/{it.key.id}.html#couplet-{last}", timeout=WAIT)


def test_after_cannot_tell_back_takes_back_what_was_told_last(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id), **PHONE).page
    page.locator('[data-does="cannot-tell"]').tap()
    page.wait_for_function("() => location.hash.includes('cannot-tell')", timeout=WAIT)
    page.locator(".wm-trail li").first.wait_for(timeout=WAIT)
    before = page.url
    page.locator('[data-does="cannot-tell"]').tap()
    page.wait_for_function("before => location.href !== before", arg=before, timeout=WAIT)
    page.locator('[data-does="back"]').tap()
    page.wait_for_function("before => location.href === before", arg=before, timeout=WAIT)


def test_after_an_end_a_question_stands_alone_again(visit: Visit, site: Path, it: Ground):
    """What stood below an end, such as the way to writing it down, goes with it."""
    page = visit(url(site, it.key.id, address(to_a_name(it))), **PHONE).page
    page.locator(".wm-arrival").wait_for(timeout=WAIT)
    page.locator(".wm-step").first.tap()
    question(page).wait_for(timeout=WAIT)
    assert page.locator(".wm-estimate, .wm-rivals, .wm-look-next").count() == 0


def test_advice_that_is_folded_on_a_small_window_opens_by_a_tap(visit: Visit, site: Path):
    page = visit(url(site, "small-animals"), **PHONE).page
    more = page.locator(".wm-look-more")
    more.wait_for(timeout=WAIT)
    more.tap()
    assert page.evaluate("(look => look.scrollHeight <= look.clientHeight + 4)(document.querySelector('.wm-look'))")


@pytest.mark.parametrize("rubbish", ["gone=away", "__proto__=x/constructor=y", "%%%/=/key:no-such/saw:tail=nowhere"])
def test_a_link_with_rubbish_in_it_says_what_was_left_out_and_goes_on(visit: Visit, site: Path, it: Ground, rubbish: str):
    first = max(walks(it), key=len)[0]
    seen = visit(url(site, it.key.id, f"{address((first,))}/{rubbish}"))
    seen.page.wait_for_function("() => document.querySelector('.wm-message').textContent.includes('left out')", timeout=WAIT)
    assert question(seen.page).is_visible() and seen.page.locator(".wm-step").count() == 1
    assert seen.said == []


def test_a_walk_works_where_storage_is_refused(visit: Visit, site: Path, browser: Any, it: Ground):
    context = browser.new_context()
    page = context.new_page()
    said: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.add_init_script("Object.defineProperty(self, 'localStorage', { get() { throw new Error('refused'); } })")
    page.goto(url(site, it.key.id))
    first, second = max(walks(it), key=len)[:2]
    press(page, it, first)
    asks(page, second.couplet)
    page.get_by_role("button", name="Answer with keys 1").click()
    page.keyboard.press("1")
    asks(page, second.couplet)
    assert said == []
    context.close()


def test_what_answers_need_is_fetched_while_the_first_question_is_read(visit: Visit, site: Path, it: Ground):
    """On an old phone it takes half a second to read: time that a tap would wait for."""
    seen = visit(url(site, it.key.id))
    seen.page.wait_for_function("() => Boolean(self.wetmount.ready)")
    asks(seen.page, it.key.first)
    assert seen.page.locator(".wm-key .wm-message").inner_text() == ""
    assert seen.said == []


def test_single_keys_can_be_switched_off_for_good(visit: Visit, site: Path, it: Ground):
    """WCAG 2.2, success criterion 2.1.4."""
    page = visit(url(site, it.key.id)).page
    page.get_by_role("button", name="Answer with keys 1").click()
    for key in ("1", "2", "u", "0", "b", "s", "Backspace"):
        page.keyboard.press(key)
        asks(page, it.key.first)
    page.reload()
    page.keyboard.press("1")
    asks(page, it.key.first)
    page.locator("a.wm-lead").first.focus()
    page.keyboard.press("Enter")
    page.wait_for_function("() => location.hash.length > 1", timeout=WAIT)


def test_a_dotted_word_is_explained_in_place(visit: Visit, site: Path, library: Library):
    page = visit(url(site, "nematode-mouthparts", "outline=even"), **PHONE).page
    word = page.locator(".wm-key a.wm-term").first
    word.wait_for(timeout=WAIT)
    word.tap()
    note = page.locator(".wm-meaning")
    assert note.is_visible() and len(note.inner_text()) > 30 and word.get_attribute("aria-expanded") == "true"
    assert "/keys/nematode-mouthparts.html" in page.url
    note.locator("button").tap()
    assert note.count() == 0


def test_an_answer_moves_the_focus_to_the_next_question(visit: Visit, site: Path, it: Ground):
    page = visit(url(site, it.key.id)).page
    first, second = max(walks(it), key=len)[:2]
    press(page, it, first)
    asks(page, second.couplet)
    assert page.evaluate("document.activeElement === document.querySelector('.wm-couplet h2')")
    headings = page.evaluate("[...document.querySelectorAll('main :is(h1, h2, h3)')].map(each => each.tagName)")
    assert headings[:2] == ["H1", "H2"], "no level is left out"


@pytest.mark.parametrize("window", WINDOWS)
def test_every_answer_of_every_question_is_seen_above_the_bar(visit: Visit, site: Path, library: Library, window: str):
    width, height = WINDOWS[window]
    below = []
    for key in library.keys.values():
        it = ground(library, key)
        page = visit(url(site, key.id), viewport={"width": width, "height": height}, has_touch=width < 900, is_mobile=width < 900).page
        asks(page, key.first)
        ways = {couplet: "" if couplet == key.first else address(walk_to(it, couplet=couplet)) for couplet in key.couplets}
        reach = page.evaluate(ABOVE_THE_BAR, [ways, list(passed_over(it))])
        assert list(reach) == [couplet for couplet in key.couplets if couplet not in passed_over(it)]
        below += [(key.id, couplet, round(low - bar)) for couplet, (low, bar) in reach.items() if low > bar + 1]
        page.close()
    assert below == [], f"{len(below)} of {sum(len(each.couplets) for each in library.keys.values())}"


ABOVE_THE_BAR = """async ([ways, passed]) => {
    const reach = {}, asked = () => [...document.querySelectorAll('.wm-key > .wm-couplet')].map(each => each.dataset.couplet).join();
    const soon = async holds => { const end = performance.now() + 20000; while (!holds() && performance.now() < end) await new Promise(done => setTimeout(done)); };
    for (const [couplet, hash] of Object.entries(ways)) {
        if (passed.includes(couplet)) continue;
        if (hash) location.hash = hash;
        await soon(() => asked() === couplet);
        if (asked() !== couplet) throw new Error(`${hash} asks ${asked()}, not ${couplet}`);
        const box = document.querySelector('.wm-walk-dock').getBoundingClientRect();
        reach[couplet] = [Math.max(...[...document.querySelectorAll('.wm-couplet .wm-lead')].map(each => each.getBoundingClientRect().bottom)),
            box.width > innerWidth / 2 ? Math.min(box.top, innerHeight - box.height) : innerHeight];
    }
    return reach; }"""
"""Goes to each question that is asked within the page; how low its last answer reaches, and where the bar begins."""


def test_targets_are_large_and_nothing_scrolls_sideways_on_a_phone(visit: Visit, site: Path, library: Library):
    for key in list(library.keys.values())[:4]:
        page = visit(url(site, key.id), **PHONE).page
        it = ground(library, key)
        for answers in ((), to_a_name(it)[:-1]):
            if answers:
                page.evaluate("hash => { location.hash = hash }", address(answers))
                page.locator(".trail").wait_for(timeout=WAIT)
            assert page.evaluate(SMALL_TARGETS) == []
            assert page.evaluate("document.documentElement.scrollWidth") <= 360


def test_drawings_of_a_couplet_are_to_one_scale(visit: Visit, site: Path, library: Library):
    """Unless the page says otherwise, one micrometre is as long in every drawing of a question, whatever the window."""
    key = next(iter(library.keys.values()))
    for width in (360, 1000):
        page = visit(url(site, f"whole/{key.id}"), viewport={"width": width, "height": 800}).page
        zooms = page.evaluate(
            """() => [...document.querySelectorAll('.wm-couplet')].filter(each => !each.querySelector('.wm-scales')).map(each =>
                [...each.querySelectorAll('.drawn img')].map(img => img.getBoundingClientRect().width / img.getAttribute('width')))"""
        )
        assert all(max(each) < 1.06 * min(each) for each in zooms if each), "widths are whole pixels"
