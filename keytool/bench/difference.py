"""Two samples side by side: each line that was looked for in both, and how the second stands to the first."""

from __future__ import annotations

from dataclasses import dataclass

from keytool.bench.constants import judging
from keytool.bench.counts import Comparison, compare
from keytool.bench.results import LineResult, results
from keytool.bench.sheet import Sample
from keytool.library.model import Library


@dataclass(frozen=True, slots=True)
class Difference:
    """One line in two samples. `per_unit` says whether rates per g or mL of soil were compared, or per drop or field."""

    label: str
    first: LineResult
    second: LineResult
    comparison: Comparison
    per_unit: bool


def differences(library: Library, one: Sample, two: Sample) -> tuple[Difference, ...]:
    """Every line looked for in both, at the same power. Lines met in neither are left out."""
    by = judging(library.bench.constants)
    first, second = results(library, one), results(library, two)
    same_unit = first.slip.unit == second.slip.unit
    found = []
    for each in first.lines:
        other = second.line(each.id, each.at)
        if other is None or not (each.mean.total or other.mean.total):
            continue
        scale = 1.0
        comparable = bool(same_unit and each.per_unit and other.per_unit and each.searched_ml and other.searched_ml)
        if comparable:
            scale = _worth(other, second.slip.per_unit) / _worth(each, first.slip.per_unit)
        found.append(Difference(each.label, each, other, compare(each.mean, other.mean, by, scale), comparable))
    return tuple(found)


def _worth(line: LineResult, per_unit: float | None) -> float:
    """How many per g one in a drop or field stands for."""
    assert line.searched_ml is not None and per_unit is not None
    return per_unit * line.mean.fields / line.searched_ml
