"""Drawings that are data: each draws with every word it knows, at the size that is asked, and a fault in its lines is named."""

from __future__ import annotations

import re
from itertools import pairwise
from math import dist

import pytest
from reading import read
from test_every_kind import check

from keytool.figures import FigureError, draw, kinds, to_svg
from keytool.figures.drawn import lines_of_parts
from keytool.figures.drawn_faults import crosses, faults
from keytool.figures.proportions import half_width
from keytool.library.drawing_records import Form, form
from tests.conftest import KEYDATA, read_cases

FORMS = {path.stem: form(read_cases(path)) for path in sorted((KEYDATA / "drawings").rglob("*.yaml"))}
"""The drawings alone, without the library around them: they are read before any test runs."""
CASES = [(each, param.name, value) for each in FORMS.values() for param in kinds([each])[each.id].params for value in param.choices]

BEAN = {
    "id": "tarn-bean",
    "theme": "small-animals",
    "name": "An invented bean",
    "about": "An invented bean with two hairs.",
    "length": {"about": "length of the bean", "default": 50, "low": 5, "high": 500},
    "proportions": {
        "stout": {"about": "how stout", "default": 1, "low": 0.5, "high": 2, "widens": True},
        "width": {"about": "how wide, in µm", "low": 1, "high": 400, "unit": "µm", "widens": True},
        "neck": {"about": "how long its neck is", "default": 1, "low": 0.2, "high": 4, "stretches": {"from": 0, "to": 0.25}},
        "eye": {"about": "how large its eye is", "default": 1, "low": 0.5, "high": 3, "scales": ["eye"]},
        "coat": {"about": "What it wears", "choices": {"bare": "nothing", "hairy": "hairs"}},
    },
    "outline": {"straight": "-0.2 0, 0.2 0, 0.2 1, -0.2 1"},
    "parts": [
        {"part": "eye", "dots": "0 0.5", "radius": 0.05},
        {"part": "hairs", "row": {"along": "outline", "shape": "0 0, 0.1 0", "every": 0.1}, "only": {"coat": ["hairy"]}},
    ],
    "basis": {"kind": "memory"},
}


def drawn(params: dict[str, object], raw: dict[str, object] = BEAN) -> dict[str, tuple[float, float]]:
    """How wide and high each part of a drawing comes out, in µm."""
    picture = read(to_svg(draw(form(raw), params, title="t"), 4.0, id_prefix="t"), 4.0)
    return {part: picture.span(part) for part in {part for part, _, _ in picture.paths}}


@pytest.mark.parametrize(("each", "name", "value"), CASES, ids=lambda case: case.id if isinstance(case, Form) else str(case))
def test_every_word_of_every_drawing_draws(each: Form, name: str, value: str) -> None:
    drawing = draw(each, {name: value}, title="A title", description="What it shows")
    px = 200 / drawing.box.height
    svg = to_svg(drawing, px, id_prefix="x")
    check(svg, px)
    assert "nan" not in svg


@pytest.mark.parametrize("each", FORMS.values(), ids=lambda each: each.id)
def test_every_part_can_be_shown_in_the_accent(each: Form) -> None:
    choices = [p for p in each.proportions if p.choices]
    words = [{}, *({p.name: word} for p in choices for word in p.choices)]
    for part in ("body", *each.parts()[1:]):
        assert any("wm-accent" in to_svg(draw(each, {**word, "accent": part}, title="t"), 1.0, id_prefix="x") for word in words), part
    assert "wm-accent" not in to_svg(draw(each, {}, title="t"), 1.0, id_prefix="x")


@pytest.mark.parametrize("each", FORMS.values(), ids=lambda each: each.id)
def test_a_body_is_as_long_as_asked_to_one_in_a_hundred(each: Form) -> None:
    length = each.length.high / 3
    drawing = draw(each, {"length": length}, title="t")
    px = 800 / drawing.box.height
    across, along = read(to_svg(drawing, px, id_prefix="t"), px).span("outline")
    if not each.outline.half:
        assert (along if each.front == "top" else across) == pytest.approx(length, rel=0.01)
    else:
        ring = lines_of_parts(each)[0][2]
        half = len(ring) // 2
        middle = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in zip(ring[:half], reversed(ring[half:]), strict=True)]
        assert sum(dist(a, b) for a, b in pairwise(middle)) == pytest.approx(1.0, rel=0.01)


def test_proportions_change_what_they_say() -> None:
    plain = drawn({"length": 100})
    assert plain["outline"] == pytest.approx((40, 100), rel=0.01) and "hairs" not in plain
    assert drawn({"length": 100, "stout": 2})["outline"] == pytest.approx((80, 100), rel=0.01)
    assert drawn({"length": 100, "width": 33})["outline"] == pytest.approx((33, 100), rel=0.01)
    assert drawn({"length": 100, "neck": 4})["outline"] == pytest.approx((40 / 1.75, 100), rel=0.01)  # as long as asked, so slimmer
    assert drawn({"length": 100, "eye": 3})["eye"] == pytest.approx((30, 30), rel=0.02)
    assert drawn({"length": 100, "coat": "hairy"})["hairs"] == pytest.approx((60, 120), rel=0.02)


def test_a_number_beyond_its_span_is_refused_in_plain_words() -> None:
    with pytest.raises(FigureError, match=re.escape("tarn-bean: stout: 9 is not between 0.5 and 2")):
        draw(form(BEAN), {"stout": 9}, title="t")
    with pytest.raises(FigureError, match=re.escape("tarn-bean has no parameter 'stoot'. Did you mean 'stout'?")):
        draw(form(BEAN), {"stoot": 1}, title="t")


def test_an_outline_that_crosses_itself_is_told_with_the_place() -> None:
    knot = form({**BEAN, "outline": {"straight": "0 0, 0.4 1, 0 1, 0.4 0"}})
    [(path, message, _, _)] = faults(knot)
    assert path == ("outline",) and message == "The outline crosses itself near 0.2 0.5."
    assert crosses(((0, 0), (1, 0), (1, 1), (0, 1))) is None


def test_a_part_outside_the_body_is_told_unless_it_stands_out() -> None:
    far = {"part": "horn", "line": "0.5 0.5, 0.6 0.4"}
    [(path, message, _, tip)] = faults(form({**BEAN, "parts": [far]}))
    assert path == ("parts", 0) and message == "'horn' lies outside the body near 0.5 0.5." and "outside: true" in tip
    assert not list(faults(form({**BEAN, "parts": [{**far, "outside": True}]})))


def test_half_widths_run_through_their_knots_and_never_beyond() -> None:
    half = half_width(((0, 0.1), (0.3, 0.4), (0.6, 0.4), (1, 0)))
    assert [half(t) for t in (0, 0.3, 0.6, 1)] == pytest.approx([0.1, 0.4, 0.4, 0])
    assert max(half(k / 200) for k in range(201)) == pytest.approx(0.4)


def test_what_the_body_hides_is_not_drawn() -> None:
    leg = {"part": "leg", "line": {"straight": "0 0.5, 0.6 0.5"}, "weight": 1, "behind": ["outline"]}
    assert drawn({"length": 100}, {**BEAN, "parts": [leg]})["leg"][0] == pytest.approx(40, rel=0.02)


def test_the_same_drawing_is_the_same_bytes() -> None:
    first, second = (to_svg(draw(form(BEAN), {"coat": "hairy"}, title="t"), 2.0, id_prefix="a") for _ in range(2))
    assert first == second
