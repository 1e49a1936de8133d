"""Reports of findings, as text and as JSON."""

from __future__ import annotations

import json

from keytool.library import Finding, Place, Severity
from keytool.library.report import as_json, as_text

LATER = Finding("names", Place("keydata/b.yaml", 2, 3), "There is no entry 'x'.", "a, b", "Did you mean 'y'?")
SOONER = Finding("unused", Place("keydata/a.yaml", 10, 1), "Nothing uses it.", severity=Severity.ADVICE)
FIRST = Finding("shape", Place("keydata/a.yaml", 9, 1), "'id' is missing.")


def test_text_goes_file_by_file_and_ends_with_the_total() -> None:
    assert as_text([LATER, SOONER, FIRST]) == (
        "keydata/a.yaml:9:1: 'id' is missing.\n"
        "keydata/a.yaml:10:1: advice: Nothing uses it.\n"
        "\n"
        "keydata/b.yaml:2:3: There is no entry 'x'.\n"
        "    allowed: a, b\n"
        "    tip: Did you mean 'y'?\n"
        "\n"
        "2 problems, 1 piece of advice."
    )


def test_text_of_nothing() -> None:
    assert as_text([]) == "No problems."


def test_style_is_given_every_part() -> None:
    seen: list[str] = []

    def style(part: str, words: str) -> str:
        seen.append(part)
        return f"<{words}>"

    text = as_text([LATER, SOONER], style)
    assert seen == ["place", "advice", "place", "problem", "allowed", "tip", "total"]
    assert "<keydata/b.yaml:2:3:> <There is no entry 'x'.>" in text


def test_json_holds_every_part_in_order() -> None:
    assert json.loads(as_json([LATER, FIRST])) == [
        {
            "check": "shape",
            "severity": "problem",
            "file": "keydata/a.yaml",
            "line": 9,
            "column": 1,
            "message": "'id' is missing.",
            "allowed": "",
            "tip": "",
        },
        {
            "check": "names",
            "severity": "problem",
            "file": "keydata/b.yaml",
            "line": 2,
            "column": 3,
            "message": "There is no entry 'x'.",
            "allowed": "a, b",
            "tip": "Did you mean 'y'?",
        },
    ]


def test_same_findings_same_bytes() -> None:
    assert as_json([LATER, FIRST]) == as_json([FIRST, LATER])
    assert as_text([LATER, FIRST]) == as_text([FIRST, LATER])
