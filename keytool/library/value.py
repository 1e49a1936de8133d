"""What is shown or seen of a character: some of its states, or a stretch of numbers."""

from __future__ import annotations

import math
from abc import ABC, abstractmethod
from dataclasses import dataclass
from typing import Any, Self


class Showing(ABC):
    """What is shown or seen of one character. Only two of the same kind are ever compared."""

    __slots__ = ()

    @abstractmethod
    def meet(self, other: Any) -> Self:
        """What both allow."""

    @abstractmethod
    def without(self, other: Any) -> tuple[Self, ...]:
        """What this allows and the other does not, in pieces."""

    @abstractmethod
    def share(self, other: Any) -> float:
        """How much of this lies in the other, 0 to 1."""

    @property
    @abstractmethod
    def is_empty(self) -> bool:
        """Whether nothing is left."""


@dataclass(frozen=True, slots=True)
class States(Showing):
    """Some of the states of a character; any of them may be shown."""

    ids: frozenset[str]

    def meet(self, other: Any) -> States:
        """The states both allow."""
        return States(self.ids & other.ids)

    def without(self, other: Any) -> tuple[States, ...]:
        """The states this allows and the other does not."""
        rest = self.ids - other.ids
        return (States(rest),) if rest else ()

    @property
    def is_empty(self) -> bool:
        """Whether no state is left."""
        return not self.ids

    def share(self, other: Any) -> float:
        """How much of this lies in the other, 0 to 1, every state alike."""
        return len(self.ids & other.ids) / len(self.ids)


@dataclass(frozen=True, slots=True)
class Interval(Showing):
    """Numbers from `low` up to, but not including, `high`, in base units (µm, µm/s).

    A single number is an interval from itself to the next float up.
    """

    low: float = -math.inf
    high: float = math.inf

    @classmethod
    def closed(cls, low: float, high: float) -> Interval:
        """From low to high with both ends in, as ranges are written in entries."""
        return cls(low, math.nextafter(high, math.inf))

    def meet(self, other: Any) -> Interval:
        """What both allow."""
        return Interval(max(self.low, other.low), min(self.high, other.high))

    def without(self, other: Any) -> tuple[Interval, ...]:
        """What this allows and the other does not, in pieces."""
        pieces = (Interval(self.low, min(self.high, other.low)), Interval(max(self.low, other.high), self.high))
        return tuple(piece for piece in pieces if not piece.is_empty)

    @property
    def is_empty(self) -> bool:
        """Whether nothing is left."""
        return not self.low < self.high

    def share(self, other: Any) -> float:
        """How much of this lies in the other, 0 to 1, every number alike; open ends count as half."""
        inside = self.meet(other)
        if inside.is_empty:
            return 0.0
        if inside == self:
            return 1.0
        width = self.high - self.low
        return (inside.high - inside.low) / width if math.isfinite(width) else 0.5
