"""Change one spot of a file that somebody wrote by hand, and leave every other letter of it alone."""

from __future__ import annotations

from typing import Any

import yaml

from keytool.contribute.yaml_text import flow
from keytool.library.yaml_file import DataPath


class CannotEdit(Exception):
    """Raised when a file is written in a way that cannot be added to; the message says what to write by hand."""


def add_to_mapping(text: str, path: DataPath, block: str) -> str:
    """The text with `block` (lines without indentation) put last into the mapping at `path`."""
    mapping = _at(text, path)
    if not isinstance(mapping, yaml.MappingNode) or mapping.flow_style or not mapping.value:
        raise CannotEdit(f"{_words(path)} is not written with one name to a line. Add by hand:\n{block}")
    pad = " " * mapping.start_mark.column
    return _after_line(text, _end(mapping), "".join(f"{pad}{line}\n" if line else "\n" for line in block.splitlines()))


def add_to_list(text: str, path: DataPath, item: Any) -> str:
    """The text with an item put last into the list at `path`."""
    items = _at(text, path)
    if not isinstance(items, yaml.SequenceNode):
        raise CannotEdit(f"{_words(path)} is not a list. Add by hand: {flow(item)}")
    if items.flow_style:
        at = _end(items) - 1
        return text[:at] + (", " if items.value else "") + flow(item) + text[at:]
    return _after_line(text, _end(items), f"{' ' * items.start_mark.column}- {flow(item)}\n")


def replace_pair(text: str, path: DataPath, words: str) -> str:
    """The text with the name and value at `path` written anew, such as `end: x` as `couplet: y`."""
    parent = _at(text, path[:-1])
    key, value = next(pair for pair in parent.value if pair[0].value == path[-1])
    return text[: key.start_mark.index] + words + text[_end(value) :]


def has(text: str, path: DataPath) -> bool:
    """Whether the file has something at `path`."""
    try:
        _at(text, path)
    except CannotEdit:
        return False
    return True


def _at(text: str, path: DataPath) -> Any:
    node: Any = yaml.compose(text, Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))
    for part in path:
        inner: list[Any] = []
        if isinstance(node, yaml.MappingNode):
            inner = [value for key, value in node.value if key.value == part]
        elif isinstance(node, yaml.SequenceNode) and isinstance(part, int):
            inner = node.value[part : part + 1]
        if not inner:
            raise CannotEdit(f"There is no {_words(path)}.")
        node = inner[0]
    return node


def _end(node: Any) -> int:
    """Where the last sign of a part stands; the reader itself puts the end of a block behind the comments that follow."""
    if isinstance(node, yaml.ScalarNode) or node.flow_style or not node.value:
        return int(node.end_mark.index)
    last = node.value[-1]
    return _end(last[1] if isinstance(node, yaml.MappingNode) else last)


def _after_line(text: str, at: int, lines: str) -> str:
    """The text with lines put in behind the line that holds a spot."""
    line_end = text.find("\n", at)
    if line_end < 0:
        return f"{text}\n{lines}"
    return text[: line_end + 1] + lines + text[line_end + 1 :]


def _words(path: DataPath) -> str:
    return ".".join(str(part) for part in path) or "the file"
