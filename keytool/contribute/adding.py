"""From answers to files: try the change, say what it does, offer what would mend it, and write it whole or not at all."""

from __future__ import annotations

import difflib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from keytool.contribute.change_set import ChangeSet, couplet_text
from keytool.contribute.discriminators import CoupletDraft, Parting, couplet_draft, partings
from keytool.contribute.dry_run import Changes, Tried, tried, write
from keytool.contribute.keyed_out import KeyPath, Outcome, keyed_out
from keytool.contribute.outcome_text import both_show, comes_out, names
from keytool.contribute.parse_answer import NotUnderstood
from keytool.contribute.similar import most_similar, that_matter
from keytool.contribute.talk import Talk, text
from keytool.identify import Fault
from keytool.library import Finding, Loaded
from keytool.library.checks.length import LEAD, QUESTION
from keytool.library.model import Library
from keytool.library.report import as_text
from keytool.library.wording import name_of

PREVIEW = "http://127.0.0.1:8000/"
"""Where `wetmount serve` shows the site."""
MOST_COUPLETS = 6


class Refused(Exception):
    """Raised when nothing was written, since the library would be broken; the message says by what."""


class Adding:
    """One contribution: `bench` gathers its changes, `finish` tries and writes them."""

    def __init__(self, root: Path, loaded: Loaded, talk: Talk, *, even_so: bool) -> None:
        self.root, self.loaded, self.talk, self.even_so = root, loaded, talk, even_so
        self.bench = ChangeSet(root, loaded)

    @property
    def library(self) -> Library:
        """The library as it stands."""
        return self.loaded.library

    def finish(self, page: str = "") -> None:
        """Try the changes and write them; `page` is the page of the site that shows them.

        Raises:
            Refused: they would break the library.
        """
        self.talk.say("\nTrying it on a copy of the whole library ...")
        self._write(self._tried(), page)

    def finish_taken(self, entry: str, page: str, *, only_look: bool) -> None:
        """Try what somebody sent, show every line that would change, and write it if that is wanted; `entry` is its entry, if it holds one.

        Raises:
            Refused: it would break the library, or it is not wanted.
        """
        self.talk.say("Trying it on a copy of the whole library ...")
        trial = self._tried()
        if entry:
            self._say_ways(trial, entry)
            trial = self._couplets(trial, entry, None, shared=False)
        self.talk.say("What would change:")
        for line in self._changes():
            self.talk.say(line)
        self._refuse_unproved(trial)
        if only_look:
            self.talk.say("Every file is right." + ("" if trial.failed_proofs else " Every proof holds.") + " Nothing was written.")
            return
        if not self.talk.quiet and not self.talk.agrees("write", "Write all of it into the library?", default=False):
            raise Refused("Nothing was written.")
        self._write(trial, page)

    def _changes(self) -> Iterator[str]:
        """Each file that would be new with its first lines, and each line that would go from or come into a file that stands."""
        for name, new in self.bench.changes.items():
            path = self.root / name
            if not path.exists():
                yield f"  new: {name}, {len(new.splitlines())} lines"
                continue
            yield f"  {name}:"
            lines = difflib.unified_diff(path.read_text("utf-8").splitlines(), new.splitlines(), n=1, lineterm="")
            yield from (f"    {line}" for line in list(lines)[2:] if not line.startswith("@@"))

    def finish_entry(self, id: str, *, by: str | None, like: str) -> None:
        """The same for an entry: say where it comes out, and offer the couplet where it collides.

        Raises:
            Refused: it would break the library.
            NotUnderstood: `by` is no character that parts it.
        """
        self.talk.say("\nTrying it on a copy of the whole library ...")
        trial = self._tried()
        self._nearest(trial, id, like)
        self._say_ways(trial, id)
        trial = self._couplets(trial, id, by, shared=False)
        self._write(trial, f"entries/{id}.html")

    def part(self, id: str, *, by: str | None) -> None:
        """Draft the couplet for an entry that stands already: where it collides, else where it is not told apart.

        Raises:
            Refused: there is nothing to part, or it would break the library.
            NotUnderstood: `by` is no character that parts it.
        """
        self.talk.say("Walking every key ...")
        trial = tried(self.root, {})
        self._say_ways(trial, id)
        collides = bool(keyed_out(trial.loaded.library, id).faults)
        after = self._couplets(trial, id, by, shared=not collides)
        if not self.bench.changes:
            raise Refused("No couplet was added.")
        self._write(after, f"entries/{id}.html")

    def _tried(self) -> Tried:
        trial = tried(self.root, self.bench.changes)
        if trial.problems:
            raise Refused(f"{as_text(trial.problems)}\nNothing was written.")
        return trial

    def _nearest(self, trial: Tried, id: str, like: str) -> None:
        """Say what it is nearest to, and what matters for that, or for what it was said to be like, and is not stated."""
        library = trial.loaded.library
        entry = library.entries[id]
        shown = {name: each.showing for name, each in entry.statements.items()}
        near = [each.id for each in most_similar(library, shown, entry.theme, 4) if each.id != id][:3]
        if near:
            self.talk.say(f"Nearest by what it shows: {names(library, near)}.")
        model = like or next(iter(near), "")
        matter = that_matter(library, library.entries[model]) if model else []
        silent = [each.name.lower() for each in matter if each.id not in entry.statements]
        if silent:
            self.talk.say(f"Matters for {name_of(library, model)} and is not stated here: {', '.join(silent)}.")

    def _say_ways(self, trial: Tried, id: str) -> None:
        library = trial.loaded.library
        self.talk.say(f"Where {name_of(library, id)} comes out:")
        outcome = keyed_out(library, id)
        told = list(comes_out(library, outcome))
        wrong = [bool(way.fault) for way in outcome.ways] or [True]
        for is_wrong, words in sorted(zip(wrong, told, strict=True), key=lambda each: not each[0]):  # what goes wrong comes first
            self.talk.say(f"{'! ' if is_wrong else '- '}{words}")

    def _couplets(self, trial: Tried, id: str, by: str | None, *, shared: bool) -> Tried:
        """The trial after every couplet that was offered and taken."""
        for _ in range(MOST_COUPLETS):
            result = keyed_out(trial.loaded.library, id)
            ways = self._shared(result) if shared else [way for way in result.faults if way.fault is Fault.WRONG_END]
            draft = next((draft for way in ways if (draft := self._offered(trial.loaded.library, result, way, by))), None)
            if draft is None:
                return trial
            self.bench.new_couplet(draft)
            trial = self._tried()
            self.talk.say("With this couplet:")
            for words in comes_out(trial.loaded.library, keyed_out(trial.loaded.library, id)):
                self.talk.say(f"  {words}")
            if shared:
                return trial
        return trial

    def _shared(self, result: Outcome) -> list[KeyPath]:
        return [way for way in result.ways if way.end and way.end != result.entry and result.others(way)]

    def _offered(self, library: Library, result: Outcome, way: KeyPath, by: str | None) -> CoupletDraft | None:
        """The couplet for one way, if there is one and it is wanted."""
        for words in both_show(library, result, way):
            self.talk.say(words)
        draft = self._draft(library, result, way, by)
        if draft is None:
            return None
        number = library.keys[way.key].couplets[draft.behind_couplet].number
        self.talk.say(
            f"A couplet that parts them, behind '{draft.behind_lead}' of couplet {number} ({draft.behind_couplet}) in "
            f"{library.files['key', draft.key]}:"
        )
        for line in couplet_text(draft).splitlines():
            self.talk.say(f"    {line}")
        return self._reworded(draft) if self.talk.agrees("couplet", "Add this couplet?", default=False) else None

    def _reworded(self, draft: CoupletDraft) -> CoupletDraft:
        """The couplet in the contributor's own words, where there is somebody to ask; an empty answer keeps what is drafted."""
        if self.talk.quiet or not self.talk.agrees("reword", "Change its words first?", default=False):
            return draft

        def ask(name: str, what: str, words: str, limit: str) -> str:
            most = int(self.library.limit(limit))
            return self.talk.ask(name, f"{what}, in at most {most} characters?", lambda given: _short(given, most), words)

        leads = {
            slug: {
                **lead,
                "text": ask(f"words {slug}", f"The lead that goes to {lead.get('end') or lead.get('key')}", lead["text"], LEAD),
            }
            for slug, lead in draft.raw["leads"].items()
        }
        return replace(draft, raw={"asks": ask("words asks", "The question", draft.raw["asks"], QUESTION), "leads": leads})

    def _draft(self, library: Library, result: Outcome, way: KeyPath, by: str | None) -> CoupletDraft | None:
        others = [library.entries[other] for other in result.others(way)]
        found = partings(library, library.entries[result.entry], others, library.keys[way.key].magnification)
        if by is not None:
            found = [self._by(library, by, found)]
        return next((draft for parting in found if (draft := couplet_draft(library, result, way, parting))), None)

    def _by(self, library: Library, by: str, found: list[Parting]) -> Parting:
        for parting in found:
            if parting.character.id == by:
                return parting
        parts = ", ".join(parting.character.id for parting in found) or "none that is stated"
        raise NotUnderstood(f"--by: '{by}' does not part them. What does: {parts}.")

    def _refuse_unproved(self, trial: Tried) -> None:
        if trial.failed_proofs:
            self.talk.say(as_text(trial.failed_proofs))
            if not self.even_so:
                raise Refused(
                    "A key does not end rightly with this, so nothing was written. State what it does not say yet (--shows; any, "
                    "if it may show anything), add the couplet, put the entry within the group it comes out at, or mend what it "
                    "shows; --even-so writes it all the same."
                )

    def _write(self, trial: Tried, page: str) -> None:
        self._refuse_unproved(trial)
        write(self.root, self.bench.changes)
        for words in _advice(self.bench.changes, trial.advice):
            self.talk.say(words)
        if not trial.failed_proofs:
            self.talk.say("Every check passes and every proof holds.")
        self.talk.say(f"Written: {', '.join(self.bench.changes)}.")
        for words in self._still_missing(trial.loaded.library):
            self.talk.say(words)
        self.talk.say(f"See it: 'wetmount serve', then {PREVIEW}{page}")
        self.talk.say("What it changes for others: 'wetmount impact'.")

    def _still_missing(self, library: Library) -> Iterator[str]:
        """What a new entry lacks for its page and its lead, and where it is put in."""
        for entry in library.entries.values():
            file = library.files["entry", entry.id]
            if entry.id in self.library.entries or file not in self.bench.changes:
                continue
            if not entry.figure:
                yield (
                    f"{entry.name} has no drawing yet, so its lead and its page show none. Copy figure: from the file of something like it "
                    f"('wetmount draw ENTRY' shows what that draws) into {file}, and change its figures."
                )
            if not entry.mistaken_for:
                yield (
                    f"{entry.name} names nothing that it is taken for. Add it in {file} under mistaken-for:, "
                    f"or say --mistaken-for ENTRY=HOW to 'wetmount new entry'."
                )


def _short(words: str, most: int) -> str:
    if len(text(words)) > most:
        raise NotUnderstood(f"That is {len(words)} characters; at most {most} find room on the card.")
    return words


def _advice(changed: Changes, advice: tuple[Finding, ...]) -> list[str]:
    return [f"Advice: {each.message} {each.tip}" for each in advice if each.place.file in changed]
