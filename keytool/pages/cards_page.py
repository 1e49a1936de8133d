"""Bench cards on the site: the ready ones to print, and a form that makes the command of your own."""

from __future__ import annotations

import re
from collections.abc import Iterator

from keytool.library.model import Key, Library
from keytool.library.show import number
from keytool.pages.extras import Extras
from keytool.pages.html import Html, el
from keytool.pages.lists import first_keys
from keytool.pages.page import Page, heading, page
from keytool.pages.writer import Writer

OBJECTIVES = ("low-objective", "high-objective")
"""The bench quantities that say which objectives a field diameter is asked for."""


def ready(key: str, paper: str) -> str:
    """Where the ready card of a key on a paper lies in the site."""
    return f"cards/{key}-{paper}.pdf"


def cards_page(library: Library, extras: Extras) -> Page:
    """The cards there are, and the form."""
    writer = Writer(library, "cards.md")
    return page(
        "cards.md",
        "keydata/keys",
        "Bench cards",
        [
            heading(1, "Bench cards"),
            el(
                "p",
                "A key on paper, its drawings to scale, to be laminated and kept beside the microscope. Print at 100 % (“actual size”), "
                "hold a ruler to the 50 mm bar on each side, and only then laminate.",
            ),
            heading(2, "Ready to print", "ready"),
            *_ready(writer, extras),
            heading(2, "Make your own", "own"),
            *_form(writer, extras.papers),
        ],
        description="Keys on paper to be laminated: ready PDFs, and how to make your own.",
    )


def _ready(writer: Writer, extras: Extras) -> Iterator[Html]:
    library, files, papers = writer.library, extras.files, extras.papers
    made = [(library.keys[id], paper) for id in first_keys(library) for paper in papers if ready(id, paper) in files]
    lines = [_card(writer, key, paper, files[ready(key.id, paper)]) for key, paper in made]
    if lines:
        yield el("ul", *lines, class_="wm-entry-list")
        yield el(
            "p",
            "The field diameters on these are those of an example microscope, and say so. Yours go on a card of your own.",
            class_="wm-aside",
        )
    else:
        yield el(
            "p",
            "This copy of the site was built without them. Build it with ",
            el("code", "wetmount site --cards"),
            ", or make one card with the command below.",
        )


def _card(writer: Writer, key: Key, paper: str, content: bytes) -> Html:
    sides = _sides(content)
    size = f"{paper}, {sides} side{'s' if sides > 1 else ''}, {max(1, round(len(content) / 1000))} kB"
    questions = f"{len(key.couplets)} questions, {writer.power(key.magnification)}"
    return el(
        "li", el("a", f"{key.title} (PDF)", href=writer.href(ready(key.id, paper))), el("div", f"{size}. {questions}.", class_="wm-aside")
    )


def _sides(pdf: bytes) -> int:
    """How many sides a card has: what its page tree says."""
    counted = re.search(rb"/Count (\d+)", pdf)
    return int(counted[1]) if counted else 1


def _form(writer: Writer, papers: tuple[str, ...]) -> Iterator[Html]:
    """The choices as plain HTML. Without JavaScript the command stands there as an example."""
    library = writer.library
    keys = [library.keys[id] for id in first_keys(library)]
    objectives = [library.quantities[each] for each in OBJECTIVES if each in library.quantities]
    example = f"wetmount card --key {keys[0].id} -o card.pdf"
    paper = (
        el("select", *(el("option", each, selected=each == "A4") for each in papers), name="paper")
        if papers
        else el("input", type="text", name="paper", value="A4")
    )
    yield el("p", "Choose, and the command is written below. Run it where ", el("code", "wetmount"), " is installed.")
    yield el(
        "div",
        el("fieldset", el("legend", "Keys"), *(_choice("checkbox", "key", each.id, each.title, each is keys[0]) for each in keys)),
        el("fieldset", el("legend", "Paper"), el("label", el("span", "Size"), paper, class_="wm-typed")),
        el(
            "fieldset",
            el("legend", "Which way it lies"),
            _choice("radio", "way", "", "Whichever reads better", True),
            _choice("radio", "way", "--landscape", "Landscape", False),
            _choice("radio", "way", "--portrait", "Portrait", False),
        ),
        el(
            "fieldset",
            el("legend", "Your own field of view, in mm"),
            *(_diameter(number(each.low)) for each in objectives),
            el("p", "Leave empty what you have not measured; field number over objective is a fair guess.", class_="wm-aside"),
        )
        if objectives
        else None,
        el(
            "fieldset",
            el("legend", "Web address of your copy of this site"),
            el("label", el("span", "For the QR code"), el("input", type="url", name="address", inputmode="url"), class_="wm-typed"),
        ),
        class_="wm-card-form",
        data_card_form=True,
    )
    yield el("pre", el("code", example, data_card_command=True), tabindex="0", aria_label="The command")
    yield el("div", el("script", src=writer.href("assets/card-form.js")))


def _choice(kind: str, name: str, value: str, words: str, chosen: bool) -> Html:
    return el("label", el("input", type=kind, name=name, value=value, checked=chosen), el("span", words))


def _diameter(objective: str) -> Html:
    box = el("input", type="number", name="field", data_objective=objective, min="0", step="any", inputmode="decimal")
    return el("label", el("span", f"{objective}× objective"), box, class_="wm-typed")
