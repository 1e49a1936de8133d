"""Prove a key: whatever an entry may show, the key must end at it or at a group that holds it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import Enum

from keytool.library.model import Entry, Key, Lead, Library
from keytool.library.pieces import Showings, cells, unstated
from keytool.library.value import Showing


class Fault(Enum):
    """What can go wrong on the way from the first couplet to an end."""

    UNSTATED = "the entry does not say what the couplet asks"
    GAP = "no lead fits"
    OVERLAP = "more than one lead fits"
    WRONG_END = "the end does not hold the entry"
    LOOP = "the key comes back to a couplet"


@dataclass(frozen=True, slots=True)
class ProofFailure:
    """One combination that goes wrong: the entry, what it shows, and the couplet that sent it wrong.

    `shown` holds only the characters asked about on the way; `lead` is the lead taken last,
    and `about` the character or the end concerned.
    """

    fault: Fault
    entry: str
    couplet: str
    lead: str
    about: str
    shown: Mapping[str, Showing]


@dataclass(frozen=True, slots=True)
class Proof:
    """What proving a key gave: how many entries and combinations were walked, and what failed."""

    key: str
    entries: int
    combinations: int
    failures: tuple[ProofFailure, ...]


def prove(library: Library, key: Key) -> Proof:
    """The proof of one key over every entry in its scope and every combination it may show."""
    members = list(library.members(key.scope))
    combinations = 0
    failures: list[ProofFailure] = []
    for entry in members:
        showings = {name: statement.showing for name, statement in entry.statements.items()}
        for failure in _from(library, key, entry, key.first, showings, (), {}):
            combinations += 1
            if failure and failure not in failures:
                failures.append(failure)
    return Proof(key.id, len(members), combinations, tuple(failures))


def _from(
    library: Library, key: Key, entry: Entry, at: str, showings: Showings, path: tuple[str, ...], shown: Mapping[str, Showing]
) -> Iterator[ProofFailure | None]:
    """One item for each combination that can be shown from here on: None where it ends rightly."""
    couplet = key.couplets[at]
    if at in path:
        yield ProofFailure(Fault.LOOP, entry.id, at, "", at, shown)
        return
    if missing := unstated(couplet, showings):
        for name in missing:
            yield ProofFailure(Fault.UNSTATED, entry.id, at, "", name, shown)
        return
    for cell in cells(couplet, showings):
        now = {**shown, **{name: cell.showings[name] for name in couplet.characters}}
        if len(cell.leads) != 1:
            fault = Fault.OVERLAP if cell.leads else Fault.GAP
            yield ProofFailure(fault, entry.id, at, "", ", ".join(lead.id for lead in cell.leads), now)
            continue
        lead = cell.leads[0]
        if lead.couplet:
            yield from _from(library, key, entry, lead.couplet, cell.showings, (*path, at), now)
        elif contains(library, lead, entry):
            yield None
        else:
            yield ProofFailure(Fault.WRONG_END, entry.id, at, lead.id, lead.goes_to, now)


def contains(library: Library, lead: Lead, entry: Entry) -> bool:
    """Whether the end or the key a lead goes to holds an entry."""
    above = library.ancestry(entry.id)
    return lead.end in above if lead.end else bool(above & set(library.keys[lead.key].scope))
