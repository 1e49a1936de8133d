"""What a sample holds: each line of the tally per drop or field, per millilitre and per gram, with its interval."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from keytool.bench import optics, sample, special
from keytool.bench.constants import judging
from keytool.bench.counts import Interval, MeanPerField, mean_per_field
from keytool.bench.lines import added_up, label, lines_of
from keytool.bench.sheet import Sample, Setup, Tally
from keytool.library.bench_records import At
from keytool.library.model import Library

ERRORS = ("drop-error", "film-error", "dilution-error", "mass-error")
"""Constants: relative standard errors of the slide that count per gram has beside those of counting."""


@dataclass(frozen=True, slots=True)
class Slip:
    """What follows from how the slide was made. None where a number is missing.

    `unit` is what "per" means in the results: "g", "mL" or "g dry" of soil; `per_unit` turns one per mL of suspension into that.
    """

    field_mm: float | None
    low_field_mm: float | None
    film_mm: float | None
    field_ml: float | None
    fields_per_slip: float | None
    per_unit: float | None
    unit: str


def slip(setup: Setup) -> Slip:
    """Widths, depths and volumes of a set-up."""
    number, width, length = setup.field_number_mm, setup.slip_width_mm, setup.slip_length_mm
    field = optics.field_diameter_mm(number, setup.high) if number and setup.high else None
    low = optics.field_diameter_mm(number, setup.low) if number and setup.low else None
    film = sample.film_depth_mm(setup.drop_ml, width * length) if setup.drop_ml and width and length else None
    area = optics.field_area_mm2(field) if field else None
    per, unit = None, setup.soil_unit
    if setup.soil and setup.total_ml:
        per = sample.dilution_factor(setup.soil, setup.total_ml)
        if setup.soil_unit == "mL" and setup.bulk_density:
            per, unit = per / setup.bulk_density, "g"
        if unit == "g" and setup.moisture is not None:
            return _slip(field, low, film, area, setup, per * (1 + setup.moisture), "g dry")
    return _slip(field, low, film, area, setup, per, unit)


def _slip(
    field: float | None, low: float | None, film: float | None, area: float | None, setup: Setup, per: float | None, unit: str
) -> Slip:
    slip_area = setup.slip_width_mm * setup.slip_length_mm if setup.slip_width_mm and setup.slip_length_mm else None
    return Slip(
        field,
        low,
        film,
        sample.field_volume_ml(area, film) if area and film else None,
        sample.fields_per_slip(slip_area, area) if slip_area and area else None,
        per,
        unit,
    )


@dataclass(frozen=True, slots=True)
class LineResult:
    """One line of the tally in whole drops or in fields.

    `mean` is per drop or field; `per_ml` per mL of suspension and `per_unit` per g or mL of soil, by counting alone;
    `all_in` is `per_unit` with what drop, film, dilution and spoon may be off as well.
    """

    id: str
    label: str
    at: At
    mean: MeanPerField
    searched_ml: float | None
    per_ml: Interval | None
    per_unit: Interval | None
    all_in: Interval | None


@dataclass(frozen=True, slots=True)
class SampleResult:
    """All lines of one sample, and its slide in numbers."""

    sample: Sample
    slip: Slip
    lines: tuple[LineResult, ...]

    def line(self, id: str, at: At) -> LineResult | None:
        """One line, if it was looked for there."""
        return next((each for each in self.lines if each.id == id and each.at == at), None)


def results(library: Library, of: Sample) -> SampleResult:
    """Every line that was looked for in a sample. Needs at least one drop or field for a line to stand here."""
    made = slip(of.setup)
    found = []
    for at in ("drop", "field"):
        units = of.drops if at == "drop" else of.fields
        volume = of.setup.drop_ml if at == "drop" else made.field_ml
        if units:
            found += [_line(library, each, at, units, volume, made) for each in looked_for(library, of, at)]
    return SampleResult(of, made, tuple(found))


def looked_for(library: Library, of: Sample, at: At) -> list[str]:
    """The lines looked for in drops or in fields, with those they are a part of, in the order of the tally; others after them."""
    listed = of.at_drop if at == "drop" else of.at_field
    units = of.drops if at == "drop" else of.fields
    ids = [*listed, *(id for unit in units for id in unit)]
    wanted = {line: None for id in ids for line in (lines_of(library, id) or (id,))}
    return [*(line for line in library.bench.tally if line in wanted), *(id for id in wanted if id not in library.bench.tally)]


def _line(library: Library, id: str, at: At, units: Sequence[Tally], volume: float | None, made: Slip) -> LineResult:
    constants = library.bench.constants
    mean = mean_per_field([added_up(library, unit).get(id, 0) for unit in units], judging(constants))
    per_ml = mean.per_field.times(1 / volume) if volume else None
    per_unit = per_ml.times(made.per_unit) if per_ml and made.per_unit else None
    errors = [constants[each].value for each in ERRORS if not (at == "drop" and each == "film-error")]
    all_in = with_slide_errors(per_unit, errors) if per_unit else None
    return LineResult(id, label(library, id), at, mean, volume * len(units) if volume else None, per_ml, per_unit, all_in)


def with_slide_errors(counted: Interval, errors: list[float]) -> Interval:
    """An interval of counting widened by relative standard errors, each side on the log scale. None seen: only its upper end."""
    spread = math.sqrt(math.log1p(sample.combined_error(errors) ** 2)) * special.normal_quantile(0.975)

    def reach(end: float, counting: float) -> float:
        return math.exp(math.copysign(math.hypot(math.log(end / counting), spread), end - counting))

    if not counted.value:
        return Interval(0.0, 0.0, counted.high * math.exp(spread))
    low = counted.value * reach(counted.low, counted.value) if counted.low else 0.0
    return Interval(counted.value, low, counted.value * reach(counted.high, counted.value))
