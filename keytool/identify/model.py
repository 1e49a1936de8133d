"""The library made ready to identify with: one table for each character, prior chances, groups and keys, worked out once."""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence
from dataclasses import dataclass

from keytool.identify.observation_tables import Table, domains, table
from keytool.library.graph import one_way
from keytool.library.model import Entry, Key, Library
from keytool.library.pieces import Box, boxes

PRIOR_DIGITS = 9


@dataclass(frozen=True)
class CompiledKey:
    """One key made ready to walk.

    `boxes[couplet][lead]` is all that must be seen for a lead; `scope` the numbers of the entries in scope; `within` the numbers
    of the entries that each end and each onward key holds, `order` the couplets in reading order, and `printed` those that
    are always asked where one key is walked and everything told: the first, and those to which several ways lead.
    """

    key: Key
    scope: tuple[int, ...]
    boxes: Mapping[str, Mapping[str, tuple[Box, ...]]]
    within: Mapping[str, tuple[int, ...]]
    order: tuple[str, ...]
    printed: frozenset[str]


@dataclass(frozen=True)
class Model:
    """The library made ready to identify with.

    `entries` are those met in a drop, in the order of the library; everywhere an entry is its number in it. `prior` is the chance
    of each before anything is told, adding up to 1; `samples[kind]` what it is multiplied by in a kind of sample. `groups` are the
    members of each group, `domains` the sets of entries that some characters are for, `cautions` the entries that carry each
    caution of the kind given when likely, `pictures` the entries like each picture.
    """

    library: Library
    entries: tuple[str, ...]
    index: Mapping[str, int]
    prior: tuple[float, ...]
    samples: Mapping[str, tuple[float, ...]]
    tables: Mapping[str, Table]
    domains: tuple[tuple[int, ...], ...]
    groups: Mapping[str, tuple[int, ...]]
    cautions: Mapping[str, tuple[int, ...]]
    pictures: Mapping[str, tuple[int, ...]]
    keys: Mapping[str, CompiledKey]

    def figure(self, id: str) -> float:
        """A figure that naming rests on, from the bench quantities."""
        return self.library.quantities[id].low

    def within(self, id: str) -> tuple[int, ...]:
        """The numbers of the entries of a group, or of an entry itself."""
        return self.groups[id] if id in self.groups else (self.index[id],)


def compiled_for(library: Library, key: Key) -> Model:
    """The model of a library for one key alone: with no more tables than what its couplets ask needs."""
    waiting, found = {name for couplet in key.couplets.values() for name in couplet.characters}, set[str]()
    while waiting:
        found |= waiting
        waiting = {name for each in waiting for name in library.characters[each].applies.where} - found
    return compiled(library, found)


def compiled(library: Library, characters: Container[str] | None = None) -> Model:
    """The model of a library without problems. With `characters` only they have tables, for walks of keys that ask no others."""
    met = [entry for entry in library.entries.values() if not library.is_group(entry.id)]
    index = {entry.id: number for number, entry in enumerate(met)}
    groups = {id: tuple(index[each.id] for each in library.members((id,))) for id in library.entries if library.is_group(id)}
    priors = prior_chances(library)
    prior = tuple(round(priors[entry.id], PRIOR_DIGITS) for entry in met)
    domain, sets = domains(library, met)
    return Model(
        library,
        tuple(entry.id for entry in met),
        index,
        prior,
        {kind: _multipliers(library, met, kind) for kind in library.vocabulary.get("sample-kind", {})},
        {
            each.id: table(library, each, met, domain[each.id], prior)
            for each in library.characters.values()
            if characters is None or each.id in characters
        },
        sets,
        groups,
        {
            id: held
            for id, caution in library.cautions.items()
            if caution.when_likely and (held := tuple(index[each.id] for each in met if id in each.cautions))
        },
        {
            picture.id: tuple(sorted({number for id in picture.like for number in (groups[id] if id in groups else (index[id],))}))
            for picture in library.pictures.values()
        },
        {key.id: _compiled_key(library, key, index) for key in library.keys.values()},
    )


def _compiled_key(library: Library, key: Key, index: Mapping[str, int]) -> CompiledKey:
    members = [entry.id for entry in library.members(key.scope)]
    above = {id: library.ancestry(id) for id in members}
    within: dict[str, tuple[int, ...]] = {}
    for couplet in key.couplets.values():
        for lead in couplet.leads.values():
            if not lead.couplet:
                held = {lead.end} if lead.end else set(library.keys[lead.key].scope)
                within[lead.goes_to] = tuple(index[id] for id in members if held & above[id])
    return CompiledKey(
        key,
        tuple(index[id] for id in members),
        {couplet.id: {lead.id: boxes(library, couplet, lead) for lead in couplet.leads.values()} for couplet in key.couplets.values()},
        within,
        tuple(sorted(key.couplets, key=lambda id: key.couplets[id].number)),
        frozenset(key.couplets) - one_way(key).keys() | {key.first},
    )


def prior_chances(library: Library, scope: Sequence[str] = ()) -> dict[str, float]:
    """The prior chance of each entry within the groups of a scope (without one: of the whole library), adding up to 1.

    Weights are those of `commonness`. A group of the scope that states its own is as common as it says, however many entries it
    holds: they share its weight in proportion to theirs, also where they stand in other groups that say nothing.
    """
    groups = scope or [entry.id for entry in library.entries.values() if not entry.within]

    def weight(entry: Entry) -> float:
        return float(library.vocabulary["commonness"][entry.commonness].get("weight"))

    weights: dict[str, float] = {}
    for group in sorted(groups, key=lambda each: not library.entries[each].commonness):
        members = {entry.id: weight(entry) for entry in library.members((group,)) if entry.id not in weights}
        if library.is_group(group) and library.entries[group].commonness and members:
            members = {id: each * weight(library.entries[group]) for id, each in normal(members).items()}
        weights |= members
    return normal(weights)


def normal(weights: Mapping[str, float]) -> dict[str, float]:
    """Weights scaled to add up to 1."""
    total = sum(weights.values())
    return {id: weight / total for id, weight in weights.items()}


def _multipliers(library: Library, entries: Sequence[Entry], kind: str) -> tuple[float, ...]:
    """What the prior of each entry is multiplied by in a kind of sample: step by step, the nearest statement counting."""
    base, most = library.quantities["sample-step"].low, library.quantities["sample-most"].low
    strength = library.vocabulary["sample-strength"]
    stated: dict[str, float] = {}
    for each in library.samples.values():
        if kind in each.steps:
            step = each.steps[kind]
            stated |= {id: base ** (step.step * float(strength[step.strength].get("weight"))) for id in each.of}
    found = []
    for entry in entries:
        level, multiplier = [entry.id], 1.0
        met: set[str] = set()
        while level:
            here = [stated[id] for id in level if id in stated]
            if here:
                multiplier = here[0]
                break
            met |= set(level)
            level = [parent for id in level for parent in library.entries[id].within if parent not in met]
        found.append(round(min(most, max(1 / most, multiplier)), PRIOR_DIGITS))
    return tuple(found)
