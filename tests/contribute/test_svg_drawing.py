"""An SVG drawn at a stated scale becomes a drawing that is data; what is no line of it is refused at its place."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import pytest
import yaml
from click.testing import CliRunner

from keytool.cli import main
from keytool.contribute.svg_drawing import raw_drawing
from keytool.contribute.svg_lines import MOST_BYTES, SvgRefused, lines_of_svg
from keytool.figures import draw
from keytool.figures.shapes import Swell
from keytool.library.drawing_records import form

OPEN = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 100 100">'
MITE = (
    OPEN
    + """
<title>a mite, 5 units to the micrometre, and words that are no part of it</title>
<g transform="translate(10 20)">
  <path id="outline" fill="none" d="M 20 0 C 40 0 40 50 20 50 C 0 50 0 0 20 0 Z"/>
  <g id="legs" fill="none"><line x1="33" y1="15" x2="45" y2="5"/><polyline points="33 20 46 22 50 30"/></g>
  <circle id="eye-1" cx="16" cy="8" r="1.5" fill="black"/>
  <ellipse id="eye-2" cx="12" cy="4" rx="1.5" ry="1" transform="rotate(90 12 4) translate(4 -12)" fill="black"/>
  <polygon class="shield" points="12,20 28,20 20,40" fill="#eeeeee"/>
</g></svg>"""
)
SAID: dict[str, Any] = {
    "id": "test-mite",
    "theme": "small-animals",
    "name": "A mite",
    "about": "An oval body with legs.",
    "front": "top",
    "after": "drawn after a living mite",
}


def written(folder: Path, text: str | bytes) -> Path:
    path = folder / "it.svg"
    path.write_bytes(text.encode() if isinstance(text, str) else text)
    return path


def test_shapes_come_over_with_their_parts_and_transforms(tmp_path: Path) -> None:
    lines = lines_of_svg(written(tmp_path, MITE))
    assert [(each.part, each.closed, each.fill) for each in lines] == [
        ("outline", True, ""),
        ("legs", False, ""),
        ("legs", False, ""),
        ("eye", True, "ink"),
        ("eye", True, "ink"),
        ("shield", True, "faint"),
    ]
    assert lines[1].points == ((43, 35), (55, 25))  # moved by the group
    # rotate(90 12 4) about its middle: (12, 4) moved by (4, -12) to (16, -8), then turned to (24, 8), then moved by (10, 20)
    xs, ys = zip(*lines[4].points, strict=True)
    assert ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2) == pytest.approx((34, 28), abs=0.05)


@pytest.mark.parametrize(
    ("scale", "long"), [({"um_per_unit": 5.0, "length": None}, 250.0), ({"um_per_unit": None, "length": 400.0}, 400.0)]
)
def test_the_drawing_is_as_long_as_the_scale_says(tmp_path: Path, scale: dict[str, Any], long: float) -> None:
    raw = raw_drawing(lines_of_svg(written(tmp_path, MITE)), **SAID, **scale)
    assert raw["length"]["default"] == long
    plate = draw(form(raw), {}, title="it")
    outline = next(each for each in plate.shapes if isinstance(each, Swell) and each.part == "outline")
    xs, ys = zip(*outline.points, strict=True)
    assert max(ys) - min(ys) == pytest.approx(long, rel=1e-3)
    # a cubic from (20, 0) by (40, 0), (40, 50) reaches x = 20 + 0.75 × 20 = 35: 30 units wide on 50 long
    assert max(xs) - min(xs) == pytest.approx(long * 30 / 50, rel=0.01)
    assert {each.get("outside") for each in raw["parts"] if each["part"] == "legs"} == {True}


BOMB = (
    '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa">'
    + "".join(f'<!ENTITY {chr(98 + k)} "{"&" + chr(97 + k) + ";" * 1}{"&" + chr(97 + k) + ";"}">' for k in range(9))
    + "]>"
)
LINE = '<path d="M 0 0 L 9 9 L 0 9 Z"/>'


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (OPEN + "<script>alert(1)</script></svg>", "<script> is a script"),
        (OPEN + '<path onclick="x()" d="M 0 0 L 1 1"/></svg>', "onclick= is a script"),
        (OPEN + '<image href="a.png"/></svg>', "<image> is an image"),
        (OPEN + '<a href="https://example.org">' + LINE + "</a></svg>", "<a> is a link"),
        (OPEN + '<use xlink:href="#x"/></svg>', "<use> is a link"),
        (OPEN + "<text>mite</text></svg>", "<text> is text"),
        (OPEN + "<defs><script/></defs>" + LINE + "</svg>", "<script> is a script"),
        (OPEN + "<style>@import url(x)</style></svg>", "<style> is a style sheet"),
        (OPEN + '<path style="fill:url(https://example.org/x)" d="M 0 0 L 1 1"/></svg>', "names something outside the file"),
        ('<!DOCTYPE svg SYSTEM "file:///etc/passwd">' + OPEN + LINE + "</svg>", "holds a document type declaration"),
        (BOMB + OPEN + "<title>&j;</title>" + LINE + "</svg>", "holds a document type declaration"),
        ('<?xml-stylesheet href="x.css"?>' + OPEN + LINE + "</svg>", "holds a processing instruction"),
        (OPEN + "<title>&nothing;</title>" + LINE + "</svg>", "undefined entity"),
        (OPEN + LINE, "no element found"),
        ("<html><body/></html>", "begins with <html>"),
        ("", "no element found"),
        ("\x00\x01", "not well-formed"),
        (OPEN + "</svg>", "holds no line"),
        (OPEN + '<path d="M 0 0 L ?"/></svg>', "the points of <path> cannot be read"),
        (OPEN + '<path d="L 3 4"/></svg>', "the points of <path> cannot be read"),
        (OPEN + '<circle r="-4"/></svg>', "<circle> has no size"),
        (OPEN + '<circle r="4em"/></svg>', "no plain number"),
        (OPEN + '<rect width="1e400" height="3"/></svg>', "rect"),
        (OPEN + '<path transform="scale(1e300)" d="M 1 1 L 9 9"/></svg>', "units away"),
        (OPEN + '<path transform="spin(4)" d="M 1 1 L 9 9"/></svg>', "transform= 'spin(4)' cannot be read"),
        (OPEN + '<path transform="translate()" d="M 1 1 L 9 9"/></svg>', "transform= 'translate()' cannot be read"),
        (OPEN + f'<path d="M 0 0 {"L 1 2 " * 20001}"/></svg>', "more than 20000 points"),
        (OPEN + "<g>" * 80 + LINE + "</g>" * 80 + "</svg>", "groups stand 64 deep"),
        (OPEN + "<marker/></svg>", "<marker> is not taken"),
        ('<?xml version="1.0" encoding="klingon"?>' + OPEN + LINE + "</svg>", "unknown encoding"),
    ],
)
def test_what_is_no_drawing_is_refused_in_one_message(tmp_path: Path, text: str, says: str) -> None:
    with pytest.raises(SvgRefused) as told:
        lines_of_svg(written(tmp_path, text))
    assert says in str(told.value) and "\n" not in str(told.value)
    assert str(told.value).startswith(str(tmp_path / "it.svg"))


def test_a_refusal_names_line_and_column(tmp_path: Path) -> None:
    with pytest.raises(SvgRefused, match=r"it\.svg:3:4: <text> is text\. Allowed: paths, polygons"):
        lines_of_svg(written(tmp_path, OPEN + "\n" + LINE + "\n   <text>a</text></svg>"))


def test_a_file_that_is_too_large_or_not_there_is_not_opened(tmp_path: Path) -> None:
    large = tmp_path / "large.svg"
    with large.open("wb") as file:
        file.truncate(100 * MOST_BYTES)
    with pytest.raises(SvgRefused, match=r"200\.0 MB\. Allowed: 2 MB"):
        lines_of_svg(large)
    with pytest.raises(SvgRefused, match="cannot be read"):
        lines_of_svg(tmp_path / "none.svg")
    with pytest.raises(SvgRefused, match="cannot be read"):
        lines_of_svg(tmp_path)


def test_lines_of_which_none_is_closed_have_no_outline(tmp_path: Path) -> None:
    with pytest.raises(SvgRefused, match="none can be the edge of the body"):
        raw_drawing(lines_of_svg(written(tmp_path, OPEN + '<line x2="4"/></svg>')), **SAID, um_per_unit=1.0, length=None)


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the library, to write into."""
    folder = tmp_path_factory.mktemp("svg")
    shutil.copytree(Path(__file__).parents[2] / "keydata", folder / "keydata")
    return folder


def new(project: Path, svg: Path, *more: str) -> Any:
    said = ["--id", "test-mite", "--theme", "small-animals", "--name", "A mite", "--about", "An oval body with legs.", "--after", "a mite"]
    return CliRunner().invoke(main, ["--library", str(project), "new", "drawing", "--svg", str(svg), *said, *more])


def test_the_command_writes_a_drawing_that_the_checks_take(project: Path, tmp_path: Path) -> None:
    result = new(project, written(tmp_path, MITE), "--um-per-unit", "5")
    assert result.exit_code == 0, result.output
    file = project / "keydata/drawings/small-animals/test-mite.yaml"
    assert yaml.safe_load(file.read_text("utf-8"))["length"]["default"] == 250
    again = new(project, written(tmp_path, MITE), "--um-per-unit", "5")
    assert again.exit_code == 2 and "There is a drawing 'test-mite' already" in again.output
    file.unlink()


@pytest.mark.parametrize(
    ("text", "more", "says"),
    [
        (MITE, [], "Say the scale once"),
        (MITE, ["--length", "-5"], "The scale is -5"),
        (MITE, ["--length", "nan"], "The scale is nan"),
        (OPEN + '<path id="outline" d="M 0 0 L 10 50 L 10 0 L 0 50 Z"/></svg>', ["--length", "300"], "The outline crosses itself"),
        (OPEN + "<text>a</text></svg>", ["--length", "300"], "<text> is text"),
    ],
)
def test_where_anything_is_wrong_nothing_is_written(project: Path, tmp_path: Path, text: str, more: list[str], says: str) -> None:
    before = sorted(project.rglob("*"))
    result = new(project, written(tmp_path, text), *more)
    assert result.exit_code != 0 and says in result.output and "Traceback" not in result.output
    assert sorted(project.rglob("*")) == before
