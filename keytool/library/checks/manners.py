"""A manner of moving names what exists and gives the figures its motion needs; whatever moves has a manner, or the reason why not."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.checks.unknown_ids import is_broken, missing, not_among, unknown
from keytool.library.finding import Finding, Severity
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Manner
from keytool.library.value import States

NAME = "manners"
NO_SUCH_STATE = missing(NAME, "'{state}' is not a state of the character '{character}'.")
FIGURE_MISSING = Message(
    NAME,
    "'{manner}' has no '{figure}', which the motion '{motion}' needs.",
    tip="Give it with its unit and basis; memory is honest where no source was seen.",
)
NO_SUCH_BODY = missing(NAME, "'{id}' is neither an entry nor a word for what moves.")
UNSHOWN = Message(
    NAME,
    "'{entry}' moves, but no manner shows how.",
    tip="Name it under seen-in: of a manner in bench/manners.yaml, or in one with motion: unshown that says why not.",
    severity=Severity.ADVICE,
)
CHARACTER, OWN_MOVEMENT = "manner", "own-movement"
MOVES = "moves"


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each entry, state or figure that is not there; advice for each entry that moves and stands in no manner."""
    character = loaded.library.characters.get(CHARACTER)
    states = character.states if character else {}
    for manner in loaded.library.manners.values():
        for entry in manner.seen_in:
            yield from unknown(loaded, NAME, "entry", entry, loaded.files.place_of("manners", manner.id, "seen-in", entry))
        yield from _bodies(loaded, manner)
        yield from _needed(loaded, manner)
        for number, state in enumerate(manner.shows):
            if state not in states and not is_broken(loaded, "character", CHARACTER):
                place = loaded.files.place_of("manners", manner.id, "shows", number)
                yield not_among(NO_SUCH_STATE, state, states, place, state=state, character=CHARACTER)
    yield from _unmoved(loaded)


def _bodies(loaded: Loaded, manner: Manner) -> Iterator[Finding]:
    """A finding for each name of whose drawing moves that is neither a word for it nor an entry."""
    words, entries = loaded.library.vocabulary["body"], loaded.library.entries
    for entry, named in manner.seen_in.items():
        if isinstance(named, str) and named not in words and named not in entries and not is_broken(loaded, "entry", named):
            place = loaded.files.place_of("manners", manner.id, "seen-in", entry)
            yield not_among(NO_SUCH_BODY, named, [*words, *entries], place, id=named)


def _needed(loaded: Loaded, manner: Manner) -> Iterator[Finding]:
    """A finding for each figure that the motion divides or multiplies by, and that is not given."""
    motion = loaded.library.vocabulary["motion"][manner.motion]
    for figure in motion.get("needs") or ():
        if figure not in manner.parameters:
            place = loaded.files.place_of("manners", manner.id, "parameters")
            yield FIGURE_MISSING.at(place, manner=manner.id, figure=figure, motion=manner.motion)


def _unmoved(loaded: Loaded) -> Iterator[Finding]:
    library = loaded.library
    if not library.manners or loaded.files.broken:
        return
    named = {entry for manner in library.manners.values() for entry in manner.seen_in}
    for entry in library.entries.values():
        own = entry.statements.get(OWN_MOVEMENT)
        moves = CHARACTER in entry.statements or (own is not None and isinstance(own.showing, States) and MOVES in own.showing.ids)
        if moves and entry.id not in named:
            place = loaded.files.place("entry", entry.id, ("id",))
            yield UNSHOWN.at(place, entry=entry.id)
