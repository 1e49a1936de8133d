"""Try a change on a copy of the library: what would be wrong, and what would it do. The library itself is not touched."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from keytool.identify import prove
from keytool.identify.findings import findings as proof_findings
from keytool.library import Finding, Loaded, Severity, load
from keytool.library.checks import run
from keytool.library.save import save

Changes = Mapping[str, str]
"""Files to write, by name from the root of the library (`keydata/entries/debris/x.yaml`), and their whole text."""


@dataclass(frozen=True)
class Tried:
    """The library as it would be, what would be wrong with its files, and which proofs would fail."""

    loaded: Loaded
    problems: tuple[Finding, ...]
    failed_proofs: tuple[Finding, ...]
    advice: tuple[Finding, ...]


def tried(root: Path, changes: Changes) -> Tried:
    """What the changes would do to the library under `root`. Proofs are walked only where the files are right."""
    with _copy(root) as copy:
        for name, text in changes.items():
            (copy / name).parent.mkdir(parents=True, exist_ok=True)
            (copy / name).write_text(text, "utf-8")
        return examined(load(copy))


def examined(loaded: Loaded) -> Tried:
    """Everything that is to be said of a library: problems, failed proofs, advice."""
    found = [*loaded.findings, *run(loaded)]
    problems = tuple(each for each in found if each.severity is Severity.PROBLEM)
    proofs = (
        ()
        if problems
        else tuple(each for key in loaded.library.keys.values() for each in proof_findings(loaded, prove(loaded.library, key)))
    )
    return Tried(loaded, problems, proofs, tuple(each for each in found if each.severity is Severity.ADVICE))


def write(root: Path, changes: Mapping[str, str | bytes]) -> None:
    """Write the changes into the library under `root`: all of them, or none.

    Every file is first written beside its place; only when all are there do they take their places.

    Raises:
        OSError: a folder cannot be made or written.
    """
    beside: list[tuple[Path, Path]] = []
    try:
        for name, content in changes.items():
            target = root / name
            target.parent.mkdir(parents=True, exist_ok=True)
            beside.append((target.with_name(f".{target.name}.new"), target))
            save(beside[-1][0], content.encode() if isinstance(content, str) else content)
        for new, target in beside:
            new.replace(target)
    finally:
        for new, _ in beside:
            new.unlink(missing_ok=True)


@contextmanager
def _copy(root: Path) -> Iterator[Path]:
    with tempfile.TemporaryDirectory(prefix="wetmount-") as folder:
        shutil.copytree(root / "keydata", Path(folder) / "keydata")
        yield Path(folder)
