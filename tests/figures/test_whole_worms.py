"""A whole worm shows what is seen in one at low power, and the worm of a head has that head's gullet and its entry's own tail."""

import pytest

from keytool.figures import draw
from keytool.figures.kinds.worm_organs import GULLETS
from keytool.figures.whole_body import whole_of
from keytool.library import Library


@pytest.mark.parametrize("build", GULLETS)
def test_every_gullet_ends_in_front_of_a_grainy_gut(build):
    shapes = draw("nematode-body", {"length": 900, "width": 36, "posture": "straight", "gullet": build}, title="t").shapes
    lowest = max(y for s in shapes if s.part == "gullet" for _, v in getattr(s, "steps", ()) if v for y in v[1::2])
    grains = [y for s in shapes if s.part == "gut" for _, y in getattr(s, "points", ())]
    assert 0.1 * 900 < lowest < 0.25 * 900
    assert len(grains) > 100 and min(grains) > lowest


@pytest.mark.parametrize("posture", ["arcuate", "C", "spiral"])
def test_the_vulva_opens_on_the_inner_side_of_the_curve(posture):
    """A relaxed nematode curves toward its belly, on which vulva and anus lie (textbook knowledge, from memory)."""
    shapes = draw("nematode-body", {"length": 900, "width": 36, "posture": posture, "female": "middle"}, title="t").shapes
    outline = next(s for s in shapes if s.part == "outline").points
    slit = next(s for s in shapes if s.part == "vulva").steps[0][1]
    near = min(range(len(outline)), key=lambda k: (outline[k][0] - slit[0]) ** 2 + (outline[k][1] - slit[1]) ** 2)
    a, b, c = outline[near - 20], outline[near], outline[(near + 20) % len(outline)]
    # The outline runs clockwise, so where it bends to the left the body is hollow there: the inner side of the curve.
    assert (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) < 0


def test_no_whole_worm_of_the_library_is_an_empty_hose(library: Library):
    bare = []
    tried = 0
    for entry in library.entries.values():
        if entry.figure and entry.figure.kind == "nematode-head":
            tried += 1
            parts = {s.part for s in whole_of(entry, 450.0).shapes}
            if not {"outline", "gullet", "gut", "nerve-ring", "tail"} <= parts:
                bare.append(entry.id)
    assert tried > 60 and not bare


def test_worms_of_unlike_gullets_and_tails_are_unlike_in_the_field(library: Library):
    drawn = {
        id: whole_of(library.entries[id], 450.0).shapes for id in ("plectus", "cephalobus", "xiphinema", "aphelenchoides", "pratylenchus")
    }
    assert len(set(drawn.values())) == len(drawn)


def test_warts_stand_on_one_side_only():
    shapes = draw("nematode-body", {"length": 300, "width": 20, "posture": "straight", "rings": "warts"}, title="t").shapes
    outline = next(s for s in shapes if s.part == "outline").points
    knobs = [x for s in shapes if s.part == "rings" for x, _ in getattr(s, "points", ())]
    assert min(knobs) < min(x for x, _ in outline) - 2 and max(knobs) < max(x for x, _ in outline)
