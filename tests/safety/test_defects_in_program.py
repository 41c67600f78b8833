"""The checks can fail: defects seeded into the program, each caught."""

from collections.abc import Iterator
from contextlib import AbstractContextManager, ExitStack, contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any
from unittest.mock import patch

import numpy as np
import pytest

from assistant.chat.measuring import MeasuringTalk
from assistant.interview import actions, assess, choice, conversation, danger, decide, measuring, state
from assistant.interview.choice import steps_for
from assistant.interview.commands import LeaveMeasuring
from assistant.interview.state import State
from assistant.knowledge.model import Knowledge
from tests.safety import talks, watch
from tests.safety.checks import Project
from tests.safety.fast import Fast, Standing
from tests.safety.seeding import Defect, found_by_its_check, is_caught
from tests.safety.talks import Talks
from tests.safety.walk import Walk


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
    talk._at.do(*map(LeaveMeasuring, list(talk._at.conversation.state.measuring)))
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


DEFECTS = [
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


@pytest.mark.parametrize("defect", DEFECTS, ids=lambda defect: defect.what)
def test_a_seeded_defect_is_caught_by_the_check_that_is_there_for_it(
    defect: Defect, tmp_path: Path, unseeded: Project
) -> None:
    found = found_by_its_check(defect, tmp_path, unseeded)
    assert is_caught(defect, found), found


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
