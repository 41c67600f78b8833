"""What follows from answers: an oven's parts, the facts that findings read, the reports that belief weighs."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime

import pytest

from assistant.interview.assess import assess, evidence_of, facts_of, kind_of_oven, parts_not_fitted
from assistant.interview.commands import GiveAnswer, SayNotSure, WithdrawAnswer
from assistant.interview.script import Script, script_of
from assistant.interview.state import Answer
from assistant.knowledge.danger_questions import danger_questions, with_told_signs
from assistant.knowledge.model import Choice, Figure, Knowledge, Ovens
from tests.conftest import Begin


def answers(**given: str | tuple[str, ...]) -> Mapping[str, Answer]:
    told = enumerate(given.items(), 1)
    return {q: Answer(q, "answered", value, number, datetime.min) for number, (q, value) in told}


# The parts of an oven


def test_a_kind_of_oven_lacks_what_it_never_has(knowledge: Knowledge) -> None:
    for kind, oven in knowledge.ovens.kinds.items():
        told = answers(which_appliance=kind)
        assert kind_of_oven(told, knowledge) == kind
        assert parts_not_fitted(told, knowledge) == set(oven.has_not)


def test_an_electric_oven_of_no_kind_lacks_nothing_that_is_known(knowledge: Knowledge) -> None:
    told = answers(which_appliance="electric_oven")
    assert kind_of_oven(told, knowledge) is None
    assert parts_not_fitted(told, knowledge) == frozenset()


def test_functions_use_other_parts_in_other_kinds_of_oven(knowledge: Knowledge) -> None:
    """Heat from above comes from the grill's heater in an oven on a table, so that it has no heater above besides."""
    functions = ("conventional", "base_only")
    on_a_table = parts_not_fitted(answers(which_appliance="table_top", functions_on_oven=functions), knowledge)
    built_in = parts_not_fitted(answers(which_appliance="built_in_knobs", functions_on_oven=functions), knowledge)
    assert "top_element" in on_a_table
    assert "grill_element" not in on_a_table
    assert "top_element" not in built_in
    assert "grill_element" in built_in
    assert {"ring_element", "oven_fan"} <= on_a_table & built_in


def test_a_function_that_was_named_gives_back_a_part_that_the_kind_is_said_to_lack(knowledge: Knowledge) -> None:
    ovens = knowledge.ovens
    without_fan = ovens.kinds["built_in_knobs"].model_copy(update={"has_not": ("oven_fan",)})
    kinds = {**ovens.kinds, "built_in_knobs": without_fan}
    changed = knowledge.model_copy(update={"ovens": Ovens(parts=ovens.parts, functions=ovens.functions, kinds=kinds)})
    assert "oven_fan" in parts_not_fitted(answers(which_appliance="built_in_knobs"), changed)
    told = answers(which_appliance="built_in_knobs", functions_on_oven=("conventional", "fan_with_ring"))
    assert "oven_fan" not in parts_not_fitted(told, changed)


def test_a_kind_with_knobs_excludes_what_only_digits_have(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], which_appliance="built_in_knobs")
    belief = conversation.assessment.posterior
    assert belief.of("sensor_open") == belief.of("control_board_failed") == 0
    assert belief.of("thermostat_stuck_closed") > 0
    conversation.do(GiveAnswer("which_appliance", "built_in_digits"))
    belief = conversation.assessment.posterior
    assert belief.of("thermostat_stuck_closed") == 0
    assert belief.of("sensor_open") > 0


def test_what_is_not_found_in_a_region_is_in_no_oven_there(begun: Begin, script: Script) -> None:
    state = begun(danger_now=["none"]).state
    for region, entry in script.knowledge.regions.items():
        assert assess(script, replace(state, region=region)).not_fitted == set(entry.has_not)
    british, german = (assess(script, replace(state, region=name)).posterior for name in ("great_britain", "germany"))
    assert british.of("phase_lost") == 0 < german.of("phase_lost")


# Facts


def test_facts_that_no_finding_reads_do_not_reach_the_engine(begun: Begin, script: Script) -> None:
    """The others do, and lead to the same findings as all facts together."""
    told = {"what_goes_wrong": ["pale_below"], "underside_pale": "white_or_raw", "whose_oven": "own", "age_of_oven": 6}
    seen: list[Mapping[str, str | float]] = []

    class Spying:
        def evaluate(self, facts: Mapping[str, str | float]) -> object:
            seen.append(facts)
            return script.evaluator.evaluate(facts)

    state = begun(danger_now=["none"], **told).state
    found = assess(replace(script, evaluator=Spying()), state)  # type: ignore[arg-type]
    everything = facts_of(state.answers, script.knowledge)
    (given,) = seen
    assert given == {key: value for key, value in everything.items() if key in script.keys_read}
    assert given.keys() < everything.keys()
    assert found.trace.concluded == script.evaluator.evaluate(everything).concluded


# Reports


def test_what_is_not_named_counts_only_where_all_are_gone_through(knowledge: Knowledge) -> None:
    assert knowledge.questions["how_it_is_used"].all_gone_through
    assert not knowledge.questions["what_goes_wrong"].all_gone_through
    found = evidence_of(answers(how_it_is_used=("door_opened",), what_goes_wrong=("too_hot",)), knowledge)
    of_use = {key: code for key, code in found.items() if key.startswith("how_it_is_used")}
    ways = [c for c, choice in knowledge.questions["how_it_is_used"].choices.items() if choice.said_when]
    assert {key.split("__")[1] for key in of_use} == set(ways)
    assert [key for key, code in of_use.items() if code == "yes"] == ["how_it_is_used__door_opened__door_opened"]
    assert {key.split("__")[1] for key in found if key.startswith("what_goes_wrong")} == {"too_hot"}


def test_none_of_them_says_no_to_each(begun: Begin) -> None:
    conversation = begun(danger_now=["none"])
    before = conversation.assessment
    conversation.do(GiveAnswer("how_it_is_used", ["none"]))
    after = conversation.assessment
    said = {key: code for key, code in after.evidence.items() if key not in before.evidence}
    assert set(said.values()) == {"no"}
    assert {key.split("__")[0] for key in said} == {"how_it_is_used"}
    assert after.posterior.of("no_preheat") < before.posterior.of("no_preheat")
    conversation.do(SayNotSure("how_it_is_used"))
    assert conversation.assessment.evidence == before.evidence


SCORCHED = "scorched_plug_or_switch"


def reports_of_scorching(begun: Begin, **told: object) -> dict[str, str]:
    evidence = begun(**told).assessment.evidence
    return {key: code for key, code in evidence.items() if key.endswith("__scorch")}


def test_a_danger_sign_told_twice_counts_once_for_each_observable(begun: Begin) -> None:
    once = reports_of_scorching(begun, danger_now=[SCORCHED])
    assert once == {f"danger_now__{SCORCHED}__scorch": "yes"}
    assert reports_of_scorching(begun, danger_now=[SCORCHED], look_over=["scorch_marks"]) == once
    one, other = (
        begun(**told).assessment.posterior
        for told in (
            {"danger_now": [SCORCHED], "look_over": ["scorch_marks"]},
            {"look_over": ["scorch_marks"], "danger_now": [SCORCHED]},
        )
    )
    assert one.probabilities == pytest.approx(other.probabilities, abs=1e-15)


def test_a_danger_sign_counts_as_its_own_question_says(begun: Begin, knowledge: Knowledge) -> None:
    means = knowledge.signs[SCORCHED].answers
    stop, clear = (next(answer for answer, meant in means.items() if meant == kind) for kind in ("stop", "clear"))
    own = f"sign_{SCORCHED}"
    told = {"danger_now": [SCORCHED], "look_over": ["scorch_marks"]}
    assert reports_of_scorching(begun, **told, **{own: stop}) == {f"{own}__{stop}__scorch": "yes"}
    assert reports_of_scorching(begun, **told, **{own: clear}) == {}
    conversation = begun(**told, **{own: clear})
    conversation.do(WithdrawAnswer(own))
    assert f"danger_now__{SCORCHED}__scorch" in conversation.assessment.evidence


def test_danger_signs_that_nobody_named_on_the_first_screen_speak_against(knowledge: Knowledge) -> None:
    found = evidence_of(answers(danger_now=("none",)), knowledge)
    on_screen = {s for s, sign in knowledge.signs.items() if sign.on_screen and sign.told_when}
    assert {key.split("__")[1] for key in found} == on_screen
    assert set(found.values()) == {"no"}


def test_a_sign_that_is_raised_elsewhere_was_not_left_unnamed(knowledge: Knowledge) -> None:
    """Whichever came first: told once, it isn't also not told."""
    told = {"danger_now": ("none",), "look_over": ("scorch_marks",)}
    for given in (told, dict(reversed(told.items()))):
        found = evidence_of(answers(**given), knowledge)
        assert {key: code for key, code in found.items() if key.endswith("__scorch")} == {
            "look_over__scorch_marks__scorch": "yes"
        }


def test_two_signs_that_speak_of_one_observable_both_count(knowledge: Knowledge) -> None:
    figure = Figure(value=5, unit="percent", source="a test")
    said = {"scorch": {"none": figure, "marks": figure.model_copy(update={"value": 50})}}
    signs = {
        **knowledge.signs,
        SCORCHED: knowledge.signs[SCORCHED].model_copy(update={"told_when": said}),
        "sparks": knowledge.signs["sparks"].model_copy(update={"told_when": said}),
    }
    questions = {q: with_told_signs(question, signs) for q, question in knowledge.questions.items()}
    changed = knowledge.model_copy(update={"questions": {**questions, **danger_questions(signs)}, "signs": signs})
    found = evidence_of(answers(danger_now=(SCORCHED, "sparks")), changed)
    assert {key for key in found if key.endswith("__scorch")} == {
        f"danger_now__{SCORCHED}__scorch",
        "danger_now__sparks__scorch",
    }
    assert set(found) <= set(script_of(changed).evidence_model.report_given)


def test_a_sign_that_its_own_question_may_clear_is_no_evidence_before(knowledge: Knowledge) -> None:
    assert knowledge.signs["trips"].grade == "narrow"
    told = "danger_now__trips__trips_when"
    assert told not in evidence_of(answers(danger_now=("trips",)), knowledge)
    asked = evidence_of(answers(danger_now=("trips",), sign_trips="went_again"), knowledge)
    assert [key for key in asked if key.endswith("__trips_when")] == ["sign_trips__went_again__trips_when"]


def test_of_an_answer_that_signals_nothing_each_observable_counts(knowledge: Knowledge) -> None:
    plain = Choice(said_when=knowledge.questions["how_it_is_used"].choices["from_cold"].said_when)
    both = {"from_cold": plain, "as_printed": plain}
    screen = knowledge.questions["how_it_is_used"].model_copy(update={"choices": both})
    changed = knowledge.model_copy(update={"questions": {"how_it_is_used": screen}})
    found = evidence_of(answers(how_it_is_used=("from_cold", "as_printed")), changed)
    assert found == {f"how_it_is_used__{choice}__preheated": "yes" for choice in both}
