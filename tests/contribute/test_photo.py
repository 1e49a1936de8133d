"""Photographs: safe to take in, silent about their maker, and with a bar that is as long as it says."""

from __future__ import annotations

import io
import math
import random
import struct
import subprocess
import sys
import zlib
from pathlib import Path

import pytest
import yaml
from PIL import Image, ImageDraw

from keytool.bench.stage_lines import NoScale, scale_of_lines
from keytool.contribute.photo.bar import bar_length, burnt
from keytool.contribute.photo.bar import words as bar_words
from keytool.contribute.photo.picture import MOST_PIXELS, NoPicture, picture
from keytool.contribute.photo.record import unlike
from keytool.library import load
from tests.conftest import copy_mini, everything_found
from tests.contribute.helping import run
from tests.contribute.test_new import snapshot, words

SECRETS = (b"TarnEndPhone", b"Exif", b"GPS", b"secret comment", b"xmp")


def ruler(width: int, height: int, pitch: float, *, lean: float = 0.0, seed: int = 1) -> Image.Image:
    """A stage micrometer: dark lines, every fifth and tenth longer, leaning a little, noisy, bright in the middle."""
    fine = 4
    drawn = Image.new("L", (width * fine, height * fine), 205)
    draw = ImageDraw.Draw(drawn)
    for number in range(int(width * 1.3 / pitch)):
        top = height * (0.2 if number % 10 == 0 else 0.3 if number % 5 == 0 else 0.4)
        at = 3.3 + number * pitch / math.cos(lean)
        ends = [((at + math.tan(lean) * (y - height / 2)) * fine, y * fine) for y in (top, height * 0.9)]
        draw.line(ends, fill=40, width=max(1, round(pitch * 0.12 * fine)))
    grey = drawn.resize((width, height), Image.Resampling.BOX)
    dice = random.Random(seed)
    noisy = bytes(
        max(0, min(255, int(value + dice.gauss(0, 8) - 60 * abs((at % width) / width - 0.5)))) for at, value in enumerate(grey.tobytes())
    )
    return Image.frombytes("L", (width, height), noisy)


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    """A photograph lying on its side, with place, maker and a comment in it: dark left, light right when upright."""
    upright = Image.new("RGB", (900, 600), (30, 40, 30))
    upright.paste((230, 230, 220), (450, 0, 900, 600))
    exif = Image.Exif()
    exif[0x0112], exif[0x010F], exif[0x0110] = 6, "TarnEndPhone", "TarnEndPhone 3"
    exif.get_ifd(0x8825)[1], exif.get_ifd(0x8825)[2] = "N", (54.0, 27.0, 36.0)
    path = tmp_path / "IMG_0001.jpg"
    upright.rotate(90, expand=True).save(path, exif=exif, comment=b"secret comment", quality=95)
    return path


ADD = ("--entry", "coat-button", "--author", "Davit Roe", "--licence", "cc-by-4.0", "--shows", "A coat button from above.")


def test_a_photograph_is_turned_stripped_and_given_its_bar(mini: Path, photo: Path) -> None:
    assert any(secret in photo.read_bytes() for secret in SECRETS)
    result = run(mini, "photo", "add", str(photo), *ADD, "--um-per-pixel", "0.5")
    assert result.exit_code == 0, result.output
    folder = mini / "keydata/photos/coat-button"
    assert sorted(path.name for path in folder.iterdir()) == ["coat-button-1.card.png", "coat-button-1.page.jpg", "coat-button-1.yaml"]
    record = yaml.safe_load((folder / "coat-button-1.yaml").read_text("utf-8"))
    for kind in ("page", "card"):
        path = folder / record[kind]["file"]
        assert not any(secret in path.read_bytes() for secret in SECRETS)
        with Image.open(path) as made:
            assert not made.getexif() and made.size == (record[kind]["width"], record[kind]["height"])
            assert made.width > made.height, "the right way up"
            assert made.convert("L").getpixel((20, 20)) < 90 < 200 < made.convert("L").getpixel((made.width - 20, 20))
    assert record["original"]["width"] == 900 and len(record["original"]["sha256"]) == 64
    assert record["page"]["bar"] == 100 and record["card"]["um-per-pixel"] == pytest.approx(0.5 * 900 / 720, rel=1e-3)
    loaded = load(mini)
    assert everything_found(loaded) == []
    assert not (folder / photo.name).exists()


def test_the_same_photograph_gives_the_same_bytes(mini: Path, photo: Path, tmp_path: Path) -> None:
    other = copy_mini(tmp_path / "other")
    for root in (mini, other):
        assert run(root, "photo", "add", str(photo), *ADD, "--um-per-pixel", "0.5").exit_code == 0
    assert snapshot(mini) == snapshot(other)


def test_a_second_photograph_gets_its_own_number_and_none_is_written_over_unasked(mini: Path, photo: Path) -> None:
    for _ in range(2):
        assert run(mini, "photo", "add", str(photo), *ADD, "--um-per-pixel", "0.5").exit_code == 0
    folder = mini / "keydata/photos/coat-button"
    assert (folder / "coat-button-1.page.jpg").read_bytes() == (folder / "coat-button-2.page.jpg").read_bytes()
    assert everything_found(load(mini)) == []
    refused = run(mini, "photo", "add", str(photo), *ADD, "--um-per-pixel", "0.5", "--id", "coat-button-2")
    assert refused.exit_code == 2 and "stands already" in refused.output
    assert run(mini, "photo", "add", str(photo), *ADD, "--um-per-pixel", "0.4", "--id", "coat-button-2", "--replace").exit_code == 0


@pytest.mark.parametrize("um_per_pixel", [0.013, 0.05, 0.1, 0.33, 0.5, 1.7, 12.0])
@pytest.mark.parametrize("ground", [15, 240])
def test_the_bar_is_as_long_as_it_says_and_stands_out(um_per_pixel: float, ground: int) -> None:
    done = burnt(Image.new("RGB", (1280, 800), (ground,) * 3), um_per_pixel)
    left, top, right, bottom = done.box
    assert right - left == pytest.approx(done.length / um_per_pixel, abs=0.5)
    assert 1280 * 0.1 < right - left <= 1280 * 0.3
    assert f"{done.length:e}"[0] in "125" and float(f"{done.length:e}".split("e")[0]) in (1, 2, 5)
    grey = done.image.convert("L")
    row = [grey.getpixel((x, (top + bottom) // 2)) for x in range(1280)]
    ink = row[(left + right) // 2]
    assert [x for x in range(1280) if row[x] == ink and left - 20 < x < right + 10] == list(range(left, right))
    assert abs(ink - ground) > 200, "white on dark, black on light"


def test_bars_are_worded_as_people_say_them() -> None:
    assert [bar_words(each) for each in (0.5, 50, 1000, 2000)] == ["0.5 µm", "50 µm", "1 mm", "2 mm"]
    assert bar_length(0.25, 1280) == 50


@pytest.mark.parametrize("pitch", [12.3, 41.5, 88.8])
@pytest.mark.parametrize("lean", [0.0, 0.04])
def test_a_micrometer_of_known_pitch_is_measured_within_one_percent(pitch: float, lean: float) -> None:
    found = scale_of_lines(ruler(1200, 320, pitch, lean=lean), 10)
    assert found.spacing_px == pytest.approx(pitch, rel=0.01)
    assert found.um_per_pixel == pytest.approx(10 / pitch, rel=0.01)


def test_a_large_micrometer_lying_across_is_measured_too() -> None:
    lying = ruler(2600, 400, 63.7).transpose(Image.Transpose.ROTATE_90)
    assert scale_of_lines(lying, 10, divisions=round(2600 / 63.7)).um_per_pixel == pytest.approx(10 / 63.7, rel=0.01)


def test_no_regular_lines_are_refused() -> None:
    dice = random.Random(3)
    noise = Image.frombytes("L", (800, 400), bytes(dice.randrange(256) for _ in range(320_000)))
    blob = Image.radial_gradient("L").resize((800, 400))
    for image in (noise, Image.new("L", (800, 400), 128), Image.linear_gradient("L").resize((800, 400)), blob):
        with pytest.raises(NoScale, match="No regular lines were found"):
            scale_of_lines(image, 10)


def test_another_number_of_divisions_than_was_counted_is_refused() -> None:
    with pytest.raises(NoScale, match=r"20 divisions were counted, but the lines found would make 40\.0"):
        scale_of_lines(ruler(1200, 320, 30), 10, divisions=20)


def test_a_photograph_may_be_measured_by_a_micrometer(mini: Path, photo: Path, tmp_path: Path) -> None:
    ruler(1200, 320, 40).save(tmp_path / "micrometer.png")
    result = run(mini, "photo", "add", str(photo), *ADD, "--micrometer", str(tmp_path / "micrometer.png"), "--divisions", "30")
    assert result.exit_code == 0, result.output
    record = yaml.safe_load((mini / "keydata/photos/coat-button/coat-button-1.yaml").read_text("utf-8"))
    assert record["scale"]["um-per-pixel"] == pytest.approx(0.25, rel=0.01)
    assert record["scale"]["basis"]["kind"] == "computed"
    assert "from line to line of a stage micrometer" in record["scale"]["basis"]["how"]


def bomb(path: Path, side: int) -> Path:
    """A PNG of a few hundred bytes that says it is enormous."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    path.write_bytes(
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", struct.pack(">IIBBBBB", side, side, 8, 2, 0, 0, 0))
        + chunk(b"IDAT", zlib.compress(bytes(1000)))
        + chunk(b"IEND", b"")
    )
    return path


@pytest.mark.parametrize("side", [math.isqrt(MOST_PIXELS) + 1, 15_000, 60_000])
def test_a_small_file_that_unpacks_to_a_large_one_is_refused(tmp_path: Path, side: int) -> None:
    with pytest.raises(NoPicture, match="would unpack to"):
        picture(bomb(tmp_path / "bomb.png", side))


def test_what_is_no_picture_is_refused_in_words(mini: Path, photo: Path, tmp_path: Path) -> None:
    before = snapshot(mini)
    (tmp_path / "text.jpg").write_text("no picture", "utf-8")
    (tmp_path / "cut.jpg").write_bytes(photo.read_bytes()[:4000])
    Image.new("RGB", (50, 50)).save(tmp_path / "small.png")
    Image.new("P", (300, 300)).save(tmp_path / "moving.webp", save_all=True, append_images=[Image.new("RGB", (300, 300), "red")])
    Image.new("RGB", (300, 300)).save(tmp_path / "other.bmp")
    for name, message in (
        ("text.jpg", "is no picture that is taken: JPEG, PNG, TIFF, WEBP"),
        ("cut.jpg", "cannot be read"),
        ("small.png", "at least 200 each way"),
        ("moving.webp", "holds 2 pictures"),
        ("other.bmp", "is no picture that is taken"),
        ("missing.jpg", "There is no file"),
    ):
        result = run(mini, "photo", "add", str(tmp_path / name), *ADD, "--um-per-pixel", "0.5")
        assert result.exit_code == 1 and message in words(result.output), (name, result.output)
    assert snapshot(mini) == before


@pytest.mark.parametrize("mode", ["L", "I;16", "RGBA", "P", "LA"])
def test_every_usual_kind_of_colour_is_taken(tmp_path: Path, mode: str) -> None:
    image = Image.linear_gradient("L").resize((300, 300))
    path = tmp_path / "x.png"
    if mode == "I;16":
        Image.frombytes("I;16", (300, 300), struct.pack("<90000H", *(200 * (n // 300) for n in range(90_000)))).save(path)
    else:
        image.convert(mode).save(path)
    taken = picture(path).image
    assert taken.mode == "RGB"
    assert taken.getpixel((150, 10))[0] < 60 and taken.getpixel((150, 290))[0] > 200


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (("--licence", "all-rights"), "'all-rights' is not known. Allowed: CC0 1.0; CC BY 4.0; CC BY-SA 4.0."),
        (("--author", ""), "'author' is 0 characters long. Allowed: at least 2. Say more. Nothing was written."),
        (("--author", "caf\udce9"), "The answer holds signs that cannot be read"),
        (("--um-per-pixel", "-3"), "-3 µm to a pixel cannot be"),
        (("--um-per-pixel", "nan"), "nan µm to a pixel cannot be"),
        (("--entry", "cot-button"), "Did you mean 'coat-button'?"),
        (("--um-per-pixel", "0"), "0 µm to a pixel cannot be"),
        (("--um-per-pixel", "5000"), "5000 µm to a pixel cannot be. With a 40× objective it is about 0.05 to 0.5."),
        (("--shows", "a <b> button"), "The text holds a character that plain text does not need"),
        (("--id", "Bad Id"), "'Bad Id' cannot be an id"),
    ],
)
def test_a_wrong_answer_gets_one_clear_message(mini: Path, photo: Path, change: tuple[str, str], message: str) -> None:
    before = snapshot(mini)
    result = run(mini, "photo", "add", str(photo), *ADD, "--um-per-pixel", "0.5", *change)
    assert result.exit_code in (1, 2) and message in words(result.output), result.output
    assert snapshot(mini) == before


@pytest.mark.parametrize(
    ("division", "message"),
    [
        ("nan", "--division-um: nan cannot be"),
        ("inf", "--division-um: inf cannot be"),
        ("-10", "--division-um: -10 cannot be"),
        ("1e9", "µm to a pixel cannot be"),
    ],
)
def test_a_wrong_micrometer_gets_one_clear_message(mini: Path, photo: Path, tmp_path: Path, division: str, message: str) -> None:
    path = tmp_path / "micrometer.png"
    ruler(1200, 320, 40).save(path)
    result = run(mini, "photo", "add", str(photo), *ADD, "--micrometer", str(path), "--division-um", division)
    assert result.exit_code == 2 and message in words(result.output), result.output


def test_a_licence_may_be_written_as_it_is_named(mini: Path, photo: Path) -> None:
    result = run(mini, "photo", "add", str(photo), *ADD, "--um-per-pixel", "0.5", "--licence", "CC BY-SA 4.0")
    assert result.exit_code == 0, result.output
    assert load(mini).library.photos["coat-button-1"].licence == "cc-by-sa-4.0"


def test_a_strip_too_narrow_for_a_bar_is_refused(mini: Path, tmp_path: Path) -> None:
    path = tmp_path / "strip.png"
    Image.new("RGB", (2000, 300)).save(path)
    before = snapshot(mini)
    result = run(mini, "photo", "add", str(path), *ADD, "--um-per-pixel", "0.5")
    assert result.exit_code == 1 and "at most 4 times as long as wide" in words(result.output), result.output
    assert snapshot(mini) == before


def test_a_scale_is_needed_and_only_one(mini: Path, photo: Path) -> None:
    for more in ((), ("--um-per-pixel", "1", "--micrometer", str(photo))):
        result = run(mini, "photo", "add", str(photo), *ADD, *more)
        assert result.exit_code == 2 and "Say either --um-per-pixel or --micrometer" in words(result.output)


def test_a_record_that_lost_its_picture_is_found(mini: Path, photo: Path) -> None:
    run(mini, "photo", "add", str(photo), *ADD, "--um-per-pixel", "0.5")
    (mini / "keydata/photos/coat-button/coat-button-1.page.jpg").unlink()
    (found,) = everything_found(load(mini))
    assert found.message == "'coat-button-1.page.jpg' is not there as a file of its own beside the record."
    assert found.place.file == "keydata/photos/coat-button/coat-button-1.yaml" and found.place.line > 1


def test_a_record_in_the_wrong_folder_is_found(mini: Path, photo: Path) -> None:
    run(mini, "photo", "add", str(photo), *ADD, "--um-per-pixel", "0.5")
    path = mini / "keydata/photos/coat-button/coat-button-1.yaml"
    path.write_text(path.read_text("utf-8").replace("entry: coat-button", "entry: shirt-button"), "utf-8")
    assert [each.message for each in load(mini).problems] == ["The entry is 'shirt-button', but the folder is 'coat-button'."]


def test_pixels_alone_are_kept(photo: Path) -> None:
    out = io.BytesIO()
    picture(photo).image.save(out, "PNG")
    assert Image.open(out).info == {}


def test_a_scale_that_cannot_be_for_what_is_shown_is_refused(mini: Path, photo: Path) -> None:
    before = snapshot(mini)
    add = ("photo", "add", str(photo), *ADD[2:], "--entry", "lint-worm")
    refused = run(mini, *add, "--um-per-pixel", "500")
    assert refused.exit_code == 2
    assert "the picture would be 450000 µm wide, but Lint worm measures 1000 to 2000 µm: look for a slip" in words(refused.output)
    assert "Where it fills half of the picture it is about 4.444 µm to a pixel. Nothing was written." in words(refused.output)
    assert snapshot(mini) == before
    assert run(mini, *add, "--um-per-pixel", "0.5").exit_code == 0
    assert "45000 µm wide, more than any microscope shows" in unlike(load(mini).library, "A thing without a size", None, 900, 50)
    assert unlike(load(mini).library, "A thing without a size", None, 900, 5) == ""


def test_what_is_wrong_with_the_options_is_said_before_the_library_is_read(tmp_path: Path, photo: Path) -> None:
    nowhere = tmp_path / "broken"
    (nowhere / "keydata").mkdir(parents=True)
    (nowhere / "keydata/vocabulary.yaml").write_text("no: [vocabulary\n", "utf-8")
    for options, said in (
        ((), "Say either --um-per-pixel or --micrometer"),
        (("--micrometer", str(tmp_path / "none.png")), "There is no file"),
        (("--micrometer", str(photo), "--division-um", "0"), "Stage micrometers are mostly ruled"),
    ):
        result = run(nowhere, "photo", "add", str(photo), *ADD, *options)
        assert result.exit_code != 0 and said in words(result.output), result.output
    result = run(nowhere, "photo", "add", str(tmp_path / "none.jpg"), *ADD, "--um-per-pixel", "0.5")
    assert result.exit_code == 1 and "There is no file" in words(result.output)


@pytest.mark.parametrize("tag", [256, 257])  # TIFF 6.0: ImageWidth and ImageLength
def test_a_picture_that_does_not_say_how_large_it_is_is_refused(tmp_path: Path, tag: int) -> None:
    path = tmp_path / "sizeless.tif"
    Image.new("RGB", (300, 300), "grey").save(path)
    at = path.read_bytes().rindex(struct.pack("<HH", tag, 4))
    path.write_bytes(path.read_bytes()[:at] + struct.pack("<H", 0xFDE8) + path.read_bytes()[at + 2 :])
    with pytest.raises(NoPicture, match="is no picture that is taken"):
        picture(path)


def test_what_the_reader_of_pictures_logs_does_not_reach_the_terminal(tmp_path: Path) -> None:
    path = tmp_path / "strange.tif"
    Image.new("RGB", (300, 300), "grey").save(path)
    samples = struct.pack("<HHIH", 277, 3, 1, 3)  # TIFF 6.0: tag 277 is SamplesPerPixel, of type 3 (short)
    raw = path.read_bytes()
    assert raw.count(samples) == 1
    path.write_bytes(raw.replace(samples, struct.pack("<HHIH", 277, 3, 1, 259)))
    asked = "import sys, pathlib\nfrom keytool.contribute.photo.picture import NoPicture, picture\n"
    asked += "try: picture(pathlib.Path(sys.argv[1]))\nexcept NoPicture: print('refused')"
    done = subprocess.run([sys.executable, "-c", asked, str(path)], capture_output=True, text=True, check=True)
    assert (done.stdout, done.stderr) == ("refused\n", "")
