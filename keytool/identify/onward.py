"""What is settled already when one key hands on to another, so that the next does not ask it again."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from keytool.identify.answer import Answer, Answers
from keytool.identify.standing import address
from keytool.library.model import Couplet, Key, Library
from keytool.library.requirements import required
from keytool.library.value import Showing, States

Seen = Mapping[str, Showing]


def carried(library: Library, key: Key, couplet: str, lead: str) -> str:
    """The address, in the key that this lead leads on to, of the first question that is not yet settled.

    Settled is what every printed way to this lead has seen. Empty where the next key begins with something new. It holds
    for a walk in which everything was told.
    """
    seen = _common([_after(library, each) for each in _ways(key, key.first, couplet, lead, ())])
    goes_to = library.keys[key.couplets[couplet].leads[lead].key]
    return address(tuple(_settled(library, goes_to, seen)))


def _settled(library: Library, key: Key, seen: Seen) -> Iterator[Answer]:
    at = key.first
    while at:
        couplet = key.couplets[at]
        fitting = [lead for lead in couplet.leads.values() if _is_seen(required(library, couplet, lead), seen)]
        if len(fitting) != 1 or not fitting[0].couplet:
            return
        yield Answer(at, fitting[0].id)
        at = fitting[0].couplet


def _is_seen(wants: Seen, seen: Seen) -> bool:
    """Whether what was seen leaves no doubt that a lead's wants are met. Numbers are asked again: they are to be measured."""
    pairs = [(seen.get(name), showing) for name, showing in wants.items()]
    return bool(pairs) and all(isinstance(had, States) and isinstance(want, States) and had.ids <= want.ids for had, want in pairs)


def _ways(key: Key, at: str, couplet: str, lead: str, before: Answers) -> Iterator[list[tuple[Couplet, str]]]:
    """Every printed way from `at` to the lead, as the leads taken."""
    for each in key.couplets[at].leads.values():
        steps = (*before, Answer(at, each.id))
        if (at, each.id) == (couplet, lead):
            yield [(key.couplets[step.couplet], step.lead) for step in steps]
        elif each.couplet:
            yield from _ways(key, each.couplet, couplet, lead, steps)


def _after(library: Library, way: list[tuple[Couplet, str]]) -> dict[str, Showing]:
    """What a way has seen of each character."""
    seen: dict[str, Showing] = {}
    for couplet, lead in way:
        for name, showing in required(library, couplet, couplet.leads[lead]).items():
            seen[name] = seen[name].meet(showing) if name in seen else showing
    return seen


def _common(ways: list[dict[str, Showing]]) -> dict[str, Showing]:
    """What all ways have seen; where they differ in states, any of them."""
    first, *rest = ways
    common: dict[str, Showing] = {}
    for name, showing in first.items():
        others = [way.get(name) for way in rest]
        if isinstance(showing, States) and all(isinstance(each, States) for each in others):
            common[name] = States(showing.ids.union(*(each.ids for each in others if isinstance(each, States))))
    return common
