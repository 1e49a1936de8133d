"""How often, how surely and how soon things are named rightly, by simulated observers; and how fast.

Run: python benchmarks/identify.py [trials for each theme]. Seeds are fixed. An observer is given an entry of a key's scope, drawn
by how common it is, and is asked what tells most; he sees each thing as the tables say (at the library's own misreading rates),
or misreads it at 5 % or never, and cannot tell one look in ten. Printed is one table with 95 % intervals (Wilson 1927, from
memory); `build/calibration.png` shows how often what was said at a chance was so. Asserts nothing.
"""

from __future__ import annotations

import math
import random
import sys
import time
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from keytool.identify import CANNOT_TELL, Answer, Leg, Model, Observation, Trail, compiled, cost, describe, evaluate
from keytool.identify.observation_tables import Table
from keytool.library import load, root
from keytool.library.pieces import cells, unstated
from keytool.library.value import Interval, States

UNSEEN = 0.1
BUILD = Path(__file__).parents[1] / "build"
Said = tuple[float, bool]


def main() -> None:
    """The tables of accuracy, calibration, length and scale."""
    trials = int(sys.argv[1]) if len(sys.argv) > 1 else 30
    model = compiled(load(root()).library)
    said: list[Said] = []
    print(f"{'key':24} {'rate':6} {'looks':>5} {'first end right':>17} {'first name right':>17} {'right group':>17} {'among three':>17}")
    for key in model.keys:
        looks = round(cost(model.library, model.keys[key].key).questions) + 2
        for rate in (None, 0.05, 0.0):
            chance = random.Random(f"{key} {rate}")
            found = [observed(model, key, looks, rate, chance, said if rate is None else []) for _ in range(trials)]
            counts = [sum(column) for column in zip(*found, strict=True)]
            rates = "own" if rate is None else f"{rate:.0%}"
            print(f"{key:24} {rates:6} {looks:>5} " + " ".join(f"{interval(count, trials):>17}" for count in counts), flush=True)
    calibration(said)
    lengths(model, 2 * trials)
    scale()


def observed(model: Model, key: str, looks: int, rate: float | None, chance: random.Random, said: list[Said]) -> tuple[bool, ...]:
    """One observer: whether the end of the key named first holds it, the first name is right, its functional group, one of three."""
    scope = model.keys[key].scope
    (true,) = chance.choices(scope, [model.prior[number] for number in scope])
    trail = Trail(legs=(Leg(key),))
    for _ in range(looks):
        result = describe(model, trail)
        if not result.next:
            break
        name = max(result.next, key=lambda question: question.gain).character
        table = model.tables[name]
        seen = Observation(name) if chance.random() < UNSEEN or not table.has[true] else look(model, table, true, rate, chance)
        trail = replace(trail, saw=(*trail.saw, seen))
    result = describe(model, trail)
    after = result.after.chance
    ranked = sorted(range(len(after)), key=lambda number: -after[number])
    said.append((after[ranked[0]], ranked[0] == true))
    if result.verdict:
        said.append((result.verdict.chance, true in model.within(result.verdict.id)))
    groups: dict[tuple[str, ...], float] = {}
    for number, each in enumerate(after):
        groups[functional(model, number)] = groups.get(functional(model, number), 0.0) + each
    ends = model.keys[key].within
    named = min((end for end in ends if ranked[0] in ends[end]), key=lambda end: len(ends[end]), default="")
    right_end = bool(named) and true in ends[named]
    return right_end, ranked[0] == true, max(groups, key=lambda group: groups[group]) == functional(model, true), true in ranked[:3]


def functional(model: Model, number: int) -> tuple[str, ...]:
    """The functional group of an entry: what it lives on, and where nothing is said of that, the group it stands within."""
    entry = model.library.entries[model.entries[number]]
    return entry.feeding if entry.feeding and entry.feeding != ("not-applicable",) else entry.within[:1]


def look(model: Model, table: Table, true: int, rate: float | None, chance: random.Random) -> Observation:
    """What an observer sees of one character when one entry is there."""
    row = table.rows[table.row[true]]
    if table.is_number:
        low, high = row or table.span
        if rate is None and chance.random() < table.misread:
            low, high = table.span
        value = math.exp(chance.uniform(math.log(low), math.log(high)))
        return Observation(table.character, low=value, high=value)
    if rate is None:
        (state,) = chance.choices(table.states, row)
    else:
        statement = model.library.entries[model.entries[true]].statements.get(table.character)
        shown = sorted(statement.showing.ids) if statement and isinstance(statement.showing, States) else []
        state = chance.choice(shown) if shown else chance.choices(table.states, row)[0]
        if chance.random() < rate:
            state = chance.choice([each for each in table.states if each != state])
    return Observation(table.character, (state,))


def interval(count: int, of: int) -> str:
    """A share with its 95 % interval, in per cent."""
    z, p = 1.959964, count / of
    middle, half = (p + z * z / (2 * of)) / (1 + z * z / of), z * math.sqrt(p * (1 - p) / of + z * z / (4 * of * of)) / (1 + z * z / of)
    return f"{100 * p:.0f} ({100 * (middle - half):.0f} to {100 * (middle + half):.0f}) %"


def calibration(said: Sequence[Said]) -> None:
    """How often what was said at a chance was so: the Brier score, one line for each tenth, and a picture."""
    brier = sum((chance - right) ** 2 for chance, right in said) / len(said)
    print(f"\nCalibration, at the library's own rates: Brier score {brier:.3f} over {len(said)} statements")
    points = []
    for tenth in range(10):
        inside = [(chance, right) for chance, right in said if tenth / 10 <= chance < (tenth + 1) / 10 or (tenth == 9 and chance == 1)]
        if inside:
            mean, right = sum(chance for chance, _ in inside) / len(inside), sum(right for _, right in inside)
            points.append((mean, right / len(inside), len(inside)))
            print(f"  said {mean:.0%}, so {interval(right, len(inside))} of {len(inside)}")
    picture(points)


def picture(points: Sequence[tuple[float, float, int]]) -> None:
    """The reliability plot, as `build/calibration.png`."""
    from PIL import Image, ImageDraw

    size, edge = 480, 40
    image = Image.new("RGB", (size, size), "white")
    draw = ImageDraw.Draw(image)

    def place(x: float, y: float) -> tuple[float, float]:
        return edge + x * (size - 2 * edge), size - edge - y * (size - 2 * edge)

    draw.line([place(0, 0), place(1, 1)], fill="grey")
    draw.rectangle([place(0, 1), place(1, 0)], outline="black")
    draw.line([place(x, y) for x, y, _ in points], fill="darkred", width=2)
    for x, y, count in points:
        middle, radius = place(x, y), 3 + math.sqrt(count) / 3
        draw.ellipse([middle[0] - radius, middle[1] - radius, middle[0] + radius, middle[1] + radius], outline="darkred", width=2)
    draw.text((edge, 12), "how often it was so, against the chance it was said at", fill="black")
    BUILD.mkdir(exist_ok=True)
    image.save(BUILD / "calibration.png")


def lengths(model: Model, trials: int) -> None:
    """Answers from the first question to an end, when everything is seen and when three looks cannot be told."""
    for unseen in (0, 3):
        chance = random.Random(unseen)
        counts = []
        for _ in range(trials):
            (true,) = chance.choices(range(len(model.entries)), model.prior)
            counts.append(answers(model, true, set(chance.sample(range(8), unseen)), chance))
        counts.sort()
        print(f"\nAnswers from the first question to an end, {unseen} not seen: median {counts[len(counts) // 2]}, most {counts[-1]}")


def answers(model: Model, true: int, unseen: set[int], chance: random.Random) -> int:
    """How many answers one walk takes from the first key to its end."""
    entry = model.library.entries[model.entries[true]]
    shown = {name: statement.showing for name, statement in entry.statements.items()}
    trail, count = Trail(legs=(Leg("first-look"),)), 0
    while count < 40:
        state = evaluate(model, trail)
        if state.goes_on and all(leg.key != state.goes_on for leg in trail.legs):
            trail = replace(trail, legs=(*trail.legs, Leg(state.goes_on)))
            continue
        if state.is_over:
            break
        leg = trail.legs[-1]
        if state.asks:
            couplet = model.keys[leg.key].key.couplets[state.asks]
            lead = CANNOT_TELL
            if count not in unseen and not unstated(couplet, shown):
                cut = list(cells(couplet, shown))
                (cell,) = chance.choices(cut, [each.share for each in cut])
                lead, shown = cell.leads[0].id, dict(cell.showings)
            trail = replace(trail, legs=(*trail.legs[:-1], Leg(leg.key, (*leg.answers, Answer(state.asks, lead)))))
        else:
            showing = shown.get(state.asks_character)
            seen = Observation(state.asks_character)
            if count not in unseen and isinstance(showing, States):
                seen = Observation(state.asks_character, (chance.choice(sorted(showing.ids)),))
            elif count not in unseen and isinstance(showing, Interval) and math.isfinite(showing.high - showing.low):
                value = chance.uniform(showing.low, showing.high)
                seen = Observation(state.asks_character, low=value, high=value)
            trail = replace(trail, saw=(*trail.saw, seen))
        count += 1
    return count


def scale() -> None:
    """One answer over 10,000 entries and 200 characters, against a categorical naive Bayes classifier on the same table."""
    chance = random.Random(1)
    entries, characters, states = 10_000, 200, 4
    rows = tuple(tuple(0.85 if state == shown else 0.05 for state in range(states)) for shown in range(states))
    names = tuple(f"s{state}" for state in range(states))
    seen = [chance.randrange(states) for _ in range(characters)]
    tables = [
        Table(f"c{number}", names, rows, tuple(chance.randrange(states) for _ in range(entries)), (True,) * entries, -1)
        for number in range(characters)
    ]
    begin = time.perf_counter()
    weights = [1 / entries] * entries
    for table, state in zip(tables, seen, strict=True):
        chances = table.chances(States(frozenset({names[state]})))
        weights = [weight * chances[row] for weight, row in zip(weights, table.row, strict=True)]
        if max(weights) < 1e-200:
            weights = [weight * 1e200 for weight in weights]
    ours = time.perf_counter() - begin
    line = f"\nScale, 10,000 entries by 200 characters: all 200 looks {1000 * ours:.0f} ms, one look more {1000 * ours / characters:.1f} ms"
    try:
        import numpy
        from sklearn.naive_bayes import CategoricalNB
    except ImportError:
        print(line + " (scikit-learn is not installed, so there is no peer)")
        return
    matrix = numpy.array([table.row for table in tables]).T
    peer = CategoricalNB(alpha=0.2).fit(matrix, numpy.arange(entries))
    one = numpy.array([seen])
    peer.predict_proba(one)
    begin = time.perf_counter()
    peer.predict_proba(one)
    theirs = time.perf_counter() - begin
    ratio = theirs / (ours / characters)
    print(f"{line}; scikit-learn CategoricalNB on the same: {1000 * theirs:.0f} ms, {ratio:.0f} times as long as one look more")


if __name__ == "__main__":
    main()
