"""Drawings for what the library holds: an entry, a state of a character, a lead of a couplet."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from keytool.figures import draw
from keytool.figures.shapes import Drawing
from keytool.library.model import Character, Couplet, Entry, Figure, Lead, Library
from keytool.library.show import plain
from keytool.library.value import Interval


def of_entry(library: Library, entry: Entry) -> Drawing | None:
    """The drawing of an entry, to scale from its own numbers; None where it has none."""
    return _drawing(library, entry.figure, entry, entry.name, entry.summary)


def of_state(library: Library, character: Character, state: str) -> Drawing | None:
    """The drawing of one state of a character; None where it has none."""
    shown = character.states[state]
    return _drawing(library, shown.figure, None, shown.name, shown.about)


def of_lead(library: Library, couplet: Couplet, lead: Lead) -> Drawing | None:
    """The drawing that stands beside a lead: its own, else that of the first state it names; None where neither is drawn."""
    if lead.figure:
        return _drawing(library, lead.figure, None, plain(library, lead.text), "")
    for name, wanted in lead.when.items():
        character = library.characters[name]
        for id, state in character.states.items():
            if state.figure and id in getattr(wanted, "ids", ()):
                return _drawing(library, state.figure, None, plain(library, lead.text), state.about)
    return None


def _drawing(library: Library, figure: Figure | None, entry: Entry | None, title: str, description: str) -> Drawing | None:
    if figure is None:
        return None
    return draw(figure.kind, resolved(figure, entry), title=title, description=plain(library, description))


def resolved(figure: Figure, entry: Entry | None) -> Mapping[str, Any]:
    """The parameters of a figure as plain values; `{of: character}` is the middle of the entry's range, in µm."""
    return {name: _middle(value["of"], entry) if isinstance(value, dict) else value for name, value in figure.params.items()}


def _middle(character: str, entry: Entry | None) -> float:
    showing = entry.statements[character].showing if entry else None
    assert isinstance(showing, Interval)
    return round((showing.low + showing.high) / 2, 3)
