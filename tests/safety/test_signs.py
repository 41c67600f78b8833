"""Every danger sign ends in its stop: alone, with every other, by every way it can be raised, for every role."""

import pytest

from assistant.interview.script import Script
from assistant.knowledge.model import Knowledge
from assistant.wording.languages import Languages
from assistant.wording.sentences import Sentences
from tests.safety import still_open, trade
from tests.safety.exhaustive import play, sign_scripts
from tests.safety.fast import CALM, DANGEROUS, Fast
from tests.safety.heard import TYPED, unheard
from tests.safety.steps import sends_to_a_switch
from tests.safety.switches import steps_to_a_switch


def test_the_rules_say_no_less_than_the_trade(knowledge: Knowledge) -> None:
    assert list(trade.breaches(knowledge)) == []


@pytest.mark.parametrize(
    ("role", "supposed"),
    [("householder", CALM), ("agent", CALM), ("engineer", CALM), ("householder", DANGEROUS)],
)
def test_each_sign_with_each_other_and_each_answer_ends_in_its_stop(
    knowledge: Knowledge, role: str, supposed: int
) -> None:
    fast = Fast(knowledge, role)
    scripts = list(sign_scripts(fast))
    played = play(fast, scripts, supposed=supposed)
    assert len(scripts) > len(knowledge.signs) ** 2 * 4
    assert played.broken == {}
    assert all((played.talks.reached[number] > 0).any() for number in range(len(fast.codes.signs)))


def test_danger_typed_in_the_middle_of_something_else_is_heard(script: Script, languages: Languages) -> None:
    assert set(TYPED) >= set(script.knowledge.signs), "each sign needs a sentence here"
    assert list(unheard(script, languages)) == []


def test_after_fire_gas_or_co_no_step_sends_to_a_switch(knowledge: Knowledge, sentences: Sentences) -> None:
    """The exceptions are what is still open in the rules; a mended one must leave the list."""

    def text_of(step: str) -> str:
        return sentences.wording.say(f"step-{step}", **sentences.lines)

    assert set(steps_to_a_switch(knowledge, text_of)) == set(still_open.STEPS)


@pytest.mark.parametrize(
    ("text", "sends"),
    [
        ("Go to the fuse box. Switch off the breaker.", True),
        ("Turn the oven's knobs to off, if you can do it safely.", True),
        ("Only if the fire is out: switch off at the wall.", True),
        ("Use the main switch.", True),
        ("Do not touch any electrical switch, on or off.", False),
        ("If you also smell gas, touch no switch.", False),
        ("Do not switch it on again to see.", False),
        ("Leave the oven off.", False),
    ],
)
def test_words_that_send_to_a_switch_are_known(text: str, sends: bool) -> None:
    assert sends_to_a_switch(text) is sends
