"""A walk as a conversation: questions out, typed answers in, and anything else that was seen at any time."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from keytool.cli.observations import Unreadable, Words, said_words
from keytool.cli.pictures import pictures
from keytool.cli.result_text import ResultText, percent
from keytool.cli.terminal import Terminal
from keytool.identify import CANNOT_TELL, Answer, Leg, Model, Observation, Trail, WalkState, evaluate, written
from keytool.identify.posterior import mass
from keytool.library.model import Character, Couplet
from keytool.library.wording import mark, name_of, plain

SEVERAL = 2
"""From this many answers in a row that told nothing, the hand belongs on the microscope and not on the key."""


class Walking:
    """A walk over a key, over the keys it leads on to, and what was seen besides: all of it is `trail`.

    Every change of the trail is remembered, so that back goes back over everything, an end among it.
    """

    def __init__(self, model: Model, terminal: Terminal, trail: Trail) -> None:
        self.model, self.library, self.out = model, model.library, terminal
        self.trail = trail
        self.past: list[Trail] = []
        self.was_stopped = False
        self.cautioned: set[str] = set()
        self.passed: set[tuple[str, str]] = set()
        self.doubted = ""
        self.opened = 0
        self.unsure = 0
        self.words = Words(model)
        self.text = ResultText(model, terminal, self._caution)

    def run(self, typed: Iterator[str]) -> bool:
        """Ask until an end that nobody goes back from, or until the input ends or stops. True when the walk came to an end."""
        while True:
            self._open_keys()
            state = evaluate(self.model, self.trail)
            self._say_passed(state)
            if self.doubted:
                state = replace(state, asks=self.doubted, asks_character="", arrived="", goes_on="")
            if state.goes_on:
                self.out.say()
                key, share = name_of(self.library, state.goes_on), percent(self.library, state.holds)
                say = self.library.say
                self.out.say(say("case-for-key", key=key) if state.holds == 1 else say("goes-on-key", key=key, odds=share))
                self.trail = replace(self.trail, legs=(*self.trail.legs, Leg(state.goes_on)))
                continue
            if state.is_over:
                self._end(state)
                if not self._after_end(typed):
                    return True
                continue
            self._ask(state)
            if not self._take(state, typed):
                return False

    def _change(self, trail: Trail) -> None:
        self.past.append(self.trail)
        self.trail, self.doubted = trail, ""

    def _back(self) -> bool:
        """One step back; False where nothing was told yet."""
        if self.past:
            self.trail = self.past.pop()
        elif self.trail.legs[-1].answers:
            leg = self.trail.legs[-1]
            self.trail = replace(self.trail, legs=(*self.trail.legs[:-1], Leg(leg.key, leg.answers[:-1])))
        elif len(self.trail.legs) > 1:
            self.trail = replace(self.trail, legs=self.trail.legs[:-1])
        else:
            self.out.say(self.library.say("first-question"))
            return False
        self.opened = min(self.opened, len(self.trail.legs))
        return True

    def _take(self, state: WalkState, typed: Iterator[str]) -> bool:
        """Read lines until one changes the trail. False when the input ends or stops."""
        while (word := self._read(typed)) is not None:
            if word.casefold() == "q":
                self.was_stopped = True
                self._stopped(self.library.say("stopped"), state)
                return False
            if word.casefold() == "b":
                if self._back():
                    return True
            elif word == "=":
                self.text.brief(state.result)
            elif word == "?":
                self._explain(state)
            elif word.casefold() == "n" and (of := self._taken_as_likely(state)):
                self._doubt(of)
                return True
            elif word.startswith("+"):
                if self._also(word[1:].strip(), typed):
                    return True
            elif self._answer(state, word):
                return True
        self._stopped(self.library.say("input-ended"), state)
        return False

    def _taken_as_likely(self, state: WalkState) -> tuple[Trail, str] | None:
        """The last question passed over as likely and the trail in whose key it stands: the present one, or the one just left."""
        trail = self.trail
        if not state.likely and len(trail.legs) > 1 and not trail.legs[-1].answers:
            trail = replace(trail, legs=trail.legs[:-1])
            state = evaluate(self.model, trail)
        return (trail, list(state.likely)[-1]) if state.likely else None

    def _doubt(self, of: tuple[Trail, str]) -> None:
        """Ask after all what was passed over as likely."""
        trail, couplet = of
        if trail != self.trail:
            self._change(trail)
            self.opened = min(self.opened, len(trail.legs))
        self.doubted = couplet

    def _answer(self, state: WalkState, word: str) -> bool:
        """Take an answer to what is asked; False, with a word of help, where it is none."""
        unsure = word.casefold() == "u"
        if state.asks:
            leads = list(self.library.keys[self.trail.legs[-1].key].couplets[state.asks].leads)
            if not unsure and not _chosen(word, len(leads)):
                return self._no_answer(word, len(leads))
            answer = Answer(state.asks, CANNOT_TELL if unsure else leads[_chosen(word, len(leads)) - 1])
            leg = self.trail.legs[-1]
            self._change(replace(self.trail, legs=(*self.trail.legs[:-1], Leg(leg.key, (*leg.answers, answer)))))
        else:
            character = self.library.characters[state.asks_character]
            states = list(character.states)
            if unsure:
                seen = Observation(character.id)
            elif not character.is_number and _chosen(word, len(states)):
                seen = Observation(character.id, (states[_chosen(word, len(states)) - 1],))
            else:
                try:
                    seen = self.words.observation(character, word)
                except Unreadable as error:
                    self.out.say(str(error), indent=4)
                    return False
            self._change(replace(self.trail, saw=(*self.trail.saw, seen)))
        self.unsure = self.unsure + 1 if unsure else 0
        return True

    def _no_answer(self, word: str, leads: int) -> bool:
        self.out.say(self.library.say("no-answer", word=word[:40], leads=", ".join(map(str, range(1, leads + 1)))))
        return False

    def _also(self, said: str, typed: Iterator[str]) -> bool:
        """Take something seen besides what is asked."""
        if not said:
            self.out.say(self.library.say("what-else"), indent=4)
            said = self._read(typed) or ""
        if not said:
            return False
        try:
            trail = self.words.take(self.trail, said)
        except Unreadable as error:
            self.out.say(str(error), indent=4)
            return False
        for each in trail.saw:
            if each not in self.trail.saw:
                self.out.say(self.library.say("taken", what=said_words(self.model, each)), indent=4)
        self._change(trail)
        return True

    def _read(self, typed: Iterator[str]) -> str | None:
        self.out.stream.write(self.out.bold("> "))
        self.out.stream.flush()
        line = next(typed, None)
        if line is None:
            return None
        word = line.strip()
        if not self.out.is_screen:
            self.out.raw(word)
        return word

    def _open_keys(self) -> None:
        """Title and cautions of keys not opened yet, and what of them is settled already."""
        while self.opened < len(self.trail.legs):
            key = self.library.keys[self.trail.legs[self.opened].key]
            self.opened += 1
            self.out.say()
            self.out.say(self.out.bold(f"{key.title}  ({self.library.vocabulary['magnification'][str(key.magnification)].label})"))
            self.out.say(plain(self.library, key.about))
            for step in key.before:
                self.out.say(plain(self.library, step), indent=2, label="-")
            for each in key.cautions:
                self._caution(each)

    def _say_passed(self, state: WalkState) -> None:
        """The questions passed over that were not spoken of yet, each with the answer taken and whether it was told or is likely."""
        key, say = self.library.keys[self.trail.legs[-1].key], self.library.say
        for couplet, lead in state.passed.items():
            if (key.id, couplet) not in self.passed:
                self.passed.add((key.id, couplet))
                asked = key.couplets[couplet]
                said = f"{plain(self.library, asked.asks)} {plain(self.library, asked.leads[lead].text)}"
                if couplet in state.likely:
                    odds = percent(self.library, state.likely[couplet])
                    self.out.say(say("taken-as-likely", odds=odds, what=f"{asked.number} {said}"))
                else:
                    self.out.say(say("settled-already", number=asked.number, what=said))

    def _caution(self, id: str) -> None:
        """A caution, the first time it comes up in this conversation."""
        if id in self.cautioned:
            return
        self.cautioned.add(id)
        caution = self.library.cautions[id]
        say = self.library.say
        warned = self.out.warn(say("caution"))
        self.out.say(say("caution-says", caution=warned, title=caution.title, what=plain(self.library, caution.brief)))

    def _ask(self, state: WalkState) -> None:
        self.out.say()
        stuck = bool(self.unsure) and self.unsure % SEVERAL == 0
        if stuck:
            self._change_something()
        if state.asks:
            couplets = self.library.keys[self.trail.legs[-1].key].couplets
            left = [couplets[each].number for each in state.open]
            if left and couplets[state.asks].number != max(left) + 1:
                jumped = self.library.say("jumped", n=len(left), open=left[0], next=couplets[state.asks].number)
                self.out.say(jumped, indent=4)
            self._ask_couplet(couplets[state.asks], drawn=not stuck)
        else:
            self._ask_character(self.library.characters[state.asks_character])
        verdict = state.result.verdict
        words = self.library.say("keys-help")
        if self._taken_as_likely(state):
            words = self.library.say("keys-help-likely", help=words)
        if verdict and self._has_told():
            now = f"{name_of(self.library, verdict.id)} {percent(self.library, verdict.chance)}"
            words = self.library.say("keys-help-now", help=words, now=now)
        self.out.say(self.out.faint(words), indent=4)
        if self.unsure:
            self.out.say(self.out.faint(self.library.say("rules-nothing-out")), indent=4)

    def _has_told(self) -> bool:
        return bool(self.trail.saw or self.trail.pictures or any(leg.answers for leg in self.trail.legs))

    def _ask_couplet(self, couplet: Couplet, *, drawn: bool) -> None:
        out = self.out
        out.say(out.bold(plain(self.library, couplet.asks)), indent=4, label=f"{couplet.number}")
        if drawn and (picture := pictures(out, self.library, couplet, indent=4)):  # with the advice it would not fit a small screen
            out.raw(picture)
        for number, lead in enumerate(couplet.leads.values(), 1):
            out.say(plain(self.library, lead.text), indent=7, label=f"    {number}")

    def _ask_character(self, character: Character) -> None:
        out = self.out
        power = self.library.vocabulary["magnification"][str(character.magnification)].label
        out.say(out.bold(f"{plain(self.library, character.asks)} ({power})"), indent=4, label="?")
        if character.is_number:
            out.say(self.library.say("type-a-number", unit=character.unit), indent=7)
        for number, state in enumerate(character.states.values(), 1):
            out.say(f"{state.name}: {plain(self.library, state.about)}", indent=7, label=f"    {number}")

    def _change_something(self) -> None:
        """What to change at the microscope, said each time that so many answers in a row have told nothing."""
        self.out.say(self.out.bold(self.library.say("stuck")), indent=4)
        for word in self.library.vocabulary["in-doubt"].values():
            self.out.say(word.label, indent=6, label="    -")
        self.out.say(self.library.say("go-back-and-look"), indent=4)
        self.out.say()

    def _explain(self, state: WalkState) -> None:
        if state.asks_character:
            self.out.say(plain(self.library, self.library.characters[state.asks_character].look), indent=4)
            return
        couplet = self.library.keys[self.trail.legs[-1].key].couplets[state.asks]
        self.out.say(plain(self.library, couplet.look), indent=4)
        for name in couplet.characters:
            for each in self.library.characters[name].states.values():
                self.out.say(f"{each.name}: {plain(self.library, each.about)}", indent=6, label="    -")
        if couplet.note:
            self.out.say(f"{plain(self.library, couplet.note.text)} {mark(self.library, couplet.note.basis)}", indent=4)

    def _end(self, state: WalkState) -> None:
        library, out = self.library, self.out
        self.text.whole(state.result, state.arrived)
        if state.arrived and not (state.result.verdict and state.result.verdict.id == state.arrived):
            here = percent(library, mass(state.result.after.chance, self.model.within(state.arrived)))
            out.say(library.say("key-ends-at", name=name_of(library, state.arrived), odds=here), indent=2)
        out.say()
        out.say(out.faint(library.say("this-walk", command=f"wetmount walk --from '{written(self.trail)}'")))

    def _after_end(self, typed: Iterator[str]) -> bool:
        """Whether somebody goes back from an end, or tells more."""
        before = self.trail
        if self.out.is_screen:
            self.out.say(self.out.faint(self.library.say("keys-after")))
        while (word := self._read_after(typed)) is not None:
            if word.casefold() == "q":
                return False
            if word.casefold() == "b" and self._back():
                return True
            if word.startswith("+") and self._also(word[1:].strip(), typed):
                return self.trail != before
            self.out.say(self.library.say("walk-is-over", help=self.library.say("keys-after")))
        return False

    def _read_after(self, typed: Iterator[str]) -> str | None:
        """A line typed after the end, or nothing where the input ends: then no prompt is left standing."""
        line = next(typed, None)
        return None if line is None or not line.strip() else line.strip()

    def _stopped(self, how: str, state: WalkState) -> None:
        asked = (
            self.library.keys[self.trail.legs[-1].key].couplets[state.asks].asks
            if state.asks
            else self.library.characters[state.asks_character].asks
        )
        self.out.say()
        self.out.say(self.library.say("go-on-from-here", how=how, question=plain(self.library, asked)))
        self.out.say(f"wetmount walk --from '{written(self.trail)}'", indent=2)


def _chosen(word: str, most: int) -> int:
    """The number that was typed, from 1 to `most`; 0 where it is none. Of digits without end none is made a number."""
    number = int(word) if word.isdecimal() and len(word) <= len(str(most)) else 0
    return number if number <= most else 0
