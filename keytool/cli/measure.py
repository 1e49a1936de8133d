"""`wetmount measure`: the sums of the bench, one at a time, each with what it rests on."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from pathlib import Path
from typing import Any

import click


class _Above(click.FloatRange):
    """A number above 0 that a bench can have: neither endless nor next to nothing."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        """The number, or a message that says what is allowed."""
        number = super().convert(value, param, ctx)
        if not 1e-9 <= number <= 1e12:
            self.fail(f"{value} cannot be. Allowed: a plain number above 0, such as 18 or 0.05.", param, ctx)
        return number


Above = _Above(min=0, min_open=True)


class Sums(click.Group):
    """All sums; those of other modules are read when the group is used."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """The names, in order."""
        from keytool.cli import measure_life, measure_photo  # noqa: F401

        return list(self.commands)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The sum of that name."""
        self.list_commands(ctx)
        return super().get_command(ctx, cmd_name)


@click.group("measure", cls=Sums, short_help="The sums of the bench: field, scale, depth, dilution, how many fields, biomass.")
def measure_command() -> None:
    """The sums of the bench, one at a time. Each says its formula; add --json for a program."""


def sum_command(name: str, short: str) -> Callable[[Callable[..., Any]], click.Command]:
    """A command that prints the lines, or the numbers as JSON, of the sum it stands on."""

    def made(work: Callable[..., Any]) -> click.Command:
        @click.option("--json", "as_json", is_flag=True, help="Print the numbers as JSON.")
        @click.pass_obj
        def run(named: Path | None, /, as_json: bool, **given: Any) -> None:
            from keytool.cli.terminal import Terminal

            numbers, lines = work(named, **given)
            if as_json:
                click.echo(json.dumps(numbers, ensure_ascii=False, indent=1))
                return
            terminal = Terminal()
            for each in lines:
                terminal.say(each)

        run.__doc__ = work.__doc__
        run.__click_params__ = [*getattr(run, "__click_params__", []), *getattr(work, "__click_params__", [])]  # type: ignore[attr-defined]
        return measure_command.command(name, short_help=short)(run)

    return made


def constants_of(named: Path | None) -> Any:
    """The constants of the library, by id."""
    from keytool.cli.opening import library

    return library(named).bench.constants


def quantities_of(named: Path | None) -> Any:
    """The bench quantities of the library, by id."""
    from keytool.cli.opening import library

    return library(named).quantities


def shown(value: float, digits: int = 3) -> str:
    """A number as it is shown, to so many figures."""
    from keytool.bench.wording import figures

    return figures(value, digits)


@sum_command("field", "Width and area of the round field.")
@click.option("--field-number", type=Above, required=True, help="Engraved on the eyepiece, in mm.")
@click.option("--objective", type=Above, required=True, help="Power engraved on the objective.")
@click.option("--tube-factor", type=Above, default=1.0, show_default=True, help="Of a stand marked 1.25x, for example.")
def field(named: Path | None, field_number: float, objective: float, tube_factor: float) -> Any:
    """Width and area of the round field: field number over objective."""
    from keytool.bench import optics

    width = optics.field_diameter_mm(field_number, objective, tube_factor)
    area = optics.field_area_mm2(width)
    said = f"{shown(width * 1000)} µm" if width < 1 else f"{shown(width)} mm"
    return {"width-mm": width, "area-mm2": area}, (
        f"The field is {said} across, {shown(area)} mm².",
        "Field number over objective. Engraved powers are good to a few per cent; a stage micrometer is better.",
    )


@sum_command("scale", "What one eyepiece division is worth.")
@click.option("--stage-parts", type=Above, required=True, help="Parts of the stage micrometer between two lines that fall together.")
@click.option("--divisions", type=Above, required=True, help="Eyepiece divisions between the same lines.")
@click.option("--um-per-part", type=Above, default=10.0, show_default=True, help="One part of the stage micrometer.")
@click.option("--read", type=Above, help="Divisions read on a thing, to be turned into µm.")
def scale(named: Path | None, stage_parts: float, divisions: float, um_per_part: float, read: float | None) -> Any:
    """What one eyepiece division is worth, and how well a length is known."""
    from keytool.bench import optics

    found = optics.scale_from_stage(stage_parts, um_per_part, divisions)
    lines = [
        f"One division is {shown(found.um_per_part, 4)} µm, to {shown(100 * found.relative_error, 2)} % (read to the nearest division)."
    ]
    numbers = {"um-per-division": found.um_per_part, "relative-error": found.relative_error}
    if read:
        error = found.length_error_um(read, optics.WHOLE_DIVISION_SD)
        numbers |= {"length-um": found.length_um(read), "error-um": error}
        lines.append(f"{shown(read)} divisions are {shown(found.length_um(read))} µm ± {shown(error, 2)} µm.")
    return numbers, lines


@sum_command("depth", "How fine and how deep an objective sees.")
@click.option("--aperture", type=click.FloatRange(0.01, 1.6), required=True, help="NA, engraved behind the power.")
@click.option("--objective", type=Above, required=True, help="Power engraved on the objective.")
@click.option("--eyepiece", type=Above, default=10.0, show_default=True, help="Power of the eyepiece.")
@click.option("--condenser", type=click.FloatRange(0.01, 1.6), help="Aperture the condenser is closed to.")
def depth(named: Path | None, aperture: float, objective: float, eyepiece: float, condenser: float | None) -> Any:
    """How fine an objective sees, how deep, and which magnification is useful."""
    from keytool.bench import optics

    wave = quantities_of(named)["wavelength"].low / 1000
    water = constants_of(named)["water-index"].value
    fine, deep = optics.resolution_um(wave, aperture, condenser), optics.depth_of_field_um(wave, aperture, objective * eyepiece, water)
    low, high = optics.useful_magnification(aperture)
    return {"resolution-um": fine, "depth-um": deep, "useful-magnification": [low, high], "wavelength-um": wave}, (
        f"Two points nearer than {shown(fine, 2)} µm are seen as one (0.61 λ / NA at {shown(wave, 2)} µm).",
        f"In water about {shown(deep, 2)} µm are sharp at once (Berek; authors differ by a factor of two). Focus through the film.",
        f"Useful from {shown(low)} to {shown(high)} times in total; yours is {shown(objective * eyepiece)}.",
    )


@sum_command("dilution", "Dilution, drop, film, and the water under one field.")
@click.option("--soil", type=Above, required=True, help="Soil taken, in g or mL.")
@click.option("--total-ml", type=Above, required=True, help="What it was made up to, soil and water together.")
@click.option("--drop-ml", type=Above, default=0.05, show_default=True, help="One drop.")
@click.option("--slip-mm", type=(Above, Above), default=(22.0, 22.0), show_default=True, help="The two sides of the coverslip.")
@click.option("--field-number", type=Above, default=18.0, show_default=True, help="Engraved on the eyepiece, in mm.")
@click.option("--objective", type=Above, default=40.0, show_default=True, help="Power engraved on the objective.")
def dilution(
    named: Path | None, soil: float, total_ml: float, drop_ml: float, slip_mm: tuple[float, float], field_number: float, objective: float
) -> Any:
    """What one thing in a field stands for: dilution factor, film, volume under a field."""
    from keytool.bench import optics, sample

    if total_ml < soil:
        raise click.UsageError(f"--total-ml {total_ml:g} is less than the soil in it. Give soil and water together, as read on the tube.")
    factor = sample.dilution_factor(soil, total_ml)
    area = slip_mm[0] * slip_mm[1]
    film = sample.film_depth_mm(drop_ml, area)
    one = optics.field_area_mm2(optics.field_diameter_mm(field_number, objective))
    volume, fields = sample.field_volume_ml(one, film), sample.fields_per_slip(area, one)
    numbers = {
        "factor": factor,
        "film-mm": film,
        "field-ml": volume,
        "fields-per-slip": fields,
        "one-in-a-field": factor / volume,
        "one-in-a-drop": factor / drop_ml,
    }
    return numbers, (
        f"Dilution factor {shown(factor)} (total over soil). "
        f"The film is {shown(film * 1000)} µm deep, if the drop just fills the coverslip.",
        f"One field holds {volume:.2e} mL; the coverslip is worth {shown(fields)} fields.",
        f"One thing in a field stands for {shown(factor / volume, 2)} in 1 g or mL of soil, "
        f"one in a whole drop for {shown(factor / drop_ml, 2)}.",
    )


@sum_command("fields", "How many fields for a given precision.")
@click.option("--mean", type=Above, required=True, help="Things in a field, on average.")
@click.option(
    "--precision", type=click.FloatRange(0.01, 2), default=0.3, show_default=True, help="Half the interval, as a part of the mean."
)
@click.option("--k", type=Above, help="Of the negative binomial, where things sit in clumps; about 1 for animals.")
def fields(named: Path | None, mean: float, precision: float, k: float | None) -> Any:
    """How many fields, and how many things in all, for a given precision."""
    from keytool.bench import counts, special

    z = special.normal_quantile(0.975)
    need = counts.fields_needed(mean, precision, z, k or math.inf)
    return {"fields": need, "total": need * mean}, (
        f"{math.ceil(need)} fields, {shown(need * mean, 2)} things, for ± {shown(100 * precision, 2)} % (95 in 100).",
        "z² (1/m + 1/k) / E². Choose the number before you look, and count empty fields too.",
    )


@sum_command("missed", "What none seen leaves open.")
@click.option("--searched-mg", type=Above, required=True, help="Soil searched, in mg: drops times drop volume over dilution.")
@click.option("--per-g", type=Above, help="Density to be sure not to miss.")
def missed(named: Path | None, searched_mg: float, per_g: float | None) -> Any:
    """What none seen leaves open, and the chance to miss what is there."""
    from keytool.bench import counts

    most = counts.most_when_none_seen(0.95) / (searched_mg / 1000)
    lines = [
        f"None seen in {shown(searched_mg)} mg still allows {shown(most, 2)} a gram (three over what was searched; more if they clump)."
    ]
    numbers = {"most-per-g": most}
    if per_g:
        expected = per_g * searched_mg / 1000
        numbers |= {
            "expected": expected,
            "chance-of-none": counts.chance_of_none(expected),
            "mg-to-meet-one": 1000 * counts.effort_to_meet(per_g, 0.95),
        }
        missing = shown(100 * numbers["chance-of-none"], 2)
        lines.append(f"At {shown(per_g)} a gram {shown(expected, 2)} are expected, and none is met {missing} times in 100.")
        lines.append(f"To meet one 95 times in 100, search {shown(numbers['mg-to-meet-one'], 2)} mg.")
    return numbers, lines


@sum_command("compare", "Two counts: same or not?")
@click.option("--first", type=(click.IntRange(0), Above), required=True, help="Count and number of fields (or drops, or mL).")
@click.option("--second", type=(click.IntRange(0), Above), required=True, help="The same of the second.")
def compare(named: Path | None, first: tuple[int, float], second: tuple[int, float]) -> Any:
    """Two counts: how the second stands to the first, if things lie at random."""
    from keytool.bench import counts
    from keytool.bench.wording import ratio_words

    if first[0] + second[0] == 0:
        raise click.UsageError("Both counts are 0, so there is nothing to compare. Search more.")
    ratio = counts.rate_ratio(second[0], second[1], first[0], first[1], 0.95)
    p, exact = counts.e_test_p(second[0], second[1], first[0], first[1]), counts.conditional_p(second[0], second[1], first[0], first[1])
    finite = {
        name: value if math.isfinite(value) else None for name, value in (("ratio", ratio.value), ("low", ratio.low), ("high", ratio.high))
    }
    return {**finite, "e-test-p": p, "exact-p": exact}, (
        f"{ratio_words(ratio)}.".capitalize(),
        f"Chance of so much difference between equals: {shown(p, 2)} (E-test), {shown(exact, 2)} (exact, given the sum).",
        "Two drops of one jar tell only how drops scatter. Clumped things differ more: count field by field with 'wetmount count'.",
    )


@sum_command("mpn", "Most probable number from tubes with and without.")
@click.option(
    "--level",
    "levels",
    type=(click.IntRange(1), click.IntRange(0), Above),
    multiple=True,
    required=True,
    help="Tubes, positive ones, g or mL in each. Once for each dilution.",
)
def mpn(named: Path | None, levels: tuple[tuple[int, int, float], ...]) -> Any:
    """Most probable number: from tubes in which anything was found, and those in which nothing was."""
    from keytool.bench import mpn as sums
    from keytool.bench import special

    for tubes, positive, _ in levels:
        if positive > tubes:
            raise click.UsageError(f"--level {tubes} {positive}: more positive than tubes. Allowed: 0 to {tubes}.")
    found = sums.most_probable_number([sums.Level(*each) for each in levels], special.normal_quantile(0.975))
    numbers = {
        name: value if math.isfinite(value) else None
        for name, value in (("mpn", found.value), ("low", found.low), ("high", found.high), ("rarity", found.rarity))
    }
    if not found.value:
        return numbers, (f"None positive: fewer than {shown(found.high, 2)} in a g or mL.",)
    if math.isinf(found.value):
        return numbers, (f"All positive: more than {shown(found.low, 2)} in a g or mL. Dilute further.",)
    odd = " The pattern is unlikely; look for a mistake." if found.rarity < 0.05 else ""
    return numbers, (f"{shown(found.value, 2)} in a g or mL, between {shown(found.low, 2)} and {shown(found.high, 2)} (95 in 100).{odd}",)


@sum_command("chamber", "A counting chamber: things in a millilitre.")
@click.option("--chamber", required=True, help="Which one; a wrong name lists them.")
@click.option("--square", required=True, help="Which of its squares was counted; a wrong name lists them.")
@click.option("--count", type=click.IntRange(0), required=True, help="Things counted.")
@click.option("--squares", type=click.IntRange(1), required=True, help="Squares counted.")
@click.option("--factor", type=Above, default=1.0, show_default=True, help="Dilution factor.")
def chamber(named: Path | None, chamber: str, square: str, count: int, squares: int, factor: float) -> Any:
    """A counting chamber: things in a millilitre, with the interval of the count."""
    from keytool.bench import chambers, counts
    from keytool.cli.opening import library, pick

    known = library(named).bench.chambers
    which = known[pick(chamber, list(known), "chamber")]
    side = which.squares_mm[pick(square, list(which.squares_mm), "square")]
    volume = chambers.square_ml(side, which.depth_mm)
    limits = counts.poisson_limits(count, 0.95).times(factor / (squares * volume))
    found = f"{shown(limits.value)} in a mL, between {shown(limits.low, 2)} and {shown(limits.high, 2)}"
    if not count:
        found = f"None seen: under {shown(limits.high, 2)} in a mL"
    return {"square-ml": volume, "per-ml": limits.value, "low": limits.low, "high": limits.high}, (
        f"{found}. One square holds {volume:.2e} mL.",
        "Count what touches two of the four sides, not the other two.",
    )
