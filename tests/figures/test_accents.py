"""The accent picks a part out; where light and dark are the message, it leaves them as they are."""

import pytest

from keytool.figures import draw
from keytool.figures.shapes import Path, Swell


def roles(kind, params, part):
    return [(shape.role, shape) for shape in draw(kind, params, title="t").shapes if shape.part == part]


@pytest.mark.parametrize(
    ("kind", "params"),
    [
        ("bubble", {"accent": "body"}),
        ("scrap", {"form": "nodule", "accent": "body"}),
        ("scrap", {"form": "black-chip", "accent": "body"}),
        ("thread", {"wall": "opaque", "accent": "body"}),
    ],
)
def test_what_is_black_stays_black_and_is_edged(kind, params):
    inked = roles(kind, params, "outline")
    filled = [role for role, shape in inked if isinstance(shape, Path) and shape.fill]
    assert set(filled) == {"ink"}
    assert any(role == "accent" and isinstance(shape, Path) and not shape.fill for role, shape in inked)


@pytest.mark.parametrize(("kind", "params"), [("oil-drop", {"accent": "body"}), ("circles", {"accent": "body"})])
def test_a_dark_rim_keeps_its_ink_with_a_thin_line_outside(kind, params):
    inked = roles(kind, params, "outline")
    assert {role for role, shape in inked if isinstance(shape, Swell)} == {"ink"}
    lines = [shape for role, shape in inked if role == "accent"]
    assert lines and all(shape.weight <= 1.4 for shape in lines)


def test_a_line_drawing_shows_the_part_itself_in_the_accent():
    assert {role for role, _ in roles("nematode-head", {"spear": "stylet", "accent": "knobs"}, "knobs")} == {"accent"}


def test_a_dark_wall_is_not_seen_as_a_negative():
    assert draw("thread", {"wall": "pigmented"}, title="t").tonal
    assert draw("round-body", {"contents": "dark"}, title="t").tonal
    assert not draw("thread", {"wall": "dyed"}, title="t").tonal


@pytest.mark.parametrize(
    ("kind", "params"),
    [
        ("many-legged", {"form": "thrips", "accent": "wings"}),
        ("many-legged", {"form": "thrips", "accent": "eyes"}),
        ("crystal", {"form": "spiky-ball", "accent": "faces"}),
        ("nematode-head", {"spear": "stylet", "rings": "scaled", "accent": "rings"}),
        ("nematode-head", {"lip-shape": "frilled", "accent": "lips"}),
    ],
)
def test_a_face_that_hides_what_lies_behind_it_stays_paper(kind, params):
    """Else a wing, an eye or a scale asked about would be one blot of colour without its lines."""
    shapes = draw(kind, params, title="t").shapes
    assert any(shape.role == "paper" for shape in shapes)
    assert not [shape for shape in shapes if shape.role == "accent" and isinstance(shape, Path) and shape.fill]
