"""The day an entry was last read is a day there is, and not one to come."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from keytool.library.finding import Finding
from keytool.library.load import Loaded
from keytool.library.message import Message

NAME = "dates"
NO_SUCH_DAY = Message(NAME, "There is no day '{date}'.", tip="Count the days of the month.")
TO_COME = Message(NAME, "'{date}' is still to come.", tip="Write the day on which it was last read through.")
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
            yield NO_SUCH_DAY.at(place, date=entry.reviewed)
            continue
        if day > latest:
            yield TO_COME.at(place, date=entry.reviewed)
