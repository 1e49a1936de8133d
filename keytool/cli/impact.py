"""`wetmount impact`: what a change of the library does to identification."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from keytool.contribute.impact import Fits
    from keytool.library import Library
    from keytool.library.model import Key


@click.command("impact", short_help="What a change of the library does to identification.")
@click.option(
    "--base",
    default="HEAD",
    show_default=True,
    metavar="REVISION or FOLDER",
    help="What to compare with: a revision of git, or a folder that holds an older keydata/.",
)
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="How to report: Markdown to read, or JSON.")
@click.option("--cards/--no-cards", default=True, help="Whether to try if the A4 card of each key still fits.")
@click.pass_obj
def impact_command(named: Path | None, base: str, form: str, cards: bool) -> None:
    """Say what your change does: entries that now end elsewhere, pairs no longer told apart, questions gained or lost.

    The work tree is not touched. The text is Markdown, made to be pasted into a review.
    """
    from keytool.cli.opening import library, where
    from keytool.cli.terminal import Terminal
    from keytool.contribute.impact import impact
    from keytool.contribute.impact_told import as_json, as_markdown
    from keytool.contribute.revision import NoSuchBase
    from keytool.contribute.revision import base as base_of

    after = library(named)
    try:
        with base_of(where(named), base) as folder:
            before = _older(folder, base)
    except NoSuchBase as error:
        raise click.ClickException(str(error)) from None
    found = impact(before, after, _fits() if cards else None, _progress)
    if sys.stderr.isatty():
        click.echo("\r\x1b[K", nl=False, err=True)
    Terminal().raw(as_json(found) if form == "json" else as_markdown(before, after, found, base).rstrip("\n"))


def _progress(what: str) -> None:
    """Says on a screen what is looked at, on one line that is written over."""
    if sys.stderr.isatty():
        click.echo(f"\r\x1b[K{what} ...", nl=False, err=True)


def _older(folder: Path, base: str) -> Library:
    from keytool.library import Library, load
    from keytool.library.checks import run
    from keytool.library.disk_cache import LIBRARY_CODE, key_of, recall, remember

    key = key_of([folder / "keydata", LIBRARY_CODE])
    known = recall("library", key)
    if isinstance(known, Library):
        return known
    loaded = load(folder)
    problems = [each for each in (*loaded.findings, *run(loaded)) if each.severity.value == "problem"]
    if problems:
        raise click.ClickException(
            f"The library of '{base}' has problems, so there is nothing to compare with; the first is at "
            f"{problems[0].place}: {problems[0].message}"
        )
    remember("library", key, loaded.library)
    return loaded.library


def _fits() -> Fits:
    """Why the A4 card of a key does not fit, if it does not."""
    from keytool.card import CardError, check_fit

    def fits(library: Library, key: Key) -> str:
        try:
            check_fit(library, [key.id], "A4")
        except CardError as error:
            return str(error)
        return ""

    return fits
