"""After a "cannot tell": why the next question is another than the printed key would ask, and when to change something first."""

from __future__ import annotations

from dataclasses import dataclass

from keytool.identify.answer import CANNOT_TELL, Answers
from keytool.identify.ground import Ground
from keytool.identify.standing import Standing

SEVERAL = 2
"""From this many in a row on, the hand belongs on the microscope and not on the key."""
JUMP = (
    "Question {open} left open; {next} tells most now.",
    "{open} questions left open; {next} tells most now.",
)
"""Why the number jumps: with one question left open, named, and with more, counted."""
LEAVE_OUT = "Where a question takes for granted what you could not tell, leave that part out."
"""How to read a question that the printed key asks only after another answer."""
NOTHING_OUT = "Cannot tell rules nothing out."
"""Why the number of what is possible has not changed."""
OVERLAP = "They share members, so the figures overlap."
"""Said of several ends whose chances add up to more than 1."""
CHANGE = "Stuck? Try this at the microscope"
"""Said above the words of the closed list `in-doubt`."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """What a walk has left open.

    `open` are the numbers of the questions that could not be told, rising; `jumps` whether the question asked
    next is another than the printed key leads to; `row` how many of the last answers are "cannot tell".
    """

    open: tuple[int, ...]
    jumps: bool
    row: int

    @property
    def is_stuck(self) -> bool:
        """Whether the last answers told nothing, so that something has to be changed before more is asked."""
        return self.row >= SEVERAL


def doubt(ground: Ground, answers: Answers, standing: Standing) -> Doubt:
    """What the answers of a walk have left open, at the place where it stands."""
    couplets = ground.key.couplets
    left = tuple(sorted(couplets[each.couplet].number for each in answers if each.lead == CANNOT_TELL))
    row = next((count for count, each in enumerate(reversed(answers)) if each.lead != CANNOT_TELL), len(answers))
    return Doubt(left, bool(left) and not standing.is_over and not _follows(ground, answers, standing.asks), row)


def _follows(ground: Ground, answers: Answers, asks: str) -> bool:
    """Whether a reader of the printed key expects this question: the lead taken goes there, or it is the next number."""
    last, couplets = answers[-1], ground.key.couplets
    if last.lead == CANNOT_TELL:
        return couplets[asks].number == couplets[last.couplet].number + 1
    return couplets[last.couplet].leads[last.lead].couplet == asks


def jump_words(left: tuple[int, ...], asks: int) -> str:
    """The line that says why the number of the question jumps, such as "Question 1 left open; 9 tells most now."."""
    return JUMP[len(left) > 1].format(open=len(left) if len(left) > 1 else left[0], next=asks)
