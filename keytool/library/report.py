"""Report findings: as text for a person, as JSON for a program. Both are made from the same findings."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable, Iterable
from itertools import groupby

from keytool.library.finding import Finding, Severity

Style = Callable[[str, str], str]
"""Makes words stand out: from "place", "problem", "advice", "allowed", "tip" or "total" and the words, the words styled."""


def unstyled(_part: str, words: str) -> str:
    """The words as they are."""
    return words


def as_text(findings: Iterable[Finding], style: Style = unstyled) -> str:
    """The findings file by file, each with its place first, what is allowed and what to do below it; the total last.

    No line break at the end.
    """
    ordered = sorted(findings, key=lambda each: each.order)
    files = ["\n".join(_lines(each, style) for each in group) for _, group in groupby(ordered, key=lambda each: each.place.file)]
    return "\n\n".join([*files, style("total", total(ordered))])


def _lines(finding: Finding, style: Style) -> str:
    severity = "advice: " if finding.severity is Severity.ADVICE else ""
    lines = [f"{style('place', f'{finding.place}:')} {style(finding.severity.value, severity + finding.message)}"]
    if finding.allowed:
        lines.append(f"    {style('allowed', f'allowed: {finding.allowed}')}")
    if finding.tip:
        lines.append(f"    {style('tip', f'tip: {finding.tip}')}")
    return "\n".join(lines)


def total(findings: Iterable[Finding]) -> str:
    """How many findings of each severity there are, in words."""
    count = Counter(each.severity for each in findings)
    problems, advice = count[Severity.PROBLEM], count[Severity.ADVICE]
    words = f"{problems or 'No'} problem{'' if problems == 1 else 's'}"
    return f"{words}, {advice} piece{'' if advice == 1 else 's'} of advice." if advice else f"{words}."


def as_json(findings: Iterable[Finding]) -> str:
    """The findings as a JSON list of objects: check, severity, file, line, column, message, allowed, tip."""
    return json.dumps(
        [
            {
                "check": each.check,
                "severity": each.severity.value,
                "file": each.place.file,
                "line": each.place.line,
                "column": each.place.column,
                "message": each.message,
                "allowed": each.allowed,
                "tip": each.tip,
            }
            for each in sorted(findings, key=lambda each: each.order)
        ],
        ensure_ascii=False,
        indent=2,
    )
