"""Animals have the size asked for, and as many legs as their kind has."""

from itertools import pairwise
from math import dist

import pytest
from test_sizes import drawn

from keytool.figures import draw
from keytool.figures.shapes import Path, Swell

TALL = (  # forms drawn from above, head at the top
    *("mite", "beetle-mite", "shield-mite", "mite-larva", "symphylan", "pauropod", "proturan", "dipluran"),
    *("centipede", "beetle-larva", "thrips", "spider", "false-scorpion"),
)
LEGS = {
    **{"mite": 8, "beetle-mite": 8, "shield-mite": 8, "mite-larva": 6, "spider": 8, "false-scorpion": 8},
    **{"beetle-larva": 6, "thrips": 6, "proturan": 6, "dipluran": 6, "symphylan": 24, "pauropod": 18, "centipede": 30},
    **{"springtail": 3, "globe-springtail": 3, "long-springtail": 3},  # from the side
}


@pytest.mark.parametrize("form", TALL)
@pytest.mark.parametrize("length", [400, 3000])
def test_an_animal_is_as_long_as_asked(form, length):
    assert drawn("many-legged", form=form, length=length).span("outline")[1] == pytest.approx(length, rel=0.01)


@pytest.mark.parametrize("form", ["globe-springtail", "long-springtail", "springtail"])
def test_a_springtail_is_as_long_as_asked(form):
    assert drawn("many-legged", form=form, length=900).span("outline")[0] == pytest.approx(900, rel=0.01)


def test_a_woodlouse_is_as_long_as_asked():
    assert drawn("many-legged", form="woodlouse", length=900).span("outline", "shields")[1] == pytest.approx(900, rel=0.01)


def test_a_bent_millipede_spans_a_little_less_than_its_length():
    assert 0.98 * 6000 < drawn("many-legged", form="millipede", length=6000).span("outline")[1] < 6000


def test_several_together_are_to_one_scale():
    """In the group of three the millipede has the length asked for; the others are shorter, as they are drawn alone."""
    spans = [
        max(dist(p, q) for p, q in pairwise([min(pts, key=lambda p: p[1]), max(pts, key=lambda p: p[1])])) / 7.3
        for part, pts, _ in drawn("many-legged", form="litter-trio", length=3000).paths
        if part == "outline"
    ]
    assert max(spans) == pytest.approx(3000, rel=0.02)
    pair = drawn("many-legged", form="spider-and-false-scorpion", length=1500)
    assert pair.span("outline")[1] > 2 * 1500


@pytest.mark.parametrize("form", LEGS)
def test_an_animal_has_its_own_number_of_legs(form):
    """Every leg ends in one pair of claws."""
    claws = [
        s for s in draw("many-legged", {"form": form}, title="t").shapes if isinstance(s, Path) and s.part == "legs" and s.weight == 0.9
    ]
    assert len(claws) == LEGS[form]


def test_a_woodlouse_has_seven_pairs_of_legs_and_a_millipede_two_to_most_rings():
    def legs(form):
        return sum(isinstance(s, Swell) and s.part == "legs" for s in draw("many-legged", {"form": form}, title="t").shapes)

    assert legs("woodlouse") == 14
    assert legs("millipede") > 2 * 30


@pytest.mark.parametrize(
    ("kind", "params", "parts", "wanted"),
    [
        ("telescoping-animal", {"pose": "sliding", "length": 300}, ("outline",), (None, 300)),
        ("shelled-rotifer", {"skin": "soft", "length": 120}, ("shell",), (None, 120)),
        ("pollen", {"form": "pored", "diameter": 26}, ("outline",), (26, 26)),
        ("crossed-films", {"field": 450}, ("field",), (450, 450)),
        ("crumb", {"form": "jelly", "size": 80}, ("outline",), (80, None)),
        ("crumb", {"form": "gritty", "size": 80}, ("outline",), (80, None)),
    ],
)
def test_the_rest_have_the_size_asked_for(kind, params, parts, wanted):
    for asked, got in zip(wanted, drawn(kind, **params).span(*parts), strict=True):
        assert asked is None or got == pytest.approx(asked, rel=0.01)


@pytest.mark.parametrize("form", ["mixed", "equal", "pair"])
def test_the_largest_circle_has_the_diameter_asked_for(form):
    picture = drawn("circles", form=form, diameter=30)
    wide = [(max(x for x, _ in pts) - min(x for x, _ in pts)) / picture.px_per_um for part, pts, _ in picture.paths if part == "outline"]
    assert max(wide) == pytest.approx(30, rel=0.01)
    assert (min(wide) > 29.7) == (form != "mixed")


@pytest.mark.parametrize("foot", ["grain", "thallus", "torn"])
def test_a_tube_is_as_wide_as_asked(foot):
    picture = drawn("tube-and-foot", foot=foot, width=12)
    left, right = [pts for part, pts, _ in picture.paths if part == "outline"]
    across = [min(dist(p, q) for q in right) / picture.px_per_um for p in left[len(left) // 4 : len(left) // 3]]
    assert min(across) == pytest.approx(12, rel=0.12)


@pytest.mark.parametrize(("before", "share"), [("same", 1.07), ("smaller", 0.62)])
def test_the_earlier_outline_of_a_crystal_lies_round_or_within_it(before, share):
    picture = drawn("crystal", form="box", before=before, size=30)
    assert picture.span("before")[0] / picture.span("outline")[0] == pytest.approx(share, rel=0.05)


@pytest.mark.parametrize(("form", "rings"), [("proturan", 15), ("dipluran", 13), ("symphylan", 14), ("pauropod", 6), ("beetle-larva", 13)])
def test_an_animal_has_its_own_number_of_rings(form, rings):
    """Three that bear the legs and twelve behind them in a proturan; a border lies between every two."""
    borders = [s for s in draw("many-legged", {"form": form}, title="t").shapes if isinstance(s, Swell) and s.part == "segments"]
    assert len(borders) == rings - 1


def test_feelers_have_no_claws():
    feelers = [s for s in draw("many-legged", {"form": "springtail"}, title="t").shapes if s.part == "feelers"]
    assert feelers and not [s for s in feelers if isinstance(s, Path) and s.weight == 0.9]
