"""The page of the characters: what can be looked at, how, and what it may show."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from keytool.figures import Contrast, contrast, to_svg
from keytool.figures.library_figures import of_state
from keytool.library.model import Character, Library
from keytool.library.wording import number
from keytool.pages.html import Html, el, join
from keytool.pages.page import Asset, Page, heading, page
from keytool.pages.page_writer import Writer
from keytool.pages.plates import FOLDER, LETTERS, PEN, as_file, empty, lazy

PLATE = (140.0, 160.0)

Shown = Mapping[str, Contrast]
"""For each character the drawings of its states, made ready to stand side by side."""


def states_shown(library: Library) -> Shown:
    """The drawings of all states, for the page and for the files beside it."""
    return {
        character.id: contrast(
            [of_state(library, character, state) for state in character.states], *PLATE, letter=LETTERS, pen=PEN, smallest=0.5
        )
        for character in library.characters.values()
    }


def characters_page(library: Library, shown: Shown) -> Page:
    """Every character with its states, drawn where a drawing stands; one anchor each.

    The drawings (`states_shown`) are files (`state_assets`), fetched as they come into sight: there are hundreds, and a phone shows three.
    """
    writer = Writer(library, "characters/index.md")
    blocks: list[str] = [
        heading(1, "Characters"),
        el("p", "What one can look at, how to see it, and how often a careful beginner gets it wrong."),
    ]
    for character in sorted(library.characters.values(), key=lambda each: each.name.lower()):
        blocks += [heading(2, character.name, character.id), *_about(writer, character, shown[character.id])]
    return page("characters/index.md", "keydata/characters", "Characters", blocks)


def _about(writer: Writer, character: Character, shown: Contrast) -> Iterator[Html]:
    library = writer.library
    asked = [writer.link(key.id) for key in library.keys.values() if any(character.id in each.characters for each in key.couplets.values())]
    yield el("p", el("strong", writer.rich(character.asks)), f" Seen from {writer.power(character.magnification)}.")
    yield el("p", writer.rich(character.look), class_="wm-look")
    if character.states:
        yield from _states(writer, character, shown)
    if character.is_number:
        yield _measured(writer, character)
    yield el("div", el("span", _misread(character), class_="t"), writer.mark(character.misread_basis), class_="wm-said")
    if asked:
        yield el("p", "Asked in ", join(asked, ", "), ".", class_="label")


def _misread(character: Character) -> str:
    """How often it is got wrong, and the pairs of states where that differs."""
    pairs = [
        f"{character.states[there].name} is taken for {character.states[seen].name} about {_in_100(rate)}"
        for (there, seen), rate in character.mix_ups.items()
    ]
    return f"Misread about {_in_100(character.misread)}{': ' if pairs else ''}{'; '.join(pairs)}. "


def _in_100(rate: float) -> str:
    return f"{number(round(100 * rate, 1))} times in 100"


def _states(writer: Writer, character: Character, shown: Contrast) -> Iterator[Html]:
    drawn = any(shown.drawings)
    plates = [
        lazy(drawing, scale, writer.href(_place(character, state))) if drawing else empty()
        for state, drawing, scale in zip(character.states, shown.drawings, shown.scales, strict=True)
    ]
    items = [
        el(
            "li",
            plate if drawn else None,
            el("span", el("strong", state.name), " ", writer.rich(state.about)),
            id=f"{character.id}--{state.id}",
        )
        for state, plate in zip(character.states.values(), plates, strict=True)
    ]
    yield el("ul", *items, class_=f"wm-states {'wm-drawn' if drawn else 'wm-undrawn'}", role="list")
    if not shown.one_scale:
        yield el("p", "These drawings are not at one scale: read the bar under each.", class_="label")


def state_assets(library: Library, shown: Shown) -> list[Asset]:
    """The drawing of each state as an SVG file."""
    return [
        Asset(_place(character, state), as_file(to_svg(drawing, scale, id_prefix="state")), library.files["character", character.id])
        for character in library.characters.values()
        for state, drawing, scale in zip(character.states, shown[character.id].drawings, shown[character.id].scales, strict=True)
        if drawing
    ]


def _place(character: Character, state: str) -> str:
    return f"{FOLDER}/states/{character.id}--{state}.svg"


def _measured(writer: Writer, character: Character) -> Html:
    factor = float(writer.library.vocabulary["unit"][character.unit].get("factor", 1))
    unit = "" if character.unit == "1" else f" {character.unit}"
    return el(
        "div",
        f"A number{f' in {character.unit}' if unit else ''}, read to within {number(round(character.plus_minus / factor, 6))}{unit}. ",
        writer.mark(character.plus_minus_basis) if character.plus_minus_basis else None,
        class_="wm-said",
    )
