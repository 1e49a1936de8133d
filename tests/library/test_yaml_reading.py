"""Reading YAML: what is turned into what, and where each part stands."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from keytool.library import plain_text, yaml_file
from keytool.library.yaml_file import YamlFile, read_yaml
from tests.conftest import KEYDATA, TESTS

TEXT = """\
id: plectus
sizes:
  - low: 14
    unit: µm
  - {low: 0.5, "unit": mm, why: 'said, twice'}
says: >-
  folded
  text
"""


def read(tmp_path: Path, text: str) -> YamlFile:
    path = tmp_path / "a.yaml"
    path.write_bytes(text.encode())
    return read_yaml(path, "a.yaml")


@pytest.mark.parametrize(
    ("path", "of_key", "where"),
    [
        ((), False, (1, 1)),
        (("id",), False, (1, 5)),
        (("id",), True, (1, 1)),
        (("sizes",), True, (2, 1)),
        (("sizes", 0), False, (3, 5)),
        (("sizes", 0, "unit"), False, (4, 11)),
        (("sizes", 1, "low"), False, (5, 11)),
        (("sizes", 1, "unit"), True, (5, 16)),
        (("sizes", 1, "why"), False, (5, 33)),
        (("says",), False, (6, 7)),
        (("sizes", 1, "missing"), False, (5, 5)),
        (("missing", "deep"), True, (1, 1)),
    ],
)
def test_places(tmp_path: Path, path: tuple[str | int, ...], of_key: bool, where: tuple[int, int]) -> None:
    place = read(tmp_path, TEXT).place(path, of_key=of_key)
    assert (place.file, place.line, place.column) == ("a.yaml", *where)


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("no", "no"),
        ("yes", "yes"),
        ("on", "on"),
        ("True", "True"),
        ("true", True),
        ("false", False),
        ("null", None),
        ("~", None),
        ("12", 12),
        ("-3", -3),
        ("0", 0),
        ("012", "012"),
        ("0x1f", "0x1f"),
        ("1_000", "1_000"),
        ("1e3", "1e3"),
        (".5", ".5"),
        ("0.5", 0.5),
        ("1.50", 1.5),
        ("12:30", "12:30"),
        ("2026-11-25", "2026-11-25"),
        ("NaN", "NaN"),
        (".inf", ".inf"),
        ("9" * 16, "9" * 16),
        ("'12'", "12"),
        ('"true"', "true"),
        ("=", "="),
        ("<<", "<<"),
    ],
)
def test_scalars(tmp_path: Path, written: str, value: object) -> None:
    found = read(tmp_path, f"a: {written}\n").data["a"]
    assert found == value and type(found) is type(value)


def test_merge_key_is_a_plain_name(tmp_path: Path) -> None:
    assert read(tmp_path, "a:\n  <<: b\n").data == {"a": {"<<": "b"}}


def test_missing_file(tmp_path: Path) -> None:
    assert [each.message for each in read_yaml(tmp_path / "none.yaml", "none.yaml").findings] == ["The file is missing."]


def test_file_too_large(tmp_path: Path) -> None:
    assert "larger" in read(tmp_path, "a: " + "x" * plain_text.LARGEST_FILE).findings[0].message


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_line_ends(tmp_path: Path, end: str) -> None:
    file = read(tmp_path, end.join(["a: 1", "b: two", ""]))
    assert file.data == {"a": 1, "b": "two"} and file.place(("b",)).line == 2


@given(text=st.text(max_size=60))
def test_any_text_gives_data_or_a_finding(tmp_path_factory: pytest.TempPathFactory, text: str) -> None:
    path = tmp_path_factory.getbasetemp() / "any.yaml"
    path.write_bytes(text.encode("utf-8", "surrogatepass"))
    file = read_yaml(path, "any.yaml")
    assert (file.data is None) <= bool(file.findings)
    lines = text.count("\n") + 2
    assert all(1 <= each.place.line <= lines and each.place.column >= 1 for each in file.findings)


@pytest.mark.parametrize("path", [*sorted(KEYDATA.rglob("*.yaml")), *sorted((TESTS / "bad").glob("*.yaml"))], ids=lambda path: path.stem)
def test_without_the_c_loader_all_is_the_same(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    fast = read_yaml(path, path.name)
    monkeypatch.setattr(yaml_file, "_Fast", yaml_file._Pure)
    pure = read_yaml(path, path.name)
    assert (fast.data, fast.findings, fast._values, fast._keys) == (pure.data, pure.findings, pure._values, pure._keys)
