"""Every couplet of every key, and whether its leads can be compared."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from keytool.library.checks.asked_states import wrong
from keytool.library.checks.file_parts import Part
from keytool.library.finding import Place
from keytool.library.load import Loaded
from keytool.library.model import Couplet, Key
from keytool.library.yaml_file import DataPath


@dataclass(frozen=True, slots=True)
class At:
    """A couplet in its key, with the way to its places."""

    loaded: Loaded
    key: Key
    couplet: Couplet

    def place(self, *path: str, of_key: bool = False) -> Place:
        """The place of a part of the couplet; of the couplet's own name when no part is given."""
        whole: DataPath = ("couplets", self.couplet.id, *path)
        return self.loaded.files.place("key", self.key.id, whole, of_key=of_key or not path)


def couplets(loaded: Loaded) -> Iterator[At]:
    """Every couplet of every key."""
    return (At(loaded, key, couplet) for key in loaded.library.keys.values() for couplet in key.couplets.values())


def is_whole(at: At) -> bool:
    """Whether all that the couplet asks for is known and fits its character, so that its leads can be compared."""
    library = at.loaded.library
    file = at.loaded.files.by_id["key", at.key.id]
    path = ("couplets", at.couplet.id, "leads")
    whens = [(lead, raw["when"]) for lead, raw in file.data["couplets"][at.couplet.id]["leads"].items() if "when" in raw]
    return all(
        set(when) <= set(library.characters)
        and not any(wrong(at.loaded, Part("key", file, (*path, lead, "when"), when)))
        and all(set(wanted.values()) <= set(library.quantities) for wanted in when.values() if isinstance(wanted, dict))
        for lead, when in whens
    )
