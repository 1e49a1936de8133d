"""Pictures that are kept: what they are made from, when they are stale, and that nothing needs numpy but making them."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from keytool.library import load
from keytool.library.eyepiece_records import NOTHING, eyepiece, section_of
from keytool.optics.kept import index_text, is_stale, named_by_content, tidy
from keytool.optics.subject import subject

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def library():
    return load(ROOT).library


def of(library, entry: str):
    return subject(library.eyepiece.sections, library.eyepiece.materials, library.entries[entry])


def test_every_material_lies_within_its_range_and_says_what_it_rests_on(library) -> None:
    assert library.eyepiece.materials
    for each in library.eyepiece.materials.values():
        assert each.low <= each.index <= each.high, each.id
        assert each.basis


def test_solids_in_water_raise_the_index_as_barer_and_joseph_measured(library) -> None:
    # n = n_water + 0.0018 per 1 % of solids (Barer and Joseph 1954, Q. J. Microsc. Sci. 95: 399); 10 to 20 % for a single cell
    cytoplasm = library.eyepiece.materials["cytoplasm"]
    assert 1.333 + 0.0018 * 10 <= cytoplasm.index <= 1.333 + 0.0018 * 20
    assert pytest.approx(1.369) == 1.333 + 0.0018 * 20


def test_a_bacterium_is_as_dense_as_was_measured(library) -> None:
    # Escherichia coli 1.384 at 589 nm: Balaev et al. 2002, SPIE 4707
    bacterium = library.eyepiece.materials["bacterium"]
    assert bacterium.low < 1.384 < bacterium.high


def test_diatoms_are_as_dense_as_opal(library) -> None:
    # 1.434: McLaughlin 1977, as cited on diatomimaging.com
    assert library.eyepiece.materials["silica"].index == 1.434


def test_humus_takes_more_blue_than_red(library) -> None:
    # E4/E6 of humic acids 3 to 5 (Stevenson, recalled): alpha(465)/alpha(610) = (E4/E6)^(145/200)
    red, _, blue = library.eyepiece.materials["humus"].absorbs
    assert 3 ** (145 / 200) * 0.9 < blue / red < 5 ** (145 / 200)


def test_stipple_is_the_pens_manner_and_never_matter(library) -> None:
    for section in library.eyepiece.sections.values():
        assert not {"shade", "muscles", "faces", "glint", "tint"} & set(section.parts), section.id


def test_a_section_that_names_an_entry_wins_over_that_of_its_form_and_kind(library) -> None:
    sections = library.eyepiece.sections
    assert section_of(sections, library.entries["oxide-speck"]).id == "oxide-specks"
    assert section_of(sections, library.entries["swimmer"]).id == "rods-and-dots"
    assert section_of(sections, library.entries["amoeba-cyst"]).id == "cyst-with-cell"
    assert section_of(sections, library.entries["plain-rod"]).id == "rods-and-dots"


def test_what_would_mislead_has_no_picture(library) -> None:
    left_out = {entry for each in library.eyepiece.sections.values() if each.body == NOTHING for entry in each.entries}
    assert left_out
    assert not left_out & set(library.eyepiece.stills)
    assert all(of(library, each) is None for each in left_out)


def test_a_wide_strand_is_shown_long_enough_to_be_drawn(library) -> None:
    for id in ("green-alga-filament", "moss-protonema", "tube-alga"):
        assert of(library, id) is not None


def test_a_picture_is_stale_when_its_material_changes(library) -> None:
    one = of(library, "euglypha")
    materials = dict(one.materials)
    materials["shell"] = replace(materials["shell"], index=1.46)
    assert replace(one, materials=materials).made_from != one.made_from
    materials = dict(one.materials)
    materials["quartz"] = replace(materials["quartz"], index=1.6)
    assert replace(one, materials=materials).made_from == one.made_from


def test_a_picture_is_stale_when_its_drawing_changes(library) -> None:
    one = of(library, "euglypha")
    assert replace(one, drawing=replace(one.drawing, shapes=one.drawing.shapes[1:])).made_from != one.made_from


def test_pictures_are_small_and_all_that_are_named_are_there(library) -> None:
    for still in library.eyepiece.stills.values():
        content = (ROOT / "keydata/eyepiece" / still.file).read_bytes()
        assert content[8:12] == b"WEBP"
        assert len(content) <= 16_000, still.entry
        assert named_by_content(still.entry, content) == still.file
        if still.series:
            assert (ROOT / "keydata/eyepiece" / still.series.file).stat().st_size <= 120_000


def test_the_index_comes_back_as_it_was_written(library) -> None:
    import yaml

    assert eyepiece({"stills": yaml.safe_load(index_text(library.eyepiece.stills)) or {}}).stills == dict(library.eyepiece.stills)


def test_tidying_takes_away_only_what_the_index_does_not_name(tmp_path: Path, library) -> None:
    folder = tmp_path / "keydata/eyepiece"
    folder.mkdir(parents=True)
    still = next(iter(library.eyepiece.stills.values()))
    for name in (still.file, "old-00000000.webp"):
        (folder / name).write_bytes(b"x")
    kept = replace(still, series=None)
    assert tidy(tmp_path, {still.entry: kept}) == ["old-00000000.webp"]
    assert (folder / still.file).exists()


def test_neither_the_check_nor_the_pages_need_numpy() -> None:
    code = "import sys, keytool.optics.kept, keytool.pages.eyepiece, keytool.cli.eyepiece, keytool.cli.check; assert 'numpy' not in sys.modules and 'scipy' not in sys.modules"
    subprocess.run([sys.executable, "-c", code], check=True, cwd=ROOT)


def test_most_pictures_are_of_what_there_is_now(library) -> None:
    stale = [id for id, still in library.eyepiece.stills.items() if is_stale(library, still)]
    assert len(stale) <= len(library.eyepiece.stills) / 2
