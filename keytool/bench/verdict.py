"""The rules of the bench held against counts: met, not met, or too few to say. Never added up."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from keytool.bench.constants import judging
from keytool.bench.counts import Interval, MeanPerField, mean_per_field, poisson_limits
from keytool.bench.lines import added_up
from keytool.bench.results import looked_for
from keytool.bench.sheet import Sample
from keytool.library.bench_records import BenchRule
from keytool.library.model import Library

Answer = Literal["met", "not-met", "too-few", "seen", "none-seen", "not-looked"]
MOST_MORE = 500
"""More drops or fields than this are never asked for."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """One rule and what the counts say to it.

    `sure` counts what surely belongs; `at_most` also what may; both in `units` drops or fields, which are never mixed.
    `interval` goes from the low end of the sure to the high end of all. `more` is how many more drops or fields would
    settle it if they are like those seen: None where it is settled or where no sensible number would.
    """

    rule: BenchRule
    answer: Answer
    sure: int
    at_most: int
    units: int
    interval: Interval
    more: int | None


def verdict(library: Library, of: Sample) -> tuple[Outcome, ...]:
    """Every rule of the library, in its order."""
    return tuple(_outcome(library, of, rule) for rule in library.bench.rules.values())


def _outcome(library: Library, of: Sample, rule: BenchRule) -> Outcome:
    units = of.drops if rule.per == "drop" else of.fields
    watched = {*looked_for(library, of, rule.per)}
    if not units or not watched & {*rule.counts, *rule.may_count}:
        return Outcome(rule, "not-looked", 0, 0, len(units), Interval(0.0, 0.0, math.inf), None)
    tallies = [added_up(library, unit) for unit in units]
    sure = [sum(tally.get(line, 0) for line in rule.counts) for tally in tallies]
    parts = {id for id, line in library.bench.tally.items() if line.part_of in rule.may_count}
    unsure = [sum(tally.get(line, 0) for line in rule.may_count) - sum(tally.get(part, 0) for part in parts) for tally in tallies]
    most = [one + max(0, two) for one, two in zip(sure, unsure, strict=True)]
    by = judging(library.bench.constants)
    surely, mostly = mean_per_field(sure, by), mean_per_field(most, by)
    interval = Interval(surely.per_field.value, surely.per_field.low, mostly.per_field.high)
    answer = _answer(rule, interval, sum(sure))
    more = _more(rule, surely, mostly) if answer == "too-few" else None
    return Outcome(rule, answer, sum(sure), sum(most), len(units), interval, more)


def _answer(rule: BenchRule, interval: Interval, counted: int) -> Answer:
    if rule.wants == "watch":
        return "seen" if counted else "none-seen"
    if rule.wants == "at-least":
        return "met" if interval.low >= rule.value else "not-met" if interval.high < rule.value else "too-few"
    return "met" if interval.high <= rule.value else "not-met" if interval.low > rule.value else "too-few"


def _more(rule: BenchRule, surely: MeanPerField, mostly: MeanPerField) -> int | None:
    """How many more units settle it, if the mean stays: the first total of units at which the interval leaves the line."""
    step = max(1, surely.fields // 4)
    for units in range(surely.fields + step, surely.fields + MOST_MORE + 1, step):
        low = _limits(surely, units).low
        high = _limits(mostly, units).high
        if _answer(rule, Interval(0, low, high), 0) != "too-few":
            return units - surely.fields
    return None


def _limits(seen: MeanPerField, units: int) -> Interval:
    """The interval so many units would give at the same mean and scatter."""
    limits = poisson_limits(round(seen.per_field.value * units / seen.factor), 0.95)
    return limits.times(seen.factor / units)
