"""Make and keep the computed pictures of entries: a still each, and for some a series of planes of focus and irises."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from keytool.library.eyepiece_records import FOLDER, Series, Still
from keytool.library.model import Library
from keytool.library.save import save

from .body import scene
from .kept import INDEX, index_text, named_by_content, tidy
from .laid import made_from, met_in
from .stand import webp
from .still import picture, sheet
from .subject import Subject

IRIS = 0.3
"""Of a still: closed far enough that clear things show."""
SIZE, MOST = 288, 15_000
"""Pixels a side of a still, and bytes of its file."""
WITHOUT_FIELD = ("optics",)
"""Themes that no drop holds."""
UNSEEN = ("dots",)
"""Themes of what is too small for 40×: their field shows that nothing of it is seen."""
SERIES_SIZE, SERIES_MOST = 192, 120_000
SERIES_FOCUS = tuple(float(each) for each in range(-6, 7))
"""1 µm apart: twice that already shows as steps."""
SERIES_IRISES = (0.2, 0.7)


def make(root: Path, library: Library, subjects: Sequence[Subject], series: frozenset[str]) -> Iterator[Still]:
    """Make, write and index pictures one by one, so that what is broken off leaves whole ones; `series` names entries that get one."""
    kept = all_kept(library)
    folder = root / "keydata" / FOLDER
    folder.mkdir(parents=True, exist_ok=True)
    for each in subjects:
        still = _made(folder, each, wants_series=each.entry.id in series)
        kept[still.entry] = still
        save(root / INDEX, index_text(kept).encode())
        yield still
    tidy(root, kept)


def all_kept(library: Library) -> dict[str, Still]:
    """Every picture by its name in the index: those of entries and the whole fields."""
    return {**library.eyepiece.stills, **{still.entry: still for still in library.eyepiece.fields.values()}}


def make_fields(root: Path, library: Library) -> Iterator[Still]:
    """Make the whole field of each theme that has something to lay into it, or of which nothing can be seen at 40×."""
    from .low_power import ACROSS
    from .low_power import IRIS as OPEN
    from .low_power import field as low_field

    kept = all_kept(library)
    folder = root / "keydata" / FOLDER
    for theme in library.vocabulary["theme"]:
        bodies = met_in(library, theme)
        if theme in WITHOUT_FIELD or not (bodies or theme in UNSEEN):
            continue
        content = webp(low_field(library, theme, bodies), MOST)
        name = f"field-{theme}"
        shows = tuple(each.entry.id for each in bodies)
        still = Still(name, named_by_content(name, content), made_from(bodies), ACROSS, 0.0, OPEN, None, theme, shows)
        save(folder / still.file, content)
        kept[name] = still
        save(root / INDEX, index_text(kept).encode())
        yield still
    tidy(root, kept)


def _made(folder: Path, subject: Subject, *, wants_series: bool) -> Still:
    entry, focus = subject.entry.id, subject.section.focus
    there = scene(subject.drawing, subject.section, subject.materials, subject.seed)
    content = webp(picture(there, focus, IRIS, SIZE, subject.seed), MOST)
    still = Still(entry, named_by_content(entry, content), subject.made_from, round(there.across, 1), focus, IRIS, None)
    save(folder / still.file, content)
    if not wants_series:
        return still
    content = webp(sheet(there, SERIES_FOCUS, SERIES_IRISES, SERIES_SIZE, subject.seed), SERIES_MOST)
    name = named_by_content(f"{entry}-focus", content)
    save(folder / name, content)
    return replace(still, series=Series(name, SERIES_SIZE, SERIES_FOCUS, SERIES_IRISES))
