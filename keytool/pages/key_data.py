"""What the script of a key's page needs: the ground of the walk, names, and the words for how sure."""

from __future__ import annotations

import json

from keytool.identify import Ground, carried, data
from keytool.identify.doubt import JUMP, LEAVE_OUT, NOTHING_OUT, OVERLAP, SEVERAL
from keytool.library.wording import LIKELY, name_of, sureness_words
from keytool.pages.html import Html, json_in_page
from keytool.pages.page_writer import Writer

WRITING_DOWN = "writing-it-down"
"""The guide to go to with a name in hand."""


def key_data(writer: Writer, ground: Ground) -> Html:
    """The data of one key, as JSON that may stand inside the page.

    `ground` is what the walk needs, `vague` the ends that say that it cannot be told, `onward` those that
    are keys, `carry` for each lead to a key the address there of what is settled already, `names` the name and address of every end
    and member, `sureness` the words for chances, `likely` the chance under which a name is only a "perhaps", `doubt` what is said after
    a "cannot tell", `writing` where to write down what was found.
    """
    library = ground.library
    ids = sorted({*ground.within, *(entry.id for entry in ground.members)})
    vague = {end for end in ground.within if end in library.entries and library.entries[end].kind == "cannot-be-told"}
    everything = {
        "ground": data(ground),
        "vague": sorted(vague),
        "onward": sorted(set(ground.within) & set(library.keys)),
        "carry": _carry(ground),
        "names": {id: {"name": name_of(library, id), "href": writer.place(id)} for id in ids},
        "sureness": sureness_steps(),
        "likely": LIKELY,
        "doubt": {"several": SEVERAL, "jump": JUMP, "leaveOut": LEAVE_OUT, "nothingOut": NOTHING_OUT, "overlap": OVERLAP},
        "writing": writer.place(WRITING_DOWN) if WRITING_DOWN in library.guides else "",
    }
    return json_in_page(json.dumps(everything, ensure_ascii=False, separators=(",", ":")))


def _carry(ground: Ground) -> dict[str, str]:
    """By the address of a lead to another key, such as `body-plan=legs`, the address there of what is settled; only where something is."""
    library, key = ground.library, ground.key
    onward = [(couplet.id, lead.id) for couplet in key.couplets.values() for lead in couplet.leads.values() if lead.key]
    return {f"{couplet}={lead}": there for couplet, lead in onward if (there := carried(library, key, couplet, lead))}


def sureness_steps() -> list[tuple[float, str]]:
    """From which chance on which words hold, so that the page says "likely" where the command line does."""
    steps = [(0.0, sureness_words(0.0))]
    for thousandth in range(1, 1001):
        words = sureness_words(thousandth / 1000)
        if words != steps[-1][1]:
            steps.append((_first(words, (thousandth - 1) / 1000, thousandth / 1000), words))
    return steps


def _first(words: str, below: float, at: float) -> float:
    """The least chance between the two, to 1e-12, from which the words hold."""
    while at - below > 1e-12:
        middle = (below + at) / 2
        below, at = (below, middle) if sureness_words(middle) == words else (middle, at)
    return at
