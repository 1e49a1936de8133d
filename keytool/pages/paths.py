"""Which keys end at an entry, and by which walks one comes there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from keytool.identify import Answer, Answers, Ground


@dataclass(frozen=True, slots=True)
class Way:
    """One walk of a key that ends at an entry or at what holds it."""

    key: str
    answers: Answers
    end: str


def paths_to(ground: Ground, entry: str) -> tuple[Way, ...]:
    """The walks of one key that name this entry, the shortest first.

    For something met in a drop these are the walks it can take by what it may show, whatever
    group or onward key they end at; for a group, every walk that ends at the group itself.
    """
    member = any(each.id == entry for each in ground.members)
    found = [way for way in _from(ground, ground.key.first, (), entry if member else "") if member or way.end == entry]
    return tuple(sorted(found, key=lambda way: len(way.answers)))


def _from(ground: Ground, at: str, answers: Answers, member: str) -> Iterator[Way]:
    for lead in ground.key.couplets[at].leads.values():
        if member and lead.id not in ground.may[at][member]:
            continue
        steps = (*answers, Answer(at, lead.id))
        if lead.couplet:
            yield from _from(ground, lead.couplet, steps, member)
        elif not member or member in ground.within[lead.goes_to]:
            yield Way(ground.key.id, steps, lead.goes_to)
