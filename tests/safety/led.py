"""Conversations as the project itself leads them, with random people: how many questions are put before the verdict."""

from collections.abc import Iterator

import numpy as np

from assistant.interview.assess import Assessment
from assistant.interview.next_question import choose_next
from assistant.interview.script import Script
from assistant.knowledge.danger_questions import OVEN_IS_OFF
from tests.safety.fast import Fast
from tests.safety.people import People, answers_to
from tests.safety.real import begin, say_all
from tests.safety.talks import ANSWER

NO_END = 150
"""Questions after which a conversation counts as one without an end."""


def questions_put(script: Script, fast: Fast, number: int, seed: int) -> Iterator[int]:
    """Of each conversation, how many questions were put until nothing more was asked, or NO_END."""
    chance = np.random.default_rng(seed)
    for _ in range(number):
        people = People.drawn(1, chance)
        conversation, put = begin(script, fast.role), 0
        while put < NO_END:
            question_id = choose_next(script, conversation.assessment)
            if question_id is None and _asked_whether_off(conversation.assessment):
                question_id = OVEN_IS_OFF
            if question_id is None:
                break
            question = fast.codes.place[question_id]
            code, mask = answers_to(fast, np.array([question]), people, chance)
            say_all(conversation, fast.codes, [(ANSWER, question, int(code[0]), int(mask[0]))])
            put += 1
        yield put


def _asked_whether_off(assessment: Assessment) -> bool:
    """Once after a stop where that may be asked."""
    danger = assessment.danger
    return bool(danger.stops) and danger.ask_whether_off and OVEN_IS_OFF not in assessment.state.answers
