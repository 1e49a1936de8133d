"""`wetmount draw`: one drawing as a picture file, for a slide, a worksheet or a poster."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from keytool.figures import Drawing
    from keytool.library import Library

WIDTH = 1200
LEAST, MOST = 100, 6000
"""Pixels: less shows nothing, more is beyond any wall."""


@click.command("draw", short_help="Save one drawing as a picture, to teach with.")
@click.argument("what", metavar="ENTRY|CHARACTER=STATE")
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path, dir_okay=False),
    required=True,
    metavar="FILE",
    help="The file to write, .svg or .png. An older one is replaced only when the new one is whole.",
)
@click.option(
    "--field",
    "power",
    metavar="POWER",
    help="low or high: the entry as it lies in the round field at that power, at true size, instead of by itself.",
)
@click.option(
    "--field-number",
    type=click.FloatRange(5, 40),
    metavar="MM",
    help="The field number on your own eyepiece, for --field. Default: that of the library's example.",
)
@click.option(
    "--eyepiece",
    "magnified",
    type=click.Choice(["400"]),
    help="Computed light instead of lines: what a 40x objective shows (needs numpy and scipy).",
)
@click.option("--focus", type=click.FloatRange(-30, 30), metavar="UM", help="For --eyepiece: µm above the middle of the thing.")
@click.option("--iris", type=click.FloatRange(0.05, 1), metavar="S", help="For --eyepiece: the condenser's aperture over the objective's.")
@click.option(
    "--width", type=click.IntRange(LEAST, MOST), default=WIDTH, show_default=True, metavar="PIXELS", help="How wide the picture is."
)
@click.pass_obj
def draw_command(
    named: Path | None,
    what: str,
    output: Path,
    power: str | None,
    field_number: float | None,
    magnified: str | None,
    focus: float | None,
    iris: float | None,
    width: int,
) -> None:
    """Save the drawing of an entry, or of one state of a character, with its scale bar.

    \b
    wetmount draw plectus -o plectus.png
    wetmount draw plectus --field low --field-number 20 -o hair.png
    wetmount draw spear-form=curved -o spear.svg
    wetmount draw euglypha --eyepiece 400 --focus 2 --iris 0.3 -o shell.png

    The drawings are CC BY 4.0: name wetmount beside them.
    """  # noqa: D301 (click takes the \b for "leave these lines as they are")
    from keytool.cli.opening import library
    from keytool.cli.terminal import Terminal
    from keytool.library.save import save

    ending = output.suffix.lower()
    if ending not in (".svg", ".png"):
        raise click.UsageError(f"'{output}' ends in '{output.suffix}'. Allowed: .svg (lines, sharp at any size), .png (dots).")
    if field_number and not power:
        raise click.UsageError("--field-number is for the round field: add --field low or --field high.")
    if (focus is not None or iris is not None) and not magnified:
        raise click.UsageError("--focus and --iris are for computed light: add --eyepiece 400.")
    if magnified and (power or ending != ".png"):
        raise click.UsageError("--eyepiece makes a .png, and goes without --field.")
    everything = library(named)
    if magnified:
        said = _computed(everything, what, output, focus, iris, width)
        Terminal().say(f"{output}: {said}. CC BY 4.0, wetmount.")
        return
    drawing = _in_field(everything, what, power, field_number) if power else _alone(everything, what)
    try:
        save(output, _written(drawing, ending, width))
    except OSError as error:
        raise click.ClickException(f"'{output}' cannot be written: {error.strerror}.") from None
    Terminal().say(f"{output}: {drawing.title}. CC BY 4.0, wetmount.")


def _alone(library: Library, what: str) -> Drawing:
    from keytool.cli.opening import pick
    from keytool.figures.library_figures import of_entry, of_state

    if "=" not in what:
        entry = library.entries[pick(what, list(library.entries), "entry called")]
        return _there(of_entry(library, entry), what)
    name, _, state = what.partition("=")
    character = library.characters[pick(name, list(library.characters), "character called")]
    return _there(of_state(library, character, pick(state, list(character.states), f"state of {name} called")), what)


def _computed(library: Library, what: str, output: Path, focus: float | None, iris: float | None, width: int) -> str:
    """Write what the microscope shows of an entry; the words that go with it."""
    from keytool.cli.eyepiece import needed
    from keytool.cli.opening import pick
    from keytool.library.save import save
    from keytool.optics.subject import subject

    entry = library.entries[pick(what, list(library.entries), "entry called")]
    one = subject(library.eyepiece.sections, library.eyepiece.materials, entry)
    if one is None:
        raise click.ClickException(
            f"'{what}' has no section for its drawing in keydata/bench/sections.yaml, so no picture can be computed."
        )
    needed()
    from keytool.optics.labelled import labelled_png
    from keytool.optics.makes import IRIS

    content, said = labelled_png(one, one.section.focus if focus is None else focus, IRIS if iris is None else iris, width)
    try:
        save(output, content)
    except OSError as error:
        raise click.ClickException(f"'{output}' cannot be written: {error.strerror}.") from None
    return said


def _in_field(library: Library, what: str, power: str, field_number: float | None) -> Drawing:
    from typing import get_args

    from keytool.cli.opening import pick
    from keytool.figures.field import Power, field_view, optics

    entry = library.entries[pick(what, list(library.entries), "entry called")]
    chosen: Power = pick(power, list(get_args(Power)), "power called")  # type: ignore[assignment]
    return _there(field_view(library, entry, optics(library, chosen, field_number)), what)


def _there(drawing: Drawing | None, what: str) -> Drawing:
    if drawing is None:
        raise click.ClickException(f"'{what}' has no drawing yet.")
    return drawing


def _written(drawing: Drawing, ending: str, width: int) -> bytes:
    from keytool.card.typeface import FILES
    from keytool.figures import to_svg
    from keytool.figures.png import to_png

    scale = width / drawing.box.width
    if ending == ".svg":
        return to_svg(drawing, scale, id_prefix="drawing", plain=True).encode()
    return to_png(drawing, scale, font=FILES[False])
