"""Where a walk ends on the page: one line, a few names, one look, and no word that the name arrived at does not share."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import ground
from keytool.library import Library
from keytool.library.wording import mark, meaning, name_of, telling_group
from keytool.pages.entry_page import entry_page
from keytool.pages.figure_files import FigureFiles
from keytool.pages.whole_key_page import whole_key_page
from tests.pages.conftest import PHONE, Seen
from tests.pages.test_key_page import WAIT, address, url, walk_to

Visit = Callable[..., Seen]


def ends_of(library: Library, key: str) -> list[str]:
    couplets = library.keys[key].couplets.values()
    return list(dict.fromkeys(lead.end for couplet in couplets for lead in couplet.leads.values() if lead.end))


def arrive(page: Any, answers: Any) -> Any:
    """Goes to the end of a walk on a page that is open; what stands there."""
    page.evaluate("hash => { location.hash = hash }", address(answers))
    page.wait_for_function("count => document.querySelectorAll('.trail > li').length === count", arg=len(answers), timeout=WAIT)
    arrival = page.locator(".wm-arrival")
    arrival.wait_for(timeout=WAIT)
    return arrival


def without_tags(html: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


@pytest.mark.browser
def test_every_end_is_a_name_with_its_chance_and_at_most_five_names_beside(visit: Visit, site: Path, library: Library):
    open_ends = []
    for key in library.keys.values():
        it = ground(library, key)
        page = visit(url(site, key.id)).page
        ends = ends_of(library, key.id)[::4]
        ways = [(address(answers), len(answers)) for answers in (walk_to(it, end) for end in ends)]
        for end, (shown, odds, pairs, looks, text) in zip(ends, page.evaluate(ARRIVE_AT_EACH, ways), strict=True):
            if shown == library.say("not-settled"):
                open_ends.append(end)
                assert library.entries[end].name in text, "an end that is not settled names what is likeliest"
                continue
            assert shown in {each.name for each in library.entries.values()}
            assert re.fullmatch(r".*(under 5|over 95|\d+) in 100", odds)
            assert pairs <= 5
            assert looks <= 1
        page.close()
    assert len(open_ends) <= 1, open_ends


ARRIVE_AT_EACH = """async ways => {
    const count = what => document.querySelectorAll(what).length, seen = [];
    for (const [hash, length] of ways) {
        document.querySelectorAll('.wm-arrival').forEach(each => { each.dataset.before = ''; });
        location.hash = hash;
        while (count('.trail > li') !== length || !document.querySelector('.wm-arrival:not([data-before])')) {
            await new Promise(done => setTimeout(done));
        }
        const arrival = document.querySelector('.wm-arrival');
        seen.push([arrival.querySelector('h2').innerText, arrival.querySelector('.odds')?.innerText ?? '', count('.pairs > li'), count('.wm-look-next'), arrival.innerText]);
    }
    return seen; }"""
"""Walks to each end within the page; what stands there: the name, its chance, how many names beside, how many looks."""


@pytest.mark.browser
def test_no_caution_is_given_that_the_name_arrived_at_does_not_share(visit: Visit, site: Path, library: Library):
    by_name = {each.name: each for each in library.entries.values()}
    for key in list(library.keys.values())[:5]:
        it = ground(library, key)
        page = visit(url(site, key.id)).page
        for end in ends_of(library, key.id)[::5]:
            arrival = arrive(page, walk_to(it, end))
            if arrival.locator("h2").inner_text() == library.say("not-settled"):
                continue
            entry = by_name[arrival.locator("h2").inner_text()]
            given = arrival.locator(".wm-caution strong").all_inner_texts()
            own = [library.cautions[each].title for each in entry.cautions]
            likely = {each.title for each in library.cautions.values() if each.when_likely}
            assert given[: len(own)] == own and set(given[len(own) :]) <= likely, "only a duty to tell may be given before it is settled"


@pytest.mark.browser
def test_after_the_end_one_can_still_go_back_or_tell_more(visit: Visit, site: Path, library: Library):
    key = library.keys["nematode-mouthparts"]
    answers = walk_to(ground(library, key), ends_of(library, key.id)[-1])
    page = visit(url(site, key.id, address(answers)), **PHONE).page
    page.locator(".wm-arrival").wait_for(timeout=WAIT)
    assert page.locator('[data-does="also"]').is_visible() and page.locator(".btn.main").is_visible()
    page.locator('[data-does="back"]').tap()
    page.locator(f'.wm-couplet[data-couplet="{answers[-1].couplet}"]').wait_for(timeout=WAIT)


@pytest.mark.browser
def test_the_one_look_that_settles_most_is_answered_on_the_spot(visit: Visit, site: Path, library: Library):
    key = library.keys["nematode-mouthparts"]
    it = ground(library, key)
    page = visit(url(site, key.id), **PHONE).page
    for end in ends_of(library, key.id):
        arrive(page, walk_to(it, end))
        answer = page.locator(".wm-look-next .wm-lead").first
        if answer.count():
            answer.tap()
            page.wait_for_function("() => location.hash.includes('saw:')", timeout=WAIT)
            page.locator(".wm-arrival h2").wait_for(timeout=WAIT)
            return
    raise AssertionError("no end of this key has a look to offer")


def test_every_end_of_the_whole_key_says_what_it_means_with_its_basis(library: Library):
    of_groups = 0
    for key in library.keys.values():
        text = whole_key_page(ground(library, key), FigureFiles()).text
        for end in ends_of(library, key.id):
            article = text.split(f'data-end="{end}">')[1].split("</article>")[0]
            lines = re.findall(r'<div class="wm-means">(.*?</details>)</div>', article, re.DOTALL)
            wanted = meaning(library, library.entries[end])
            assert len(lines) == len(wanted), end
            for line, (teller, said) in zip(lines, wanted, strict=True):
                assert teller.id == end or without_tags(line).startswith(f"As all of {teller.name}"), end
                assert f">{mark(library, said.basis)}</span>" in line
                of_groups += teller.id != end
            assert name_of(library, end) in without_tags(article)
    assert of_groups > 20


def test_the_page_of_an_entry_also_says_what_its_nearest_group_means(library: Library):
    entry = next(each for each in library.entries.values() if (group := telling_group(library, each)) and len(group.tells) > 1)
    group = telling_group(library, entry)
    assert group
    text = entry_page(library, (), entry).text
    assert f'As all of <a href="{group.id}.html">{group.name}</a>' in text
