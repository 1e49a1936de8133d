"""What a report says in sentences: what was met, and what to do next. The same stand in `site/assets/bench/report-words.js`."""

from __future__ import annotations

import math
from collections.abc import Sequence

from keytool.bench.results import LineResult, SampleResult
from keytool.bench.verdict import Outcome
from keytool.bench.wording import figures
from keytool.library.bench_records import At
from keytool.library.model import Library
from keytool.library.wording import plain

ANSWERS = {
    "met": "met",
    "not-met": "not met",
    "too-few": "too few {units} to say",
    "seen": "seen",
    "none-seen": "none seen",
    "not-looked": "not looked for",
}
"""What is said of each answer of a rule."""


def units(number: int, at: At) -> str:
    """So many drops or fields."""
    return f"{number} {at}{'' if number == 1 else 's'}"


def answer(outcome: Outcome) -> str:
    """The answer of a rule in words."""
    return ANSWERS[outcome.answer].format(units="drops" if outcome.rule.per == "drop" else "fields")


def counted(outcome: Outcome) -> str:
    """What a rule rests on: 4 in 2 drops, 1 more not told. Empty where it was not looked for."""
    if outcome.answer == "not-looked":
        return ""
    more = f", {outcome.at_most - outcome.sure} more not told" if outcome.at_most > outcome.sure else ""
    return f"{outcome.sure} in {units(outcome.units, outcome.rule.per)}{more}"


def summary(library: Library, found: SampleResult) -> tuple[str, ...]:
    """What was met most and what was not seen, in whole drops and field by field; never a mark for the soil."""
    whole = [each for each in found.lines if not _part_of(library, each)]
    said = []
    for at, title in (("drop", "In whole drops"), ("field", "Field by field")):
        lines = [each for each in whole if each.at == at]
        if not lines:
            continue
        met = sorted((each for each in lines if each.mean.total), key=lambda each: -each.mean.total)
        none = [each for each in lines if not each.mean.total]
        text = f"{title}, {units(lines[0].mean.fields, lines[0].at)}: "
        text += f"{_listed(library, met)}{', most often the first' if len(met) > 1 else ''}." if met else "nothing that was looked for."
        said.append(text + (f" None seen of: {_listed(library, none)}." if none else ""))
    known = sorted((each for each in whole if each.mean.total and each.id in library.bench.tally), key=lambda each: -each.mean.total)
    if known:
        line = library.bench.tally[known[0].id]
        said.append(f"{line.label}: {plain(library, line.tells)}")
    return tuple(said)


def twice_counted(found: SampleResult) -> str:
    """What to think of a line counted both in drops and in fields; empty where none is."""
    seen = [each.id for each in found.lines]
    twice = any(seen.count(id) > 1 for id in seen)
    return "What stands twice was counted at both powers: low power misses small ones, a few fields miss rare ones." if twice else ""


def most_counted(found: SampleResult) -> LineResult | None:
    """The line counted most often in fields, or else in drops: what the plot of precision is drawn of."""
    for at in ("field", "drop"):
        lines = [each for each in found.lines if each.at == at and each.mean.total]
        if lines:
            return max(lines, key=lambda each: each.mean.total)
    return None


def good_to(line: LineResult, deviate: float, units: float) -> float:
    """Half the interval as a share of the estimate after so many fields or drops, if they go on as they did."""
    return deviate / math.sqrt(line.mean.per_field.value * units / line.mean.factor)


def precision_words(line: LineResult, deviate: float) -> str:
    """The title of that plot: where one stands, and what twice the precision takes."""
    now = good_to(line, deviate, line.mean.fields)
    each = line.at
    return (
        f"{line.label}: good to about ± {figures(100 * now)} % after {units(line.mean.fields, each)}. "
        f"Half of that takes four times as many, {units(4 * line.mean.fields, each)}."
    )


def next_steps(outcomes: Sequence[Outcome]) -> tuple[str, ...]:
    """What would settle the rules that are open, and when to look again."""
    open_rules = [
        f"About {units(each.more, each.rule.per)} more would settle: {each.rule.asks[0].lower()}{each.rule.asks[1:]}."
        for each in outcomes
        if each.more
    ]
    return (*open_rules, "Look again in half a year: same spot, same depth, same dilution, as many fields.")


def _part_of(library: Library, line: LineResult) -> str:
    return library.bench.tally[line.id].part_of if line.id in library.bench.tally else ""


def _listed(library: Library, lines: Sequence[LineResult]) -> str:
    names = [library.bench.tally[each.id].many if each.id in library.bench.tally else each.label for each in lines]
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]
