"""Which keys end at an entry, and by which walks one comes there."""

from __future__ import annotations

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
    key, member = ground.key, any(each.id == entry for each in ground.members)
    found = []
    for steps in ground.paths:
        couplet, lead = steps[-1]
        end = key.couplets[couplet].leads[lead].goes_to
        comes = entry in ground.within[end] and all(lead in ground.may[at][entry] for at, lead in steps) if member else end == entry
        if comes:
            found.append(Way(key.id, tuple(Answer(at, lead) for at, lead in steps), end))
    return tuple(sorted(found, key=lambda way: len(way.answers)))
