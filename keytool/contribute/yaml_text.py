"""Write plain data in the YAML dialect of the library: bare words where they are safe, double quotes elsewhere."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from typing import Any

WIDTH = 120
_BARE = re.compile(r"[A-Za-zÀ-ÿµ°][\w µ°×./+()'%;!-]*")
_TYPED = re.compile(r"true|false|null|-?[0-9][0-9.]*")
_REREAD = re.compile(r"(?i)no|yes|on|off|y|n|true|false|null|~")
"""Words that other YAML readers turn into something else."""


def scalar(value: Any) -> str:
    """A text, number, true, false or nothing as it stands in a file."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int | float):
        return number(value)
    text = str(value)
    safe = _BARE.fullmatch(text) and not _TYPED.fullmatch(text) and not _REREAD.fullmatch(text) and text == text.strip()
    return text if safe else json.dumps(text, ensure_ascii=False)


def number(value: float) -> str:
    """A number in plain digits, as the library reads numbers."""
    return f"{value:.6f}".rstrip("0").rstrip(".") if isinstance(value, float) else str(value)


def flow(value: Any) -> str:
    """Data on one line, such as `{states: [knobs], basis: {kind: memory}}`."""
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{scalar(name)}: {flow(each)}" for name, each in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(flow(each) for each in value) + "]"
    return scalar(value)


def block(value: Mapping[str, Any], indent: int = 0) -> str:
    """A mapping with one name to a line; what fits on a line stands on it."""
    return "".join(pair(name, each, indent) for name, each in value.items())


def pair(name: str, value: Any, indent: int = 0) -> str:
    """One name with what it holds, and the line break."""
    pad, line = " " * indent, flow(value)
    fits = len(line) + indent + len(name) + 2 <= WIDTH
    if not isinstance(value, Mapping | list | tuple) or not value or (fits and not _is_deep(value)):
        return f"{pad}{scalar(name)}: {line}\n"
    if isinstance(value, Mapping):
        return f"{pad}{scalar(name)}:\n{block(value, indent + 2)}"
    return f"{pad}{scalar(name)}:\n" + "".join(f"{pad}  - {flow(each)}\n" for each in value)


def _is_deep(value: Any) -> bool:
    """Whether it holds something that holds something, which reads better on lines of its own."""
    inner = value.values() if isinstance(value, Mapping) else value
    return any(
        isinstance(each, Mapping) and (isinstance(value, list | tuple) or any(isinstance(part, Mapping) for part in each.values()))
        for each in inner
    )
