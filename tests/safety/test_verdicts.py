"""No belief and no cost outranks danger or tells what the answers don't allow: the project's own verdicts."""

from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import replace

import numpy as np
import pytest

from assistant.belief.hypotheses import Hypothesis
from assistant.errors import Refused
from assistant.interview.commands import GiveAnswer, HearDanger, WithdrawAnswer
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.knowledge.model import CALL_STAGES, Question
from tests.safety.adversary import beliefs, breaches, breaches_of_verdict, scripts_of, telling_beliefs
from tests.safety.codes import Codes
from tests.safety.fast import Fast
from tests.safety.people import People, next_events
from tests.safety.real import begin, command_of
from tests.safety.talks import Talks


@pytest.fixture(scope="module")
def scripts(plain_script: Script) -> list[Script]:
    """The regions' costs as they are, none at all, a thousand times as high, and visits alone beyond price."""
    return scripts_of(plain_script)


def in_danger(script: Script, sign_id: str, role: str) -> Conversation:
    conversation = begin(script, role)
    stopping = next(a for a, means in script.knowledge.signs[sign_id].answers.items() if means == "stop")
    conversation.do(GiveAnswer(f"sign_{sign_id}", stopping))
    return conversation


@pytest.mark.parametrize(
    ("role", "believed"), [("householder", beliefs), ("agent", telling_beliefs), ("engineer", telling_beliefs)]
)
def test_no_belief_and_no_cost_outranks_a_stop(
    scripts: list[Script], role: str, believed: Callable[[Script], Iterator[Hypothesis]]
) -> None:
    tried = 0
    for sign_id in scripts[0].knowledge.signs:
        state = in_danger(scripts[0], sign_id, role).state
        for hypothesis in believed(scripts[0]):
            assert list(breaches(scripts, state, hypothesis)) == [], (sign_id, hypothesis)
            tried += len(scripts)
    assert tried > 400


def test_no_region_changes_what_stops(scripts: list[Script]) -> None:
    for region in scripts[0].knowledge.regions:
        for sign_id in scripts[0].knowledge.signs:
            state = replace(in_danger(scripts[0], sign_id, "householder").state, region=region)
            for hypothesis in telling_beliefs(scripts[0]):
                assert list(breaches(scripts, state, hypothesis)) == [], (region, sign_id)


def test_a_sign_taken_back_leaves_a_visit_whatever_is_believed(scripts: list[Script]) -> None:
    knowledge = scripts[0].knowledge
    for sign_id, sign in knowledge.signs.items():
        conversation = in_danger(scripts[0], sign_id, "householder")
        clearing = next(a for a, means in sign.answers.items() if means == "clear")
        conversation.do(GiveAnswer("danger_now", ["none"]), GiveAnswer(f"sign_{sign_id}", clearing))
        assert conversation.state.reached
        assert not conversation.state.standing_signs
        for hypothesis in beliefs(scripts[0]):
            assert list(breaches(scripts, conversation.state, hypothesis)) == [], (sign_id, hypothesis)


@pytest.mark.parametrize("role", ["householder", "engineer"])
def test_a_stop_stands_through_every_later_answer(plain_script: Script, fast: Fast, role: str) -> None:
    """Whatever is answered afterwards to other questions, and every whole verdict then."""
    rng = np.random.default_rng(3)
    questions = plain_script.knowledge.questions
    most = plain_script.knowledge.roles[role].asked_up_to.rank
    for sign_id in plain_script.knowledge.signs:
        conversation = in_danger(plain_script, sign_id, role)
        for question, code, mask in later_answers(fast.codes, rng, 12):
            question_id = fast.codes.questions[question]
            told = GiveAnswer(question_id, fast.codes.value(question, code, mask))
            beyond = questions[question_id].care.rank > most or questions[question_id].stage in CALL_STAGES
            if beyond and not speaks_of_danger(questions[question_id], told.value):
                with pytest.raises(Refused, match="not_for_role"):
                    conversation.do(told)
            elif not question_id.startswith(("sign_", "danger_")):
                conversation.do(told)
        assert sign_id in {stop.sign_id for stop in conversation.assessment.danger.stops}
        assert list(breaches_of_verdict(plain_script, conversation.assessment)) == []


def speaks_of_danger(question: Question, value: object) -> bool:
    """Such an answer is taken from whoever gives it."""
    return isinstance(value, str) and value in question.choices and question.choices[value].signals is not None


def later_answers(codes: Codes, rng: np.random.Generator, number: int) -> Iterator[tuple[int, int, int]]:
    for question in rng.choice(len(codes.questions), number, replace=False):
        mask = 1 << int(rng.integers(len(codes.items[question]))) if question in codes.items else 0
        yield int(question), 3 + int(rng.integers(codes.how_many[question])), mask


def test_random_conversations_end_as_their_answers_allow_under_every_belief(scripts: list[Script], fast: Fast) -> None:
    states = [conversation.state for conversation in random_conversations(scripts[0], fast, 8, 26, 7)]
    told: set[str] = set()
    for state in states:
        for hypothesis in beliefs(scripts[0]):
            assert list(breaches(scripts, state, hypothesis)) == [], (state.answers, hypothesis)
        told |= set(state.answers)
    assert len(told) > 40


def test_whole_verdicts_give_no_tip_while_danger_is_open_or_was_taken_back(plain_script: Script, fast: Fast) -> None:
    for conversation in random_conversations(plain_script, fast, 12, 18, 11):
        if not conversation.assessment.danger.open_questions:
            assert list(breaches_of_verdict(plain_script, conversation.assessment)) == []


def random_conversations(script: Script, fast: Fast, number: int, steps: int, seed: int) -> list[Conversation]:
    """Conversations in which any allowed question was put next; nothing is supposed of belief."""
    chance = np.random.default_rng(seed)
    talks, people = Talks(fast.codes, number), People.drawn(number, chance)
    conversations = [begin(script, fast.role) for _ in range(number)]
    nothing = np.zeros(number, np.int64)
    standing = fast.conclude(talks, nothing)
    for _ in range(steps):
        event = next_events(fast, talks, people, fast.offered(talks, standing), chance)
        for talk, conversation in enumerate(conversations):
            command = command_of(fast.codes, event, talks, talk)
            if command is not None and not isinstance(command, HearDanger | WithdrawAnswer):
                with suppress(Refused):
                    conversation.do(command)
        talks.happen(event, standing.hearable, standing.fit)
        standing = fast.conclude(talks, nothing)
    return conversations
