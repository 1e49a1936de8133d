"""Answers to couplets: what a walk is made of."""

from __future__ import annotations

from dataclasses import dataclass

CANNOT_TELL = "cannot-tell"


@dataclass(frozen=True, slots=True)
class Answer:
    """An answer at one couplet: the id of a lead, or CANNOT_TELL."""

    couplet: str
    lead: str


Answers = tuple[Answer, ...]


def told(answers: Answers) -> Answers:
    """The answers that say something: all but "cannot tell"."""
    return tuple(each for each in answers if each.lead != CANNOT_TELL)
