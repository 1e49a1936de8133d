"""Drawings for what the library holds: an entry, a state of a character, a lead of a couplet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from keytool.figures import draw
from keytool.figures.shapes import Drawing
from keytool.library.model import Character, Couplet, Entry, Figure, Lead, Library, State
from keytool.library.requirements import required
from keytool.library.value import Interval, States
from keytool.library.wording import plain


def of_entry(library: Library, entry: Entry) -> Drawing | None:
    """The drawing of an entry, to scale from its own numbers; None where it has none."""
    return _drawing(library, entry.figure, entry, entry.name, entry.summary)


def of_state(library: Library, character: Character, state: str) -> Drawing | None:
    """The drawing of one state of a character; None where it has none."""
    shown = character.states[state]
    return _drawing(library, shown.figure, None, shown.name, shown.about)


def of_lead(library: Library, couplet: Couplet, lead: Lead) -> Drawing | None:
    """The drawing that stands beside a lead; None where there is none.

    It is the lead's own; else, where states of one character are asked, that of the first state the lead names, or of the
    one state that is left over; else that of what the lead ends at, since no one state shows several characters, a size,
    or all that may be left over.
    """
    if lead.figure:
        return _drawing(library, lead.figure, None, plain(library, lead.text), "")
    states = _states(library, couplet, lead)
    if lead.end and not states and (end := of_entry(library, library.entries[lead.end])):
        return replace(end, title=plain(library, lead.text))
    for state in states:
        if state.figure:
            return _drawing(library, state.figure, None, plain(library, lead.text), state.about)
    return None


def _states(library: Library, couplet: Couplet, lead: Lead) -> list[State]:
    """The states of which the first drawn one shows what a lead says; none where no one state does."""
    if len(couplet.characters) > 1:
        return []
    [(name, showing)] = required(library, couplet, lead).items() or [("", None)]
    if not isinstance(showing, States) or (lead.otherwise and len(showing.ids) > 1):
        return []
    return [state for id, state in library.characters[name].states.items() if id in showing.ids]


def _drawing(library: Library, figure: Figure | None, entry: Entry | None, title: str, description: str) -> Drawing | None:
    if figure is None:
        return None
    return draw(figure.draws, resolved(figure, entry), title=title, description=plain(library, description))


def resolved(figure: Figure, entry: Entry | None) -> Mapping[str, Any]:
    """The parameters of a figure as plain values; `{of: character}` is the middle of the entry's range, in µm."""
    return {name: _middle(value["of"], entry) if isinstance(value, dict) else value for name, value in figure.params.items()}


def _middle(character: str, entry: Entry | None) -> float:
    showing = entry.statements[character].showing if entry else None
    assert isinstance(showing, Interval)
    return round((showing.low + showing.high) / 2, 3)
