"""What the scripts of the count sheet need of the library, as plain data."""

from __future__ import annotations

from typing import Any

from keytool.bench.constants import judging
from keytool.bench.results import ERRORS
from keytool.library.model import Library
from keytool.library.wording import plain


def page_data(library: Library) -> dict[str, Any]:
    """Lines of the tally, the line and name of every entry, rules, limits, constants and the demonstration sheet."""
    by = judging(library.bench.constants)
    lines = library.tally_lines
    return {
        "tally": {
            each.id: {
                "label": each.label,
                "one": each.one,
                "many": each.many,
                "shows": each.shows,
                "partOf": each.part_of,
                "at": list(each.at),
                "atOnce": each.at_once,
                "tells": plain(library, each.tells),
            }
            for each in library.bench.tally.values()
        },
        "entries": {each.id: {"name": each.common, "line": lines.get(each.id, "")} for each in library.entries.values()},
        "rules": [
            {
                "id": each.id,
                "asks": each.asks,
                "counts": list(each.counts),
                "mayCount": list(each.may_count),
                "per": each.per,
                "wants": each.wants,
                "value": each.value,
                "takenFor": plain(library, each.taken_for),
                "against": plain(library, each.against),
            }
            for each in library.bench.rules.values()
        ],
        "cannotSay": [plain(library, each.text) for each in library.bench.cannot_say.values()],
        "judging": {
            "confidence": by.confidence,
            "leastFields": by.least_fields,
            "leastTotal": by.least_total,
            "clumpedChance": by.clumped_chance,
            "surelyClumped": by.surely_clumped,
        },
        "constants": {each: library.bench.constants[each].value for each in ERRORS},
        "kinds": {id: word.label for id, word in library.vocabulary["sample-kind"].items()},
        "abundances": {
            kind: {"per": each.per, "things": {id: [what.middle, what.low, what.high] for id, what in each.things.items()}}
            for kind, each in library.bench.abundances.items()
        },
        "version": library.version,
        "demo": dict(library.bench.demo),
    }
