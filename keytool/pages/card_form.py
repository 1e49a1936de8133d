"""The form that writes the command of a bench card of your own."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from keytool.library.model import Library
from keytool.library.wording import number
from keytool.pages.extras import Extras
from keytool.pages.html import Html, el
from keytool.pages.index_pages import first_keys
from keytool.pages.page_writer import Writer

OBJECTIVES = ("low-objective", "high-objective")
"""The bench quantities that say which objectives a field diameter is asked for."""


def form_preview(form: str) -> str:
    """Where the picture of an example of a form lies."""
    return f"cards/form-{form}.svg"


def card_form(writer: Writer, extras: Extras) -> Iterator[Html]:
    """The choices as plain HTML. Without JavaScript the command stands there as an example."""
    library = writer.library
    keys = [library.keys[id] for id in first_keys(library)]
    example = f"wetmount card --key {keys[0].id} -o card.pdf"
    yield el("p", "Choose, and the command is written below. Run it where ", el("code", "wetmount"), " is installed.")
    yield el(
        "div",
        el("fieldset", el("legend", "Keys"), *(_choice("checkbox", "key", each.id, each.title, each is keys[0]) for each in keys)),
        _compared(library),
        _paper(extras.papers),
        *_made_as(writer, extras),
        el(
            "fieldset",
            el("legend", "Which way it lies"),
            _choice("radio", "way", "", "Whichever reads better", True),
            _choice("radio", "way", "--landscape", "Landscape", False),
            _choice("radio", "way", "--portrait", "Portrait", False),
        ),
        el(
            "fieldset",
            el("legend", "The edge you turn the sheet over"),
            _choice("radio", "flip", "", "Like a page", True),
            _choice("radio", "flip", "long", "The long edge", False),
            _choice("radio", "flip", "short", "The short edge", False),
        ),
        *_microscope(library),
        el(
            "fieldset",
            el("legend", "Web address of your copy of this site"),
            el("label", el("span", "For the QR code"), el("input", type="url", name="address", inputmode="url"), class_="wm-typed"),
        ),
        class_="wm-card-form",
        data_card_form=True,
    )
    yield el("pre", el("code", example, data_card_command=True), tabindex="0", aria_label="The command")
    yield el("div", el("script", src=writer.href("assets/cards.js")))


def _compared(library: Library) -> Html:
    """A look-alike set, and entries to compare."""
    sets = sorted(library.look_alikes.values(), key=lambda each: each.title.lower())
    options = (el("option", each.title, value=each.id) for each in sets)
    return el(
        "fieldset",
        el("legend", "Look-alikes and entries"),
        el("label", el("span", "A set"), el("select", el("option", "none", value=""), *options, name="look-alike"), class_="wm-typed"),
        el("label", el("span", "Entries, by id"), el("input", type="text", name="entries", autocapitalize="none"), class_="wm-typed"),
        el("p", "The id is the last part of the address of its page; several are compared in one table.", class_="wm-aside"),
    )


def _paper(papers: tuple[str, ...]) -> Html:
    box = (
        el("select", *(el("option", each, selected=each == "A4") for each in papers), name="paper")
        if papers
        else el("input", type="text", name="paper", value="A4")
    )
    return el("fieldset", el("legend", "Paper"), el("label", el("span", "Size"), box, class_="wm-typed"))


def _made_as(writer: Writer, extras: Extras) -> Iterator[Html]:
    """Form, ink and density; with an example of each form where the site was built with cards."""
    if extras.forms:
        choices = (_choice("radio", "form", each, f"{each}: {about}", n == 0) for n, (each, about) in enumerate(extras.forms.items()))
        pictures = (picture(writer, form_preview(each), f"Look at an example: {each}", extras.files) for each in extras.forms)
        yield el(
            "fieldset",
            el("legend", "Form"),
            *choices,
            _choice("checkbox", "dense", "", "As few sides as can be, all small", False),
            *pictures,
        )
    if extras.inks:
        choices = (_choice("radio", "ink", each, f"{each}: {about}", each == "normal") for each, about in extras.inks.items())
        yield el("fieldset", el("legend", "Ink"), *choices)


def _microscope(library: Library) -> Iterator[Html]:
    objectives = [number(library.quantities[each].low) for each in OBJECTIVES if each in library.quantities]
    if not objectives:
        return
    yield el(
        "fieldset",
        el("legend", "Your own microscope"),
        *(_measured("field", each, f"{each}× objective, field of view in mm") for each in objectives),
        *(_measured("division", each, f"{each}× objective, one division of the eyepiece scale in µm") for each in objectives),
        el("p", "Leave empty what you have not measured; field number over objective is a fair guess of the field.", class_="wm-aside"),
    )


def _choice(kind: str, name: str, value: str, words: str, chosen: bool) -> Html:
    return el("label", el("input", type=kind, name=name, value=value, checked=chosen), el("span", words))


def _measured(name: str, objective: str, words: str) -> Html:
    box = el("input", type="number", name=name, data_objective=objective, min="0", step="any", inputmode="decimal")
    return el("label", el("span", words), box, class_="wm-typed")


def picture(writer: Writer, path: str, words: str, files: Mapping[str, bytes]) -> Html | str:
    """The picture behind a fold, so that a phone loads only what is looked at; nothing where it was not made."""
    if path not in files:
        return ""
    look = "display:block;width:100%;max-width:34rem;height:auto;background:#fff"
    image = el("img", src=writer.href(path), alt=words, loading="lazy", style=look)
    return el("details", el("summary", words), image, class_="wm-card-look")
