"""The fast evaluator of the random paths is the project's own, said a second time: they agree on random states."""

import numpy as np
import pytest

from assistant.interview.actions import allowed_actions
from assistant.interview.assess import assess
from assistant.interview.next_question import choose_next
from assistant.interview.script import Script
from assistant.knowledge.danger_questions import OVEN_IS_OFF
from assistant.knowledge.model import Knowledge
from tests.safety.agree import differences, followed, random_sets, state_of
from tests.safety.exhaustive import answers_of, broken_while_measuring, measured_questions, states_before
from tests.safety.fast import Fast
from tests.safety.real import believing, supposed_belief
from tests.safety.talks import BEGIN

ROLES = ("householder", "agent", "engineer")
talks_each = 24
STEPS = 36
SETS = 800


def test_findings_and_parts_agree_on_random_sets_of_answers(plain_script: Script, fast: Fast) -> None:
    talks = random_sets(fast, SETS, 1)
    standing = fast.conclude(talks, np.zeros(SETS, np.int64))
    lacking = fast.findings.parts_not_fitted(talks)
    concluded: set[str] = set()
    with believing(supposed_belief(plain_script, fast.codes, 0)):
        for talk in range(SETS):
            real = assess(plain_script, state_of(fast, talks, talk))
            found = {finding_id for finding_id, holds in standing.holds.items() if holds[talk]}
            assert found == real.trace.concluded, real.state.answers
            assert {part for part, lacks in lacking.items() if lacks[talk]} == real.not_fitted
            concluded |= found
    assert len(concluded) > 0.9 * len(plain_script.knowledge.findings)


@pytest.mark.parametrize("role", ROLES)
def test_fast_and_real_agree_on_every_step_of_random_conversations(
    knowledge: Knowledge, plain_script: Script, role: str
) -> None:
    fast = Fast(knowledge, role)
    compared = stopped = hot = 0
    for talks, standing, conversations, _ in followed(fast, plain_script, talks_each, STEPS, ROLES.index(role)):
        for talk, conversation in enumerate(conversations):
            found = differences(fast, talks, standing, talk, conversation.assessment, plain_script)
            assert found == [], conversation.state.answers
            compared += 1
            stopped += standing.stops[talk] != 0
            hot += standing.care[talk] >= 2
    assert compared == talks_each * STEPS
    assert stopped > 100
    assert hot > 0


def test_fast_and_real_agree_while_something_is_measured(fast: Fast, plain_script: Script) -> None:
    """All measurements are begun in both; lines, slips, danger and ways out follow."""
    states = states_before(fast, measured_questions(fast.knowledge))
    assert set(states) == set(measured_questions(fast.knowledge))
    talks_each = 10
    begun = taken = hot = ended = 0
    for question_id, state in states.items():
        question = fast.codes.place[question_id]
        first = [*answers_of(state), (BEGIN, question, 0, 0)]
        under_way = 0
        for step, (talks, standing, conversations, _) in enumerate(
            followed(fast, plain_script, talks_each, 12, 3, first)
        ):
            for talk, conversation in enumerate(conversations):
                found = differences(fast, talks, standing, talk, conversation.assessment, plain_script)
                assert found == [], conversation.state
                hot += conversation.state.heard.get("too_hot", 0) > 0
            now = sum(bool(conversation.state.measuring) for conversation in conversations)
            begun += now if step == len(first) - 1 else 0
            ended += max(under_way - now, 0)
            under_way = now
            taken += sum(each.lines != () for one in conversations for each in one.state.measuring.values())
    assert begun == talks_each * len(states)
    assert ended > 4 * len(states)
    assert taken > 20
    assert hot > 0


def test_nothing_said_while_something_is_measured_breaks_an_invariant(fast: Fast) -> None:
    assert broken_while_measuring(fast) == {}


def test_whatever_the_project_asks_next_is_among_the_questions_offered(
    knowledge: Knowledge, plain_script: Script
) -> None:
    fast = Fast(knowledge)
    asked = set()
    for step, (talks, standing, conversations, supposed) in enumerate(followed(fast, plain_script, 12, 36, 5)):
        if step % 4:
            continue
        offered = fast.offered(talks, standing)
        acts = fast.acts_in_reach(talks, standing)
        for talk, conversation in enumerate(conversations):
            with believing(supposed_belief(plain_script, fast.codes, int(supposed[talk]))):
                chosen = choose_next(plain_script, conversation.assessment)
            now = {q for q, offers in zip(fast.codes.questions, offered[:, talk], strict=True) if offers}
            assert chosen is None or chosen in now, conversation.state.answers
            asked.add(chosen)
            if conversation.assessment.danger.stops and chosen is None and now:
                skipped = {q for q in now if conversation.state.status(q) == "skipped"}
                assert now - skipped <= {OVEN_IS_OFF}
            decision = plain_script.decision(conversation.state.region)
            if not conversation.assessment.danger.open and not standing.handed_on[talk]:
                told = {decision.actions[n] for n in allowed_actions(plain_script, conversation.assessment)}
                assert {a.remedy for a in told if a.ending == "do_one_thing"} <= {a for a in acts if acts[a][talk]}
    assert len(asked) > 10
