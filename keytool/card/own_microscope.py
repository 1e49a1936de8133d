"""Your own microscope on a card: what you measured reaches every text, and what cannot be is refused."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from urllib.parse import urlsplit

from keytool.bench.optics import field_diameter_mm
from keytool.card.errors import Impossible
from keytool.library.basis import Basis
from keytool.library.model import Library, Quantity
from keytool.library.wording import number

LONGEST_ADDRESS = 300
"""A code for more would be too fine to be read from a card."""
POWERS = {"low-objective": ("field-diameter-low", "scale-division-low"), "high-objective": ("field-diameter-high", "scale-division-high")}
"""Each objective of the library with what is said of the field and of one division of the eyepiece scale with it."""


def all_fields(library: Library, given: Mapping[int, float]) -> dict[int, float]:
    """The field diameters (mm) with every objective that the keys use: those given, and the rest worked out from them.

    Source: field number / objective; one eyepiece has one field number.

    Raises:
        Impossible: no eyepiece has such a field.
    """
    numbers = [_within(library, "field-number-limits", power * mm, _FIELD, power, mm) for power, mm in given.items()]
    if not numbers:
        return {}
    field_number = sum(numbers) / len(numbers)
    objectives = [library.quantities[id].low for id in POWERS if id in library.quantities]
    return {round(power): field_diameter_mm(field_number, power) for power in objectives} | dict(given)


def checked_divisions(library: Library, given: Mapping[int, float]) -> dict[int, float]:
    """The lengths (µm) of one division of the eyepiece scale by objective.

    Raises:
        Impossible: no eyepiece scale is ruled so.
    """
    for power, um in given.items():
        _within(library, "scale-ruling-limits", power * um, _DIVISION, power, um)
    return dict(given)


def checked_address(address: str) -> str:
    """The web address as given.

    Raises:
        Impossible: it is no address of a web page, or too long to be printed as a code.
    """
    if not address:
        return ""
    parts = urlsplit(address) if address.isascii() and address.isprintable() and " " not in address else None
    if not parts or parts.scheme not in ("http", "https") or not parts.netloc:
        raise Impossible(f"{address[:60]!r} is not a web address. Write it whole, such as https://example.org/soil .")
    if len(address) > LONGEST_ADDRESS:
        raise Impossible(f"The web address has {len(address)} characters; at most {LONGEST_ADDRESS} can be read from a card.")
    return address


def with_own(library: Library, fields: Mapping[int, float], divisions: Mapping[int, float]) -> Library:
    """The library with your own figures in place of the example's, so that every text on the card speaks of one microscope."""
    own: dict[str, Quantity] = {}
    for objective, (field, division) in POWERS.items():
        if objective not in library.quantities:
            continue
        power = round(library.quantities[objective].low)
        for id, values in ((field, fields), (division, divisions)):
            if power in values and id in library.quantities:
                value = float(f"{values[power]:.3g}")
                basis = (Basis("computed", how=f"as you measured it, {number(value)} {library.quantities[id].unit}"),)
                own[id] = replace(library.quantities[id], low=value, high=value, basis=basis)
    return replace(library, quantities={**library.quantities, **own}) if own else library


_FIELD = "A field of {value:g} mm with the {power}× objective cannot be"
_DIVISION = "A scale division of {value:g} µm with the {power}× objective cannot be"


def _within(library: Library, id: str, constant: float, words: str, power: int, value: float) -> float:
    """The constant of the eyepiece, if one can have it."""
    limits = library.quantities.get(id)
    if limits and not limits.low <= constant <= limits.high:
        low, high = (float(f"{end / power:.3g}") for end in (limits.low, limits.high))
        unit = "mm" if words is _FIELD else "µm"
        raise Impossible(f"{words.format(value=value, power=power)}: from {number(low)} to {number(high)} {unit} can.")
    return constant
