"""No entry stands without what a person at the scope needs: what it is taken for, what it means, and what that rests on."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library import Library
from keytool.library.basis import Basis
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


def test_every_entry_names_a_look_alike_and_the_test_that_parts_them(library: Library) -> None:
    assert [entry.id for entry in library.entries.values() if not entry.mistaken_for] == []
    assert [(entry.id, each.entry) for entry in library.entries.values() for each in entry.mistaken_for if len(each.by.split()) < 4] == []


def test_every_entry_says_what_it_means_for_the_soil(library: Library) -> None:
    assert [entry.id for entry in library.entries.values() if not entry.tells] == []


def test_every_entry_shows_something_that_can_be_looked_at(library: Library) -> None:
    assert [entry.id for entry in library.entries.values() if not entry.statements] == []


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


def test_every_entry_has_a_picture(library: Library) -> None:
    assert [entry.id for entry in library.entries.values() if not entry.figure] == []
