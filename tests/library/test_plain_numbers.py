"""A number of biology, optics or judgement stands in `keydata/`, with its basis; here is which bare numbers the program may hold.

A new constant in a module is one of two things. It says something of soil, of a microscope or of when to believe a name: then it
is a quantity or a constant of `keydata/bench`, read by its id. Or it is how the program or a page is built (a size on paper, a
limit of memory): then its line is added to `plain_numbers.txt`, under what it is.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
LIST = Path(__file__).with_name("plain_numbers.txt")
DRAWN = ("keytool/figures", "keytool/card")
"""Where nearly every number is a place on a sheet; what they share with the library is looked at by `test_no_number_of_the_library_...`."""


def bare(path: Path) -> Iterator[tuple[str, float]]:
    """The names at the top of a module that are set to a number, or to several."""
    for node in ast.parse(path.read_text("utf-8")).body:
        if not isinstance(node, ast.Assign | ast.AnnAssign) or node.value is None:
            continue
        target = node.targets[0] if isinstance(node, ast.Assign) else node.target
        names = target.elts if isinstance(target, ast.Tuple) else [target]
        values = node.value.elts if isinstance(node.value, ast.Tuple) and len(node.value.elts) == len(names) else [node.value]
        for name, value in zip(names, values, strict=False):
            value = value.operand if isinstance(value, ast.UnaryOp) else value
            if isinstance(name, ast.Name) and isinstance(value, ast.Constant) and type(value.value) in (int, float):
                yield name.id, value.value


def found() -> set[str]:
    return {
        f"{path.relative_to(ROOT).as_posix()} {name}"
        for path in sorted((ROOT / "keytool").rglob("*.py"))
        if not path.relative_to(ROOT).as_posix().startswith(DRAWN)
        for name, _ in bare(path)
    }


def test_a_bare_number_is_one_of_those_that_are_no_fact_of_the_bench() -> None:
    listed, folders = _listed()
    bare_ones = {each for each in found() if not each.startswith(folders)}
    assert sorted(bare_ones - listed) == [], "put it into keydata/bench with its basis, or list it under what it is"
    assert sorted(listed - bare_ones) == [], "gone from the program: take it off the list"


def _listed() -> tuple[set[str], tuple[str, ...]]:
    """The numbers on the list, and the folders of which all are."""
    listed = {line.strip() for line in LIST.read_text("utf-8").splitlines() if line.strip() and not line.startswith("#")}
    folders = {each for each in listed if each.endswith("/ *")}
    return listed - folders, tuple(each.removesuffix(" *") for each in folders)


def test_the_list_says_of_each_number_what_it_is() -> None:
    head = ""
    for line in LIST.read_text("utf-8").splitlines():
        if line.startswith("#"):
            head = line
        assert not line.strip() or head, line


def test_the_magnification_of_the_eyepiece_stands_in_the_library_only() -> None:
    for path in (ROOT / "keytool").rglob("*.py"):
        assert not [name for name, value in bare(path) if "EYEPIECE" in name and value == 10], path


def test_a_bare_number_is_found(tmp_path: Path) -> None:
    (tmp_path / "module.py").write_text("FIELD = 20\nLEAST, MOST = 0.001, 1000\nDEEP: float = -3.5\nNAME = 'x'\nBOTH = (1, 2)\n", "utf-8")
    assert [name for name, _ in bare(tmp_path / "module.py")] == ["FIELD", "LEAST", "MOST", "DEEP"]
