"""`wetmount photo`: take photographs into the library."""

from __future__ import annotations

import math
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import click


@click.group("photo", short_help="Take photographs into the library.")
def photo_command() -> None:
    """Take photographs into the library, each with its author, its licence and its scale.

    The original stays with you; the library keeps two smaller pictures without any hidden data, with a scale bar burnt in.
    """


@photo_command.command("add", short_help="Take in one photograph.")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--entry", required=True, help="The entry it shows.")
@click.option("--author", required=True, help="Who took it, by the name to be shown beside it.")
@click.option("--licence", required=True, help="The licence its author gives it under, such as cc-by-4.0.")
@click.option("--shows", required=True, help="What is seen, in a sentence; it is read out to those who cannot see it.")
@click.option("--id", help="Its id. Default: the entry and the next free number, such as plectus-1.")
@click.option("--um-per-pixel", type=float, help="Micrometres to one pixel, where you know them.")
@click.option(
    "--micrometer",
    type=click.Path(path_type=Path, dir_okay=False),
    help="A picture of a stage micrometer, taken with the same objective and camera, to measure the scale from.",
)
@click.option("--division-um", type=float, default=10, show_default=True, help="How far apart the lines of the micrometer are, in µm.")
@click.option("--divisions", type=int, help="How many divisions you count across that picture; guards against misreading it.")
@click.option("--replace", is_flag=True, help="Write over a photograph of that id.")
@click.pass_obj
def add_command(named: Path | None, /, file: Path, entry: str, licence: str, id: str | None, replace: bool, **given: Any) -> None:
    """Take in the photograph in FILE (JPEG, PNG, TIFF or WebP).

    It is turned the right way up; where and with what it was taken is stripped.
    """
    from keytool.bench.stage_lines import NoScale
    from keytool.cli.new_talk import to_write
    from keytool.cli.opening import opened, pick
    from keytool.cli.terminal import Terminal
    from keytool.contribute.adding import PREVIEW
    from keytool.contribute.dry_run import write
    from keytool.contribute.parse_answer import NotUnderstood
    from keytool.contribute.photo.picture import NoPicture, picture
    from keytool.contribute.photo.record import FOLDER, Given, taken
    from keytool.contribute.talk import legible, one_of

    root = to_write(named)
    _refuse_unfinished(file, given)
    loaded = opened(named)
    pick(entry, list(loaded.library.entries), "entry")
    try:
        licence = one_of({id: word.label for id, word in loaded.library.vocabulary["licence"].items()})(licence)
        given |= {each: legible(given[each]) for each in ("author", "shows")}
    except NotUnderstood as error:
        raise click.UsageError(str(error)) from None
    folder = root / FOLDER / entry
    name = id or next(f"{entry}-{n}" for n in range(1, 10_000) if not (folder / f"{entry}-{n}.yaml").exists())
    if (folder / f"{name}.yaml").exists() and not replace:
        raise click.UsageError(f"{FOLDER}/{entry}/{name}.yaml stands already. Choose another --id, or say --replace.")
    try:
        scale, basis = _scale(loaded.library, **{each: given[each] for each in ("um_per_pixel", "micrometer", "division_um", "divisions")})
        shown = picture(file)
        _refuse_unlike(loaded.library, entry, max(shown.image.size), scale)
        done = taken(loaded, shown, Given(name, entry, given["author"], licence, given["shows"], scale, basis))
        _refuse_unsound(loaded, done.record)
        write(root, done.files)
    except (NoPicture, NoScale) as error:
        raise click.ClickException(str(error)) from None
    except OSError as error:
        raise click.ClickException(f"'{error.filename}' cannot be written: {error.strerror}.") from None
    terminal = Terminal()
    terminal.say(f"Written: {', '.join(done.files)}.")
    terminal.say(f"Scale: {scale:.4g} µm to a pixel of the original; bars of {done.record['page']['bar']:g} µm.")
    terminal.say("The original is not copied. Keep it: the record knows it by its SHA-256.")
    terminal.say(f"See it: 'wetmount serve', then {PREVIEW}entries/{entry}.html")


def _refuse_unfinished(file: Path, given: Mapping[str, Any]) -> None:
    """Ends the command for what can be seen before the library is read: no scale, or no such file."""
    if (given["um_per_pixel"] is None) is (given["micrometer"] is None):
        raise click.UsageError("Say either --um-per-pixel or --micrometer, so that the scale bar can be drawn.")
    if not 0 < given["division_um"] < math.inf:
        raise click.UsageError(f"--division-um: {given['division_um']:g} cannot be. Stage micrometers are mostly ruled every 10 µm.")
    for each in (file, given["micrometer"]):
        if each is not None and not each.is_file():
            raise click.ClickException(f"There is no file '{each}'. Nothing was written.")


def _refuse_unlike(library: Any, entry: str, pixels: int, um_per_pixel: float) -> None:
    """Ends the command where what the picture is of would be far smaller or larger on it than a photograph shows anything."""
    from keytool.contribute.photo.record import own_length, unlike

    shown = library.entries[entry]
    if said := unlike(library, shown.name, own_length(library, shown), pixels, um_per_pixel):
        raise click.UsageError(f"{said} Nothing was written.")


def _scale(
    library: Any, um_per_pixel: float | None, micrometer: Path | None, division_um: float, divisions: int | None
) -> tuple[float, dict[str, Any]]:
    """Micrometres to a pixel, and what that rests on."""
    from keytool.bench.stage_lines import scale_of_lines
    from keytool.contribute.photo.picture import picture

    if micrometer is None:
        assert um_per_pixel is not None
        return _believable(library, um_per_pixel), {"kind": "memory", "note": "as stated by the author"}
    found = scale_of_lines(picture(micrometer).image, division_um, divisions)
    how = f"{division_um:g} µm / {found.spacing_px:.2f} pixels from line to line of a stage micrometer, by autocorrelation"
    return _believable(library, found.um_per_pixel), {"kind": "computed", "how": how}


def _believable(library: Any, um_per_pixel: float) -> float:
    """The scale, if a microscope can have it; ends the command where none can."""
    from keytool.contribute.photo.record import unbelievable

    scale = library.quantities["photo-pixel"]
    if not scale.low <= um_per_pixel <= scale.high:
        raise click.UsageError(unbelievable(library, f"{um_per_pixel:g}"))
    return um_per_pixel


def _refuse_unsound(loaded: Any, record: Any) -> None:
    """Ends the command where the record would not pass the checks, such as an author's name with angle brackets."""
    from keytool.library.yaml_file import YamlFile

    found = loaded.schemas.findings("photo", YamlFile("the photograph", dict(record)))
    if found:
        said = (found[0].message, f"Allowed: {found[0].allowed}." if found[0].allowed else "", found[0].tip)
        raise click.ClickException(f"{' '.join(each for each in said if each)} Nothing was written.")
