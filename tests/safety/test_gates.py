"""Nothing hot without every gate, and no act without its conditions, over all combinations that matter."""

import pytest

from assistant.interview.assess import assess
from assistant.interview.script import Script
from assistant.interview.supposed import answered_otherwise
from assistant.interview.way import may_ask
from assistant.knowledge.model import Care, Knowledge
from tests.safety import still_open, trade
from tests.safety.adversary import acts_told_wrongly
from tests.safety.exhaustive import (
    act_scripts,
    answers_of,
    broken_by_gate_answers,
    gate_questions,
    hot_questions,
    play,
    states_before,
)
from tests.safety.fast import Fast
from tests.safety.real import begin, believing, say_all, supposed_belief


def test_every_hot_question_can_come_at_all(fast: Fast) -> None:
    wanted = hot_questions(fast.knowledge)
    assert len(wanted) >= 3
    assert states_before(fast, wanted).keys() == set(wanted)


def test_no_two_answers_in_any_order_lead_to_a_hot_question_without_its_gate(fast: Fast) -> None:
    """All pairs of answers to the questions that gates read. What is still open in the rules is named, and no more."""
    broken, tried = broken_by_gate_answers(fast, 2)
    assert tried > 20_000
    assert set(broken) == set(still_open.HOT)


def test_the_project_itself_asks_nothing_hot_after_a_forbidding_answer(plain_script: Script, fast: Fast) -> None:
    hot = hot_questions(fast.knowledge)
    for question_id, state in states_before(fast, hot).items():
        talked = begin(plain_script, "householder")
        with believing(supposed_belief(plain_script, fast.codes, 0)):
            say_all(talked, fast.codes, answers_of(state))
            assert may_ask(plain_script, assess(plain_script, talked.state), question_id)
            for forbidding, answers in trade.NOTHING_HOT_AFTER.items():
                for answer in answers - {"not_sure", "skipped"}:
                    if any(forbidding in name for name in still_open.HOT):
                        continue
                    then = assess(plain_script, answered_otherwise(plain_script, talked.state, forbidding, answer))
                    assert not any(may_ask(plain_script, then, each) for each in hot), (forbidding, answer)


def test_the_gates_read_what_the_trade_asks_about(knowledge: Knowledge) -> None:
    read = set(gate_questions(knowledge))
    assert {q for needed in trade.NEEDED_FOR_CARE.values() for q in needed} <= read
    assert trade.HOT_GATE[0] in read
    assert set(trade.HOT_GATE[1]) <= set(knowledge.questions[trade.HOT_GATE[0]].choices)


def test_every_answer_in_the_trades_tables_is_one_that_the_rules_know(knowledge: Knowledge) -> None:
    """A renamed answer would make a line of the tables say nothing."""
    tables = [trade.NOTHING_HOT_AFTER, trade.NOTHING_HOT_AFTER_TOLD, trade.TOO_HOT_AND[1]]
    tables += [*trade.NEEDED_FOR_CARE.values(), *trade.ACTS.values()]
    for table in tables:
        for question_id, answers in table.items():
            assert answers <= {*knowledge.questions[question_id].choices, "not_sure", "skipped"}, question_id


@pytest.mark.parametrize("act", trade.ACTS)
def test_an_act_is_told_only_under_its_conditions_whatever_else_is_answered(fast: Fast, act: str) -> None:
    played = play(fast, list(act_scripts(fast, act)))
    assert played.broken == {}
    assert fast.acts_in_reach(played.talks, played.standing)[act].sum() >= 1, "an act that can't come tests nothing"


def test_the_project_itself_allows_an_act_only_under_its_conditions(plain_script: Script, fast: Fast) -> None:
    assert list(acts_told_wrongly(plain_script, fast)) == []


def test_no_question_at_home_needs_more_care_than_the_trade_allows(knowledge: Knowledge) -> None:
    for role in trade.AT_HOME:
        assert not trade.is_beyond_home(knowledge.roles[role].asked_up_to)
    assert Care.OPEN_HOT.rank == trade.MOST_AT_HOME
