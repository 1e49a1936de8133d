"""`wetmount measure photo`: scale and lengths on a photograph through the eyepiece."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import click

from keytool.cli.measure import Above, constants_of, measure_command, quantities_of, shown


@measure_command.command("photo", short_help="Scale and lengths on a photograph through the eyepiece.")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--field-number", type=Above, help="Engraved on the eyepiece, in mm. Needed where there is no --micrometer.")
@click.option("--objective", type=Above, required=True, help="Power engraved on the objective.")
@click.option(
    "--micrometer",
    type=click.Path(path_type=Path, dir_okay=False),
    help="A picture of a stage micrometer, taken with the same objective, phone and zoom: then its lines are the scale.",
)
@click.option("--division", default="10 µm", show_default=True, help="From line to line of the stage micrometer.")
@click.option(
    "--line",
    "two_lines",
    type=(float, float),
    multiple=True,
    help="A point on a line of the micrometer, x y in pixels; two of them, with --divisions, where the lines are not found.",
)
@click.option("--divisions", type=click.IntRange(1), help="How many divisions lie between those two lines.")
@click.option(
    "--edge",
    type=(float, float),
    multiple=True,
    help="A point on the round edge, x y in pixels; three of them where the edge is not found.",
)
@click.option(
    "--point", "points", type=(float, float), multiple=True, help="A point of a line to measure, x y in pixels; two or more make a length."
)
@click.option("--scaled", type=click.Path(path_type=Path, dir_okay=False), help="Write the picture with a scale bar burnt in, as PNG.")
@click.option("--json", "as_json", is_flag=True, help="Print the numbers as JSON.")
@click.pass_obj
def photo(
    named: Path | None,
    file: Path,
    field_number: float | None,
    objective: float,
    micrometer: Path | None,
    division: str,
    two_lines: tuple[tuple[float, float], ...],
    divisions: int | None,
    edge: tuple[tuple[float, float], ...],
    points: tuple[tuple[float, float], ...],
    scaled: Path | None,
    as_json: bool,
) -> None:
    """The scale of FILE (JPEG, PNG, TIFF or WebP), a picture through the eyepiece, and lengths on it.

    The round edge of the field in it is the scale, or a second picture, of a stage micrometer (--micrometer).
    Where and with what it was taken is not kept in anything written.
    """
    from keytool.bench import optics
    from keytool.bench.field_edge import Circle, NoEdge, circle_through, find_edge
    from keytool.bench.photo_measures import length_um, scale_of_field
    from keytool.bench.stage_lines import NoScale
    from keytool.cli.terminal import Terminal
    from keytool.contribute.photo.picture import NoPicture, picture

    if field_number is None and micrometer is None:
        raise click.UsageError("Give --field-number, which is engraved on the eyepiece, or --micrometer with a picture of one.")
    if edge and len(edge) != 3:
        raise click.UsageError(f"--edge: {len(edge)} given. Three points on the round edge are needed, far from each other.")
    if len(points) == 1:
        raise click.UsageError("--point: one given. Two or more make a length.")
    _refuse_half_said(micrometer, two_lines, divisions)
    constants = constants_of(named)
    circle: Circle | None
    try:
        image = picture(file).image
        if micrometer:
            scale, lines = _by_lines(picture(micrometer).image, image.size, _division_um(division), two_lines, divisions)
            try:
                circle = circle_through(*edge) if edge else find_edge(image)
            except NoEdge:
                circle = None  # the scale does not need it; distortion is then taken half-way
        else:
            assert field_number is not None
            circle = circle_through(*edge) if edge else find_edge(image)
            width = optics.field_diameter_mm(field_number, objective) * 1000
            scale = scale_of_field(circle, width, constants["picture-edge-error"].value, constants["film-error"].value)
            lines = [f"The field is {shown(2 * circle.radius, 4)} pixels across and {shown(width)} µm wide."]
    except (NoPicture, NoEdge, NoScale) as error:
        raise click.ClickException(str(error)) from None
    if micrometer and circle:
        found = 2 * circle.radius * scale.um_per_part
        engraved = f"; by the field number it would be {shown(1000 * field_number / objective)} µm" if field_number else ""
        lines.append(f"By that the field is {shown(found)} µm wide{engraved}.")
    numbers: dict[str, Any] = {
        "centre-px": [circle.x, circle.y] if circle else None,
        "radius-px": circle.radius if circle else None,
        "um-per-pixel": scale.um_per_part,
        "relative-error": scale.relative_error,
    }
    lines.append(f"{shown(scale.um_per_part, 4)} µm to a pixel, to {shown(100 * scale.relative_error, 2)} %.")
    if points:
        aperture = {4: "na-four", 10: "na-ten"}.get(round(objective), "na-forty")
        quantities = quantities_of(named)
        fine = optics.resolution_um(quantities["wavelength"].low / 1000, quantities[aperture].low)
        length, off = length_um(points, scale, circle, fine * constants["picture-end-error"].value, constants["picture-distortion"].value)
        numbers |= {"length-um": length, "error-um": off}
        lines.append(f"The line is {shown(length)} µm ± {shown(off, 2)} µm long.")
    if scaled:
        import io

        from keytool.contribute.photo.bar import burnt
        from keytool.library.save import save

        held = io.BytesIO()
        burnt(image, scale.um_per_part).image.save(held, "PNG")
        try:
            save(scaled, held.getvalue())
        except OSError as problem:
            raise click.ClickException(f"'{scaled}' cannot be written: {problem.strerror}.") from None
        lines.append(
            f"Written: {scaled}. To give it to the library: wetmount photo add {scaled} --um-per-pixel {scale.um_per_part:.5g} ..."
        )
    if as_json:
        click.echo(json.dumps(numbers, indent=1))
        return
    terminal = Terminal()
    for each in lines:
        terminal.say(each)


def _refuse_half_said(micrometer: Path | None, two_lines: tuple[tuple[float, float], ...], divisions: int | None) -> None:
    """Ends the command where two lines are given by half, or without the picture they are on."""
    if (two_lines or divisions) and micrometer is None:
        raise click.UsageError("--line and --divisions are on the picture of a stage micrometer: name it with --micrometer.")
    if len(two_lines) not in (0, 2) or bool(two_lines) is not (divisions is not None):
        raise click.UsageError("Two --line X Y and --divisions go together: two lines far apart, and how many divisions lie between.")


def _by_lines(
    ruled: Any, size: tuple[int, int], division_um: float, two_lines: tuple[tuple[float, float], ...], divisions: int | None
) -> tuple[Any, list[str]]:
    """The scale by the lines of a stage micrometer, and what is said of it."""
    from keytool.bench.optics import Scale
    from keytool.bench.stage_lines import NoScale, scale_of_lines, scale_of_two_lines

    if sorted(ruled.size) != sorted(size):
        one, two = (f"{width} × {height}" for width, height in (size, ruled.size))
        raise NoScale(
            f"The photograph has {one} pixels, that of the micrometer {two}. "
            "Both must come from one phone with one zoom, neither cut nor made smaller."
        )
    if two_lines and divisions:
        found = scale_of_two_lines(two_lines[0], two_lines[1], divisions, division_um, 1.5)
        said = f"{divisions} divisions of {shown(division_um)} µm between two lines {shown(found.spacing_px * divisions, 4)} pixels apart."
    else:
        found = scale_of_lines(ruled, division_um)
        said = (
            f"Lines of the stage micrometer stand {shown(found.spacing_px, 4)} pixels apart; about {found.divisions:.0f} cross the field."
        )
    return Scale(found.um_per_pixel, found.relative_error), [said]


def _division_um(text: str) -> float:
    """From line to line in µm: "10", "10 µm", "0.01 mm"."""
    import re

    known = re.fullmatch(r"\s*([0-9]+(?:[.,][0-9]+)?)\s*(µm|μm|um|mm)?\s*", text)
    value = float(known[1].replace(",", ".")) * (1000 if known[2] == "mm" else 1) if known else 0.0
    if not 0.5 <= value <= 1000:
        raise click.UsageError(f"--division: '{text[:30]}' cannot be. Allowed: 0.5 µm to 1 mm, such as '10 µm' or '0.01 mm'.")
    return value
