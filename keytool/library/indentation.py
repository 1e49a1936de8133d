"""Find the line that stands in another column than the lines it belongs with."""

from __future__ import annotations

import re
from dataclasses import dataclass

STEP = 2
"""By how many columns a line stands to the right of the name it belongs to, everywhere in the library."""
_NAME = re.compile(r"""(?P<pad> *)(?P<dash>(?:- +)*)(?:"[^"]*"|[^\s#"'{\[:][^:#]*):(?P<value>(?: .*)?)$""")


@dataclass(frozen=True, slots=True)
class Uneven:
    """A line (from 1) that starts in one column (from 1) and belongs into another; `beside` is a line that stands there already, or 0."""

    line: int
    column: int
    wanted: int
    beside: int


@dataclass(slots=True)
class _Level:
    column: int
    line: int
    opens: bool


def uneven(text: str) -> Uneven | None:
    """The first line that is indented otherwise than its neighbours; None where every line stands where it can."""
    levels: list[_Level] = []
    depth = 0
    for number, line in enumerate(text.splitlines(), 1):
        inside, depth = depth > 0, max(0, depth + _brackets(line))
        found = _NAME.match(line)
        if inside or not found:
            continue
        column = len(found["pad"]) + len(found["dash"])
        here = _Level(column, number, not found["value"].split("#")[0].strip())
        while levels and levels[-1].column > column:
            last = levels.pop()
            if not levels or levels[-1].column < column:  # it stands between two columns, and belongs into one of them
                above = levels[-1].column if levels else column - STEP
                return _blamed(here, last, above)
        if levels and levels[-1].column == column:
            levels[-1] = here
            continue
        if levels and not levels[-1].opens:
            return _blamed(here, levels[-1], levels[-2].column if len(levels) > 1 else -STEP)
        levels.append(here)
    return None


def _blamed(here: _Level, other: _Level, above: int) -> Uneven:
    """Of two lines that belong together in different columns, the one that is not a step to the right of their name."""
    wrong, right = (other, here) if other.column != above + STEP == here.column else (here, other)
    wanted = right.column if right.column != wrong.column else above + STEP
    return Uneven(wrong.line, wrong.column + 1, wanted + 1, right.line)


def _brackets(line: str) -> int:
    bare = re.sub(r'"(?:[^"\\]|\\.)*"', "", line).split(" #")[0]
    return sum(bare.count(each) for each in "[{") - sum(bare.count(each) for each in "]}")
