"""What was told of a thing and what it came to, written down as plain data."""

from __future__ import annotations

from typing import Any

from keytool.identify.address import observed, written
from keytool.identify.describe import describe
from keytool.identify.model import Model
from keytool.identify.observation import CANNOT_TELL, Leg, Trail
from keytool.identify.result import Identification, Named
from keytool.identify.walk import evaluate
from keytool.library.wording import feeding_words, name_of, plain

FORMAT = "wetmount-record 2"


def record(model: Model, trail: Trail) -> dict[str, Any]:
    """The record of a trail: a walk over one key or several, a description in any order, or both.

    `finished` says whether a walk has come to an end or had to stop undecided; a description always is. Chances are rounded to
    0.001; they rest on estimates.
    """
    state = evaluate(model, trail) if trail.legs else None
    result = state.result if state else describe(model, trail)
    return {
        "format": FORMAT,
        "library": model.library.version,
        "address": written(trail),
        "sample": trail.sample,
        "pictures": list(trail.pictures),
        "legs": [_leg(model, leg) for leg in trail.legs],
        "called": [{"id": id, "bits": tenths / 10} for id, tenths in trail.called],
        "saw": [{"character": each.character, "said": observed(each), "pointed": each.pointed} for each in trail.saw],
        "finished": state.is_over if state else True,
        "arrived": (state.arrived or state.goes_on) if state else "",
        **_result(model, result),
    }


def _leg(model: Model, leg: Leg) -> dict[str, Any]:
    library, couplets = model.library, model.library.keys[leg.key].couplets
    return {
        "key": leg.key,
        "answers": [
            {
                "couplet": each.couplet,
                "number": couplets[each.couplet].number,
                "asks": plain(library, couplets[each.couplet].asks),
                "lead": each.lead,
                "answer": "Cannot tell" if each.lead == CANNOT_TELL else plain(library, couplets[each.couplet].leads[each.lead].text),
            }
            for each in leg.answers
        ],
    }


def _result(model: Model, result: Identification) -> dict[str, Any]:
    library = model.library

    def named(each: Named) -> dict[str, Any]:
        entry = library.entries[each.id]
        return {
            "id": each.id,
            "name": name_of(library, each.id),
            "kind": entry.kind,
            "chance": round(each.chance, 3),
            "how-sure": library.vocabulary["sureness"][each.word].label,
            "feeding": list(entry.feeding),
            "feeding-words": feeding_words(library, entry.feeding),
            "cautions": list(entry.cautions),
        }

    return {
        "verdict": named(result.verdict) if result.verdict else None,
        "names": [named(each) for each in result.names],
        "more": {"count": result.more, "chance": round(result.more_chance, 3)},
        "settled": result.settled,
        "fits": result.fits,
        "outside": round(result.outside, 3),
        "feeding": [{"id": each.id, "chance": round(each.chance, 3)} for each in result.feeding],
        "look-next": [
            {"character": each.character, "gain": round(each.gain, 3), "effort": round(each.effort, 2)} for each in result.next[:5]
        ],
        "left-out": [list(look.source) for look in result.conflicts],
    }
