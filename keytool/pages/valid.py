"""Only a library without problems becomes a site."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.library import Finding, Loaded, Severity


class LibraryProblems(Exception):
    """Raised when the library has problems; its text is the whole report, one finding after the other."""


def require_valid(loaded: Loaded) -> Loaded:
    """What was loaded, now known to be free of problems.

    Raises:
        LibraryProblems: its files have problems, a key fails its proof, or a drawing cannot be drawn.
    """
    from keytool.library.checks import run
    from keytool.library.report import as_text

    problems = _problems([*loaded.findings, *run(loaded)]) or _problems(list(_deeper(loaded)))
    if problems:
        raise LibraryProblems(as_text(problems))
    return loaded


def _problems(findings: list[Finding]) -> list[Finding]:
    return [each for each in findings if each.severity is Severity.PROBLEM]


def _deeper(loaded: Loaded) -> Iterator[Finding]:
    """What only shows when keys are walked and figures drawn; it can be asked once the files are right."""
    from keytool.figures.findings import findings as of_drawings
    from keytool.identify import prove
    from keytool.identify.findings import findings as of_proof

    for key in loaded.library.keys.values():
        yield from of_proof(loaded, prove(loaded.library, key))
    yield from of_drawings(loaded)
