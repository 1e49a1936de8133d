"""Open the library for a command, or end with one clear message."""

from __future__ import annotations

from pathlib import Path

import click

from keytool.library import Library, Loaded, NoLibrary, root
from keytool.library.disk_cache import LIBRARY_CODE, key_of, recall, remember


def where(named: Path | None) -> Path:
    """The root folder of the library; ends the command when there is none."""
    try:
        return root(named)
    except NoLibrary as error:
        raise click.UsageError(str(error)) from None


def opened(named: Path | None) -> Loaded:
    """The library as loaded. Ends the command when it has problems, since nothing is to be made from those."""
    from keytool.figures.findings import findings as of_drawings
    from keytool.library import load
    from keytool.library.checks import run as run_checks

    loaded = load(where(named))
    found = [*loaded.findings, *run_checks(loaded)]
    problems = [each for each in (*found, *(of_drawings(loaded) if not found else ())) if each.severity.value == "problem"]
    if problems:
        first = problems[0]
        raise click.ClickException(
            f"The library has {len(problems)} problem{'s' if len(problems) > 1 else ''}; "
            f"the first is at {first.place}: {first.message}\nRun 'wetmount check' to see all."
        )
    return loaded


def library(named: Path | None) -> Library:
    """The library, free of problems; remembered from the last time where nothing has changed since."""
    key = key_of([where(named) / "keydata", LIBRARY_CODE])
    known = recall("library", key)
    if not isinstance(known, Library):
        known = opened(named).library
        remember("library", key, known)
    return known


def pick(word: str, allowed: list[str], what: str) -> str:
    """The id that was asked for; ends the command with what is near when there is none of that name."""
    from keytool.library.messages import did_you_mean

    if word in allowed:
        return word
    tip = did_you_mean(word, allowed) or f"There is: {', '.join(allowed[:12])}{' ...' if len(allowed) > 12 else ''}."
    raise click.UsageError(f"There is no {what} '{word}'. {tip}")
