"""Chances of an answer, against the naive Bayes formula worked by hand with exact fractions."""

import math
import random
from fractions import Fraction
from pathlib import Path

import pytest

from keytool.identify import ground, stand
from keytool.identify.walk import Answer
from keytool.identify.weigh import _read_below, chances, entropy
from keytool.library import load
from keytool.library.value import Interval


def test_the_chance_after_answers_is_bayes_rule_with_misreading(mini: Path) -> None:
    """Two-state form, P(yes) = f(1 - e) + (1 - f)e, product over answers (naive Bayes, standard; from memory)."""
    library = load(mini).library
    buttons = ground(library, library.keys["buttons"])
    wrong = {"holes": Fraction(1, 10), "rim": Fraction(2, 10)}
    prior = {"shank-button": Fraction(1, 40), "coat-button": Fraction(3, 40), "shirt-button": Fraction(27, 40), "cuff-button": Fraction(9, 40)}
    is_open = {"shank-button": 0, "coat-button": 1, "shirt-button": 1, "cuff-button": 1}
    is_raised = {"shank-button": Fraction(0), "coat-button": Fraction(1, 2), "shirt-button": Fraction(1), "cuff-button": Fraction(0)}

    def yes(f: Fraction | int, e: Fraction) -> Fraction:
        return f * (1 - e) + (1 - f) * e

    weight = {id: prior[id] * yes(is_open[id], wrong["holes"]) * yes(is_raised[id], wrong["rim"]) for id in prior}
    expected = {id: float(each / sum(weight.values())) for id, each in weight.items()}
    standing = stand(buttons, (Answer("holes", "open"), Answer("size", "cannot-tell"), Answer("rim", "raised")))
    assert standing.chance == pytest.approx(expected, abs=1e-8)


def test_a_number_read_with_error_agrees_with_drawing_many(mini: Path) -> None:
    """The closed form for an even number plus an even error, against a plain simulation (seeded)."""
    chance = random.Random(7)
    shown, error, limit = Interval(8, 12), 3.0, 10.5
    drawn = sum(chance.uniform(8, 12) + chance.uniform(-error, error) < limit for _ in range(200_000)) / 200_000
    assert _read_below(shown, limit, error) == pytest.approx(drawn, abs=0.005)


def test_the_chances_of_the_leads_add_up_to_one(mini: Path) -> None:
    library = load(mini).library
    for couplet in library.keys["buttons"].couplets.values():
        for entry in library.members(("button",)):
            assert sum(chances(library.characters, couplet, entry)) == pytest.approx(1)


def test_entropy_of_even_weights_is_the_logarithm_of_their_number() -> None:
    assert entropy([1] * 8) == pytest.approx(3)
    assert entropy([0.4, 0.3, 0.2, 0.1]) == pytest.approx(-sum(p * math.log2(p) for p in (0.4, 0.3, 0.2, 0.1)))
    assert entropy([]) == 0
