"""The page and the card draw the same thing, always the same way, from vectors alone."""

import io
import os
import re
import subprocess
import sys
from datetime import UTC, datetime

import pypdf
import pytest
from fpdf import FPDF

from keytool.figures import common_scale, draw, labelled, matched, to_pdf, to_svg

HEAD = {"width": 24, "spear": "stylet", "spear-length": 16, "lip-shape": "capped", "gullet": "tylenchoid", "accent": "knobs"}


def page(*drawings, scale=0.1):
    pdf = FPDF()
    pdf.set_creation_date(datetime(2026, 1, 1, tzinfo=UTC))
    pdf.compress = False
    pdf.add_page()
    pdf.set_font("Helvetica", size=9)
    for drawing in drawings:
        to_pdf(pdf, drawing, 20, 30, scale)
    return bytes(pdf.output())


def test_same_input_same_bytes():
    first, second = (draw("nematode-head", HEAD, title="t") for _ in range(2))
    assert to_svg(first, 3.7, id_prefix="a") == to_svg(second, 3.7, id_prefix="a")
    assert page(first) == page(second)


def test_same_bytes_in_another_process():
    code = (
        "from keytool.figures import draw, to_svg, kinds\n"
        "import hashlib\n"
        "text = ''.join(to_svg(draw(k, {}, title=k), 2.0, id_prefix='a') for k in kinds())\n"
        "print(hashlib.sha256(text.encode()).hexdigest())"
    )
    runs = {
        subprocess.run([sys.executable, "-c", code], env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, check=True).stdout
        for seed in ("1", "2")
    }
    assert len(runs) == 1


def test_the_card_has_vectors_only():
    drawings = [draw(kind, {}, title=kind) for kind in ("nematode-head", "grain", "bubble", "optical-fault")]
    read = pypdf.PdfReader(io.BytesIO(page(*drawings)))
    assert list(read.pages[0].images) == []
    assert "/XObject" not in read.pages[0]["/Resources"]
    assert read.pages[0].extract_text().split("\n") == [d.bar.label for d in drawings]


def test_the_card_is_to_scale():
    """A 120 µm bubble at a tenth of a millimetre per µm is 12 mm across on paper."""
    read = pypdf.PdfReader(io.BytesIO(page(draw("bubble", {"diameter": 120}, title="t"))))
    body = read.pages[0].get_contents().get_data().decode("latin-1")
    unit = float(re.search(r"q ([\d.]+) 0 0 -[\d.]+ 0 [\d.]+ cm", body)[1])
    rim = body[: body.index(" h ")]
    xs = [float(x) * unit for x, _ in re.findall(r"(-?[\d.]+) (-?[\d.]+) [ml]\b", rim)]
    assert (max(xs) - min(xs)) / 72 * 25.4 == pytest.approx(12, rel=0.001)


def test_lettering_leaves_the_callers_font_alone():
    pdf = FPDF()
    pdf.add_page()
    pdf.set_font("Helvetica", size=9)
    to_pdf(pdf, draw("bubble", {}, title="t"), 20, 30, 0.1)
    assert pdf.font_size_pt == 9


def test_several_plates_fit_one_box_at_one_scale():
    pair = matched([draw("nematode-head", HEAD, title="a"), draw("nematode-head", {"width": 60, "stoma": "barrel"}, title="b")])
    scale = common_scale(pair, 24, 36)
    assert all(d.box.width * scale <= 24.0001 and d.box.height * scale <= 36.0001 for d in pair)
    assert any(d.box.width * scale > 23.99 or d.box.height * scale > 35.99 for d in pair)
    assert len({d.bar.length for d in pair}) == 1
    assert len({d.letter_um for d in pair}) == 1


def test_colours_follow_the_page_unless_plain():
    drawing = draw("nematode-head", HEAD, title="t")
    themed, plain = (to_svg(drawing, 2.0, id_prefix="a", plain=plain) for plain in (False, True))
    assert "var(--wm-accent, #b0401c)" in themed and "#1a1816" not in themed
    assert "var(" not in plain and 'color="#b0401c"' in plain and 'color="#1a1816"' in plain


def test_a_plate_that_must_not_be_a_negative_says_so():
    """A bubble is known by its black rim: a dark theme has to be able to lay it on light paper."""
    assert 'class="wm-figure wm-tonal"' in to_svg(draw("bubble", {}, title="t"), 1.0, id_prefix="a")
    assert "wm-tonal" not in to_svg(draw("thread", {}, title="t"), 1.0, id_prefix="a")


def test_text_from_data_is_escaped():
    svg = to_svg(draw("bubble", {}, title='<b>&"', description="</svg>"), 1.0, id_prefix='x"><script>')
    assert "<b>" not in svg and "<script>" not in svg and svg.count("</svg>") == 1


def test_parts_can_be_named():
    drawing = labelled(draw("nematode-head", HEAD, title="t"), {"knobs": "knobs", "cap": "head cap", "tooth": "not here"})
    svg = to_svg(drawing, 4.0, id_prefix="a")
    assert ">knobs</text>" in svg and ">head cap</text>" in svg and "not here" not in svg
    assert drawing.box.width > draw("nematode-head", HEAD, title="t").box.width


def test_fpdf_is_not_imported_with_the_figures():
    code = "import sys, keytool.figures; print('fpdf' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, text=True).stdout.strip() == "False"


def test_an_open_line_stays_open_on_paper():
    """fpdf2 closes paths by itself unless told not to; a gullet's wall would then get a chord across the body."""
    body = (
        pypdf.PdfReader(io.BytesIO(page(draw("flake", {"form": "chip"}, title="t")))).pages[0].get_contents().get_data().decode("latin-1")
    )
    closing = re.findall(r"(?<![A-Za-z])(s|h S|b|b\*)(?![A-Za-z])", body)
    assert len(closing) == 0, closing
