"""How likely several answers are together, and each entry after them: Bayes' rule, with one look at each character.

Answers about the same character are no independent witnesses: who misread it once misreads it
the same way when it is asked again. So the chance of them together is that of the one thing
seen lying within all that they want. Answers about different characters are taken as
independent given the entry, and so are the characters of a couplet that asks several.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from functools import cache

from keytool.identify.answer import Answer, Answers, told
from keytool.identify.ground import Ground
from keytool.identify.weigh import normal

Way = tuple[Mapping[str, int], float]
"""The piece seen of each character, and how large a share of such looks is answered so."""


def chances(ground: Ground, answers: Answers) -> dict[str, float]:
    """The chance of each entry in scope after some answers, adding up to 1.

    Answers about one character that no single look explains (who answered has looked again,
    and seen something else) count as looks of their own, as if they were about different
    characters. Where the answers leave no entry any chance at all, they say nothing.
    """
    weights = dict(ground.prior)
    for part in parts(ground, told(answers)):
        chance = together(ground, part, weights)
        if not any(chance.values()):
            chance = _apart(ground, part, weights)
        weights = {id: weight * chance[id] for id, weight in weights.items()}
    return normal(weights) if any(weights.values()) else dict(ground.prior)


def next_chances(ground: Ground, answers: Answers, couplet: str, entries: Collection[str]) -> Sequence[Mapping[str, float]]:
    """For each lead of a couplet not answered yet, in order, its chance with each of some entries after the answers given."""
    asked = set(ground.key.couplets[couplet].characters)
    near = tuple(each for part in parts(ground, told(answers)) if asked & _characters(ground, part) for each in part)
    leads = [Answer(couplet, lead) for lead in ground.key.couplets[couplet].leads]
    before = together(ground, near, entries) if near else {}
    if not any(before.values()):
        return [_apart(ground, (lead,), entries) for lead in leads]
    after = [together(ground, (*near, lead), entries) for lead in leads]
    return [{id: each[id] / before[id] if before[id] else 0.0 for id in before} for each in after]


def parts(ground: Ground, answers: Answers) -> list[Answers]:
    """Answers sorted into parts that have no character in common; each in the order given."""
    found: list[Answers] = []
    for each in answers:
        asked = set(ground.key.couplets[each.couplet].characters)
        near = [part for part in found if asked & _characters(ground, part)]
        merged = {one for part in near for one in part} | {each}
        found = [part for part in found if part not in near] + [tuple(one for one in answers if one in merged)]
    return found


def together(ground: Ground, answers: Answers, entries: Collection[str]) -> Mapping[str, float]:
    """The chance that all of the answers are given, for each of some entries; 0 where no look explains the answers.

    Where an entry does not say what a couplet asks, every lead that the answers before have
    left open is as likely as any other; that is the one thing for which their order counts. An
    entry that says only part of what a couplet asks counts there as one that says nothing.
    """
    if len(answers) == 1:
        return _apart(ground, answers, entries)
    if not _ways(ground, answers):
        return dict.fromkeys(entries, 0.0)
    asked = [ground.key.couplets[each.couplet].characters for each in answers]
    names = tuple(dict.fromkeys(name for each in asked for name in each))
    even = [_share_of_open(ground, answers[:index], each) for index, each in enumerate(answers)]

    @cache
    def ways(stated: tuple[int, ...]) -> Sequence[Way]:
        return _ways(ground, tuple(answers[index] for index in stated))

    @cache
    def chance(numbers: tuple[int | None, ...]) -> float:
        row = {name: ground.looks.rows[name][number] for name, number in zip(names, numbers, strict=True) if number is not None}
        stated = tuple(index for index, each in enumerate(asked) if all(name in row for name in each))
        rest = math.prod(share for index, share in enumerate(even) if index not in stated)
        return rest * sum(share * math.prod(row[name][piece] for name, piece in seen.items()) for seen, share in ways(stated))

    return {id: chance(tuple(map(ground.looks.row[id].get, names))) for id in entries}


def _apart(ground: Ground, answers: Answers, entries: Collection[str]) -> Mapping[str, float]:
    """The chance of the answers when each is a look of its own."""
    found = dict.fromkeys(entries, 1.0)
    for each in answers:
        rows, index = ground.chance[each.couplet], _index(ground, each)
        found = {id: chance * rows[id][index] for id, chance in found.items()}
    return found


def _ways(ground: Ground, answers: Answers) -> Sequence[Way]:
    """Every way of seeing the characters asked about that may be answered so."""
    found: list[Way] = [({}, 1.0)]
    for each in answers:
        names = ground.key.couplets[each.couplet].characters
        index = _index(ground, each)
        fitting = [
            (dict(zip(names, take.pieces, strict=True)), 1 / len(take.leads))
            for take in ground.looks.takes[each.couplet]
            if index in take.leads
        ]
        found = [
            ({**seen, **more}, share * other)
            for seen, share in found
            for more, other in fitting
            if all(seen.get(name, piece) == piece for name, piece in more.items())
        ]
    return found


def _share_of_open(ground: Ground, before: Answers, answer: Answer) -> float:
    """The chance of an answer when every lead that those before have left open is as likely."""
    leads = ground.key.couplets[answer.couplet].leads
    return 1 / sum(bool(_ways(ground, (*before, Answer(answer.couplet, lead)))) for lead in leads)


def _characters(ground: Ground, answers: Answers) -> set[str]:
    return {name for each in answers for name in ground.key.couplets[each.couplet].characters}


def _index(ground: Ground, answer: Answer) -> int:
    return list(ground.key.couplets[answer.couplet].leads).index(answer.lead)
