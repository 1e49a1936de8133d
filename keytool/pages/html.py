"""HTML by construction: text is escaped unless it is HTML already."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape


class Html(str):
    """Text that is HTML already and is not escaped again."""

    __slots__ = ()


Child = str | Html | None


def el(tag: str, *children: Child, **attributes: str | bool | None) -> Html:
    """An element, such as `el("a", "Plectus", href="x.html", class_="end")`.

    Children that are plain text are escaped, None is left out. In attribute names a trailing
    `_` falls away and `_` stands for `-`; True gives a bare attribute, None and False none.
    """
    written = "".join(_attribute(name, value) for name, value in attributes.items() if value is not None and value is not False)
    if tag in _VOID:
        return Html(f"<{tag}{written}>")
    return Html(f"<{tag}{written}>{join(children)}</{tag}>")


def join(children: Iterable[Child], between: str = "") -> Html:
    """Children one after the other, with plain text escaped."""
    return Html(between.join(each if isinstance(each, Html) else escape(each, quote=False) for each in children if each is not None))


def json_in_page(text: str) -> Html:
    """JSON made safe inside a `<script>` element: nothing in it can end the element or the line."""
    return Html(text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029"))


def _attribute(name: str, value: str | bool) -> str:
    name = name.rstrip("_").replace("_", "-")
    return f" {name}" if value is True else f' {name}="{escape(str(value))}"'


_VOID = frozenset({"br", "hr", "img", "input", "meta", "link"})
