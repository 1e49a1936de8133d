"""Where a walk ends on the page: one end with what it means and what to do next, or several with what to look at again."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import CANNOT_TELL, Answer, Answers, Arrival, Ground, address, arrivals, carried, ground, stand
from keytool.library import Library, load
from keytool.library.wording import LIKELY, mark, meaning, name_of, plain, sureness_words, telling_group
from keytool.pages.entry_page import entry_page
from keytool.pages.key_data import WRITING_DOWN, key_data
from keytool.pages.key_page import key_page
from keytool.pages.page_writer import Writer
from tests.pages.conftest import PHONE, Seen
from tests.pages.test_key_page import url, walk_to

Visit = Callable[..., Seen]
OVERLAP = "They share members, so the figures overlap."
SIZES = "all => all.map(each => { const box = each.getBoundingClientRect(); return [box.width, box.height]; })"


def left_open(it: Ground, answers: Answers = ()) -> Answers:
    """The walk that goes on from some answers with nothing but "cannot tell", to its end."""
    while asks := stand(it, answers).asks:
        answers = (*answers, Answer(asks, CANNOT_TELL))
    return answers


def unsettled(it: Ground) -> list[Answers]:
    """Walks of a key that end at several ends, its last question left open: one where figures overlap, one where none do."""
    walks: dict[bool, Answers] = {}
    for couplet in it.key.couplets.values():
        if couplet.id != it.key.first and not any(lead.couplet for lead in couplet.leads.values()):
            answers = (*walk_to(it, couplet=couplet.id), Answer(couplet.id, CANNOT_TELL))
            if len(stand(it, answers).ends) > 1:
                walks.setdefault(overlaps(arrivals(it, answers, stand(it, answers))), answers)
    return list(walks.values())


def overlaps(found: tuple[Arrival, ...]) -> bool:
    return any(set(one.members) & set(other.members) for one, other in combinations(found, 2))


def arrive(page: Any, answers: Answers) -> Any:
    """Goes to the end of a walk on a page that is open; what stands there."""
    page.evaluate("hash => { location.hash = hash }", address(answers))
    page.wait_for_function("count => document.querySelectorAll('.wm-step').length === count", arg=len(answers))
    return page.locator(".wm-arrival")


def without_tags(html: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


@pytest.mark.browser
def test_several_ends_are_buttons_the_likeliest_first_with_what_to_look_at_again(
    visit: Visit, site: Path, library: Library, start_key: str
):
    overlapping, keys, folds = set(), 0, 0
    for key in library.keys.values():
        it = ground(library, key)
        page = visit(url(site, key.id), **PHONE).page
        for answers in [*unsettled(it), *([left_open(it)] if key.id == start_key else [])]:
            found = arrivals(it, answers, stand(it, answers))
            arrival = arrive(page, answers)
            assert arrival.locator("h2").inner_text() == "Not settled. It is one of these, most likely first."
            ends = arrival.locator(".wm-one-of")
            assert ends.evaluate_all("all => all.map(each => [...each.children].map(part => part.textContent))") == [
                [f"{'Go on to the key: ' * (each.end in library.keys)}{name_of(library, each.end)}", sureness_words(round(each.sure, 9))]
                for each in found
            ]
            rare = [each for each in found[2:] if each.sure < 0.05]
            if len(rare) > 1:
                arrival.locator("summary", has_text=f"And {len(rare)} more, each under 5 %").tap()
                folds += 1
            assert all(width > 320 and height >= 44 for width, height in ends.evaluate_all(SIZES))
            assert (OVERLAP in arrival.inner_text()) == overlaps(found), (key.id, address(answers))
            first = next(each.couplet for each in answers if each.lead == CANNOT_TELL)
            assert arrival.locator("button").all_inner_texts() == [f"Look again: {plain(library, key.couplets[first].asks)}"]
            assert arrival.locator(".wm-stuck li").first.is_visible(), "what to change at the microscope is unfolded"
            overlapping.add(overlaps(found))
            keys += any(each.end in library.keys for each in found)
    assert overlapping == {True, False} and keys and folds


@pytest.mark.browser
def test_cautions_of_several_ends_are_given_once(visit: Visit, site: Path, library: Library, start_key: str):
    it = ground(library, library.keys[start_key])
    page = visit(url(site, start_key)).page
    answers = left_open(it)
    ends = [library.entries[each] for each in stand(it, answers).ends if each in library.entries]
    wanted = {library.cautions[id].title for each in ends for id in each.cautions if id not in it.key.cautions}
    assert wanted and sorted(arrive(page, answers).locator(".wm-caution > strong").all_inner_texts()) == sorted(wanted)


@pytest.mark.browser
def test_looking_again_folds_the_advice_and_asks_the_first_question_left_open(visit: Visit, site: Path, library: Library, start_key: str):
    it = ground(library, library.keys[start_key])
    answers = left_open(it, walk_to(it, couplet=list(it.key.couplets)[1]))
    page = visit(url(site, it.key.id, address(answers))).page
    page.locator(".wm-controls button", has_text="Back").click()
    page.locator(".wm-asked h3").wait_for(timeout=3000)
    assert page.locator(".wm-stuck").get_attribute("open") is None
    page.go_back()
    page.locator(".wm-arrival .wm-again button").click()
    first = next(index for index, each in enumerate(answers) if each.lead == CANNOT_TELL)
    page.locator(f'.wm-asked[data-couplet="{answers[first].couplet}"]').wait_for(timeout=3000, state="attached")
    assert page.locator(".wm-step").count() == first and page.locator(".wm-stuck").is_hidden()


@pytest.mark.browser
def test_an_end_that_is_not_likely_is_only_perhaps(visit: Visit, site: Path, library: Library):
    seen = set()
    for key in library.keys.values():
        it = ground(library, key)
        page = visit(url(site, key.id)).page
        sure = {end: arrivals(it, answers, stand(it, answers))[0].sure for end in it.within for answers in [walk_to(it, end)]}
        for end in {min(sure, key=sure.__getitem__), max(sure, key=sure.__getitem__)}:
            arrival = arrive(page, walk_to(it, end))
            head = f"{'Perhaps: ' * (sure[end] < LIKELY)}{name_of(library, end)}"
            assert arrival.locator("h2").inner_text() == head
            seen.add(sure[end] < LIKELY)
    assert seen == {True, False}


@pytest.mark.browser
def test_at_another_key_it_says_what_is_sure(visit: Visit, site: Path, library: Library, start_key: str):
    it = ground(library, library.keys[start_key])
    page = visit(url(site, start_key)).page
    for end in it.within:
        answers = walk_to(it, end)
        arrive(page, answers)
        said = page.locator(".wm-sure").inner_text()
        sure = sureness_words(arrivals(it, answers, stand(it, answers))[0].sure)
        assert said.startswith(f"That it belongs in the next key: {sure}. " if end in library.keys else f"{sure}. ")
        assert page.locator(".wm-next").count() == (end in library.entries)


def test_every_end_says_what_it_means_with_its_basis(library: Library):
    of_groups = 0
    for key in library.keys.values():
        text = key_page(ground(library, key)).text
        for end in {lead.end for couplet in key.couplets.values() for lead in couplet.leads.values() if lead.end}:
            article = text.split(f'data-end="{end}">')[1].split("</article>")[0]
            lines = re.findall(r'<div class="wm-means">(.*?</details>)</div>', article, re.DOTALL)
            wanted = meaning(library, library.entries[end])
            assert len(lines) == len(wanted), end
            for line, (teller, said) in zip(lines, wanted, strict=True):
                words = without_tags(line)
                assert words.startswith("What it means:" if teller.id == end else f"As all of {teller.name}"), end
                assert f'<span aria-hidden="true">{mark(library, said.basis)}</span>' in line
                of_groups += teller.id != end
    assert of_groups > 20


def test_the_page_of_an_entry_also_says_what_its_nearest_group_means(library: Library):
    entry = next(each for each in library.entries.values() if (group := telling_group(library, each)) and len(group.tells) > 1)
    group = telling_group(library, entry)
    assert group
    text = entry_page(library, (), entry).text
    section = text.split("#means }")[1].split("\n## ")[0]
    own, inherited = section.split("As all of ", 1)
    assert inherited.startswith(f'<a href="{group.id}.html">{group.name}</a>:')
    assert own.count("wm-said") == len(entry.tells) and inherited.count("wm-said") == len(group.tells)


@pytest.mark.browser
def test_after_a_name_comes_writing_it_down(visit: Visit, site: Path, library: Library):
    it = ground(
        library, next(each for each in library.keys.values() if not any(end in library.keys for end in ground(library, each).within))
    )
    page = visit(url(site, it.key.id, address(walk_to(it, next(iter(it.within))))), **PHONE).page
    following = page.locator(".wm-arrival .wm-next")
    assert following.inner_text() == "Next: write it down, then look at two more of its kind."
    assert following.locator("a").evaluate_all(SIZES)[0][1] >= 44
    following.locator("a").tap()
    page.wait_for_url(f"**/guides/{WRITING_DOWN}.html")


def test_a_library_without_that_guide_does_not_link_it(mini_root: Path):
    library = load(mini_root).library
    key = next(iter(library.keys.values()))
    assert WRITING_DOWN not in library.guides
    assert json.loads(key_data(Writer(library, f"keys/{key.id}.md"), ground(library, key)))["writing"] == ""


def onward_with_something_settled(library: Library) -> tuple[Ground, Answers, str]:
    """A walk to another key that has settled its first question, and the address there."""
    for key in library.keys.values():
        it = ground(library, key)
        for end in it.within:
            last = walk_to(it, end)[-1]
            if end in library.keys and (there := carried(library, key, last.couplet, last.lead)):
                return it, walk_to(it, end), there
    raise AssertionError("no key hands on what is settled")


@pytest.mark.browser
def test_the_next_key_begins_after_what_is_settled_and_says_what_to_take_care_of(visit: Visit, site: Path, library: Library):
    it, answers, there = onward_with_something_settled(library)
    page = visit(url(site, it.key.id, address(answers)), **PHONE).page
    page.locator(".wm-onward a").tap()
    page.wait_for_url(f"**#{there}")
    following = library.keys[answers_end(it, answers)]
    asked = page.locator(".wm-asked").get_attribute("data-couplet")
    assert asked != following.first and page.locator(".wm-step").count() == there.count("=")
    assert page.locator(".wm-before > summary").is_visible(), "its cautions have not been read yet"
    page.keyboard.press("1")
    page.locator(".wm-before > summary").wait_for(state="hidden")


def answers_end(it: Ground, answers: Answers) -> str:
    (end,) = stand(it, answers).ends
    return end


@pytest.mark.browser
def test_nothing_is_settled_where_a_question_was_left_open(visit: Visit, site: Path, library: Library):
    it, answers, there = onward_with_something_settled(library)
    doubted = (Answer(answers[0].couplet, CANNOT_TELL),)
    for each in answers[1:]:
        while (asks := stand(it, doubted).asks) and asks != each.couplet:
            doubted = (*doubted, Answer(asks, CANNOT_TELL))
        doubted = (*doubted, each) if asks else doubted
    standing = stand(it, doubted)
    page = visit(url(site, it.key.id, address(doubted))).page
    links: list[Any] = page.locator(".wm-arrival a.wm-button").evaluate_all("all => all.map(each => each.getAttribute('href'))")
    assert not standing.asks and links and not any(there in each for each in links)
