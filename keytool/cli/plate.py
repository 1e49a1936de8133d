"""`wetmount plate`: every drawing on one PDF, for review."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click


@click.command("plate", short_help="Put every drawing on one PDF, for review.")
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path, dir_okay=False),
    default=Path("plate.pdf"),
    show_default=True,
    help="The file to write. An older one is replaced only when the new one is whole.",
)
@click.option(
    "--kinds/--no-kinds", "with_kinds", default=True, show_default=True, help="Also show each kind of drawing with each of its choices."
)
@click.pass_obj
def plate_command(named: Path | None, output: Path, with_kinds: bool) -> None:
    """Put every drawing of the library on one PDF: each entry, each state of a character, each kind of drawing with each choice.

    Each has its name and its own scale bar. Print it, mark what is wrong, and say so in an issue.
    """
    from keytool.card.typeface import FILES
    from keytool.cli.opening import library
    from keytool.cli.terminal import Terminal
    from keytool.figures.contact_sheet import contact_sheet
    from keytool.figures.sheet import of_kinds, of_library
    from keytool.library.save import save

    everything = library(named)
    items = [*of_library(everything), *(of_kinds(everything.drawings) if with_kinds else ())]
    newest = max((each.reviewed for each in everything.entries.values()), default="2026-01-01")
    data = contact_sheet(items, FILES[False], title="Every drawing, for review", day=date.fromisoformat(newest))
    try:
        save(output, data)
    except OSError as error:
        raise click.ClickException(f"'{output}' cannot be written: {error.strerror}.") from None
    drawn = sum(1 for item in items if item.drawing)
    Terminal().say(f"{output}: {drawn} drawings, {len(items) - drawn} names without one, {len(data)} bytes.")
