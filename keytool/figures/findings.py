"""Figures that cannot be drawn, and drawings whose lines are wrong, as findings at the place they are written."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.figures import problems
from keytool.figures.drawn_faults import faults
from keytool.figures.library_figures import resolved
from keytool.figures.motion import OWN, lacking
from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.model import Entry, Figure
from keytool.library.yaml_file import DataPath

CHECK = "drawing"


def findings(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each figure whose kind or parameters no drawing has, and for each fault in the lines of a drawing that is data."""
    library = loaded.library
    for form in library.drawings.values():
        for path, message, allowed, tip in faults(form):
            yield Finding(CHECK, loaded.files.place("drawing", form.id, path), message, allowed, tip)
    for entry in library.entries.values():
        yield from _of(loaded, "entry", entry.id, ("figure",), entry.figure, entry)
    yield from _moving(loaded)
    for character in library.characters.values():
        for state in character.states.values():
            yield from _of(loaded, "character", character.id, ("states", state.id, "figure"), state.figure, None)
    for key in library.keys.values():
        for couplet in key.couplets.values():
            for lead in couplet.leads.values():
                yield from _of(loaded, "key", key.id, ("couplets", couplet.id, "leads", lead.id, "figure"), lead.figure, None)


def _moving(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each manner of moving whose motion finds nothing in a drawing to work on."""
    library = loaded.library
    for manner in library.manners.values():
        for id, named in manner.seen_in.items():
            entry = library.entries.get(id)
            if entry is None or not (isinstance(named, Figure) or named == OWN or named in library.entries):
                continue
            place = loaded.files.place_of("manners", manner.id, "seen-in", id)
            figure = named if isinstance(named, Figure) else (entry if named == OWN else library.entries[named]).figure
            if figure is None:
                yield Finding(CHECK, place, f"'{id}' has no drawing to move.", "", "Draw it first, or name the entry whose drawing it is.")
            elif isinstance(named, Figure):
                yield from (
                    Finding(CHECK, place, each) for each in problems(figure.draws, resolved(figure, entry), library.drawings.values())
                )
            else:
                yield from (Finding(CHECK, place, each) for each in lacking(library, manner, id))


def _of(loaded: Loaded, kind: str, id: str, path: DataPath, figure: Figure | None, entry: Entry | None) -> Iterator[Finding]:
    if figure:
        for problem in problems(figure.draws, resolved(figure, entry), loaded.library.drawings.values()):
            yield Finding(CHECK, loaded.files.place(kind, id, path), problem)
