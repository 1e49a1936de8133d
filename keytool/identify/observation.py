"""What a user tells: observations of single characters, answers to couplets, pictures pointed at, and where the drop is from."""

from __future__ import annotations

from dataclasses import dataclass

CANNOT_TELL = "cannot-tell"


@dataclass(frozen=True, slots=True)
class Answer:
    """An answer at one couplet: the id of a lead, or CANNOT_TELL."""

    couplet: str
    lead: str


Answers = tuple[Answer, ...]


@dataclass(frozen=True, slots=True)
class Observation:
    """One thing told of one character.

    One of: some `states`, of which any was seen (`negated`: none of them was); a number from `low` to `high` in base units
    (both the same for one number, infinite where open, `about` for a guess); or, with neither, "cannot tell".
    `pointed` is said of a first impression, which may be mistaken.
    """

    character: str
    states: tuple[str, ...] = ()
    negated: bool = False
    low: float | None = None
    high: float | None = None
    about: bool = False
    pointed: bool = False

    @property
    def is_unsure(self) -> bool:
        """Whether it says that nothing could be told."""
        return not self.states and self.low is None


@dataclass(frozen=True, slots=True)
class Leg:
    """The answers given in one key, in the order told."""

    key: str
    answers: Answers = ()


@dataclass(frozen=True, slots=True)
class Trail:
    """All that was told of one thing: where the drop is from, pictures pointed at, keys walked, and what was seen besides.

    `sample` is a word of the closed list `sample-kind`, or empty; `called` the entries and groups that the user's own words are like,
    each with tenths of a bit.
    """

    sample: str = ""
    pictures: tuple[str, ...] = ()
    legs: tuple[Leg, ...] = ()
    saw: tuple[Observation, ...] = ()
    called: tuple[tuple[str, int], ...] = ()
