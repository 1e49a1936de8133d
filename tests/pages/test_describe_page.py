"""What do you see? Point, say or pick; then what was seen, what it probably is, what to look at next."""

from __future__ import annotations

from collections.abc import Callable
from itertools import combinations
from pathlib import Path
from typing import Any
from urllib.parse import unquote

import pytest

from keytool.cli.observations import Words
from keytool.figures.field import optics
from keytool.identify import Trail, compiled, describe, parsed
from keytool.library import Library
from keytool.pages.describe_page import describe_page
from keytool.pages.face_data import engine_data, face_data
from keytool.pages.figure_files import FigureFiles
from keytool.pages.gallery_page import gallery_page
from keytool.pages.page_writer import Writer
from keytool.pages.point_at import POWERS, SMALLEST, TARGET, placed, things
from tests.pages.conftest import PHONE, Seen
from tests.pages.test_key_page import SMALL_TARGETS, WAIT

Visit = Callable[..., Seen]
SAW = "at:worm/saw:mouth=spear/saw:tail=drawn-out"


def url(site: Path, told: str = "") -> str:
    return (site / "describe.html").as_uri() + (f"#{told}" if told else "")


# --- the field ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("power", POWERS)
def test_everything_that_is_met_most_has_its_place_and_no_target_touches_another(library: Library, power: Any):
    seen = optics(library, power)
    laid = placed(things(Writer(library, "describe.md"), FigureFiles(), seen))
    wanted = {each.id for each in library.pictures.values() if each.power == round(seen.power)}
    assert {thing.picture.id for thing, _ in laid} == wanted
    for (one, a), (other, b) in combinations(laid, 2):
        assert not a.touches(b), (one.picture.id, other.picture.id)
    for thing, box in laid:
        assert min(box.width, box.height) * SMALLEST / 100 >= TARGET - 0.01
        assert thing.is_giant or box.farthest <= 50, "inside the round"


def test_things_in_the_field_are_at_true_size(library: Library):
    """A thing is as wide on the page as it is wide in the field: its µm over those of the field."""
    seen = optics(library, "low")
    for thing in things(Writer(library, "describe.md"), FigureFiles(), seen):
        assert thing.width == pytest.approx(100 * thing.bare.width / seen.diameter)


def test_each_thing_is_a_link_without_a_script(library: Library):
    text = describe_page(library, FigureFiles()).text
    for picture in library.pictures.values():
        assert f'href="entries/{picture.entry}.html"' in text and f'data-at="{picture.id}"' in text


def test_the_data_are_small_enough_to_be_fetched_once(library: Library):
    import gzip

    assert len(gzip.compress(engine_data(library).content, 6)) + len(gzip.compress(face_data(library).content, 6)) < 170_000


def test_the_gallery_shows_each_thing_at_one_scale(library: Library):
    text = gallery_page(library, FigureFiles()).text
    for id in ("humic-crumb", "air-bubble"):
        assert f'href="entries/{id}.html"' in text
    assert "1 mm</span> in every drawing below" in text and "100 µm</span> in every drawing below" in text


# --- the page -------------------------------------------------------------------------------------------------------


def verdict(page: Any) -> Any:
    page.locator(".wm-told .verdict .big").wait_for(timeout=WAIT)
    return page.locator(".wm-told .verdict")


@pytest.mark.browser
def test_pointing_by_touch_counts_as_an_observation_and_can_be_taken_back(visit: Visit, site: Path):
    seen = visit(url(site), **PHONE)
    page = seen.page
    page.locator('[data-at="worm"]').tap()
    verdict(page)
    assert page.url.endswith("#at:worm")
    row = page.locator(".seen li", has_text="worm")
    assert "pointed at" in row.inner_text()
    row.locator(".off").tap()
    page.wait_for_function("() => !location.hash.includes('at:')", timeout=WAIT)
    page.locator('[data-at="worm"]').wait_for(timeout=WAIT)
    assert [each for each in seen.requests if not each.startswith(("file:", "data:"))] == [] and seen.said == []


@pytest.mark.browser
def test_the_page_says_what_python_says(visit: Visit, site: Path, library: Library):
    result = describe(compiled(library), parsed(compiled(library), SAW).trail)
    page = visit(url(site, SAW)).page
    shown = verdict(page)
    assert result.verdict
    assert library.entries[result.verdict.id].name in shown.locator(".big").inner_text()
    names = [library.entries[each.id].name for each in result.names if each.id != result.verdict.id]
    assert [each.split("\n")[0] for each in shown.locator(".names b").all_inner_texts()] == names
    asked = page.locator(".wm-next-look h3").first.inner_text()
    assert asked == library.characters[result.next[0].character].asks.replace("`", "") or result.next
    assert page.locator(".wm-told .first .seen > li").count() == 3


@pytest.mark.browser
def test_what_is_asked_next_is_answered_by_a_picture(visit: Visit, site: Path):
    page = visit(url(site, "at:worm"), **PHONE).page
    verdict(page)
    for _ in range(8):
        if page.locator(".wm-next-look .wm-lead").count():
            break
        page.locator(".wm-next-look button", has_text="Ask something else").tap()
    page.locator(".wm-next-look .wm-lead").first.tap()
    page.wait_for_function("() => location.hash.includes('saw:')", timeout=WAIT)
    page.wait_for_function("() => document.querySelectorAll('.wm-told .first .seen > li').length === 2", timeout=WAIT)
    assert page.evaluate("document.activeElement.textContent") == "It is probably", "the focus goes to what it now is"


@pytest.mark.browser
@pytest.mark.parametrize(("said", "means"), [("tail like a hair", "tail="), ("springs open", "saw:"), ("see-through", "saw:")])
def test_lay_words_are_understood(visit: Visit, site: Path, said: str, means: str):
    page = visit(url(site), **PHONE).page
    box = page.locator(".wm-say-here input")
    box.tap()
    box.fill(said)
    row = page.locator(".wm-saying .seen .wm-row").first
    row.wait_for(timeout=WAIT)
    row.tap()
    page.wait_for_function("part => decodeURIComponent(location.hash).includes(part)", arg=means, timeout=WAIT)
    verdict(page)


@pytest.mark.browser
def test_two_things_said_at_once_are_taken_at_once(visit: Visit, site: Path):
    page = visit(url(site, "at:worm"), **PHONE).page
    verdict(page)
    page.locator(".wm-say-dock input").fill("spear in the mouth, tail like a hair")
    both = page.locator(".wm-saying .seen .wm-row", has_text="All of these")
    both.wait_for(timeout=WAIT)
    both.tap()
    page.wait_for_function("() => /mouth=spear.*tail=drawn-out/.test(decodeURIComponent(location.hash))", timeout=WAIT)


@pytest.mark.browser
def test_a_pasted_text_is_heard_at_once_as_the_terminal_hears_it(visit: Visit, site: Path, library: Library):
    said = "Clear worm from my worm bin, about 0.6 mm. The head is dark and hard, I think. Tail is stubby. It frobnicates gleefully."
    model = compiled(library)
    page = visit(url(site), **PHONE).page
    box = page.locator(".wm-say-here input")
    box.tap()
    box.fill(said)
    page.locator(".wm-take").wait_for(timeout=WAIT)
    assert "frobnicates" in page.locator(".wm-not-heard").inner_text()
    assert "“Tail is stubby”" in page.locator(".wm-heard", has_text="Tail:").inner_text()
    page.keyboard.press("Enter")
    page.wait_for_function("() => location.hash.includes('tail=blunt')", timeout=WAIT)
    trail = Words(model).understood(Trail(), said).added_to(Trail())
    assert parsed(model, unquote(page.url.partition("#")[2])).trail == trail
    assert trail.sample == "worm-bin" and "perhaps" in page.locator(".wm-told .first .seen", has_text="Head cap").inner_text()


@pytest.mark.browser
def test_a_line_that_was_heard_wrongly_is_left_out_by_a_tap(visit: Visit, site: Path):
    page = visit(url(site), **PHONE).page
    box = page.locator(".wm-say-here input")
    box.tap()
    box.fill("A worm. Tail is stubby. Spear in the mouth.")
    page.locator(".wm-heard", has_text="Tail:").tap()
    assert page.locator(".wm-heard", has_text="Tail:").get_attribute("aria-pressed") == "false"
    page.locator(".wm-take").tap()
    page.wait_for_function("() => location.hash.includes('mouth=spear') && !location.hash.includes('tail')", timeout=WAIT)


@pytest.mark.browser
def test_it_works_by_keyboard_only(visit: Visit, site: Path):
    page = visit(url(site)).page
    page.locator('[data-at="worm"]').focus()
    page.keyboard.press("Enter")
    verdict(page)
    page.locator(".wm-say-dock input").focus()
    page.keyboard.type("spear in the mouth")
    page.locator(".wm-saying .seen .wm-row").first.wait_for(timeout=WAIT)
    page.keyboard.press("Enter")
    page.wait_for_function("() => location.hash.includes('saw:')", timeout=WAIT)


@pytest.mark.browser
def test_a_line_that_was_seen_can_be_changed(visit: Visit, site: Path):
    page = visit(url(site, "saw:tail=drawn-out"), **PHONE).page
    verdict(page)
    page.locator(".wm-told .first .wm-row").first.tap()
    other = page.locator(".wm-changing .wm-lead").last
    other.tap()
    page.wait_for_function("() => !location.hash.includes('drawn-out') && location.hash.includes('saw:tail=')", timeout=WAIT)


@pytest.mark.browser
def test_a_reload_brings_it_back_and_rubbish_is_left_out(visit: Visit, site: Path):
    page = visit(url(site, SAW)).page
    verdict(page)
    page.reload()
    verdict(page)
    seen = visit(url(site, f"{SAW}/saw:__proto__=x/gone=away/%%%/saw:body-length=-3"))
    verdict(seen.page)
    assert "left out" in seen.page.locator(".wm-message").inner_text()
    assert seen.page.locator(".wm-told .first .seen > li").count() == 3 and seen.said == []


@pytest.mark.browser
def test_where_the_drop_is_from_is_kept(visit: Visit, site: Path):
    page = visit(url(site, "at:worm"), **PHONE).page
    verdict(page)
    page.locator('[data-does="point"]').tap()
    page.locator(".wm-sample select").select_option("compost")
    page.wait_for_function("() => location.hash.includes('from:compost')", timeout=WAIT)
    verdict(page)
    assert "at:worm" in unquote(page.url)


@pytest.mark.browser
def test_it_works_where_storage_is_refused(browser: Any, site: Path):
    context = browser.new_context()
    page = context.new_page()
    said: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.add_init_script("Object.defineProperty(self, 'localStorage', { get() { throw new Error('refused'); } })")
    page.goto(url(site, SAW))
    verdict(page)
    assert said == []
    context.close()


@pytest.mark.browser
def test_nothing_scrolls_sideways_and_targets_are_large(visit: Visit, site: Path):
    for told in ("", SAW):
        page = visit(url(site, told), **PHONE).page
        if told:
            verdict(page)
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
        assert page.evaluate(SMALL_TARGETS) == []


@pytest.mark.browser
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_pages_pass_the_accessibility_rules(visit: Visit, site: Path, scheme: str):
    from tests.pages.test_site_in_browser import TAGS, problems

    for told in ("", SAW):
        page = visit(url(site, told), color_scheme=scheme, **PHONE).page
        if told:
            verdict(page)
        assert problems(page, *TAGS) == []
    page = visit((site / "gallery.html").as_uri(), color_scheme=scheme, **PHONE).page
    assert problems(page, *TAGS) == []
