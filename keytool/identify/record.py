"""A walk written down: what was asked, what was answered, where it ended and how sure that is."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from keytool.identify.answer import CANNOT_TELL, Answers
from keytool.identify.arrive import Arrival, arrivals
from keytool.identify.ground import Ground
from keytool.identify.standing import Standing, address, stand
from keytool.library.wording import feeding_words, name_of, plain, sureness_words

FORMAT = "wetmount-walk 1"


def record(legs: Sequence[tuple[Ground, Answers]]) -> dict[str, Any]:
    """The record of a walk over one key, or over several that led from one to the next, as plain data.

    `finished` says whether the last leg has arrived or had to stop undecided. Chances are
    rounded to 0.001; they rest on estimates.
    """
    ground, answers = legs[-1]
    standing = stand(ground, answers)
    return {
        "format": FORMAT,
        "library": ground.library.version,
        "legs": [_leg(*leg) for leg in legs],
        "finished": standing.is_over,
        "ends": [_end(ground, arrival) for arrival in arrivals(ground, answers, standing)],
        "possible": list(standing.possible),
    }


def _leg(ground: Ground, answers: Answers) -> dict[str, Any]:
    library = ground.library
    asked = []
    for each in answers:
        couplet = ground.key.couplets[each.couplet]
        asked.append(
            {
                "couplet": each.couplet,
                "number": couplet.number,
                "asks": plain(library, couplet.asks),
                "lead": each.lead,
                "answer": "Cannot tell" if each.lead == CANNOT_TELL else plain(library, couplet.leads[each.lead].text),
            }
        )
    return {"key": ground.key.id, "address": f"{ground.key.id}#{address(answers)}", "answers": asked}


def _end(ground: Ground, arrival: Arrival) -> dict[str, Any]:
    library = ground.library
    entry = library.entries.get(arrival.end)
    return {
        "id": arrival.end,
        "name": name_of(library, arrival.end),
        "kind": entry.kind if entry else "key",
        "feeding": list(entry.feeding) if entry else [],
        "feeding-words": feeding_words(library, entry.feeding) if entry else "",
        "would-tell": plain(library, entry.would_tell) if entry else "",
        "sure": round(arrival.sure, 3),
        "sure-words": sureness_words(arrival.sure),
        "members": list(arrival.members),
        "cautions": list(entry.cautions) if entry else [],
        "rivals": [
            {"id": rival.end, "name": name_of(library, rival.end), "chance": round(rival.chance, 3), "look-again": rival.couplet}
            for rival in arrival.rivals
        ],
    }


def leads_on(standing: Standing, ground: Ground) -> str:
    """The key a finished walk goes on to, or an empty text."""
    return standing.ends[0] if len(standing.ends) == 1 and standing.ends[0] in ground.library.keys else ""
