"""The closed lists stand once, in vocabulary.yaml, and everything else reads them there."""

from __future__ import annotations

import json
from itertools import product

import pytest

from keytool.library import Loaded
from keytool.library.basis import _WEAKNESS, Basis, weakest
from keytool.library.yaml_file import read_yaml
from tests.conftest import KEYDATA

WORDS = read_yaml(KEYDATA / "vocabulary.yaml", "vocabulary.yaml").data
SCHEMAS = {path.name: json.loads(path.read_text("utf-8")) for path in (KEYDATA / "schema").glob("*.schema.json")}


def parts_of(schema: object) -> list[dict]:
    inner = schema.values() if isinstance(schema, dict) else schema if isinstance(schema, list) else []
    own = [schema] if isinstance(schema, dict) else []
    return own + [part for each in inner for part in parts_of(each)]


@pytest.mark.parametrize("name", WORDS)
def test_every_list_is_an_enum_of_the_schemas(loaded: Loaded, name: str) -> None:
    assert loaded.schemas.named()["words.schema.json"]["$defs"][name]["enum"] == list(WORDS[name]) == list(loaded.library.vocabulary[name])


def test_magnifications_are_numbers_too(loaded: Loaded) -> None:
    numbers = loaded.schemas.named()["words.schema.json"]["$defs"]["magnification-number"]["enum"]
    assert numbers == [int(each) for each in WORDS["magnification"]] == sorted(numbers)


def test_no_schema_repeats_a_list() -> None:
    lists = [set(words) for words in WORDS.values()]
    for name, schema in SCHEMAS.items():
        enums = [set(map(str, part["enum"])) for part in parts_of(schema) if isinstance(part.get("enum"), list)]
        assert not [each for each in enums if each in lists], name


def test_every_list_a_schema_points_to_exists() -> None:
    pointed = {
        part["$ref"].rsplit("/", 1)[-1]
        for schema in SCHEMAS.values()
        for part in parts_of(schema)
        if str(part.get("$ref", "")).startswith("words.schema.json")
    }
    assert pointed <= {*WORDS, "magnification-number"}


def test_every_basis_has_its_weakness() -> None:
    pairs = {*product(["published"], WORDS["value"]), *((kind, "") for kind in WORDS["basis"] if kind != "published")}
    assert pairs == set(_WEAKNESS)
    assert len(set(_WEAKNESS.values())) == len(_WEAKNESS)


def test_the_weakest_basis_is_never_firmer_than_another() -> None:
    every = [Basis(kind, (), value) for kind, value in _WEAKNESS]
    assert weakest(every).kind == "memory"
    assert weakest([Basis("published", ("a",), "seen"), Basis("published", ("b",), "recalled")]).value == "recalled"


def test_words_that_words_speak_of_exist() -> None:
    assert {value for word in WORDS["read"].values() for value in word.get("not-with", ())} <= set(WORDS["value"])
    assert all("otherwise" in word for word in WORDS["read"].values() if "not-with" in word)
    fields = json.loads((KEYDATA / "schema/entry.schema.json").read_text("utf-8"))["properties"]
    assert {field for word in WORDS["theme"].values() for field in word.get("needs", ())} <= set(fields)
    assert any(word.get("holds") for word in WORDS["entry-kind"].values())
