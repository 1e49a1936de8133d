"""Most probable numbers against a printed table and printed examples; chambers by their sizes."""

from __future__ import annotations

import math

import pytest

from keytool.bench import chambers, mpn
from keytool.bench.special import normal_quantile
from keytool.library import Library
from tests.bench.conftest import near

Z = normal_quantile(0.975)
BAM = """0-0-1 3; 0-0-2 6; 0-0-3 9; 0-1-0 3; 0-1-1 6.1; 0-1-2 9.2; 0-1-3 12; 0-2-0 6.2; 0-2-1 9.3; 0-2-2 12; 0-2-3 16; 0-3-0 9.4;
1-0-0 3.6; 1-0-1 7.2; 1-0-2 11; 1-0-3 15; 1-1-0 7.4; 1-1-1 11; 1-1-2 15; 1-1-3 19; 1-2-0 11; 1-2-1 15; 1-2-2 20; 1-2-3 24; 1-3-0 16;
2-0-0 9.2; 2-0-1 14; 2-0-2 20; 2-0-3 26; 2-1-0 15; 2-1-1 20; 2-1-2 27; 2-1-3 34; 2-2-0 21; 2-2-1 28; 2-2-2 35; 2-2-3 42; 2-3-0 29;
3-0-0 23; 3-0-1 38; 3-0-2 64; 3-0-3 95; 3-1-0 43; 3-1-1 75; 3-1-2 120; 3-1-3 160; 3-2-0 93; 3-2-1 150; 3-2-2 210; 3-2-3 290"""
"""Three tubes each of 0.1, 0.01 and 0.001 g: the table of the FDA Bacteriological Analytical Manual, appendix 2, as read in
Yousef and others, Analytical Food Microbiology, table 3.2, which credits it."""


def levels(pattern: str, tubes: int = 3, amounts: tuple[float, ...] = (0.1, 0.01, 0.001)) -> list[mpn.Level]:
    return [mpn.Level(tubes, int(g), amount) for g, amount in zip(pattern.split("-"), amounts, strict=True)]


@pytest.mark.parametrize("row", [each.strip() for each in BAM.replace("\n", " ").split(";")])
def test_every_row_of_the_manual(row: str) -> None:
    pattern, printed = row.split()
    value = mpn.most_probable_number(levels(pattern), Z).value
    assert float(f"{value:.2g}") == float(printed)


@pytest.mark.parametrize(("pattern", "printed"), [("3-3-0", 240), ("3-3-1", 460), ("3-3-2", 1100)])  # the same table, recalled
def test_the_rows_recalled(pattern: str, printed: float) -> None:
    assert float(f"{mpn.most_probable_number(levels(pattern), Z).value:.2g}") == printed


def test_the_printed_example_of_the_manual() -> None:  # 5-3-0 of ten: 9.951, 4.891 to 20.263, SE 0.1575, rarity 0.0925 (seen on copies)
    found = mpn.most_probable_number(levels("5-3-0", 10), Z)
    assert found.value == pytest.approx(9.951, rel=1e-4)
    assert (found.low, found.high) == pytest.approx((4.891, 20.263), rel=1e-3)
    assert found.log10_error == pytest.approx(0.1575, rel=1e-3)
    assert found.rarity == pytest.approx(0.0925, abs=5e-5)


@pytest.mark.parametrize(
    ("given", "printed"),
    [
        ([(5, 5, 10), (5, 3, 1), (5, 0, 0.1)], 0.792427),  # Haas, Rose and Gerba 2014, example 6.4: 0.792 (as quoted in a public test file)
        ([(5, 1, 1), (5, 5, 0.1)], 1.29),  # Blodgett 2002, two levels (as quoted there)
        ([(5, 4, 1), (5, 2, 0.1)], 2.21),  # the same
        ([(50, 50, 2), (50, 34, 0.2), (50, 7, 0.02)], None),
        (
            [(29, 7, 0.032), (30, 4, 0.026), (28, 3, 0.021), (30, 4, 0.018), (29, 2, 0.016), (25, 2, 0.011), (30, 2, 0.005)],
            6.949,
        ),  # Haas and others
    ],
)
def test_published_examples(given: list[tuple[int, int, float]], printed: float | None) -> None:
    found = mpn.most_probable_number([mpn.Level(*each) for each in given], Z)
    if printed is not None:
        assert found.value == pytest.approx(printed, rel=3e-3)
    assert found.low < found.value < found.high


def test_all_and_none_have_one_end_only() -> None:  # Ridout 1994 prints 9.0 and 465.1 (as quoted in a public test file)
    none = mpn.most_probable_number(levels("0-0-0"), Z)
    assert none.value == 0
    assert near(none.high, 8.99619)
    every = mpn.most_probable_number(levels("3-3-3"), Z)
    assert every.value == math.inf
    assert near(every.low, 465.143)


def test_one_level_has_a_closed_form() -> None:
    assert near(mpn.one_level(7, 10, 0.1), 12.0397)
    assert near(mpn.most_probable_number([mpn.Level(10, 7, 0.1)], Z).value, 12.0397)


def test_squares_of_chambers(library: Library) -> None:  # teaching pages on counting cells (seen)
    sizes = library.bench.chambers
    neubauer = sizes["improved-neubauer"]
    assert chambers.square_ml(neubauer.squares_mm["large"], neubauer.depth_mm) == pytest.approx(1e-4)
    assert chambers.square_ml(neubauer.squares_mm["group"], neubauer.depth_mm) == pytest.approx(4e-6)
    assert chambers.square_ml(neubauer.squares_mm["smallest"], neubauer.depth_mm) == pytest.approx(2.5e-7)
    assert chambers.square_ml(sizes["petroff-hausser"].squares_mm["group"], sizes["petroff-hausser"].depth_mm) == pytest.approx(
        1 / 1_250_000
    )
    assert chambers.square_ml(1, sizes["sedgewick-rafter"].depth_mm) == pytest.approx(1e-3)
    assert chambers.chamber_per_ml(187, 5, 4e-6) == pytest.approx(9.35e6)
    assert chambers.chamber_per_ml(86, 4, 1e-4) * 5 == pytest.approx(1.075e6)
    assert chambers.chamber_per_ml(84, 100, 1e-3) == pytest.approx(840)
