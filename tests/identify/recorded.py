"""Recorded cases of identification: addresses of walks and descriptions, made once from a fixed seed, and what each comes to."""

from __future__ import annotations

import random
from typing import Any

from keytool.identify import CANNOT_TELL, Answer, Leg, Model, Observation, Trail, describe, evaluate, explain, parsed

COUNT = 420
RUBBISH = (
    "__proto__=x",
    "constructor=y",
    "saw:toString=z",
    "saw:tail=%E0%A4%A",
    "key:nowhere",
    "saw:body-length=9..1",
    "<b>",
    "at:__proto__",
)


def addresses(model: Model, count: int = COUNT) -> list[str]:
    """Addresses of walks, descriptions, and both, some with rubbish in them."""
    from keytool.identify import written

    chance = random.Random(10)
    found = []
    for number in range(count):
        address = written(_trail(model, chance))
        if number % 10 == 0:
            address = "/".join(part for part in (address, chance.choice(RUBBISH)) if part)
        found.append(address)
    return found


def _trail(model: Model, chance: random.Random) -> Trail:
    legs: list[Leg] = []
    for key in chance.sample(list(model.keys), chance.choice([0, 1, 1, 2])):
        couplets, answers, at = model.keys[key].key.couplets, [], model.keys[key].key.first
        while at and chance.random() < 0.85:
            lead = chance.choice(list(couplets[at].leads))
            answers.append(Answer(at, lead if chance.random() < 0.8 else CANNOT_TELL))
            at = couplets[at].leads[lead].couplet
        legs.append(Leg(key, tuple(answers)))
    seen = {each.character: each for each in (_observation(model, chance) for _ in range(chance.randrange(7)))}
    sample = chance.choice([*[""] * 5, *model.samples])
    pictures = tuple(chance.sample(list(model.pictures), chance.choice([0, 0, 0, 1, 2])))
    return Trail(sample, pictures, tuple(legs), tuple(seen.values()))


def _observation(model: Model, chance: random.Random) -> Observation:
    name = chance.choice(list(model.tables))
    table, pointed = model.tables[name], chance.random() < 0.15
    if chance.random() < 0.1:
        return Observation(name)
    if table.is_number:
        low = round(10 ** chance.uniform(-0.3, 3.3), 2)
        high = chance.choice([low, low, low * 2, float("inf")])
        return Observation(name, low=low, high=high, about=chance.random() < 0.3, pointed=pointed)
    some = chance.sample(table.states, min(chance.choice([1, 1, 2]), len(table.states) - 1))
    return Observation(name, tuple(each for each in table.states if each in some), chance.random() < 0.15, pointed=pointed)


def outcome(model: Model, address: str) -> dict[str, Any]:
    """All that both languages must agree on, for one address."""
    read = parsed(model, address)
    result = describe(model, read.trail)
    best = max(range(len(model.entries)), key=lambda number: (round(result.after.chance[number], 9), -number))
    found: dict[str, Any] = {
        "address": address,
        "left": list(read.left),
        "chance": [round(each, 12) for each in result.after.chance],
        "verdict": [result.verdict.id, result.verdict.chance, result.verdict.word] if result.verdict else None,
        "names": [[each.id, each.chance, each.word] for each in result.names],
        "more": [result.more, result.more_chance],
        "settled": result.settled,
        "leading": [result.leading.id, result.leading.chance] if result.leading else None,
        "lives": [[each.id, each.chance] for each in result.lives],
        "feeding": [[each.id, each.chance] for each in result.feeding],
        "cautions": list(result.cautions),
        "outside": result.outside,
        "fits": result.fits,
        "next": [[each.character, each.gain, each.effort] for each in result.next],
        "conflicts": [list(look.source) for look in result.conflicts],
        "explain": [
            model.entries[best],
            [[[list(look.source) for look in reason.looks], reason.weight] for reason in explain(model, read.trail, model.entries[best])],
        ],
    }
    if read.trail.legs:
        walk = evaluate(model, read.trail)
        ends = [[each.id, each.chance] for each in walk.ends]
        likely = [[couplet, held] for couplet, held in walk.likely.items()]
        found["walk"] = [
            walk.asks,
            walk.asks_character,
            walk.arrived,
            walk.goes_on,
            walk.holds,
            dict(walk.passed),
            likely,
            list(walk.open),
            ends,
        ]
    return found
