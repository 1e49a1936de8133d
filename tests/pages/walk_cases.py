"""Walks and where they stand, worked out in Python: every way through a key, and many with "cannot tell".

python -m tests.pages.walk_cases     writes tests/cases/walks.json anew from the mini library with a key that asks again
"""

from __future__ import annotations

import json
import random
import tempfile
from collections.abc import Callable
from dataclasses import asdict
from pathlib import Path
from typing import Any

from keytool.identify import CANNOT_TELL, Answer, Answers, Ground, NoSuchAnswer, address, answers_at, arrivals, data, doubt, ground, stand
from keytool.library import load
from keytool.library.model import Library
from tests.identify.again import put_again

RECORDED = Path(__file__).parents[1] / "cases" / "walks.json"
DOUBTFUL = 60
"""Walks with a "cannot tell" in them, per key."""


def recorded(library: Library) -> dict[str, Any]:
    """The file of recorded cases: for each key its plain data and its cases."""
    return {key.id: {"data": data(it), "cases": cases(it)} for key in library.keys.values() for it in [ground(library, key)]}


def cases(it: Ground, of: Callable[[list[str]], list[str]] = list) -> list[dict[str, Any]]:
    """The cases of one key, or those `of` its addresses that are wanted; always the same for the same key."""
    addresses = of(list(dict.fromkeys([*map(address, walks(it)), *_wrong(it)])))
    return [case(it, each) for each in addresses]


def walks(it: Ground) -> list[Answers]:
    """Every way through the printed key and every beginning of one, and many with "cannot tell"; always the same."""
    return [*_printed(it, it.key.first, ()), *_doubtful(it)]


def case(it: Ground, text: str) -> dict[str, Any]:
    """One case: where an address stands, or why it is refused."""
    try:
        answers = answers_at(it, text)
    except NoSuchAnswer as error:
        return {"address": text, "error": str(error)}
    standing = stand(it, answers)
    return {
        "address": address(answers),
        "asks": standing.asks,
        "ends": list(standing.ends),
        "possible": list(standing.possible),
        "chance": dict(standing.chance),
        "doubt": {**asdict(open := doubt(it, answers, standing)), "open": list(open.open)},
        "arrivals": [
            {**asdict(each), "members": list(each.members), "rivals": list(map(asdict, each.rivals))}
            for each in arrivals(it, answers, standing)
        ],
    }


def _printed(it: Ground, at: str, answers: Answers) -> list[Answers]:
    """Every walk of the printed key, and every part of one from its beginning."""
    found = [answers]
    for lead in it.key.couplets[at].leads.values():
        steps = (*answers, Answer(at, lead.id))
        found += _printed(it, lead.couplet, steps) if lead.couplet else [steps]
    return found


def _doubtful(it: Ground) -> list[Answers]:
    dice = random.Random(it.key.id)
    found: list[Answers] = []
    for _ in range(DOUBTFUL):
        answers: Answers = ()
        while asks := stand(it, answers).asks:
            leads = list(it.key.couplets[asks].leads)
            answers = (*answers, Answer(asks, CANNOT_TELL if dice.random() < 0.35 else dice.choice(leads)))
            found.append(answers)
    return found


def _wrong(it: Ground) -> list[str]:
    first = it.key.first
    lead = next(iter(it.key.couplets[first].leads))
    return [
        "no-such-couplet=x",
        f"{first}=no-such-lead",
        f"{first}",
        f"{first}={lead}/{first}={lead}",
        f"{first}={CANNOT_TELL}/{first}={lead}",
    ]


def main() -> None:
    from tests.conftest import copy_mini

    with tempfile.TemporaryDirectory() as folder:
        library = load(put_again(copy_mini(Path(folder) / "mini"))).library
    RECORDED.write_text(json.dumps(recorded(library), ensure_ascii=False, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
