"""The table of the kinds of file: each has a schema, each file one kind, and what is linked has one address."""

from __future__ import annotations

from dataclasses import fields

import pytest

from keytool.contribute.schemas import kinds
from keytool.library import Loaded
from keytool.library.model import Library
from keytool.library.records import LINKED, RECORDS, kind_of_file, record_of
from keytool.library.wording import name_of
from keytool.pages.page_writer import Writer


def test_every_kind_of_file_has_a_schema_and_every_schema_its_kind(loaded: Loaded) -> None:
    assert sorted(each.kind for each in RECORDS) == sorted(kinds(loaded))


@pytest.mark.parametrize(
    ("place", "kind"),
    [
        ("entries/nematodes/plectus.yaml", "entry"),
        ("photos/plectus/plectus-1.yaml", "photo"),
        ("sources.yaml", "sources"),
        ("sources-threads.yaml", "sources"),
        ("bench/quantities-threads.yaml", "quantities"),
        ("words/states-heard.yaml", "state-words"),
        ("entries/plectus.yaml", None),
        ("entries/nematodes/old/plectus.yaml", None),
        ("bench/sources.yaml", None),
        ("keys/threads.yml", None),
    ],
)
def test_a_file_is_known_by_its_place(place: str, kind: str | None) -> None:
    assert kind_of_file(place) == kind


def test_what_is_held_is_a_field_of_the_library() -> None:
    assert {each.held for each in RECORDS if each.held} <= {each.name for each in fields(Library)}


def test_whatever_is_linked_has_a_name_and_an_address(loaded: Loaded) -> None:
    library = loaded.library
    writer = Writer(library, "index.md")
    for record in LINKED:
        for id in list(record.of(library))[:3]:
            assert record_of(library, id) is record
            assert name_of(library, id) == getattr(record.of(library)[id], record.title)
            page, _, part = writer.place(id).partition("#")
            assert page == record.page.partition("#")[0].format(id=id)
            assert part in ("", id)
