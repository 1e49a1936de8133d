"""Every drawing there is, in order, for a contact sheet: each entry, each state of a character, each kind with each of its choices."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from keytool.library.drawing_records import Form
from keytool.library.model import Library

from . import FigureError, draw, kinds
from .kinds import Kind, Param
from .kinds.shelled_amoeba import BELOW
from .library_figures import of_entry, of_state
from .shapes import Drawing

NEEDS: Mapping[tuple[str, str], Mapping[str, object]] = {
    ("nematode-head", "knobs"): {"spear": "stylet"},
    ("nematode-head", "knob-shape"): {"spear": "stylet"},
    ("nematode-head", "odontophore-base"): {"spear": "odontostyle"},
    ("nematode-head", "guiding-ring"): {"spear": "odontostyle"},
    ("nematode-head", "two-spears"): {"spear": "odontostyle"},
    ("nematode-head", "tooth"): {"stoma": "barrel"},
    ("nematode-head", "denticles"): {"stoma": "barrel"},
    ("nematode-head", "gullet"): {"reach": "gullet"},
    ("thread", "clamp"): {"cross-walls": True},
    ("thread", "slanting"): {"cross-walls": True},
    ("thread", "colour"): {"wall": "dyed"},
    ("hyphae", "measure"): {"form": "broad-open"},
    ("filament", "colour"): {"form": "green-band", "accent": "plastid"},
}
"""What must be there for a parameter of a kind to show: (kind, parameter) to the other parameters."""
_CHOICE_NEEDS: Mapping[tuple[str, str], Mapping[str, object]] = {
    **{("shelled-amoeba", form): {"view": "below"} for form in BELOW},
    ("shelled-amoeba", "below"): {"form": "central"},
    ("bundle", "needles"): {"width": 2},
    ("bundle", "needle"): {"width": 2},
    ("bundle", "needle-star"): {"width": 2},
    ("spore", "chain"): {"length": 4},
    ("spore", "brush"): {"length": 3},
    ("spore", "head"): {"length": 4},
    ("filament", "spore-threads"): {"width": 0.8},
    ("fibre", "silk"): {"width": 1.5},
    ("shelled-amoeba", "section"): {"form": "dome", "wall": "grains"},
    ("hair", "fruit-body"): {"width": 5},
    ("hair", "fruit-body-wavy"): {"width": 4},
}
"""The same for one choice of a kind, and a size that suits what it shows."""


@dataclass(frozen=True, slots=True)
class Item:
    """One drawing on the sheet: its group, its name, an id unique on the sheet; no drawing where the data asks for none."""

    group: str
    name: str
    id: str
    drawing: Drawing | None


def of_library(library: Library) -> Iterator[Item]:
    """The drawings of entries by theme, then of the states of characters, in the library's order."""
    for entry in sorted(library.entries.values(), key=lambda each: each.theme):
        yield Item(f"Entries: {entry.theme}", entry.name, f"entry-{entry.id}", of_entry(library, entry))
    for character in library.characters.values():
        for state in character.states.values():
            yield Item(
                f"Character: {character.name}", state.name, f"state-{character.id}-{state.id}", of_state(library, character, state.id)
            )


def of_kinds(drawings: Mapping[str, Form]) -> Iterator[Item]:
    """Each kind and each drawing that is data with nothing asked, then with each choice and each yes-or-no parameter by itself."""
    for kind in kinds(drawings.values()).values():
        what = drawings.get(kind.name, kind.name)
        yield Item(f"Kind: {kind.name}", kind.name, f"kind-{kind.name}", draw(what, {}, title=kind.description))
        for param in kind.params:
            yield from _of_param(what, kind, param)


def _of_param(what: str | Form, kind: Kind, param: Param) -> Iterator[Item]:
    values: tuple[str | bool, ...] = param.choices if param.type == "choice" else (True,) if param.type == "flag" else ()
    for value in values:
        if param.name == "accent" or (isinstance(what, Form) and param.name == "colour") or value == param.default:
            continue
        params = with_needs(kind.name, param.name, value)
        word = param.name if value is True else f"{param.name}: {value}"
        try:
            drawing = draw(what, params, title=f"{kind.description} ({word})")
        except FigureError as error:  # a pair of parameters this table does not know yet
            raise AssertionError(f"{kind.name} {word}: {error}") from None
        yield Item(f"Kind: {kind.name}", word, f"kind-{kind.name}-{param.name}-{value}", drawing)


def with_needs(kind: str, name: str, value: object) -> dict[str, object]:
    """The parameters that show this value of a parameter: itself, and what it needs to be seen."""
    extra = _CHOICE_NEEDS.get((kind, value), {}) if isinstance(value, str) else {}
    return {**NEEDS.get((kind, name), {}), **extra, name: value}
