"""What the script of a key's page needs beyond the first question: every couplet as it is to be shown, and where each lead goes."""

from __future__ import annotations

import json

from keytool.identify import Ground, compiled_for, sure_leads
from keytool.pages.couplets import Place, couplet_html
from keytool.pages.figure_files import FigureFiles
from keytool.pages.movement import moving_leads
from keytool.pages.page import Asset
from keytool.pages.page_writer import Writer


def data_path(key: str) -> str:
    """Where the data of a key lie in the site."""
    return f"data/key-{key}.js"


def as_script(name: str, data: object, *, parsed: bool = False) -> bytes:
    """Data as a script file that puts them into `wetmountData`: a page opened from a folder may fetch no other kind of file.

    What is `parsed` stands in it as text: browsers read much data about twice as fast so, and a slow phone answers sooner.
    """
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    if parsed:
        text = "JSON.parse('" + text.replace("\\", "\\\\").replace("'", "\\'") + "')"
    text = text.replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
    return f"(self.wetmountData=self.wetmountData||{{}})[{json.dumps(name)}]={text};\n".encode()


def key_data(ground: Ground, figures: FigureFiles) -> Asset:
    """The data of one key.

    `couplets` holds the HTML of each couplet, in printed order; each explains its own terms, since a walk shows it alone. `leads`
    says of each lead what it goes to: a couplet, `key:ID` or `end:ID`; `sure` which questions are passed over as long as everything
    is told, with the lead taken.
    """
    library, key = ground.library, ground.key
    place = Place(Writer(library, f"keys/{key.id}.md").href(f"keys/whole/{key.id}.html"))
    couplets = {
        each.id: couplet_html(Writer(library, f"keys/{key.id}.md"), figures, key, each, place, moving_leads(ground, each), now=True)
        for each in key.couplets.values()
    }
    leads = {
        each.id: {lead.id: lead.couplet or (f"key:{lead.key}" if lead.key else f"end:{lead.end}") for lead in each.leads.values()}
        for each in key.couplets.values()
    }
    data = {
        "id": key.id,
        "title": key.title,
        "first": key.first,
        "couplets": couplets,
        "leads": leads,
        "sure": sure_leads(compiled_for(library, key), key.id),
    }
    return Asset(data_path(key.id), as_script(f"key-{key.id}", data), library.files["key", key.id])
