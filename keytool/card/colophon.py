"""What a card says of itself and of your microscope, as lines of words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from keytool.card.words import NO_BREAK
from keytool.library import wording
from keytool.library.model import Library

EXAMPLE = "field-number-example"
"""The quantity of the library the example is worked out from where the user gave no field diameters."""


@dataclass(frozen=True, slots=True)
class Imprint:
    """What a side says besides its content.

    `field_diameters` maps the power of an objective to the diameter of the field of view in mm, `divisions` to what one
    division of the eyepiece scale measures in µm; where empty, the worked example or nothing is printed.
    """

    version: str
    reviewed: str
    site_address: str
    field_diameters: Mapping[int, float] = field(default_factory=dict)
    divisions: Mapping[int, float] = field(default_factory=dict)

    @property
    def address(self) -> str:
        """The site's address without a slash at its end."""
        return self.site_address.rstrip("/")

    @property
    def short_address(self) -> str:
        """The address as one types it."""
        return self.address.partition("://")[2] or self.address


def eyepiece(library: Library) -> int:
    """What the eyepieces magnify, with which the total magnifications of the library are meant."""
    return int(library.quantities["eyepiece-power"].low)


def legend(library: Library) -> str:
    """Each basis mark with its meaning; words that share a mark share a place."""
    meanings: dict[str, list[str]] = {}
    values = list(library.vocabulary["value"].values())
    for kind in library.vocabulary["basis"].values():
        if kind.id == "published":
            for value in values:
                meanings.setdefault(value.get("mark"), []).append(f"{kind.label}, {value.label}")
        else:
            meanings.setdefault(kind.get("mark"), []).append(kind.label)
    each = (f"{mark}{NO_BREAK}{library.say('card-or').join(_without_repeats(words))}" for mark, words in meanings.items())
    return library.say("card-marks", marks=" · ".join(each))


def made(library: Library, imprint: Imprint) -> str:
    """Version, date, licence."""
    return library.say("card-made", version=imprint.version, date=imprint.reviewed)


def microscope(library: Library, imprint: Imprint) -> list[str]:
    """Your field diameters, or an example that says it is one; and your eyepiece scale, if you gave it."""
    own = yours(library, imprint)
    return [*(own[:1] if imprint.field_diameters else _example(library)), *own[bool(imprint.field_diameters) :]]


def yours(library: Library, imprint: Imprint) -> list[str]:
    """Only what was given of your microscope, the field of view first."""
    lines = []
    if imprint.field_diameters:
        lines.append(library.say("card-your-field", powers=_powers(library, imprint.field_diameters, "mm")))
    if imprint.divisions:
        lines.append(library.say("card-your-division", powers=_powers(library, imprint.divisions, "µm")))
    return lines


def _example(library: Library) -> list[str]:
    if EXAMPLE not in library.quantities:
        return []
    number, times = library.quantities[EXAMPLE], eyepiece(library)
    known = {int(id) // times: number.low * times / int(id) for id in library.vocabulary["magnification"]}
    powers = _powers(library, known, "mm")
    return [library.say("card-example-field", number=wording.number(number.low), powers=powers)]


def _powers(library: Library, values: Mapping[int, float], unit: str) -> str:
    """Each with the total magnification that couplets name, and the objective it is seen with."""
    times = eyepiece(library)
    each = (
        library.say("card-at-power", power=power * times, objective=power, value=f"{value:.3g}", unit=unit)
        for power, value in sorted(values.items())
    )
    return " · ".join(words.replace(" ", NO_BREAK) for words in each)


def _without_repeats(words: list[str]) -> list[str]:
    first, *rest = words
    head = first.partition(", ")[0] + ", "
    return [first, *(each.removeprefix(head) for each in rest)]
