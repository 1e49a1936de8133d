"""Ask for a new entry in the words of the trade: what it is like, what it is called, and what the keys ask of it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from keytool.contribute import parse_answer
from keytool.contribute.draft import slug, without_empty
from keytool.contribute.field_validator import refuse_taken, validate_field
from keytool.contribute.parse_answer import NotUnderstood
from keytool.contribute.similar import kind_and_groups, that_matter
from keytool.contribute.talk import Talk, ids_of, maybe, one_of
from keytool.library import Loaded
from keytool.library.build import Reader
from keytool.library.closed_lists import holding_kinds, needing
from keytool.library.messages import did_you_mean, listed
from keytool.library.model import Character, Entry, Key
from keytool.library.pieces import cells, unstated
from keytool.library.value import Showing
from keytool.library.wording import name_of, plain, showing_words

LIKE = (
    "Type a part of its name, such as bacterial or spore, and you are told what bears it; 'wetmount list entries' shows all. "
    "Its groups, kind and theme are then proposed, and you are asked what matters for it. - if you know of nothing like it."
)
HOW_TO_ANSWER = (
    "Answer with names or numbers, several with commas; any, if it may show any or nobody knows. What the answer rests on may "
    "follow after |, such as: 14..19 µm | published:SOURCE:seen"
)


class EntryTalk:
    """One conversation about one entry; afterwards `like` is the id of what it was said to be nearest to.

    `shows`, `rests` and `told` are what was given beforehand: by character, by character, by entry.
    """

    def __init__(
        self,
        talk: Talk,
        loaded: Loaded,
        today: str,
        shows: Mapping[str, str],
        rests: Mapping[str, str],
        told: Mapping[str, str],
        *,
        replace: bool,
    ) -> None:
        self.talk, self.loaded, self.library, self.today, self.replace = talk, loaded, loaded.library, today, replace
        self.shows, self.rests, self.told = shows, rests, told
        self.like = ""
        self._reader = Reader(self.library.vocabulary, self.library.characters, self.library.quantities, self.library.drawings)

    def raw(self) -> dict[str, Any]:
        """The entry as it will stand in its file.

        Raises:
            NotUnderstood, NoAnswer: see `Talk.ask`.
        """
        talk, words = self.talk, self.library.vocabulary
        self._refuse_given()
        like = self._like()
        self.like = like.id if like else ""
        kind_proposed, groups_proposed = kind_and_groups(self.library, like) if like else (None, [])
        common = talk.ask("common", "Its common name, or an English description?", self._line("names", "common"))
        scientific = talk.ask(
            "scientific",
            "Its scientific name, as far as it can be told here? - for none.",
            lambda given: maybe(given) and self._line("names", "scientific")(given),
            "-",
        )
        id = talk.ask("id", "Its id? It is an address and never changes.", self._new_id, slug(scientific or common) or None)
        kind = talk.ask(
            "kind",
            f"What kind of thing is it? {_labels(words, 'entry-kind')}",
            one_of(_labelled(words, "entry-kind")),
            kind_proposed,
            more=_explained(words, "entry-kind"),
        )
        theme = talk.ask(
            "theme",
            f"Which theme? {_labels(words, 'theme')}",
            one_of(_labelled(words, "theme")),
            like.theme if like else None,
            more=_explained(words, "theme"),
        )
        holding = holding_kinds(self.library.vocabulary)
        groups = {each.id: each.common for each in self.library.entries.values() if each.kind in holding}
        within = talk.ask(
            "within",
            "Within which groups? Their names or ids; - for none.",
            ids_of(groups),
            ", ".join(groups_proposed) or "-",
            more=self._keyed(),
        )
        summary = talk.ask("summary", "What does one see, in a sentence or two?", self._line("summary"))
        basis = talk.ask(
            "basis",
            "What do your statements rest on? memory, common-practice, published:SOURCE:seen or computed:FORMULA.",
            lambda given: parse_answer.basis(self.library, given),
            "memory",
            more=_explained(words, "basis"),
        )
        commonness = (
            ""
            if kind == "group"
            else talk.ask(
                "commonness",
                f"How often is it in soil drops? {_labels(words, 'commonness')}",
                one_of(_labelled(words, "commonness")),
                more=_explained(words, "commonness"),
            )
        )
        feeding = talk.ask(
            "feeding",
            f"What does it live on? {_labels(words, 'feeding')}",
            ids_of(_labelled(words, "feeding")),
            None if theme in needing(self.library.vocabulary, "feeding") else "-",
            more=_explained(words, "feeding"),
        )
        would_tell = (
            ""
            if kind != "cannot-be-told"
            else talk.ask("would-tell", "What would tell it, if not this microscope?", self._line("would-tell"))
        )
        statements = self._statements(like, within, basis)
        return without_empty(
            {
                "id": id,
                "kind": kind,
                "theme": theme,
                "names": {"common": common, "scientific": scientific},
                "within": within,
                "summary": summary,
                "commonness": {"class": commonness, "basis": basis} if commonness else {},
                "feeding": {"groups": feeding, "basis": basis} if feeding else {},
                "characters": statements,
                "mistaken-for": [{"entry": other, "by": how, "basis": basis} for other, how in self.told.items()],
                "would-tell": would_tell,
                "contributors": [talk.ask("contributor", "Your name, as it shall stand on the page?", self._line("contributors"))],
                "reviewed": talk.ask("reviewed", "The date, year-month-day?", self._line("reviewed"), self.today),
            }
        )

    def _refuse_given(self) -> None:
        """Ends the conversation before it begins where a statement that was given beforehand cannot be taken."""
        characters = self.library.characters
        for id in (*self.shows, *self.rests):
            if id not in characters:
                near = did_you_mean(id, characters) or "'wetmount list characters' shows all."
                raise NotUnderstood(f"There is no character '{id}'. {near}")
        for id, answer in self.shows.items():
            self._statement(characters[id], answer, {})
        for rests in self.rests.values():
            parse_answer.basis(self.library, rests)
        for other in self.told:
            if other not in self.library.entries:
                near = did_you_mean(other, self.library.entries) or "'wetmount list entries' shows all."
                raise NotUnderstood(f"There is no entry '{other}' to be mistaken for. {near}")

    def _like(self) -> Entry | None:
        entries = {each.id: each.common for each in self.library.entries.values()}
        found = self.talk.ask(
            "like", "What is it nearest to? The id or name of an entry; - if to nothing.", ids_of(entries), "-", more=LIKE
        )
        return self.library.entries[found[0]] if found else None

    def _line(self, *path: str) -> Callable[[str], str]:
        """Understands what the checks allow at a path of an entry."""
        return validate_field(self.loaded, "entry", path)

    def _new_id(self, words: str) -> str:
        if slug(words) != words:
            raise NotUnderstood(f"'{words}' cannot be an id. Use lower-case words joined by '-', such as {slug(words) or 'tarn-worm'}.")
        refuse_taken(self.loaded, words, "entry", replace=self.replace)
        return self._line("id")(words)

    def _keyed(self) -> str:
        """The groups that a key treats, with the key of each."""
        return (
            "Keys treat these: "
            + "; ".join(
                f"{group} ({name_of(self.library, group)}), by {key.title}" for key in self.library.keys.values() for group in key.scope
            )
            + "."
        )

    def _statements(self, like: Entry | None, within: list[str], basis: Mapping[str, Any]) -> dict[str, Any]:
        """What was given, then whatever the keys on the way and the nearest entry show to matter."""
        parents = [self.library.entries[id] for id in within]
        seen: dict[str, Showing] = {id: each.showing for parent in parents for id, each in parent.statements.items()}
        raws: dict[str, Any] = {}

        def state(character: Character, answer: str) -> None:
            raws[character.id] = self._statement(character, answer, basis)
            seen[character.id] = self._reader.stated(character, raws[character.id])

        for id, answer in self.shows.items():
            state(self.library.characters[id], answer)
        if self.talk.quiet:
            return raws
        self.talk.say(HOW_TO_ANSWER)
        for character in self._asked_on_the_way(within, seen):
            state(character, self._ask(character, like))
        for character in that_matter(self.library, like) if like else ():
            if character.id not in seen:
                state(character, self._ask(character, like))
        return raws

    def _statement(self, character: Character, answer: str, basis: Mapping[str, Any]) -> dict[str, Any]:
        shown, _, rests = answer.partition("|")
        rests = rests.strip() or self.rests.get(character.id, "")
        return {
            **parse_answer.showing(self.library, character, shown),
            "basis": parse_answer.basis(self.library, rests) if rests else dict(basis),
        }

    def _ask(self, character: Character, like: Entry | None) -> str:
        statement = like.statements.get(character.id) if like else None
        example = f"\n  {like.common}: {showing_words(self.library, statement)}." if like and statement else ""
        choice = (
            f" In {character.unit}."
            if character.is_number
            else "".join(f"\n    {n} {id} ({state.name})" for n, (id, state) in enumerate(character.states.items(), 1))
        )
        question = f"{character.name}: {plain(self.library, character.asks)}{choice}{example}"

        def understood(words: str) -> str:
            self._statement(character, words, {})
            return words

        return self.talk.ask(
            f"shows {character.id}", question, understood, "any" if statement is None else None, more=self._how_to_see(character)
        )

    def _how_to_see(self, character: Character) -> str:
        return "\n".join(
            [
                plain(self.library, character.look),
                *(f"  - {state.name}: {plain(self.library, state.about)}" for state in character.states.values()),
            ]
        )

    def _asked_on_the_way(self, within: list[str], seen: Mapping[str, Showing]) -> Iterator[Character]:
        """The characters that the keys ask and nothing was said of yet, one after the other as the answers lead on."""
        above = frozenset(each for id in within for each in self.library.ancestry(id))
        for key in self.library.keys.values():
            if above & set(key.scope):
                yield from self._asked_in(key, seen)

    def _asked_in(self, key: Key, seen: Mapping[str, Showing]) -> Iterator[Character]:
        waiting, done = [key.first], set[str]()
        while waiting:
            couplet = key.couplets[waiting.pop()]
            if couplet.id in done:
                continue
            done.add(couplet.id)
            for name in unstated(couplet, seen):
                yield self.library.characters[name]
            waiting += [lead.couplet for cell in cells(couplet, seen) for lead in cell.leads if lead.couplet]


def _labelled(words: Mapping[str, Mapping[str, Any]], name: str) -> dict[str, str]:
    return {id: word.label for id, word in words[name].items()}


def _labels(words: Mapping[str, Mapping[str, Any]], name: str) -> str:
    return f"One of: {listed(words[name])}."


def _explained(words: Mapping[str, Mapping[str, Any]], name: str) -> str:
    """Each word of a closed list with its label, and what is said about it."""
    return "\n".join(f"  {id}: {word.label}{'. ' + word.get('about') if word.get('about') else ''}" for id, word in words[name].items())
