"""What is asked for in micrometres is what is drawn, to one per cent: cells, spores, threads and scraps."""

from math import cos, pi, sin

import pytest
from test_sizes import drawn

from keytool.figures import kinds
from keytool.figures.sheet import with_needs


def choices(kind, name="form"):
    return next(p for p in kinds()[kind].params if p.name == name).choices


TALL = {  # kind, forms, the parts that make up the length
    "ciliate": (choices("ciliate"), ("outline", "mouth")),
    "flagellate": (choices("flagellate"), ("outline",)),
    "amoeba": (choices("amoeba"), ("outline",)),
    "shelled-amoeba": (("flask", "pear", "egg", "lens"), ("outline",)),
    "spore": (tuple(form for form in choices("spore") if form not in ("chain", "brush", "head", "many-ways")), ("outline",)),
    "starch-grain": (choices("starch-grain"), ("outline",)),
    "small-crustacean": (("copepod", "nauplius", "barrel"), ("outline",)),
}


@pytest.mark.parametrize(("kind", "form"), [(kind, form) for kind, (forms, _) in TALL.items() for form in forms])
@pytest.mark.parametrize("length", [60, 140])
def test_cells_are_as_long_as_asked(kind, form, length):
    got = drawn(kind, form=form, length=length).span(*TALL[kind][1])[1]
    bent = {"canoe": 0.9}.get(form)  # a curved spore spans less than its length, measured along it
    assert got == pytest.approx(length, rel=0.01) if bent is None else bent * length < got <= length


@pytest.mark.parametrize("form", ["dome", "cap"])
def test_a_cap_is_as_broad_as_asked(form):
    assert drawn("shelled-amoeba", form=form, length=90).span("outline")[0] == pytest.approx(90, rel=0.01)


@pytest.mark.parametrize("form", ["central", "off-centre"])
def test_a_shell_from_below_is_as_broad_as_asked(form):
    assert drawn("shelled-amoeba", view="below", form=form, length=90).span("outline") == pytest.approx((90, 90), rel=0.01)


@pytest.mark.parametrize("shape", choices("round-body", "shape"))
@pytest.mark.parametrize("wall", ["single", "layered", "netted"])
def test_a_body_has_the_length_and_width_asked_for(shape, wall):
    assert drawn("round-body", diameter=50, width=31, shape=shape, wall=wall).span("outline") == pytest.approx((31, 50), rel=0.01)


@pytest.mark.parametrize("form", ["brickwork", "two-on-stalk", "flat-sided", "spindle", "scarred"])
def test_a_spore_is_as_wide_as_asked(form):
    assert drawn("spore", form=form, length=40, width=14).span("outline") == pytest.approx((14, 40), rel=0.01)


@pytest.mark.parametrize("form", ["closing-ring", "shut-ring", "loose-ring"])
def test_a_ring_has_the_outer_diameter_asked_for(form):
    assert drawn("trap", form=form, size=25).span("trap") == pytest.approx((25, 25), rel=0.02)


def test_a_sticky_ball_has_the_diameter_asked_for():
    assert drawn("trap", form="knob", size=8).span("trap") == pytest.approx((8, 8), rel=0.01)


@pytest.mark.parametrize("form", choices("scrap"))
def test_scraps_have_the_asked_longest_measure(form):
    points = drawn("scrap", form=form, size=80).points("outline", "cells", "torn")
    if form in ("plant", "moss-net"):  # measured across
        assert max(x for x, _ in points) - min(x for x, _ in points) == pytest.approx(80, rel=0.05)
    elif form == "wood":  # along its tubes
        assert max(y for _, y in points) - min(y for _, y in points) == pytest.approx(80, rel=0.06)
    else:
        ways = [(cos(k * pi / 360), sin(k * pi / 360)) for k in range(360)]
        longest = max(max(x * c + y * s for x, y in points) - min(x * c + y * s for x, y in points) for c, s in ways)
        assert longest == pytest.approx(80, rel=0.01)


@pytest.mark.parametrize("form", ["spring", "rings", "bars", "pitted"])
def test_a_vessel_is_as_wide_as_asked(form):
    assert drawn("vessel", form=form, width=30).span("outline")[0] == pytest.approx(30, rel=0.01)


@pytest.mark.parametrize(("width", "branch"), [(0.8, "none"), (1.5, "none"), (4, "none"), (20, "none")])
def test_a_thread_however_thin_keeps_its_width(width, branch):
    got = drawn("thread", width=width, length=60, course="straight", branch=branch).span("outline")[0]
    assert got == pytest.approx(width, rel=0.01 if width > 1 else 0.03)


@pytest.mark.parametrize("form", ["commas", "ovals", "waves", "coils", "clubs", "splinters"])
def test_bacteria_are_as_long_as_asked(form):
    picture = drawn("dots", form=form, size=4)
    spans = []
    for part, pts, _ in picture.paths:
        if part == "dots":
            spans.append(max(((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2) ** 0.5 for p in pts for q in pts) / picture.px_per_um)
    assert spans == pytest.approx([4] * len(spans), rel=0.05)


@pytest.mark.parametrize("form", ["shed-skin", "full-of-threads", "collapsed"])
def test_dead_worms_keep_to_their_plate(form):
    wide, tall = drawn("worm-remains", form=form, length=600, width=26).span("outline")
    assert (wide**2 + tall**2) ** 0.5 < 600


def test_a_head_on_worm_is_as_wide_as_asked():
    assert drawn("worm-remains", form="head-on", width=30).span("outline") == pytest.approx((30, 30), rel=0.01)


def test_every_form_of_every_kind_has_a_title_of_its_own_picture():
    """No two choices of a kind draw the very same picture: a choice that changes nothing would mislead."""
    from keytool.figures import draw

    for kind in kinds().values():
        for param in kind.params:
            if param.type == "choice" and param.name not in ("accent",):
                pictures = {}
                for value in param.choices:
                    if kind.problems(with_needs(kind.name, param.name, value)):
                        continue
                    shapes = draw(kind.name, with_needs(kind.name, param.name, value), title="t").shapes
                    assert shapes not in pictures.values(), (kind.name, param.name, value)
                    pictures[value] = shapes
