"""`wetmount show`: one thing from the library, with what each statement rests on."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from keytool.cli.terminal import Terminal
    from keytool.library import Library
    from keytool.library.basis import Basis
    from keytool.library.model import Character, Claim, Entry, Key, Statement


@click.command("show", short_help="Show one entry, key, character, source, term or caution.")
@click.argument("id")
@click.pass_obj
def show_command(named: Path | None, id: str) -> None:
    """Show what the library says of ID, each statement with its basis mark.

    ID is that of an entry, key, character, source, term, caution or bench figure, such as
    plectus, nematode-mouthparts or strong-spear. See `wetmount list`.
    """
    from keytool.cli.opening import library, pick
    from keytool.cli.terminal import Terminal

    everything, terminal = library(named), Terminal()
    shelves = (
        everything.entries,
        everything.keys,
        everything.characters,
        everything.sources,
        everything.terms,
        everything.cautions,
        everything.quantities,
    )
    word = pick(id.lower(), [each for shelf in shelves for each in shelf], "thing in the library called")
    Showing(everything, terminal).show(word)


class Showing:
    """Says one thing after another to a terminal, and at the end what the marks mean."""

    def __init__(self, library: Library, terminal: Terminal) -> None:
        self.library, self.out = library, terminal
        self.bases: dict[Basis, None] = {}

    def show(self, id: str) -> None:
        """Whatever has this id."""
        from keytool.library.wording import plain, quantity_words

        library, out = self.library, self.out
        if id in library.entries:
            self._entry(library.entries[id])
        elif id in library.keys:
            self._key(library.keys[id])
        elif id in library.characters:
            self._character(library.characters[id])
        elif id in library.sources:
            source = library.sources[id]
            out.say(out.bold(source.cite))
            out.say(f"{library.vocabulary['read'][source.read].label}. {plain(library, source.note)}", indent=2)
        elif id in library.terms:
            term = library.terms[id]
            out.say(f"{out.bold(', '.join([term.term, *term.also]))}: {plain(library, term.means)}")
        elif id in library.cautions:
            caution = library.cautions[id]
            out.say(out.warn(caution.title))
            out.say(f"{plain(library, caution.text)} {plain(library, caution.defer)} {self._mark(caution.basis)}", indent=2)
        else:
            quantity = library.quantities[id]
            out.say(f"{out.bold(quantity.name)}: {quantity_words(quantity)} {self._mark(quantity.basis)}")
            out.say(plain(library, quantity.about), indent=2)
        self._legend()

    def _mark(self, bases: Iterable[Basis]) -> str:
        from keytool.library.wording import mark

        self.bases.update(dict.fromkeys(bases))
        return mark(self.library, bases)

    def _said(self, title: str, statements: Iterable[Claim]) -> None:
        from keytool.library.wording import plain

        for number, said in enumerate(statements):
            if number == 0:
                self.out.say(self.out.bold(title))
            self.out.say(f"{plain(self.library, said.text)} {self._mark(said.basis)}", indent=4, label="  -")

    def _entry(self, entry: Entry) -> None:
        from keytool.identify import telling_first
        from keytool.library.wording import feeding_words, name_of, plain

        library, out = self.library, self.out
        out.say(out.bold(entry.name) + (f"  ({entry.scientific})" if entry.scientific else ""))
        if entry.also:
            out.say(f"Also: {', '.join(entry.also)}", indent=2)
        within = f", within: {', '.join(name_of(library, each) for each in entry.within)}" if entry.within else ""
        out.say(f"{library.vocabulary['entry-kind'][entry.kind].label}{within}", indent=2)
        out.say(plain(library, entry.summary), indent=2)
        if entry.feeding:
            out.say(f"Lives as: {feeding_words(library, entry.feeding)} {self._mark(entry.feeding_basis)}", indent=2)
        if entry.commonness:
            often = library.vocabulary["commonness"][entry.commonness].label
            out.say(f"In soil drops: {often} {self._mark(entry.commonness_basis)}", indent=2)
        if entry.would_tell:
            out.say(f"What would tell: {plain(library, entry.would_tell)}", indent=2)
        groups = telling_first(library, entry)
        for group, statements in groups:
            if group == entry.id:
                self._statements("What it shows", statements)
        self._said("What it tells", entry.tells)
        for number, each in enumerate(entry.mistaken_for):
            if number == 0:
                out.say(out.bold("Mistaken for"))
            out.say(f"{name_of(library, each.entry)}: {plain(library, each.by)} {self._mark(each.basis)}", indent=4, label="  -")
        self._said("Notes", entry.notes)
        for id in entry.cautions:
            caution = library.cautions[id]
            out.say(f"{out.warn('Caution')}, {caution.title}: {plain(library, caution.brief)}")
        for group, statements in groups:
            if group != entry.id:
                self._statements(f"As all of: {name_of(library, group)}", statements)

    def _statements(self, title: str, statements: Iterable[Statement]) -> None:
        from keytool.library.wording import showing_words

        self.out.say(self.out.bold(title))
        for each in statements:
            shown = f"{showing_words(self.library, each)} {self._mark(each.basis)}"
            self.out.say(f"{self.library.characters[each.character].name}: {shown}", indent=4, label="  -")

    def _key(self, key: Key) -> None:
        from keytool.library.wording import name_of, plain

        library, out = self.library, self.out
        out.say(out.bold(f"{key.title}  ({library.vocabulary['magnification'][str(key.magnification)].label})"))
        out.say(plain(library, key.about), indent=2)
        for couplet in key.couplets.values():
            out.say()
            out.say(out.bold(plain(library, couplet.asks)), indent=4, label=str(couplet.number))
            for number, lead in enumerate(couplet.leads.values(), 1):
                goes = key.couplets[lead.couplet].number if lead.couplet else name_of(library, lead.goes_to)
                out.say(f"{plain(library, lead.text)} → {goes}", indent=7, label=f"    {number}")

    def _character(self, character: Character) -> None:
        from keytool.library.wording import number, plain

        library, out = self.library, self.out
        out.say(f"{out.bold(character.name)}  (from {library.vocabulary['magnification'][str(character.magnification)].label})")
        out.say(plain(library, character.asks), indent=2)
        out.say(plain(library, character.look), indent=2)
        for state in character.states.values():
            out.say(f"{state.name}: {plain(library, state.about)}", indent=4, label="  -")
        if character.is_number:
            out.say(
                f"Measured in {character.unit}, read to plus or minus {number(character.plus_minus)} µm "
                f"{self._mark(character.plus_minus_basis)}",
                indent=2,
            )
        out.say(
            f"Misread by a careful beginner about {number(100 * character.misread)} times in 100 {self._mark(character.misread_basis)}",
            indent=2,
        )

    def _legend(self) -> None:
        from keytool.library.wording import basis_words, mark

        if self.bases:
            self.out.say()
        for basis in self.bases:
            self.out.say(self.out.faint(basis_words(self.library, basis)), indent=4, label=f" {mark(self.library, [basis])}")
