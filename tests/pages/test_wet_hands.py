"""What a tired person with wet hands at a dim bench needs of a page: large targets, edges that show, and the answer first."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from keytool.identify import ground
from keytool.library import Library
from keytool.library.wording import plain
from keytool.pages.entry_page import entry_page
from keytool.pages.index_pages import first_keys, key_cards, names
from keytool.pages.page_writer import Writer
from tests.pages.conftest import PHONE, Seen

Visit = Callable[..., Seen]
TOKENS = (Path(__file__).parents[2] / "site" / "assets" / "css" / "tokens.css").read_text("utf-8")
SMALL = """() => [...document.querySelectorAll('main :is(summary, button, input, select)')]
    .filter(each => each.checkVisibility())
    .map(each => {
        const target = getComputedStyle(each, '::after');   // a mark is touched round it
        const wide = each.closest('.basis') && target.content !== 'none';
        const box = wide ? {width: parseFloat(target.width), height: parseFloat(target.height)} : (each.closest('label') || each).getBoundingClientRect();
        return [each, box];
    })
    .filter(([, box]) => box.width > 0 && (box.width < 43.9 || box.height < 43.9))
    .map(([each, box]) => [each.outerHTML.slice(0, 90), box.width, box.height])"""


def test_the_answer_stands_above_what_it_rests_on(library: Library):
    entry = max(library.entries.values(), key=lambda each: min(len(each.mistaken_for), len(each.tells)))
    text = entry_page(library, [ground(library, each) for each in library.keys.values()], entry).text
    order = [text.index(f'<h2 id="{anchor}"') for anchor in ("see", "mistaken", "means", "about")]
    assert order == sorted(order)
    assert text.index("<h1") < text.index('class="lead"') < text.index("plate ink") < order[0]


def test_a_name_that_is_latin_stands_once(library: Library):
    entry = next(each for each in library.entries.values() if each.scientific == each.name)
    text = entry_page(library, (), entry).html
    assert f"<h1><i>{entry.name}</i></h1>" in text
    assert f"<div><i>{entry.scientific}</i></div>" not in text
    assert names(entry) == [f"<i>{entry.name}</i>"]


def test_a_group_with_a_key_of_its_own_leads_on_to_it(library: Library):
    start = first_keys(library)[0]
    led = 0
    for key in library.keys.values():
        for id in key.scope:
            text = entry_page(library, (), library.entries[id]).text
            goes = re.search(r'<p class="acts onward">.*?</p>', text)
            if key.id != start and library.entries[id].kind != "cannot-be-told":
                assert goes and f"keys/{key.id}.html" in goes[0], (key.id, id)
                led += 1
            assert not goes or f"keys/{start}.html" not in goes[0]
    assert led >= len(library.keys) - 1


def test_the_first_page_says_of_each_key_one_sentence(library: Library):
    brief, whole = (key_cards(Writer(library, "index.md"), brief=each) for each in (True, False))
    for key in library.keys.values():
        about = plain(library, key.about)
        first = re.match(r"[^.?!]+[.?!]", about)
        assert first and f"<span>{first[0]}</span>" in brief
        assert f"<span>{about}</span>" in whole


def test_edges_of_what_is_pressed_show_by_day_and_in_the_dim():
    """3 to 1 against both grounds they lie on. Source: WCAG 2.2, success criterion 1.4.11."""
    for colours in schemes().values():
        for ground_colour in ("paper", "sheet"):
            assert contrast(colours["edge"], colours[ground_colour]) >= 3
            for ink in ("ink", "soft", "accent"):
                assert contrast(colours[ink], colours[ground_colour]) >= 4.5
        assert contrast(colours["accent"], colours["on-accent"]) >= 4.5
        assert contrast(colours["plate-ink"], colours["plate"]) >= 4.5 and contrast(colours["plate-soft"], colours["plate"]) >= 4.5
        assert contrast(colours["plate-accent"], colours["plate"]) >= 3, "the part that is asked about stands off the paper"


def test_the_evening_is_the_same_whether_chosen_or_the_device_asks_for_it():
    of_device = re.search(r":root:not\(\[data-scheme\]\) \{(.*?)\}", TOKENS, re.DOTALL)
    assert of_device and dict(COLOUR.findall(of_device[1])) == schemes()["dark"]


COLOUR = re.compile(r"--([\w-]+): (#\w{6})")


def schemes() -> dict[str, dict[str, str]]:
    """The colours of each scheme by name."""
    starts = {"light": r":root \{", "dark": r':root\[data-scheme="dark"\] \{', "dim": r':root\[data-scheme="dim"\] \{'}
    found = {scheme: re.search(rf"(?m)^{start}(.*?)\}}", TOKENS, re.DOTALL) for scheme, start in starts.items()}
    return {scheme: dict(COLOUR.findall(block[1])) for scheme, block in found.items() if block}


def contrast(one: str, other: str) -> float:
    """The contrast of two colours. Source: WCAG 2.2, relative luminance."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def luminance(colour: str) -> float:
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.browser
def test_everything_that_unfolds_or_is_pressed_is_large_enough_for_a_wet_finger(visit: Visit, site: Path, library: Library):
    """44 px, marks included. Source: WCAG 2.2, success criterion 2.5.5."""
    longest = max(library.entries.values(), key=lambda each: len(each.statements)).id
    for path in ("cards.html", f"entries/{longest}.html", "guides/finding-contrast.html", "voices.html", "cautions.html"):
        assert visit((site / path).as_uri(), **PHONE).page.evaluate(SMALL) == [], path


@pytest.mark.browser
def test_marks_do_not_move_the_lines_apart(visit: Visit, site: Path, library: Library):
    """A line with a mark is as high as one without, although the mark may be touched above and below it."""
    page = visit((site / "cautions.html").as_uri(), **PHONE).page
    heights: list[list[float]] = page.evaluate(
        """() => [...document.querySelectorAll('.wm-said')].map(each => {
            const before = each.getBoundingClientRect().height;
            each.querySelector('summary').style.cssText = 'min-height:0;min-width:0;margin:0;font-size:1px';
            return [before, each.getBoundingClientRect().height];
        })"""
    )
    assert heights and all(with_mark - without < 30 for with_mark, without in heights)
    assert sum(abs(with_mark - without) < 3 for with_mark, without in heights) > len(heights) // 2


@pytest.mark.browser
@pytest.mark.parametrize("height", [740, 192])
def test_pages_reflow_at_four_times_the_size(visit: Visit, site: Path, library: Library, start_key: str, height: int):
    """320 px wide, which is 1280 px at 400 %. Source: WCAG 2.2, success criterion 1.4.10."""
    entry = max(library.entries.values(), key=lambda each: len(each.statements)).id
    paths = ["index.html", f"keys/{start_key}.html", f"entries/{entry}.html", "characters/index.html", "sources.html", "cards.html"]
    for path in [*paths, *(f"look-alikes/{each}.html" for each in list(library.look_alikes)[:3])]:
        page = visit((site / path).as_uri(), viewport={"width": 320, "height": height}).page
        assert page.evaluate("document.documentElement.scrollWidth") <= 320, path
        page.add_style_tag(content=SPACED)
        assert page.evaluate("document.documentElement.scrollWidth") <= 320, f"{path} with its text spaced out"
        if height < 400:
            assert fixed(page) == [], "nothing stays in the way where the window is low"


SPACED = "* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important } p { margin-bottom: 2em !important }"
"""The spacing that a page must bear. Source: WCAG 2.2, success criterion 1.4.12."""


def fixed(page: Any) -> list[str]:
    return list(
        page.evaluate(
            """() => [...document.querySelectorAll('.top, .dock, .wm-controls')]
            .filter(each => ['sticky', 'fixed'].includes(getComputedStyle(each).position)).map(each => each.className)"""
        )
    )


@pytest.mark.browser
def test_drawings_can_be_seen_where_the_system_sets_the_colours(visit: Visit, site: Path, start_key: str):
    """With forced colours a drawing keeps its light paper, on which its dark lines stand."""
    page = visit((site / "entries" / "index.html").as_uri(), forced_colors="active", color_scheme="dark").page
    paper, ground_colour = page.evaluate(
        """() => [document.querySelector('.drawer .plate'), document.body].map(each => getComputedStyle(each).backgroundColor)"""
    )
    assert sum(map(int, re.findall(r"\d+", paper)[:3])) > 600 and paper != ground_colour


@pytest.mark.browser
def test_the_page_for_a_wrong_address_helps_where_no_style_is_found(visit: Visit, site: Path):
    """It is served from any depth, so that links and styles may be missing; what it says must be seen first all the same."""
    page = visit((site / "404.html").as_uri(), **PHONE).page
    head = page.locator("h1")
    assert head.inner_text() == "There is no such page here"
    assert head.bounding_box()["y"] < 200
    assert page.locator("main a").count() >= 4
    assert page.evaluate("[...document.querySelectorAll('svg')].every(each => each.getBoundingClientRect().width < 60)")
