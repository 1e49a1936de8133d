"""The library to take away: complete, readable by any program, and the same every time."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from keytool.library import Library, load
from keytool.library.basis import weakest
from keytool.library.value import Interval, States
from keytool.library.wording import plain
from keytool.pages.downloads import ENTRY_COLUMNS, SCHEMA_VERSION, STATEMENT_COLUMNS, as_json, downloads, downloads_page


@pytest.fixture(scope="module")
def files(library: Library) -> dict[str, bytes]:
    return {each.path: each.content for each in downloads(library)}


@pytest.fixture(scope="module")
def whole(files: dict[str, bytes]) -> Any:
    return json.loads(files["downloads/library.json"])


def rows(files: dict[str, bytes], name: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(files[f"downloads/{name}.csv"].decode(), newline="")))


def test_the_json_holds_everything_with_its_version_and_licence(whole: Any, library: Library):
    assert whole["schema_version"] == SCHEMA_VERSION and whole["version"] == library.version and whole["licence"] == "CC-BY-4.0"
    for part in (
        "entries",
        "keys",
        "characters",
        "sources",
        "terms",
        "cautions",
        "quantities",
        "look_alikes",
        "guides",
        "voices",
        "shortcuts",
    ):
        assert list(whole[part]) == list(getattr(library, part)), part


def test_a_statement_keeps_what_is_shown_and_what_it_rests_on(whole: Any, library: Library):
    seen = set()
    for entry in library.entries.values():
        for name, statement in entry.statements.items():
            told = whole["entries"][entry.id]["statements"][name]
            assert [each["kind"] for each in told["basis"]] == [each.kind for each in statement.basis]
            if isinstance(statement.showing, States):
                assert told["showing"] == {"states": sorted(statement.showing.ids)}
            else:
                assert isinstance(statement.showing, Interval)
                low = told["showing"]["low"]
                assert low is None or low == pytest.approx(statement.showing.low, abs=1e-6)
            seen.add(type(statement.showing))
    assert seen == {States, Interval}


def test_the_tables_come_back_as_they_went(files: dict[str, bytes], library: Library):
    entries = rows(files, "entries")
    assert tuple(entries[0]) == ENTRY_COLUMNS
    assert [(each["id"], each["name"], each["summary"]) for each in entries] == [
        (each.id, each.name, plain(library, each.summary)) for each in library.entries.values()
    ]
    assert not any("{" in each["summary"] or "[[" in each["summary"] for each in entries)
    statements = rows(files, "statements")
    assert tuple(statements[0]) == STATEMENT_COLUMNS
    assert len(statements) == sum(len(each.statements) for each in library.entries.values())
    for row in statements[::37]:
        statement = library.entries[row["entry"]].statements[row["character"]]
        assert row["basis"] == weakest(statement.basis).kind
        assert all(source in library.sources for source in row["sources"].split("; ") if source)


def test_the_same_library_gives_the_same_bytes(library: Library):
    assert as_json(library) == as_json(library)


def test_the_page_lists_each_file_and_the_licence(library: Library):
    text = downloads_page(library, downloads(library)).text
    for each in downloads(library):
        assert f'href="{each.path}"' in text
    assert "CC BY 4.0" in text and f"schema_version is {SCHEMA_VERSION}" in text


def test_the_json_keeps_to_its_published_schema(files: dict[str, bytes], whole: Any, mini: Path):
    schema = json.loads(files["downloads/library.schema.json"])
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    assert [each.message for each in validator.iter_errors(whole)] == []
    assert [each.message for each in validator.iter_errors(json.loads(as_json(load(mini).library)))] == []
    assert whole["schema_version"] == schema["properties"]["schema_version"]["const"]


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("schema_version",), SCHEMA_VERSION + 1),
        (("entries", "plectus", "names"), None),
        (("entries", "plectus", "common"), 12),
        (("entries", "plectus", "statements", "tail", "showing"), {"low": "1", "high": 2}),
        (("keys", "nematode-mouthparts", "couplets"), []),
        (("characters", "tail", "misread"), "often"),
    ],
)
def test_the_schema_refuses_another_shape(files: dict[str, bytes], path: tuple[str, ...], value: Any):
    validator = Draft202012Validator(json.loads(files["downloads/library.schema.json"]))
    other = json.loads(files["downloads/library.json"])
    *above, last = path
    inside = other
    for name in above:
        inside = inside[name]
    if last == "names":
        del inside["common"]
    else:
        inside[last] = value
    assert not validator.is_valid(other)


def test_the_json_is_strict_json(files: dict[str, bytes]):
    def never(word: str) -> Any:
        raise AssertionError(word)

    json.loads(files["downloads/library.json"], parse_constant=never)


def test_every_kind_of_thing_in_the_schema_is_explained(files: dict[str, bytes]):
    for name, each in json.loads(files["downloads/library.schema.json"])["$defs"].items():
        assert len(each["description"]) > 15, name
