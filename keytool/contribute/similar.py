"""What an entry is nearest to, and which characters matter for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from keytool.contribute.keyed_out import paths_through
from keytool.library.model import Character, Entry, Library
from keytool.library.value import Interval, Showing, States


def most_similar(library: Library, shown: Mapping[str, Showing], theme: str, most: int = 3) -> list[Entry]:
    """The entries met in a drop that agree best with what is shown, the nearest first.

    Agreements count for, disagreements against, and what is stated of one only counts for neither.
    """

    def score(entry: Entry) -> float:
        both = [(each, entry.statements[name].showing) for name, each in shown.items() if name in entry.statements]
        return sum(_alike(one, other) for one, other in both)

    candidates = [each for each in library.entries.values() if each.theme == theme and not library.is_group(each.id)]
    return sorted(candidates, key=lambda each: (-round(score(each), 6), each.id))[:most]


def _alike(one: Showing, other: Showing) -> float:
    """From -1 (nothing in common) to 1 (the same)."""
    both = one.meet(other)
    if both.is_empty:
        return -1.0
    if isinstance(both, States) and isinstance(one, States) and isinstance(other, States):
        return len(both.ids) / len(one.ids | other.ids)
    assert isinstance(one, Interval) and isinstance(other, Interval)
    return (one.share(other) + other.share(one)) / 2


def that_matter(library: Library, like: Entry) -> list[Character]:
    """The characters that matter for something like an entry: what the keys ask of it, in order, then what tells it from its look-alikes.

    Then come the rest of what it states itself.
    """
    return [library.characters[name] for name in dict.fromkeys(_names(library, like)) if name in library.characters]


def _names(library: Library, like: Entry) -> Iterator[str]:
    for key in library.keys.values():
        if like in library.members(key.scope):
            for way in paths_through(library, key, like):
                for step in way.steps:
                    yield from key.couplets[step.couplet].characters
    yield from (each.character for each in like.mistaken_for if each.character)
    yield from (name for name, each in like.statements.items() if each.stated_by == like.id)


def kind_and_groups(library: Library, like: Entry) -> tuple[str, list[str]]:
    """The kind of thing and the groups that are proposed for something like an entry: what is like a group stands within it."""
    if like.kind != "group":
        return like.kind, list(like.within)
    members = [each.kind for each in library.entries.values() if like.id in each.within and each.kind != "group"]
    return next(iter(members), "organism"), [like.id]
