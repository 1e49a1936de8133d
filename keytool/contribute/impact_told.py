"""An impact in words, as Markdown that can be pasted into a review; and as JSON."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator
from dataclasses import asdict

from keytool.contribute.impact import Impact, Names, Together
from keytool.library.model import Library
from keytool.library.wording import name_of

MOST_LISTED = 20


def as_json(impact: Impact) -> str:
    """The impact as a JSON object: one field for each part, ids as they stand in the files."""
    return json.dumps(asdict(impact), ensure_ascii=False, indent=2)


def as_markdown(before: Library, after: Library, impact: Impact, base: str) -> str:
    """The impact in words. Parts that nothing happened in are named in one line at the end."""
    teller = _Teller(before, after, impact)
    parts = [(title, lines) for title, tell in teller.parts() if (lines := list(tell()))]
    quiet = [title for title, tell in teller.parts() if not list(tell())]
    text = f"# What this changes, against {base}\n"
    for title, lines in parts:
        more = [f"- and {len(lines) - MOST_LISTED} more"] if len(lines) > MOST_LISTED else []
        text += f"\n## {title}\n\n" + "\n".join([*lines[:MOST_LISTED], *more]) + "\n"
    return text + (f"\nNothing to tell of: {'; '.join(title[0].lower() + title[1:] for title in quiet)}.\n" if quiet else "")


class _Teller:
    def __init__(self, before: Library, after: Library, impact: Impact) -> None:
        self.before, self.after, self.impact = before, after, impact

    def parts(self) -> list[tuple[str, Callable[[], Iterator[str]]]]:
        """The parts in the order of what a reviewer has to see first."""
        return [
            ("Proofs that fail", self._unproved),
            ("Entries that end elsewhere", self._moved),
            ("Answers that lead elsewhere", self._leads),
            ("No longer told apart", lambda: self._pairs(self.impact.no_longer_told, self.after)),
            ("Now told apart", lambda: self._pairs(self.impact.now_told, self.before)),
            ("How sure the keys are", self._sureness),
            ("Questions", self._questions),
            ("Cards", self._cards),
            ("Entries", lambda: self._names(self.impact.entries)),
            ("Keys", lambda: self._names(self.impact.keys)),
            ("Couplets", lambda: self._names(self.impact.couplets)),
            ("Characters", lambda: self._names(self.impact.characters)),
            ("Sets of look-alikes", lambda: self._names(self.impact.look_alikes)),
            ("Photographs", lambda: self._names(self.impact.photos)),
        ]

    def _name(self, id: str) -> str:
        name = name_of(self.after, id)
        return name if name != id else name_of(self.before, id)

    def _ends(self, ids: Iterable[str]) -> str:
        return " or ".join("nothing" if id == "?" else self._name(id) for id in ids)

    def _unproved(self) -> Iterator[str]:
        failing = self.impact.unproved
        yield from (f"- {self._name(id)}: its proof **fails now**; 'wetmount check' says where" for id in failing.new)
        yield from (f"- {self._name(id)}: its proof failed and holds again" for id in failing.gone)
        yield from (f"- {self._name(id)}: its proof failed before and still does" for id in failing.changed)

    def _moved(self) -> Iterator[str]:
        for each in self.impact.moved:
            now = f"now at {self._ends(each.after)}" if each.after else "and is not met there now: it holds others, or left the scope"
            yield f"- {self._name(each.key)}: {self._name(each.entry)} ended at {self._ends(each.before)}, {now}"

    def _leads(self) -> Iterator[str]:
        for each in self.impact.leads:
            number = self.after.keys[each.key].couplets[each.couplet].number
            told = (
                [f"'{each.text_before}' now reads '{each.text_after}'"] if each.text_before and each.text_after != each.text_before else []
            )
            told += [f"takes {', '.join(self._answer(answer) for answer in each.gained)}"] if each.gained else []
            told += [f"no longer takes {', '.join(self._answer(answer) for answer in each.lost)}"] if each.lost else []
            if each.before != each.after:
                told.append(f"leads to {self._goes(each.after)}" + (f", and led to {self._goes(each.before)}" if each.before else ""))
            lead = each.text_after or each.text_before
            yield f"- {self._name(each.key)}, couplet {number} ({each.couplet}), '{lead}': {'; '.join(told) or 'its drawing changed'}"

    def _answer(self, words: str) -> str:
        """A state by its name: `tail=blunt` gives tail 'short and blunt'."""
        character, _, state = words.partition("=")
        known = self.after.characters.get(character) or self.before.characters.get(character)
        if known is None or not state:
            return words
        old = self.before.characters.get(character)
        named = known.states.get(state) or (old.states.get(state) if old else None)
        return f"{known.name.lower()} '{named.name if named else state}'"

    def _goes(self, id: str) -> str:
        if not id:
            return "nothing: the lead is gone"
        name = self._name(id)
        return f"couplet '{id}'" if name == id else name

    def _pairs(self, pairs: Iterable[Together], library: Library) -> Iterator[str]:
        """Pairs gathered by where they come out together, so that one newcomer makes one line."""
        groups: dict[tuple[str, str, str], list[str]] = {}
        for each in pairs:
            newest, rest = (each.other, each.one) if each.other not in self.before.entries else (each.one, each.other)
            groups.setdefault((each.key, each.end, newest), []).append(rest)
        for (key, end, one), others in groups.items():
            named = ", ".join(name_of(library, id) for id in others[:6]) + (f" and {len(others) - 6} more" if len(others) > 6 else "")
            both = "both" if len(others) == 1 else "all"
            yield f"- {name_of(library, key)}: {name_of(library, one)} and {named}, {both} at {name_of(library, end)}"

    def _sureness(self) -> Iterator[str]:
        for each in sorted(self.impact.sureness, key=lambda each: each.after - each.before):
            word = "less sure" if each.after < each.before else "surer"
            yield (
                f"- {self._name(each.key)}, {self._name(each.entry)}: {word}, "
                f"about {round(100 * each.before)} % before, {round(100 * each.after)} % now (estimates)"
            )

    def _questions(self) -> Iterator[str]:
        for each in self.impact.questions:
            yield (
                f"- {self._name(each.key)}: {each.before:.2f} questions on average before, {each.after:.2f} now; "
                f"at most {each.most_before} before, {each.most_after} now"
            )

    def _cards(self) -> Iterator[str]:
        if self.impact.cards is None:
            yield "- not tried"
        for each in self.impact.cards or ():
            yield f"- {self._name(each.key)}: " + (f"its card **no longer fits**: {each.why}" if each.why else "its card fits again")

    def _names(self, names: Names) -> Iterator[str]:
        for word, ids in (("new", names.new), ("gone", names.gone), ("changed", names.changed)):
            if ids:
                shown = ", ".join(ids[:MOST_LISTED]) + (f" and {len(ids) - MOST_LISTED} more" if len(ids) > MOST_LISTED else "")
                yield f"- {word}: {shown}"
