"""`wetmount measure`: hyphae, bacteria, worms, ratios, and what sinks or jiggles."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import click

from keytool.cli.measure import Above, constants_of, shown, sum_command


@sum_command("hyphae", "Length of hyphae to carbon, with what it rests on.")
@click.option("--m-per-g", type=Above, required=True, help="Metres of hypha in a gram of soil.")
@click.option("--widths-um", type=Above, multiple=True, help="Widths measured, in µm; give several. Default: that of the library.")
def hyphae(named: Path | None, m_per_g: float, widths_um: tuple[float, ...]) -> Any:
    """Metres of hypha to micrograms of carbon, living and dead, and how far it moves with each constant."""
    from keytool.bench import hyphae as sums
    from keytool.bench.sensitivity import vary

    constants = constants_of(named)
    names = ["hypha-density", "hypha-dry-share", "carbon-share", *([] if widths_um else ["hypha-width"])]
    square = sums.mean_square(widths_um) if widths_um else None
    found = vary(
        lambda by: sums.carbon_ug(
            m_per_g,
            square if square is not None else by["hypha-width"] ** 2,
            by["hypha-density"],
            by["hypha-dry-share"],
            by["carbon-share"],
        ),
        [constants[each] for each in names],
    )
    by_constants = f"between {shown(found.least, 2)} and {shown(found.most, 2)} by the constants alone"
    lines = [f"{shown(found.value, 2)} µg of carbon in a gram, living and dead; {by_constants}."]
    for each in found.used:
        one = each.constant
        unit = "" if one.unit == "1" else f" {one.unit}"
        moves = f"which moves it from {shown(each.at_low, 2)} to {shown(each.at_high, 2)}"
        lines.append(f"{one.name}: {shown(one.value)}{unit} ({shown(one.low)} to {shown(one.high)}), {moves}.")
    used = {each.constant.id: {"value": each.constant.value, "at-low": each.at_low, "at-high": each.at_high} for each in found.used}
    return {"carbon-ug-per-g": found.value, "least": found.least, "most": found.most, "used": used}, lines


@sum_command("bacterium", "Volume and carbon of one bacterium.")
@click.option("--width-um", type=Above, required=True, help="Width, or diameter of a coccus.")
@click.option("--length-um", type=Above, help="Whole length of a rod.")
def bacterium(named: Path | None, width_um: float, length_um: float | None) -> Any:
    """Volume and carbon of one bacterium, by two laws that disagree."""
    from keytool.bench import bacteria

    if length_um is not None and length_um < width_um:
        raise click.UsageError(f"--length-um {length_um:g} is less than the width. A coccus has a width only.")
    constants = constants_of(named)
    volume = bacteria.rod_um3(width_um, length_um) if length_um else bacteria.sphere_um3(width_um)
    share = constants["bacteria-carbon-share"].value
    plain = 1000 * volume * constants["bacteria-density"].value * constants["bacteria-dry-share"].value * share
    law = share * bacteria.allometric_fg(
        volume, constants["bacteria-allometric-factor"].value, constants["bacteria-allometric-power"].value
    )
    fine = "" if width_um >= 1 else " At 400× without stain a width below 1 µm cannot be measured, so do not read this from your own slide."
    return {"volume-um3": volume, "carbon-fg": plain, "carbon-fg-allometric": law}, (
        f"{shown(volume)} µm³; {shown(plain, 2)} fg of carbon by density and dry share, {shown(law, 2)} fg by the power law.{fine}",
    )


@sum_command("ratio", "Fungal to bacterial carbon, with its interval.")
@click.option("--top", type=(Above, Above), required=True, help="Estimate and its standard error.")
@click.option("--bottom", type=(Above, Above), required=True, help="The same of the other, in the same unit.")
def ratio(named: Path | None, top: tuple[float, float], bottom: tuple[float, float]) -> Any:
    """A ratio of two estimates in one unit, such as fungal to bacterial carbon."""
    from keytool.bench import ratio as sums
    from keytool.bench import special

    z = special.normal_quantile(0.975)
    found, other = sums.ratio(*top, *bottom, z), sums.fieller(*top, *bottom, z)
    high = other.high if math.isfinite(other.high) else None
    return {"ratio": found.value, "low": found.low, "high": found.high, "fieller-low": other.low, "fieller-high": high}, (
        f"{shown(found.value, 2)}, between {shown(found.low, 2)} and {shown(found.high, 2)} (log scale); "
        f"by Fieller between {shown(other.low, 2)} and {shown(other.high, 2)}.",
        "Without stain bacteria are undercounted, so such a ratio is too high or a matter of chance.",
        "Methods give ratios that cannot be compared.",
    )


@sum_command("worm", "Fresh mass and carbon of a nematode.")
@click.option("--length-um", type=Above, required=True, help="Length, tail included.")
@click.option("--width-um", type=Above, required=True, help="Greatest width, relaxed, not flattened.")
def worm(named: Path | None, length_um: float, width_um: float) -> Any:
    """Fresh mass and carbon of a nematode (Andrássy 1956)."""
    from keytool.bench import nematodes

    constants = constants_of(named)
    fresh = nematodes.fresh_ug(length_um, width_um, constants["andrassy-divisor"].value)
    carbon = nematodes.carbon_ug(fresh, constants["nematode-dry-share"].value, constants["nematode-carbon-share"].value)
    return {"fresh-ug": fresh, "carbon-ug": carbon}, (
        f"{shown(fresh)} µg fresh, {shown(carbon, 2)} µg of carbon.",
        "Length × width² / 1.6 million (Andrássy); the width counts twice. Not for swollen females.",
    )


@sum_command("indices", "Indices of a nematode community by guild.")
@click.argument("guilds", nargs=-1, required=True)
def indices(named: Path | None, guilds: tuple[str, ...]) -> Any:
    """Indices of a community from GUILDS such as Ba1=24 Ba2=52 Fu2=18 Om4=9 Ca4=4 Pl3=18. Leave resting stages out."""
    from keytool.bench import nematodes

    constants = constants_of(named)
    counted: dict[str, float] = {}
    for each in guilds:
        guild, _, number = each.partition("=")
        try:
            nematodes.split(guild)
            counted[guild] = counted.get(guild, 0) + float(number)
        except ValueError:
            raise click.UsageError(
                f"'{each}' is no guild with its count. Allowed: Ba, Fu, Ca, Om or Pl, a class 1 to 5, = and a number: Ba2=40."
            ) from None
        if not (counted[guild] >= 0 and math.isfinite(counted[guild])):
            raise click.UsageError(f"'{each}': a count is 0 or more.")
    found = nematodes.indices(counted, nematodes.weights(constants))
    names = {
        "mi": "Maturity (MI)",
        "mi_2_5": "MI without class 1",
        "sigma_mi": "MI of all",
        "ppi": "Plant parasites (PPI)",
        "ei": "Enrichment (EI)",
        "si": "Structure (SI)",
        "bi": "Basal (BI)",
        "ci": "Channel (CI)",
        "ncr": "Bacterial share (NCR)",
    }
    lines = [f"{shown(found.worms)} worms."]
    if found.worms < constants["least-worms"].value:
        lines.append(
            f"Fewer than {shown(constants['least-worms'].value)}: the indices swing with every worm. "
            "Extract from 50 to 100 g of soil; a drop never holds enough."
        )
    for name, title in names.items():
        value = getattr(found, name)
        lines.append(f"{title}: {'not to be worked out' if value is None else shown(value)}")
    lines.append(
        "Plant feeders take no part in EI, SI, BI, CI and NCR. "
        "Whether a small tylench eats roots or fungi can move CI from 11 to 27: say how you called it."
    )
    return {name: getattr(found, name) for name in ("worms", *names)}, lines


@sum_command("settle", "How long to let it stand.")
@click.option("--seconds", type=Above, required=True, help="Wait after shaking.")
@click.option("--column-mm", type=Above, default=50.0, show_default=True, help="Height of the water in the tube.")
def settle(named: Path | None, seconds: float, column_mm: float) -> Any:
    """Which grains have gone down, and how far a 20 µm cell has sunk."""
    from keytool.bench import physics

    constants = constants_of(named)
    water, eta = constants["water-density"].value, constants["water-viscosity"].value
    grain = physics.cleared_above_um(seconds, column_mm, constants["quartz-density"].value, water, eta)
    cell = physics.stokes_mm_per_s(20, constants["cell-density"].value, water, eta) * seconds
    return {"cleared-um": grain, "cell-sinks-mm": cell}, (
        f"Sand above {shown(grain, 2)} µm is down (Stokes, 20 °C), while a 20 µm cell has sunk {shown(cell, 2)} mm. Clay never clears.",
        "Worms and what sticks to grains go down too: look at a drop from the bottom as well, and always wait as long.",
    )


@sum_command("jiggle", "How far a dead speck jiggles.")
@click.option("--diameter-um", type=Above, required=True, help="Of the speck.")
@click.option("--seconds", type=Above, default=1.0, show_default=True, help="How long it was watched.")
@click.option("--celsius", type=click.FloatRange(0, 60), default=20.0, show_default=True, help="Warmth of the water.")
def jiggle(named: Path | None, diameter_um: float, seconds: float, celsius: float) -> Any:
    """How far a dead speck jiggles in still water (Stokes and Einstein)."""
    from keytool.bench import physics

    eta = constants_of(named)["water-viscosity"].value
    step = physics.brownian_step_um(diameter_um, seconds, eta, celsius)
    return {"step-um": step}, (
        f"About {shown(step, 2)} µm in {shown(seconds)} s, to and fro.",
        "In four times the time only twice as far; a swimmer goes four times as far.",
    )
