"""No message of any language tells a householder to do what only somebody qualified may do."""

from pathlib import Path

import pytest

from assistant.knowledge.model import Knowledge
from assistant.wording.locale import languages
from assistant.wording.pseudo import PSEUDO_LANG, pseudo_resource
from tests.conftest import ROOT
from tests.safety.forbidden import FOR_ENGINEERS, FORBIDDEN, forbidden_in, forbidden_sentences, sentences_of
from tests.safety.trade import is_beyond_home

FORBIDDEN_SENTENCES = {
    "a panel, cover or screw removed": [
        "Remove the back panel and look at the fan.",
        "Take the rear cover off.",
        "Take off the cover.",
        "Undo the two screws at the bottom.",
        "Unscrew it.",
        "Don't worry, remove the panel.",
        "Do not hesitate to remove the panel.",
        "First switch it off, then unscrew the back.",
        "You can take the oven apart.",
        "Never mind the dust: pull the inner panel away.",
        "Do not use the grill and remove the cover.",
        "Do not worry, remove the panel or call.",
        "Do not use the grill, then remove the cover or the screws.",
    ],
    "terminals or wires touched or looked at": [
        "Touch the wires.",
        "Look at the terminals for brown marks.",
        "Tighten the connections.",
        "Check the wiring behind it.",
        "Push the loose cable back.",
        "Nothing to lose, wiggle the connector.",
    ],
    "a meter used": [
        "Use a multimeter.",
        "With a meter, read the value.",
        "Measure the resistance.",
        "Test for voltage at the plug.",
        "A mains tester tells you more.",
        "Check the voltage.",
        "Don't be afraid to use a tester.",
    ],
    "the oven moved out of its place": [
        "Pull the oven out.",
        "Slide the oven forward a little.",
        "Pull the oven a little way out of its housing.",
        "Move it away from the wall.",
        "Look behind the oven.",
        "If it is light, lift the cooker out.",
        "Pull out the oven.",
    ],
    "the oven tilted": ["Tilt the oven.", "Tip it slightly to one side."],
    "a cut-out reset": [
        "Reset the cut-out.",
        "Press the small reset button.",
        "Push the safety switch back in.",
        "Bypass the thermal cutout.",
    ],
    "a breaker held in": [
        "Hold the breaker in.",
        "Keep the switch on with tape.",
        "Fit a bigger fuse.",
        "Put the breaker back several times.",
        "Switch it on again until it stays.",
    ],
    "another socket": [
        "Try another socket.",
        "Plug it into a different socket.",
        "Use an extension lead.",
        "Change the fuse.",
        "Rewire the plug.",
    ],
    "self-cleaning as a test": [
        "Run the self-cleaning to see whether it heats.",
        "Start a pyrolytic cycle.",
        "Try the cleaning cycle.",
    ],
    "a locked door forced": ["Force the locked door.", "Prise the door open.", "Break the latch."],
    "a door refitted or lifted off": [
        "Lift the door off.",
        "Take the oven door off its hinges.",
        "Refit the door.",
        "Bend the hinge a little.",
        "Remove the door.",
        "Lift the door and push.",
    ],
    "a probe bent or clipped": [
        "Bend the probe back.",
        "Clip the thin rod in.",
        "Push the sensor into its clips.",
        "Put the probe back in its clip.",
    ],
    "a heater or part touched or changed": [
        "Touch the heater.",
        "Replace the element.",
        "Spin the fan by hand.",
        "Press the relay.",
    ],
    "a bulb changed": ["Change the bulb.", "When it is cold, replace the bulb."],
    "run dry": ["Run it dry.", "Run the boiler dry."],
    "looked into hot": ["Hold a hand inside.", "Put your hand into the oven."],
    "water on fire or live parts": ["Pour water on it.", "Throw some water over the flames."],
    "tried again to see": ["Switch it on again to see.", "Touch the oven again to find out."],
}

ALLOWED_SENTENCES = [
    "Never pull the oven out.",
    "Please take no panel off and don't pull the oven out.",
    "Do not remove the cover, touch wires or use a meter.",
    "Do not lift the door, hold it up or put it back.",
    "Nobody should remove a panel.",
    "Do not bend or refit the door.",
    "Please do not try to bend or refit the hinge.",
    "Let an engineer remove the panel.",
    "Only an electrician may check the wiring.",
    "An appliance engineer will measure the resistance.",
    "Leave the oven where it is. Do not pull it out to reach a plug.",
    "Do not hold it in, and do not try another socket.",
    "Do not switch it on again to see.",
    "If you can reach the gas meter easily, turn the gas off there.",
    "The back panel or the cover of the light is missing.",
    "Look, do not touch. The rod hangs loose.",
    "With the oven off, turn the temperature knob.",
    "With dry hands, put the breaker back once.",
    "Turn the switch on with dry hands.",
    "Take out the foil, stone or tin from the oven floor.",
    "With the oven cold, move the shelf.",
    "Is anything caught in the door? Take it away and shut the door gently.",
    "Shut the door on the paper and pull gently.",
    "The oven was moved or newly fitted.",
    "It has to be measured or mended inside the oven.",
    "Water came in, lightning struck, or mice chewed a cable.",
    "Take off the child lock. Often you hold one button for a few seconds.",
    "You only look, and take nothing apart.",
    "Do not open it or hold a hand inside.",
    "Do not use water, and do not go back to look.",
    "Switch it off at the fuse box.",
    "Press one corner gently.",
    "When it is cold, and off at the wall, change the bulb if its cover is whole.",
    "A safety switch cuts the heat when it gets too hot.",
    "The heater below works, so the heater itself is whole.",
]

LANGS = (*languages(ROOT / "locales"), PSEUDO_LANG)


@pytest.mark.parametrize("deed", FORBIDDEN)
def test_every_forbidden_deed_is_found_in_all_its_examples(deed: str) -> None:
    assert FORBIDDEN_SENTENCES[deed], "a deed without an example is not tested"
    for sentence in FORBIDDEN_SENTENCES[deed]:
        assert deed in {found.deed for found in forbidden_in(sentence)}, sentence


@pytest.mark.parametrize("sentence", ALLOWED_SENTENCES)
def test_what_is_denied_or_harmless_is_not_found(sentence: str) -> None:
    assert forbidden_in(sentence) == ()


def test_a_forbidden_sentence_between_allowed_ones_is_found() -> None:
    for told in (sentence for examples in FORBIDDEN_SENTENCES.values() for sentence in examples):
        assert forbidden_in(f"Never pull the oven out. {told} It is safe to do yourself."), told


def test_a_forbidden_sentence_is_found_in_the_marked_language_too() -> None:
    for told in (sentence for examples in FORBIDDEN_SENTENCES.values() for sentence in examples):
        marked = dict(sentences_of(pseudo_resource(f"act-a = Look.\n    .how = {told}\n")))
        assert forbidden_in(marked["act-a.how"]), told


def test_a_sentence_in_a_variant_of_a_message_is_read() -> None:
    text = "act-a = { $n ->\n    [one] Look.\n   *[other] Unscrew it.\n }\n"
    assert [forbidden_in(value) != () for _, value in sentences_of(text)] == [True]


def test_what_people_type_is_not_read_and_what_they_are_told_is() -> None:
    text = "sign-a = A sign\n    .phrases = remove the panel\n    .how = Look.\nquestion-test_a = Use a multimeter.\n"
    text += "question-b = Look.\n    .engineer = Measure the resistance.\n"
    assert dict(sentences_of(text)) == {"sign-a": "A sign", "sign-a.how": "Look.", "question-b": "Look."}


@pytest.mark.parametrize("lang", LANGS)
def test_no_message_tells_a_householder_what_is_forbidden(lang: str) -> None:
    assert forbidden_sentences(ROOT / "locales", lang) == {}


def test_only_what_is_beyond_home_is_passed_over(knowledge: Knowledge) -> None:
    """A message for engineers alone belongs to a question of a care that nobody at home is asked for."""
    for question_id, question in knowledge.questions.items():
        passed_over = f"question-{question_id}".startswith(FOR_ENGINEERS["message"])
        assert not passed_over or is_beyond_home(question.care), question_id


@pytest.mark.parametrize("lang", LANGS)
def test_all_messages_of_a_language_are_read(lang: str) -> None:
    source = "en-GB" if lang == PSEUDO_LANG else lang
    texts = [path.read_text("utf-8") for path in sorted(Path(ROOT / "locales" / source).glob("*.ftl"))]
    assert sum(1 for text in texts for _ in sentences_of(text)) > 500
