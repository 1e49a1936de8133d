"""PNG and terminal previews come from the same shapes, always the same way."""

import io
import subprocess
import sys

import pytest
from PIL import Image

from keytool.figures import draw, kinds
from keytool.figures.png import Colours, to_png
from keytool.figures.raster import fill
from keytool.figures.terminal import preview

WORM = draw("nematode-body", {}, title="t")


def ink(data):
    return Image.open(io.BytesIO(data)).convert("L")


def test_same_plate_same_bytes():
    one, two = (to_png(draw("many-legged", {}, title="t"), 0.4) for _ in range(2))
    assert one == two and one.startswith(b"\x89PNG")


def test_a_png_is_as_large_as_its_box():
    image = ink(to_png(WORM, 0.5))
    assert image.size == pytest.approx((WORM.box.width * 0.5, WORM.box.height * 0.5), abs=1)


def test_a_bubble_has_its_true_diameter_and_a_hole():
    drawing = draw("bubble", {"diameter": 100}, title="t")
    image = ink(to_png(drawing, 2.0))
    row = image.crop((0, round((0 - drawing.box.y) * 2), image.width, round((0 - drawing.box.y) * 2) + 1))
    dark = [x for x in range(row.width) if row.getpixel((x, 0)) < 128]
    assert dark[-1] - dark[0] == pytest.approx(200, abs=2)
    assert row.getpixel((round((10 - drawing.box.x) * 2), 0)) > 200


def test_colours_are_those_asked_for():
    shades = Colours(ink="#ffffff", accent="#00ff00", paper="#000000")
    image = Image.open(io.BytesIO(to_png(draw("bubble", {"accent": "body"}, title="t"), 1.0, colours=shades)))
    counted = {colour for _, colour in image.getcolors(1 << 20)}
    assert (0, 255, 0) in counted and (0, 0, 0) in counted and (255, 255, 255) in counted


@pytest.mark.parametrize("letters", ["braille", "blocks", "ascii"])
def test_a_preview_stays_within_its_room(letters):
    for kind in kinds():
        lines = preview(draw(kind, {}, title="t"), 36, 14, letters=letters).split("\n")
        assert 1 <= len(lines) <= 14 and max(map(len, lines)) <= 36, kind
        assert sum(c not in " \u2800" for line in lines for c in line) > 8, kind


def test_previews_of_different_kinds_differ():
    shown = {kind: preview(draw(kind, {}, title="t"), 36, 14) for kind in kinds()}
    assert len(set(shown.values())) == len(shown)


def test_the_letters_are_the_ones_asked_for():
    braille, blocks, plain = (preview(WORM, 20, 10, letters=each) for each in ("braille", "blocks", "ascii"))
    assert set(braille) <= {*(chr(c) for c in range(0x2800, 0x2900)), "\n"}
    assert set(blocks) <= set(" ▀▄█\n")
    assert plain.isascii()


def test_pillow_is_not_imported_with_the_figures():
    code = "import sys, keytool.figures, keytool.figures.png, keytool.figures.terminal; print('PIL' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, text=True).stdout.strip() == "False"


def test_the_hole_of_an_outline_keeps_what_was_drawn_inside_it():
    image = Image.new("L", (40, 40), 0)
    fill(image, [((15, 18), (25, 18), (25, 22), (15, 22))])
    fill(image, [((2, 2), (38, 2), (38, 38), (2, 38)), ((5, 35), (35, 35), (35, 5), (5, 5))])
    assert image.getpixel((20, 20)) == 255 and image.getpixel((10, 10)) == 0 and image.getpixel((3, 3)) == 255
