"""Nothing in the library is left without a picture, and a picture shows the part that is asked about."""

from functools import cache
from pathlib import Path

from keytool.figures.library_figures import of_entry, of_state
from keytool.library import load

WITHOUT: set[str] = set()
"""States that have no picture because one would mislead; the reason stands as a comment at the state in the data."""


@cache
def library():
    return load(Path(__file__).parents[2]).library


def test_every_entry_has_a_picture():
    assert [entry.id for entry in library().entries.values() if entry.figure is None] == []


def test_every_state_has_a_picture_but_those_on_the_list():
    states = ((c.id, s) for c in library().characters.values() for s in c.states.values())
    assert {f"{character}/{state.id}" for character, state in states if state.figure is None} == WITHOUT


def shown(drawing, figure):
    """Whether what the data asks for is there: the true colour where one is named, else the accent."""
    role = figure.params.get("colour", "accent")
    return any(s.role == role for s in drawing.shapes)


def test_an_accent_that_is_asked_for_is_there_to_be_seen():
    """Data that names a part to be shown in the accent colour shows that part."""
    pale = []
    for entry in library().entries.values():
        drawing = of_entry(library(), entry)
        if entry.figure.params.get("accent", "none") != "none" and not shown(drawing, entry.figure):
            pale.append(entry.id)
    for character in library().characters.values():
        for state in character.states.values():
            asked = state.figure and state.figure.params.get("accent", "none") != "none"
            if asked and not shown(of_state(library(), character, state.id), state.figure):
                pale.append(f"{character.id}/{state.id}")
    assert pale == []


def test_states_of_one_character_do_not_share_a_picture():
    """Where two states look the same there is nothing to choose by."""
    twins = []
    for character in library().characters.values():
        seen = {}
        for state in character.states.values():
            shapes = of_state(library(), character, state.id).shapes
            if shapes in seen.values():
                twins.append(f"{character.id}/{state.id}")
            seen[state.id] = shapes
    assert twins == []
