"""The scale of a stage micrometer in a picture, on generated pictures whose truth is known."""

from __future__ import annotations

import json
import math
import random
import shutil
import subprocess
from pathlib import Path

import pytest
from click.testing import CliRunner
from PIL import Image, ImageChops, ImageDraw, ImageFilter

from keytool.bench.stage_lines import NoScale, Ruling, scale_of_lines, scale_of_two_lines
from keytool.cli import main
from tests.conftest import sampled


def micrometer(seed: int) -> tuple[Image.Image, float]:
    """Lines 10 µm apart through the eyepiece, and how many pixels apart they are: any way up, every fifth and tenth longer, with a
    round edge that is often cut off, uneven light, dirt, blur and noise."""
    chance = random.Random(seed)
    width, height = chance.choice([(640, 480), (480, 640), (900, 700)])
    short, fine = min(width, height), 3
    radius, x, y = short * chance.uniform(0.45, 0.75), width / 2 + chance.uniform(-20, 20), height / 2 + chance.uniform(-20, 20)
    pitch, turn = chance.uniform(9, 40), math.radians(chance.uniform(-90, 90))
    ground = chance.randint(150, 230)
    image = Image.new("L", (width * fine, height * fine), ground)
    draw = ImageDraw.Draw(image)
    c, s = math.cos(turn), math.sin(turn)
    aside, count = chance.uniform(-0.15, 0.15) * radius, int(2.4 * radius / pitch)
    for number in range(-count, count + 1):
        long = radius * (0.36 if number % 10 == 0 else 0.27 if number % 5 == 0 else 0.18)
        along = number * pitch + 0.3 * pitch
        ends = [((x + along * c - out * s) * fine, (y + along * s + out * c) * fine) for out in (aside - long / 2, aside + long / 2)]
        draw.line(ends, fill=chance.randint(25, 60), width=max(2, round(pitch * chance.uniform(0.1, 0.2) * fine)))
    for _ in range(chance.randint(0, 12)):
        a, b, size = x + chance.uniform(-0.7, 0.7) * radius, y + chance.uniform(-0.7, 0.7) * radius, chance.uniform(2, 14)
        draw.ellipse([(a - size) * fine, (b - size * 0.7) * fine, (a + size) * fine, (b + size * 0.7) * fine], fill=chance.randint(40, 160))
    mask = Image.new("L", image.size, 0)
    ImageDraw.Draw(mask).ellipse([(x - radius) * fine, (y - radius) * fine, (x + radius) * fine, (y + radius) * fine], fill=255)
    image = Image.composite(image, Image.new("L", image.size, chance.randint(0, 40)), mask).resize((width, height), Image.Resampling.BOX)
    fall = chance.uniform(0, 0.45)
    light = Image.linear_gradient("L").rotate(chance.choice([0, 90, 180, 270])).resize((width, height))
    image = ImageChops.multiply(image, light.point(lambda value: int(255 * (1 - fall * value / 255))))
    image = image.filter(ImageFilter.GaussianBlur(chance.uniform(0.3, min(3.0, 0.16 * pitch))))
    return ImageChops.add(image, Image.effect_noise((width, height), chance.uniform(0, 14)), 1, -128).convert("RGB"), pitch


def found_of(pictures: list[int]) -> list[tuple[int, Ruling, float]]:
    found = []
    for seed in pictures:
        image, pitch = micrometer(seed)
        try:
            found.append((seed, scale_of_lines(image, 10), pitch))
        except NoScale:
            continue
    return found


def test_the_scale_is_good_to_two_in_a_hundred_or_it_asks() -> None:
    pictures = sampled(list(range(90)))
    found = found_of(pictures)
    for seed, ruling, pitch in found:
        assert ruling.um_per_pixel == pytest.approx(10 / pitch, rel=0.02), seed
        assert abs(ruling.spacing_px / pitch - 1) < max(0.006, 4 * ruling.relative_error), seed
    assert len(found) >= 0.9 * len(pictures)


@pytest.mark.parametrize("kind", ["plain", "noise", "gradient", "threads"])
def test_where_there_are_no_lines_it_asks(kind: str) -> None:
    threads = Image.new("L", (500, 400), 190)
    chance = random.Random(2)
    for _ in range(12):
        ends = [(chance.uniform(0, 500), chance.uniform(0, 400)) for _ in range(3)]
        ImageDraw.Draw(threads).line(ends, fill=60, width=4)
    image = {
        "plain": Image.new("RGB", (500, 400), (180, 180, 180)),
        "noise": Image.effect_noise((500, 400), 60),
        "gradient": Image.linear_gradient("L").resize((500, 400)),
        "threads": threads,
    }[kind]
    with pytest.raises(NoScale, match="two lines"):
        scale_of_lines(image, 10)


def test_two_lines_and_the_divisions_between_are_enough() -> None:
    found = scale_of_two_lines((100, 100), (400, 500), 25, 10, 1.5)
    assert found.um_per_pixel == pytest.approx(0.5)  # 250 µm over 500 pixels
    assert found.relative_error == pytest.approx(math.sqrt(2) * 1.5 / 500)
    with pytest.raises(NoScale, match="too near"):
        scale_of_two_lines((100, 100), (110, 100), 1, 10, 1.5)


def photographed(folder: Path, *more: str) -> tuple[int, str]:
    image, _ = micrometer(3)
    image.save(folder / "ruled.png")
    Image.new("RGB", image.size, (180, 180, 180)).save(folder / "drop.png")
    asked = ["measure", "photo", str(folder / "drop.png"), "--objective", "40", "--micrometer", str(folder / "ruled.png"), *more]
    done = CliRunner().invoke(main, asked)
    return done.exit_code, " ".join(done.output.split())


def test_a_second_picture_gives_the_scale_on_the_command_line(tmp_path: Path) -> None:
    pitch = micrometer(3)[1]
    code, said = photographed(tmp_path, "--division", "10 µm", "--point", "0", "0", "--point", f"{10 * pitch}", "0", "--json")
    assert code == 0, said
    assert json.loads(said)["length-um"] == pytest.approx(100, rel=0.02)
    assert json.loads(said)["error-um"] > 0
    assert "pixels apart" in photographed(tmp_path)[1]
    by_hand = photographed(
        tmp_path, "--division", "0.01 mm", "--line", "0", "0", "--line", f"{20 * pitch}", "0", "--divisions", "20", "--json"
    )
    assert json.loads(by_hand[1])["um-per-pixel"] == pytest.approx(10 / pitch, rel=1e-6)


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (("--division", "ten"), "--division: 'ten' cannot be. Allowed: 0.5 µm to 1 mm"),
        (("--line", "1", "1"), "Two --line X Y and --divisions go together"),
        (("--divisions", "20"), "Two --line X Y and --divisions go together"),
    ],
)
def test_what_is_said_by_half_is_asked_for(tmp_path: Path, more: tuple[str, ...], says: str) -> None:
    code, said = photographed(tmp_path, *more)
    assert code == 2
    assert says in said


def test_two_pictures_of_different_size_have_no_scale_in_common(tmp_path: Path) -> None:
    micrometer(3)[0].save(tmp_path / "ruled.png")
    Image.new("RGB", (300, 200)).save(tmp_path / "drop.png")
    asked = ["measure", "photo", str(tmp_path / "drop.png"), "--objective", "40", "--micrometer", str(tmp_path / "ruled.png")]
    assert "neither cut nor made smaller" in " ".join(CliRunner().invoke(main, asked).output.split())
    assert "Give --field-number" in " ".join(CliRunner().invoke(main, asked[:5]).output.split())


def test_the_page_finds_the_same_scale(tmp_path: Path) -> None:
    node = shutil.which("node")
    if not node:
        pytest.skip("there is no node")
    script = Path(__file__).parents[2] / "site" / "assets" / "bench" / "stage-lines.js"
    for seed in (3, 5, 11):
        image, pitch = micrometer(seed)
        (tmp_path / "rgba").write_bytes(image.convert("RGBA").tobytes())
        run = (
            f"var B=require({json.dumps(str(script))});var d=require('fs').readFileSync({json.dumps(str(tmp_path / 'rgba'))});"
            f"console.log(JSON.stringify(B.stageLines.scaleOfLines({{data:d,width:{image.width},height:{image.height}}},10)))"
        )
        found = json.loads(subprocess.run([node, "-e", run], capture_output=True, text=True, check=True).stdout)
        assert found["umPerPart"] == pytest.approx(10 / pitch, rel=0.01)
        assert found["umPerPart"] == pytest.approx(scale_of_lines(image, 10).um_per_pixel, rel=0.004)
