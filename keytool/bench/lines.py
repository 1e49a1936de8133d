"""Which line of the tally a thing is counted in, and counts added up line by line."""

from __future__ import annotations

from keytool.bench.sheet import OTHER, Tally
from keytool.library.model import Library


def lines_of(library: Library, counted: str) -> tuple[str, ...]:
    """The line something is counted in, and the one that is a part of. Empty for what is in no line."""
    line = counted if counted in library.bench.tally else library.tally_lines.get(counted, "")
    if not line:
        return ()
    whole = library.bench.tally[line].part_of
    return (line, whole) if whole else (line,)


def added_up(library: Library, tally: Tally) -> dict[str, int]:
    """Counts by line of the tally, parts added to their whole; what is in no line stands by its own id."""
    totals: dict[str, int] = {}
    for counted, number in tally.items():
        for line in lines_of(library, counted) or (counted,):
            totals[line] = totals.get(line, 0) + number
    return totals


def label(library: Library, counted: str) -> str:
    """The name of a line, an entry, or something else."""
    if counted in library.bench.tally:
        return library.bench.tally[counted].label
    if counted in library.entries:
        return library.entries[counted].common
    return counted.removeprefix(OTHER)


def is_known(library: Library, counted: str) -> bool:
    """Whether an id may be counted."""
    named = counted.startswith(OTHER) and bool(counted.removeprefix(OTHER).strip())
    return named or counted in library.bench.tally or counted in library.entries
