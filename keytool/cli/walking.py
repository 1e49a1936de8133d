"""A walk as a conversation: questions out, typed answers in."""

from __future__ import annotations

from collections.abc import Iterator

from keytool.cli.arriving import Arriving
from keytool.cli.pictures import pictures
from keytool.cli.terminal import Terminal
from keytool.identify import (
    CANNOT_TELL,
    Answer,
    Answers,
    Ground,
    Standing,
    address,
    answers_at,
    carried,
    doubt,
    ground,
    stand,
)
from keytool.identify.doubt import CHANGE, LEAVE_OUT, NOTHING_OUT, SEVERAL, Doubt, jump_words
from keytool.identify.record import leads_on
from keytool.library.model import Couplet, Library
from keytool.library.wording import mark, name_of, plain

HELP = "u cannot tell  b back  ? how to see  q stop"


class Walking:
    """A walk over a key, and over the keys it leads on to. `legs` holds each key's ground and answers so far."""

    def __init__(self, library: Library, terminal: Terminal, key: str, start: str) -> None:
        self.library, self.out = library, terminal
        first = ground(library, library.keys[key])
        self.legs: list[tuple[Ground, Answers]] = [(first, answers_at(first, start))]
        self.was_stopped = False
        self.cautioned: set[str] = set()

    def run(self, typed: Iterator[str]) -> bool:
        """Ask until an end, or until the input ends or stops. True when the walk came to an end."""
        self._open_key()
        while True:
            here, answers = self.legs[-1]
            standing = stand(here, answers)
            if standing.is_over:
                onward = leads_on(standing, here)
                if not onward:
                    Arriving(here, self.out, self._caution).tell(answers, standing)
                    return True
                self._go_on(here, answers, onward)
                continue
            couplet = here.key.couplets[standing.asks]
            self._ask(here, couplet, standing, doubt(here, answers, standing))
            if not self._take(couplet, typed):
                return False

    def _go_on(self, here: Ground, answers: Answers, onward: str) -> None:
        """Open the key that comes next, with what is settled already."""
        self.out.say()
        self.out.say(f"It is a case for the key “{name_of(self.library, onward)}”.")
        there = ground(self.library, self.library.keys[onward])
        everything_told = all(each.lead != CANNOT_TELL for each in answers)
        settled = answers_at(there, carried(self.library, here.key, answers[-1].couplet, answers[-1].lead) if everything_told else "")
        self.legs.append((there, settled))
        self._open_key()
        for each in settled:
            couplet = there.key.couplets[each.couplet]
            said = f"{plain(self.library, couplet.asks)} {plain(self.library, couplet.leads[each.lead].text)}"
            self.out.say(f"Settled already: {couplet.number} {said}")

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
        """A caution, the first time it comes up in this conversation."""
        if id in self.cautioned:
            return
        self.cautioned.add(id)
        caution = self.library.cautions[id]
        self.out.say(f"{self.out.warn('Caution')}, {caution.title}: {plain(self.library, caution.brief)}")

    def _ask(self, here: Ground, couplet: Couplet, standing: Standing, open_so_far: Doubt) -> None:
        out = self.out
        out.say()
        is_time_to_change = bool(open_so_far.row) and open_so_far.row % SEVERAL == 0
        if is_time_to_change:
            self._change_something()
        if open_so_far.jumps:
            out.say(f"{jump_words(open_so_far.open, couplet.number)} {LEAVE_OUT}", indent=4)
        out.say(out.bold(plain(self.library, couplet.asks)), indent=4, label=f"{couplet.number}")
        if not is_time_to_change and (drawn := pictures(out, self.library, couplet, indent=4)):  # both would not fit a small screen
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

    def _stopped(self, how: str) -> None:
        here, answers = self.legs[-1]
        asks = here.key.couplets[stand(here, answers).asks].asks
        self.out.say()
        self.out.say(f"{how} at “{plain(self.library, asks)}”. To go on from here:")
        self.out.say(f"wetmount walk '{here.key.id}#{address(answers)}'", indent=2)
