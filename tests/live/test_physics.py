"""What moves obeys the laws it is said to obey. Every seed is fixed, so these tests never waver."""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable
from itertools import pairwise
from typing import Any

import pytest

from keytool.figures import motion
from keytool.library.model import Library

pytestmark = pytest.mark.browser

Script = Callable[..., Any]

BOLTZMANN = 1.380649e-23  # J/K, exact in the SI since 2019
KELVIN_20 = 293.15
WATER_20 = 1.002e-3  # Pa s, water at 20 °C, CRC Handbook of Chemistry and Physics (recalled)


def stokes_einstein(diameter_um: float) -> float:
    """D = kT / (3 pi eta d), µm²/s: Einstein 1905."""
    return BOLTZMANN * KELVIN_20 / (3 * math.pi * WATER_20 * diameter_um * 1e-6) * 1e12


def one(motion: str, count: int, **parameters: Any) -> dict[str, Any]:
    return {"id": "it", "motion": motion, "body": "dot", "holds": False, "count": count, "parameters": parameters}


PATHS = """(W, arg) => {
  const field = W.createField({ diameter_um: 450, bounds: "open", seed: arg.seed || 1, drift: arg.drift, movers: [].concat(arg.mover) });
  const shots = [field.bodies.map(b => [b.x, b.y])];
  let time = 0;
  for (const until of arg.times) { W.step(field, until - time); time = until; shots.push(field.bodies.map(b => [b.x, b.y])); }
  return shots;
}"""


def paths(script: Script, mover: Any, times: list[float], **more: Any) -> list[list[list[float]]]:
    return script(PATHS, {"mover": mover, "times": times, **more})


def mean_square(shots: list[list[list[float]]], late: int, early: int = 0) -> float:
    pairs = list(zip(shots[early], shots[late], strict=True))
    return sum((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2 for a, b in pairs) / len(pairs)


@pytest.mark.parametrize("diameter", [0.5, 1, 2, 5])
def test_brownian_mean_square_displacement_is_4Dt(script: Script, diameter: float) -> None:
    count = 6000
    shots = paths(script, one("jiggle", count, length=diameter, width=diameter), [1, 4])
    for time, late in ((1, 1), (4, 2)):
        expected = 4 * stokes_einstein(diameter) * time
        # r² in the plane is exponential, so its mean has a relative standard error of 1/sqrt(count)
        assert mean_square(shots, late) == pytest.approx(expected, rel=4 / math.sqrt(count))


def test_the_script_gives_the_bench_figure_for_one_micrometre(script: Script) -> None:
    # bench quantity brownian-one-second: a 1 µm speck strays 1.3 µm (1.31) in 1 s, root mean square, at 20 °C
    assert math.sqrt(4 * script("(W) => W.diffusion(1, 20, 1.002)")) == pytest.approx(1.3093, abs=1e-4)


def test_rods_turn_as_fast_as_published_end_corrections_say(script: Script) -> None:
    # 3kT(ln p - 0.662 + 0.917/p - 0.050/p²)/(pi eta L³), Tirado and Garcia de la Torre (from memory):
    # a 2 × 0.6 µm rod turns about 51° in 1 s
    turning = script("(W) => W.rodTurning(2, 0.6, 20, 1.002)")
    assert math.degrees(math.sqrt(2 * turning)) == pytest.approx(51, abs=1)


def test_time_law_tells_jiggling_from_swimming(script: Script) -> None:
    # mean square displacement at 4 s over that at 1 s: 4 for Brownian motion, 16 for straight motion (Einstein 1905; v·t)
    jiggle = paths(script, one("jiggle", 8000, length=1, width=1), [1, 4])
    assert mean_square(jiggle, 2) / mean_square(jiggle, 1) == pytest.approx(4, rel=0.06)
    straight = paths(script, one("glide", 50, length=10, width=4, speed=[2, 15]), [1, 4])
    assert mean_square(straight, 2) / mean_square(straight, 1) == pytest.approx(16, rel=1e-9)


@pytest.mark.parametrize(
    ("motion", "more", "within"),
    [
        ("glide", {}, 1e-9),
        ("swim", {"turns": 1, "spiral-width": 0.2}, 1e-6),  # over whole turns of the screw
        ("undulate", {"waves": 2, "wavelength": 1.5, "bend": 60}, 1e-9),
    ],
)
def test_straight_swimmers_go_speed_times_time(script: Script, motion: str, more: dict[str, float], within: float) -> None:
    shots = paths(script, one(motion, 20, length=40, width=15, speed=130, **more), [3])
    for start, end in zip(shots[0], shots[1], strict=True):
        assert math.dist(start, end) == pytest.approx(130 * 3, rel=within)


def test_run_and_tumble_spreads_as_v2_tau_over_2(script: Script) -> None:
    # Berg, Random Walks in Biology (from memory): D = v² tau / 2 in two dimensions when each tumble forgets the course.
    speed, mean_run, count, time = 20.0, 1.0, 3000, 40.0
    shots = paths(script, one("run", count, length=2, width=0.8, speed=speed, run=mean_run, tumble=0, turn=90), [time])
    short = 1 - mean_run / time * (1 - math.exp(-time / mean_run))  # the first run is straight: exact for exponential runs
    expected = 4 * time * (speed**2 * mean_run / 2 * short + script("(W) => W.rodDiffusion(2, 0.8, 20, 1.002)"))
    assert mean_square(shots, 1) == pytest.approx(expected, rel=4 / math.sqrt(count))


def test_run_and_tumble_with_its_true_turns_and_pauses(script: Script, library: Library) -> None:
    # The same with a mean turn of 65° (mean cosine from turns even over 0 to 130°: 0.338; Berg and Brown 1972 gives about 1/3, recalled),
    # with strays along the run and with pauses: D = share of time running × v² / (2 ((1 - cos) / tau + stray² / 2)).
    figures = {name: each.low for name, each in library.manners["run-and-tumble"].parameters.items() if each.low == each.high}
    speed, count, time = 20.0, 3000, 60.0
    shots = paths(script, one("run", count, length=2, width=0.8, speed=speed, **figures), [20, time])
    most = math.radians(2 * figures["turn"])
    forgets = (1 - math.sin(most) / most) / figures["run"] + math.radians(figures["wander"]) ** 2 / 2
    expected = speed**2 / (2 * forgets) * figures["run"] / (figures["run"] + figures["tumble"])
    slope = (mean_square(shots, 2) - mean_square(shots, 1)) / (4 * 40)
    assert slope == pytest.approx(expected, rel=0.1)


def test_drift_moves_all_that_is_free_alike(script: Script) -> None:
    movers = [
        {**one("jiggle", 20, length=1, width=1), "id": "speck"},
        {**one("swim", 5, length=40, width=15, speed=300, turns=1, **{"spiral-width": 0.2}), "id": "swimmer"},
        {**one("wobble", 5, length=6, width=4, speed=60, tilt=20, wobbles=5, run=1, rest=1), "id": "wobbler"},
        {**one("still", 5, length=20, width=15), "id": "grain", "holds": True},
        {**one("glide", 5, length=10, width=4, speed=8), "id": "glider", "holds": True},
    ]
    calm = paths(script, movers, [4])
    drifting = paths(script, movers, [4], drift={"speed": 25, "direction": 0.5})
    shifts = [(b[0] - a[0], b[1] - a[1]) for a, b in zip(calm[1], drifting[1], strict=True)]
    for shift in shifts[:30]:
        assert shift == pytest.approx((100 * math.cos(0.5), 100 * math.sin(0.5)), abs=1e-9)
    for shift in shifts[30:]:
        assert shift == pytest.approx((0, 0), abs=1e-12)


def test_drift_carries_every_manner_that_is_free_and_none_that_holds(script: Script, library: Library) -> None:
    movers = [{**each, "count": 1} for each in motion.whole_field(library, [])["movers"]]
    calm = paths(script, movers, [3])
    drifting = paths(script, movers, [3], drift={"speed": 40, "direction": -1.2})
    carried = (120 * math.cos(-1.2), 120 * math.sin(-1.2))
    for mover, a, b in zip(movers, calm[1], drifting[1], strict=True):
        assert (b[0] - a[0], b[1] - a[1]) == pytest.approx((0, 0) if mover["holds"] else carried, abs=1e-6), mover["id"]


WORM = """(W, arg) => {
  const field = W.createField({ diameter_um: 4500, bounds: "open", movers: [arg.mover] });
  const lines = [];
  for (let i = 0; i < arg.frames; i++) { lines.push(W.spine(field.bodies[0], 60)); W.step(field, arg.every); }
  return { lines, heading: field.bodies[0].heading };
}"""


@pytest.mark.parametrize(("waves", "wavelength", "speed"), [(1.8, 1.5, 100), (0.3, 0.7, 20)])
def test_a_worm_bends_at_its_frequency_and_wavelength(script: Script, waves: float, wavelength: float, speed: float) -> None:
    # measured from the points of the body: how its curvature runs through one place, and how far the phase lags along it
    length, every, seconds = 600.0, 1 / 60, 20
    told = script(
        WORM,
        {
            "mover": one("undulate", 1, length=length, width=25, speed=speed, waves=waves, wavelength=wavelength, bend=50),
            "frames": seconds * 60,
            "every": every,
        },
    )
    lines = told["lines"]
    bends = [_bends(line) for line in lines]

    def wave(place: int, frequency: float) -> complex:
        return sum(row[place] * cmath.exp(-2j * math.pi * frequency * i * every) for i, row in enumerate(bends)) / len(bends)

    tried = [waves * (0.7 + 0.005 * i) for i in range(121)]
    found = max(tried, key=lambda frequency: abs(wave(29, frequency)))
    assert found == pytest.approx(waves, rel=0.02)
    lag = sum(cmath.phase(wave(place, waves) / wave(place + 5, waves)) for place in range(5, 50, 5)) / 9
    assert lag > 0, "waves run from head to tail"
    assert 2 * math.pi * (5 / 60) / lag == pytest.approx(wavelength, rel=0.03)
    for line in lines[::50]:
        assert sum(math.dist(a, b) for a, b in pairwise(line)) == pytest.approx(length, rel=1e-9), "it keeps its length"
    middle = [tuple(sum(axis) / 61 for axis in zip(*line, strict=True)) for line in (lines[0], lines[-1])]
    travel = math.atan2(middle[1][1] - middle[0][1], middle[1][0] - middle[0][0])
    assert math.cos(travel - told["heading"]) == pytest.approx(1, abs=1e-6)
    mean_head = [sum(line[0][axis] - line[-1][axis] for line in lines) for axis in (0, 1)]
    assert math.cos(math.atan2(mean_head[1], mean_head[0]) - travel) > 0.99, "head first"
    assert math.dist(*middle) / seconds < 0.35 * waves * wavelength * length, "far slower than its waves"


def _bends(line: list[list[float]]) -> list[float]:
    """The turn from each piece of a line to the next."""
    ways = [math.atan2(b[1] - a[1], b[0] - a[0]) for a, b in pairwise(line)]
    return [math.remainder(b - a, 2 * math.pi) for a, b in pairwise(ways)]
