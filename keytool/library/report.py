"""Report findings: as text for a person, as JSON for a program. Both are made from the same findings."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable, Iterable
from itertools import groupby

from keytool.library.finding import Finding, Severity

Style = Callable[[str, str], str]
"""Makes words stand out: from "place", "problem", "advice", "allowed", "tip" or "total" and the words, the words styled."""


MOST_SHOWN = 500
"""So many findings are shown; whoever has more mends these first."""


def _visible(words: str) -> str:
    """Words with every sign that a terminal would act on, or that cannot be seen, written out."""
    return words if words.isprintable() else "".join(each if each.isprintable() else ascii(each)[1:-1] for each in words)


def unstyled(_part: str, words: str) -> str:
    """The words as they are."""
    return words


def as_text(findings: Iterable[Finding], style: Style = unstyled) -> str:
    """The findings file by file, each with its place first, what is allowed and what to do below it; the total last.

    No line break at the end.
    """
    every = sorted(findings, key=lambda each: each.order)
    ordered = every[:MOST_SHOWN]
    left = [f"... and {len(every) - MOST_SHOWN} more. Mend these first."] if len(every) > MOST_SHOWN else []
    files = ["\n".join(_lines(each, style) for each in group) for _, group in groupby(ordered, key=lambda each: each.place.file)]
    return "\n\n".join([*files, *left, style("total", total(every))])


def _lines(finding: Finding, style: Style) -> str:
    severity = "advice: " if finding.severity is Severity.ADVICE else ""
    lines = [f"{style('place', _visible(f'{finding.place}:'))} {style(finding.severity.value, severity + _visible(finding.message))}"]
    if finding.allowed:
        lines.append(f"    {style('allowed', f'allowed: {_visible(finding.allowed)}')}")
    if finding.tip:
        lines.append(f"    {style('tip', f'tip: {_visible(finding.tip)}')}")
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
