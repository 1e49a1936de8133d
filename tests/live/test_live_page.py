"""The live field in a page: controls by keyboard, stillness when asked for, words for those who do not see it."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest

from keytool.figures import motion
from keytool.library.model import Library

pytestmark = pytest.mark.browser

FIRST = ["spiral-swim", "wobble-and-jerk", "jiggle", "run-and-tumble", "lie-still", "thrash"]


@pytest.fixture
def data(library: Library) -> motion.Json:
    return motion.whole_field(library, FIRST)


def picture(page: Any) -> str:
    return page.evaluate("document.querySelector('canvas').toDataURL()")


def moves(page: Any) -> bool:
    before = picture(page)
    page.wait_for_timeout(350)
    return picture(page) != before


def pressed(page: Any, name: str) -> str | None:
    return button(page, name).get_attribute("aria-pressed")


def button(page: Any, words: str) -> Any:
    """The button that shows these words; its spoken name begins with them."""
    return page.get_by_role("button", name=re.compile(rf"^{re.escape(words)}\b|^{re.escape(words)},"))


def test_every_control_works_from_the_keyboard(opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data)
    order = []
    for _ in range(6):
        page.keyboard.press("Tab")
        order.append(page.evaluate("document.activeElement.textContent"))
    assert order == ["40×", "400×", "Pause", "Half speed", "Trails", "Drift"]
    for name, key in (("Half speed", "Space"), ("Trails", "Enter"), ("Drift", "Space")):
        page.get_by_role("button", name=name).focus()
        assert pressed(page, name) == "false"
        page.keyboard.press(key)
        assert pressed(page, name) == "true"
    assert page.get_by_role("status").inner_text() == "Moving at half its true speed."
    assert moves(page)
    page.get_by_role("button", name="Pause").focus()
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.textContent") == "Play"
    page.wait_for_timeout(50)
    assert not moves(page)
    page.keyboard.press("Enter")
    assert moves(page)
    button(page, "40×").focus()
    page.keyboard.press("Enter")
    assert (pressed(page, "40×"), pressed(page, "400×")) == ("true", "false")
    assert "4.5 mm across" in page.locator(".wm-live").inner_text()
    page.get_by_text("What is in it").focus()
    page.keyboard.press("Enter")
    page.get_by_label("Naked amoeba").focus()
    page.keyboard.press("Space")
    assert "Naked amoeba" in page.get_by_role("img").get_attribute("aria-label")


def test_it_is_still_when_less_motion_is_asked_for_and_plays_on_request(opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data, reduced_motion="reduce")
    assert page.get_by_role("status").inner_text() == "Still, with trails: your device asks for less motion. Press Play to see it move."
    assert pressed(page, "Trails") == "true"
    assert "Still picture; a thin line shows where each went" in page.get_by_role("img").get_attribute("aria-label")
    page.wait_for_timeout(100)
    assert not moves(page)
    page.get_by_role("button", name="Play").click()
    assert moves(page)
    assert page.get_by_role("status").inner_text() == "Moving at true speed."


def test_the_same_field_is_still_the_same_picture(opened: Callable[..., Any], data: motion.Json) -> None:
    pictures = [picture(opened(data, reduced_motion="reduce")) for _ in range(2)]
    assert pictures[0] == pictures[1]


def test_words_stand_for_the_picture(opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data)
    words = page.get_by_role("img").get_attribute("aria-label")
    assert words.startswith("Round field of view, 450 µm across, at 400×")
    assert "Smooth-swimming ciliate, 30 to 80 µm long, 200 to 600 µm/s, from memory: swims smoothly" in words
    button(page, "40×").click()
    words = page.get_by_role("img").get_attribute("aria-label")
    assert "Swimming rod-shaped bacterium, 1.5 to 4 µm long, 8 to 40 µm/s: too small to be seen at 40×." in words
    listed = page.locator(".wm-live-list").inner_text()
    assert "1.5 to 2.2 strokes a second" in listed and "(◌ from memory)" in listed


def test_controls_are_large_enough_for_wet_hands(opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data, whole=True, viewport={"width": 360, "height": 740})
    page.get_by_text("What is in it").click()
    page.get_by_text("Take everything out").wait_for()
    for box in [each.bounding_box() for each in page.locator(".wm-live button, .wm-live summary, .wm-live label").all()]:
        assert box["height"] >= 48 and box["width"] >= 48
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_everything_can_be_taken_out_and_one_thing_put_in(opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data, whole=True)
    page.get_by_text("What is in it").click()
    page.get_by_role("button", name="Take everything out").click()
    assert page.locator(".wm-live-list li").count() == 0
    page.get_by_role("group", name="Small animals").get_by_label("Water bear").check()
    assert page.locator(".wm-live-list li").all_inner_texts()[0].startswith("Water bear, 120 to 400 µm long")


def test_your_own_microscope_sets_the_field_and_is_remembered(opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data, whole=True)
    page.get_by_label("Field number, on the eyepiece").fill("20")
    page.get_by_label("High objective").fill("60")
    page.get_by_label("High objective").press("Tab")
    assert "330 µm across" in page.locator(".wm-live").inner_text()
    assert button(page, "600×").count() == 1
    page.reload()
    assert "330 µm across" in page.locator(".wm-live").inner_text()
    page.get_by_label("Field number, on the eyepiece").fill("-3")
    page.get_by_label("Field number, on the eyepiece").press("Tab")
    assert "330 µm across" in page.locator(".wm-live").inner_text(), "what cannot be is said in the form, and changes nothing"


def test_a_field_follows_ones_own_microscope_at_once_wherever_it_is_entered(opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data)  # not the page with the form: another part of the page writes the optics, as the drawn views of an entry do
    page.evaluate(
        """() => {
          const input = document.createElement("input"), back = document.createElement("button");
          back.textContent = "Back to the example";
          input.setAttribute("aria-label", "Field number");
          input.addEventListener("change", () => localStorage.setItem("wetmount.optics", JSON.stringify({ "field-number": Number(input.value) })));
          back.addEventListener("click", () => localStorage.removeItem("wetmount.optics"));
          document.querySelector("main").append(input, back);
        }"""
    )
    assert "450 µm across" in page.locator(".wm-live").inner_text()
    page.get_by_label("Field number").fill("22")
    page.get_by_label("Field number").press("Tab")
    assert "550 µm across" in page.locator(".wm-live").inner_text()
    page.get_by_role("button", name="Back to the example").click()
    assert "450 µm across" in page.locator(".wm-live").inner_text()
    other = page.context.new_page()
    other.goto(page.url)
    other.evaluate("localStorage.setItem('wetmount.optics', JSON.stringify({ 'field-number': 20 }))")
    page.wait_for_function("document.querySelector('.wm-live').innerText.includes('500 µm across')")


def test_the_circle_and_its_controls_are_on_a_phones_first_screen(opened: Callable[..., Any], data: motion.Json) -> None:
    for whole in (True, False):
        page = opened(data, whole=whole, viewport={"width": 360, "height": 740})
        first = page.locator(".wm-live canvas").bounding_box()["y"]
        last = page.locator(".wm-live-controls").bounding_box()
        assert last["y"] + last["height"] - first <= 740 - 150, "as much is left for what stands above it on the page"
    on_its_side = opened(data, viewport={"width": 740, "height": 360}).locator(".wm-live-look, .wm-live-controls").all()
    look, controls = (each.bounding_box() for each in on_its_side)
    assert controls["x"] >= look["x"] + look["width"] and look["height"] <= 300


def test_controls_say_what_they_are_for_and_show_where_the_keyboard_is(opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data)
    spoken = [each.get_attribute("aria-label") or each.inner_text() for each in page.locator(".wm-live-controls button").all()]
    assert spoken == ["40×, low power", "400×, high power", "Pause", "Half speed", "Trails: where each went", "Drift of the water"]
    for name in spoken:
        page.keyboard.press("Tab")
        focused = page.locator(":focus")
        assert (focused.get_attribute("aria-label") or focused.inner_text()) == name
        style = focused.evaluate("e => [getComputedStyle(e).outlineStyle, parseFloat(getComputedStyle(e).outlineWidth)]")
        assert style[0] == "solid" and style[1] >= 2


def test_print_is_a_still_picture_with_trails(opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data)
    button(page, "Pause").click()
    count = "(() => { const c = document.querySelector('canvas'), d = c.getContext('2d').getImageData(0, 0, c.width, c.height).data;"
    count += " let n = 0; for (let i = 3; i < d.length; i += 4) { n += d[i] && d[i - 3] < 200 ? 1 : 0; } return n; })()"
    before = page.evaluate(count)
    page.evaluate("window.dispatchEvent(new Event('beforeprint'))")
    after = page.evaluate(count)
    assert after > 1.02 * before, f"the trails are drawn for paper: {before} and {after}"
    page.evaluate("window.dispatchEvent(new Event('afterprint'))")
    assert page.evaluate(count) == before


def test_ink_follows_the_page_in_the_dark_and_print_is_black_on_white(opened: Callable[..., Any], data: motion.Json) -> None:
    at_rim = "[...document.querySelector('canvas').getContext('2d').getImageData(%s, %s, 1, 1).data].slice(0, 3)"
    page = opened(data, reduced_motion="reduce", color_scheme="dark")
    rim = page.evaluate("Math.round(document.querySelector('canvas').width * (1 - 0.985) / 2)")
    half = page.evaluate("Math.round(document.querySelector('canvas').width / 2)")
    assert page.evaluate(at_rim % (rim, half)) == pytest.approx([0xE6, 0xE1, 0xD6], abs=40)
    page.emulate_media(color_scheme="light")
    page.wait_for_timeout(100)
    assert page.evaluate(at_rim % (rim, half)) == pytest.approx([0x1D, 0x1B, 0x18], abs=40)
    page.emulate_media(color_scheme="dark")
    page.evaluate("window.dispatchEvent(new Event('beforeprint'))")
    assert page.evaluate(at_rim % (rim, half)) == pytest.approx([0, 0, 0], abs=40)
    page.emulate_media(media="print")
    assert not page.get_by_role("button", name="Play").is_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_barrier_is_found(opened: Callable[..., Any], data: motion.Json, scheme: str) -> None:
    from axe_playwright_python.sync_playwright import Axe

    page = opened(data, whole=True, color_scheme=scheme)
    page.get_by_text("What is in it").click()
    page.get_by_text("Figures, and what they rest on").click()
    tags = ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"]
    found = Axe().run(page, options={"runOnly": {"type": "tag", "values": tags}})
    assert found.violations_count == 0, found.generate_report()


def test_without_the_script_the_words_stay(browser: Any, tmp_path: Any, opened: Callable[..., Any], data: motion.Json) -> None:
    page = opened(data)
    assert page.get_by_text("in words", exact=True).count() == 0  # replaced by the field
    bare = browser.new_context(java_script_enabled=False).new_page()
    bare.goto((tmp_path / "page.html").as_uri())
    assert bare.get_by_text("in words", exact=True).is_visible()
    bare.context.close()
