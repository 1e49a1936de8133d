"""The day an entry was last read is a day there is, and not one to come."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from keytool.library.finding import Finding
from keytool.library.load import Loaded

NAME = "dates"
AHEAD = timedelta(days=1)
"""East of us it is tomorrow already."""


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each date that no calendar has, or that lies in the future."""
    latest = date.today() + AHEAD
    for entry in loaded.library.entries.values():
        place = loaded.files.place("entry", entry.id, ("reviewed",))
        try:
            day = date.fromisoformat(entry.reviewed)
        except ValueError:
            yield Finding(NAME, place, f"There is no day '{entry.reviewed}'.", tip="Count the days of the month.")
            continue
        if day > latest:
            yield Finding(NAME, place, f"'{entry.reviewed}' is still to come.", tip="Write the day on which it was last read through.")
