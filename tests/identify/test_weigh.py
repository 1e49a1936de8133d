"""Chances of one answer to each character, against the naive Bayes formula worked by hand with exact fractions."""

import math
import random
from fractions import Fraction
from pathlib import Path

import pytest

from keytool.identify import ground, stand
from keytool.identify.answer import Answer
from keytool.identify.weigh import _read_below, entropy, priors
from keytool.library import Library, load
from keytool.library.value import Interval


def test_the_chance_after_answers_is_bayes_rule_with_misreading(mini: Path) -> None:
    """P(yes) = f(1 - e) + (1 - f)e for two states, product over answers (naive Bayes, standard; from memory).

    Of the three states of "holes" one is wrongly seen as each other in 1 of 20.
    """
    library = load(mini).library
    buttons = ground(library, library.keys["buttons"])
    prior = {
        "shank-button": Fraction(1, 40),
        "coat-button": Fraction(3, 40),
        "shirt-button": Fraction(27, 40),
        "cuff-button": Fraction(9, 40),
    }
    seen_open = {"shank-button": Fraction(2, 20)} | dict.fromkeys(("coat-button", "shirt-button", "cuff-button"), Fraction(19, 20))
    is_raised = {"shank-button": Fraction(0), "coat-button": Fraction(1, 2), "shirt-button": Fraction(1), "cuff-button": Fraction(0)}

    def yes(f: Fraction, e: Fraction) -> Fraction:
        return f * (1 - e) + (1 - f) * e

    weight = {id: prior[id] * seen_open[id] * yes(is_raised[id], Fraction(2, 10)) for id in prior}
    expected = {id: float(each / sum(weight.values())) for id, each in weight.items()}
    standing = stand(buttons, (Answer("holes", "open"), Answer("size", "cannot-tell"), Answer("rim", "raised")))
    assert standing.chance == pytest.approx(expected, abs=1e-8)


def test_a_pair_that_is_never_mixed_up_is_not(mini: Path) -> None:
    path = mini / "keydata/characters/rim.yaml"
    path.write_text(path.read_text("utf-8").replace("{rate: 0.2,", "{rate: 0.2, pairs: [{is: flat, seen: raised, rate: 0}],"), "utf-8")
    library = load(mini).library
    chance = ground(library, library.keys["buttons"]).chance["rim"]
    assert chance["cuff-button"] == (0, 1)
    assert chance["shirt-button"] == pytest.approx((0.8, 0.2))


def test_a_group_that_says_how_common_it_is_counts_so_however_many_it_holds(mini: Path) -> None:
    path = mini / "keydata/entries/debris/button.yaml"
    path.write_text(
        path.read_text("utf-8").replace("theme: debris", "theme: debris\ncommonness: {class: rare, basis: {kind: memory}}"), "utf-8"
    )
    for letter in "ab":
        (mini / f"keydata/entries/debris/pin-{letter}.yaml").write_text(
            f"{{id: pin-{letter}, kind: object, theme: debris, names: {{common: Pin}}, within: [pin], summary: Invented., "
            'commonness: {class: common, basis: {kind: memory}}, contributors: [wetmount founders], reviewed: "2026-11-25"}',
            "utf-8",
        )
    (mini / "keydata/entries/debris/pin.yaml").write_text(
        '{id: pin, kind: group, theme: debris, names: {common: Pin}, summary: Invented., contributors: [wetmount founders], reviewed: "2026-11-25"}',
        "utf-8",
    )
    library = load(mini).library
    prior = priors(library, ("button", "pin"))
    assert prior["pin-a"] == pytest.approx(9 / 19)  # 9 + 9 against 1 for all buttons
    assert prior["shirt-button"] == pytest.approx(27 / 40 / 19)


def test_a_number_read_with_error_agrees_with_drawing_many(mini: Path) -> None:
    """The closed form for an even number plus an even error, against a plain simulation (seeded)."""
    chance = random.Random(7)
    shown, error, limit = Interval(8, 12), 3.0, 10.5
    drawn = sum(chance.uniform(8, 12) + chance.uniform(-error, error) < limit for _ in range(200_000)) / 200_000
    assert _read_below(shown, limit, error) == pytest.approx(drawn, abs=0.005)


def test_the_chances_of_the_leads_add_up_to_one(library: Library) -> None:
    """In every real key, where some numbers may be anything and some are cut in three."""
    for key in library.keys.values():
        for rows in ground(library, key).chance.values():
            for row in rows.values():
                assert sum(row) == pytest.approx(1)
                assert min(row) >= 0


def test_entropy_of_even_weights_is_the_logarithm_of_their_number() -> None:
    assert entropy([1] * 8) == pytest.approx(3)
    assert entropy([0.4, 0.3, 0.2, 0.1]) == pytest.approx(-sum(p * math.log2(p) for p in (0.4, 0.3, 0.2, 0.1)))
    assert entropy([]) == 0
