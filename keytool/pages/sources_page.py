"""The page of the sources: how to cite each, how much of it was read, and where it is used."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from keytool.library.basis import Basis
from keytool.library.model import Library
from keytool.pages.html import Html, el
from keytool.pages.page import Page, heading, page
from keytool.pages.page_writer import Writer

Use = tuple[str, str, str]
"""Where a basis stands: the page, the anchor on it, and its name."""


def sources_page(library: Library) -> Page:
    """Every source, with one anchor each."""
    writer = Writer(library, "sources.md")
    used: dict[str, dict[Use, None]] = {}
    for use, bases in _uses(library):
        for basis in bases:
            for id in basis.sources:
                used.setdefault(id, {})[use] = None
    blocks: list[str] = [heading(1, "Sources"), el("p", f"{len(library.sources)} sources. Of each is said how much of it was read here.")]
    for source in sorted(library.sources.values(), key=lambda each: each.id):
        blocks += [
            heading(2, source.id, source.id),
            el(
                "div",
                el("p", source.cite),
                el("p", f"{library.vocabulary['read'][source.read].label}. ", source.note, class_="wm-aside"),
                _where(writer, list(used.get(source.id, {}))),
            ),
        ]
    file = next((name for (kind, _), name in library.files.items() if kind == "sources"), "keydata/sources.yaml")
    return page("sources.md", file, "Sources", blocks)


def _where(writer: Writer, uses: list[Use]) -> Html:
    if not uses:
        return el("p", "Not used yet.", class_="wm-aside")
    return el(
        "details",
        el("summary", f"Used in {len(uses)} place{'s' if len(uses) > 1 else ''}"),
        el("ul", *(el("li", el("a", name, href=writer.href(page, anchor))) for page, anchor, name in uses)),
        class_="wm-uses",
        data_search_exclude=True,
    )


def _uses(library: Library) -> Iterator[tuple[Use, Iterable[Basis]]]:
    """Every basis of the library, with where it is shown."""
    for entry in library.entries.values():
        place = (f"entries/{entry.id}.html", "", entry.name)
        yield place, entry.feeding_basis
        yield place, entry.commonness_basis
        for statement in entry.statements.values():
            if statement.stated_by == entry.id:
                yield place, statement.basis
        for said in (*entry.tells, *entry.notes):
            yield place, said.basis
        for mistake in entry.mistaken_for:
            yield place, mistake.basis
    for character in library.characters.values():
        yield ("characters/index.html", character.id, character.name), (*character.misread_basis, *character.plus_minus_basis)
    for quantity in library.quantities.values():
        yield ("quantities.html", quantity.id, quantity.name), quantity.basis
    for caution in library.cautions.values():
        yield ("cautions.html", caution.id, caution.title), caution.basis
    for guide in library.guides.values():
        for step in guide.steps:
            yield (f"guides/{guide.id}.html", f"step-{step.id}", guide.title), step.basis
        for said in guide.notes:
            yield (f"guides/{guide.id}.html", "notes", guide.title), said.basis
    for these in library.look_alikes.values():
        for said in (these.decisive, *these.notes):
            yield (f"look-alikes/{these.id}.html", "", these.title), said.basis
    for voices in library.voices.values():
        for said in (*voices.practice, *voices.published):
            yield ("voices.html", voices.id, voices.title), said.basis
    for key in library.keys.values():
        for couplet in key.couplets.values():
            if couplet.note:
                yield (f"keys/whole/{key.id}.html", f"couplet-{couplet.id}", f"{key.title}, {couplet.number}"), couplet.note.basis
    for shortcut in library.shortcuts.values():
        place = (f"keys/whole/{shortcut.key}.html", f"shortcut-{shortcut.id}", shortcut.title)
        yield place, shortcut.basis
        for failure in shortcut.fails:
            yield place, failure.said.basis
