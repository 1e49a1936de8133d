"""The hand that writes one page: links seen from that page, texts with their terms, marks with their words."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterable
from functools import lru_cache

from keytool.library.basis import Basis, weakest
from keytool.library.model import Claim, Library, Quantity, Term
from keytool.library.records import BY_KIND, record_of
from keytool.library.text import Link, QuantityRef, parts
from keytool.library.wording import basis_label, basis_words, mark, name_of, plain, quantity_words
from keytool.pages.html import Child, Html, el, join


class Writer:
    """Writes for the page at `path`. Knows which terms were explained on it already."""

    def __init__(self, library: Library, path: str) -> None:
        self.library, self.path = library, path
        self._told: set[str] = set()
        self._terms = _terms(tuple(library.terms.values()))

    def href(self, target: str, anchor: str = "") -> str:
        """The address of a page of the site (`entries/plectus.html`) as seen from this one."""
        here = posixpath.dirname(self.path)
        page = self.path.removesuffix(".md") + ".html"
        return ("" if target == page and anchor else posixpath.relpath(target, here or ".")) + (f"#{anchor}" if anchor else "")

    def place(self, id: str) -> str:
        """The address of whatever an id belongs to."""
        record = record_of(self.library, id) or BY_KIND["sources"]
        page, _, part = record.page.partition("#")
        return self.href(page.format(id=id), id if part else "")

    def link(self, id: str, words: str = "") -> Html:
        """A link to whatever an id belongs to, with its name or other words."""
        return el("a", words or name_of(self.library, id), href=self.place(id))

    def rich(self, text: str) -> Html:
        """A text of the library as HTML: quantities and links put in, each term explained where it first stands on the page."""
        return join(self._part(part) for part in parts(text))

    def power(self, magnification: int) -> str:
        """A total magnification as it is shown: "400×"."""
        return self.library.vocabulary["magnification"][str(magnification)].label

    def _part(self, part: str | QuantityRef | Link) -> Html:
        if isinstance(part, QuantityRef):
            quantity = self.library.quantities[part.id]
            return el(
                "a",
                quantity_words(quantity),
                href=self.href("quantities.html", part.id),
                class_="wm-quantity",
                title=self._quantity_words(quantity),
            )
        return self.link(part.id, part.words) if isinstance(part, Link) else self._with_terms(part)

    def _quantity_words(self, quantity: Quantity) -> str:
        basis = "; ".join(basis_words(self.library, each) for each in quantity.basis)
        return plain(self.library, f"{quantity.name}. {quantity.about} ({basis})")

    def _with_terms(self, text: str) -> Html:
        pattern, by_word = self._terms
        done: list[Child] = []
        end = 0
        for found in pattern.finditer(text) if pattern else ():
            term = by_word[found[1].lower()]
            if term.id not in self._told:
                self._told.add(term.id)
                done += [
                    text[end : found.start()],
                    el(
                        "a",
                        el("abbr", found[0], title=plain(self.library, term.means)),
                        href=self.href("terms.html", term.id),
                        class_="wm-term",
                    ),
                ]
                end = found.end()
        return join([*done, text[end:]])

    def mark(self, bases: Iterable[Basis]) -> Html:
        """The mark of a statement, with its words folded behind it; on a desk they stand in the margin."""
        bases = tuple(bases)
        sign, weak = mark(self.library, bases), weakest(bases)
        return el(
            "details",
            el(
                "summary",
                el("span", sign, aria_hidden="true"),
                el("span", f"Basis: {basis_label(self.library, weak)}", class_="unseen"),
            ),
            el("div", *(el("div", self.basis(each)) for each in bases)),
            class_="basis",
            data_search_exclude=True,
        )

    def basis(self, basis: Basis) -> Html:
        """A basis in words, its sources as links."""
        words = str(el("span", basis_words(self.library, basis)))
        if basis.sources:
            named = join([f"({'; '.join(basis.sources)})"])
            linked = join(
                (el("a", each, href=self.href("sources.html", each), title=self.library.sources[each].cite) for each in basis.sources), "; "
            )
            words = words.replace(named, f"({linked})", 1)
        return Html(words)

    def said(self, said: Claim, tag: str = "li") -> Html:
        """A statement with its mark."""
        return el(tag, el("span", self.rich(said.text), class_="t"), " ", self.mark(said.basis), class_="wm-said")

    def caution(self, id: str) -> Html:
        """A caution in full, with whose rules come first."""
        caution = self.library.cautions[id]
        return el(
            "div",
            el("strong", el("a", caution.title, href=self.href("cautions.html", id))),
            " ",
            self.rich(caution.text),
            " ",
            el("span", self.rich(caution.defer), class_="wm-defer"),
            " ",
            self.mark(caution.basis),
            class_="wm-caution",
            role="note",
            aria_label=f"Caution: {caution.title}",
        )

    def brief_caution(self, id: str) -> Html:
        """A caution in one line, linked to the whole of it."""
        caution = self.library.cautions[id]
        title = el("strong", el("a", caution.title, href=self.href("cautions.html", id)))
        return el(
            "div",
            title,
            " ",
            self.rich(caution.brief),
            " ",
            self.mark(caution.basis),
            class_="wm-caution",
            role="note",
            aria_label=f"Caution: {caution.title}",
        )


def legend_rows(library: Library) -> Html:
    """What the marks mean, one row each, from the vocabulary."""
    rows = [
        (str(value.get("mark")), f"{library.vocabulary['basis']['published'].label}, {value.label}", str(value.get("about")))
        for value in library.vocabulary["value"].values()
    ]
    rows += [
        (str(kind.get("mark")), kind.label, str(kind.get("about")))
        for kind in library.vocabulary["basis"].values()
        if kind.id != "published"
    ]
    return el("dl", *(join([el("dt", el("span", sign, class_="wm-sign"), " ", label), el("dd", about)]) for sign, label, about in rows))


@lru_cache(maxsize=4)
def _terms(terms: tuple[Term, ...]) -> tuple[re.Pattern[str] | None, dict[str, Term]]:
    """A pattern for the words of all terms, and the term of each.

    Words that mean too much else are not explained unasked: everyday ones, short ones, and a
    part of the term that stands for the whole (field, for field of view).
    """
    by_word = {
        word.lower(): term
        for term in terms
        for word in (term.term, *term.also)
        if not term.everyday and (len(word) > 4 or not word.islower()) and (word == term.term or word not in term.term.split())
    }
    words = sorted(by_word, key=lambda word: (-len(word), word))
    return (re.compile(rf"\b({'|'.join(map(re.escape, words))})s?\b", re.IGNORECASE) if words else None), by_word
