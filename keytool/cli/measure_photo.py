"""`wetmount measure photo`: scale and lengths on a photograph through the eyepiece."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import click

from keytool.cli.measure import Above, constants_of, measure_command, quantities_of, shown


@measure_command.command("photo", short_help="Scale and lengths on a photograph through the eyepiece.")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--field-number", type=Above, required=True, help="Engraved on the eyepiece, in mm.")
@click.option("--objective", type=Above, required=True, help="Power engraved on the objective.")
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
    field_number: float,
    objective: float,
    edge: tuple[tuple[float, float], ...],
    points: tuple[tuple[float, float], ...],
    scaled: Path | None,
    as_json: bool,
) -> None:
    """The scale of FILE (JPEG, PNG, TIFF or WebP), a picture through the eyepiece, from the round edge of the field in it.

    Where and with what it was taken is not kept in anything written.
    """
    from keytool.bench import optics
    from keytool.bench.field_edge import NoEdge, circle_through, find_edge
    from keytool.bench.photo_measures import length_um, scale_of_field
    from keytool.cli.terminal import Terminal
    from keytool.contribute.photo.picture import NoPicture, picture

    if edge and len(edge) != 3:
        raise click.UsageError(f"--edge: {len(edge)} given. Three points on the round edge are needed, far from each other.")
    if len(points) == 1:
        raise click.UsageError("--point: one given. Two or more make a length.")
    try:
        image = picture(file).image
        circle = circle_through(*edge) if edge else find_edge(image)
    except (NoPicture, NoEdge) as error:
        raise click.ClickException(str(error)) from None
    constants = constants_of(named)
    width = optics.field_diameter_mm(field_number, objective) * 1000
    scale = scale_of_field(circle, width, constants["picture-edge-error"].value, constants["film-error"].value)
    numbers: dict[str, Any] = {
        "centre-px": [circle.x, circle.y],
        "radius-px": circle.radius,
        "um-per-pixel": scale.um_per_part,
        "relative-error": scale.relative_error,
    }
    lines = [
        f"The field is {shown(2 * circle.radius, 4)} pixels across and {shown(width)} µm wide.",
        f"{shown(scale.um_per_part, 4)} µm to a pixel, to {shown(100 * scale.relative_error, 2)} %.",
    ]
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
