"""Messages for what a schema finds wrong, in plain words and at the right place."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from keytool.library import messages
from keytool.library.messages import did_you_mean, sentences
from keytool.library.schemas import Schemas
from keytool.library.yaml_file import YamlFile, read_yaml
from tests.conftest import KEYDATA


def found(tmp_path: Path, schema: object, text: str) -> list[tuple[int, int, str, str, str]]:
    path = tmp_path / "a.yaml"
    path.write_text(text, "utf-8")
    file = read_yaml(path, "a.yaml")
    findings = [each for error in Draft202012Validator(schema).iter_errors(file.data) for each in sentences(error, file)]
    return [(each.place.line, each.place.column, each.message, each.allowed, each.tip) for each in findings]


@pytest.mark.parametrize(
    ("schema", "text", "expected"),
    [
        ({"properties": {"a": {"maximum": 5}}}, "a: 7\n", (1, 4, "'a' is 7.", "at most 5", "")),
        ({"properties": {"a": {"minimum": 5}}}, "a: 3\n", (1, 4, "'a' is 3.", "at least 5", "")),
        ({"properties": {"a": {"exclusiveMinimum": 0}}}, "a: 0\n", (1, 4, "'a' is 0.", "more than 0", "")),
        ({"properties": {"a": {"const": True}}}, "a: false\n", (1, 4, "'a' is false.", "true", "")),
        (
            {"properties": {"a": {"maxLength": 3}}},
            "a: long\n",
            (1, 4, "'a' is 4 characters long.", "at most 3", "Say it shorter, or split it."),
        ),
        ({"properties": {"a": {"minItems": 2}}}, "a: [x]\n", (1, 4, "'a' holds 1.", "at least 2", "")),
        ({"properties": {"a": {"pattern": "^x"}}}, "a: yz\n", (1, 4, "'yz' does not fit 'a'.", "", "")),
        ({"properties": {"a": {"items": {"type": "string"}}}}, "a: [x, 3]\n", (1, 8, "Item 2 of 'a' is a number (3).", "text", "")),
        ({"properties": {"a": {"type": ["string", "null"]}}}, "a: true\n", (1, 4, "'a' is true or false (true).", "text or nothing", "")),
        ({"properties": {"a": {"required": ["b", "c"]}}}, "a: {b: 1}\n", (1, 1, "'c' is missing in 'a'.", "", "")),
        ({"propertyNames": {"pattern": "^[a-z]+$"}}, "a: 1\nB: 2\n", (2, 1, "'B' does not fit 'B'.", "", "")),
        (
            {"properties": {"a": {"pattern": "^x", "x-say": {"pattern": "No '{value}'.", "tip": "Begin with x."}}}},
            "a: yz\n",
            (1, 4, "No 'yz'.", "", "Begin with x."),
        ),
    ],
)
def test_one_fault(tmp_path: Path, schema: object, text: str, expected: tuple[int, int, str, str, str]) -> None:
    assert found(tmp_path, schema, text) == [expected]


def test_every_unknown_name_is_found(tmp_path: Path) -> None:
    schema = {"properties": {"name": {}, "kind": {}}, "additionalProperties": False}
    assert [each[:3] + each[4:] for each in found(tmp_path, schema, "nam: 1\nkind: 2\nsort: 3\n")] == [
        (1, 1, "'nam' is not known.", "Did you mean 'name'?"),
        (3, 1, "'sort' is not known.", ""),
    ]


def test_every_missing_name_is_found(tmp_path: Path) -> None:
    assert [each[2] for each in found(tmp_path, {"required": ["a", "b", "c"]}, "b: 1\n")] == ["'a' is missing.", "'c' is missing."]


def test_long_values_are_cut(tmp_path: Path) -> None:
    assert found(tmp_path, {"properties": {"a": {"enum": ["x"]}}}, f"a: {'y' * 80}\n")[0][2] == f"'{'y' * 37}...' is not a word for 'a'."


def test_did_you_mean() -> None:
    assert did_you_mean("plectis", ["plectus", "tylenchus"]) == "Did you mean 'plectus'?"
    assert did_you_mean("zebra", ["plectus", "tylenchus"]) == ""


def failing_rules(schema: object) -> Iterator[tuple[str, bool]]:
    """Every rule of a schema that can fail by itself, and whether the schema has its own words for it."""
    if isinstance(schema, list):
        for each in schema:
            yield from failing_rules(each)
    if isinstance(schema, dict):
        for name, rule in schema.items():
            if name in ("properties", "$defs"):
                for each in rule.values():
                    yield from failing_rules(each)
            elif name in ("items", "allOf", "then", "else", "propertyNames", "additionalProperties") and rule is not False:
                yield from failing_rules(rule)
            elif name not in ("$schema", "$id", "$ref", "title", "description", "x-say", "if"):
                yield name, name in schema.get("x-say", {})


@pytest.mark.parametrize("path", sorted((KEYDATA / "schema").glob("*.json")), ids=lambda path: path.stem)
def test_every_rule_of_the_schemas_has_its_words(path: Path) -> None:
    for rule, has_words in failing_rules(json.loads(path.read_text("utf-8"))):
        assert has_words or rule in messages._SPEAKERS, rule


def test_broken_shape_is_placed_in_its_file(tmp_path: Path) -> None:
    schemas = Schemas(KEYDATA / "schema", {})
    file = YamlFile("keydata/vocabulary.yaml", {"basis": {}})
    assert {each.place.file for each in schemas.findings("vocabulary", file)} == {"keydata/vocabulary.yaml"}
