"""What a kind of drawing declares about itself, and the checks that follow from it."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from typing import Literal

from ..frame import Sketch
from ..shapes import WASHES

Value = float | str | bool | None
Values = Mapping[str, Value]


@dataclass(frozen=True, slots=True)
class Param:
    """One parameter of a kind.

    `um` is a length in micrometres, `number` a plain number (a share or a count); both lie within `low`..`high`.
    A default of None means the drawing works it out from the others, as the description says.
    """

    name: str
    type: Literal["um", "number", "choice", "flag"]
    default: Value
    description: str
    choices: tuple[str, ...] = ()
    low: float = 0.0
    high: float = 0.0

    def problem(self, value: object) -> str | None:
        """What is wrong with `value`, as one sentence, or None."""
        match self.type:
            case "choice":
                if value in self.choices and isinstance(value, str):
                    return None
                return not_known(f"{self.name}: {value!r} is not one of its values", str(value), self.choices)
            case "flag":
                return None if isinstance(value, bool) else f"{self.name}: {value!r} should be true or false"
            case _:
                if isinstance(value, bool) or not isinstance(value, int | float):
                    return f"{self.name}: {value!r} should be a number {self._span}"
                return None if self.low <= value <= self.high else self.out_of_range.format(value=f"{value:g}")

    @property
    def out_of_range(self) -> str:
        """What is said of a number that cannot be drawn, as a template with `{value}`."""
        return f"{self.name}: {{value}}{self._unit} is not {self._span}"

    @property
    def _unit(self) -> str:
        return " µm" if self.type == "um" else ""

    @property
    def _span(self) -> str:
        return f"between {self.low:g} and {self.high:g}{self._unit}"


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of drawing: its name, what it shows, its parameters and the function that draws it."""

    name: str
    description: str
    params: tuple[Param, ...]
    build: Callable[[Values], Sketch]
    conflicts: Callable[[Values], list[str]] = lambda values: []

    def filled(self, params: Mapping[str, object]) -> dict[str, Value]:
        """The parameters with every default filled in."""
        return {p.name: params.get(p.name, p.default) for p in self.params}  # type: ignore[misc]

    def problems(self, params: Mapping[str, object]) -> list[str]:
        """Every reason these parameters cannot be drawn, in plain words; empty if they can."""
        known = {p.name: p for p in self.params}
        out = [not_known(f"{self.name} has no parameter {name!r}", name, tuple(known)) for name in params if name not in known]
        out += [f"{self.name}: {wrong}" for name, value in params.items() if name in known and (wrong := known[name].problem(value))]
        return out or [f"{self.name}: {wrong}" for wrong in self.conflicts(self.filled(params))]


def um(name: str, default: float | None, low: float, high: float, description: str) -> Param:
    """A length in µm."""
    return Param(name, "um", default, description, (), low, high)


def amount(name: str, default: float | None, low: float, high: float, description: str) -> Param:
    """A share or a count."""
    return Param(name, "number", default, description, (), low, high)


def choice(name: str, choices: tuple[str, ...], description: str, default: str | None = None) -> Param:
    """One of several words; the first is the default unless another is named."""
    return Param(name, "choice", choices[0] if default is None else default, description, choices)


def flag(name: str, description: str) -> Param:
    """Yes or no; no unless said."""
    return Param(name, "flag", False, description)


def accent(*parts: str) -> Param:
    """The part drawn in the accent colour: the one thing being asked about."""
    return choice("accent", ("none", *parts), "the one part drawn in the accent colour")


def colour() -> Param:
    """The true colour of the part that is asked about, where its colour is what is asked."""
    return choice(
        "colour",
        ("none", *WASHES),
        "the true colour of the part named by `accent` (else of the whole), laid under the ink instead of the accent",
    )


def num(values: Values, name: str) -> float:
    """A number out of checked values."""
    return float(values[name])  # type: ignore[arg-type]


def given(values: Values, name: str, otherwise: float) -> float:
    """A number out of checked values, or `otherwise` where none was given."""
    value = values[name]
    return otherwise if value is None else float(value)


def word(values: Values, name: str) -> str:
    """A choice out of checked values."""
    return str(values[name])


def long_enough(widths: float) -> Callable[[Values], list[str]]:
    """The check of a kind whose `length`, where given, must be so many times its `width`."""

    def check(v: Values) -> list[str]:
        width = num(v, "width")
        length = given(v, "length", widths * width)
        least = widths * width
        return [f"length {length:g} µm is too short to show what is {width:g} µm wide (at least {least:g} µm)"] if length < least else []

    return check


def not_known(said: str, word: str, allowed: Collection[str]) -> str:
    """What is said of a word that is not known, with the nearest one that is, and all of them."""
    from keytool.library.messages import did_you_mean  # here, because it loads what a drawing without faults never needs

    return " ".join(part for part in (f"{said}.", did_you_mean(word, allowed), f"Allowed: {', '.join(allowed)}.") if part)
