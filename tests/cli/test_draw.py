"""A drawing saved as a picture file, by itself or in the round field."""

import io
import re
from pathlib import Path

import pytest
from click.testing import CliRunner
from PIL import Image

from keytool.cli import main


def run(*arguments: str, code: int = 0) -> str:
    result = CliRunner().invoke(main, ["draw", *arguments])
    assert result.exit_code == code, result.output
    return result.output


def test_an_entry_is_saved_as_lines_with_its_name_and_its_scale_bar(tmp_path: Path) -> None:
    said = run("plectus", "-o", str(tmp_path / "plectus.svg"), "--width", "800")
    svg = (tmp_path / "plectus.svg").read_text("utf-8")
    assert "CC BY 4.0" in said and ">Plectus</title>" in svg and 'width="800"' in svg
    assert 'data-part="scale-bar"' in svg and "var(" not in svg


def test_a_picture_of_dots_is_as_wide_as_asked_and_the_same_each_time(tmp_path: Path) -> None:
    files = [tmp_path / "a.png", tmp_path / "b.png"]
    for file in files:
        run("spear-form=curved", "-o", str(file), "--width", "640")
    assert files[0].read_bytes() == files[1].read_bytes()
    image = Image.open(io.BytesIO(files[0].read_bytes()))
    assert image.width == 640 and len(image.getcolors(maxcolors=1 << 20) or []) > 2


@pytest.mark.parametrize(("number", "wide"), [("18", 4500), ("22", 5500)])
def test_the_round_field_is_as_wide_as_your_own_eyepiece_shows_it(tmp_path: Path, number: str, wide: int) -> None:
    """Field diameter = field number / objective; a plain definition of optics (18 mm / 4 = 4.5 mm)."""
    run("plectus", "-o", str(tmp_path / "field.svg"), "--field", "low", "--field-number", number)
    svg = (tmp_path / "field.svg").read_text("utf-8")
    length, unit = re.search(r">([\d.]+) (mm|µm)</text>", svg).groups()  # type: ignore[union-attr]
    bar = float(re.search(r'data-part="scale-bar".*? d="M[\d.]+ [\d.]+l([\d.]+) 0"', svg).group(1))  # type: ignore[union-attr]
    per_um = bar / (float(length) * (1000 if unit == "mm" else 1))
    box = float(re.search(r'viewBox="0 0 ([\d.]+)', svg).group(1))  # type: ignore[union-attr]
    assert wide * per_um < box < 1.1 * wide * per_um


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["plectis", "-o", "x.png"], "Did you mean 'plectus'?"),
        (["plectus", "-o", "x.jpg"], "Allowed: .svg"),
        (["plectus", "-o", "x.svg", "--field", "middle"], "There is: low, high."),
        (["plectus", "-o", "x.svg", "--field-number", "20"], "add --field low or --field high"),
        (["spear-form=curvd", "-o", "x.svg"], "Did you mean 'curved'?"),
    ],
)
def test_what_cannot_be_drawn_is_said_and_nothing_is_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, arguments: list[str], says: str
) -> None:
    monkeypatch.chdir(tmp_path)
    assert says in run(*arguments, code=2)
    assert not list(tmp_path.iterdir())
