"""What was told comes to: the verdict in one line, a few names, what it means, and the one look that would settle most."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from keytool.cli.terminal import Terminal
from keytool.identify import Identification, Model, Named
from keytool.library.basis import Basis, weakest
from keytool.library.model import Entry, Library
from keytool.library.wording import basis_label, feeding_words, mark, meaning, name_of, plain

NO_FEEDER = "not-applicable"


def percent(library: Library, chance: float) -> str:
    """A chance as it is printed: whole per cent, never 0 or 100."""
    return library.say("percent", n=min(99, max(1, round(100 * chance))))


def how_sure(model: Model, named: Named) -> str:
    """How sure in words and figures, such as "likely, 82 %"."""
    library = model.library
    word = library.vocabulary["sureness"][named.word].label
    return library.say("word-percent", word=word, n=min(99, max(1, round(100 * named.chance))))


class ResultText:
    """Tells results to a terminal. `caution` says a caution once in a conversation."""

    def __init__(self, model: Model, out: Terminal, caution: Callable[[str], None]) -> None:
        self.model, self.library, self.out, self.caution = model, model.library, out, caution
        self.marks: dict[str, str] = {}

    def brief(self, result: Identification) -> None:
        """What it may be now, in two lines."""
        self.out.say(self._line(result), indent=2)
        if len(result.names) > 1 or not result.verdict or result.verdict.id != result.names[0].id:
            self.out.say(self._names(result), indent=2)

    def whole(self, result: Identification, end: str = "") -> None:
        """Everything that is said at an end. `end` is where a key has arrived, if it has."""
        out, library = self.out, self.library
        out.say()
        if not result.fits:
            out.say(out.bold(library.say("nothing-fits-look-again")))
            out.say(library.say("nearest"), indent=2)
        out.say(out.bold(self._line(result)))
        if result.names and (len(result.names) > 1 or not result.verdict or result.verdict.id != result.names[0].id):
            out.say(self._names(result), indent=2)
        lead = self._leading(result, end)
        if lead:
            self._about(lead, result)
        else:
            self._lives(result)
        for caution in dict.fromkeys((*(lead.cautions if lead else ()), *result.cautions)):
            self.caution(caution)
        if result.next:
            character = library.characters[result.next[0].character]
            power = library.vocabulary["magnification"][str(character.magnification)].label
            out.say(library.say("would-settle", asks=plain(library, character.asks), power=power), indent=2)
        for look in result.conflicts:
            what = library.characters[look.source[0]].name if len(look.source) == 1 else self._couplet(look.source)
            out.say(library.say("left-out", what=what), indent=2)
        if self.marks:
            out.say(out.faint("; ".join(f"{sign} {words}" for sign, words in self.marks.items()) + "."), indent=2)

    def _couplet(self, source: tuple[str, ...]) -> str:
        return self.library.say("the-answer-to", question=plain(self.library, self.library.keys[source[0]].couplets[source[1]].asks))

    def _line(self, result: Identification) -> str:
        say = self.library.say
        if result.verdict:
            return say("named", name=name_of(self.library, result.verdict.id), odds=how_sure(self.model, result.verdict))
        if result.leading:
            return say("it-leads", name=name_of(self.library, result.leading.id), odds=how_sure(self.model, result.leading))
        return say("not-settled-stop")

    def _names(self, result: Identification) -> str:
        if not result.names:
            return self.library.say("none-stands-out", n=result.more) + "."
        names = ", ".join(f"{name_of(self.library, each.id)} {percent(self.library, each.chance)}" for each in result.names)
        more = self.library.say("and-more", n=result.more, odds=percent(self.library, result.more_chance)) if result.more else ""
        return "; ".join(part for part in (names, more) if part) + "."

    def _leading(self, result: Identification, end: str) -> Entry | None:
        """The entry or group whose meaning may be told: the verdict, or the end arrived at where that is as sure."""
        if result.verdict and (not end or result.verdict.id in self.library.entries):
            return self.library.entries[result.verdict.id]
        return None

    def _about(self, entry: Entry, result: Identification) -> None:
        out, library = self.out, self.library
        if entry.scientific:
            out.say(entry.scientific, indent=2)
        out.say(plain(library, entry.summary), indent=2)
        if len(entry.feeding) == 1:
            out.say(f"{library.say('lives-as', what=feeding_words(library, entry.feeding))} {self._mark(entry.feeding_basis)}", indent=2)
        else:
            self._lives(result)
        for teller, said in meaning(library, entry):
            who = library.say("what-it-means") if teller is entry else library.say("as-all-of", name=teller.name)
            out.say(f"{library.say('said-by', who=who, what=plain(library, said.text))} {self._mark(said.basis)}", indent=2)
        if entry.would_tell:
            out.say(library.say("said-by", who=library.say("what-would-tell"), what=plain(library, entry.would_tell)), indent=2)
        after = library.say("next-write", write=library.say("write-it-down-below"))
        out.say(f"{after} {library.say('more-about', command=f'wetmount show {entry.id}')}", indent=2)

    def _lives(self, result: Identification) -> None:
        """What nearly all that is likely eats; and where that is several things or none, how likely each is. Never over 100 %."""
        library, say = self.library, self.library.say
        said = [each for each in result.feeding if each.id != NO_FEEDER][: int(self.model.figure("feeders-most"))]
        if result.lives and result.lives[0].id != NO_FEEDER:
            self.out.say(say("all-likely-live-as", what=feeding_words(library, (each.id for each in result.lives))), indent=2)
        elif sum(each.chance for each in said) >= self.model.figure("leads-share"):
            shares = (say("lives-share", what=feeding_words(library, (each.id,)), odds=percent(library, each.chance)) for each in said)
            self.out.say(say("lives-most-likely", what=", ".join(shares)), indent=2)

    def _mark(self, bases: Iterable[Basis]) -> str:
        """The mark of a statement, remembered so that it can be explained at the end."""
        basis = weakest(bases)
        sign = mark(self.library, [basis])
        self.marks.setdefault(sign, basis_label(self.library, basis))
        return sign
