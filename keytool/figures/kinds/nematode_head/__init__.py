"""A nematode's head from the side, dorsal to the right, cropped behind the mouthpart or behind the gullet."""

from __future__ import annotations

from ... import pen
from ...frame import Sketch
from ...shapes import Shape
from ..kind import Kind, Values, accent, amount, choice, flag, given, num, um, word
from . import body, gullet, lips, solid_spears, stoma, tooth
from . import quill as quills
from . import stylet as stylets
from .gullet_plan import plan as plan_gullet
from .head import Head, measure, shortest_gullet

PARTS = (
    "spear",
    "knobs",
    "base",
    "guiding-ring",
    "stoma",
    "tooth",
    "lips",
    "lip-region",
    "bristles",
    "bulb",
    "valve",
    "gullet",
    "rings",
    "cap",
    "amphid",
    "loose-skin",
)


def build(v: Values) -> Sketch:
    """The head as shapes."""
    head = measure(v)
    moulting = word(v, "state") == "moulting"
    shapes: list[Shape] = [*body.outline(head), *body.rings(head, word(v, "rings"))]
    plan = plan_gullet(head)
    shapes += body.shade(head, lambda y: gullet.hollow(head, plan, y))
    if plan is not None:
        shapes += gullet.draw(head, plan)
    shapes += stoma.stoma(head)
    if head.spear == "none":
        shapes += tooth.tooth(head, word(v, "tooth"), word(v, "denticles"))
    shapes += _spear(head, v, moulting)
    shapes += _on_the_lips(head, v)
    if moulting:
        shapes += _old_skin(head)
    if word(v, "state") == "sheathed":
        shapes += body.loose_skin(head, 0.05 * head.width, "loose-skin")
    return Sketch(tuple(shapes), head.pen)


def _spear(head: Head, v: Values, moulting: bool) -> list[Shape]:
    match head.spear:
        case "stylet":
            return stylets.stylet(head, word(v, "knobs"), word(v, "knob-shape"), shed=moulting)
        case "odontostyle":
            aperture = num(v, "aperture")
            ring_at = given(v, "guiding-ring-at", head.spear_tip + 0.55 * head.spear_length)
            out = quills.odontostyle(head, aperture, word(v, "odontophore-base"), word(v, "guiding-ring"), ring_at)
            if v["two-spears"]:
                n, half = 1.2 * head.spear_length, quills.quill_half(head)
                out += quills.quill(head.mouthpart_end + 0.05 * head.width, n, half, aperture, "spear", x=-1.9 * half)
            return out
        case "onchiostyle":
            return solid_spears.onchiostyle(head)
        case "mural-tooth":
            return solid_spears.mural_tooth(head)
        case _:
            return []


def _on_the_lips(head: Head, v: Values) -> list[Shape]:
    out: list[Shape] = []
    style = word(v, "lips")
    if style != "none":
        natural = {"low": 0.06, "points": 0.06, "flaps": 0.16, "forked": 0.26, "fringed": 0.40}[style] * head.width
        out += lips.outgrowths(head, style, given(v, "outgrowth-length", natural))
    if word(v, "bristles") != "none":
        out += lips.bristles(head, word(v, "bristles"), given(v, "bristle-length", 0.10 * head.width))
    if head.lip_shape == "frilled":
        out += lips.frill(head)
    if head.lip_shape == "capped":
        out += lips.cap(head)
    elif head.spear == "stylet":
        out += lips.frame(head)
    if word(v, "amphid") != "none":
        out += lips.amphid(head, word(v, "amphid"))
    return out


def _old_skin(head: Head) -> list[Shape]:
    """The skin being cast, with the front of the old spear still hanging in it."""
    gap = 0.06 * head.width
    out = body.loose_skin(head, gap, "loose-skin")
    if head.spear == "stylet":
        half, top = stylets.stylet_half(head), -1.5 * gap + 0.1 * head.lip
        out.append(pen.filled(((0.0, top), (half, top + 0.5 * head.spear_length), (-half, top + 0.5 * head.spear_length)), "spear"))
    return out


def conflicts(v: Values) -> list[str]:
    """What cannot be true together of one head."""
    out = []
    width = num(v, "width")
    mouth = v["stoma-width"]
    if mouth is not None and float(mouth) > 0.6 * width:
        out.append(f"stoma-width {float(mouth):g} µm is too wide for a body {width:g} µm wide (at most {0.6 * width:g} µm)")
    lip = v["lip-width"]
    if lip is not None and float(lip) > width:
        out.append(f"lip-width {float(lip):g} µm is wider than the body ({width:g} µm)")
    length = v["gullet-length"]
    if length is not None:
        least = shortest_gullet(measure(v))
        if float(length) < least:
            out.append(f"gullet-length {float(length):g} µm leaves no room behind the mouthpart (at least {least:.0f} µm)")
    if v["two-spears"] and word(v, "spear") != "odontostyle":
        out.append("two-spears is for a young dorylaim: it needs spear: odontostyle")
    return out


KIND = Kind(
    "nematode-head",
    "head of a nematode from the side, back to the right, with mouthpart and gullet",
    (
        um("width", 25, 5, 200, "greatest body width"),
        choice("reach", ("mouth", "gullet"), "how far back the picture goes: a little behind the mouthpart, or past the gullet's bulb"),
        choice(
            "lip-shape",
            ("smooth", "offset", "angular", "disc", "frilled", "capped"),
            "outline of the lip region; capped = stiff dark head framework",
        ),
        um("lip-width", None, 2, 150, "width across the lips; worked out from the body width if left out"),
        choice(
            "stoma",
            ("open-tube", "flared-tube", "jointed-tube", "wide-cup", "funnel", "minute", "unseen", "barrel", "closed", "slit"),
            "mouth cavity where no spear fills it",
        ),
        um("stoma-length", None, 0.5, 200, "length of the mouth cavity"),
        um("stoma-width", None, 0.3, 60, "width of the mouth cavity"),
        choice("lips", ("none", "low", "points", "flaps", "forked", "fringed"), "outgrowths in front of the mouth"),
        um("outgrowth-length", None, 0.5, 30, "length of the outgrowths"),
        choice("bristles", ("none", "four", "ring"), "bristles on the head"),
        um("bristle-length", None, 0.5, 40, "length of the bristles"),
        choice("amphid", ("none", "round", "spiral"), "sense organ on the side of the head"),
        choice("spear", ("none", "stylet", "odontostyle", "onchiostyle", "mural-tooth"), "kind of spear"),
        um(
            "spear-length",
            16,
            3,
            220,
            "stylet from tip to base of knobs; odontostyle without its extension; onchiostyle from tip to base in a straight line",
        ),
        um("spear-width", None, 0.2, 12, "thickness of the spear (shaft of a stylet)"),
        choice("knobs", ("none", "faint", "tiny", "distinct"), "swellings at the base of a stylet", "distinct"),
        choice("knob-shape", ("round", "tulip", "anchor"), "tulip: drawn out forward; anchor: broad and flat, pointing forward"),
        um("odontophore-length", None, 0, 200, "extension behind an odontostyle"),
        choice("odontophore-base", ("plain", "flanged", "knobbed"), "end of the extension"),
        amount("aperture", 0.3, 0.1, 0.85, "opening of an odontostyle as a share of its length"),
        choice("guiding-ring", ("none", "single", "double"), "ring round an odontostyle", "single"),
        um("guiding-ring-at", None, 1, 250, "distance of the guiding ring from the front of the head"),
        choice(
            "tooth",
            ("none", "small", "pair", "hook", "large-dorsal", "basal-dorsal", "three", "three-forward", "movable", "front-hooks"),
            "tooth inside the mouth cavity; pair: two small ones deep in a cup; "
            "three points back, three-forward points to the mouth; front-hooks: small "
            "hooks at the front of a tube",
        ),
        choice("denticles", ("none", "thickening", "ridge", "rows"), "on the wall facing the tooth: a smooth thickening, or small points"),
        choice("rings", ("none", "fine", "coarse", "scaled"), "rings of the skin; scaled: coarse ones with scales or spines"),
        choice(
            "state", ("normal", "moulting", "sheathed"), "moulting: doubled skin, front of the spear shed; sheathed: a loose second skin"
        ),
        flag("two-spears", "a second spear waiting in the gullet (young dorylaim)"),
        choice(
            "gullet",
            (
                "thin",
                "none",
                "rhabditoid",
                "diplogastroid",
                "tylenchoid",
                "aphelenchoid",
                "criconematoid",
                "dorylaimoid",
                "mononchoid",
                "cylindrical",
                "trichodorid",
            ),
            "type of gullet",
        ),
        um("gullet-length", None, 20, 1500, "from the front of the head to the end of the part that matters"),
        accent(*PARTS),
    ),
    build,
    conflicts,
)
