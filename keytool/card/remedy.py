"""What to say when something does not fit: by how much, and what would make it fit."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from keytool.card.errors import DoesNotFit
from keytool.card.form import FORMS, Form, form_named
from keytool.card.layout import Area, best_setting, shortfall
from keytool.card.model import Content
from keytool.card.papers import PAPERS, Paper

AreaOf = Callable[[Content, Form], Area]


def does_not_fit(contents: Sequence[Content], area: AreaOf, forms: Sequence[Form], sheet: Paper) -> DoesNotFit:
    """The error for contents that do not all fit any of `forms`: what lacks least, and what it does fit."""

    def fits(what: Content, form: Form) -> bool:
        return best_setting(what, area(what, form), form) is not None

    failing = [(shortfall(what, area(what, form)), what, form) for form in forms for what in contents if not fits(what, form)]
    (name, by), what, form = min(failing, key=lambda each: each[0][1])
    lack = f"{name} is {max(1.0, by):.0f} mm too high" if by < float("inf") else f"{name} is too wide for any column"
    others = [words for words, other in _others(forms, sheet) if fits(what, other)]
    dense = any(best_setting(what, replace(area(what, each), dense=True), each) for each in forms)
    if dense:
        others.insert(0, f"{sheet.name} set dense")
    remedy = f"It fits on: {', '.join(others)}." if others else "It fits on no paper there is: shorten the words or the drawing."
    width, height = form.face
    on = sheet.name if form.name == "sheet" else f"{form.name} of {sheet.name}" if form.together == 2 else f"a {form.name} of {sheet.name}"
    return DoesNotFit(f"'{what.title}' does not fit on {on} ({width:g} × {height:g} mm) at readable sizes: {lack}. {remedy}")


def _others(forms: Sequence[Form], sheet: Paper) -> Iterator[tuple[str, Form]]:
    """The same form on other papers and the other way round; then the larger forms of the same paper."""
    name = forms[-1].name
    for other in PAPERS.values():
        for lying in (True, False):
            form = form_named(name, other.size(lying))
            if form.sheet not in [each.sheet for each in forms]:
                yield f"{other.name} {'landscape' if lying else 'portrait'}", form
    if name != "sheet":
        for larger in list(FORMS)[: list(FORMS).index(name)]:
            yield f"{sheet.name} as {larger}", form_named(larger, sheet.size(landscape=False))
