"""The sheets of all drawings: nothing is left out, each drawing is that of the entry's page, and a sheet stays light."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from keytool.figures.library_figures import of_entry
from keytool.library import Library
from keytool.library.model import Entry
from keytool.pages.entry_page import entry_page
from keytool.pages.plate_pages import plate_assets, sheet_page, sheets_page, themes
from keytool.pages.plates import portrait

ROOT = Path(__file__).parents[2]
LIGHT = 150_000
"""The most that the text of a sheet may weigh, in bytes; the drawings come as they are scrolled to."""


def of_theme(library: Library, theme: str) -> list[Entry]:
    return [each for each in library.entries.values() if each.theme == theme]


def test_every_drawn_entry_is_on_the_sheet_of_its_theme(library: Library):
    for theme in themes(library):
        text = sheet_page(library, theme).text
        entries = of_theme(library, theme)
        assert set(re.findall(r'<figure id="([^"]+)"', text)) == {each.id for each in entries if each.figure}
        for each in entries:
            assert each.figure or f">{each.name}</a>" in text, "what is not drawn is named"
    assert {each.theme for each in library.entries.values()} == set(themes(library))


def test_every_picture_of_a_sheet_has_its_file_and_waits_to_be_seen(library: Library):
    for theme in themes(library):
        files = {each.path for each in plate_assets(library, of_theme(library, theme))}
        images = re.findall(r"<img [^>]*>", sheet_page(library, theme).text)
        shown = {"drawings/" + re.search(r'src="([^"]+)"', each)[1] for each in images}
        assert shown | {each.replace("drawings/", "drawings/small/") for each in shown} == files
        assert all('loading="lazy"' in each and re.search(r'width="\d+" height="\d+"', each) for each in images)


def test_a_file_holds_the_drawing_of_the_page_in_fixed_inks(library: Library):
    entry = library.entries["plectus"]
    file = next(each for each in plate_assets(library, of_theme(library, entry.theme)) if each.path == "drawings/plectus.svg")
    svg = file.content.decode()
    root = ET.fromstring(svg)
    assert "color:#" in root.attrib["style"] and root.tag.endswith("svg")
    assert 'src="../drawings/plectus.svg"' in entry_page(library, [], entry).text


def test_a_small_picture_is_cut_to_what_is_drawn(library: Library):
    files = {each.path: each.content.decode() for each in plate_assets(library, of_theme(library, "nematodes"))}
    small, whole = files["drawings/small/mononchus.svg"], files["drawings/mononchus.svg"]
    assert "<text" in whole and "<text" not in small and "scale-" not in small
    drawing = of_entry(library, library.entries["mononchus"])
    width, height = map(float, re.search(r'viewBox="\S+ \S+ (\S+) (\S+)"', small).groups())
    assert width / height == pytest.approx(drawing.frame.width / drawing.frame.height, rel=0.05)


def test_a_sheet_is_light_and_says_what_each_drawing_was_told(library: Library):
    assert all(len(sheet_page(library, theme).text) < LIGHT for theme in themes(library))
    text = sheet_page(library, "nematodes").text
    told = re.search(r'<figure id="xiphinema">.*?</figure>', text, re.DOTALL)[0]
    figure = library.entries["xiphinema"].figure
    assert figure.kind in told and f"width {figure.params['width']} µm" in told
    assert "keydata/entries/nematodes/xiphinema.yaml" in told and "contribute/index.html#a-drawing-is-wrong" in told


def test_the_first_sheet_leads_to_every_theme_and_every_drawn_character(library: Library):
    text = sheets_page(library).text
    assert all(f'href="{theme}.html"' in text for theme in themes(library))
    drawn = [each for each in library.characters.values() if any(state.figure for state in each.states.values())]
    assert drawn and all(f"characters/index.html#{each.id}" in text for each in drawn)


def test_a_portrait_is_written_once(library: Library):
    drawing = of_entry(library, library.entries["plectus"])
    assert portrait(drawing) is portrait(drawing)


@pytest.mark.browser
@pytest.mark.parametrize("scheme", ["light", "dark", "dim"])
def test_lines_stand_out_by_day_and_in_a_dim_room(visit: Any, library: Library, tmp_path: Path, scheme: str):
    """A drawing is never turned over: dark lines on paper in every scheme, and the paper dims with the room."""
    css = "".join((ROOT / f"site/assets/css/{name}.css").read_text("utf-8") for name in ("tokens", "frame", "parts", "lists"))
    sheet = re.search(r'<figure id="plectus">.*?</figure>', sheet_page(library, "nematodes").text, re.DOTALL)[0]
    file = next(each for each in plate_assets(library, of_theme(library, "nematodes")) if each.path == "drawings/plectus.svg")
    (tmp_path / "plectus.svg").write_bytes(file.content)
    (tmp_path / "sheet.html").write_text(
        f'<!doctype html><html data-scheme="{scheme}"><meta charset="utf-8"><style>{css}</style><body><div class="wm-sheet">{sheet}</div>',
        "utf-8",
    )
    image = visit((tmp_path / "sheet.html").as_uri(), viewport={"width": 360, "height": 740}).page.locator("img")
    image.evaluate("each => each.decode()")
    seen = Image.open(io.BytesIO(image.screenshot())).convert("L")
    low, high = seen.getextrema()
    assert high - low > (110 if scheme == "dim" else 150)
    assert {"light": 240, "dark": 180, "dim": 120}[scheme] < seen.getpixel((2, 2)) <= {"light": 256, "dark": 215, "dim": 150}[scheme]
