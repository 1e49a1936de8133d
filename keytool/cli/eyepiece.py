"""`wetmount eyepiece`: the computed pictures of what the microscope shows, made once and kept with the library."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from keytool.library import Library
    from keytool.optics.subject import Subject

NEEDS = "This needs numpy and scipy, which wetmount does without otherwise: pip install 'wetmount[eyepiece]'."


@click.command("eyepiece", short_help="Compute what the microscope shows of an entry.")
@click.argument("entries", nargs=-1, metavar="[ENTRY...]")
@click.option("--series", is_flag=True, help="Also planes of focus and irises, for the knobs on the page. One that has a series keeps it.")
@click.option("--stale", is_flag=True, help="All whose drawing, section or materials have changed since.")
@click.option("--common", is_flag=True, help="All that are met most and have no picture yet.")
@click.option("--tidy", "tidies", is_flag=True, help="Take away pictures that no entry has.")
@click.option("--fields", is_flag=True, help="The whole field at 40x of each theme.")
@click.pass_obj
def eyepiece_command(
    named: Path | None, entries: tuple[str, ...], series: bool, stale: bool, common: bool, tidies: bool, fields: bool
) -> None:
    """Compute what a 40x objective shows of entries, and keep it in keydata/eyepiece/.

    Without an entry it says what there is. Every picture is labelled as computed; look at each before you publish it:
    a wrong picture is worse than none. What would mislead stands in keydata/bench/sections.yaml with body: none.
    """
    from keytool.cli.opening import pick, where
    from keytool.cli.terminal import Terminal
    from keytool.library import load
    from keytool.optics.kept import INDEX, index_text, is_stale, tidy
    from keytool.optics.subject import subject

    terminal, root = Terminal(), where(named)
    library = load(root).library
    kept = library.eyepiece.stills
    if tidies:
        there = {each.entry: each for each in library.eyepiece.fields.values()}
        left = {id: still for id, still in kept.items() if id in library.entries} | there
        if len(left) != len(kept) + len(there):
            from keytool.library.save import save

            save(root / INDEX, index_text(left).encode())
        gone = tidy(root, left)
        terminal.say(f"Taken away: {', '.join(gone)}." if gone else "Nothing to take away.")
        return
    if fields:
        needed()
        from keytool.optics.makes import make_fields

        for still in make_fields(root, library):
            terminal.say(f"{still.theme}: {still.file}")
        if not (entries or stale or common):
            return
    chosen = [pick(each, list(library.entries), "entry called") for each in entries]
    if stale:
        chosen += [id for id, still in kept.items() if id in library.entries and is_stale(library, still)]
    if common:
        chosen += [id for id in _met_most(library) if id not in kept and id not in chosen]
    if not (entries or stale or common):
        old = sum(is_stale(library, each) for each in kept.values() if each.entry in library.entries)
        with_series = sum(bool(each.series) for each in kept.values())
        terminal.say(f"{len(kept)} computed pictures, {with_series} of them with a series of focus; {old} stale.")
        return
    found: list[Subject] = []
    for id in chosen:
        one = subject(library.eyepiece.sections, library.eyepiece.materials, library.entries[id])
        if one:
            found.append(one)
        elif id in entries:
            raise click.ClickException(
                f"'{id}' has no section for its drawing, so no picture can be computed. Add one to keydata/bench/sections.yaml."
            )
    needed()
    from keytool.optics.makes import make

    wanted = frozenset({id for id, still in kept.items() if still.series} | (set(chosen) if series else set()))
    for still in make(root, library, found, wanted):
        more = f", {still.series.file}" if still.series else ""
        terminal.say(f"{still.entry}: {still.file}{more} ({still.across:g} µm across)")


def _met_most(library: Library) -> list[str]:
    """Entries in the order in which they are met: what is pointed at, what the short card shows, then by commonness."""
    pointed = [each.entry for each in library.pictures.values()]
    carded = [each.draw for each in library.short_card.met]
    often = [word for word in library.vocabulary["commonness"] if word in ("very-common", "common")]
    rest = [entry.id for word in often for entry in library.entries.values() if entry.commonness == word]
    return list(dict.fromkeys([*pointed, *carded, *rest]))


def needed() -> None:
    """Say what is missing before anything is begun."""
    try:
        import numpy  # noqa: F401
        import scipy  # noqa: F401
    except ImportError:
        raise click.ClickException(NEEDS) from None
