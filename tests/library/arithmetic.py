"""Reads the sums that a computed basis shows, such as "0.61 × 550 nm / 0.65 = 0.52 µm", so that they can be worked again.

A sum is read if both sides of its equals sign are numbers, units and the signs of plain
arithmetic. Words round it are passed over; what cannot be read is left alone, never guessed.
"""

from __future__ import annotations

import itertools
import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

UNITS: Mapping[str, float] = {
    "nm": 1e-9,
    "µm": 1e-6,
    "mm": 1e-3,
    "m": 1,
    "mm mean chord": 1e-3,
    "mm²": 1e-6,
    "mm³": 1e-9,
    "mL": 1e-6,
    "µm/s": 1e-6,
    "m²/s": 1,
    "s": 1,
    "min": 60,
    "hours": 3600,
    "mg/L": 1,
    "g/mL": 1e6,
    "g": 1,
    "nmol": 1e-9,
    "division over 10 divisions": 0.1,
    "division over 100 divisions": 0.01,
    "in a hundred": 0.01,
    "million a gram": 1e6,
    "division": 1,
    "divisions": 1,
    "fields": 1,
    "pixels": 1,
    "worms": 1,
}
"""What each unit is worth in metres, square or cubic metres, seconds, grams or moles; things counted are 1."""
WAYS = (UNITS, {**UNITS, "mL": 1}, dict.fromkeys(UNITS, 1.0))
"""A sum may hold in units, for each millilitre, or in bare numbers where its words say the rest."""

_UNIT = "|".join(re.escape(each) for each in sorted(UNITS, key=len, reverse=True))
_TOKEN = re.compile(
    rf"\s*(?:(?P<number>\d+(?: \d{{3}}(?!\d))*(?:\.\d+)?(?:e-?\d+)?)(?:\s?(?P<unit>{_UNIT})(?![\w²³]))?"
    r"|(?P<name>sqrt|exp|ln|tan|asin|pi)\b|(?P<sign>[-+×/()]|[²³]))"
)
_CUT_OFF = re.compile(rf"([-+×/^²³]|\b(?:of|with|to|{_UNIT}))\s*$")
_SIGNS = {"×": "*", "²": "**2", "³": "**3"}
_NAMES = {"sqrt": math.sqrt, "exp": math.exp, "ln": math.log, "pi": math.pi, "tan": math.tan, "asin": math.asin}


@dataclass(frozen=True)
class Side:
    """One side of a sum: its words, and the numbers, units and signs in them."""

    shown: str
    tokens: tuple[re.Match[str], ...]

    def worked(self, units: Mapping[str, float]) -> float:
        """What it comes to, with units at that worth. Raises what Python raises for what is no arithmetic."""
        said = "".join(
            f"({each['number'].replace(' ', '')}*{units[each['unit']] if each['unit'] else 1})"
            if each["number"]
            else each["name"] or _SIGNS.get(each["sign"], each["sign"])
            for each in self.tokens
        )
        return float(eval(said, {"__builtins__": {}}, _NAMES))

    @property
    def half_a_digit(self) -> float:
        """By how much its coarsest number may be off for having been rounded to its last printed digit, as a share of it."""
        return max(_half_a_digit(each["number"].replace(" ", "")) for each in self.tokens if each["number"])


@dataclass(frozen=True)
class Sum:
    """One equation: arithmetic on the left, and on the right the result as it is printed."""

    left: Side
    right: Side

    def holds(self) -> bool:
        """Whether the left side, rounded as the right side is printed, is the right side."""
        return any(abs(self.left.worked(units) / self.right.worked(units) - 1) <= 1.001 * self.right.half_a_digit for units in WAYS)

    def __str__(self) -> str:
        return f"{self.left.shown} = {self.right.shown}"


def _half_a_digit(number: str) -> float:
    mantissa, _, power = number.partition("e")
    return 0.5 * 10.0 ** (int(power or 0) - len(mantissa.partition(".")[2])) / float(number)


def sums(how: str) -> Iterator[Sum]:
    """Each sum in the words of a computed basis; of "a = b = c" the two sums a = b and b = c."""
    for piece in re.split(r"[;:,]\s|\band\b", how):
        sides = piece.split("=")
        for left, right in itertools.pairwise(sides):
            first, second = _ending(left), _beginning(right)
            if first and second:
                yield Sum(first, second)


def _ending(text: str) -> Side | None:
    """The longest end of a text that is arithmetic, unless it is only the last part of a sum said in words."""
    for start in (found.start() for found in re.finditer(r"(?<![\w.^])(?=[\d(-]|(?:sqrt|exp|ln|tan|asin|pi)\b)", text)):
        if side := _read(text[start:]):
            return None if _CUT_OFF.search(text[:start]) else side
    return None


def _beginning(text: str) -> Side | None:
    """The whole of a text where that is arithmetic, or the number, with its unit, that it begins with."""
    found = _TOKEN.match(text)
    return _read(text) or (Side(found[0].strip(), (found,)) if found and found["number"] else None)


def _read(text: str) -> Side | None:
    """A text as arithmetic, if all of it is."""
    text, tokens = text.strip(), []
    while rest := text[sum(len(each[0]) for each in tokens) :]:
        token = _TOKEN.match(rest)
        if not token or (tokens and _ends(tokens[-1]) and _begins(token)):
            return None
        tokens.append(token)
    side = Side(text, tuple(tokens))
    try:
        side.worked(UNITS)
    except (SyntaxError, TypeError, ZeroDivisionError):
        return None
    return side


def _ends(token: re.Match[str]) -> bool:
    return bool(token["number"]) or token["sign"] == ")"


def _begins(token: re.Match[str]) -> bool:
    return bool(token["number"] or token["name"]) or token["sign"] == "("
