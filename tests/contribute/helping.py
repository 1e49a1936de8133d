"""What the tests of contributing share: a command run on a library, and a library on which an addition collides.

No conftest.py: a second one of that name would hide the first from the tests that import it.
"""

from __future__ import annotations

from pathlib import Path

from click.testing import CliRunner, Result

from keytool.cli.impact import impact_command
from keytool.cli.new import new_command
from keytool.cli.photo import photo_command

COMMANDS = {"new": new_command, "impact": impact_command, "photo": photo_command}


def run(root: Path, *words: str, typed: str = "") -> Result:
    """What a command says and how it ends: run(root, "new", "entry", "--yes")."""
    return CliRunner().invoke(COMMANDS[words[0]], list(words[1:]), obj=root, input=typed)


def part(mini: Path) -> Path:
    """The mini library, changed so that light parts a shiny button from the shirt button, which is dull."""
    _replace(mini / "keydata/characters/light.yaml", "magnification: 400", "magnification: 40")
    _replace(mini / "keydata/entries/debris/sewing-thing.yaml", "light: {any: true,", "light: {states: [dull],")
    return mini


def _replace(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new), "utf-8")
