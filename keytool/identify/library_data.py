"""The model as plain data for the pages' script, which gives the same answers from it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from keytool.identify.model import CompiledKey, Model
from keytool.identify.observation_tables import Table
from keytool.library.pieces import Box
from keytool.library.value import Interval, States

FORMAT = "wetmount-identification 1"


def library_data(model: Model) -> dict[str, Any]:
    """All that the script needs, without texts: figures, entries, tables and keys. Lists of numbers of entries are run lengths."""
    library = model.library
    return {
        "format": FORMAT,
        "version": library.version,
        "figures": {id: each.low for id, each in library.quantities.items() if id in used_figures(model)},
        "effort": {word.id: word.get("weight", 1) for word in library.vocabulary["effort"].values()},
        "sureness": [[word.id, word.get("from")] for word in library.vocabulary["sureness"].values()],
        "entries": list(model.entries),
        "feeding": {id: list(library.entries[id].feeding) for id in model.entries if library.entries[id].feeding},
        "prior": list(model.prior),
        "samples": {
            kind: {str(number): each for number, each in enumerate(multipliers) if each != 1} for kind, multipliers in model.samples.items()
        },
        "groups": {id: _stretches(numbers) for id, numbers in model.groups.items()},
        "domains": [_stretches(numbers) for numbers in model.domains],
        "cautions": {id: _stretches(numbers) for id, numbers in model.cautions.items()},
        "pictures": {id: _stretches(numbers) for id, numbers in model.pictures.items()},
        "characters": {id: _table(model, table) for id, table in model.tables.items()},
        "keys": {id: _key(model, key) for id, key in model.keys.items()},
    }


def used_figures(model: Model) -> tuple[str, ...]:
    """The ids of the figures that naming rests on."""
    return (
        "holds-share",
        "name-share",
        "names-most",
        "settled-lead",
        "outside-prior",
        "outside-share",
        "soft-edge",
        "about-share",
        "reading-share",
        "elsewhere-rate",
        "elsewhere-again",
        "pointed-rate",
        "like-most",
        "wrong-key-rate",
        "asks-share",
        "asks-least",
        "least-gain",
        "clearly-better",
        "caution-share",
        "unsure-most",
        "unsure-more",
        "goes-on-share",
        "goes-on-unsure",
        "goes-on-least",
        "splits-worth",
        "leads-share",
        "passes-share",
        "takes-share",
        "change-power-cost",
    )


def _table(model: Model, table: Table) -> dict[str, Any]:
    character = model.library.characters[table.character]
    data: dict[str, Any] = {
        "rows": [list(row) for row in table.rows],
        "row": _runs(table.row),
        "has": 1 if all(table.has) else _runs([int(each) for each in table.has]),
        "domain": table.domain,
        "power": character.magnification,
        "effort": character.effort,
    }
    if character.settled_by:
        data["settled"] = list(character.settled_by)
    if table.is_number:
        data |= {"span": list(table.span), "misread": table.misread, "error": table.plus_minus}
    else:
        data["states"] = list(table.states)
    if character.applies.where:
        data["where"] = {
            name: [number for number, state in enumerate(model.tables[name].states) if state in states]
            for name, states in character.applies.where.items()
        }
    return data


def _key(model: Model, compiled: CompiledKey) -> dict[str, Any]:
    key = compiled.key
    return {
        "first": key.first,
        "scope": list(key.scope),
        "couplets": {
            id: {
                "asks": list(key.couplets[id].characters),
                "leads": {
                    lead.id: {
                        **({"couplet": lead.couplet} if lead.couplet else {"key": lead.key} if lead.key else {"end": lead.end}),
                        "boxes": [_box(model, box) for box in compiled.boxes[id][lead.id]],
                    }
                    for lead in key.couplets[id].leads.values()
                },
            }
            for id in compiled.order
        },
    }


def _box(model: Model, box: Box) -> dict[str, Any]:
    data: dict[str, Any] = {}
    for name, value in box.items():
        if isinstance(value, States):
            data[name] = [number for number, state in enumerate(model.tables[name].states) if state in value.ids]
        else:
            assert isinstance(value, Interval)
            data[name] = [end if math.isfinite(end) else None for end in (value.low, value.high)]
    return data


def _runs(values: Sequence[int]) -> list[int]:
    """Values with how often each stands in a row: value, count, value, count."""
    runs: list[int] = []
    for value in values:
        if runs and runs[-2] == value:
            runs[-1] += 1
        else:
            runs += [value, 1]
    return runs


def _stretches(numbers: Sequence[int]) -> list[int]:
    """Rising numbers as stretches: first, count, first, count."""
    found: list[int] = []
    for number in sorted(numbers):
        if found and found[-2] + found[-1] == number:
            found[-1] += 1
        else:
            found += [number, 1]
    return found
