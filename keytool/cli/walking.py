"""A walk as a conversation: questions out, typed answers in."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.cli.pictures import pictures
from keytool.cli.terminal import Terminal
from keytool.identify import (
    CANNOT_TELL,
    Answer,
    Answers,
    Arrival,
    Ground,
    Standing,
    address,
    answers_at,
    arrivals,
    doubt,
    ground,
    stand,
)
from keytool.identify.doubt import CHANGE, NOTHING_OUT, SEVERAL, Doubt, jump_words
from keytool.identify.record import leads_on
from keytool.library.model import Couplet, Library
from keytool.library.show import feeding_words, mark, name_of, plain, sureness_words

HELP = "u cannot tell  b back  ? how to see  q stop"


class Walking:
    """A walk over a key, and over the keys it leads on to. `legs` holds each key's ground and answers so far."""

    def __init__(self, library: Library, terminal: Terminal, key: str, start: str) -> None:
        self.library, self.out = library, terminal
        first = ground(library, library.keys[key])
        self.legs: list[tuple[Ground, Answers]] = [(first, answers_at(first, start))]
        self.was_stopped = False

    def run(self, typed: Iterator[str]) -> bool:
        """Ask until an end, or until the input ends or stops. True when the walk came to an end."""
        self._open_key()
        while True:
            here, answers = self.legs[-1]
            standing = stand(here, answers)
            if standing.is_over:
                onward = leads_on(standing, here)
                if not onward:
                    self._arrive(here, answers, standing)
                    return True
                self.out.say()
                self.out.say(f"It is a case for the key “{name_of(self.library, onward)}”.")
                self.legs.append((ground(self.library, self.library.keys[onward]), ()))
                self._open_key()
                continue
            couplet = here.key.couplets[standing.asks]
            self._ask(here, couplet, standing, doubt(here, answers, standing))
            if not self._take(couplet, typed):
                return False

    def _take(self, couplet: Couplet, typed: Iterator[str]) -> bool:
        """Read lines until one answers the couplet or goes back. False when the input ends or stops."""
        here, answers = self.legs[-1]
        leads = list(couplet.leads)
        while True:
            self.out.stream.write(self.out.bold("> "))
            self.out.stream.flush()
            line = next(typed, None)
            if line is None:
                self._stopped("The input ended")
                return False
            word = line.strip().lower()
            if not self.out.is_screen:
                self.out.raw(word)
            if word.isdecimal() and 1 <= int(word) <= len(leads):
                self.legs[-1] = (here, (*answers, Answer(couplet.id, leads[int(word) - 1])))
                return True
            if word == "u":
                self.legs[-1] = (here, (*answers, Answer(couplet.id, CANNOT_TELL)))
                return True
            if word == "b":
                self._back()
                return True
            if word == "q":
                self.was_stopped = True
                self._stopped("Stopped")
                return False
            if word == "?":
                self._explain(couplet)
            else:
                self.out.say(f"“{word}” is not an answer here. Type {', '.join(map(str, range(1, len(leads) + 1)))}, u, b, ? or q.")

    def _back(self) -> None:
        here, answers = self.legs[-1]
        if answers:
            self.legs[-1] = (here, answers[:-1])
        elif len(self.legs) > 1:
            self.legs.pop()
            before, answers = self.legs[-1]
            self.legs[-1] = (before, answers[:-1])
        else:
            self.out.say("This is the first question.")

    def _open_key(self) -> None:
        key = self.legs[-1][0].key
        self.out.say()
        self.out.say(self.out.bold(f"{key.title}  ({self.library.vocabulary['magnification'][str(key.magnification)].label})"))
        self.out.say(plain(self.library, key.about))
        for step in key.before:
            self.out.say(plain(self.library, step), indent=2, label="-")
        for each in key.cautions:
            self._caution(each)

    def _caution(self, id: str) -> None:
        caution = self.library.cautions[id]
        self.out.say(f"{self.out.warn('Caution')}, {caution.title}: {plain(self.library, caution.brief)}")

    def _ask(self, here: Ground, couplet: Couplet, standing: Standing, open_so_far: Doubt) -> None:
        out = self.out
        out.say()
        if open_so_far.row and open_so_far.row % SEVERAL == 0:
            self._change_something()
        if open_so_far.jumps:
            out.say(jump_words(open_so_far.open, couplet.number), indent=4)
        out.say(out.bold(plain(self.library, couplet.asks)), indent=4, label=f"{couplet.number}")
        if drawn := pictures(out, self.library, couplet, indent=4):
            out.raw(drawn)
        for number, lead in enumerate(couplet.leads.values(), 1):
            out.say(plain(self.library, lead.text), indent=7, label=f"    {number}")
        out.say(out.faint(f"{HELP}    {len(standing.possible)} of {len(here.members)} possible"), indent=4)
        if open_so_far.row:
            out.say(out.faint(NOTHING_OUT), indent=4)

    def _change_something(self) -> None:
        """What to change at the microscope, said each time that so many answers in a row have told nothing."""
        self.out.say(self.out.bold(CHANGE), indent=4)
        for word in self.library.vocabulary["in-doubt"].values():
            self.out.say(word.label, indent=6, label="    -")
        self.out.say("Then go back with b and look again.", indent=4)
        self.out.say()

    def _explain(self, couplet: Couplet) -> None:
        self.out.say(plain(self.library, couplet.look), indent=4)
        for name in couplet.characters:
            for state in self.library.characters[name].states.values():
                self.out.say(f"{state.name}: {plain(self.library, state.about)}", indent=6, label="    -")
        if couplet.note:
            self.out.say(f"{plain(self.library, couplet.note.text)} {mark(self.library, couplet.note.basis)}", indent=4)

    def _arrive(self, here: Ground, answers: Answers, standing: Standing) -> None:
        out = self.out
        out.say()
        if not standing.possible:
            out.say("Nothing in the library fits all of these answers. Look again, or take the other worm; "
                    "if it stays so, it may be something the library does not have yet.")
        if len(standing.ends) > 1:
            out.say(out.bold("It cannot be settled between these:"))
        for arrival in arrivals(here, answers, standing):
            self._end(here, arrival)
        out.say()
        out.say(out.faint(f"This walk: {here.key.id}#{address(answers)}"))

    def _end(self, here: Ground, arrival: Arrival) -> None:
        out, library = self.out, self.library
        out.say(out.bold(name_of(library, arrival.end)))
        entry = library.entries.get(arrival.end)
        if entry:
            if entry.scientific:
                out.say(entry.scientific, indent=2)
            out.say(plain(library, entry.summary), indent=2)
            if entry.feeding:
                out.say(f"Lives as: {feeding_words(library, entry.feeding)} {mark(library, entry.feeding_basis)}", indent=2)
            if entry.would_tell:
                out.say(f"What would tell: {plain(library, entry.would_tell)}", indent=2)
        out.say(f"How sure: {sureness_words(arrival.sure)} (an estimate)", indent=2)
        fitting = [name_of(library, id) for id in arrival.members if id != arrival.end]
        if fitting:
            out.say(f"Fits: {', '.join(fitting)}", indent=2)
        for rival in arrival.rivals:
            again = f"; look again at “{plain(library, here.key.couplets[rival.couplet].asks)}”" if rival.couplet else ""
            out.say(f"Nearest rival: {name_of(library, rival.end)}{again}", indent=2)
        for each in entry.cautions if entry else ():
            self._caution(each)
        if entry:
            out.say(out.faint(f"More: wetmount show {entry.id}"), indent=2)

    def _stopped(self, how: str) -> None:
        here, answers = self.legs[-1]
        asks = here.key.couplets[stand(here, answers).asks].asks
        self.out.say()
        self.out.say(f"{how} at “{plain(self.library, asks)}”. To go on from here:")
        self.out.say(f"wetmount walk '{here.key.id}#{address(answers)}'", indent=2)
