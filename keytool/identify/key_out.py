"""Key out something that was described beforehand: walk a key, answering from its recorded characters."""

from __future__ import annotations

from collections.abc import Mapping

from keytool.identify.model import Model
from keytool.identify.observation import CANNOT_TELL, Answer, Answers, Leg, Trail
from keytool.identify.walk import WalkState, evaluate
from keytool.library.pieces import cells, unstated
from keytool.library.value import Showing


def key_out(model: Model, key: str, seen: Mapping[str, Showing]) -> tuple[Answers, WalkState]:
    """The walk of a description through one key, to where it stops asking couplets.

    `seen` holds what was recorded of each character. A couplet whose characters were not recorded, or whose record fits more
    than one lead, is answered with "cannot tell".
    """
    answers: Answers = ()
    while (state := evaluate(model, Trail(legs=(Leg(key, answers),)))).asks:
        couplet = model.keys[key].key.couplets[state.asks]
        lead = CANNOT_TELL
        if not unstated(couplet, seen):
            fitting = {each.id for cell in cells(couplet, seen) for each in cell.leads}
            if len(fitting) == 1:
                lead = fitting.pop()
        answers = (*answers, Answer(couplet.id, lead))
    return answers, state
