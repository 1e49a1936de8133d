"""One key with all that is in its scope: the leads that each may take by what it says it shows, and what each end holds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from keytool.library.graph import Step, paths
from keytool.library.model import Couplet, Entry, Key, Library
from keytool.library.pieces import cells, unstated
from keytool.library.requirements import required
from keytool.library.value import Showing


@dataclass(frozen=True)
class Ground:
    """One key of a library, and the entries in its scope.

    `may[couplet][entry]` are the ids of the leads that an entry may take, all of them where it says nothing.
    """

    library: Library
    key: Key
    members: tuple[Entry, ...]
    may: Mapping[str, Mapping[str, frozenset[str]]]

    @cached_property
    def paths(self) -> tuple[tuple[Step, ...], ...]:
        """Every printed path to an end or to another key."""
        return tuple(paths(self.key))

    @cached_property
    def wants(self) -> Mapping[str, Mapping[str, Mapping[str, Showing]]]:
        """For each couplet and lead, what must be seen of each character.

        Of a lead that takes all the rest it is said where one character alone decides.
        """
        return {
            couplet.id: {lead.id: required(self.library, couplet, lead) for lead in couplet.leads.values()}
            for couplet in self.key.couplets.values()
        }

    @cached_property
    def within(self) -> Mapping[str, frozenset[str]]:
        """For each end and onward key of this key, the entries in scope that it holds."""
        held: dict[str, frozenset[str]] = {}
        above = {entry.id: self.library.ancestry(entry.id) for entry in self.members}
        for couplet in self.key.couplets.values():
            for lead in couplet.leads.values():
                if not lead.couplet:
                    groups = {lead.end} if lead.end else set(self.library.keys[lead.key].scope)
                    held[lead.goes_to] = frozenset(id for id, ids in above.items() if groups & ids)
        return held


def ground(library: Library, key: Key) -> Ground:
    """The ground of one key."""
    members = tuple(library.members(key.scope))
    may = {couplet.id: {entry.id: frozenset(_may(couplet, entry)) for entry in members} for couplet in key.couplets.values()}
    return Ground(library, key, members, may)


def _may(couplet: Couplet, entry: Entry) -> Iterator[str]:
    showings = {name: statement.showing for name, statement in entry.statements.items()}
    if unstated(couplet, showings):
        yield from couplet.leads
    else:
        for cell in cells(couplet, showings):
            yield from (lead.id for lead in cell.leads)
