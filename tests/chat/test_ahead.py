"""Weighing ahead makes the next turn quicker and nothing else."""

from dataclasses import replace

import pytest

from assistant.belief.remembered import Remembered
from assistant.chat import ahead
from assistant.chat.ahead import Ahead
from assistant.interview.assess import assess
from assistant.interview.commands import GiveAnswer
from assistant.interview.next_question import best_question
from assistant.interview.script import Script
from assistant.interview.supposed import answered_otherwise, weigh_ahead
from tests.conftest import Begin

TOLD = {"danger_now": ["none"], "which_appliance": "electric_oven", "what_goes_wrong": ["pale_below"]}
ASKED = "how_it_began"


@pytest.fixture
def fresh(script: Script) -> Script:
    """The script with nothing foreseen."""
    return replace(script, foreseen=Remembered(512))


def foreseen(script: Script) -> int:
    return len(script.foreseen._kept)


def test_after_every_answer_the_next_turn_only_looks_it_up(begun: Begin, fresh: Script) -> None:
    assessment = begun(**TOLD).assessment
    for _ in weigh_ahead(fresh, assessment, ASKED):
        pass
    known = foreseen(fresh)
    assert known > 0
    for code in fresh.evidence_model.codes[ASKED]:
        best_question(fresh, assess(fresh, answered_otherwise(fresh, assessment.state, ASKED, code)))
    assert foreseen(fresh) == known


def test_what_was_weighed_ahead_picks_what_the_turn_would_pick(begun: Begin, script: Script, fresh: Script) -> None:
    conversation = begun(**TOLD)
    for _ in weigh_ahead(fresh, conversation.assessment, ASKED):
        pass
    conversation.do(GiveAnswer(ASKED, "from_one_day"))
    alone = replace(script, foreseen=Remembered(512))
    assert best_question(fresh, conversation.assessment) == best_question(alone, conversation.assessment) is not None


def test_the_work_beside_ends_when_it_is_told_to(begun: Begin, fresh: Script, monkeypatch: pytest.MonkeyPatch) -> None:
    paused = []

    def endless(*_: object):  # type: ignore[no-untyped-def]
        while True:
            paused.append(True)
            yield

    monkeypatch.setattr(ahead, "weigh_ahead", endless)
    work = Ahead(fresh)
    work.begin(begun(**TOLD).assessment, ASKED)
    work.begin(begun(**TOLD).assessment, ASKED)
    work.end()
    done = len(paused)
    assert done > 0
    assert len(paused) == done
    work.end()


def test_a_question_that_reports_nothing_needs_no_weighing(begun: Begin, fresh: Script) -> None:
    assert list(weigh_ahead(fresh, begun(**TOLD).assessment, "whose_oven")) == []
    assert foreseen(fresh) == 0
