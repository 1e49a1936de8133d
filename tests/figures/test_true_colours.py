"""Where a question is about colour the picture shows that colour, under the ink; where colour cannot be printed it is grey."""

import pytest

from keytool.card.inks import INKS
from keytool.figures import draw, to_svg
from keytool.figures.shapes import WASHES


@pytest.mark.parametrize(
    ("kind", "params"),
    [
        ("round-body", {"contents": "green", "accent": "contents", "colour": "green"}),
        ("round-body", {"contents": "even-tint", "accent": "contents", "colour": "blue-green"}),
        ("flagellate", {"form": "green-egg", "accent": "plastid", "colour": "green"}),
        ("filament", {"form": "green-band", "accent": "plastid", "colour": "green"}),
        ("thread", {"wall": "dyed", "width": 18, "accent": "body", "colour": "blue"}),
        ("dots", {"form": "specks", "accent": "dots", "colour": "rust"}),
    ],
)
def test_the_colour_asked_about_is_drawn_in_its_own_tint_and_never_in_the_accent(kind, params):
    svg = to_svg(draw(kind, params, title="t"), 2.0, id_prefix="x", plain=True)
    assert WASHES[params["colour"]] in svg
    assert "#b0401c" not in svg


def test_blue_green_cells_have_no_nucleus():
    """Cyanobacteria have none; a ring with a dot inside each cell would say that they do (textbook knowledge, from memory)."""
    plain = draw("round-body", {"contents": "tinted-cells", "wall": "layered"}, title="t")
    nucleated = draw("round-body", {"contents": "four-cells", "wall": "layered"}, title="t")
    assert len([s for s in plain.shapes if s.part == "contents" and getattr(s, "fill", False)]) == 0
    assert len([s for s in nucleated.shapes if s.part == "contents" and getattr(s, "fill", False)]) == 4


def test_a_card_without_colour_prints_each_wash_as_a_grey():
    for role in WASHES:
        red, green, blue = (INKS["strong"].plates.colours[role][i : i + 2] for i in (1, 3, 5))
        assert red == green == blue
