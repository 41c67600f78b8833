"""Entries in sentences: everything can be explained, and what is said of it holds."""

import io
import re
from dataclasses import replace

import numpy as np
import pytest

from assistant.authoring.explain import book_of, explain, explanation
from assistant.authoring.explained import percent
from assistant.authoring.explained_causes import weights_of_answers
from assistant.authoring.explained_physics import YES_OR_NO, changes, measured
from assistant.belief.hypotheses import NOT_CHOSEN
from assistant.belief.outcomes_ahead import OUTCOMES
from assistant.belief.posterior import posterior
from assistant.interview.script import script_of
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import PhysicalChange
from assistant.physics import oven
from assistant.physics.parameters import PARAMETERS
from assistant.wording.locale import load_wording
from tests.conftest import ROOT
from tests.knowledge.broken import LOCALES, SOUND, english

KNOWLEDGE = load_knowledge(SOUND, None)
SCRIPT = script_of(KNOWLEDGE)


def said(wanted, folder=SOUND, script=SCRIPT, wording=None):
    out = io.StringIO()
    status = explain(folder, script, wanted, wording or english(), out)
    return status, out.getvalue()


def test_every_entry_of_a_small_folder_is_explained():
    book = book_of(SOUND, SCRIPT, english())
    names = {name for entries in book.entries.values() for name in entries}
    assert set(KNOWLEDGE.questions) <= names
    for name in names:
        status, text = said(name)
        assert status == 0
        assert text.startswith(f"{name}, ")
        assert "What it says" in text


def test_one_of_each_kind_of_the_projects_rules_is_explained_in_each_language(script):
    book = book_of(ROOT / "rules", script, english())
    marked = replace(book, wording=load_wording(LOCALES, "x-marked"))
    for entries in book.entries.values():
        name = next(iter(entries))
        assert list(explanation(book, name))
        assert all("⟦" in line for line in explanation(marked, name) if line)


def test_a_name_that_two_kinds_have_is_explained_twice():
    kinds = [kind for kind, entries in book_of(SOUND, SCRIPT, english()).entries.items() if "seal" in entries]
    assert said("seal")[1].count("\n\n") == len(kinds) - 1


def test_an_unknown_name_is_a_sentence_with_names_near_it():
    name = next(iter(KNOWLEDGE.causes))
    status, text = said(name[:-1])
    assert status == 1
    first, second = text.splitlines()
    assert first == f"Nothing in {SOUND} is called “{name[:-1]}”."
    assert second.startswith("Near it: ")
    assert name in second
    assert said("qqqq") == (1, f"Nothing in {SOUND} is called “qqqq”.\n")
    assert said("")[0] == 1


@pytest.mark.parametrize("cause", KNOWLEDGE.causes)
def test_the_weight_of_an_answer_is_what_it_does_to_the_odds_of_the_cause(cause):
    """Belief before and after that answer alone: ten times the logarithm of how much the odds grew."""
    model = SCRIPT.evidence_model

    def log_odds(answers):
        probability = posterior(model, answers).of(cause)
        return 10 * np.log10(probability / (1 - probability))

    weights = list(weights_of_answers(model, cause))
    assert weights
    for report, code, decibans in weights:
        assert code != NOT_CHOSEN
        assert decibans == pytest.approx(log_odds({report: code}) - log_odds({}), abs=1e-9)


def test_an_effect_names_who_has_it_and_where_they_differ(script):
    text = "\n".join(explanation(book_of(ROOT / "rules", script, english()), "no_heat_above"))
    for cause_id, cause in script.knowledge.causes.items():
        assert (f"  {cause_id}" in text.split("The causes that have it")[1]) == (cause.effect == "no_heat_above")
    assert "top_element_open, which shows otherwise in runs_too_cold" in text


def test_a_cause_tells_which_rows_come_from_its_effect(script):
    knowledge = script.knowledge
    cause = knowledge.causes["top_element_open"]
    text = "\n".join(explanation(book_of(ROOT / "rules", script, english()), "top_element_open"))
    for name in cause.shows:
        row = next(line for line in text.splitlines() if line.startswith(f"  {name}: "))
        taken_over = cause.shows_as(knowledge.effects["no_heat_above"], name)
        assert row.endswith("from its effect “no_heat_above”") == taken_over
        assert not (taken_over and f"  shows.{name}." in text)


def physics_of(script, wanted, **changed):
    """The lines under both headings about the oven model; `changed`: of these changes instead."""
    book = book_of(ROOT / "rules", script, english())
    if changed:
        physical = {name: PhysicalChange(source="assumed", **each) for name, each in changed.items()}
        return [*changes(book, physical), *measured(book, physical)]
    lines = list(explanation(book, wanted))
    begins = lines.index(english().say("explain-heading_physical"))
    others = [n for n, line in enumerate(lines) if n > begins and not line.startswith(" ")]
    return [line.strip() for line in lines[begins : others[1]]]


def test_an_effect_tells_what_it_changes_by_how_much_and_who_says_so(script):
    assert "the power of the base element: nothing is left of it; source: assumed" in physics_of(
        script, "no_heat_below"
    )
    (early,) = [line for line in physics_of(script, "opens_early") if "source" in line]
    assert (
        early
        == "how far above the setting the control switches: shifted by −85 to −25 K, each as likely; source: assumed"
    )
    (weak,) = [line for line in physics_of(script, "weak_everywhere") if "source" in line]
    assert weak == "the voltage at the oven while it heats: multiplied by 0.77 to 0.93, each as likely; source: assumed"


def test_an_effect_tells_what_light_thermometer_and_bread_show_as_it_is_foreseen(script):
    lines = physics_of(script, "no_heat_below")
    assert any("simulated" in line and "in percent" in line for line in lines)
    foreseen = script.knowledge.foreseen
    for question_id, each in foreseen.items():
        (line,) = [line for line in lines if question_id in re.split(r"[ ,]+", line)]
        rows = each.ways["base_element_open"], each.ways["none"]
        if line.startswith("As in sound ovens"):
            assert rows[0] == pytest.approx(rows[1], abs=2)
            continue
        told = [(float(a), float(b)) for a, b in re.findall(r"([\d.]+) % \(sound ([\d.]+) %\)", line)]
        assert told == sorted(((a, b) for a, b in zip(*rows, strict=True) if a >= 1), reverse=True)
    watch = foreseen["lamp_watch"]
    never = watch.outcomes.index("never_out")
    dead, sound = watch.ways["base_element_open"][never], watch.ways["none"][never]
    assert f"the light never goes out {dead:g} % (sound {sound:g} %)" in "".join(lines)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (
            {"never_opens": {"to": 0.5, "spread": 0.5}},
            "never opens and heats all the time: in 50 % of the ovens;",
        ),
        ({"never_opens": {"to": 0.7, "spread": 0.1}}, "heats all the time: in 100 % of the ovens"),
        ({"never_opens": {"to": 0}}, "heats all the time: in 0 % of the ovens"),
        (
            {"fan_speed": {"to": 0.5, "spread": 0.3}},
            "oven fan, of full speed: becomes 20 to 80 %, each",
        ),
        ({"cut_out_trip": {"by": -10}}, "where the cut-out trips: shifted by −10 K;"),
        ({"cut_out_trip": {"to": 120}}, "where the cut-out trips: becomes 120 °C;"),
        ({"thermometer_bias": {"by": 10, "spread": 50}}, "shifted by −40 to +60 K, each as likely;"),
        ({"supply_voltage": {"times": 1}}, "the voltage at the oven while it heats: stays as it is;"),
        ({"door_leak": {"times": 4.5, "spread": 2.5}}, "multiplied by 2 to 7, each as likely;"),
        ({"lamp_stays": {"to": 1}}, "the small light stays lit, whatever the control does;"),
        ({"lamp_stays": {"to": 0}}, "the small light stays dark, whatever the control does;"),
    ],
)
def test_every_way_to_change_a_parameter_is_told(script, change, said):
    line = physics_of(script, "no_heat_below", **change)[0]
    assert said in line
    assert line.endswith("; source: assumed")


def test_what_no_cause_changes_alone_is_said_to_be_unforeseen(script):
    lines = physics_of(script, "no_heat_below", wall_loss={"times": 3})
    for question_id in script.knowledge.foreseen:
        assert any(line.startswith(f"{question_id}: not foreseen") for line in lines)


def test_a_cause_names_the_changes_that_come_from_its_effect_and_one_without_changes_is_a_sound_oven(script):
    (from_effect,) = [line for line in physics_of(script, "thermostat_drifted_low") if "source" in line]
    assert from_effect.endswith("from its effect “opens_early”")
    assert "from its effect" not in "".join(physics_of(script, "indicator_lamp_dead"))
    text = "\n".join(explanation(book_of(ROOT / "rules", script, english()), "recipe_not_converted"))
    assert "Nothing: to light, thermometer and bread it is a sound oven." in text
    assert english().say("explain-heading_measured") not in text


def test_rules_without_measurements_tell_nothing_of_an_oven_model():
    assert not KNOWLEDGE.foreseen
    for name in KNOWLEDGE.causes:
        assert english().say("explain-heading_physical") not in said(name)[1]


def test_every_parameter_has_words_and_the_units_of_the_models_own_table():
    """Source: the table of units in the oven model's module."""
    units = dict(re.findall(r"^    (\w+) +(V|W|J/K|m²|1|W/K|°C|K|s|0/1) ", oven.__doc__, flags=re.MULTILINE))
    assert set(units) == set(PARAMETERS)
    assert {name for name, unit in units.items() if unit == "0/1"} == YES_OR_NO
    told = {"1": "%", "0/1": None}
    for name, unit in units.items():
        assert english().say(f"explain-parameter_{name}")
        if told.get(unit, unit) is None:
            assert not english().has(f"explain-parameter_{name}", "unit")
        else:
            assert english().say(f"explain-parameter_{name}", "unit") == told.get(unit, unit)
    assert all(english().has(f"explain-outcome_{outcome}") for each in OUTCOMES.values() for outcome in each)


def test_a_test_tells_what_it_separates(script):
    text = "\n".join(explanation(book_of(ROOT / "rules", script, english()), "test_selector"))
    assert "all_close: the likeliest of a sound oven" in text
    assert "one_below_open: the likeliest where there is selector_contact_below" in text
    assert "between top_element_open and selector_contact_above, which look alike" in text


def test_every_test_and_effect_of_the_projects_rules_is_explained(script):
    book = book_of(ROOT / "rules", script, english())
    tests = [q for q, question in script.knowledge.questions.items() if question.stage == "tests"]
    assert tests
    for name in (*tests, *script.knowledge.effects):
        assert len(list(explanation(book, name))) > 4


def test_numbers_are_told_with_source_and_range():
    for name, cause in KNOWLEDGE.causes.items():
        least, most = cause.base_rate.range
        text = said(name)[1]
        assert f"base_rate: {cause.base_rate.value:g} %, from {least:g} to {most:g}, source: assumed" in text


def test_what_opens_a_question_and_what_a_finding_does_is_told():
    question_id, question = next((q, x) for q, x in KNOWLEDGE.questions.items() if x.ask_when)
    assert f"opened by one of these findings: {', '.join(question.ask_when)}" in said(question_id)[1]
    for finding_id, finding in KNOWLEDGE.findings.items():
        text = said(finding_id)[1]
        assert "When it holds" in text
        if finding.then.allows_care:
            assert f"allows care up to “{finding.then.allows_care.value}”" in text


@pytest.mark.parametrize(
    ("share", "shown"), [(0.5, "50"), (0.999, "99.9"), (1.0, "100"), (0.002, "0.2"), (0.0213, "2.1")]
)
def test_percentages_keep_the_digits_that_say_something(share, shown):
    assert percent(share) == shown


def test_what_is_only_for_switching_off_and_a_danger_in_the_homes_supply_are_said(script):
    for wanted, sentence, without in (
        ("dry_hands", "It counts only until the oven is off.", "shock_medical"),
        ("lights_dim_elsewhere", "The danger is in the home's supply", "shock"),
    ):
        assert sentence in said(wanted, ROOT / "rules", script)[1]
        assert sentence not in said(without, ROOT / "rules", script)[1]
