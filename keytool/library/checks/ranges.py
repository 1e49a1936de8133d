"""A number given as a range has its lower end first."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library.finding import Finding, Place
from keytool.library.load import Loaded
from keytool.library.message import Message
from keytool.library.model import Quantity

NAME = "ranges"
UPSIDE_DOWN = Message(NAME, "Low is {low}, but high is {high}.", tip="Swap the two.")


def check(loaded: Loaded) -> Iterator[Finding]:
    """A finding for each bench quantity and each figure of a manner of moving whose low is above its high."""
    for quantity in loaded.library.quantities.values():
        yield from _upside_down(quantity, loaded.files.place_of("quantities", quantity.id, "low"))
    for manner in loaded.library.manners.values():
        for name, quantity in manner.parameters.items():
            yield from _upside_down(quantity, loaded.files.place_of("manners", manner.id, "parameters", name, "low"))


def _upside_down(quantity: Quantity, place: Place) -> Iterator[Finding]:
    if quantity.low > quantity.high:
        yield UPSIDE_DOWN.at(place, low=quantity.low, high=quantity.high)
