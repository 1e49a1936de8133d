"""Every kind of drawing with every word it knows: it draws, stays on its plate, and says what it is."""

import re
from itertools import product

import pytest
from reading import SVG, read

from keytool.figures import draw, kinds, problems, to_svg
from keytool.figures.sheet import with_needs

CASES = [
    (kind.name, param.name, value)
    for kind in kinds().values()
    for param in kind.params
    for value in (param.choices if param.type == "choice" else (True, False) if param.type == "flag" else (param.low, param.high))
]


def check(svg, px):
    picture = read(svg, px)
    root = picture.root
    assert root.attrib["role"] == "img"
    ids = {e.attrib["id"] for e in root.iter() if "id" in e.attrib}
    assert set(root.attrib["aria-labelledby"].split()) == ids
    assert root.find(SVG + "title").text and root.find(SVG + "desc").text
    for part, points, stroke in picture.paths:
        assert all(x - stroke / 2 >= -0.02 and x + stroke / 2 <= picture.width + 0.02 for x, _ in points), part
        assert all(y - stroke / 2 >= -0.02 and y + stroke / 2 <= picture.height + 0.02 for _, y in points), part
    assert [p for p in picture.paths if p[0] == "scale-bar"]
    label = next(t for t in root.iter(SVG + "text") if t.attrib["data-part"] == "scale-label")
    number, unit = label.text.split()
    assert unit in ("µm", "mm") and f"{float(number):e}"[0] in "125"
    return picture


@pytest.mark.parametrize(("kind", "name", "value"), CASES)
def test_every_value_draws_or_says_why_not(kind, name, value):
    params = with_needs(kind, name, value)
    wrong = problems(kind, params)
    if wrong:
        assert not isinstance(value, str | bool), wrong
        assert all((line.startswith(f"{kind}: ") and "µm" in line) or "width" in line for line in wrong)
        return
    drawing = draw(kind, params, title="A title", description="What it shows")
    px = 200 / drawing.box.height
    svg = to_svg(drawing, px, id_prefix="x")
    check(svg, px)
    assert "nan" not in svg and not re.search(r"[0-9.]e-?[0-9]|-0[ ,\"]", "".join(re.findall(r' d="([^"]*)"', svg)))


@pytest.mark.parametrize("kind", kinds())
def test_no_accent_unless_asked(kind):
    params = {p.name: p.choices[-1] for p in kinds()[kind].params if p.type == "choice" and p.name != "accent"}
    params = params if not problems(kind, params) else {}
    assert "wm-accent" not in to_svg(draw(kind, params, title="t"), 1.0, id_prefix="x")


@pytest.mark.parametrize("kind", kinds())
def test_every_accent_can_be_shown(kind):
    """Each part that may be asked about is really in some drawing of its kind, in the accent colour alone."""
    declared = kinds()[kind].params
    parts = next(p for p in declared if p.name == "accent").choices[1:]
    asked = [p for p in declared if p.name != "accent"]
    singles = [with_needs(kind, p.name, v) for p in asked for v in (p.choices or ((True,) if p.type == "flag" else ()))]
    singles += [
        {"spear": "stylet", "lip-shape": "capped"},
        {"stoma": "barrel", "tooth": "large-dorsal"},
        {"reach": "gullet", "gullet": "rhabditoid"},
    ]
    for part in parts:
        pictures = ({**extra, "accent": part} for extra in [{}, *singles])
        assert any("wm-accent" in to_svg(draw(kind, p, title="t"), 1.0, id_prefix="x") for p in pictures if not problems(kind, p)), part


GULLETS = [c for p in kinds()["nematode-head"].params if p.name == "gullet" for c in p.choices]
SPEARS = [c for p in kinds()["nematode-head"].params if p.name == "spear" for c in p.choices]


@pytest.mark.parametrize(("gullet", "spear", "reach", "width"), [*product(GULLETS, SPEARS, ("mouth", "gullet"), (8, 120))])
def test_heads_of_every_make(gullet, spear, reach, width):
    drawing = draw("nematode-head", {"gullet": gullet, "spear": spear, "reach": reach, "width": width}, title="t", description="d")
    px = 160 / drawing.box.width
    picture = check(to_svg(drawing, px, id_prefix="x"), px)
    outline = picture.points("outline")
    right = max(x for x, _ in outline)
    for part in ("gullet", "bulb", "gland", "gut", "shade"):
        assert all(x < right for x, _ in picture.points(part)), part


def test_shade_never_lies_on_the_gullet():
    """Stipple of the body stays clear of the gullet at the same depth."""
    drawing = draw("nematode-head", {"width": 40, "gullet": "tylenchoid", "spear": "stylet", "reach": "gullet"}, title="t")
    picture = read(to_svg(drawing, 3.0, id_prefix="x"), 3.0)
    walls = picture.points("gullet", "bulb", "gland")
    for x, y in picture.points("shade"):
        beside = [wx for wx, wy in walls if abs(wy - y) < 1.0]
        assert not beside or x > max(beside)
