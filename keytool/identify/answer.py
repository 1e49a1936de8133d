"""Answers to couplets: what a walk is made of."""

from __future__ import annotations

from keytool.identify.observation import CANNOT_TELL, Answer, Answers

__all__ = ["CANNOT_TELL", "Answer", "Answers", "told"]


def told(answers: Answers) -> Answers:
    """The answers that say something: all but "cannot tell"."""
    return tuple(each for each in answers if each.lead != CANNOT_TELL)
