"""`wetmount card`: a bench card to print and laminate."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from keytool.library import Library


@click.command("card", short_help="Make a bench card to print and laminate.")
@click.option("--key", "keys", multiple=True, metavar="KEY", help="A key to print; more than one may be given.")
@click.option(
    "--look-alike",
    "look_alikes",
    multiple=True,
    metavar="SET",
    help="A look-alike set to print: the test to do first, the drawings, a table.",
)
@click.option(
    "--entry",
    "entries",
    multiple=True,
    metavar="ENTRY",
    help="An entry to print, with its photograph if there is one; several are compared in one table.",
)
@click.option("--short", is_flag=True, help="What is met nine times in ten, on one sheet: the field at 40x and at 400x; sheet or pocket.")
@click.option(
    "--poster", type=click.Choice(["40", "400"]), help="A poster for the wall instead: everything met at that power at one scale; A3 or A2."
)
@click.option("--paper", default="A4", show_default=True, help="Paper size.")
@click.option(
    "--form",
    default="sheet",
    show_default=True,
    metavar="FORM",
    help="sheet, the whole sheet; halves or quarters, cards to cut from it; pocket, eight panels to fold; booklet, to fold and staple.",
)
@click.option(
    "--ink",
    default="normal",
    show_default=True,
    metavar="INK",
    help="light, for little ink; normal; strong, for high contrast without colour or grey words.",
)
@click.option(
    "--dense",
    is_flag=True,
    help="As few sides as can be, with small type and drawings; where that saves no side, it says so and keeps the larger type.",
)
@click.option("--flip", metavar="EDGE", help="The edge of the sheet you turn it over: long or short. Default: like a page.")
@click.option(
    "--landscape/--portrait", "landscape", default=None, help="Which way the sheet is turned. Default: the way that reads better."
)
@click.option(
    "--field",
    "fields",
    multiple=True,
    metavar="OBJECTIVE=MM",
    help="Your own field diameter, such as 40=0.45 for the 40x objective; printed on the card.",
)
@click.option(
    "--division",
    "divisions",
    multiple=True,
    metavar="OBJECTIVE=UM",
    help="What one division of your eyepiece scale measures in µm, such as 40=2.5 for the 40x objective; printed on the card.",
)
@click.option("--address", default="", help="Web address of your copy of the site, printed with a QR code.")
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path, dir_okay=False),
    default=Path("card.pdf"),
    show_default=True,
    help="The file to write. An older one is replaced only when the new one is whole.",
)
@click.pass_obj
def card_command(
    named: Path | None,
    keys: tuple[str, ...],
    look_alikes: tuple[str, ...],
    entries: tuple[str, ...],
    short: bool,
    poster: str | None,
    paper: str,
    form: str,
    ink: str,
    dense: bool,
    flip: str | None,
    landscape: bool | None,
    fields: tuple[str, ...],
    divisions: tuple[str, ...],
    address: str,
    output: Path,
) -> None:
    """Make a bench card of keys, look-alike sets or entries as a vector PDF in exact millimetres.

    Print it at 100 % ("actual size") and check the 50 mm bar with a ruler.
    """
    from keytool.card import FORMS, INKS, PAPERS, CardError, card_photos, laid_out, short_card
    from keytool.card.impose import STAPLE_WORDS
    from keytool.cli.opening import library, pick, where
    from keytool.cli.terminal import Terminal
    from keytool.library.save import save

    if short and (keys or look_alikes or entries or dense or flip or landscape is not None):
        raise click.UsageError("--short is a card of its own: it goes with --paper, --form, --ink, --field, --division and --address.")
    everything = library(named)
    if poster:
        _poster(everything, int(poster), paper, output)
        return
    size = pick(next((each for each in PAPERS if each.casefold() == paper.strip().casefold()), paper), list(PAPERS), "paper")
    own: dict[str, Any] = {
        "form": pick(form, list(FORMS), "form"),
        "ink": pick(ink, list(INKS), "ink"),
        "field_diameters": _by_objective(fields, "field diameter", "millimetres, such as 40=0.45"),
        "divisions": _by_objective(divisions, "scale division", "micrometres, such as 40=2.5"),
        "site_address": address,
    }
    shown = _picked(entries, everything.entries, "entry")
    try:
        if short:
            made = short_card(everything, size, **own)
        else:
            made = laid_out(
                everything,
                _picked(keys, everything.keys, "key"),
                size,
                look_alikes=_picked(look_alikes, everything.look_alikes, "look-alike set"),
                entries=shown,
                photos=card_photos(everything, where(named), shown),
                dense=dense,
                flip=flip and pick(flip, ["long", "short"], "edge"),
                landscape=landscape,
                **own,
            )
        data = made.pdf()
    except CardError as error:
        raise click.ClickException(str(error)) from None
    try:
        save(output, data)
    except OSError as error:
        raise click.ClickException(f"'{output}' cannot be written: {error.strerror}.") from None
    sides = len(made.sides)
    printed = f"{sides} side{'s' if sides > 1 else ''} of {size}"
    terminal = Terminal()
    terminal.say(f"{output}: {printed}, {len(data)} bytes. Print at 100 % and check the 50 mm bar with a ruler.")
    for more in (made.remark, STAPLE_WORDS if own["form"] == "booklet" else ""):
        if more:
            terminal.say(more)


def _poster(library: Library, power: int, paper: str, output: Path) -> None:
    from keytool.card.poster import POSTERS, poster
    from keytool.cli.opening import pick
    from keytool.cli.terminal import Terminal
    from keytool.library.save import save

    name = pick("A3" if paper == "A4" else paper.strip().upper(), list(POSTERS), "paper of a poster")
    made = poster(library, POSTERS[name], power)
    try:
        save(output, made.data)
    except OSError as error:
        raise click.ClickException(f"'{output}' cannot be written: {error.strerror}.") from None
    Terminal().say(f"{output}: {len(made.shown)} things on {name}, 1 mm is {made.um_per_mm:g} µm, {len(made.data)} bytes. Print at 100 %.")


def _picked(wanted: Iterable[str], known: Iterable[str], what: str) -> list[str]:
    from keytool.cli.opening import pick

    return [pick(each, list(known), what) for each in wanted]


def _by_objective(given: tuple[str, ...], what: str, how: str) -> dict[int, float]:
    """The power of an objective to what was given for it."""
    result = {}
    for each in given:
        objective, _, value = each.partition("=")
        try:
            power, length = int(objective.strip().rstrip("x×")[:4]), float(value.replace(",", "."))
        except ValueError:
            power, length = 0, 0.0
        if power <= 0 or not 0 < length < 1e5:
            raise click.UsageError(f"'{each[:40]}' is not a {what}. Write the objective, '=', and {how}.")
        result[power] = length
    return result
