"""Keys as graphs of couplets: reading order, reach, rings and paths, for everything that goes through a key."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from keytool.library.model import Key, Lead

Step = tuple[str, str]
"""A couplet and the lead taken at it."""


def reading_order(first: str, goes: Mapping[str, tuple[str, ...]]) -> list[str]:
    """Couplets so that every lead goes forward, first leads first; those never reached come last.

    `goes` gives for each couplet the couplets its leads go to, in order; names it does not have are passed over.
    """
    met: set[str] = set()
    backwards: list[str] = []

    def visit(couplet: str) -> None:
        if couplet in goes and couplet not in met:
            met.add(couplet)
            for each in reversed(goes[couplet]):
                visit(each)
            backwards.append(couplet)

    visit(first)
    return [*reversed(backwards), *(couplet for couplet in goes if couplet not in met)]


def raw_goes(couplets: Mapping[str, Any]) -> dict[str, tuple[str, ...]]:
    """Where the leads of each couplet go, of a key as written in its file."""
    return {id: tuple(lead.get("couplet", "") for lead in each["leads"].values()) for id, each in couplets.items()}


def reached(key: Key) -> frozenset[str]:
    """The couplets that can be reached from the first one, itself among them."""
    met: set[str] = set()
    waiting = [key.first]
    while waiting:
        couplet = waiting.pop()
        if couplet in key.couplets and couplet not in met:
            met.add(couplet)
            waiting += [lead.couplet for lead in key.couplets[couplet].leads.values()]
    return frozenset(met)


def one_way(key: Key) -> dict[str, tuple[Step, ...]]:
    """The way to each couplet to which only one leads; that to the first couplet is empty."""
    ways: dict[str, list[tuple[Step, ...]]] = {id: list(paths(key, id)) for id in key.couplets}
    return {id: each[0] for id, each in ways.items() if len(each) == 1}


def rings(key: Key) -> Iterator[tuple[tuple[str, ...], Lead]]:
    """The rings of a key: the couplets of each, and the lead of its last couplet that closes it."""
    done: set[str] = set()

    def visit(couplet: str, way: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], Lead]]:
        for lead in key.couplets[couplet].leads.values():
            if lead.couplet in way:
                yield way[way.index(lead.couplet) :], lead
            elif lead.couplet in key.couplets and lead.couplet not in done:
                yield from visit(lead.couplet, (*way, lead.couplet))
        done.add(couplet)

    for couplet in [key.first, *key.couplets]:
        if couplet in key.couplets and couplet not in done:
            yield from visit(couplet, (couplet,))


def paths(key: Key, couplet: str = "") -> Iterator[tuple[Step, ...]]:
    """Every printed path from the first couplet to a couplet, or, without one, to any end; first leads first."""

    def onward(at: str, steps: tuple[Step, ...]) -> Iterator[tuple[Step, ...]]:
        if at == couplet:
            yield steps
            return
        for lead in key.couplets[at].leads.values():
            taken = (*steps, (at, lead.id))
            if lead.couplet:
                yield from onward(lead.couplet, taken)
            elif not couplet:
                yield taken

    yield from onward(key.first, ())
