"""Key out something that was described beforehand: walk a key, answering from its recorded characters."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace

from keytool.identify.model import Model
from keytool.identify.observation import CANNOT_TELL, Answer, Leg, Observation, Trail
from keytool.identify.walk import WalkState, evaluate
from keytool.library.model import Couplet
from keytool.library.pieces import cells, unstated
from keytool.library.value import Interval, Showing, States


def key_out(model: Model, key: str, seen: Mapping[str, Showing], doubted: Collection[str] = ()) -> tuple[Trail, WalkState]:
    """The walk of a description through one key, to its end.

    `seen` holds what was recorded of each character. What was not recorded, or fits more than one lead, is answered with
    "cannot tell", and so are the couplets in `doubted`.
    """
    trail = Trail(legs=(Leg(key),))
    while not (state := evaluate(model, trail)).is_over:
        if state.asks_character:
            trail = replace(trail, saw=(*trail.saw, observation(state.asks_character, seen.get(state.asks_character))))
            continue
        couplet = model.keys[key].key.couplets[state.asks]
        lead = CANNOT_TELL if couplet.id in doubted else _lead(couplet, seen)
        trail = replace(trail, legs=(Leg(key, (*trail.legs[0].answers, Answer(couplet.id, lead))),))
    return trail, state


def _lead(couplet: Couplet, seen: Mapping[str, Showing]) -> str:
    fitting = set() if unstated(couplet, seen) else {each.id for cell in cells(couplet, seen) for each in cell.leads}
    return fitting.pop() if len(fitting) == 1 else CANNOT_TELL


def observation(character: str, showing: Showing | None) -> Observation:
    """What was recorded of a character as an observation; "cannot tell" where nothing was."""
    if isinstance(showing, States):
        return Observation(character, tuple(sorted(showing.ids)))
    if isinstance(showing, Interval):
        return Observation(character, low=showing.low, high=showing.high)
    return Observation(character)
