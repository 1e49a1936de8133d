"""Read one YAML file to plain data, with the line and column of every part.

Stricter than YAML itself, because strangers write these files: no aliases, no tags, no key
twice, and nothing but true, false, plain numbers and null is turned into anything else than
text. So `no`, `12:30`, `012` and dates stay what was typed.
"""

from __future__ import annotations

import re
import sys
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Any, TypeAlias

import yaml

from keytool.library.finding import Finding, Place
from keytool.library.indentation import uneven
from keytool.library.plain_text import decode, escaped_in, line_column, say

DEEPEST_NESTING = 24
KEPT = 4096
"""Files remembered within one process, so that reading a library again after a change reads only what changed."""

DataPath: TypeAlias = tuple[str | int, ...]

_PLAIN = (
    ("bool", r"^(?:true|false)$", "tf"),
    ("int", r"^-?(?:0|[1-9][0-9]{0,14})$", "-0123456789"),
    ("float", r"^-?(?:0|[1-9][0-9]{0,14})\.[0-9]{1,15}$", "-0123456789"),
    ("null", r"^(?:null|~|)$", ["n", "~", ""]),
)


def _plain_loader(base: Any) -> Any:
    loader: Any = type("PlainLoader", (base,), {"yaml_implicit_resolvers": {}})
    for name, pattern, first in _PLAIN:
        loader.add_implicit_resolver(f"tag:yaml.org,2002:{name}", re.compile(pattern), list(first))
    return loader


_Pure = _plain_loader(yaml.SafeLoader)
_Fast = _plain_loader(getattr(yaml, "CSafeLoader", yaml.SafeLoader))


@dataclass(frozen=True, slots=True, eq=False)
class YamlFile:
    """One file: its plain data and where each part of it stands.

    `data` is made of dict, list, str, int, float, bool and None, and is never changed: the same bytes give the same
    object again. A file that could not be read has `data` None and says why in `findings`.
    """

    name: str
    data: Any
    findings: tuple[Finding, ...] = ()
    _values: dict[DataPath, tuple[int, int]] = field(default_factory=dict, repr=False)
    _keys: dict[DataPath, tuple[int, int]] = field(default_factory=dict, repr=False)

    def place(self, path: DataPath = (), *, of_key: bool = False) -> Place:
        """The place of a value, or of its key; of the nearest part above it when it is missing."""
        first = self._keys if of_key else self._values
        while path:
            if found := first.get(path) or self._values.get(path):
                return Place(self.name, *found)
            path = path[:-1]
        return Place(self.name, *self._values.get((), (1, 1)))


def read_yaml(path: Path, name: str) -> YamlFile:
    """The file at `path`, shown as `name` in messages. Never raises for what a file may hold."""
    try:
        raw = path.read_bytes()
    except FileNotFoundError:
        return YamlFile(name, None, (say(name, "The file is missing.", tip="The library cannot do without it."),))
    except OSError as error:
        return YamlFile(name, None, (say(name, f"The file cannot be read: {error.strerror}."),))
    return parse_yaml(raw, name)


@lru_cache(maxsize=KEPT)
def parse_yaml(raw: bytes, name: str) -> YamlFile:
    """The same for bytes that stand in no file of the library yet."""
    text, findings = decode(raw, name)
    if text is None:
        return YamlFile(name, None, tuple(findings))
    fault: Exception | None = None
    for loader in (_Fast, _Pure):  # the pure one has the last word, so that a fault reads the same on every machine
        try:
            return _parsed(text, name, loader)
        except yaml.YAMLError as error:
            fault = error
        except (ValueError, OverflowError):  # an escape such as "\\U00110000" that names no character
            return YamlFile(name, None, (_no_character(text, name),))
    return YamlFile(name, None, (_wrong_column(fault, text, name) or _syntax_finding(fault, name),))


def _parsed(text: str, name: str, loader: Any) -> YamlFile:
    if refused := _refused_events(text, name, loader):
        return YamlFile(name, None, (refused,))
    node = yaml.compose(text, Loader=loader)
    reading = _Reading(name)
    data = reading.value(node, ()) if node else None
    if data is None:
        return YamlFile(name, None, (say(name, "The file is empty.", tip="Delete it, or write what its name promises."),))
    return YamlFile(name, data, tuple(reading.findings), reading.values, reading.keys)


def _refused_events(text: str, name: str, loader: Any) -> Finding | None:
    """The first alias, anchor, tag, second document or too deep nesting, found before anything is built."""
    depth = documents = 0
    for event in yaml.parse(text, Loader=loader):
        mark: Any = event.start_mark
        documents += isinstance(event, yaml.DocumentStartEvent)
        depth += isinstance(event, yaml.CollectionStartEvent) - isinstance(event, yaml.CollectionEndEvent)
        refused = _refused(event)
        if documents > 1:
            refused = "A second document starts here.", "One file holds one document; delete '---'."
        elif depth > DEEPEST_NESTING:
            refused = f"Nested deeper than {DEEPEST_NESTING} levels.", "Nothing here needs that; check the brackets."
        if refused:
            return say(name, refused[0], line=mark.line + 1, column=mark.column + 1, tip=refused[1])
    return None


def _refused(event: Any) -> tuple[str, str] | None:
    if isinstance(event, yaml.AliasEvent):
        return f"'*{event.anchor}' is an alias.", "Write it out; aliases are not allowed. A text that begins with '*' needs quotes."
    if getattr(event, "anchor", None):
        return f"'&{event.anchor}' is an anchor.", "Anchors are not allowed. A text that begins with '&' needs quotes."
    if getattr(event, "tag", None):
        return f"'{event.tag}' is a tag.", "Tags are not allowed. A text that begins with '!' needs quotes."
    return None


def _no_character(text: str, name: str) -> Finding:
    """The first escape past the last character there is; a fault of the whole file where it cannot be found."""
    found = next((each for each in re.finditer(r"\\U([0-9A-Fa-f]{8})", text) if int(each[1], 16) > sys.maxunicode), None)
    line, column = line_column(text[: found.start()] if found else "")
    escape = f"'{found[0]}'" if found else "An escape"
    return say(name, f"{escape} stands for no character.", line=line, column=column, tip="Write the letter itself.")


def _wrong_column(fault: Any, text: str, name: str) -> Finding | None:
    """The line that is indented otherwise than its neighbours, where that is what the reader stumbled over."""
    mark: Any = getattr(fault, "problem_mark", None)
    problem: str = getattr(fault, "problem", None) or ""
    found = uneven(text) if mark and problem.startswith(_INDENTED) else None
    if found is None or found.line > mark.line + 1:
        return None
    return say(
        name,
        f"This line starts in column {found.column}, line {found.beside}, which it belongs with, in column {found.wanted}.",
        line=found.line,
        column=found.column,
        tip="Lines that belong together start in the same column, two to the right of the name they stand under.",
    )


_INDENTED = ("mapping values are not allowed here", "expected <block end>", "did not find expected key", "could not find expected ':'")


def _syntax_finding(fault: Any, name: str) -> Finding:
    mark = getattr(fault, "problem_mark", None) or getattr(fault, "context_mark", None)
    problem = getattr(fault, "problem", None) or "it holds a sign that has no place here"
    tip = next((tip for begins, tip in _SYNTAX_TIPS.items() if problem.startswith(begins)), _SYNTAX_TIP)
    if getattr(fault, "context", None) in _OPENED and fault.context_mark:
        tip += f" It was opened on line {fault.context_mark.line + 1}."
    return say(name, f"This is not YAML: {problem}.", line=mark.line + 1 if mark else 1, column=mark.column + 1 if mark else 1, tip=tip)


_OPENED = ("while parsing a flow sequence", "while parsing a flow mapping", "while scanning a quoted scalar")
_SYNTAX_TIP = "Look at this line and the one above it: indentation, a missing ':' or quote, or a text that needs quotes."
_SYNTAX_TIPS = {
    "mapping values are not allowed here": "A text with ': ' in it needs quotes; or the indentation is off.",
    "found unexpected end of stream": "A quote is not closed.",
    "could not find expected ':'": "A ':' is missing after a name, or the indentation is off.",
    "expected ',' or ']'": "A bracket '[' is not closed, or a ',' is missing.",
    "expected ',' or '}'": "A bracket '{' is not closed, or a ',' is missing.",
    "expected <block end>": "The indentation is off, or a text goes on after its closing quote.",
    "found character": "A text that begins with this sign needs quotes.",
    "found undefined tag handle": "A text that begins with '!' needs quotes.",
}


class _Reading:
    """Builds plain data from nodes and notes where everything stands."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.findings: list[Finding] = []
        self.values: dict[DataPath, tuple[int, int]] = {}
        self.keys: dict[DataPath, tuple[int, int]] = {}

    def value(self, node: yaml.Node, path: DataPath) -> Any:
        self.values[path] = _mark(node)
        if isinstance(node, yaml.MappingNode):
            return self._mapping(node, path)
        if isinstance(node, yaml.SequenceNode):
            return [self.value(item, (*path, i)) for i, item in enumerate(node.value)]
        self._plain(node)
        return _scalar(node)

    def _plain(self, node: yaml.Node) -> None:
        """A finding for a value or a name that holds what no file may hold, written as an escape."""
        if wrong := escaped_in(str(node.value)):
            line, column = _mark(node)
            self.findings.append(say(self.name, wrong[0], line=line, column=column, tip=wrong[1]))

    def _mapping(self, node: yaml.MappingNode, path: DataPath) -> dict[str, Any]:
        result: dict[str, Any] = {}
        for key_node, value_node in node.value:
            line, column = _mark(key_node)
            if not isinstance(key_node, yaml.ScalarNode):
                self.findings.append(
                    say(
                        self.name,
                        "A list or mapping is used as a name.",
                        line=line,
                        column=column,
                        tip="Write a plain word before ':'. A text that begins with '{' needs quotes.",
                    )
                )
                continue
            self._plain(key_node)
            key = str(key_node.value)
            here = (*path, key)
            if key in result:
                self.findings.append(
                    say(
                        self.name,
                        f"'{key}' stands twice; first on line {self.keys[here][0]}.",
                        line=line,
                        column=column,
                        tip="Keep one of the two.",
                    )
                )
                continue
            self.keys[here] = (line, column)
            result[key] = self.value(value_node, here)
        return result


def _mark(node: yaml.Node) -> tuple[int, int]:
    mark: Any = node.start_mark
    return mark.line + 1, mark.column + 1


def _scalar(node: yaml.Node) -> str | int | float | bool | None:
    text = str(node.value)
    match node.tag.rsplit(":", 1)[-1]:
        case "bool":
            return text == "true"
        case "int":
            return int(text)
        case "float":
            return float(text)
        case "null":
            return None
        case _:
            return text
