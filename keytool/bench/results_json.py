"""Results as plain data, the same as the page works them out. Infinite ends are null."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from keytool.bench.counts import Interval
from keytool.bench.difference import differences
from keytool.bench.results import LineResult, SampleResult, results
from keytool.bench.sheet import Record, Sample
from keytool.bench.verdict import verdict
from keytool.library.model import Library


def record_results(library: Library, record: Record) -> dict[str, Any]:
    """Every sample worked out and judged, each held against the one before, and the constants that were used."""
    pairs = zip(record.samples, record.samples[1:], strict=False)
    return {
        "samples": [sample_results(library, each) for each in record.samples],
        "differences": [_differences(library, one, two) for one, two in pairs],
        "constants": {
            each.id: {"value": each.value, "low": each.low, "high": each.high, "unit": each.unit}
            for each in library.bench.constants.values()
            if each.id in _USED
        },
    }


_USED = (
    "confidence",
    "least-fields-to-widen",
    "least-total-to-widen",
    "clumped-chance",
    "drop-error",
    "film-error",
    "dilution-error",
    "mass-error",
)


def sample_results(library: Library, sample: Sample) -> dict[str, Any]:
    """One sample."""
    found = results(library, sample)
    return {
        "name": sample.name,
        "invented": sample.invented,
        "slip": _slip(found),
        "lines": [_line(each) for each in found.lines],
        "rules": [
            {
                "id": each.rule.id,
                "answer": each.answer,
                "sure": each.sure,
                "at-most": each.at_most,
                "units": each.units,
                "interval": interval(each.interval),
                "more": each.more,
            }
            for each in verdict(library, sample)
        ],
    }


def interval(of: Interval | None) -> Mapping[str, float | None] | None:
    """An interval."""
    if of is None:
        return None
    return {name: value if math.isfinite(value) else None for name, value in (("value", of.value), ("low", of.low), ("high", of.high))}


def _slip(found: SampleResult) -> dict[str, Any]:
    made = found.slip
    return {
        "field-mm": made.field_mm,
        "low-field-mm": made.low_field_mm,
        "film-mm": made.film_mm,
        "field-ml": made.field_ml,
        "fields-per-slip": made.fields_per_slip,
        "per-unit": made.per_unit,
        "unit": made.unit,
    }


def _line(each: LineResult) -> dict[str, Any]:
    return {
        "id": each.id,
        "label": each.label,
        "at": each.at,
        "total": each.mean.total,
        "units": each.mean.fields,
        "widened": each.mean.widened,
        "index-of-dispersion": each.mean.scatter.index if each.mean.scatter else None,
        "searched-ml": each.searched_ml,
        "per-unit-looked-at": interval(each.mean.per_field),
        "per-ml": interval(each.per_ml),
        "per-unit-of-soil": interval(each.per_unit),
        "with-slide-errors": interval(each.all_in),
    }


def _differences(library: Library, one: Sample, two: Sample) -> dict[str, Any]:
    return {
        "first": one.name,
        "second": two.name,
        "lines": [
            {
                "id": each.first.id,
                "at": each.first.at,
                "per-unit-of-soil": each.per_unit,
                "ratio": interval(each.comparison.ratio),
                "p": each.comparison.p,
                "widened": each.comparison.widened,
            }
            for each in differences(library, one, two)
        ],
    }
