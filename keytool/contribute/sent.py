"""What somebody made with the form of the site, read back: a new file, and what it says belongs into files that stand already."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from keytool.contribute.discriminators import CoupletDraft
from keytool.library import Loaded
from keytool.library.report import as_text
from keytool.library.yaml_file import parse_yaml

MARK = "# Belongs into other files:"
TAKES = "# To take this over, with a look first at what it would change: wetmount take "
"""The line that ends what the form gives; the name of the file follows."""
PHOTOGRAPH = "wetmount photo add"
MOST_BYTES = 1_000_000
_UNDER = re.compile(r"In (?P<file>\S+), under (?P<what>mistaken-for|states):")
_ADD = re.compile(r"In (?P<file>\S+), at (?P<path>[\w.-]+), add: (?P<id>[\w-]+)")
_WRITE = re.compile(
    r"In (?P<file>\S+), at couplets\.(?P<couplet>[\w-]+)\.leads\.(?P<lead>[\w-]+), "
    r"write couplet: (?P<slug>[\w-]+) instead of (?P<goes>end|key): (?P<was>[\w-]+)"
)
_SHOWS = re.compile(r"characters\.([\w-]+)\.states")
_TAKEN_BY = re.compile(r"couplets\.([\w-]+)\.leads\.([\w-]+)\.when\.([\w-]+)")


class NotTaken(Exception):
    """Raised for a file that the form did not make, or that no longer fits the library; the message says which line, and what to do."""


@dataclass(frozen=True, slots=True)
class SentState:
    """One more state of a character, the entries that show it, and the leads (key, couplet, lead) that take it."""

    character: str
    id: str
    raw: Mapping[str, Any]
    entries: list[str] = field(default_factory=list)
    leads: list[tuple[str, str, str]] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Sent:
    """A contribution: the new file, if there is one, as text and as data; its couplets in the words they were sent in; its state."""

    kind: str
    """"entry", "look-alike", or empty where only standing files are changed."""
    text: str
    raw: Mapping[str, Any]
    couplets: tuple[CoupletDraft, ...]
    state: SentState | None


def sent(loaded: Loaded, name: str, data: bytes) -> Sent:
    """What a file from the form holds; `name` is what it is called in messages.

    Raises:
        NotTaken: it is no such file, is damaged, or speaks of what the library does not have.
    """
    lines = _lines(name, data)
    start = next((at for at, line in enumerate(lines) if line == MARK or line.startswith("In keydata/")), len(lines))
    text = "\n".join(lines[:start]).rstrip("\n")
    is_file = any(line and not line.startswith("#") for line in lines[:start])
    kind, raw = _file(loaded, name, text) if is_file else ("", {})
    told = _Instructions(loaded, name, lines, start)
    if not (kind or told.couplets or told.state):
        raise NotTaken(f"{name} holds nothing to take over. {_WHAT}")
    return Sent(kind, text + "\n", raw, tuple(told.couplets), told.state)


_WHAT = "Give the file as the form of the site made it: an entry, a set of look-alikes, a state or a couplet."


def _lines(name: str, data: bytes) -> list[str]:
    """The lines without what mail makes of line ends, and without the line that names this command."""
    if len(data) > MOST_BYTES:
        raise NotTaken(f"{name} is larger than anything the form makes. {_WHAT}")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise NotTaken(f"{name} is no UTF-8 text. {_WHAT}") from None
    if text.startswith(PHOTOGRAPH):
        raise NotTaken(
            f"{name} is the command that takes in a photograph. Run it, with the name of the photograph in place of PHOTOGRAPH:\n\n"
            f"  {text.strip()[:600]}"
        )
    return [line.rstrip() for line in text.replace("\r\n", "\n").split("\n") if not line.startswith(TAKES)]


def _file(loaded: Loaded, name: str, text: str) -> tuple[str, Mapping[str, Any]]:
    file = parse_yaml(text.encode() + b"\n", name)
    kind = "look-alike" if isinstance(file.data, dict) and "entries" in file.data else "entry"
    found = [*file.findings, *(loaded.schemas.findings(kind, file) if file.data is not None else ())]
    if found:
        raise NotTaken(f"{as_text(found)}\nMend it in {name}, or ask whoever sent it for the file once more.")
    return kind, file.data


class _Instructions:
    """Reads what belongs into other files, line by line."""

    def __init__(self, loaded: Loaded, name: str, lines: list[str], start: int) -> None:
        self.library, self.name = loaded.library, name
        self.what = {file: each for each, file in loaded.library.files.items()}
        self.couplets: list[CoupletDraft] = []
        self.state: SentState | None = None
        self.lines = [(at, line.removeprefix("# ")) for at, line in enumerate(lines, 1) if at > start and line not in (MARK, "#", "")]
        while self.lines:
            self._next()

    def _next(self) -> None:
        at, line = self.lines.pop(0)
        if found := _WRITE.fullmatch(line):
            self._couplet(at, found)
        elif found := _ADD.fullmatch(line):
            self._added(at, found)
        elif (found := _UNDER.fullmatch(line)) and found["what"] == "states":
            self._state(at, found)
        elif found:  # named in its look-alikes: that follows from the entry itself, so the line is only passed over
            self._known(at, found["file"], "entry")
            list(self._block())
        else:
            raise self._wrong(at, f"'{line[:60]}' is nothing the form writes. Ask for the file itself: mail breaks long lines of a text.")

    def _couplet(self, at: int, found: re.Match[str]) -> None:
        key = self.library.keys[self._known(at, found["file"], "key")]
        couplet = key.couplets.get(found["couplet"])
        lead = couplet.leads.get(found["lead"]) if couplet else None
        if lead is None or lead.goes_to != found["was"] or found["slug"] in key.couplets:
            now = f"that lead goes to '{lead.goes_to}' now" if lead else "there is no such lead now"
            if found["slug"] in key.couplets:
                now = f"there is a couplet '{found['slug']}' already"
            what = f"puts a couplet behind '{found['lead']}' of '{found['couplet']}' instead of '{found['was']}'"
            tip = "Take the entry over without these lines, then draft the couplet anew: wetmount new couplet --for ID."
            raise self._wrong(at, f"It {what}, but {now}: the library has changed since. {tip}")
        if self.lines and self.lines[0][1] == "and under couplets:":
            self.lines.pop(0)
        slug, raw = self._pair(at, found["slug"])
        if not isinstance(raw, dict) or set(raw) - {"asks", "leads"} or not isinstance(raw.get("leads"), dict):
            raise self._wrong(at, f"The couplet '{slug}' is not whole.")
        self.couplets.append(CoupletDraft(key.id, found["couplet"], found["lead"], slug, raw))

    def _state(self, at: int, found: re.Match[str]) -> None:
        character = self._known(at, found["file"], "character")
        if self.state:
            raise self._wrong(at, "It adds a second state. Take over one after the other.")
        id, raw = self._pair(at, "")
        if not isinstance(raw, dict) or id in self.library.characters[character].states:
            raise self._wrong(at, f"'{id}' is a state of '{character}' already, or is not whole.")
        self.state = SentState(character, id, raw)

    def _added(self, at: int, found: re.Match[str]) -> None:
        state = self.state
        if state and found["id"] == state.id:
            shows, takes = _SHOWS.fullmatch(found["path"]), _TAKEN_BY.fullmatch(found["path"])
            if shows and shows[1] == state.character:
                state.entries.append(self._known(at, found["file"], "entry"))
                return
            if takes and takes[3] == state.character:
                state.leads.append((self._known(at, found["file"], "key"), takes[1], takes[2]))
                return
        raise self._wrong(at, f"'{found['id']}' is added to '{found['path']}', which is no state that this file adds.")

    def _known(self, at: int, file: str, kind: str) -> str:
        """The id of a file of the library, if it has that file and it is of that kind: nothing else is ever written to."""
        known = self.what.get(file)
        if known is None or known[0] != kind:
            raise self._wrong(at, f"'{file}' is no file of this library that holds one {kind}.")
        return known[1]

    def _block(self) -> Iterator[str]:
        while self.lines and self.lines[0][1].startswith("  "):
            yield self.lines.pop(0)[1][2:]

    def _pair(self, at: int, wanted: str) -> tuple[str, Any]:
        """The one name, and what it holds, that stands indented below a line."""
        file = parse_yaml("\n".join(self._block()).encode() + b"\n", self.name)
        if file.findings or not isinstance(file.data, dict) or len(file.data) != 1 or (wanted and wanted not in file.data):
            raise self._wrong(
                at, f"What follows{f' for {wanted!r}' if wanted else ''} cannot be read. Ask for the file itself: mail breaks long lines."
            )
        return next(iter(file.data.items()))

    def _wrong(self, line: int, words: str) -> NotTaken:
        return NotTaken(f"{self.name}:{line}: {words}")
