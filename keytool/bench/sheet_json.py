"""A count sheet as JSON: the record of the page, letter for letter, and back."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict
from typing import Any, Literal

from keytool.bench.lines import is_known
from keytool.bench.sheet import VERSION, NotASheet, Record, Sample, Setup, Slide, Tally, tidy
from keytool.library.model import Library

MOST_BYTES = 20_000_000
SETUP_NAMES = {name: name.replace("_", "-") for name in Setup.__dataclass_fields__}
TEXTS = ("name", "place", "kind", "taken", "looked", "by", "depth-cm", "note")


def as_data(record: Record) -> dict[str, Any]:
    """The record as plain data, in a fixed order."""
    return {"wetmount-count": VERSION, "samples": [_sample_data(each) for each in record.samples]}


def as_text(record: Record) -> str:
    """The record as JSON text."""
    return json.dumps(as_data(record), ensure_ascii=False, indent=1) + "\n"


def from_text(text: str, library: Library) -> Record:
    """The record of a JSON text. Raises NotASheet where it is none, with the place in it."""
    try:
        data = json.loads(text)
    except json.JSONDecodeError as error:
        raise NotASheet(f"line {error.lineno}, column {error.colno}: this is not JSON: {error.msg}.") from None
    return from_data(data, library)


def from_data(data: Any, library: Library) -> Record:
    """The record of plain data, such as the demonstration sheet of the library. Raises NotASheet."""
    if not isinstance(data, dict) or data.get("wetmount-count") != VERSION:
        raise NotASheet(f'This is not a count sheet. One begins with {{"wetmount-count": {VERSION}, "samples": [...]}}.')
    samples = data.get("samples")
    if not isinstance(samples, list):
        raise NotASheet("'samples' is missing. It is a list of samples, and may be empty.")
    return Record(tuple(_sample(each, f"sample {n}", library) for n, each in enumerate(samples, 1)))


def _sample_data(sample: Sample) -> dict[str, Any]:
    setup = {SETUP_NAMES[name]: value for name, value in asdict(sample.setup).items() if value is not None}
    return {
        **{name: getattr(sample, name.replace("-", "_")) for name in TEXTS},
        "invented": sample.invented,
        "setup": setup,
        "at-drop": list(sample.at_drop),
        "at-field": list(sample.at_field),
        "slides": [
            {"name": each.name, "drop": None if each.drop is None else dict(each.drop), "fields": [dict(one) for one in each.fields]}
            for each in sample.slides
        ],
    }


def _sample(raw: Any, where: str, library: Library) -> Sample:
    _must(isinstance(raw, dict), f"{where} is not a mapping.")
    texts = {name.replace("-", "_"): raw.get(name, "") for name in TEXTS}
    for name, value in texts.items():
        _must(isinstance(value, str), f"{where}, '{name.replace('_', '-')}': text is expected.")
    sample = Sample(
        **texts,
        invented=raw.get("invented") is True,
        setup=_setup(raw.get("setup", {}), where),
        at_drop=_ids(raw.get("at-drop", []), f"{where}, 'at-drop'", library),
        at_field=_ids(raw.get("at-field", []), f"{where}, 'at-field'", library),
        slides=tuple(_slide(each, f"{where}, slide {n}", library) for n, each in enumerate(_list(raw.get("slides", []), where), 1)),
    )
    return tidy(sample)


def _setup(raw: Any, where: str) -> Setup:
    _must(isinstance(raw, dict), f"{where}, 'setup' is not a mapping.")
    found: dict[str, Any] = {}
    for name, key in SETUP_NAMES.items():
        value = raw.get(key)
        if name == "soil_unit":
            unit: Literal["g", "mL"] = value if value in ("g", "mL") else "g"
            _must(value in (None, "g", "mL"), f"{where}, 'soil-unit' is {value!r}. Allowed: g, mL.")
            found[name] = unit
        elif value is not None:
            is_number = isinstance(value, int | float) and not isinstance(value, bool)
            _must(
                is_number and (value > 0 or (name == "moisture" and value == 0)),
                f"{where}, '{key}' is {value!r}. Allowed: a number above 0.",
            )
            found[name] = float(value)
    return Setup(**found)


def _slide(raw: Any, where: str, library: Library) -> Slide:
    _must(isinstance(raw, dict), f"{where} is not a mapping.")
    drop = raw.get("drop")
    fields = _list(raw.get("fields", []), where)
    return Slide(
        str(raw.get("name", "")),
        None if drop is None else _tally(drop, f"{where}, drop", library),
        tuple(_tally(each, f"{where}, field {n}", library) for n, each in enumerate(fields, 1)),
    )


def _tally(raw: Any, where: str, library: Library) -> Tally:
    _must(isinstance(raw, Mapping), f"{where} is not a mapping of ids to counts.")
    for id, number in raw.items():
        _must(is_known(library, id), f"{where}: nothing is called '{id}'. Allowed: a line of the tally, an entry, or other: and a name.")
        is_count = isinstance(number, int) and not isinstance(number, bool) and number >= 0
        _must(is_count, f"{where}, '{id}': {number!r} is no count. Allowed: 0, 1, 2 and so on.")
    return dict(raw)


def _ids(raw: Any, where: str, library: Library) -> tuple[str, ...]:
    ids = _list(raw, where)
    for id in ids:
        _must(isinstance(id, str) and is_known(library, id), f"{where}: nothing is called {id!r}.")
    return tuple(ids)


def _list(raw: Any, where: str) -> list[Any]:
    _must(isinstance(raw, list), f"{where}: a list is expected.")
    listed: list[Any] = raw
    return listed


def _must(holds: bool, message: str) -> None:
    if not holds:
        raise NotASheet(message)
