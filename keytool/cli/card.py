"""`wetmount card`: a bench card to print and laminate."""

from __future__ import annotations

from pathlib import Path

import click


@click.command("card", short_help="Make a bench card to print and laminate.")
@click.option("--key", "keys", multiple=True, required=True, metavar="KEY", help="The key to print; more than one may be given.")
@click.option("--paper", default="A4", show_default=True, help="Paper size.")
@click.option("-o", "--output", type=click.Path(path_type=Path, dir_okay=False), default=Path("card.pdf"), show_default=True,
              help="The file to write. An older one is replaced only when the new one is whole.")
@click.option("--landscape/--portrait", "landscape", default=None,
              help="Which way the paper is turned. Default: the way that reads better.")
@click.option("--field", "fields", multiple=True, metavar="OBJECTIVE=MM",
              help="Your own field diameter, such as 40=0.45 for the 40x objective; printed on the card.")
@click.option("--address", default="", help="Web address of your copy of the site, printed with a QR code.")
@click.pass_obj
def card_command(
    named: Path | None, keys: tuple[str, ...], paper: str, output: Path, landscape: bool | None, fields: tuple[str, ...], address: str
) -> None:
    """Make a bench card of one or more keys as a vector PDF in exact millimetres.

    Print it at 100 % ("actual size") and check the 50 mm bar with a ruler.
    """
    from keytool.card import CardError, card
    from keytool.card.papers import PAPERS
    from keytool.cli.opening import library, pick
    from keytool.cli.terminal import Terminal
    from keytool.library.save import save

    everything = library(named)
    wanted = [pick(each, list(everything.keys), "key") for each in keys]
    size = pick(paper, list(PAPERS), "paper")
    try:
        data = card(everything, wanted, size, field_diameters=_diameters(fields), site_address=address, landscape=landscape)
    except CardError as error:
        raise click.ClickException(str(error)) from None
    try:
        save(output, data)
    except OSError as error:
        raise click.ClickException(f"'{output}' cannot be written: {error.strerror}.") from None
    Terminal().say(f"{output}: {len(data)} bytes, {size}. Print at 100 % and check the 50 mm bar with a ruler.")


def _diameters(fields: tuple[str, ...]) -> dict[int, float]:
    """Objective to field diameter in mm."""
    result = {}
    for each in fields:
        objective, _, millimetres = each.partition("=")
        try:
            result[int(objective.removesuffix("x"))] = float(millimetres)
        except ValueError:
            tip = "Write the objective, '=', and millimetres, such as 40=0.45."
            raise click.UsageError(f"'{each}' is not a field diameter. {tip}") from None
    return result
