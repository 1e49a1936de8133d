"""Read one YAML file to plain data, with the line and column of every part.

Stricter than YAML itself, because strangers write these files: no aliases, no tags, no key
twice, and nothing but true, false, plain numbers and null is turned into anything else than
text. So `no`, `12:30`, `012` and dates stay what was typed.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, TypeAlias

import yaml

from keytool.library.finding import Finding, Place

CHECK = "readable"
LARGEST_FILE = 1_000_000
DEEPEST_NESTING = 24
GREEK_MU, MICRO_SIGN = "\u03bc", "\u00b5"

DataPath: TypeAlias = tuple[str | int, ...]

_PureBase = yaml.SafeLoader
_FastBase = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_PLAIN = (
    ("bool", r"^(?:true|false)$", "tf"),
    ("int", r"^-?(?:0|[1-9][0-9]{0,14})$", "-0123456789"),
    ("float", r"^-?(?:0|[1-9][0-9]{0,14})\.[0-9]{1,15}$", "-0123456789"),
    ("null", r"^(?:null|~|)$", ["n", "~", ""]),
)


def _plain_loader(base: Any) -> Any:
    loader = type("PlainLoader", (base,), {"yaml_implicit_resolvers": {}})
    for name, pattern, first in _PLAIN:
        loader.add_implicit_resolver(f"tag:yaml.org,2002:{name}", re.compile(pattern), list(first))
    return loader


_Fast, _Pure = _plain_loader(_FastBase), _plain_loader(_PureBase)


@dataclass(frozen=True, slots=True)
class YamlFile:
    """One file: its plain data and where each part of it stands.

    `data` is made of dict, list, str, int, float, bool and None. A file that could not be
    read has `data` None and says why in `findings`.
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
    raw = path.read_bytes()
    text, findings = _decode(raw, name)
    if text is None:
        return YamlFile(name, None, tuple(findings))
    try:
        findings += _refused_events(text, name)
        if findings:
            return YamlFile(name, None, tuple(findings))
        node = yaml.compose(text, Loader=_Fast)
    except yaml.YAMLError:
        return YamlFile(name, None, (_syntax_finding(text, name),))
    if node is None:
        return YamlFile(name, None, (_say(name, "The file is empty.", tip="Delete it, or write the entry."),))
    reading = _Reading(name)
    data = reading.value(node, ())
    return YamlFile(name, data, tuple(reading.findings), reading.values, reading.keys)


def _say(name: str, message: str, *, line: int = 1, column: int = 1, tip: str = "") -> Finding:
    return Finding(CHECK, Place(name, line, column), message, tip=tip)


def _decode(raw: bytes, name: str) -> tuple[str | None, list[Finding]]:
    if len(raw) > LARGEST_FILE:
        return None, [_say(name, f"The file is larger than {LARGEST_FILE} bytes.", tip="Split it.")]
    if raw.startswith(b"\xef\xbb\xbf"):
        return None, [_say(name, "The file starts with a byte order mark.", tip="Save it as UTF-8 without BOM.")]
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as error:
        line, column = _line_column(raw[: error.start].decode("utf-8", "replace"))
        byte = raw[error.start]
        return None, [_say(name, f"Byte 0x{byte:02x} is not UTF-8.", line=line, column=column,
                           tip="Save the file as UTF-8.")]
    findings = list(_unwelcome_characters(text, name))
    return (None if findings else text), findings


def _unwelcome_characters(text: str, name: str) -> Iterator[Finding]:
    for number, line in enumerate(text.splitlines(), 1):
        if "\t" in line:
            yield _say(name, "A tab.", line=number, column=line.index("\t") + 1, tip="Use spaces; two for each level.")
        if GREEK_MU in line:
            yield _say(name, "A Greek mu (U+03BC) stands for micro.", line=number, column=line.index(GREEK_MU) + 1,
                       tip="Use the micro sign µ (U+00B5), so that search and units find it.")
        if not unicodedata.is_normalized("NFC", line):
            yield _say(name, "A letter is written in two pieces (not NFC).", line=number,
                       tip="Retype the accented letters on this line.")
        for column, char in enumerate(line, 1):
            if unicodedata.category(char) in ("Cc", "Cf") and char != "\t":
                yield _say(name, f"An invisible character, U+{ord(char):04X}.", line=number, column=column,
                           tip="Delete it.")
                break


def _line_column(before: str) -> tuple[int, int]:
    return before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1


def _refused_events(text: str, name: str) -> list[Finding]:
    """Aliases, anchors, tags, deep nesting and second documents, found before anything is built."""
    depth = documents = 0
    for event in yaml.parse(text, Loader=_Fast):
        at = {"line": event.start_mark.line + 1, "column": event.start_mark.column + 1}
        if isinstance(event, yaml.DocumentStartEvent):
            documents += 1
            if documents > 1:
                return [_say(name, "A second document starts here.", **at, tip="One file holds one document; delete '---'.")]
        if isinstance(event, yaml.AliasEvent):
            return [_say(name, f"'*{event.anchor}' is an alias.", **at, tip="Write the text out; aliases are not allowed. "
                         "If a text begins with '*', put it in quotes.")]
        if getattr(event, "anchor", None):
            return [_say(name, f"'&{event.anchor}' is an anchor.", **at,
                         tip="Anchors are not allowed. If a text begins with '&', put it in quotes.")]
        if getattr(event, "tag", None):
            return [_say(name, f"'{event.tag}' is a tag.", **at,
                         tip="Tags are not allowed. If a text begins with '!', put it in quotes.")]
        if isinstance(event, yaml.CollectionStartEvent):
            depth += 1
            if depth > DEEPEST_NESTING:
                return [_say(name, f"Nested deeper than {DEEPEST_NESTING} levels.", **at,
                             tip="Nothing here needs that; check the brackets.")]
        elif isinstance(event, yaml.CollectionEndEvent):
            depth -= 1
    return []


def _syntax_finding(text: str, name: str) -> Finding:
    """The fault as the pure parser words it, so that the message is the same on every machine."""
    try:
        list(yaml.parse(text, Loader=_Pure))
        yaml.compose(text, Loader=_Pure)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        tip = _SYNTAX_TIPS.get((error.problem or "").split("'")[0].strip(), "Look at this line and the one above it: "
                               "indentation, a missing ':' or quote, or a text with ': ' in it that needs quotes.")
        return _say(name, f"Not YAML: {error.problem}.", line=mark.line + 1 if mark else 1,
                    column=mark.column + 1 if mark else 1, tip=tip)
    except (yaml.YAMLError, RecursionError) as error:
        return _say(name, f"Not YAML: {str(error).splitlines()[0]}.", tip="Look for unusual characters.")
    return _say(name, "Not YAML.", tip="Check brackets and quotes.")


_SYNTAX_TIPS = {
    "mapping values are not allowed here": "A text with ': ' in it needs quotes; or the indentation is off.",
    "found unexpected end of stream": "A quote or bracket is not closed.",
    "could not find expected": "A ':' is missing after a name, or the indentation is off.",
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
        return _scalar(node)

    def _mapping(self, node: yaml.MappingNode, path: DataPath) -> dict[str, Any]:
        result: dict[str, Any] = {}
        for key_node, value_node in node.value:
            line, column = _mark(key_node)
            if not isinstance(key_node, yaml.ScalarNode):
                self.findings.append(_say(self.name, "A list or mapping is used as a name.", line=line, column=column,
                                          tip="Write a plain word before ':'. A text that begins with '{' needs quotes."))
                continue
            key = str(key_node.value)
            here = (*path, key)
            if key in result:
                self.findings.append(_say(self.name, f"'{key}' stands twice; first on line {self.keys[here][0]}.",
                                          line=line, column=column, tip="Keep one of the two."))
                continue
            self.keys[here] = (line, column)
            result[key] = self.value(value_node, here)
        return result


def _mark(node: yaml.Node) -> tuple[int, int]:
    return node.start_mark.line + 1, node.start_mark.column + 1


def _scalar(node: yaml.ScalarNode) -> str | int | float | bool | None:
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
