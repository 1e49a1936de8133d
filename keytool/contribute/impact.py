"""What a change of the library does to identification: the library before against the library after."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from keytool.contribute.keyed_out import KeyPath, Step, paths_through
from keytool.identify import Answer, Leg, Model, Proof, Trail, compiled, cost, prove
from keytool.identify.cost import Cost
from keytool.identify.posterior import mass, posterior
from keytool.library.model import Entry, Key, Lead, Library
from keytool.library.value import Interval, States

LEAST_LOSS = "least-change-told"
"""How much surer or less sure an end must become to be told; the figures rest on estimates."""


@dataclass(frozen=True, slots=True)
class Names:
    """Ids that are new, that are gone, and whose content is not what it was."""

    new: tuple[str, ...]
    gone: tuple[str, ...]
    changed: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Moved:
    """An entry that ends elsewhere in a key, or in a key that is new for it; ends as ids."""

    key: str
    entry: str
    before: tuple[str, ...]
    after: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Together:
    """Two entries that a key ends at one place with, and did not before, or the other way about."""

    key: str
    one: str
    other: str
    end: str


@dataclass(frozen=True, slots=True)
class Sureness:
    """How sure a key is on average at the end of the right way of an entry, 0 to 1."""

    key: str
    entry: str
    before: float
    after: float


@dataclass(frozen=True, slots=True)
class Questions:
    """The questions a key asks: on average, and at most."""

    key: str
    before: float
    after: float
    most_before: int
    most_after: int


@dataclass(frozen=True, slots=True)
class LeadChange:
    """A lead of a couplet that both sides have, and that is not what it was: its text, the answers it gained and lost, where it goes.

    `gained` and `lost` are `character=state`, or `character` where a limit of a number moved; `before` and `after` are where it goes,
    as ids, empty on the side that does not have it.
    """

    key: str
    couplet: str
    lead: str
    text_before: str
    text_after: str
    gained: tuple[str, ...]
    lost: tuple[str, ...]
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class Card:
    """A key whose card did fit and does not now (`why` says by how much), or fits again (`why` empty)."""

    key: str
    why: str


@dataclass(frozen=True, slots=True)
class Impact:
    """Everything a change does to identification."""

    entries: Names
    characters: Names
    keys: Names
    couplets: Names
    """As `key/couplet`."""
    look_alikes: Names
    photos: Names
    unproved: Names
    """Keys whose proof fails now and did not (`new`), holds again (`gone`), or still fails (`changed`)."""
    moved: tuple[Moved, ...]
    no_longer_told: tuple[Together, ...]
    now_told: tuple[Together, ...]
    sureness: tuple[Sureness, ...]
    questions: tuple[Questions, ...]
    leads: tuple[LeadChange, ...]
    """Leads whose answers now lead elsewhere, or other answers lead to them."""
    cards: tuple[Card, ...] | None
    """None where the cards were not tried."""


Fits = Callable[[Library, Key], str]
"""Says why the card of a key does not fit; an empty text where it does."""


def impact(before: Library, after: Library, fits: Fits | None = None, told: Callable[[str], None] = lambda what: None) -> Impact:
    """The impact of a change. Both libraries must be free of problems; their proofs may fail. `told` hears what is looked at."""
    one = _Side(before, lambda what: told(f"{what}, before"))
    two = _Side(after, lambda what: told(f"{what}, after"), one)
    shared = [id for id in after.keys if id in before.keys]
    one.look, two.look = (frozenset(shared) - _same(one, two, shared),) * 2
    proved = [id for id in shared if id in one.proved and id in two.proved]
    told_before, told_after = {_pair(each) for each in one.together}, {_pair(each) for each in two.together}
    return Impact(
        entries=_names(before.entries, after.entries),
        characters=_names(before.characters, after.characters),
        keys=_names(before.keys, after.keys),
        couplets=_names(_couplets(before), _couplets(after)),
        look_alikes=_names(before.look_alikes, after.look_alikes),
        photos=_names(before.photos, after.photos),
        unproved=Names(
            tuple(id for id in after.keys if id not in two.proved and id not in one.unproved),
            tuple(id for id in one.unproved if id in two.proved),
            tuple(id for id in one.unproved if id in two.unproved),
        ),
        moved=tuple(_moved(one, two, shared)),
        no_longer_told=tuple(each for each in two.together if _pair(each) not in told_before),
        now_told=tuple(
            each
            for each in one.together
            if _pair(each) not in told_after and each.key in after.keys and each.one in after.entries and each.other in after.entries
        ),
        sureness=tuple(_sureness(one, two, proved)),
        questions=tuple(_questions(one, two, proved)),
        leads=tuple(_leads(before, after)),
        cards=None if fits is None else tuple(_cards(before, after, fits)),
    )


class _Side:
    """One of the two libraries, with what is worked out of it once. What is walked as it was before is not walked again.

    `look` are the keys of which it is asked how sure they are and how much they ask.
    """

    look: frozenset[str] = frozenset()

    def __init__(self, library: Library, told: Callable[[str], None], before: _Side | None = None) -> None:
        self.library = library
        self.before = before
        self.proofs: dict[str, Proof] = {}
        for id, key in library.keys.items():
            if before and self.walks_as_before(id):
                self.proofs[id] = before.proofs[id]
                continue
            told(key.title)
            self.proofs[id] = prove(library, key)

    @cached_property
    def _groups(self) -> object:
        """What a group stands within, and what each key is for: all that says whether an end holds an entry, beside the entry itself."""
        library = self.library
        within = {id: entry.within for id, entry in library.entries.items() if library.is_group(id)}
        return within, {id: key.scope for id, key in library.keys.items()}

    def members(self, key: str) -> list[Entry]:
        """The entries in the scope of a key."""
        if key not in self._members:
            self._members[key] = list(self.library.members(self.library.keys[key].scope))
        return self._members[key]

    @cached_property
    def _members(self) -> dict[str, list[Entry]]:
        return {}

    def walks_as_before(self, key: str) -> bool:
        """Whether a key, the entries in its scope and the groups are what they were: then every way through it is."""
        if self.before is None or key not in self.before.library.keys:
            return False
        if key not in self._walks:
            mine, its = self.library.keys[key], self.before.library.keys[key]
            self._walks[key] = mine == its and self._groups == self.before._groups and self.members(key) == self.before.members(key)
        return self._walks[key]

    @cached_property
    def _walks(self) -> dict[str, bool]:
        return {}

    @cached_property
    def proved(self) -> frozenset[str]:
        return frozenset(id for id, proof in self.proofs.items() if not proof.failures)

    @property
    def unproved(self) -> tuple[str, ...]:
        return tuple(id for id in self.library.keys if id not in self.proved)

    @cached_property
    def ways(self) -> Mapping[tuple[str, str], tuple[KeyPath, ...]]:
        """Every way of every entry through every key, by key and entry."""
        return {
            (key.id, entry.id): self.before.ways[key.id, entry.id]
            if self.before and self.walks_as_before(key.id)
            else tuple(paths_through(self.library, key, entry))
            for key in self.library.keys.values()
            for entry in self.members(key.id)
        }

    def ends(self, key: str, entry: str) -> tuple[str, ...]:
        """Where an entry comes out in a key; "?" for a way that comes to nothing."""
        return tuple(sorted({way.end or "?" for way in self.ways.get((key, entry), ())}))

    @cached_property
    def together(self) -> tuple[Together, ...]:
        """Every pair of entries that come out of a key at one entry that is neither, or is one of the two."""
        held: dict[tuple[str, str], list[str]] = {}
        for key, entry in self.ways:
            for end in self.ends(key, entry):
                if end in self.library.entries:
                    held.setdefault((key, end), []).append(entry)
        return tuple(
            Together(key, one, other, end)
            for (key, end), ids in held.items()
            for number, one in enumerate(ids)
            for other in ids[number + 1 :]
        )

    @cached_property
    def model(self) -> Model:
        return compiled(self.library, {each for key in self.look for each in _asked(self.library.keys[key])})

    @cached_property
    def _after(self) -> dict[tuple[str, tuple[Step, ...]], tuple[float, ...]]:
        """The chances at the end of ways gone before: many entries come the same way."""
        return {}

    def cost(self, key: str) -> Cost:
        """The cost of a proved key."""
        return cost(self.library, self.library.keys[key])

    def sure(self, key: str, entry: str) -> float:
        """How sure a proved key is on average at the end of the right ways of an entry."""
        within = self.model.keys[key].within
        found = [mass(self._chances(key, way.steps), within[way.end]) for way in self.ways[key, entry]]
        return sum(found) / len(found)

    def _chances(self, key: str, steps: tuple[Step, ...]) -> tuple[float, ...]:
        if (key, steps) not in self._after:
            answers = tuple(Answer(step.couplet, step.lead) for step in steps)
            self._after[key, steps] = posterior(self.model, Trail(legs=(Leg(key, answers),))).chance
        return self._after[key, steps]


def _names(before: Mapping[str, object], after: Mapping[str, object]) -> Names:
    return Names(
        tuple(id for id in after if id not in before),
        tuple(id for id in before if id not in after),
        tuple(id for id in after if id in before and before[id] != after[id]),
    )


def _couplets(library: Library) -> dict[str, object]:
    """Couplets without their printed numbers, which change with every couplet before them."""
    return {
        f"{key.id}/{each.id}": (each.asks, each.look, each.note, each.leads)
        for key in library.keys.values()
        for each in key.couplets.values()
    }


def _leads(before: Library, after: Library) -> Iterator[LeadChange]:
    """Every lead that changed, in the couplets that both sides have."""
    for key in after.keys.values():
        for couplet in key.couplets.values():
            old = before.keys[key.id].couplets.get(couplet.id) if key.id in before.keys else None
            if old is None or old.leads == couplet.leads:
                continue
            for id in dict.fromkeys([*couplet.leads, *old.leads]):
                was, now = old.leads.get(id), couplet.leads.get(id)
                if was != now:
                    taken, takes = _answers(was), _answers(now)
                    yield LeadChange(
                        key.id,
                        couplet.id,
                        id,
                        was.text if was else "",
                        now.text if now else "",
                        tuple(sorted(takes - taken)),
                        tuple(sorted(taken - takes)),
                        was.goes_to if was else "",
                        now.goes_to if now else "",
                    )


def _answers(lead: Lead | None) -> set[str]:
    """What a lead takes, as words that can be compared."""
    if lead is None:
        return set()
    if lead.otherwise:
        return {"all the rest"}
    found: set[str] = set()
    for character, wanted in lead.when.items():
        if isinstance(wanted, States):
            found |= {f"{character}={state}" for state in wanted.ids}
        else:
            assert isinstance(wanted, Interval)
            found.add(f"{character} {wanted.low:g} to {wanted.high:g}")
    return found


def _pair(each: Together) -> tuple[str, frozenset[str]]:
    return each.key, frozenset({each.one, each.other})


def _moved(one: _Side, two: _Side, shared: list[str]) -> Iterator[Moved]:
    for key, entry in two.ways:
        if key in shared and entry in one.library.entries:
            before, after = one.ends(key, entry), two.ends(key, entry)
            if before != after:
                yield Moved(key, entry, before, after)
    for key, entry in one.ways:
        if key in shared and entry in two.library.entries and (key, entry) not in two.ways:
            yield Moved(key, entry, one.ends(key, entry), ())


def _sureness(one: _Side, two: _Side, proved: list[str]) -> Iterator[Sureness]:
    least = two.library.limit(LEAST_LOSS)
    for key, entry in two.ways:
        if key in proved and (key, entry) in one.ways and key in two.look:
            before, after = one.sure(key, entry), two.sure(key, entry)
            if abs(after - before) >= least:
                yield Sureness(key, entry, before, after)


def _same(one: _Side, two: _Side, shared: list[str]) -> frozenset[str]:
    """The keys of which nothing that they are walked by, or judged by, is other than it was."""
    before, after = one.library, two.library
    if (before.characters, before.vocabulary, before.quantities) != (after.characters, after.vocabulary, after.quantities):
        return frozenset()
    return frozenset(key for key in shared if two.walks_as_before(key))


def _asked(key: Key) -> set[str]:
    """The characters that a key asks about."""
    return {character for couplet in key.couplets.values() for character in couplet.characters}


def _questions(one: _Side, two: _Side, proved: list[str]) -> Iterator[Questions]:
    for key in proved:
        if key not in two.look:
            continue
        before, after = one.cost(key), two.cost(key)
        if round(before.questions, 2) != round(after.questions, 2) or before.most != after.most:
            yield Questions(key, before.questions, after.questions, before.most, after.most)


def _cards(before: Library, after: Library, fits: Fits) -> Iterator[Card]:
    """Only keys that changed themselves, or in what they end at, are tried."""
    for id, key in after.keys.items():
        ends = {lead.end for couplet in key.couplets.values() for lead in couplet.leads.values()}
        if before.keys.get(id) == key and all(before.entries.get(end) == after.entries.get(end) for end in ends):
            continue
        was = fits(before, before.keys[id]) if id in before.keys else ""
        why = fits(after, key)
        if bool(was) != bool(why):
            yield Card(id, why)
