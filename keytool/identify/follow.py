"""Follow a key with a worm that was described beforehand: answer from its recorded characters."""

from __future__ import annotations

from collections.abc import Mapping

from keytool.identify.answer import CANNOT_TELL, Answer, Answers
from keytool.identify.ground import Ground
from keytool.identify.standing import Standing, stand
from keytool.library.pieces import cells, unstated
from keytool.library.value import Showing


def follow(ground: Ground, seen: Mapping[str, Showing]) -> tuple[Answers, Standing]:
    """The walk of a description to its end.

    `seen` holds what was recorded of each character. A couplet whose characters were not
    recorded, or whose record fits more than one lead, is answered with "cannot tell".
    """
    answers: Answers = ()
    while (standing := stand(ground, answers)).asks:
        couplet = ground.key.couplets[standing.asks]
        lead = CANNOT_TELL
        if not unstated(couplet, seen):
            fitting = {each.id for cell in cells(couplet, seen) for each in cell.leads}
            if len(fitting) == 1:
                lead = fitting.pop()
        answers = (*answers, Answer(couplet.id, lead))
    return answers, standing
