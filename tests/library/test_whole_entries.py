"""No entry stands without what a person at the scope needs: what it is taken for, what it means, and what that rests on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from keytool.library import Library, Loaded, Severity
from keytool.library.basis import Basis
from keytool.library.checks import complete
from keytool.library.model import Entry


def bases(entry: Entry) -> Iterator[tuple[str, tuple[Basis, ...]]]:
    """Everything an entry claims, with what it rests on."""
    if entry.commonness:
        yield "commonness", entry.commonness_basis
    if entry.feeding:
        yield "feeding", entry.feeding_basis
    yield from ((name, statement.basis) for name, statement in entry.statements.items())
    yield from ((said.text, said.basis) for said in (*entry.tells, *entry.notes))
    yield from ((mistake.by, mistake.basis) for mistake in entry.mistaken_for)


def test_a_test_that_tells_look_alikes_apart_is_more_than_a_word(library: Library) -> None:
    assert [(entry.id, each.entry) for entry in library.entries.values() for each in entry.mistaken_for if len(each.by.split()) < 4] == []


def test_what_an_entry_lacks_that_others_give_is_said_at_its_place(loaded: Loaded) -> None:
    """What the tests once asked of every entry, `wetmount check` says to whoever adds one."""
    bare = replace(loaded.library.entries["plectus"], figure=None, mistaken_for=(), tells=())
    entries = {**loaded.library.entries, "plectus": bare}
    found = [
        each for each in complete.check(replace(loaded, library=replace(loaded.library, entries=entries))) if "'plectus'" in each.message
    ]
    assert [each.message for each in found] == ["'plectus' has no picture, no look-alike and no meaning for the soil yet."]
    assert found[0].place.file == "keydata/entries/nematodes/plectus.yaml" and found[0].severity is Severity.ADVICE


def test_nothing_an_entry_claims_stands_without_a_basis(library: Library) -> None:
    claims = [(entry.id, claim, basis) for entry in library.entries.values() for claim, basis in bases(entry)]
    assert [(id, claim) for id, claim, basis in claims if not basis] == []
    for id, claim, basis in claims:
        for each in basis:
            assert each.kind != "published" or (each.sources and each.value), (id, claim)
            assert each.kind != "computed" or each.how, (id, claim)
            assert set(each.sources) <= set(library.sources), (id, claim)


def test_every_kind_that_can_be_met_says_how_common_it_is(library: Library) -> None:
    assert [entry.id for entry in library.entries.values() if not library.is_group(entry.id) and not entry.commonness] == []
