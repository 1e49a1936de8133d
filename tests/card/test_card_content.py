"""What stands on a card, read back from its text in reading order."""

from __future__ import annotations

import re

import pytest
from pdf_marks import pages

from keytool.card import NoSuchLetter, NotInLibrary, card
from keytool.card.content import CANNOT_TELL
from keytool.library.wording import mark, plain, quantity_words


def words_of(data: bytes) -> str:
    return squeezed(" ".join(page.words for page in pages(data)))


def squeezed(text: str) -> str:
    """Without spaces and basis marks, which stand raised beside the figures they belong to."""
    return re.sub(r"[\s\u00a0●◐○◌=]", "", text)


def test_every_question_and_lead_stands_in_reading_order(library, real_key: str, real_card: bytes) -> None:
    words = words_of(real_card)
    at = 0
    for couplet in library.keys[real_key].couplets.values():
        for text in (f"{couplet.number}{couplet.asks}", *(lead.text for lead in couplet.leads.values())):
            found = words.find(squeezed(plain(library, text)), at)
            assert found >= at, f"couplet {couplet.number}: '{text}' is missing or out of order"
            at = found + 1


def test_every_lead_says_where_it_goes(library, real_key: str, real_card: bytes) -> None:
    key = library.keys[real_key]
    words = words_of(real_card)
    at = 0
    for couplet in key.couplets.values():
        for lead in couplet.leads.values():
            if lead.couplet:
                wanted = f"→{key.couplets[lead.couplet].number}"
            else:
                wanted = f"→key:{library.keys[lead.key].title}" if lead.key else library.entries[lead.end].name
            at = words.find(squeezed(wanted), words.find(squeezed(plain(library, lead.text)), at))
            assert at >= 0, f"couplet {couplet.number}, '{lead.text}'"


def test_ends_say_what_they_eat_and_what_would_tell(library, real_key: str, real_card: bytes) -> None:
    words = words_of(real_card)
    key = library.keys[real_key]
    ends = [library.entries[lead.end] for couplet in key.couplets.values() for lead in couplet.leads.values() if lead.end]
    assert ends
    for entry in ends:
        name = squeezed(entry.name)
        if entry.kind == "cannot-be-told":
            assert f"CANNOTBETOLD{name}" in words
            assert squeezed(f"Would tell: {plain(library, entry.would_tell)}") in words
        shorts = list(dict.fromkeys(short for each in entry.feeding if (short := library.vocabulary["feeding"][each].get("short"))))
        if 0 < len(shorts) <= 3:
            assert name + squeezed(" or ".join(shorts)) in words
        elif shorts:
            assert f"{name}MANYDIETS" in words


def test_every_caution_of_the_key_and_its_ends_stands_in_full(library, real_key: str, real_card: bytes) -> None:
    words = words_of(real_card)
    key = library.keys[real_key]
    ends = [library.entries[lead.end] for couplet in key.couplets.values() for lead in couplet.leads.values() if lead.end]
    for id in {*key.cautions, *(each for entry in ends for each in entry.cautions)}:
        caution = library.cautions[id]
        assert squeezed(f"⚠{caution.title}{plain(library, caution.brief)}") in words


def test_ends_for_the_laboratory_are_marked(library, real_cards) -> None:
    key = library.keys["nematode-mouthparts"]
    words = words_of(real_cards["nematode-mouthparts"])
    title = squeezed(library.cautions["send-to-laboratory"].title)
    marked = [
        lead
        for couplet in key.couplets.values()
        for lead in couplet.leads.values()
        if lead.end and "send-to-laboratory" in library.entries[lead.end].cautions
    ]
    assert marked
    assert words.count(f"⚠{title}") == len(marked) + 1, "one at each such end, and the caution itself"


def test_steps_marks_licence_and_cannot_tell_are_there(library, real_key: str, real_card: bytes) -> None:
    data = real_card
    for step in library.keys[real_key].before:
        assert squeezed(plain(library, step)) in words_of(data)
    for number, page in enumerate(pages(data), 1):
        words = squeezed(page.words)
        assert f"side{number}of{len(pages(data))}" in words
        assert "CCBY4.0" in words and f"wetmount{library.version}" in words
        assert squeezed("".join(run.text for run in CANNOT_TELL)) in words
        for kind in library.vocabulary["basis"].values():
            assert squeezed(kind.label) in words


def test_thresholds_carry_their_mark(buttons) -> None:
    wanted = quantity_words(quantity := buttons.quantities["wide-button"]) + mark(buttons, quantity.basis)
    text = "".join(page.words for page in pages(card(buttons, ["buttons"], "A4")))
    assert re.sub(r"\s", "", f"Wide, {wanted} or more") in re.sub(r"\s", "", text)


def test_your_own_field_diameters_replace_the_example(library) -> None:
    without = words_of(card(library, ["first-look"], "A4"))
    assert "forexamplewithfieldnumber18:at40×(4×objective)4.5mm·at100×(10×objective)1.8mm·at400×(40×objective)0.45mm" in without
    given = words_of(card(library, ["first-look"], "A4", field_diameters={40: 0.462, 4: 4.61}))
    assert "Yourfieldofview:at40×(4×objective)4.61mm·at400×(40×objective)0.462mm." in given
    assert "forexamplewithfieldnumber" not in given


def test_the_address_is_printed_without_its_scheme(buttons) -> None:
    words = words_of(card(buttons, ["buttons"], "A4", site_address="https://tarn-end.example/soil/"))
    assert "tarn-end.example/soil·" in words and "https" not in words


def test_several_keys_each_begin_on_a_new_side(buttons) -> None:
    once = pages(card(buttons, ["buttons"], "A5"))
    twice = pages(card(buttons, ["buttons", "buttons"], "A5"))
    assert len(twice) == 2 * len(once)
    assert f"side {len(twice)} of {len(twice)}" in twice[-1].words


def test_an_unknown_key_is_named_with_those_there_are(buttons) -> None:
    with pytest.raises(NotInLibrary, match=r"'zips'.*buttons"):
        card(buttons, ["zips"], "A4")


def test_a_letter_the_type_lacks_is_named(buttons) -> None:
    from dataclasses import replace

    keys = {"buttons": replace(buttons.keys["buttons"], title="Knöpfe 釦")}
    with pytest.raises(NoSuchLetter, match=r"'釦'.*Knöpfe"):
        card(replace(buttons, keys=keys), ["buttons"], "A4")


def test_your_eyepiece_scale_is_printed_where_you_gave_it(buttons) -> None:
    assert "eyepiece scale" not in " ".join(page.words for page in pages(card(buttons, ["buttons"], "A4")))
    given = {"field_diameters": {40: 0.462}, "divisions": {40: 2.52, 4: 25}}
    for form in ("sheet", "halves", "quarters", "pocket"):
        words = words_of(card(buttons, ["buttons"], "A4", form=form, **given))
        assert "Yourfieldofview:at400×(40×objective)0.462mm." in words
        assert "Onedivisionofyoureyepiecescale:at40×(4×objective)25µm·at400×(40×objective)2.52µm." in words
        assert "forexamplewithfieldnumber" not in words


@pytest.mark.parametrize("form", ["sheet", "halves", "quarters"])
def test_cautions_licence_version_and_marks_stand_on_every_side(library, form: str) -> None:
    key = library.keys["naked-amoebae"]
    made = pages(card(library, [key.id], "A4", form=form, landscape=form == "sheet"))
    ends = [library.entries[lead.end] for couplet in key.couplets.values() for lead in couplet.leads.values() if lead.end]
    cautions = {id for entry in ends for id in entry.cautions} | set(key.cautions)
    assert cautions and len(made) > 1
    for page in made:
        words = squeezed(page.words)
        assert all(squeezed(library.cautions[id].title) in words for id in cautions)
        assert (
            "CCBY4.0" in words
            and f"wetmount{library.version}·entriesreviewedupto{max(e.reviewed for e in library.entries.values())}" in words
        )
        assert all(squeezed(kind.label) in words for kind in library.vocabulary["basis"].values())
