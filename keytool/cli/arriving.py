"""What a walk in the terminal says at its end: one end in full, several as a list."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import combinations

from keytool.cli.terminal import Terminal
from keytool.identify import CANNOT_TELL, Answers, Arrival, Ground, Standing, address, arrivals
from keytool.identify.doubt import OVERLAP
from keytool.library.basis import Basis, weakest
from keytool.library.model import Entry
from keytool.library.wording import LIKELY, basis_label, feeding_words, mark, meaning, name_of, plain, sureness_words

NEXT = "Next: write it down with the line below, then look at two more of its kind."


class Arriving:
    """Tells of the end of a walk. `caution` says a caution once in a conversation."""

    def __init__(self, here: Ground, out: Terminal, caution: Callable[[str], None]) -> None:
        self.here, self.library, self.out, self.caution = here, here.library, out, caution
        self.marks: dict[str, str] = {}

    def tell(self, answers: Answers, standing: Standing) -> None:
        """The end or ends, what the marks mean, and the address of the walk."""
        out, found = self.out, arrivals(self.here, answers, standing)
        out.say()
        if not standing.possible:
            out.say(
                "Nothing in the library fits all of these answers. Look again, or take the other worm; "
                "if it stays so, it may be something the library does not have yet."
            )
        if len(found) == 1:
            self._whole(found[0])
        else:
            self._several(answers, found)
        out.say()
        if self.marks:
            out.say(out.faint("; ".join(f"{sign} {words}" for sign, words in self.marks.items()) + "."))
        out.say(out.faint(f"This walk: {self.here.key.id}#{address(answers)}"))

    def _several(self, answers: Answers, found: Sequence[Arrival]) -> None:
        out, library = self.out, self.library
        out.say(out.bold("It cannot be settled between these, most likely first:"))
        for each in found:
            out.say(f"{out.bold(name_of(library, each.end))}: {sureness_words(each.sure)}", indent=4, label="  -")
            out.say(out.faint(f"wetmount {'walk' if each.end in library.keys else 'show'} {each.end}"), indent=4)
        if any(set(one.members) & set(other.members) for one, other in combinations(found, 2)):
            out.say(OVERLAP, indent=2)
        left_open = next(each.couplet for each in answers if each.lead == CANNOT_TELL)
        out.say(f"Look again at “{plain(library, self.here.key.couplets[left_open].asks)}”", indent=2)
        for id in dict.fromkeys(id for each in found if each.end in library.entries for id in library.entries[each.end].cautions):
            self.caution(id)

    def _whole(self, arrival: Arrival) -> None:
        out, library = self.out, self.library
        perhaps = "" if arrival.sure >= LIKELY else "Perhaps: "
        out.say(out.bold(f"{perhaps}{name_of(library, arrival.end)}"))
        entry = library.entries[arrival.end]
        if entry.scientific:
            out.say(entry.scientific, indent=2)
        out.say(plain(library, entry.summary), indent=2)
        out.say(f"How sure: {sureness_words(arrival.sure)} (an estimate)", indent=2)
        if entry.feeding:
            out.say(f"Lives as: {feeding_words(library, entry.feeding)} {self._mark(entry.feeding_basis)}", indent=2)
        self._means(entry)
        if entry.would_tell:
            out.say(f"What would tell: {plain(library, entry.would_tell)}", indent=2)
        fitting = [name_of(library, id) for id in arrival.members if id != arrival.end]
        if fitting:
            out.say(f"Fits: {', '.join(fitting)}", indent=2)
        for rival in arrival.rivals:
            again = f"; look again at “{plain(library, self.here.key.couplets[rival.couplet].asks)}”" if rival.couplet else ""
            out.say(f"If that is wrong, it may be {name_of(library, rival.end)}{again}", indent=2)
        for id in entry.cautions:
            self.caution(id)
        out.say(f"{NEXT} More: wetmount show {entry.id}", indent=2)

    def _means(self, entry: Entry) -> None:
        """What it tells about the soil: its own first word, and that of the group that holds it."""
        for teller, said in meaning(self.library, entry):
            who = "What it means" if teller is entry else f"As all of “{teller.name}”"
            self.out.say(f"{who}: {plain(self.library, said.text)} {self._mark(said.basis)}", indent=2)

    def _mark(self, bases: Iterable[Basis]) -> str:
        """The mark of a statement, remembered so that it can be explained at the end."""
        basis = weakest(bases)
        sign = mark(self.library, [basis])
        self.marks.setdefault(sign, basis_label(self.library, basis))
        return sign
