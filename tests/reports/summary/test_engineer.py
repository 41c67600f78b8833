"""Page one for the engineer: order, what is told, and what isn't known."""

import re
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from assistant.belief.hypotheses import SOMETHING_ELSE
from assistant.interview.events import Event, TextAnswered
from assistant.interview.first_visit import chance_of_first_visit
from assistant.interview.plan_of_tests import BEFORE_LIVE, MADE_FIRST
from assistant.interview.reasons import compared, holding_up, unexplained
from assistant.interview.script import Script
from assistant.interview.verdict import NONE
from assistant.reports.summary.as_text import as_text
from assistant.reports.summary.engineer import NONE_STANDS_OUT, SPEAKS_FIRST, engineer_summary
from assistant.reports.summary.session import Told
from assistant.reports.summary.test_plan import CLEARS, ROWS_FIRST, STILL_OPEN
from assistant.reports.summary.value import Items, Paragraph, Summary
from assistant.wording.sentences import Sentences
from tests.reports.summary.samples import FOOTING
from tests.reports.summary.told_cases import names, pairs, paragraphs, section, table, told_case, told_with

BASE_DEAD: Mapping[str, Any] = {
    "what_goes_wrong": ["pale_below"],
    "which_appliance": "built_in_knobs",
    "complaint_in_own_words": "Sponges are raw underneath.",
    "underside_pale": "white_or_raw",
    "how_it_began": "from_one_day",
    "which_dishes": "everything",
    "fan_cooks": "cooks_well",
    "bottom_heat_alone": "white_or_raw",
}
GATE = ["adult_stays", "no_child_or_pet_near", "no_home_oxygen", "oven_empty", "cooling_air_as_usual"]
WATCHED = {
    "person_at_oven": "yes",
    "may_look_cold": "off_and_cold",
    "look_over": ["none"],
    "ever_tripped": "never",
    "lamp_means": "lit_while_heating",
    "hot_gate": GATE,
    "lamp_watch": ("0:00 lit", "30:00 end"),
}
IDENTIFIED = {
    **BASE_DEAD,
    "person_at_oven": "yes",
    "may_look_cold": "off_and_cold",
    "make_and_model": "Ovenmaker 60",
    "serial_number": "0001 2345",
    "plate_power": 2700,
    "how_fitted": "tiled_in",
}


@pytest.fixture(scope="module")
def base_dead(script: Script, sentences: Sentences) -> Told:
    return told_with(script, sentences, BASE_DEAD)


def planned_rows(summary: Summary) -> tuple[tuple[str, ...], ...]:
    """Of page one and page two."""
    sections = [
        section(summary, "tests"),
        *(s for page in summary.pages for s in page.sections if s.name == "tests_then"),
    ]
    return tuple(row for each in sections for row in table(each).rows)


def test_page_one_is_in_the_order_in_which_it_is_needed(base_dead: Told) -> None:
    first, second = names(engineer_summary(base_dead))
    assert first == ["off", "oven", "said", "grid", "beside", "likely", "tests", "bring", "unknown"]
    assert second == ["how_to_test", "after_repair", "rests_on", "ruled_out", "all_causes", "answers"]


def test_the_customers_own_words_come_first_of_what_is_said(base_dead: Told) -> None:
    first, *_ = pairs(section(engineer_summary(base_dead), "said")).items()
    assert first == ("In their own words", "Sponges are raw underneath.")


def test_what_an_engineer_always_wants_and_nobody_told_is_named(base_dead: Told) -> None:
    summary = engineer_summary(base_dead)
    assert pairs(section(summary, "said"))["Not told"] == "Since when; What changed just before"
    assert pairs(section(summary, "beside"))["Not told"] == "Earlier repairs; Getting in"


def test_what_orders_parts_and_is_not_known_is_to_be_asked_before_ordering(base_dead: Told) -> None:
    oven = section(engineer_summary(base_dead), "oven")
    assert pairs(oven)["Not known"] == "Make and model; Serial number; Total power on the plate"
    assert paragraphs(oven)[0].startswith("Ask before ordering")


def test_what_is_known_of_the_oven_is_told_and_how_it_comes_out(script: Script, sentences: Sentences) -> None:
    oven = section(engineer_summary(told_with(script, sentences, IDENTIFIED)), "oven")
    known = pairs(oven)
    assert known["Make and model"] == "Ovenmaker 60"
    assert known["Serial number"] == "0001 2345"
    assert known["Total power on the plate"] == "2700 W"
    (comes_out,) = paragraphs(oven)
    assert comes_out.startswith("Built in, single: commonly two screws")
    assert comes_out.endswith("agree before the visit who may open that.")


@pytest.mark.parametrize(
    ("kind", "words"),
    [
        ("double_digits", "up to six screws in the frame, and two people"),
        ("cooker_knobs", "anti-tilt bracket that must go back"),
        ("table_top", "Stands on the worktop"),
        ("electric_oven", "How it is fitted isn't known"),
    ],
)
def test_how_it_comes_out_hangs_on_the_kind(script: Script, sentences: Sentences, kind: str, words: str) -> None:
    told = told_with(script, sentences, {**BASE_DEAD, "which_appliance": kind})
    assert words in paragraphs(section(engineer_summary(told), "oven"))[-1]


def test_a_cooker_gets_its_bracket_back_after_the_repair(script: Script, sentences: Sentences) -> None:
    def last_item(kind: str) -> str:
        told = told_with(script, sentences, {**BASE_DEAD, "which_appliance": kind})
        (items, _) = section(engineer_summary(told), "after_repair").blocks
        return str(items.items[-1])  # type: ignore[union-attr]

    assert last_item("cooker_knobs") == "The anti-tilt bracket back in its place."
    assert "bracket" not in last_item("built_in_knobs")


def test_nobody_asked_is_not_told_as_off(base_dead: Told) -> None:
    off = section(engineer_summary(base_dead), "off")
    assert paragraphs(off) == ["Nobody was asked to switch the oven off. It may be in use."]
    assert pairs(off) == {"Asked about danger signs": "none told"}


def test_danger_stands_first_with_its_time_whether_off_and_the_steps_on_page_two(
    script: Script, sentences: Sentences
) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"]})
    summary = engineer_summary(told)
    off = paragraphs(section(summary, "off"))
    assert off[0] == "Danger is or was in question, and nobody has said that the oven is off."
    assert off[1].startswith(sentences.wording.say("sign-shock", **sentences.lines) + " (told ")
    (steps,) = section(summary, "steps_told").blocks
    assert steps.items == sentences.verdict(told.verdict).steps  # type: ignore[union-attr]
    assert names(summary)[1][0] == "steps_told"


def test_who_confirmed_that_it_is_off_is_told_how_and_when(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"], "oven_is_off": "off_at_breaker"})
    first = paragraphs(section(engineer_summary(told), "off"))[0]
    how = sentences.choice("oven_is_off", "off_at_breaker")
    assert first.startswith(f"The customer says that it is off: {how} (")
    assert first.endswith("Nobody has checked that: prove dead.")


def test_a_sign_that_was_taken_back_is_told_all_the_same(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["sparks"]}, then={"danger_now": ["none"], "sign_sparks": "no"})
    assert not told.assessment.danger.stops
    off = paragraphs(section(engineer_summary(told), "off"))
    sign = sentences.wording.say("sign-sparks", **sentences.lines)
    assert off[0] == "Danger is or was in question, and nobody has said that the oven is off."
    assert any(words.startswith(f"Told and taken back: {sign} (last stood ") for words in off)
    assert names(engineer_summary(told))[1][0] == "steps_told"


def test_after_a_stop_nobody_is_told_that_nothing_is_wrong(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "agent_hears_of_burning_plastic_late")
    assert told.verdict.leading == NONE
    summary = engineer_summary(told)
    assert len(table(section(summary, "likely")).rows) == 3
    assert told.cause(NONE) not in as_text(summary, FOOTING)


def test_the_three_likeliest_stand_with_their_part_and_probability(base_dead: Told) -> None:
    rows = table(section(engineer_summary(base_dead), "likely")).rows
    named = base_dead.verdict.named
    assert [row[0] for row in rows] == [base_dead.cause(cause) for cause, _ in named[:3]]
    assert rows[0] == ("base element open circuit", f"{100 * named[0][1]:.0f}\N{NO-BREAK SPACE}%", "base element")


def test_two_faults_at_once_stand_on_page_one(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "base_and_grill_dead")
    (pair, probability), *_ = told.verdict.hypotheses
    assert set(pair) == {"base_element_open", "grill_element_open"}
    both = f"{told.cause(pair[0])}, and {told.cause(pair[1])}: {100 * probability:.0f}\N{NO-BREAK SPACE}%"
    assert both in pairs(section(engineer_summary(told), "likely"))["Two at once, counted in each"].split("; ")


def test_the_grid_shows_what_was_said_where_and_what_a_way_does_not_use(base_dead: Told) -> None:
    grid = table(section(engineer_summary(base_dead), "grid"))
    assert grid.columns == ("Way of heating (– not used; ? not told)", "top", "base", "rear", "fan", "lamp")
    assert grid.rows == (
        ("heat from above and below", "?", "none", "–", "–", "?"),
        ("fan with the heater at the back", "–", "–", "good", "?", "?"),
        ("bottom heat alone", "–", "none", "–", "–", "?"),
    )


def test_the_grid_shows_a_watched_lamp(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {**BASE_DEAD, **WATCHED})
    rows = {row[0]: row for row in table(section(engineer_summary(told), "grid")).rows}
    assert rows["heat from above and below"][-1] == "stays lit"


def test_tests_stand_in_the_order_in_which_they_are_made_with_what_follows(base_dead: Told) -> None:
    tests = section(engineer_summary(base_dead), "tests")
    assert paragraphs(tests)[0].startswith("Isolate, lock off and prove dead.")
    rows = table(tests).rows
    assert [row[1] for row in rows] == [base_dead.test_words(each, "label") for each in base_dead.planned_tests]
    questions = base_dead.script.knowledge.questions
    assert base_dead.planned_tests[:3] == (*BEFORE_LIVE, "test_base_element")
    orders = [questions[each].order for each in base_dead.planned_tests[3:]]
    assert orders == sorted(orders)
    assert "Open: base element open circuit; put right." in rows[2][3]


def test_what_follows_a_sound_reading_is_what_belief_says_after_it(base_dead: Told, script: Script) -> None:
    sound = {"test_earth": "low", "test_insulation": "good", "test_base_element": "near_marking"}
    after = told_with(script, base_dead.sentences, {**BASE_DEAD, **sound}, role="engineer")
    leading, probability = after.verdict.named[0]
    before, now = (each.assessment.posterior.of("base_element_open") for each in (base_dead, after))
    assert now / (1 - now) * CLEARS <= before / (1 - before)
    row = table(section(engineer_summary(base_dead), "tests")).rows[2]
    cleared = "Near its marking: clears base element open circuit; "
    if probability < STILL_OPEN or leading == SOMETHING_ELSE:
        assert f"{cleared}go on." in row[3]
    else:
        percent = f"{100 * probability:.0f}\N{NO-BREAK SPACE}%"
        assert f"{cleared}next likeliest {base_dead.cause(leading)} {percent}." in row[3]


@pytest.mark.parametrize("name", ["base_and_grill_dead", "base_dead_in_a_rented_flat"])
def test_what_a_direct_reading_finds_has_no_percentage(script: Script, sentences: Sentences, name: str) -> None:
    follows = [row[3] for row in planned_rows(engineer_summary(told_case(script, sentences, name)))]
    found = [part for words in follows for part in words.split(". ") if "put right" in part]
    assert len(found) > 2
    assert not any("%" in part for part in found)
    assert follows[-1].count("nothing further here, work by the diagram") <= 1


def test_low_insulation_is_a_fault_by_itself_whatever_else_it_finds(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {**IDENTIFIED, "danger_now": ["shock"], "oven_is_off": "off_at_breaker"})
    rows = {row[1]: row[3] for row in planned_rows(engineer_summary(told))}
    assert rows[told.test_words("test_insulation", "label")] == (
        "Low on one: a fault by itself. Next to nothing on one: base element burnt out, arcing; put right."
    )
    assert rows[told.test_words("test_earth", "label")] == "High or open: a fault by itself."


def test_after_a_shock_earth_continuity_is_the_first_test(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {**BASE_DEAD, "danger_now": ["shock"], "oven_is_off": "off_at_breaker"})
    assert told.planned_tests[0] == "test_earth"


def test_the_kit_stands_with_its_simulated_chance(base_dead: Told) -> None:
    summary = engineer_summary(base_dead)
    words = paragraphs(section(summary, "bring"))
    assert words[0] == "base element"
    assert summary.facts.kit == ("base_element",)
    assert summary.facts.kit_chance is not None
    assert words[1] == (
        "Only once the plate is known: the part’s number follows from it. "
        f"With this part one visit mends {100 * summary.facts.kit_chance:.0f}\N{NO-BREAK SPACE}% of such faults "
        "(estimated from the rules, not counted). Without the plate count on two visits."
    )
    by_phone = pairs(section(summary, "unknown"))["Ask by phone first"]
    assert by_phone.startswith("Make, model and serial number (a photograph of the plate)")


def test_who_read_the_plate_is_not_asked_for_it(script: Script, sentences: Sentences) -> None:
    summary = engineer_summary(told_with(script, sentences, IDENTIFIED))
    assert paragraphs(section(summary, "bring"))[1].startswith("The kind of part; its number follows from the plate.")
    assert "Without the plate" not in as_text(summary, FOOTING)
    assert "a photograph of the plate" not in as_text(summary, FOOTING)


def test_a_shock_that_a_dead_element_does_not_explain_is_the_first_fault(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {**IDENTIFIED, "danger_now": ["shock"], "oven_is_off": "off_at_breaker"})
    likely = section(engineer_summary(told), "likely")
    sign = sentences.wording.say("sign-shock", **sentences.lines)
    assert pairs(likely)["Not explained by it"].split("; ")[0] == sign
    assert "Treat earth, insulation and supply as the first fault." in paragraphs(likely)


def test_a_burning_smell_and_a_dead_grill_are_not_explained_by_a_dead_base_element(
    script: Script, sentences: Sentences
) -> None:
    smell = {"danger_now": ["burning_smell"], "sign_burning_smell": "like_plastic_or_fish"}
    told = told_with(script, sentences, {**IDENTIFIED, "grill_browns": "no_grill_heat"}, then=smell)
    leader, reasons = unexplained(script, told.assessment)
    assert leader == ("base_element_open",)
    assert [(each.kind, each.id) for each in reasons][:2] == [("sign", "burning_smell"), ("answer", "grill_browns")]
    words = pairs(section(engineer_summary(told), "likely"))["Not explained by it"].split("; ")
    assert "Grill heat: none" in words


def test_what_a_dead_base_element_explains_is_not_named(base_dead: Told) -> None:
    leader, reasons = unexplained(base_dead.script, base_dead.assessment)
    assert leader == ("base_element_open",)
    assert not {"bottom_heat_alone", "fan_cooks", "which_dishes"} & {each.id for each in reasons}


def test_what_the_answers_rule_out_stands_with_the_answer(base_dead: Told) -> None:
    rows = table(section(engineer_summary(base_dead), "ruled_out")).rows
    by = {answer: causes for causes, answer in rows}
    said = base_dead.question_and_answer("bottom_heat_alone")
    assert "wrong shelf" in by[said]


def test_faults_that_are_ruled_out_stand_before_habits(base_dead: Told, script: Script) -> None:
    words = pairs(section(engineer_summary(base_dead), "likely"))["Ruled out (see page two)"].split("; ")
    gone = [cause for each in base_dead.ruled_out for cause in each.causes]
    faults = [base_dead.cause(cause) for cause in gone if script.knowledge.causes[cause].kind == "fault"]
    is_fault = [each in faults for each in words]
    assert is_fault == sorted(is_fault, reverse=True)
    assert len(words) < len(gone)
    assert any(is_fault)


def test_who_needs_no_visit_is_asked_for_nothing_more(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "agent_unlocks_a_childs_lock")
    first, _ = names(engineer_summary(told))
    assert told.verdict.action == "do_one_thing"
    assert "tests" not in first
    assert "bring" not in first
    assert paragraphs(section(engineer_summary(told), "oven")) == []


def test_bread_is_told_place_by_place(script: Script, sentences: Sentences) -> None:
    told = told_with(
        script, sentences, {**BASE_DEAD, **WATCHED, "bread_tray": ("top 333 332 22-", "underside 110 100 00-")}
    )
    bread = table(section(engineer_summary(told), "measured"))
    assert bread.columns == ("Seen from the door", "left", "middle", "right")
    assert bread.rows == (
        ("back", "3 / 1", "3 / 1", "3 / 0"),
        ("middle", "3 / 1", "3 / 0", "2 / 0"),
        ("front", "2 / 0", "2 / 0", "– / –"),
    )


def test_everything_that_was_said_stands_on_page_two(base_dead: Told) -> None:
    rows = table(section(engineer_summary(base_dead), "answers")).rows
    assert len(rows) == len(base_dead.state.answers)
    assert ("Please tell us in your own words what happens.", "Sponges are raw underneath.") in [r[1:] for r in rows]


def test_a_changed_answer_stands_with_what_it_was_and_what_it_became(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, BASE_DEAD, then={"fan_cooks": "cooks_weakly"})
    items = next(block for block in section(engineer_summary(told), "answers").blocks if isinstance(block, Items))
    first, last = (sentences.choice("fan_cooks", each) for each in ("cooks_well", "cooks_weakly"))
    assert items.items == (f"{told.question('fan_cooks')} {first} → {last}",)


def test_figures_for_programs_agree_with_the_verdict(base_dead: Told) -> None:
    facts = engineer_summary(base_dead).facts
    assert facts.action == base_dead.verdict.action
    assert facts.causes == base_dead.verdict.causes
    assert facts.tests == base_dead.planned_tests
    assert not facts.off_confirmed


def test_of_what_the_customer_measured_the_result_stands_on_page_one(script: Script, sentences: Sentences) -> None:
    """For nine slices and two curves, as a sound oven's reader needs them: figures, their unit, and where they lie."""
    written = {
        "thermometer_kind": "hanging_or_standing",
        "thermometer_log": ("2:00 60 C", "12:30 opened", "30:00 155 C"),
        "lamp_watch": ("0:00 lit", "17:10 out", "21:40 lit", "28:00 out", "30:00 end"),
        "bread_tray": ("top 333 332 22-", "underside 110 100 00-"),
    }
    told = told_with(script, sentences, {**BASE_DEAD, **WATCHED, **written})
    said = {
        label: words.replace("\N{NO-BREAK SPACE}", " ")
        for label, words in pairs(section(engineer_summary(told), "said")).items()
    }
    assert (
        said["Small light watched (180 °C, above and below)"] == "cycles; first out at 17:10; lit 78 % of 30:00 minutes"
    )
    thermometer = said["Own thermometer, in the middle"]
    assert thermometer.startswith("highest 155 °C, at 30:00; sound ovens would show 1")
    assert thermometer.endswith("°C at 30:00 (nine in ten, simulated)")
    assert said["Bread, shade 0 to 5"] == (
        "top 3 3 3 / 3 3 2 / 2 2 –, beneath 1 1 0 / 1 0 0 / 0 0 – "
        "(rows back / middle / front, left to right from the door)"
    )


def test_what_speaks_for_the_likeliest_set_stands_on_page_one_without_figures(base_dead: Told) -> None:
    likely = pairs(section(engineer_summary(base_dead), "likely"))
    leader, reasons = holding_up(base_dead.script, base_dead.assessment)
    assert leader == ("base_element_open",)
    assert reasons
    words = likely["What speaks for it"].split("; ")
    assert [each.split(": ")[0] for each in words] == [base_dead.label(each.id) for each in reasons[:SPEAKS_FIRST]]
    assert "Heat from below, other functions: none" in words


def test_of_two_causes_at_once_both_are_named_beside_what_speaks_for_them(script: Script, sentences: Sentences) -> None:
    likely = pairs(section(engineer_summary(told_case(script, sentences, "base_and_grill_dead")), "likely"))
    words = likely["What speaks most for base element open circuit; grill element open circuit"]
    assert "Grill heat: none" in words.split("; ")


def test_in_danger_nothing_speaks_for_a_sound_oven(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "agent_hears_of_burning_plastic_late")
    assert holding_up(script, told.assessment)[0] == ()
    likely = pairs(section(engineer_summary(told), "likely"))
    assert not any(label.startswith("What speaks") for label in likely)


def test_page_one_has_earth_insulation_and_four_tests_and_page_two_the_others(
    script: Script, sentences: Sentences
) -> None:
    told = told_case(script, sentences, "base_and_grill_dead")
    summary = engineer_summary(told)
    first = ROWS_FIRST + len(BEFORE_LIVE)
    assert len(table(section(summary, "tests")).rows) == first < len(told.planned_tests)
    assert [row[0] for row in planned_rows(summary)] == [str(n + 1) for n in range(len(told.planned_tests))]
    assert names(summary)[1][0] == "tests_then"
    left = len(told.planned_tests) - first
    more = "One more row is on page two." if left == 1 else f"{left} more rows are on page two."
    assert more in paragraphs(section(summary, "tests"))


@pytest.mark.parametrize("name", ["base_and_grill_dead", "base_dead_in_a_rented_flat"])
def test_earth_and_insulation_stand_first_in_every_plan(script: Script, sentences: Sentences, name: str) -> None:
    told = told_case(script, sentences, name)
    named = [row[1] for row in table(section(engineer_summary(told), "tests")).rows]
    first = [each for each in MADE_FIRST if each in told.planned_tests]
    assert set(BEFORE_LIVE) <= set(first)
    assert named[: len(first)] == [told.test_words(each, "label") for each in first]


def test_earth_and_insulation_stand_in_the_table_before_what_is_made_under_power(
    script: Script, sentences: Sentences
) -> None:
    told = told_case(script, sentences, "base_and_grill_dead")
    named = [row[1] for row in planned_rows(engineer_summary(told))]
    live = next(number for number, test in enumerate(named) if test.startswith("LIVE: "))
    for test_id in BEFORE_LIVE:
        assert named.index(told.test_words(test_id, "label")) < live


def test_of_several_parts_the_best_one_alone_stands_with_its_chance(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "base_and_grill_dead")
    alone = {
        p: chance_of_first_visit(script, told.assessment, (p,), "appliance_engineer") or 0.0
        for p in ("base_element", "grill_element")
    }
    words = paragraphs(section(engineer_summary(told), "bring"))[-1]
    assert f"Of these, base element alone: {told.percent(max(alone.values()))}." in words
    assert max(alone, key=alone.__getitem__) == "base_element"


def test_a_gas_oven_is_said_not_to_be_covered_with_what_to_do(script: Script, sentences: Sentences) -> None:
    summary = engineer_summary(told_case(script, sentences, "gas_oven"))
    first = section(summary, "off").blocks[0]
    assert isinstance(first, Paragraph)
    assert first.style == "danger"
    for words in ("isn’t covered", "Soot", "yellow or lazy flame", "headaches", "carbon monoxide", "0800 111 999"):
        assert words in first.words
    assert first.words.endswith("a registered gas engineer.")


@pytest.mark.parametrize(
    ("answers", "words"),
    [
        ({"plug_or_wired": "plug_behind"}, "plug behind the oven"),
        ({"plug_or_wired": "wired_in"}, "wired in"),
        ({"how_connected": "by_plug"}, "plug; within reach or behind isn’t known"),
        ({"how_connected": "by_plug", "plug_or_wired": "plug_in_reach"}, "plug within reach"),
        ({"how_connected": "cannot_see"}, "asked, not known"),
        ({}, "never asked"),
    ],
)
def test_how_the_oven_gets_its_electricity_always_stands_with_it(
    script: Script, sentences: Sentences, answers: Mapping[str, str], words: str
) -> None:
    told = told_with(script, sentences, {**BASE_DEAD, **answers})
    assert told.somebody_comes
    assert pairs(section(engineer_summary(told), "oven"))["Supply"] == words


def test_how_it_is_connected_is_not_asked_twice(script: Script, sentences: Sentences) -> None:
    question = script.knowledge.questions["plug_or_wired"]

    def asked_with(**answers: str) -> bool:
        told = told_with(script, sentences, {**BASE_DEAD, **answers})
        return told.assessment.trace.concluded.isdisjoint(question.not_when)

    assert asked_with()
    assert asked_with(how_connected="cannot_see")
    assert not asked_with(how_connected="large_switch")


FOREIGN = re.compile(r"\b(?:DIN|VDE|BS|NF|ÖNORM|GB/T|GOST|SI \d{4})\b")


def test_no_word_of_an_engineers_page_names_a_standard_of_one_country() -> None:
    """Those stand with the regions; the words serve them all. The reckoning names the sources of its figures."""
    folder = Path(__file__).parents[3] / "locales" / "en-GB"
    texts = {path.name: path.read_text("utf-8") for path in folder.glob("*.ftl") if path.name != "reckon.ftl"}
    assert "summary.ftl" in texts
    assert FOREIGN.search("1 megohm (DIN VDE 0701-0702, class I)")
    assert {name: found[0] for name, text in texts.items() if (found := FOREIGN.search(text))} == {}


def test_a_live_test_says_so_where_it_is_named(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "base_and_grill_dead")
    rows = planned_rows(engineer_summary(told))
    made = [script.knowledge.questions[each].made for each in told.planned_tests]
    assert "live" in made
    assert [row[1].startswith("LIVE: ") for row in rows] == [each == "live" for each in made]


def test_nothing_is_energised_while_danger_stands(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "agent_hears_of_burning_plastic_late")
    assert {script.knowledge.questions[each].made for each in told.planned_tests} == {"dead"}
    assert told.planned_tests[0] == "test_earth"
    assert "test_insulation" in told.planned_tests
    assert "nothing is energised" in paragraphs(section(engineer_summary(told), "tests"))[0]


def test_a_later_test_takes_the_ones_before_it_to_have_read_well(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "base_and_grill_dead")
    measured = told.planned_tests.index("test_base_element")
    after_it = [row[3] for row in planned_rows(engineer_summary(told))[measured + 1 :]]
    assert len(after_it) > 1
    assert not any("base element open circuit" in words for words in after_it)


def test_no_row_names_what_an_earlier_sound_reading_speaks_against(base_dead: Told) -> None:
    rows = {row[1]: row[3] for row in planned_rows(engineer_summary(base_dead))}
    element = next(words for test, words in rows.items() if test.startswith("Base element"))
    assert "Open: base element open circuit" in element
    later = list(rows.values())[list(rows.values()).index(element) + 1 :]
    assert later
    assert not any("base element open circuit" in words for words in later)


def test_no_cause_is_named_of_what_is_no_electric_oven(script: Script, sentences: Sentences) -> None:
    summary = engineer_summary(told_case(script, sentences, "gas_oven"))
    assert paragraphs(section(summary, "likely")) == [
        "Not an electric oven: this check knows nothing of it and names no cause."
    ]
    assert "all_causes" not in names(summary)[1]


def test_how_a_sign_was_told_stands_beside_it(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "agent_hears_of_burning_plastic_late")
    assert pairs(section(engineer_summary(told), "off"))["Told as"] == "It is like plastic, rubber or fish"


def test_a_weight_is_told_as_how_many_times_likelier(base_dead: Told) -> None:
    first, second = compared(base_dead.script, base_dead.assessment)
    rests_on = section(engineer_summary(base_dead), "rests_on")
    words = (
        f"First: {base_dead.cause(first[0])}. Second: {base_dead.cause(second[0])}. The second is the likeliest that "
    )
    assert paragraphs(rests_on)[0].startswith(words)
    strongest = next(each for each in base_dead.verdict.because if each.decibans is not None)
    times = f"{10 ** (strongest.decibans / 10):.2g}"  # type: ignore[operator]
    words = rests_on.blocks[1].items[0]  # type: ignore[union-attr]
    assert f"{times} times likelier with the first" in words


def test_danger_that_is_still_to_be_asked_about_stands_first(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["trips"]})
    assert not told.assessment.danger.stops
    summary = engineer_summary(told)
    sign = sentences.wording.say("sign-trips", **sentences.lines)
    assert paragraphs(section(summary, "off"))[1].startswith(f"Told, and not yet asked about: {sign}.")
    assert [(each.id, each.state) for each in summary.facts.signs] == [("trips", "open")]


def test_an_oven_that_is_still_on_is_told_as_danger(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"], "oven_is_off": "still_on"})
    first = section(engineer_summary(told), "off").blocks[0]
    assert first.words.startswith("The customer said that it is still on (")  # type: ignore[union-attr]
    assert first.style == "danger"  # type: ignore[union-attr]


def test_off_that_was_told_before_danger_was_taken_back_is_not_told_as_off(
    script: Script, sentences: Sentences
) -> None:
    answers = {"danger_now": ["sparks"], "oven_is_off": "off_at_breaker"}
    told = told_with(script, sentences, answers, then={"danger_now": ["none"], "sign_sparks": "no"})
    summary = engineer_summary(told)
    assert "so it may be in use" in paragraphs(section(summary, "off"))[0]
    assert not summary.facts.off_confirmed


@pytest.mark.parametrize("sign", ["gas_smell", "fire"])
def test_where_somebody_else_comes_first_no_test_is_planned(script: Script, sentences: Sentences, sign: str) -> None:
    told = told_with(script, sentences, {"danger_now": [sign]})
    assert told.verdict.stops
    first, second = names(engineer_summary(told))
    assert not {"tests", "bring"} & {*first}
    assert not {"how_to_test", "after_repair"} & {*second}


def test_who_was_in_the_kitchen_is_not_told(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {**BASE_DEAD, **WATCHED})
    asked = [row[1] for row in table(section(engineer_summary(told), "answers")).rows]
    assert not {told.question(each) for each in ("hot_gate", "person_at_oven", "may_look_cold")} & {*asked}


def test_an_erased_serial_number_is_not_known(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, IDENTIFIED)
    erased = replace(told, events=[_without_text(each, "serial_number") for each in told.events])
    assert "Serial number" in pairs(section(engineer_summary(erased), "oven"))["Not known"]


def _without_text(event: Event, question_id: str) -> Event:
    happening = event.happening
    if isinstance(happening, TextAnswered) and happening.question_id == question_id:
        return replace(event, happening=replace(happening, text=None))
    return event


def test_a_rented_home_and_who_comes_first_are_told_in_danger_too(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {**BASE_DEAD, "whose_oven": "rented", "danger_now": ["shock"]})
    summary = engineer_summary(told)
    assert summary.about.endswith(f"First to see it: {sentences.who(told.verdict)}.")
    assert paragraphs(section(summary, "beside"))[-1] == "Rented: ask whether the landlord agrees to the work."


def test_where_every_test_is_made_dead_nothing_is_said_of_live_ones(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "base_dead_in_a_rented_flat")
    assert {script.knowledge.questions[each].made for each in told.planned_tests} == {"dead"}
    first = paragraphs(section(engineer_summary(told), "tests"))[0]
    assert first.startswith("Isolate, lock off and prove dead. Every row is made dead.")


def test_where_no_cause_is_likely_none_is_said_to_stand_out(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "agent_hears_of_burning_plastic_late")
    assert told.named[0][1] < NONE_STANDS_OUT
    assert "No cause stands out." in paragraphs(section(engineer_summary(told), "likely"))


def test_none_of_these_says_of_what(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {**IDENTIFIED, "look_over": ["none"], "what_changed": ["none"]})
    summary = engineer_summary(told)
    assert pairs(section(summary, "off"))["Looked at, cold"] == "No damage seen, of all that was asked"
    assert pairs(section(summary, "said"))["What changed just before"].startswith("Nothing of these: power cut")
