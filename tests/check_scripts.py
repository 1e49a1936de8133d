"""The lint of the site's scripts, called by `make lint`: `python -m tests.check_scripts [FILE ...]`.

A script must parse, be a classic script (the site opens from a folder, where modules do not load), keep to strict mode, say nothing
in the console, and declare no function that it never uses. What is wrong is printed as file:line:column with the reason.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import tree_sitter_javascript
from tree_sitter import Language, Node, Parser

SITE = Path(__file__).parents[1] / "site"
LANGUAGE = Language(tree_sitter_javascript.language())
OF_MODULES = ("import_statement", "export_statement")
LEFT_OVER = ("debugger_statement",)
NAMES = ("identifier", "shorthand_property_identifier", "jsx_identifier")


def scripts() -> list[Path]:
    """Every script of the site."""
    return sorted(SITE.rglob("*.js"))


def faults(text: str) -> list[tuple[int, int, str]]:
    """What is wrong with a script: line, column, and the reason in words."""
    source = text.encode()
    tree = Parser(LANGUAGE).parse(source)
    nodes = list(_walked(tree.root_node))
    found = [(node, _unreadable(node)) for node in nodes if node.is_missing or node.type == "ERROR"]
    if not found:
        found = [(node, "a module does not load from a folder; write a classic script") for node in nodes if node.type in OF_MODULES]
        found += [(node, "left over from looking for a fault") for node in nodes if node.type in LEFT_OVER or _speaks(node)]
        uses = Counter(node.text for node in nodes if node.type in NAMES)
        declared = [node.child_by_field_name("name") for node in nodes if node.type == "function_declaration"]
        found += [(name, f"the function '{_text(name)}' is never used") for name in declared if name and uses[name.text] == 1]
        if not any(node.type == "string" and _text(node)[1:-1] == "use strict" for node in nodes):
            found.append((tree.root_node, 'no "use strict"'))
    return sorted({(node.start_point.row + 1, node.start_point.column + 1, reason) for node, reason in found})


def _walked(node: Node) -> Iterator[Node]:
    waiting = [node]
    while waiting:
        each = waiting.pop()
        yield each
        waiting += each.children


def _text(node: Node) -> str:
    return (node.text or b"").decode()


def _unreadable(node: Node) -> str:
    return f"'{node.type}' is missing" if node.is_missing else f"not understood: {_text(node)[:60]!r}"


def _speaks(node: Node) -> bool:
    return node.type == "member_expression" and _text(node) in ("console.log", "console.debug", "console.info")


def main(names: list[str]) -> int:
    """Prints what is wrong with the scripts named, or with all; 1 where there is anything, as a command ends."""
    bad = 0
    for path in [Path(name) for name in names] or scripts():
        for line, column, reason in faults(path.read_text("utf-8")):
            print(f"{path}:{line}:{column}: {reason}")
            bad = 1
    return bad


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
