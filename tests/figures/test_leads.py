"""Every answer of every key is drawn, and no two answers of a couplet with the same picture."""

from __future__ import annotations

from keytool.figures.library_figures import of_entry, of_lead
from keytool.library import Library
from keytool.library.requirements import required
from keytool.library.value import States


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


def test_what_takes_all_the_rest_is_not_shown_as_one_of_several_states(library: Library):
    tried = 0
    for key in library.keys.values():
        for couplet in key.couplets.values():
            for lead in couplet.leads.values():
                left = required(library, couplet, lead) if lead.otherwise and not lead.figure else {}
                if any(isinstance(showing, States) and len(showing.ids) > 1 for showing in left.values()):
                    shown, end = of_lead(library, couplet, lead), of_entry(library, library.entries[lead.end])
                    assert shown and end and shown.shapes == end.shapes, (key.id, couplet.id, lead.id)
                    tried += 1
    assert tried > 20
