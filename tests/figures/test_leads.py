"""Every answer of every key is drawn, and no two answers of a couplet with the same picture."""

from __future__ import annotations

from keytool.figures.drawn import of_lead
from keytool.library import Library


def test_every_answer_of_every_key_is_drawn(library: Library):
    missing = [
        f"{key.id} {couplet.id} {lead.id}"
        for key in library.keys.values()
        for couplet in key.couplets.values()
        for lead in couplet.leads.values()
        if of_lead(library, couplet, lead) is None
    ]
    assert not missing


def test_no_two_answers_of_a_couplet_share_a_picture(library: Library):
    shared = []
    for key in library.keys.values():
        for couplet in key.couplets.values():
            shapes = [drawing.shapes for lead in couplet.leads.values() if (drawing := of_lead(library, couplet, lead))]
            if len(set(shapes)) < len(shapes):
                shared.append(f"{key.id} {couplet.id}")
    assert not shared
