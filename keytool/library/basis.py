"""What a statement rests on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Basis:
    """What one figure or claim rests on. `kind` and `value` are words of `vocabulary.yaml`.

    `value` says how the value of a published source is known (seen, quoted, recalled) and is
    empty for every other kind; `how` is the formula of a computed one.
    """

    kind: str
    sources: tuple[str, ...] = ()
    value: str = ""
    how: str = ""
    note: str = ""

    @property
    def weakness(self) -> int:
        """Orders bases from the firmest (0) to the weakest."""
        return _WEAKNESS[self.kind, self.value]


_WEAKNESS = {
    ("published", "seen"): 0,
    ("computed", ""): 1,
    ("published", "quoted"): 2,
    ("published", "recalled"): 3,
    ("common-practice", ""): 4,
    ("memory", ""): 5,
}


def weakest(bases: Iterable[Basis]) -> Basis:
    """The basis to show where there is room for one mark: never firmer than any of the rest."""
    return max(bases, key=lambda basis: basis.weakness)


def bases(raw: Any) -> tuple[Basis, ...]:
    """One basis or several, as written in a file."""
    return tuple(
        Basis(each["kind"], tuple(each.get("sources", ())), each.get("value", ""), each.get("how", ""), each.get("note", ""))
        for each in (raw if isinstance(raw, list) else [raw])
    )
