"""What is asked for in micrometres is what is drawn, to one per cent."""

from itertools import pairwise
from math import dist

import pytest
from reading import SVG, read, walked

from keytool.figures import draw, to_svg

PX = 7.3


def drawn(kind, **params):
    params = {name.replace("_", "-"): value for name, value in params.items()}
    return read(to_svg(draw(kind, params, title="t"), PX, id_prefix="t"), PX)


ACROSS = {  # kind, parameters, part measured -> (width, height) in µm; None is not asked about
    "stylet 16": ("nematode-head", {"width": 22, "spear": "stylet", "spear-length": 16}, ("spear", "knobs"), (None, 16)),
    "stylet 60, anchor": (
        "nematode-head",
        {"width": 45, "spear": "stylet", "spear-length": 60, "knob-shape": "anchor"},
        ("spear", "knobs"),
        (None, 60),
    ),
    "stylet 10, no knobs": (
        "nematode-head",
        {"width": 20, "spear": "stylet", "spear-length": 10, "knobs": "none"},
        ("spear", "knobs"),
        (None, 10),
    ),
    "odontostyle": ("nematode-head", {"width": 60, "spear": "odontostyle", "spear-length": 18}, ("spear",), (None, 18)),
    "odontophore": (
        "nematode-head",
        {"width": 40, "spear": "odontostyle", "spear-length": 85, "odontophore-length": 45},
        ("base",),
        (None, 45),
    ),
    "onchiostyle": ("nematode-head", {"width": 32, "spear": "onchiostyle", "spear-length": 30}, ("spear",), (None, 30)),
    "mural tooth": ("nematode-head", {"width": 45, "spear": "mural-tooth", "spear-length": 16}, ("spear",), (None, 16)),
    "tube mouth": ("nematode-head", {"width": 50, "stoma": "open-tube", "stoma-length": 20, "stoma-width": 3.2}, ("stoma",), (None, 20)),
    "barrel mouth": ("nematode-head", {"width": 40, "stoma": "barrel", "stoma-length": 24, "stoma-width": 13}, ("stoma",), (None, 24)),
    "head width": (
        "nematode-head",
        {"width": 35, "stoma": "open-tube", "gullet": "rhabditoid", "reach": "gullet"},
        ("outline",),
        (35, None),
    ),
    "ring worm width": (
        "nematode-head",
        {"width": 48, "spear": "stylet", "spear-length": 55, "rings": "coarse", "gullet": "criconematoid", "reach": "gullet"},
        ("outline",),
        (48, None),
    ),
    "worm length": ("nematode-body", {"length": 900, "width": 40, "posture": "straight"}, ("outline",), (None, 900)),
    "round body": ("round-body", {"diameter": 17}, ("outline",), (17, 17)),
    "bubble": ("bubble", {"diameter": 130}, ("outline",), (130, 130)),
    "oil drop": ("oil-drop", {"diameter": 14}, ("outline",), (14, 14)),
    "thread": ("thread", {"width": 6.5, "course": "straight"}, ("outline",), (6.5, None)),
    "thread length": ("thread", {"width": 6.5, "length": 90, "course": "straight"}, ("outline",), (None, 90)),
    "ciliate": ("moving-cell", {"form": "ciliate", "length": 80}, ("outline",), (None, 80)),
    "bell": ("moving-cell", {"form": "stalked-ciliate", "length": 50}, ("outline", "mouth"), (None, 50)),
    "flagellate": ("moving-cell", {"form": "flagellate", "length": 9}, ("outline",), (None, 9)),
    "naked amoeba": ("moving-cell", {"form": "naked-amoeba", "length": 31}, ("outline",), (None, 31)),
    "shelled amoeba": ("moving-cell", {"form": "testate", "length": 70}, ("outline",), (None, 70)),
    "mite": ("many-legged", {"form": "mite", "length": 420}, ("outline",), (None, 420)),
    "springtail": ("many-legged", {"form": "springtail", "length": 900}, ("outline",), (900, None)),
    "gastrotrich": ("flat-glider", {"form": "gastrotrich", "length": 210}, ("outline",), (None, 210)),
    "rotifer": ("telescoping-animal", {"length": 300}, ("outline",), (None, 300)),
    "winged pollen": ("pollen", {"form": "winged", "diameter": 70}, ("sacs", "outline"), (70, None)),
    "spiny pollen": ("pollen", {"form": "spiny", "diameter": 60}, ("outline",), (60, 60)),
    "boat diatom": ("diatom", {"form": "pennate", "length": 45}, ("outline",), (None, 45)),
    "round diatom": ("diatom", {"form": "centric", "length": 45}, ("outline",), (45, 45)),
    "field of view": ("optical-fault", {"field": 450}, ("field",), (450, 450)),
}


@pytest.mark.parametrize("name", ACROSS)
def test_asked_size_is_drawn_size(name):
    kind, params, parts, wanted = ACROSS[name]
    for asked, got in zip(wanted, drawn(kind, **params).span(*parts), strict=True):
        if asked is not None:
            assert got == pytest.approx(asked, rel=0.01)


@pytest.mark.parametrize("size", [1.2, 8, 60])
def test_dots_are_as_long_as_asked(size):
    for form in ("rods", "cocci", "specks"):
        picture = drawn("dots", form=form, size=size)
        for part, pts, _ in picture.paths:
            if part == "dots":
                longest = max(dist(p, q) for p in pts for q in pts) / PX
                assert longest == pytest.approx(size, rel=0.012)


@pytest.mark.parametrize("kind", ["grain", "crumb"])
def test_grains_have_the_asked_longest_measure(kind):
    points = drawn(kind, size=80).points("outline")
    assert max(dist(p, q) for p in points for q in points) == pytest.approx(80, rel=0.01)


@pytest.mark.parametrize("posture", ["wave", "C", "spiral", "arcuate", "coiled", "six"])
def test_a_bent_worm_keeps_its_length(posture):
    """Half the way round a slender outline is the length along the body."""
    picture = drawn("nematode-body", length=1000, width=22, posture=posture, tail="conoid-sharp")
    assert walk(first_loop(picture)) / 2 == pytest.approx(1000, rel=0.01)


def first_loop(picture):
    """The outer ring of the outline alone: its path data up to the first close."""
    path = next(p for p in picture.root.iter(SVG + "path") if p.attrib["data-part"] == "outline")
    return [(x / PX, y / PX) for x, y in walked(path.attrib["d"].split("z")[0])]


def walk(points):
    return sum(dist(p, q) for p, q in zip(points, [*points[1:], points[0]], strict=True))


@pytest.mark.parametrize("posture", ["straight", "C", "wave"])
def test_a_worm_is_as_wide_as_asked(posture):
    """Measured square across the body, from the outline's own points, where it is thickest."""
    points = first_loop(drawn("nematode-body", length=900, width=40, posture=posture, tail="conoid-sharp"))
    half = len(points) // 2
    across = [min(distance_to_line(p, q, r) for q, r in pairwise(points[half:])) for p in points[half // 3 : 2 * half // 3]]
    assert max(across) == pytest.approx(40, rel=0.01)


def distance_to_line(p, q, r):
    """From a point to a stretch of line."""
    (x, y), (x1, y1), (x2, y2) = p, q, r
    dx, dy = x2 - x1, y2 - y1
    t = max(0.0, min(1.0, ((x - x1) * dx + (y - y1) * dy) / ((dx * dx + dy * dy) or 1.0)))
    return dist(p, (x1 + t * dx, y1 + t * dy))


def test_a_tube_mouth_is_as_wide_as_asked():
    picture = drawn("nematode-head", width=50, stoma="open-tube", stoma_length=20, stoma_width=4)
    walls = [pts for part, pts, _ in picture.paths if part == "stoma"]
    centres = [sum(x for x, _ in pts) / len(pts) / PX for pts in walls]
    assert abs(centres[0] - centres[1]) == pytest.approx(4, rel=0.01)


def test_cross_walls_stand_as_far_apart_as_asked():
    picture = drawn("thread", width=4, length=80, course="straight", cross_walls=True, wall_spacing=17)
    heights = [y / PX for part, pts, _ in picture.paths if part == "cross-walls" for _, y in pts[:1]]
    assert [round(b - a, 1) for a, b in pairwise(heights)] == [17.0] * (len(heights) - 1)
    assert len(heights) == 4


def test_the_scale_bar_is_as_long_as_its_label_says():
    for kind, params in {"bubble": {"diameter": 130}, "larva": {"length": 4000}, "dots": {"size": 1}}.items():
        drawing = draw(kind, params, title="t")
        picture = read(to_svg(drawing, PX, id_prefix="t"), PX)
        number, unit = drawing.bar.label.split()
        assert picture.span("scale-bar")[0] == pytest.approx(float(number) * {"µm": 1, "mm": 1000}[unit], rel=0.001)
