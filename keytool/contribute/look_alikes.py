"""Propose what to compare where several things are taken for each other."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from keytool.library.model import Character, Entry, Library


def worth_comparing(library: Library, entries: Sequence[Entry]) -> list[Character]:
    """The characters in which at least two of the entries have nothing in common, the least often misread first.

    Where there is none, those in which two differ at all.
    """

    def differs(name: str, *, wholly: bool) -> bool:
        shown = [each.statements[name].showing for each in entries if name in each.statements]
        return any(one.meet(other).is_empty if wholly else one != other for one, other in combinations(shown, 2))

    stated = list(dict.fromkeys(name for each in entries for name in each.statements))
    found = [name for name in stated if differs(name, wholly=True)] or [name for name in stated if differs(name, wholly=False)]
    return sorted((library.characters[name] for name in found), key=lambda each: (each.misread, each.id))
