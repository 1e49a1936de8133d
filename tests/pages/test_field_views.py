"""The round field on the page of an entry: true size at both powers, and for the user's own microscope."""

from __future__ import annotations

import gzip
import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from keytool.figures import Drawing
from keytool.figures.field import optics
from keytool.figures.in_field import beyond_its_plate, seen_of, spot
from keytool.figures.library_figures import of_entry
from keytool.library import Library, load
from keytool.pages.field_svg import places
from keytool.pages.field_views import field_views
from keytool.pages.html import Html
from keytool.pages.page_writer import Writer
from keytool.pages.plates import portrait

ROOT = Path(__file__).parents[2]
SCRIPT = ROOT / "site/assets/field-views.js"
HEAVY = 20_000
"""The most that the views may add to a page, in bytes."""


def views(library: Library, id: str) -> str:
    """What the page of an entry has in its section on the field."""
    entry = library.entries[id]
    drawing = of_entry(library, entry)
    return "".join(field_views(Writer(library, f"entries/{id}.md"), entry, portrait(drawing) if drawing else None))


def told(html: str) -> dict[str, Any]:
    from html import unescape

    return json.loads(unescape(re.search(r'data-field-views="([^"]+)"', html)[1]))


def whole(library: Library, id: str) -> Drawing:
    """What the views use instead of the portrait."""
    entry = library.entries[id]
    found = beyond_its_plate(entry, portrait(of_entry(library, entry)).drawing, optics(library, "high"))
    assert found
    return found


def test_places_lie_in_the_field_and_apart():
    for count in (1, 3, 7, 37):
        spots = [(x, y) for x, y, _ in places(count)]
        assert len(spots) == count and all(x * x + y * y < 90**2 for x, y in spots)
        assert all((x - a) ** 2 + (y - b) ** 2 > 100 for k, (x, y) in enumerate(spots) for a, b in spots[:k])


@pytest.mark.parametrize("id", ["mite", "xiphinema", "plectus", "rod", "hypha", "ciliate"])
@pytest.mark.parametrize("power", ["low", "high"])
def test_a_thing_is_set_in_at_its_own_scale(library: Library, id: str, power: str):
    html = views(library, id)
    figure = re.search(rf'<figure data-power="{power}">.*?</figure>', html, re.DOTALL)[0]
    data, seen = told(html), optics(library, power)
    unit = 100 / (seen.diameter / 2)
    if scale := re.search(r"scale\(([\d.e-]+)\)", figure):
        assert float(scale[1]) * data["scale"] == pytest.approx(unit, rel=0.001)
    else:
        dots = re.search(r'stroke-width="([\d.]+)" class="wm-dots[^"]*" data-dot="([\d.e-]+)"', figure)
        assert float(dots[1]) == pytest.approx(max(data["dot"], float(dots[2]) * unit), abs=0.06)


def test_a_nematode_is_a_hair_at_low_power_and_bacteria_are_dots_at_high(library: Library):
    worm, rod = told(views(library, "plectus")), told(views(library, "rod"))
    field = {power: optics(library, power).diameter for power in ("low", "high")}
    assert 0.1 < worm["longest"] / field["low"] < 0.3 and worm["longest"] > field["high"]
    assert rod["longest"] / field["high"] < 0.01
    assert "Too fine for this objective" in views(library, "rod").split('data-power="high"')[0]
    assert "Too fine" not in views(library, "rod").split('data-power="high"')[1]


def test_a_head_is_shown_as_its_worm_and_a_mite_as_its_portrait(library: Library):
    drawn = {id: portrait(of_entry(library, library.entries[id])).drawing for id in ("plectus", "mite")}
    assert told(views(library, "plectus"))["longest"] > 3 * max(drawn["plectus"].frame.width, drawn["plectus"].frame.height)
    assert told(views(library, "mite"))["longest"] == pytest.approx(seen_of(drawn["mite"]).longest, abs=0.01)
    assert all(views(library, id).count('id="wm-thing"') == 1 for id in drawn), "drawn once, set in twice"


def test_a_group_of_many_sizes_is_not_shown_as_its_giants(library: Library):
    """A group whose lengths span more than a factor of ten is shown at a common length, not at the middle of the span."""
    assert seen_of(whole(library, "dorylaim")).longest < 1000


def test_something_longer_than_the_field_is_looked_at_where_it_is(library: Library):
    high = optics(library, "high")
    worm = whole(library, "xiphinema")
    x, y = spot(worm, high.diameter)
    points = [point for shape in worm.shapes if hasattr(shape, "points") for point in shape.points]
    assert min((a - x) ** 2 + (b - y) ** 2 for a, b in points) < (0.3 * high.diameter) ** 2


def test_what_is_drawn_in_fine_lines_only_gets_lines_that_can_be_seen(library: Library):
    crystal = whole(library, "calcite-crystal")
    thinnest = min(shape.weight for shape in crystal.shapes) * crystal.pen_um
    assert thinnest >= optics(library, "high").diameter / 201
    plain = portrait(of_entry(library, library.entries["calcite-crystal"])).drawing
    assert seen_of(crystal).longest == pytest.approx(seen_of(plain).longest, rel=0.01), "heavier, not larger"


def test_faults_of_the_optics_and_libraries_without_a_microscope_have_no_views(library: Library, mini: Path):
    assert library.entries["eyepiece-dust"].figure and views(library, "eyepiece-dust") == ""
    small = load(mini).library
    entry = replace(small.entries["coat-button"], figure=library.entries["mite"].figure)
    assert list(field_views(Writer(small, "entries/x.md"), entry, portrait(of_entry(small, entry)))) == []


def test_views_add_little_to_a_page(library: Library):
    weights = {id: len(gzip.compress(views(library, id).encode(), 6)) for id in library.entries}  # as it is sent
    assert max(weights.values()) < HEAVY, max(weights, key=weights.__getitem__)
    assert sum(weights.values()) / len(weights) < 8000


@pytest.fixture
def shown(library: Library, tmp_path: Path, visit: Any) -> Any:
    """Opens the views of an entry in a page of their own: shown("mite")."""
    (tmp_path / "assets").mkdir()
    (tmp_path / "entries").mkdir()
    (tmp_path / "assets/entry.js").write_bytes(SCRIPT.read_bytes())
    css = "".join((ROOT / f"site/assets/css/{name}.css").read_text("utf-8") for name in ("tokens", "frame", "parts", "entry"))

    def opened(id: str, **how: Any) -> Any:
        html = Html(
            f"<!doctype html><html lang=en><meta charset=utf-8><title>x</title><style>{css}</style>"
            f"<body><main><h2>Field</h2>{views(library, id)}</main>"
        )
        path = tmp_path / "entries" / f"{id}.html"
        path.write_text(html, "utf-8")
        return visit(path.as_uri(), **how)

    return opened


def share(page: Any, power: str) -> float:
    """How much of the width of the field the thing takes, as it is laid out; the switch shows one power at a time."""
    page.evaluate("power => { document.querySelector('.eye').dataset.shown = power; }", power)
    return page.evaluate(
        """power => { const figure = document.querySelector(`[data-power=${power}]`);
        const side = each => Math.max(each.getBoundingClientRect().width, each.getBoundingClientRect().height);
        return side(figure.querySelector("[data-thing]")) / side(figure.querySelector(".wm-field-ground")); }""",
        power,
    )


@pytest.mark.browser
def test_the_browser_lays_it_out_at_true_size(shown: Any, library: Library):
    page = shown("mite").page
    data = told(views(library, "mite"))
    for power in ("low", "high"):
        assert share(page, power) == pytest.approx(data["longest"] / optics(library, power).diameter, rel=0.12)


@pytest.mark.browser
def test_an_own_microscope_is_kept_and_sets_the_views(shown: Any):
    seen = shown("mite", viewport={"width": 360, "height": 740})
    page = seen.page
    before = share(page, "high")
    page.click(".wm-own-optics summary")
    boxes = page.locator(".wm-own-optics input")
    for at, value in ((0, "22"), (2, "20")):
        boxes.nth(at).fill(value)
        boxes.nth(at).dispatch_event("change")
    assert share(page, "high") == pytest.approx(before * 18 / 22 / 2, rel=0.03)
    assert "200× Field 1.1\u00a0mm across" in page.inner_text("[data-power=high] figcaption")
    assert page.text_content("[data-power=high] title") == "Mite in the field at 200×"
    assert page.locator("[data-field-example]").is_hidden()
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    page.reload()
    assert "200×" in page.inner_text("[data-power=high] figcaption")
    page.click(".wm-own-optics summary")
    page.get_by_role("button", name="Back to the example").click()
    assert "400× Field 450\u00a0µm across" in page.inner_text("[data-power=high] figcaption")
    assert share(page, "high") == pytest.approx(before, rel=0.001)
    assert seen.said == [] and all(url.startswith("file:") for url in seen.requests)


@pytest.mark.browser
def test_the_script_says_what_the_page_says(shown: Any, library: Library):
    """With the example microscope the script leaves the words as Python wrote them."""
    for id in ("mite", "plectus", "rod", "ciliate", "air-bubble"):
        page = shown(id).page
        plain = re.sub(r"<[^>]+>", "", " ".join(re.findall(r"<figcaption>.*?</figcaption>", views(library, id), re.DOTALL)))
        assert " ".join(page.locator("figcaption").all_text_contents()) == plain
