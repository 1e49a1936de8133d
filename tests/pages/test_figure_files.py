"""Drawings as files: written once, the same on every page, in inks that no page changes."""

from __future__ import annotations

from xml.etree import ElementTree

from keytool.figures.library_figures import of_entry
from keytool.library import Library
from keytool.pages.figure_files import FigureFiles
from keytool.pages.page_writer import Writer


def test_two_pages_that_show_one_drawing_share_one_file(library: Library):
    figures = FigureFiles()
    drawing = of_entry(library, library.entries["plectus"])
    assert drawing
    near = figures.img(Writer(library, "keys/nematode-mouthparts.md"), drawing, 2.0)
    far = figures.img(Writer(library, "keys/whole/nematode-mouthparts.md"), drawing, 2.0)
    [file] = figures.assets
    assert f'src="../{file.path}"' in near and f'src="../../{file.path}"' in far
    assert 'loading="lazy"' in near and 'width="' in near and 'alt=""' in near


def test_another_size_is_another_file(library: Library):
    figures = FigureFiles()
    drawing = of_entry(library, library.entries["plectus"])
    assert drawing
    assert figures.path(drawing, 2.0) != figures.path(drawing, 3.0)


def test_the_file_is_svg_with_its_inks_inside(library: Library):
    figures = FigureFiles()
    for entry in list(library.entries.values())[::40]:
        if drawing := of_entry(library, entry):
            figures.path(drawing, 2.0)
    for file in figures.assets:
        root = ElementTree.fromstring(file.content)
        assert root.tag.endswith("svg") and "color:#2b241b" in root.attrib["style"]
        assert b"currentcolor" not in file.content and b"<title" not in file.content and b"data-part" not in file.content


def test_what_is_seen_first_is_not_waited_for(library: Library):
    drawing = of_entry(library, library.entries["plectus"])
    assert drawing
    assert "lazy" not in FigureFiles().img(Writer(library, "index.md"), drawing, 2.0, now=True)
