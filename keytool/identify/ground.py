"""Everything a walk over one key needs, worked out once: who is in scope, and how likely each answer is.

The page's script gets the same figures as plain data, so that both give the same answers.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from keytool.identify.looks import Looks, alone, looks
from keytool.identify.weigh import priors
from keytool.library.model import Couplet, Entry, Key, Lead, Library
from keytool.library.pieces import cells, unstated
from keytool.library.requirements import required
from keytool.library.value import Interval, Showing, States


@dataclass(frozen=True)
class Ground:
    """One key made ready to walk.

    `prior` gives the chance of each entry before any answer (adding up to 1);
    `looks` what may be seen of each character; `chance[couplet][entry]` the chance of each lead,
    in order, when that entry is there and nothing else was answered;
    `may[couplet][entry]` the ids of the leads it may take, all of them where it says nothing.
    """

    library: Library
    key: Key
    members: tuple[Entry, ...]
    prior: Mapping[str, float]
    looks: Looks
    chance: Mapping[str, Mapping[str, tuple[float, ...]]]
    may: Mapping[str, Mapping[str, frozenset[str]]]

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
    seen = looks(library, key, members)
    return Ground(
        library,
        key,
        members,
        priors(library, key.scope),
        seen,
        alone(seen, key, members),
        {couplet.id: {entry.id: frozenset(_may(couplet, entry)) for entry in members} for couplet in key.couplets.values()},
    )


def _may(couplet: Couplet, entry: Entry) -> Iterator[str]:
    showings = {name: statement.showing for name, statement in entry.statements.items()}
    if unstated(couplet, showings):
        yield from couplet.leads
    else:
        for cell in cells(couplet, showings):
            yield from (lead.id for lead in cell.leads)


def data(ground: Ground) -> dict[str, Any]:
    """The ground as plain data for the page's script. Open ends of intervals are null."""
    asked = [name for couplet in ground.key.couplets.values() for name in couplet.characters]
    return {
        "key": ground.key.id,
        "first": ground.key.first,
        "couplets": {
            couplet.id: {
                "leads": {lead.id: _lead(lead, ground.wants[couplet.id][lead.id]) for lead in couplet.leads.values()},
                "asks": list(couplet.characters),
                "takes": [[list(take.pieces), list(take.leads)] for take in ground.looks.takes[couplet.id]],
            }
            for couplet in ground.key.couplets.values()
        },
        "rows": {name: [list(row) for row in rows] for name, rows in ground.looks.rows.items()},
        "entries": {
            entry.id: {
                "prior": ground.prior[entry.id],
                "shows": {name: _showing(entry.statements[name].showing) for name in dict.fromkeys(asked) if name in entry.statements},
                "row": dict(ground.looks.row[entry.id]),
                "may": {couplet: sorted(row[entry.id]) for couplet, row in ground.may.items()},
            }
            for entry in ground.members
        },
        "within": {end: sorted(ids) for end, ids in ground.within.items()},
    }


def _lead(lead: Lead, wants: Mapping[str, Showing]) -> dict[str, Any]:
    goes = {"couplet": lead.couplet} if lead.couplet else {"key": lead.key} if lead.key else {"end": lead.end}
    return {**goes, "when": {name: _showing(required) for name, required in wants.items()}}


def _showing(showing: Showing) -> Any:
    if isinstance(showing, States):
        return sorted(showing.ids)
    assert isinstance(showing, Interval)
    return {end: value if math.isfinite(value) else None for end, value in (("low", showing.low), ("high", showing.high))}
