"""The checks can fail: defects seeded into the rules and the words, each caught."""

from collections.abc import Callable
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pytest

from tests.safety import walk
from tests.safety.checks import Project
from tests.safety.seeding import Defect, both, found_by_its_check, in_rules, in_words, is_caught


def _move(data: dict[str, Any], step: str, before: str) -> dict[str, Any]:
    keys = [key for key in data if key != step]
    keys.insert(keys.index(before), step)
    return {key: data[key] for key in keys}


def _until_off(*steps: str) -> Callable[[Any], None]:
    """These steps, and no others, count only until the oven is off."""

    def change(data: Any) -> None:
        for step_id, step in data.items():
            step.pop("until_off", None)
            if step_id in steps:
                step["until_off"] = "true"

    return change


def _endless(other: str) -> Callable[[Any], None]:
    def change(data: Any) -> None:
        data["choices"] = {choice_id: {"withdraws": other} for choice_id in data["choices"]}
        for key in ("observable", "table", "mistakes"):
            data.pop(key, None)

    return change


def _first_group_without(item: str) -> Callable[[Any], None]:
    def change(data: Any) -> None:
        data["when"] = [condition for condition in data["when"] if condition.get("includes") != item]
        data["examples"]["stays_quiet"] = [{"danger_now": ["none"]}]

    return change


def _no_group_on(question: str) -> Callable[[Any], None]:
    def change(data: Any) -> None:
        data["any_of"] = [group for group in data["any_of"] if all(c.get("question") != question for c in group)]
        data["examples"]["fires"] = [each for each in data["examples"]["fires"] if question not in each]

    return change


def _silence(path: Path, message: str, kind: str) -> None:
    """A message hears nothing any more by one of its lists."""
    lines, inside = path.read_text("utf-8").splitlines(), False
    for number, line in enumerate(lines):
        inside = line.startswith(f"{message} =") if not line.startswith(" ") else inside
        if inside and line.strip().startswith(f".{kind} ="):
            lines[number] = f"    .{kind} = nothing of the kind"
    path.write_text("\n".join(lines) + "\n", "utf-8")


DEFECTS = [
    Defect(
        "a householder is asked for a meter reading",
        "words",
        "question-knob_feel",
        in_words("questions.ftl", "question-knob_feel =", "question-knob_feel = What does your multimeter show?"),
    ),
    Defect(
        "a message tells a householder to pull the oven out",
        "words",
        "act-set_clock",
        in_words("advice.ftl", "act-set_clock =", "act-set_clock = Do not worry, pull the oven out and set the clock."),
    ),
    Defect(
        "medical advice is missing after a shock",
        "trade",
        "step missing",
        in_rules("danger/shock.yaml", lambda data: data["steps"].remove("shock_medical")),
    ),
    Defect(
        "the main switch comes before the question about it",
        "signs",
        "wrong steps after a stop",
        in_rules("steps.yaml", lambda data: _move(data, "off_at_main", "ask_before_main")),
    ),
    Defect(
        "a narrow sign is cleared by doubt",
        "trade",
        "doubt clears",
        in_rules("danger/smoke.yaml", lambda data: data["answers"].update(anything_else="clear")),
    ),
    Defect(
        "not being sure of a shock clears it",
        "signs",
        "a sign without its stop",
        in_rules("danger/shock.yaml", lambda data: data.update(not_sure_is_danger="false")),
    ),
    Defect(
        "fire is no longer the gravest",
        "trade",
        "gravity changed",
        in_rules("danger/fire.yaml", lambda data: data.update(order="500")),
    ),
    Defect(
        "an act that is off the closed list",
        "trade",
        "act off the closed list",
        in_rules("acts.yaml", lambda data: data.update(open_cover={"note": "Open the cover."})),
    ),
    Defect(
        "a breaker is put back by somebody who wasn't asked",
        "acts",
        "an act without its condition",
        in_rules("acts.yaml", lambda data: data.update(reset_breaker_once={"note": "Reset a breaker."})),
    ),
    Defect(
        "a gate is left out",
        "gates",
        "a hot question without the gate: hot_gate",
        in_rules("findings/hot_gate_passed.yaml", _first_group_without("oven_empty")),
    ),
    Defect(
        "a cooling fan that stopped bars nothing",
        "gates",
        "a hot question without the gate: air_at_the_front",
        in_rules("findings/bar_fan_stopped.yaml", _no_group_on("air_at_the_front")),
    ),
    Defect(
        "after a smell of gas it is asked whether the oven is off",
        "signs",
        "near a switch after fire, gas or CO",
        in_rules("danger/gas_smell.yaml", lambda data: data.update(confirm_off="true")),
    ),
    Defect(
        "a step at the fuse box passes for one that touches nothing",
        "switches",
        "breaker_first",
        in_rules("steps.yaml", lambda data: data["breaker_first"].update(touches_nothing="true")),
    ),
    Defect(
        "medical advice counts only until the oven is off",
        "trade",
        "step that holds in any case",
        in_rules("steps.yaml", _until_off("shock_medical")),
    ),
    Defect(
        "an oven that is off passes for the end of a danger in the home's supply",
        "trade",
        "ended by the oven's being off",
        in_rules("danger/lights_dim_elsewhere.yaml", lambda data: data.pop("oven_off_is_enough") and None),
    ),
    Defect(
        "sparks told in passing are not heard",
        "heard",
        "sparks",
        both(
            *(
                lambda folder, kind=kind: _silence(folder / "locales" / "en-GB" / "danger.ftl", "sign-sparks", kind)
                for kind in ("phrases", "unclear", "ending")
            )
        ),
    ),
    Defect(
        "two questions take back each other's answers for ever",
        "paths",
        "a path was cut",
        both(
            in_rules("questions/how_often.yaml", _endless("since_when")),
            in_rules("questions/since_when.yaml", _endless("how_often")),
        ),
        lambda: patch.object(walk, "MOST_STEPS", 90),
    ),
    Defect(
        "an answer that tells of a reading far too hot is none of danger",
        "hot answers",
        "a reading far too hot and no stop",
        in_rules("findings/thermometer_very_hot.yaml", lambda data: data.update(then={"explains": "true"})),
    ),
]


@pytest.mark.parametrize("defect", DEFECTS, ids=lambda defect: defect.what)
def test_a_seeded_defect_is_caught_by_the_check_that_is_there_for_it(
    defect: Defect, tmp_path: Path, unseeded: Project
) -> None:
    found = found_by_its_check(defect, tmp_path, unseeded)
    assert is_caught(defect, found), found
