"""The changes to files that a contribution makes: a new file, or a spot in a file that stands already."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from keytool.contribute.discriminators import CoupletDraft
from keytool.contribute.draft import entry_name, file_text
from keytool.contribute.dry_run import Changes
from keytool.contribute.edit import add_to_list, add_to_mapping, has, replace_pair
from keytool.contribute.yaml_text import block, flow, scalar
from keytool.library import Loaded
from keytool.library.yaml_file import DataPath


class ChangeSet:
    """Gathers changes to the files of a library, so that they can be tried and written together."""

    def __init__(self, root: Path, loaded: Loaded) -> None:
        self.root, self.loaded = root, loaded
        self._changed: dict[str, str] = {}

    @property
    def changes(self) -> Changes:
        """The whole text of every file changed so far, by name."""
        return self._changed

    def text(self, name: str) -> str:
        """A file as it would be now."""
        return self._changed[name] if name in self._changed else (self.root / name).read_text("utf-8")

    def new_entry(self, raw: Mapping[str, Any]) -> str:
        """Writes an entry, and names it in the entries it is mistaken for; gives the name of its file."""
        name = entry_name(raw)
        return self.new_file(name, file_text(self.loaded, "entry", name, raw), raw)

    def new_file(self, name: str, text: str, raw: Mapping[str, Any]) -> str:
        """Writes a file as its text stands; what an entry is mistaken for names it in turn, where it does not yet."""
        self._changed[name] = text
        for mistake in raw.get("mistaken-for", ()):
            other = self.loaded.library.entries.get(mistake["entry"])
            if other and all(each.entry != raw["id"] for each in other.mistaken_for):
                back = {**mistake, "entry": raw["id"]}
                self._add_item(self.loaded.library.files["entry", other.id], ("mistaken-for",), back)
        return name

    def new_look_alikes(self, raw: Mapping[str, Any]) -> str:
        """Writes a set of look-alikes; gives the name of its file."""
        name = f"keydata/look-alikes/{raw['id']}.yaml"
        self._changed[name] = file_text(self.loaded, "look-alike", name, raw)
        return name

    def new_state(
        self, character: str, id: str, raw: Mapping[str, Any], entries: Sequence[str], leads: Sequence[tuple[str, str, str]]
    ) -> None:
        """Adds a state to a character, to entries that show it, and to the leads (key, couplet, lead) that take it.

        Raises:
            CannotEdit: a file is written in a way that cannot be added to.
        """
        files = self.loaded.library.files
        self._edit(files["character", character], lambda text: add_to_mapping(text, ("states",), f"{id}: {flow(raw)}"))
        for entry in entries:
            self._edit(files["entry", entry], lambda text: add_to_list(text, ("characters", character, "states"), id))
        for key, couplet, lead in leads:
            path: DataPath = ("couplets", couplet, "leads", lead, "when", character)
            self._edit(files["key", key], lambda text, path=path: add_to_list(text, path, id))

    def new_couplet(self, draft: CoupletDraft) -> str:
        """Puts a couplet behind a lead of a key; gives the name of the key's file.

        Raises:
            CannotEdit: the key is written in a way that cannot be added to.
        """
        name = self.loaded.library.files["key", draft.key]
        lead = ("couplets", draft.behind_couplet, "leads", draft.behind_lead)
        goes = next(word for word in ("end", "key", "couplet") if has(self.text(name), (*lead, word)))
        self._edit(name, lambda text: replace_pair(text, (*lead, goes), f"couplet: {draft.slug}"))
        self._edit(name, lambda text: add_to_mapping(text, ("couplets",), couplet_text(draft)))
        return name

    def _add_item(self, name: str, path: DataPath, item: Mapping[str, Any]) -> None:
        if has(self.text(name), path):
            self._edit(name, lambda text: add_to_list(text, path, item))
        else:
            self._edit(name, lambda text: add_to_mapping(text, (), f"{path[-1]}:\n  - {flow(item)}"))

    def _edit(self, name: str, change: Any) -> None:
        self._changed[name] = change(self.text(name))


def couplet_text(draft: CoupletDraft) -> str:
    """A couplet as it stands in the file of its key, without indentation."""
    leads = "".join(f"{scalar(slug)}:\n{textwrap.indent(block(lead), '  ')}" for slug, lead in draft.raw["leads"].items())
    rest = block({name: each for name, each in draft.raw.items() if name != "leads"})
    return f"{draft.slug}:\n{textwrap.indent(rest, '  ')}  leads:\n{textwrap.indent(leads, '    ')}".rstrip("\n")
