"""The steps after a stop agree with each other: warnings before switches, the main switch last and never unasked."""

import itertools

from assistant.interview.choice import steps_for, steps_in_parts
from assistant.interview.danger import Stop
from assistant.knowledge.model import Knowledge
from assistant.wording.sentences import Sentences

SWITCHES = ("knob_to_off", "off_at_wall", "shock_off_at_breaker", "breaker_first", "off_at_breaker", "off_at_main")
WARNINGS = ("not_the_wall_switch", "leave_breaker_off", "only_a_dry_board", "dry_hands", "smoke_grows_call")


def test_the_steps_of_every_sign_keep_the_order_of_their_file(knowledge: Knowledge) -> None:
    order = list(knowledge.steps)
    for sign_id, sign in knowledge.signs.items():
        assert list(sign.steps) == sorted(sign.steps, key=order.index), sign_id


def test_no_switch_is_touched_before_the_warnings(knowledge: Knowledge) -> None:
    order = list(knowledge.steps)
    assert max(map(order.index, WARNINGS)) < min(map(order.index, SWITCHES))


def test_the_main_switch_is_the_last_switch_and_is_asked_about_first(knowledge: Knowledge) -> None:
    with_main = [sign.steps for sign in knowledge.signs.values() if "off_at_main" in sign.steps]
    assert len(with_main) > 10
    for steps in with_main:
        main = steps.index("off_at_main")
        assert steps[main - 1] == "ask_before_main"
        assert not set(steps[main + 1 :]) & set(SWITCHES)


def test_who_depends_on_power_hears_whom_to_call(sentences: Sentences, knowledge: Knowledge) -> None:
    network = knowledge.regions["great_britain"].lines["network_operator"].number
    for step in ("ask_before_main", "lights_call_network", "only_a_dry_board"):
        assert network in sentences.wording.say(f"step-{step}", **sentences.lines), step


def test_medical_advice_follows_at_once_after_touching_nothing(knowledge: Knowledge) -> None:
    steps = knowledge.signs["shock"].steps
    assert steps[steps.index("shock_touch_nothing") + 1] == "shock_medical"


def test_with_flames_and_gas_everybody_is_out_first(knowledge: Knowledge) -> None:
    stops = tuple(Stop(sign_id, "sign", sign_id, 1) for sign_id in ("fire", "gas_smell", "sparks"))
    steps = steps_for(knowledge, stops)
    assert steps[:2] == ("fire_out", "fire_call")
    assert "gas_no_switch" in steps


def test_with_a_smell_of_gas_no_step_of_any_sign_touches_a_switch(knowledge: Knowledge) -> None:
    for other in knowledge.signs:
        stops = sorted({"gas_smell", other}, key=lambda sign_id: knowledge.signs[sign_id].order)
        steps = steps_for(knowledge, tuple(Stop(sign_id, "sign", sign_id, 1) for sign_id in stops))
        assert not set(steps) & {*SWITCHES, "fire_off_if_safe", "cautious_off", "ask_before_main", "lights_off_at_main"}


def test_of_two_signs_warnings_come_first_and_nothing_is_told_that_one_of_them_rules_out(knowledge: Knowledge) -> None:
    order = list(knowledge.steps)
    by_gravity = sorted(knowledge.signs, key=lambda sign_id: knowledge.signs[sign_id].order)
    for one, other in itertools.combinations(by_gravity, 2):
        steps = steps_for(knowledge, (Stop(one, "sign", one, 1), Stop(other, "sign", other, 1)))
        ruled_out = _ruled_out(knowledge, one, other)
        assert list(steps) == sorted(steps, key=order.index)
        assert not set(steps) & ruled_out
        for step in {*knowledge.signs[one].steps, *knowledge.signs[other].steps} - ruled_out:
            assert step in steps or not knowledge.steps[step].touches_nothing, (one, other, step)


def test_the_parts_of_the_steps_are_the_steps_in_their_order_and_switches_stand_in_the_middle(
    knowledge: Knowledge,
) -> None:
    by_gravity = sorted(knowledge.signs, key=lambda sign_id: knowledge.signs[sign_id].order)
    parted = 0
    for signs in (*((sign,) for sign in by_gravity), *itertools.combinations(by_gravity, 2)):
        stops = tuple(Stop(sign, "sign", sign, 1) for sign in signs)
        parts = steps_in_parts(knowledge, stops)
        assert (*parts.first, *parts.until_off, *parts.then) == steps_for(knowledge, stops)
        if "lights_dim_elsewhere" in signs:
            assert parts.until_off == ()
        else:
            assert not {*parts.first, *parts.then} & {*SWITCHES, "check_dark", "ask_before_main"}
            parted += bool(parts.until_off and parts.first and parts.then)
    assert parted > 50


def _ruled_out(knowledge: Knowledge, *sign_ids: str) -> set[str]:
    return {s for sign in sign_ids for step in knowledge.signs[sign].steps for s in knowledge.steps[step].rules_out}
