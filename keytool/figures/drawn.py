"""Drawings for what the library holds: an entry, a state of a character, a lead of a couplet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from keytool.figures import draw
from keytool.figures.shapes import Drawing
from keytool.library.model import Character, Couplet, Entry, Figure, Lead, Library
from keytool.library.show import plain
from keytool.library.value import Interval, States
from keytool.library.wanted import wanted


def of_entry(library: Library, entry: Entry) -> Drawing | None:
    """The drawing of an entry, to scale from its own numbers; None where it has none."""
    return _drawing(library, entry.figure, entry, entry.name, entry.summary)


def of_state(library: Library, character: Character, state: str) -> Drawing | None:
    """The drawing of one state of a character; None where it has none."""
    shown = character.states[state]
    return _drawing(library, shown.figure, None, shown.name, shown.about)


def of_lead(library: Library, couplet: Couplet, lead: Lead) -> Drawing | None:
    """The drawing that stands beside a lead; None where there is none.

    It is the lead's own; else, where one character is asked, that of the first state the lead takes; else, since no one
    state shows several characters or a size, that of what the lead ends at.
    """
    if lead.figure:
        return _drawing(library, lead.figure, None, plain(library, lead.text), "")
    if lead.end and not _asks_states(library, couplet) and (end := of_entry(library, library.entries[lead.end])):
        return replace(end, title=plain(library, lead.text))
    for name, showing in wanted(library, couplet, lead).items():
        for id, state in library.characters[name].states.items():
            if state.figure and isinstance(showing, States) and id in showing.ids:
                return _drawing(library, state.figure, None, plain(library, lead.text), state.about)
    return None


def _asks_states(library: Library, couplet: Couplet) -> bool:
    return len(couplet.characters) == 1 and bool(library.characters[couplet.characters[0]].states)


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
