"""What to say when something does not fit: by how much, and what would make it fit."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from keytool.card.errors import DoesNotFit
from keytool.card.form import FORMS, Form, form_named
from keytool.card.layout import Area, fits, shortfall
from keytool.card.model import Content
from keytool.card.papers import PAPERS, Paper

AreaOf = Callable[[Content, Form], Area]


def does_not_fit(contents: Sequence[Content], area: AreaOf, forms: Sequence[Form], sheet: Paper) -> DoesNotFit:
    """The error for contents that do not all fit any of `forms`: what lacks most where that is least, and what all fit."""

    def all_fit(form: Form, dense: bool = False) -> bool:
        return all(fits(what, replace(area(what, form), dense=True) if dense else area(what, form)) for what in contents)

    lacking = []
    for form in forms:
        failing = [what for what in contents if not fits(what, area(what, form))]
        lacking.append(max(((shortfall(what, area(what, form)), what, form) for what in failing), key=lambda each: each[0]))
    lack, what, form = min(lacking, key=lambda each: each[0])
    others = list(_others(forms, sheet, all_fit))
    if any(all_fit(each, dense=True) for each in forms):
        others.insert(0, f"{sheet.name} set dense")
    remedy = f"It fits on: {', '.join(others)}." if others else "It fits on no paper there is: shorten the words or the drawing."
    width, height = form.face
    on = sheet.name if form.name == "sheet" else f"{form.name} of {sheet.name}" if form.together == 2 else f"a {form.name} of {sheet.name}"
    much = f"{lack.name} is {max(1.0, lack.by):.0f} mm too {'wide' if lack.wide else 'high'}"
    return DoesNotFit(f"'{what.title}' does not fit on {on} ({width:g} × {height:g} mm) at readable sizes: {much}. {remedy}")


def _others(forms: Sequence[Form], sheet: Paper, all_fit: Callable[[Form], bool]) -> Iterator[str]:
    """What all fit: the same form on other papers or the other way round; then the larger forms of the same paper, lying as asked."""
    name = forms[-1].name
    tried = [each.sheet for each in forms]
    made = "" if name == "sheet" else f" as {name}"
    for other in PAPERS.values():
        ways = {way: form_named(name, other.size(way == "landscape")) for way in ("landscape", "portrait")}
        fitting = [way for way, form in ways.items() if form.sheet not in tried and all_fit(form)]
        if fitting:
            yield f"{other.name}{'' if len(fitting) == 2 else f' {fitting[0]}'}{made}"
    for larger in list(FORMS)[: list(FORMS).index(name)]:
        if any(all_fit(form_named(larger, size)) for size in tried):
            yield f"{sheet.name} as {larger}"
