"""The checks can fail: seeded defects, each a small change of the rules, the words or the program, each caught.

A defect is caught by the check that is there for it. Without any defect all of them find nothing.
"""

import shutil
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, ExitStack, contextmanager, nullcontext
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any
from unittest.mock import patch

import numpy as np
import pytest
import yaml
from yaml.emitter import Emitter
from yaml.representer import SafeRepresenter
from yaml.resolver import BaseResolver
from yaml.serializer import Serializer

from assistant.chat.measuring import MeasuringTalk
from assistant.interview import actions, assess, choice, conversation, danger, decide, measuring, state
from assistant.interview.choice import steps_for
from assistant.interview.commands import LeaveMeasuring
from assistant.interview.state import State
from assistant.knowledge.model import Knowledge
from tests.conftest import ROOT
from tests.safety import talks, walk, watch
from tests.safety.checks import CHECKS, Project
from tests.safety.fast import Fast, Standing
from tests.safety.talks import Talks
from tests.safety.walk import Walk

Change = Callable[[Path], None]


class _Plain(Emitter, Serializer, SafeRepresenter, BaseResolver):  # type: ignore[misc]
    """Writes YAML with every scalar as it stands: no number turns into a text."""

    def __init__(self, stream: Any, **wishes: Any) -> None:
        Emitter.__init__(self, stream, width=10_000)
        Serializer.__init__(self)
        SafeRepresenter.__init__(self, sort_keys=False)
        BaseResolver.__init__(self)


def in_rules(file: str, change: Callable[[Any], Any]) -> Change:
    """A change of one file's data; `change` alters it or returns it anew."""

    def make(folder: Path) -> None:
        path = folder / "rules" / file
        data = yaml.load(path.read_text("utf-8"), Loader=yaml.BaseLoader)  # noqa: S506 - it builds texts only
        data = change(data) or data
        with path.open("w", encoding="utf-8") as stream:
            dumper = _Plain(stream)
            dumper.open()
            dumper.represent(data)
            dumper.close()

    return make


def in_words(file: str, beginning: str, line: str) -> Change:
    """The line of a file that begins so is replaced."""

    def make(folder: Path) -> None:
        path = folder / "locales" / "en-GB" / file
        lines = path.read_text("utf-8").splitlines()
        (number,) = [n for n, each in enumerate(lines) if each.startswith(beginning)]
        lines[number] = line
        path.write_text("\n".join(lines) + "\n", "utf-8")

    return make


def without_danger(*given: Any) -> Any:
    """Care as if no danger were open."""
    knowledge, role, effects, found, dangerous = given
    return _care_limit(knowledge, role, effects, replace(found, stops=(), open_questions=()), dangerous)


def with_every_step(knowledge: Knowledge, stops: Any) -> tuple[str, ...]:
    """The steps of all signs together."""
    return tuple(dict.fromkeys(s for stop in stops for s in (*steps_for(knowledge, stops), *_own(knowledge, stop))))


def _own(knowledge: Knowledge, stop: Any) -> tuple[str, ...]:
    return knowledge.signs[stop.sign_id].steps


def unless_cheap(script: Any, assessment: Any) -> Any:
    """A stop only where no harmless act is the likeliest thing."""
    cheap = script.knowledge.causes[assessment.posterior.causes()[0][0]].act is not None
    return None if cheap else _stopped(script, assessment)


def left_in_silence(talk: MeasuringTalk, *_: object) -> bool:
    """What is measured is left without a word."""
    talk.do(*map(LeaveMeasuring, list(talk.conversation.state.measuring)))
    return False


def stop_forgets_no_measurement(before: State, event: Any, happening: Any) -> State:
    """A stop is reached, and what was being measured goes on."""
    return replace(_with_danger(before, event, happening), measuring=before.measuring)


def _calm(talks: Talks, standing: Standing) -> Any:
    """Anything may be measured while no danger is open."""
    return np.repeat(~standing.danger_open[None], len(talks.codes.measured), axis=0)


@contextmanager
def _both_patched(*patches: AbstractContextManager[Any]) -> Iterator[None]:
    with ExitStack() as stack:
        for each in patches:
            stack.enter_context(each)
        yield


_with_danger = state._with_danger
_care_limit, _stopped = assess.care_limit, choice._stopped


def nothing(_: Path) -> None:
    """Rules and words stay as they are."""


@dataclass(frozen=True)
class Defect:
    """What is wrong, how to seed it, and what the check that is there for it must find."""

    what: str
    check: str
    finds: str
    change: Change = nothing
    patched: Callable[[], AbstractContextManager[Any]] = nullcontext


def _move(data: dict[str, Any], step: str, before: str) -> dict[str, Any]:
    keys = [key for key in data if key != step]
    keys.insert(keys.index(before), step)
    return {key: data[key] for key in keys}


def _endless(other: str) -> Callable[[Any], None]:
    def change(data: Any) -> None:
        data["choices"] = {choice_id: {"withdraws": other} for choice_id in data["choices"]}
        for key in ("observable", "table", "mistakes"):
            data.pop(key, None)

    return change


def _both(*changes: Change) -> Change:
    def make(folder: Path) -> None:
        for change in changes:
            change(folder)

    return make


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
        "sparks told in passing are not heard",
        "heard",
        "sparks",
        _both(
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
        _both(
            in_rules("questions/how_often.yaml", _endless("since_when")),
            in_rules("questions/since_when.yaml", _endless("how_often")),
        ),
        lambda: patch.object(walk, "MOST_STEPS", 90),
    ),
    Defect(
        "a hot question while a sign is open",
        "agreement",
        "care",
        patched=lambda: patch.object(assess, "care_limit", without_danger),
    ),
    Defect(
        "the same, seen on the paths",
        "paths",
        "more than talk while danger is open",
        patched=lambda: patch.object(Standing, "danger_open", property(lambda standing: standing.stops < 0)),
    ),
    Defect(
        "a measurement is begun while danger is open",
        "measuring",
        "measuring",
        patched=lambda: _both_patched(
            *(patch.object(module, "may_measure", lambda *_: True) for module in (conversation, measuring))
        ),
    ),
    Defect(
        "a measurement goes on after danger was heard",
        "measuring",
        "measuring",
        patched=lambda: patch.object(decide, "left_as_unfit", lambda *_: ()),
    ),
    Defect(
        "a measurement goes on after a stop",
        "measuring",
        "measuring",
        patched=lambda: _both_patched(
            patch.object(state, "_with_danger", stop_forgets_no_measurement),
            patch.object(decide, "left_as_unfit", lambda *_: ()),
        ),
    ),
    Defect(
        "the same, seen on the paths",
        "paths",
        "a measurement while danger is open",
        patched=lambda: _both_patched(
            patch.object(Talks, "leave", lambda *_: None), patch.object(Talks, "end_all", lambda *_: None)
        ),
    ),
    Defect(
        "a measurement needs no gate",
        "paths",
        "a measurement without the gate",
        patched=lambda: patch.object(Fast, "_fit", lambda _, talks, standing: _calm(talks, standing)),
    ),
    Defect(
        "a reading far too hot is noted like any other",
        "measuring",
        "measuring",
        patched=lambda: patch.object(measuring, "runs_away", lambda *_: False),
    ),
    Defect(
        "the same, seen while something is measured",
        "measuring",
        "a reading far too hot and no stop",
        patched=lambda: patch.object(talks, "HOT", -1),
    ),
    Defect(
        "whoever leaves a measurement isn't told to turn the oven off",
        "ways out",
        "after",
        patched=lambda: patch.object(MeasuringTalk, "leave", left_in_silence),
    ),
    Defect(
        "an answer that tells of a reading far too hot is none of danger",
        "hot answers",
        "a reading far too hot and no stop",
        in_rules("findings/thermometer_very_hot.yaml", lambda data: data.update(then={"explains": "true"})),
    ),
    Defect(
        "a cheap act outranks a stop",
        "verdicts",
        "a stop outranked by do_one_thing",
        patched=lambda: patch.object(choice, "_stopped", unless_cheap),
    ),
    Defect(
        "a sign taken back is forgotten",
        "verdicts",
        "a sign taken back and no visit",
        patched=lambda: patch.object(danger, "_withdrawn", lambda *_: ()),
    ),
    Defect(
        "a raised sign is not asked about",
        "agreement",
        "open",
        patched=lambda: patch.object(danger, "_is_open", lambda *_: False),
    ),
    Defect(
        "the steps of all signs are told together",
        "signs",
        "wrong steps after a stop",
        patched=lambda: patch.object(watch, "steps_for", with_every_step),
    ),
    Defect(
        "belief alone allows an act",
        "acts",
        "an act without its condition",
        patched=lambda: patch.object(actions, "_only_when", lambda *_: frozenset()),
    ),
]


def _silence(path: Path, message: str, kind: str) -> None:
    """A message hears nothing any more by one of its lists."""
    lines, inside = path.read_text("utf-8").splitlines(), False
    for number, line in enumerate(lines):
        inside = line.startswith(f"{message} =") if not line.startswith(" ") else inside
        if inside and line.strip().startswith(f".{kind} ="):
            lines[number] = f"    .{kind} = nothing of the kind"
    path.write_text("\n".join(lines) + "\n", "utf-8")


@pytest.fixture(scope="module")
def unseeded() -> Project:
    return Project(ROOT / "rules", ROOT / "locales")


def seeded(defect: Defect, folder: Path, unseeded: Project) -> Project:
    """A copy of the rules and words with the defect; the project itself where only the program is changed."""
    if defect.change is nothing:
        return unseeded
    for name in ("rules", "locales"):
        shutil.copytree(ROOT / name, folder / name)
    defect.change(folder)
    return Project(folder / "rules", folder / "locales")


@pytest.mark.parametrize("check", CHECKS)
def test_the_project_as_it_is_passes(check: str, unseeded: Project) -> None:
    assert CHECKS[check](unseeded) == set()


@pytest.mark.parametrize("defect", DEFECTS, ids=lambda defect: defect.what)
def test_a_seeded_defect_is_caught_by_the_check_that_is_there_for_it(
    defect: Defect, tmp_path: Path, unseeded: Project
) -> None:
    project = seeded(defect, tmp_path, unseeded)
    with defect.patched():
        found = CHECKS[defect.check](project)
    assert any(each.startswith(defect.finds) for each in found), found


def test_a_question_of_an_engineers_care_is_caught_where_a_householder_would_be_asked(knowledge: Knowledge) -> None:
    class Beyond(str):
        rank = 9

    beyond = Beyond("measure_live")
    questions = knowledge.questions | {
        "knob_feel": knowledge.questions["knob_feel"].model_copy(update={"care": beyond})
    }
    allowing = knowledge.findings["person_is_there"]
    then = allowing.then.model_copy(update={"allows_care": beyond})
    seeded = knowledge.model_copy(
        update={
            "questions": questions,
            "findings": knowledge.findings | {"person_is_there": allowing.model_copy(update={"then": then})},
            "roles": {r: role.model_copy(update={"asked_up_to": beyond}) for r, role in knowledge.roles.items()},
        }
    )
    assert "a question beyond the role's care" in Walk(Fast(seeded, "householder"), 300, 2).run().broken
    assert "a question beyond the role's care" not in Walk(Fast(seeded, "engineer"), 300, 2).run().broken
