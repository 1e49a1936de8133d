"""The round edge of the field, and lengths in it, on generated pictures whose truth is known."""

from __future__ import annotations

import math
import random
from pathlib import Path

import pytest
from click.testing import CliRunner
from PIL import Image, ImageChops, ImageDraw, ImageFilter

from keytool.bench.field_edge import Circle, NoEdge, circle_through, find_edge
from keytool.bench.optics import Scale
from keytool.bench.photo_measures import angle_degrees, area_um2, length_um, scale_of_field
from keytool.cli import main
from tests.conftest import sampled


def through_the_eyepiece(seed: int) -> tuple[Image.Image, Circle]:
    """A bright round field on dark, with dirt, tilt, uneven light, blur and noise, often cut off on one side."""
    chance = random.Random(seed)
    width, height = chance.choice([(640, 480), (480, 640), (900, 700)])
    short = min(width, height)
    radius = short * chance.uniform(0.36, 0.62)
    x, y = width / 2 + chance.uniform(-0.12, 0.12) * short, height / 2 + chance.uniform(-0.12, 0.12) * short
    tilt = chance.uniform(0.985, 1.0)
    image = Image.new("L", (2 * width, 2 * height), chance.randint(0, 40))
    draw = ImageDraw.Draw(image)
    draw.ellipse([2 * (x - radius), 2 * (y - radius * tilt), 2 * (x + radius), 2 * (y + radius * tilt)], fill=chance.randint(140, 235))
    for _ in range(chance.randint(0, 30)):
        turn, out, size = chance.uniform(0, 2 * math.pi), radius * math.sqrt(chance.random()) * 0.95, chance.uniform(2, 40)
        a, b = x + out * math.cos(turn), y + out * math.sin(turn) * tilt
        shape = draw.ellipse if chance.random() < 0.5 else draw.rectangle
        shape([2 * (a - size), 2 * (b - size * 0.6), 2 * (a + size), 2 * (b + size * 0.6)], fill=chance.randint(20, 200))
    image = image.resize((width, height), Image.Resampling.BOX)
    fall = chance.uniform(0, 0.45)
    light = Image.linear_gradient("L").rotate(chance.choice([0, 90, 180, 270])).resize((width, height))
    image = ImageChops.multiply(image, light.point(lambda value: int(255 * (1 - fall * value / 255))))
    image = image.filter(ImageFilter.GaussianBlur(chance.uniform(0.3, 4)))
    image = ImageChops.add(image, Image.effect_noise((width, height), chance.uniform(0, 18)), 1, -128)
    return image.convert("RGB"), Circle(x, y, radius * (1 + tilt) / 2)


def test_the_circle_is_found_in_95_of_100_and_never_wrong() -> None:
    pictures = sampled(list(range(100)))
    found = 0
    for seed in pictures:
        image, true = through_the_eyepiece(seed)
        try:
            circle = find_edge(image)
        except NoEdge:
            continue
        found += 1
        assert circle.radius == pytest.approx(true.radius, rel=0.02), seed  # so a length is good to 2 %
        assert math.dist((circle.x, circle.y), (true.x, true.y)) < 0.03 * true.radius
    assert found >= 0.95 * len(pictures)


@pytest.mark.parametrize("kind", ["plain", "noise", "gradient"])
def test_where_there_is_no_circle_it_asks(kind: str) -> None:
    image = {
        "plain": Image.new("RGB", (500, 400), (180, 180, 180)),
        "noise": Image.effect_noise((500, 400), 60).convert("RGB"),
        "gradient": Image.linear_gradient("L").resize((500, 400)).convert("RGB"),
    }[kind]
    with pytest.raises(NoEdge, match="three points"):
        find_edge(image)


def test_three_points_give_the_circle() -> None:
    circle = circle_through((110, 20), (10, 120), (-90, 20))
    assert (circle.x, circle.y, circle.radius) == pytest.approx((10, 20, 100))
    with pytest.raises(NoEdge, match="lie in a line"):
        circle_through((0, 0), (5, 5), (10, 10))


def test_measures_and_their_uncertainty() -> None:
    scale, circle = Scale(0.5, 0.0), Circle(100, 100, 100)
    length, error = length_um([(100, 100), (160, 180)], scale, circle, 0.26, 0.0)
    assert (length, error) == pytest.approx((50, 0.26 * math.sqrt(2)))
    assert length_um([(0, 100), (200, 100)], scale, circle, 0, 0.02)[1] == pytest.approx(100 * 0.02)  # at the edge, all of it
    area, _ = area_um2([(0, 0), (10, 0), (10, 20), (0, 20)], scale, circle, 0.26, 0.02)
    assert area == pytest.approx(200 * 0.25)
    assert angle_degrees((10, 0), (0, 0), (0, 10), scale, 0.1)[0] == pytest.approx(90)
    assert angle_degrees((10, 1), (0, 0), (10, -1), scale, 0.1)[0] == pytest.approx(2 * math.degrees(math.atan(0.1)))
    whole = scale_of_field(Circle(0, 0, 300), 450, 0.005, 0.05)
    assert whole.um_per_part == pytest.approx(0.75)
    assert whole.relative_error == pytest.approx(math.hypot(0.005, 0.05))


def test_a_photograph_on_the_command_line(tmp_path: Path) -> None:
    image, true = through_the_eyepiece(3)
    exif = Image.Exif()
    exif[0x010F] = "MakerOfPhones"
    exif.get_ifd(0x8825)[2] = (51.0, 28.0, 40.0)
    image.save(tmp_path / "drop.jpg", quality=90, exif=exif)
    ends = ["--point", f"{true.x}", f"{true.y}", "--point", f"{true.x + true.radius / 2}", f"{true.y}"]
    scaled = tmp_path / "scaled.png"
    done = CliRunner().invoke(
        main,
        [
            "measure",
            "photo",
            str(tmp_path / "drop.jpg"),
            "--field-number",
            "18",
            "--objective",
            "40",
            *ends,
            "--scaled",
            str(scaled),
            "--json",
        ],
    )
    assert done.exit_code == 0, done.output
    import json

    gave = json.loads(done.output)
    assert gave["length-um"] == pytest.approx(112.5, rel=0.02)  # a quarter of 450 µm
    assert gave["error-um"] > 0
    with Image.open(scaled) as kept:
        assert not kept.getexif()
        assert not kept.info
    assert b"MakerOfPhones" not in scaled.read_bytes()


def test_it_says_what_it_needs(tmp_path: Path) -> None:
    Image.new("RGB", (400, 400), "grey").save(tmp_path / "plain.png")
    asked = ["measure", "photo", str(tmp_path / "plain.png"), "--field-number", "18", "--objective", "40"]
    assert "--edge X Y, three times" in CliRunner().invoke(main, asked).output
    assert "Three points" in CliRunner().invoke(main, [*asked, "--edge", "1", "1"]).output
    assert "Two or more make a length" in CliRunner().invoke(main, [*asked, "--point", "1", "1"]).output
    by_hand = CliRunner().invoke(main, [*asked, "--edge", "200", "50", "--edge", "350", "200", "--edge", "50", "200"])
    assert "300 pixels across" in by_hand.output


def test_the_page_finds_the_same_circle(tmp_path: Path) -> None:
    import json
    import shutil
    import subprocess

    node = shutil.which("node")
    if not node:
        pytest.skip("there is no node")
    script = Path(__file__).parents[2] / "site" / "assets" / "bench" / "field-edge.js"
    for seed in (1, 4, 9):
        image, true = through_the_eyepiece(seed)
        (tmp_path / "rgba").write_bytes(image.convert("RGBA").tobytes())
        run = (
            f"var B=require({json.dumps(str(script))});var d=require('fs').readFileSync({json.dumps(str(tmp_path / 'rgba'))});"
            f"console.log(JSON.stringify(B.fieldEdge.findEdge({{data:d,width:{image.width},height:{image.height}}})))"
        )
        found = json.loads(subprocess.run([node, "-e", run], capture_output=True, text=True, check=True).stdout)
        assert found["radius"] == pytest.approx(true.radius, rel=0.01)
        assert found["radius"] == pytest.approx(find_edge(image).radius, rel=0.003)
