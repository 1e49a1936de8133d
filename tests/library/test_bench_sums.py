"""The figures that the library gives as computed, worked again from the formula and its constants.

First, every sum that a basis shows is done over. Then the figures of optics, jiggling, sinking,
counting and grain size are held against formulas and limits from outside, named beside each.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator

import pytest

from keytool.library import Library, Loaded
from keytool.library.basis import Basis
from keytool.library.checks.file_parts import bases, texts
from keytool.library.value import Interval
from keytool.library.wording import quantity_words
from tests.library.arithmetic import sums

BOLTZMANN = 1.380649e-23  # J/K, exact in the SI of 2019
TWENTY_DEGREES, TEN_DEGREES = 293.15, 283.15  # K
WATER, COLD_WATER = 1.002e-3, 1.306e-3  # Pa s, viscosity of water at 20 °C and 10 °C
QUARTZ, DENSITY_OF_WATER = 2650.0, 998.2  # kg/m³, quartz and water at 20 °C
GRAVITY = 9.80665  # m/s², standard
GREEN = 0.55  # µm


def shown_sums(loaded: Loaded) -> Iterator[tuple[str, str]]:
    """Where a computed basis stands, and its words."""
    for part in bases(loaded):
        if part.value["kind"] == "computed":
            yield f"{part.place.file}:{part.place.line}", part.value["how"]


def test_every_sum_that_a_basis_shows_is_right(loaded: Loaded, record_property: Callable[[str, object], None]) -> None:
    read = [(where, each) for where, how in shown_sums(loaded) for each in sums(how)]
    assert [f"{where}: {each}" for where, each in read if not each.holds()] == []
    assert len(read) >= 100
    record_property("score", f"{len(read)} sums shown in the library were worked again, none wrong.")


@pytest.mark.parametrize("how", [
    "0.61 × 550 nm / 0.65 = 0.50 µm", "0.05 mL / 484 mm² = 1.03 mm", "(3 / 2.5)² = 1.40", "-ln 0.05 / 0.2 = 14.0",
    "exp(-10² / (4 × 0.43 × 2)) = 2e-12", "450 µm / 50 µm = 9 and 450 µm / 20 µm = 23.5", "a / b = 8 hours = 7 min",
])  # fmt: skip
def test_a_wrong_sum_is_found(how: str) -> None:
    assert [each.holds() for each in sums(how)].count(False) == 1


@pytest.mark.parametrize(
    "how", ["sqrt(4 D t), D = 0.43", "chi-square 0.025 with 2 degrees of freedom / 2 = 0.0253", "× 3043 fields = 1.08 m"]
)
def test_what_is_no_plain_sum_is_left_alone(how: str) -> None:
    assert list(sums(how)) == []


RATIO = re.compile(r"body length / ([\d.]+), (?:the middle of its length to width ratio ([\d.]+) to ([\d.]+)|its length to width ratio)")


def test_widths_worked_out_from_lengths_are_right(library: Library) -> None:
    """A width given as length over the middle of the ratio is that, to the nearest micrometre."""
    worked = 0
    for entry in library.entries.values():
        width = entry.statements.get("body-width")
        for basis in width.basis if width and width.stated_by == entry.id else ():
            if found := RATIO.match(basis.how):
                length, showing = entry.statements["body-length"].showing, width.showing
                assert isinstance(length, Interval) and isinstance(showing, Interval), entry.id
                ratio = float(found[1])
                assert not found[2] or math.isclose(ratio, (float(found[2]) + float(found[3])) / 2), entry.id
                assert (showing.low, showing.high) == pytest.approx((length.low / ratio, length.high / ratio), abs=0.501), entry.id
                worked += 1
    assert worked >= 30


def figure(library: Library, id: str) -> tuple[float, float]:
    """A bench quantity as it is shown, in its own unit."""
    quantity = library.quantities[id]
    assert any(isinstance(each, Basis) and each.kind == "computed" for each in quantity.basis), f"{id} is not said to be computed"
    return quantity.low, quantity.high


def near(library: Library, id: str, expected: float, share: float) -> None:
    low, high = figure(library, id)
    assert low == high == pytest.approx(expected, rel=share), id


@pytest.mark.parametrize(("id", "aperture"), [("resolution-four", 0.10), ("resolution-ten", 0.25), ("resolution-forty", 0.65)])
def test_the_finest_spacing_is_that_of_rayleigh(library: Library, id: str, aperture: float) -> None:
    # Rayleigh: 0.61 λ / NA for a self-luminous pair
    near(library, id, 0.61 * GREEN / aperture, 0.04)


def test_the_finest_spacing_lies_between_the_limits_of_abbe(library: Library) -> None:
    """Abbe 1873: λ / (NA of the objective + NA of the light). Full cone λ / 2 NA, straight light λ / NA."""
    widest, narrow = GREEN / (2 * 0.65), GREEN / 0.65
    full, closed = figure(library, "resolution-forty")[0], figure(library, "resolution-forty-closed")[0]
    assert widest < full < closed < narrow
    assert closed == pytest.approx(1.22 * GREEN / (0.65 + 0.30), rel=0.02)


def test_the_depth_in_focus_is_that_of_berek(library: Library) -> None:
    """Berek 1927, as an optics course restates it: n (λ / 2 NA² + 340 µm / NA M), M the total magnification."""
    near(library, "depth-four", GREEN / (2 * 0.10**2) + 340 / (0.10 * 40), 0.01)
    near(library, "depth-forty", 1.333 * (GREEN / (2 * 0.65**2) + 340 / (0.65 * 400)), 0.01)


def stray(diameter: float, time: float, temperature: float = TWENTY_DEGREES, viscosity: float = WATER) -> float:
    """Root-mean-square way in the plane in µm: sqrt(4 D t), D = kT / (3 π η d) (Stokes and Einstein, Einstein 1905)."""
    diffusion = BOLTZMANN * temperature / (3 * math.pi * viscosity * diameter * 1e-6)
    return 1e6 * math.sqrt(4 * diffusion * time)


@pytest.mark.parametrize(("id", "diameter", "time"), [
    ("brownian-one-second", 1, 1), ("brownian-ten-seconds", 1, 10), ("jiggle-half-one", 0.5, 1), ("jiggle-two-one", 2, 1), ("jiggle-five-one", 5, 1),
])  # fmt: skip
def test_jiggling_is_that_of_einstein(library: Library, id: str, diameter: float, time: float) -> None:
    near(library, id, stray(diameter, time), 0.035)


def test_jiggling_in_the_cold_is_that_of_einstein(library: Library) -> None:
    near(library, "jiggle-cold", stray(1, 1, TEN_DEGREES, COLD_WATER), 0.03)


def test_jiggling_takes_minutes_to_go_far(library: Library) -> None:
    near(library, "jiggle-gap-time", (20 / stray(1, 1)) ** 2 / 60, 0.04)


def test_jiggling_near_the_glass_is_that_of_faxen(library: Library) -> None:
    """Faxén 1922, motion along a wall: 1 - 9q/16 + q³/8 - 45q⁴/256 - q⁵/16, q the radius over the height of the centre."""
    q = 0.5 / 0.6
    near(library, "jiggle-near-glass", math.sqrt(1 - 9 * q / 16 + q**3 / 8 - 45 * q**4 / 256 - q**5 / 16), 0.01)


def sinking(diameter: float, difference: float) -> float:
    """Speed in µm/s of a ball of that diameter in µm, that much heavier than water in kg/m³ (Stokes 1851)."""
    return difference * GRAVITY * (diameter * 1e-6) ** 2 / (18 * WATER) * 1e6


def test_sinking_is_that_of_stokes(library: Library) -> None:
    quartz, film = QUARTZ - DENSITY_OF_WATER, 1e6 * 0.05e-6 / 0.022**2
    near(library, "sink-silt", film / sinking(20, quartz), 0.05)
    near(library, "sink-one-micron", film / sinking(1, quartz) / 60, 0.05)
    near(library, "sink-bacterium", film / sinking(1, 80) / 60, 0.02)
    near(library, "rise-oil", sinking(20, 80), 0.03)
    grain = math.sqrt(18 * WATER * (0.05 / 60) / (quartz * GRAVITY)) * 1e6  # cleared through 5 cm in a minute
    near(library, "settled-grain", grain, 0.02)
    # Stokes holds while the Reynolds number stays under about 0.3
    assert DENSITY_OF_WATER * (0.05 / 60) * grain * 1e-6 / WATER < 0.3


def test_film_and_fields_follow_from_drop_coverslip_and_field_number(library: Library) -> None:
    near(library, "film-depth", 50 / 22**2, 0.04)
    near(library, "field-diameter-low", 18 / 4, 1e-9)
    near(library, "field-diameter-high", 18 / 40, 1e-9)
    near(library, "one-in-field", 22**2 / (math.pi / 4 * 0.45**2) / 0.05 * 5, 0.02)
    # mean chord of a circle: π/4 of its diameter
    near(library, "strand-in-field", math.pi / 4 * 0.45e-3 * 22**2 / (math.pi / 4 * 0.45**2) / 0.05 * 5, 0.03)


def at_most(count: int, mean: float) -> float:
    """Chance of at most so many, by the law of Poisson."""
    return math.fsum(math.exp(-mean + k * math.log(mean) - math.lgamma(k + 1)) for k in range(count + 1))


@pytest.mark.parametrize(("id", "count"), [("count-one-limits", 1), ("count-twenty-limits", 20), ("count-hundred-limits", 100)])
def test_limits_of_a_count_are_the_exact_ones(library: Library, id: str, count: int) -> None:
    """Garwood 1936: each limit leaves two and a half in a hundred outside. Both are shown to two or three figures."""
    low, high = figure(library, id)
    step = 10.0 ** (math.floor(math.log10(low)) - 1) / 2 if low >= 1 else 0.005
    assert 1 - at_most(count - 1, low - step) < 0.025 < 1 - at_most(count - 1, low + step)
    step = 0.05 if high < 10 else 0.5
    assert at_most(count, high + step) < 0.025 < at_most(count, high - step)


def test_chance_of_missing_all(library: Library) -> None:
    near(library, "drops-for-a-worm", -math.log(0.05) / 0.2, 0.01)
    near(library, "none-in-drop", -math.log(0.05) / 0.05 * 5, 0.01)


AMERICAN = {"clay": (0, 2), "silt": (2, 50), "sand": (50, 2000)}
"""United States Department of Agriculture, in µm. Read in the Dictionary of Forestry, entry on soil separates."""
INTERNATIONAL = {"clay": (0, 2), "silt": (2, 63), "sand": (63, 2000)}
"""ISO 14688-1, in µm. The limits of silt were read as quoted by a European vocabulary; the rest is recalled."""
INTERNATIONAL_INNER = (2, 6.3, 20, 63, 200, 630, 2000)
"""ISO 14688-1, fine, medium and coarse silt and sand, in µm; recalled."""


def test_grain_classes_are_those_of_the_two_systems(library: Library) -> None:
    limit = {
        id: library.quantities[id].low
        for id in ("clay-limit", "silt-middle", "sand-limit-american", "sand-limit-international", "sand-middle")
    }
    assert limit["clay-limit"] == AMERICAN["clay"][1] == INTERNATIONAL["clay"][1]
    assert limit["sand-limit-american"] == AMERICAN["silt"][1] == AMERICAN["sand"][0]
    assert limit["sand-limit-international"] == INTERNATIONAL["silt"][1] == INTERNATIONAL["sand"][0]
    assert {limit["silt-middle"], limit["sand-middle"]} <= set(INTERNATIONAL_INNER)
    for id, low, high in (("fine-silt-grain", 2, 20), ("coarse-silt-grain", 20, 50), ("silt-or-sand-grain", 50, 63),
                          ("fine-sand-grain", 63, 200), ("coarse-sand-grain", 200, 2000)):  # fmt: skip
        width = library.entries[id].statements["body-width"].showing
        assert isinstance(width, Interval)
        assert (width.low, width.high) == pytest.approx((low, high), rel=0.006), id
    # Only the grain between 50 and 63 µm is silt in one system and sand in the other.
    for middle, american, international in ((10, "silt", "silt"), (35, "silt", "silt"), (55, "sand", "silt"), (130, "sand", "sand")):
        assert [name for name, (low, high) in AMERICAN.items() if low <= middle < high] == [american]
        assert [name for name, (low, high) in INTERNATIONAL.items() if low <= middle < high] == [international]


WORKED_OUT = ("resolution-four", "resolution-ten", "resolution-forty", "resolution-forty-closed", "depth-four", "depth-forty",
              "brownian-one-second", "brownian-ten-seconds", "field-diameter-low", "field-diameter-high")  # fmt: skip


def test_figures_worked_out_once_are_not_typed_again(loaded: Loaded) -> None:
    """A text shows them by {id}, so that page, card and command line all change with the one place they stand in."""
    typed = {quantity_words(loaded.library.quantities[id]): id for id in WORKED_OUT}
    pattern = re.compile(rf"(?<![\d.])({'|'.join(map(re.escape, typed))})(?![\w/])")
    found = [
        (part.place.file, part.place.line, typed[match[1]])
        for part in texts(loaded)
        if part.kind not in ("quantities", "sources") and part.path[-1] not in ("how", "note")
        for match in pattern.finditer(part.value)
    ]
    assert found == []
