"""The report on a key: held to brute force on a small key, and to what must be true of any."""

from __future__ import annotations

from itertools import permutations
from pathlib import Path

import pytest

from keytool.identify import Model, compiled
from keytool.identify.model import prior_chances
from keytool.identify.quality import _flows, _split, best_order, quality
from keytool.library import Library, load


@pytest.fixture(scope="module")
def model(library: Library) -> Model:
    return compiled(library)


def test_the_best_order_of_a_small_key_is_that_of_trying_every_fixed_order_or_better(mini: Path) -> None:
    small = compiled(load(mini).library)
    best, exact = best_order(small, "buttons")
    key = small.keys["buttons"].key
    prior = prior_chances(small.library, key.scope)
    ends = {id: max(sorted(to), key=lambda end: to[end]) for id, (_, to) in _flows(small, "buttons").items()}

    def asked(order: tuple[str, ...], weights: dict[str, float]) -> float:
        if not order or len({ends[id] for id in weights}) < 2:
            return 0.0
        parts: dict[str, dict[str, float]] = {}
        for id, weight in weights.items():
            for lead, share in _split(key.couplets[order[0]], small.library.entries[id]).items():
                parts.setdefault(lead, {})[id] = weight * share
        if len(parts) < 2:
            return asked(order[1:], weights)
        return sum(weights.values()) + sum(asked(order[1:], part) for part in parts.values())

    assert exact
    assert best <= min(asked(order, prior) for order in permutations(key.couplets)) + 1e-9


def test_what_must_be_true_of_any_report(model: Model) -> None:
    for key in ("naked-amoebae", "testate-amoebae", "dots-and-rods"):
        found = quality(model, key)
        assert found.ratio >= 1 and best_order(model, key)[0] <= found.questions
        assert found.worst in model.keys[key].key.couplets and 0 < found.lost < 0.5
        assert 0 <= found.alike <= 1 and found.pair[0] != found.pair[1]
