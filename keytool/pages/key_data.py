"""What the script of a key's page needs: the ground of the walk, names, and the words for how sure."""

from __future__ import annotations

import json

from keytool.identify import Ground, data
from keytool.identify.doubt import JUMP, NOTHING_OUT, SEVERAL
from keytool.library.show import name_of, sureness_words
from keytool.pages.html import Html, json_in_page
from keytool.pages.writer import Writer


def key_data(writer: Writer, ground: Ground) -> Html:
    """The data of one key, as JSON that may stand inside the page.

    `ground` is what the walk needs, `vague` the ends that say that it cannot be told, `onward` those that
    are keys, `names` the name and address of every end and member, `sureness` the words for chances, `doubt` what is said after a
    "cannot tell".
    """
    library = ground.library
    ids = sorted({*ground.within, *(entry.id for entry in ground.members)})
    vague = {end for end in ground.within if end in library.entries and library.entries[end].kind == "cannot-be-told"}
    everything = {
        "ground": data(ground),
        "vague": sorted(vague),
        "onward": sorted(set(ground.within) & set(library.keys)),
        "names": {id: {"name": name_of(library, id), "href": writer.place(id)} for id in ids},
        "sureness": sureness_steps(),
        "doubt": {"several": SEVERAL, "jump": JUMP, "nothingOut": NOTHING_OUT},
    }
    return json_in_page(json.dumps(everything, ensure_ascii=False, separators=(",", ":")))


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
