"""What the lint of the site's scripts finds, and what it lets pass."""

from __future__ import annotations

from pathlib import Path

import pytest

check_scripts = pytest.importorskip("tests.check_scripts", reason="tree-sitter is not installed (pip install '.[test]')")

GOOD = """/* why */
(function () {
  "use strict";
  const half = (each) => each?.size ?? 0;
  function used(a, {b, ...rest} = {}) { return `${a} of ${b}` + half(rest); }
  self.wetmount = { used };
})();
"""


def test_a_classic_script_in_strict_mode_passes():
    assert check_scripts.faults(GOOD) == []


@pytest.mark.parametrize(
    ("old", "new", "at", "reason"),
    [
        ("})();", "})(;", 7, "')' is missing"),
        ("return `", "return = `", 5, "not understood"),
        ("return `", "debugger; return `", 5, "left over"),
        ("self.wetmount = ", "console.log(1); self.wetmount = ", 6, "left over"),
        ("{ used }", "{}", 5, "the function 'used' is never used"),
        ('"use strict";', "", 1, 'no "use strict"'),
        ("/* why */", "import x from './y.js';", 1, "a module does not load from a folder"),
        ("/* why */", "export const y = 1;", 1, "a module does not load from a folder"),
    ],
)
def test_each_fault_is_named_with_its_line(old: str, new: str, at: int, reason: str):
    assert old in GOOD
    line, _, said = check_scripts.faults(GOOD.replace(old, new))[0]
    assert (line, said[: len(reason)]) == (at, reason)


def test_a_file_with_a_fault_ends_the_lint_with_its_place(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    (tmp_path / "bad.js").write_text('"use strict";\nlet = = 1;\n', "utf-8")
    assert check_scripts.main([str(tmp_path / "bad.js")]) == 1
    assert f"{tmp_path / 'bad.js'}:2:" in capsys.readouterr().out


def test_every_script_of_the_site_is_looked_at():
    names = {path.name for path in check_scripts.scripts()}
    assert {"engine.js", "worker.js", "walk-page.js", "frame.js"} <= names
