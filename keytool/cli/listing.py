"""`wetmount list`: what the library holds."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from keytool.library import Library


def _entries(library: Library) -> Iterator[dict[str, Any]]:
    for entry in library.entries.values():
        yield {
            "id": entry.id,
            "name": entry.name,
            "scientific": entry.scientific,
            "kind": entry.kind,
            "theme": entry.theme,
            "within": list(entry.within),
            "feeding": list(entry.feeding),
        }


def _keys(library: Library) -> Iterator[dict[str, Any]]:
    for key in library.keys.values():
        yield {
            "id": key.id,
            "name": key.title,
            "couplets": len(key.couplets),
            "magnification": key.magnification,
            "entries": len(list(library.members(key.scope))),
        }


def _characters(library: Library) -> Iterator[dict[str, Any]]:
    for each in library.characters.values():
        yield {
            "id": each.id,
            "name": each.name,
            "kind": each.kind,
            "unit": each.unit,
            "states": list(each.states),
            "magnification": each.magnification,
        }


def _sources(library: Library) -> Iterator[dict[str, Any]]:
    for each in library.sources.values():
        yield {"id": each.id, "name": each.cite, "read": each.read}


def _terms(library: Library) -> Iterator[dict[str, Any]]:
    for each in library.terms.values():
        yield {"id": each.id, "name": each.term, "means": each.means}


def _cautions(library: Library) -> Iterator[dict[str, Any]]:
    for each in library.cautions.values():
        yield {"id": each.id, "name": each.title, "text": each.text}


KINDS: dict[str, Callable[[Library], Iterator[dict[str, Any]]]] = {
    "entries": _entries,
    "keys": _keys,
    "characters": _characters,
    "sources": _sources,
    "terms": _terms,
    "cautions": _cautions,
}


@click.command("list", short_help="List the entries, keys, characters, sources, terms or cautions.")
@click.argument("what", type=click.Choice(list(KINDS)), default="entries")
@click.option("--json", "as_json", is_flag=True, help="As JSON, with more about each.")
@click.pass_obj
def list_command(named: Path | None, what: str, as_json: bool) -> None:
    """List WHAT the library holds (default: entries), by id and name."""
    from keytool.cli.opening import library
    from keytool.cli.terminal import Terminal

    terminal = Terminal()
    rows = list(KINDS[what](library(named)))
    if as_json:
        terminal.raw(json.dumps(rows, ensure_ascii=False, indent=2))
        return
    width = max((len(row["id"]) for row in rows), default=0) + 2
    for row in rows:
        terminal.raw(f"{row['id']:<{width}}{row['name']}{' (' + row['scientific'] + ')' if row.get('scientific') else ''}")
