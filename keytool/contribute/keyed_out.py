"""Where an entry comes out: every way through every key that has it in scope, and what it meets there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from keytool.identify import Fault
from keytool.identify.prove import contains
from keytool.library.model import Entry, Key, Library
from keytool.library.pieces import Showings, cells, unstated
from keytool.library.value import Showing


@dataclass(frozen=True, slots=True)
class Step:
    """A couplet passed, and the lead taken there."""

    couplet: str
    lead: str


@dataclass(frozen=True, slots=True)
class KeyPath:
    """One way of an entry through a key: the steps, what it showed on them, and where it came out.

    `end` is the entry or key it came to, empty where it came to nothing; `fault` says what is
    wrong with that, if anything; `about` is then the couplet at which it went wrong, and
    `missing` the characters the entry does not state there.
    """

    key: str
    entry: str
    steps: tuple[Step, ...]
    shown: Mapping[str, Showing]
    end: str
    fault: Fault | None = None
    about: str = ""
    missing: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Outcome:
    """All ways of an entry, and for each lead at which it comes out who else comes out there."""

    entry: str
    ways: tuple[KeyPath, ...]
    together: Mapping[tuple[str, Step], tuple[str, ...]]

    @property
    def faults(self) -> tuple[KeyPath, ...]:
        """The ways that do not come out at something that holds the entry."""
        return tuple(way for way in self.ways if way.fault)

    def others(self, way: KeyPath) -> tuple[str, ...]:
        """The other entries that take the same last lead."""
        return self.together.get((way.key, way.steps[-1]), ()) if way.steps else ()


def keyed_out(library: Library, entry: str) -> Outcome:
    """Where an entry comes out, in every key it is in the scope of."""
    keys = [key for key in library.keys.values() if any(each.id == entry for each in library.members(key.scope))]
    ways = tuple(way for key in keys for way in paths_through(library, key, library.entries[entry]))
    last = {(way.key, way.steps[-1]) for way in ways if way.steps}
    together: dict[tuple[str, Step], dict[str, None]] = {}
    for key in keys:
        for other in library.members(key.scope):
            for way in paths_through(library, key, other) if other.id != entry else ():
                if way.steps and (key.id, way.steps[-1]) in last:
                    together.setdefault((key.id, way.steps[-1]), {})[other.id] = None
    return Outcome(entry, ways, {lead: tuple(ids) for lead, ids in together.items()})


def paths_through(library: Library, key: Key, entry: Entry) -> Iterator[KeyPath]:
    """Every way of an entry through one key, one for each combination that it may show on the way."""
    showings = {name: statement.showing for name, statement in entry.statements.items()}
    yield from _from(library, key, entry, key.first, showings, (), {})


def _from(
    library: Library, key: Key, entry: Entry, at: str, showings: Showings, steps: tuple[Step, ...], shown: Mapping[str, Showing]
) -> Iterator[KeyPath]:
    couplet = key.couplets[at]
    if any(step.couplet == at for step in steps):
        yield KeyPath(key.id, entry.id, steps, shown, "", Fault.LOOP, at)
        return
    if missing := unstated(couplet, showings):
        yield KeyPath(key.id, entry.id, steps, shown, "", Fault.UNSTATED, at, missing)
        return
    for cell in cells(couplet, showings):
        now = {**shown, **{name: cell.showings[name] for name in couplet.characters}}
        if len(cell.leads) != 1:
            yield KeyPath(key.id, entry.id, steps, now, "", Fault.OVERLAP if cell.leads else Fault.GAP, at)
            continue
        lead = cell.leads[0]
        taken = (*steps, Step(at, lead.id))
        if lead.couplet:
            yield from _from(library, key, entry, lead.couplet, cell.showings, taken, now)
        else:
            fault = None if contains(library, lead, entry) else Fault.WRONG_END
            yield KeyPath(key.id, entry.id, taken, now, lead.goes_to, fault, at if fault else "")
