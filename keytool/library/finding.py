"""A place in a file, and a finding about it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Severity(Enum):
    """How much a finding matters."""

    PROBLEM = "problem"
    """Must be mended: no page, card or walk is made while it stands."""
    ADVICE = "advice"
    """Worth a look: everything still works."""

    def __reduce_ex__(self, _protocol: object) -> tuple[type[Severity], tuple[str]]:
        """By its value: some versions of Python would keep it by calling `getattr`, which what is remembered may not name."""
        return type(self), (self.value,)


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """Where in the library: a file name relative to its root, with 1-based line and column."""

    file: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that is wrong, said so that its writer can mend it.

    `check` names the rule, `message` says what is wrong, `allowed` what would be right
    (empty when that is plain from the message), and `tip` what to do.
    """

    check: str
    place: Place
    message: str
    allowed: str = ""
    tip: str = ""
    severity: Severity = Severity.PROBLEM

    @property
    def order(self) -> tuple[Place, str, str]:
        """Sorts findings by file, line, column, then rule."""
        return (self.place, self.check, self.message)
