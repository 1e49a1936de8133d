"""The page of the count sheet, and the one that measures on a photograph: a home for the scripts, and what they need as data."""

from __future__ import annotations

import json

from keytool.bench.page_data import page_data
from keytool.figures.library_figures import of_entry
from keytool.library.model import Library
from keytool.pages.html import Html, el, json_in_page
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer

START = {
    "field-number-mm": "field-number-example",
    "low": "low-objective",
    "high": "high-objective",
    "soil": "soil-volume",
    "total-ml": "total-volume",
    "drop-ml": "drop-volume",
    "slip-width-mm": "coverslip-side",
    "slip-length-mm": "coverslip-side",
}
"""What a new sheet starts with: a bench quantity for each number of the set-up."""


def count_page(library: Library) -> Page:
    """The count sheet. Without its script it says what it is and how to count on paper."""
    writer = Writer(library, "count.md")
    setup = {name: library.quantities[id].low for name, id in START.items() if id in library.quantities}
    data = page_data(library) | {
        "setup": {**setup, "soil-unit": "mL"},
        "figures": writer.href("drawings/ID.svg"),
        "walk": writer.href("describe.html"),
        "measure": writer.href("measure.html"),
    }
    return page(
        "count.md",
        "keydata/bench/tally.yaml",
        "Count",
        [
            _data(writer, "count-data", data),
            heading(1, "Count"),
            el(
                "div",
                el("p", "The count sheet needs its script. With it: tally by field, one hand, kept on this device, nothing sent."),
                el("p", "Without it, count on paper and type the counts into the table that ", el("code", "wetmount count --empty")),
                class_="count-page",
                data_count=True,
            ),
            el("div", class_="dock", data_count_dock=True),
            el("script", defer=True, src=writer.href("assets/count.js")),
        ],
        description="Tally by field and drop, and see what it says per gram, with its interval.",
        kind="s-count",
        own_dock=True,
    )


def measure_page(library: Library, describe: str = "") -> Page:
    """Measures on a photograph of one's own: scale from the round field, then lengths, widths, angles, areas and counts.

    `describe` is the page that ranks what was seen in any order, where the site has one; measures are handed to it.
    """
    writer = Writer(library, "measure.md")
    constants = library.bench.constants
    data = {
        "setup": {name: library.quantities[id].low for name, id in START.items() if id in library.quantities},
        "apertures": {
            "4": library.quantities["na-four"].low,
            "10": library.quantities["na-ten"].low,
            "40": library.quantities["na-forty"].low,
        },
        "wavelengthUm": library.quantities["wavelength"].low / 1000,
        "endError": constants["picture-end-error"].value,
        "distortion": constants["picture-distortion"].value,
        "edgeError": constants["picture-edge-error"].value,
        "fieldError": constants["film-error"].value,
        "describe": writer.href(describe) if describe else "",
        "count": writer.href("count.html"),
        "tally": {id: line.label for id, line in library.bench.tally.items() if "field" in line.at},
        "beside": _beside(library, writer),
    }
    return page(
        "measure.md",
        "keydata/bench/constants.yaml",
        "Measure on your photograph",
        [
            _data(writer, "measure-data", data),
            heading(1, "Measure on your photograph"),
            el(
                "div",
                el("p", "Measuring needs its script. The picture stays on this device."),
                el("p", "On a computer: ", el("code", "wetmount measure photo FILE --field-number 18 --objective 40")),
                class_="count-page",
                data_measure=True,
            ),
            el("script", defer=True, src=writer.href("assets/measure.js")),
        ],
        description="Lengths on a picture taken through the eyepiece, with the round field as the scale.",
        kind="s-measure",
    )


def _beside(library: Library, writer: Writer) -> list[dict[str, object]]:
    """Drawings to lay beside a photograph at its own scale: what each shows, and how many µm the whole picture is wide."""
    found = []
    for id in dict.fromkeys(line.shows for line in library.bench.tally.values()):
        entry = library.entries[id]
        drawing = of_entry(library, entry)
        if drawing is not None:
            found.append({"name": entry.common, "src": writer.href(f"drawings/{id}.svg"), "um": round(drawing.box.width, 3)})
    return found


def _data(writer: Writer, id: str, data: object) -> Html:
    """What a script needs, and the styles of both pages."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    script = el("script", json_in_page(text), type="application/json", id=id)
    return el("div", script, el("link", rel="stylesheet", href=writer.href("assets/count.css")))
