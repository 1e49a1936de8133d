"""The site opened from a folder: no request leaves it, the console stays silent, and everyone can read it."""

from __future__ import annotations

from collections.abc import Callable
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


@pytest.mark.parametrize("width", [390, 1440])
@pytest.mark.parametrize("scheme", ["light", "dark", "dim"])
def test_pages_pass_the_accessibility_rules(browser: Any, site: Path, kinds: list[str], scheme: str, width: int):
    """Every rule of WCAG 2.0 to 2.2, A and AA, that axe can check, and its rules for landmarks and names."""
    phone = {"has_touch": True, "is_mobile": True} if width < 960 else {}
    context = browser.new_context(viewport={"width": width, "height": 844}, color_scheme="light" if scheme == "light" else "dark", **phone)
    if scheme == "dim":
        context.add_init_script("try { localStorage.setItem('wetmount.scheme', 'dim') } catch (error) { }")
    page = context.new_page()
    for path in kinds:
        page.goto((site / path).as_uri())
        assert problems(page, *TAGS, "best-practice") == [], path
    context.close()


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
    from axe_playwright_python.sync_playwright import Axe

    options = {"runOnly": {"type": "tag", "values": list(tags)}, "resultTypes": ["violations"]}
    return [(each["id"], node["html"][:200]) for each in Axe().run(page, options=options).response["violations"] for node in each["nodes"]]


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
