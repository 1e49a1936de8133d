"""What the search finds, as a script file that is fetched when somebody first searches; it works from a folder too.

Each row is one page or part of a page: its kind, title, second name, address, small picture, summary, folded names, folded questions,
folded further words, and how general it is. The words are folded here (`keytool.words.fold`), so that a phone need not.
"""

from __future__ import annotations

import json
import math
from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Any

from keytool.library.model import Library
from keytool.library.wording import plain
from keytool.pages.index_pages import first_keys
from keytool.pages.page import Asset
from keytool.pages.thumbs import small_path
from keytool.words.fold import keywords

PATH = "data/find.js"
KINDS = ("entry", "key", "guide", "look-alikes", "caution", "word", "feature", "page")
"""What a hit can be, in the order of its number in a row. An entry says its own kind in the library's words."""
LONGEST_SUMMARY = 118
STEP_WORDS = 12
WRITTEN = {
    "about": ("About wetmount", "about.html", "what this is, how sure it is, what it cannot do, who made it"),
    "contribute": ("Add what you found", "contribute/index.html", "add an entry, send a picture, correct a mistake"),
    "cards": ("Bench cards to print", "cards.html", "print a card, laminated card, bench card, pdf"),
    "downloads": ("Downloads", "downloads.html", "download everything, csv, json, data"),
    "sources": ("Sources", "sources.html", "books and papers, where a figure is from, references"),
    "live-field": ("Live field", "live-field.html", "see it move, animation, how they move, practise"),
    "offline": ("Without a network", "offline.html", "use it offline, no signal, keep it on the phone, install"),
    "drawings": ("All drawings", "drawings/index.html", "pictures, drawings, plates"),
    "entries": ("All entries", "entries/index.html", "list of all things, what is in here, species list"),
    "count": ("Count", "count.html", "count them, tally, per gram, how many per teaspoon"),
    "measure": ("Measure on a photo", "measure.html", "measure a photograph, size from a picture"),
    "describe": ("What do you see?", "describe.html", "say what you see, any order, describe it"),
    "gallery": ("Point at it", "gallery.html", "gallery, pictures to point at"),
}
"""Pages that stand by themselves: title, address, and words that find them; those a site does not have are left out."""


def find_index(library: Library, pages: Iterable[str]) -> Asset:
    """`data/find.js`, which sets `wetmountFindData`; `pages` are the addresses the site has, such as `entries/plectus.html`."""
    rows = _Rows(library, frozenset(pages))
    spelling = library.lay.spelling
    data = {
        "rows": list(rows.all()) if spelling else [],
        "kinds": list(KINDS),
        "several": {" ".join(sorted(set(keywords(word, spelling)))): list(ids) for word, ids in library.lay.several.items()},
        "ids": rows.ids,
        "spelling": {name: value for name, value in spelling.items() if name in _READ},
        "alike": [sorted({word for phrase in words for word in keywords(phrase, spelling)}) for words in spelling.get("alike", ())],
    }
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")
    return Asset(PATH, f"window.wetmountFindData={text};\n".encode(), "keydata")


_READ = ("forms", "stops", "kept", "negating", "negating-back", "breaks", "unsure", "passing", "count-words")


class _Rows:
    """The rows, and the number of each by the id of what it leads to."""

    def __init__(self, library: Library, pages: frozenset[str]) -> None:
        self.library, self.pages = library, pages
        self.ids: dict[str, int] = {}
        self._count = 0
        self._asks: dict[tuple[str, str], list[str]] = {}
        for question in library.lay.questions:
            self._asks.setdefault((question.goes_to, question.at), []).extend(question.ask)

    def all(self) -> Iterator[list[Any]]:
        library = self.library
        held = Counter(
            group for entry in library.entries.values() if not library.is_group(entry.id) for group in library.ancestry(entry.id)
        )
        most = max(held.values(), default=1)
        for entry in library.entries.values():
            kind = library.vocabulary["entry-kind"][entry.kind].label
            members = held[entry.id] if library.is_group(entry.id) else 0
            general = round(20 * math.log(1 + members) / math.log(1 + most)) + _common(library, entry.commonness)
            picture = small_path(entry.id) if entry.figure else ""
            names = (entry.scientific, *entry.also)
            yield self._row(
                entry.id, kind, entry.common, entry.scientific, f"entries/{entry.id}.html", picture, entry.summary, names, (), general
            )
        for number, id in enumerate(first_keys(library)):
            key = library.keys[id]
            shown = next((small_path(each) for each in key.scope if library.entries[each].figure), "")
            yield self._row(id, "key", key.title, "", f"keys/{id}.html", shown, key.about, (f"{key.title} key",), (), 18 if number else 22)
        for guide in library.guides.values():
            more = [plain(library, step.do) for step in guide.steps]
            yield self._row(guide.id, "guide", guide.title, "", f"guides/{guide.id}.html", "", guide.about, (), more, 14)
            for step in guide.steps:
                if (guide.id, step.id) in self._asks:
                    address = f"guides/{guide.id}.html#{step.id}"
                    yield self._row(guide.id, "guide", guide.title, "", address, "", step.do, (), (step.why,), 14, step.id)
        for each in library.look_alikes.values():
            shown = next((small_path(one) for one in each.entries if library.entries[one].figure), "")
            shown_here = [library.entries[one].common for one in each.entries]
            yield self._row(each.id, "look-alikes", each.title, "", f"look-alikes/{each.id}.html", shown, each.about, (), shown_here, 9)
        for caution in library.cautions.values():
            yield self._row(
                caution.id, "take care", caution.title, "", f"cautions.html#{caution.id}", "", caution.brief, (), (caution.text,), 10
            )
        for term in library.terms.values():
            yield self._row(term.id, "word", term.term, "", f"terms.html#{term.id}", "", term.means, term.also, (), 4)
        for character in library.characters.values():
            states = [state.name for state in character.states.values()]
            yield self._row(
                character.id,
                "what to look at",
                character.name,
                "",
                f"characters/index.html#{character.id}",
                "",
                character.asks,
                (),
                states,
                0,
            )
        for id, (title, address, words) in WRITTEN.items():
            if address in self.pages:
                yield self._row(f"page/{id}", "page", title, "", address, "", "", words.split(", "), (), 12)

    def _row(
        self,
        id: str,
        kind: str,
        title: str,
        second: str,
        address: str,
        picture: str,
        summary: str,
        names: Iterable[str],
        more: Iterable[str],
        general: int,
        step: str = "",
    ) -> list[Any]:
        spelling = self.library.lay.spelling
        lay = () if step else self.library.lay.names.get(id, ())
        asks = self._asks.get((id, step), ())
        self.ids[f"{id}#{step}" if step else id] = self._count
        self._count += 1
        told = plain(self.library, summary)
        return [
            kind,
            title,
            "" if second == title else second,
            address,
            picture,
            _cut(told),
            ";".join(dict.fromkeys(" ".join(keywords(each, spelling)) for each in (*names, *lay) if each)),
            ";".join(dict.fromkeys(" ".join(keywords(each, spelling)) for each in asks)),
            " ".join(dict.fromkeys(word for each in more for word in keywords(plain(self.library, each), spelling)[:STEP_WORDS])),
            general,
        ]


def _common(library: Library, commonness: str) -> int:
    """How much being met often lifts a hit: the first class of the vocabulary most."""
    order = list(library.vocabulary.get("commonness", {}))
    return 2 * (len(order) - order.index(commonness)) if commonness in order else 0


def _cut(text: str) -> str:
    """A summary of two lines at most, cut between words."""
    if len(text) <= LONGEST_SUMMARY:
        return text
    return text[:LONGEST_SUMMARY].rsplit(" ", 1)[0].rstrip(",;:. ") + " …"
