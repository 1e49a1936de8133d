"""The site opened from a folder: no request leaves it, the console stays silent, and everyone can read it."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from keytool.library import Library
from tests.pages.conftest import PHONE, Seen, an_entry

pytestmark = pytest.mark.browser

Visit = Callable[..., Seen]
TAGS = ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"]


def test_no_request_leaves_the_folder_and_nothing_is_said(visit: Visit, site: Path, kinds: list[str]):
    seen = visit((site / kinds[0]).as_uri())
    for path in kinds:
        seen.page.goto((site / path).as_uri())
        seen.page.wait_for_timeout(100)
        assert [each for each in seen.requests if not each.startswith(("file:", "data:", "blob:"))] == [], path
        assert seen.said == [], path


@pytest.mark.parametrize("half", [0, 1])
@pytest.mark.parametrize("width", [390, 1440])
def test_pages_pass_the_accessibility_rules(visit: Visit, site: Path, kinds: list[str], width: int, half: int):
    """Every rule of WCAG 2.0 to 2.2, A and AA, that axe can check, and its rules for landmarks and names, in light, dark and dim.

    All of them are run in light. In dark and dim the page is held to be the same but for its colours, box by box; then only the rules
    about colours can come out otherwise, and they are run.
    """
    phone = {"has_touch": True, "is_mobile": True} if width < 960 else {}
    page = visit((site / kinds[half]).as_uri(), viewport={"width": width, "height": 844}, color_scheme="light", **phone).page
    for path in kinds[half::2]:
        page.goto((site / path).as_uri())
        assert problems(page, *TAGS, "best-practice") == [], path
        assert problems_of_colour(page) == {"dark": [], "dim": []}, path
        page.emulate_media(color_scheme="light")


@pytest.mark.parametrize("scheme", ["dark", "dim"])
def test_the_first_page_passes_every_rule_in_the_dark_as_well(visit: Visit, site: Path, kinds: list[str], scheme: str):
    page = visit((site / kinds[0]).as_uri(), color_scheme="dark", **PHONE).page
    if scheme == "dim":
        page.evaluate("localStorage.setItem('wetmount.scheme', 'dim')")
        page.reload()
    assert page.evaluate("document.documentElement.dataset.scheme || ''") == {"dark": "", "dim": "dim"}[scheme]
    assert problems(page, *TAGS, "best-practice") == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_walk_and_its_end_pass_the_accessibility_rules(visit: Visit, site: Path, start_key: str, scheme: str):
    page = visit((site / "keys" / f"{start_key}.html").as_uri(), color_scheme=scheme, **PHONE).page
    for _ in range(12):
        assert problems(page, *TAGS) == []
        if not page.locator(".wm-key > .wm-couplet").count():
            break
        page.keyboard.press("1")
        page.wait_for_timeout(100)  # where the answer opens another key, its page has begun to load by then
        page.wait_for_load_state()
    assert page.locator(".wm-arrival h2").count()


def problems(page: Any, *tags: str) -> list[tuple[str, str]]:
    """Every rule of axe with these tags that the page breaks, and where. What it keeps is not sent over: that is most of the work."""
    return broken(page, {"runOnly": {"type": "tag", "values": list(tags)}, "resultTypes": ["violations"]})


def problems_of_colour(page: Any) -> dict[str, list[tuple[str, str]]]:
    """The rules of axe about colours that a page opened in light breaks in dark and in dim.

    Of all texts with the same styles from the root of the page down to themselves, the first is asked: the others have its colours.
    What lies over them was seen by the rules in light, since every box stands where it stood. They are asked in a copy of the page
    that holds nothing else, with the styles they have, because axe goes through all of a page before it asks anything.
    """
    page.add_style_tag(content="* { transition: none !important }")  # a colour on its way is neither
    light, dark, dim = page.evaluate(BOXES)
    assert light == dark == dim
    page.emulate_media(color_scheme="dark")
    schemes = {"dark": "delete document.documentElement.dataset.scheme", "dim": "document.documentElement.dataset.scheme = 'dim'"}
    copies, found = {}, {}
    for name, put_on in schemes.items():
        page.evaluate(put_on)
        copies[name] = page.evaluate(FIRST_OF_EACH_LOOK)
        assert copies[name].count("<") > 10
    for name, put_on in schemes.items():
        page.evaluate(put_on)
        page.evaluate("copy => { document.body.innerHTML = copy; }", copies[name])
        rules = ["color-contrast", "link-in-text-block"]
        found[name] = broken(page, {"runOnly": {"type": "rule", "values": rules}, "resultTypes": ["violations"]})
    return found


BOXES = """() => ['', 'dark', 'dim'].map(scheme => {
    document.documentElement.dataset.scheme = scheme;
    if (!scheme) delete document.documentElement.dataset.scheme;
    const told = [], down = each => {
        if (!each.checkVisibility()) { told.push(each.tagName); return; }
        const box = each.getBoundingClientRect();
        told.push([each.tagName, getComputedStyle(each).visibility, box.x, box.y, box.width, box.height].join(' '));
        for (const child of each.children) down(child); };
    down(document.body);
    return told.join('; '); })"""
"""All three in one go, so that no picture comes between them."""

FIRST_OF_EACH_LOOK = """() => {
    const named = ['color', 'backgroundColor', 'backgroundImage', 'opacity', 'filter', 'mixBlendMode', 'textShadow', 'fontSize', 'fontWeight',
        'position', 'zIndex', 'float', 'display', 'visibility', 'textDecorationLine', 'borderBottomStyle', 'clipPath', 'overflow'];
    const kept = {position: 'static', margin: '0', height: 'auto', maxHeight: 'none', minHeight: '0', transform: 'none', transition: 'none',
        animation: 'none', float: 'none', overflow: 'visible', clipPath: 'none'};
    const looks = new Map(), seen = new Set();
    const copied = (each, above) => {
        if (!each.checkVisibility()) return null;
        const style = getComputedStyle(each), key = [above, each.tagName, each.getAttribute('class'), ...named.map(name => style[name])].join('|');
        if (!looks.has(key)) looks.set(key, looks.size);
        const own = looks.get(key), shown = style.visibility === 'visible';
        const tells = each.matches('input, select, textarea, button') ||
            [...each.childNodes].some(node => node.nodeType === 3 && node.data.trim());
        let any = tells && shown && !seen.has(own);
        if (any) seen.add(own);
        const copy = each.cloneNode(false);
        for (const node of each.childNodes) {
            if (node.nodeType === 3) copy.append(node.data);
            else if (node.nodeType === 1 && !node.matches('script, style')) { const under = copied(node, own); if (under) { copy.append(under); any = true; } }
        }
        if (!any) return null;
        for (const name of named) copy.style[name] = style[name];
        Object.assign(copy.style, kept);
        return copy; };
    const body = copied(document.body, -1);
    return body.innerHTML; }"""


def broken(page: Any, options: dict[str, Any]) -> list[tuple[str, str]]:
    """What axe finds wrong: each rule with the start of the element."""
    if not page.evaluate("() => Boolean(window.axe)"):
        page.evaluate(axe_script())
    found = page.evaluate("options => axe.run(options).then(results => results.violations)", options)
    return [(each["id"], node["html"][:200]) for each in found for node in each["nodes"]]


@cache
def axe_script() -> str:
    """The rules of accessibility as a script."""
    from axe_playwright_python.sync_playwright import Axe

    return str(Axe().axe_script)


def test_no_page_scrolls_sideways_on_a_phone(visit: Visit, site: Path, kinds: list[str]):
    page = visit((site / kinds[0]).as_uri(), **PHONE).page
    for path in kinds:
        page.goto((site / path).as_uri())
        assert page.evaluate("document.documentElement.scrollWidth") <= 360, path


def test_a_mark_unfolds_its_words_at_a_tap(visit: Visit, site: Path, library: Library):
    page = visit((site / "entries" / f"{an_entry(library)}.html").as_uri(), **PHONE).page
    mark = page.locator(".stmts details.basis").first
    assert mark.locator("div").first.is_hidden()
    mark.locator("summary").tap()
    assert mark.locator("div").first.is_visible()


def test_the_dim_room_is_dim(visit: Visit, site: Path, start_key: str):
    """No glare: a dark ground, text in warm light with less blue than red."""
    page = visit((site / "keys" / f"{start_key}.html").as_uri(), color_scheme="dark", **PHONE).page
    page.evaluate("localStorage.setItem('wetmount.scheme', 'dim')")
    page.reload()
    colours = page.evaluate("""() => ['backgroundColor', 'color'].map(name =>
        getComputedStyle(document.body)[name].match(/[\\d.]+/g).slice(0, 3).map(Number))""")
    ground, ink = colours
    assert max(ground) < 40 and 140 < ink[0] < 235 and ink[2] < 0.75 * ink[0]
