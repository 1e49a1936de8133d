"""The contact sheet lists and shows every drawing; drawings to be told apart stand at one scale."""

import io
from datetime import date

import pypdf

from keytool.card.typeface import FILES
from keytool.figures import draw, kinds
from keytool.figures.contact_sheet import contact_sheet
from keytool.figures.contrast import contrast, without_twins
from keytool.figures.sheet import Item, of_kinds, of_library


def test_the_sheet_holds_every_entry_and_state(library):
    items = list(of_library(library))
    assert len({item.id for item in items}) == len(items)
    assert len(items) == len(library.entries) + sum(len(c.states) for c in library.characters.values())
    assert {item.id for item in items if item.drawing} >= {f"entry-{e.id}" for e in library.entries.values() if e.figure}


def test_the_sheet_holds_every_choice_of_every_kind(library):
    names = {item.id for item in of_kinds(library.drawings)}
    for kind in kinds(library.drawings.values()).values():
        assert f"kind-{kind.name}" in names
        for param in kind.params:
            for value in param.choices if param.name != "accent" and (kind.name not in library.drawings or param.name != "colour") else ():
                assert value == param.default or f"kind-{kind.name}-{param.name}-{value}" in names


def test_the_pdf_names_what_it_shows_and_what_is_missing():
    items = [Item("One group", "a bubble µ", "a", draw("bubble", {}, title="t")), Item("One group", "not drawn", "b", None)]
    first, second = (contact_sheet(items, FILES[False], title="All of it", day=date(2026, 1, 2)) for _ in range(2))
    assert first == second
    read = pypdf.PdfReader(io.BytesIO(first))
    text = read.pages[0].extract_text()
    assert "All of it" in text and "One group" in text and "a bubble µ" in text and "No drawing: not drawn" in text and "50 µm" in text
    assert list(read.pages[0].images) == []


def test_leads_stand_at_one_scale_unless_one_would_vanish():
    worm, dot = draw("nematode-body", {}, title="a"), draw("round-body", {"diameter": 12}, title="b")
    pair = contrast([draw("nematode-body", {"length": 500, "width": 20}, title="c"), None, worm], 200, 300, letter=11, pen=1)
    assert pair.one_scale and pair.drawings[1] is None and pair.scales[0] == pair.scales[2]
    assert len({d.bar.length for d in pair.drawings if d}) == 1
    apart = contrast([worm, dot], 200, 300)
    assert not apart.one_scale and apart.scales[0] != apart.scales[1]
    for shown in (pair, apart):
        for drawing, scale in zip(shown.drawings, shown.scales, strict=True):
            if drawing:
                assert drawing.box.width * scale <= 200.001 and drawing.box.height * scale <= 300.001
    assert all(d.letter_um * s >= 10.9 * 0.9 for d, s in zip(pair.drawings, pair.scales, strict=True) if d)


def test_the_same_picture_twice_is_no_contrast():
    worm, other = draw("nematode-body", {}, title="a"), draw("bubble", {}, title="b")
    assert without_twins([worm, draw("nematode-body", {}, title="other name"), other]) == (None, None, other)


def test_nothing_to_show_is_no_fault():
    assert contrast([None, None], 10, 10).drawings == (None, None)


def test_every_kind_is_on_the_sheet_in_its_own_group(library):
    assert {item.group for item in of_kinds(library.drawings)} == {f"Kind: {kind}" for kind in kinds(library.drawings.values())}
