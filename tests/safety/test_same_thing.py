"""The fast evaluator of the random paths is the project's own, said a second time: they agree on random states."""

from collections.abc import Iterator

import numpy as np
import pytest

from assistant.interview.actions import allowed_actions
from assistant.interview.assess import Assessment
from assistant.interview.conversation import Conversation
from assistant.interview.next_question import choose_next
from assistant.interview.script import Script
from assistant.interview.way import may_ask
from assistant.knowledge.danger_questions import OVEN_IS_OFF
from assistant.knowledge.model import Knowledge
from tests.safety.codes import Ints
from tests.safety.fast import Fast, Standing
from tests.safety.people import People, next_events, supposed_next
from tests.safety.real import begin, believing, command_of, supposed_belief
from tests.safety.talks import Talks

ROLES = ("householder", "agent", "engineer")
TALKS = 24
STEPS = 45


def signs_of(fast: Fast, bits: int) -> set[str]:
    return {sign_id for sign_id, bit in fast.codes.bit.items() if int(bits) & bit}


def differences(fast: Fast, talks: Talks, standing: Standing, talk: int, real: Assessment, script: Script) -> list[str]:
    """What the fast evaluator says otherwise than the project of one conversation, by name."""
    danger = real.danger
    screen = int(standing.open_screen[talk])
    open_questions = {f"sign_{s}" for s in signs_of(fast, standing.open_signs[talk])}
    open_questions |= {fast.codes.questions[screen]} if screen >= 0 else set()
    askable = fast.may_ask(talks, standing)[:, talk]
    pairs: dict[str, tuple[object, object]] = {
        "findings": ({f for f, holds in standing.holds.items() if holds[talk]}, set(real.trace.concluded)),
        "stops": (signs_of(fast, standing.stops[talk]), {stop.sign_id for stop in danger.stops}),
        "open": (open_questions, set(danger.open_questions)),
        "urgent": (
            {f"sign_{s}" for s in signs_of(fast, standing.urgent[talk])},
            {danger.urgent_question} - {None},
        ),
        "withdrawn": (signs_of(fast, standing.withdrawn[talk]), set(danger.withdrawn)),
        "off": (bool(standing.off_confirmed[talk]), danger.off_confirmed),
        "ask off": (bool(standing.ask_whether_off[talk]), danger.ask_whether_off),
        "danger open": (bool(standing.danger_open[talk]), danger.open),
        "parts": ({p for p, lacks in fast.parts_not_fitted(talks).items() if lacks[talk]}, set(real.not_fitted)),
        "care": (int(standing.care[talk]), real.allowed_care.rank),
        "may ask": (
            {q for q, allowed in zip(fast.codes.questions, askable, strict=True) if allowed},
            {q for q in fast.codes.questions if may_ask(script, real, q)},
        ),
        "sequence": (int(talks.sequence[talk]), real.state.sequence),
    }
    return [f"{name}: {one} is not {other}" for name, (one, other) in pairs.items() if one != other]


def followed(
    fast: Fast, script: Script, number: int, steps: int, seed: int
) -> Iterator[tuple[Talks, Standing, list[Conversation], Ints]]:
    """Both lead the same random conversations: after each step the states of the two."""
    chance = np.random.default_rng(seed)
    talks, people, supposed = Talks(fast.codes, number), People.drawn(number, chance), np.zeros(number, np.int64)
    conversations = [begin(script, fast.role) for _ in range(number)]
    standing = fast.conclude(talks, supposed)
    for _ in range(steps):
        event = next_events(fast, talks, people, fast.offered(talks, standing), chance)
        commands = [command_of(fast.codes, event, talks, talk) for talk in range(number)]
        talks.happen(event, standing.hearable)
        supposed = supposed_next(fast, supposed, chance)
        standing = fast.conclude(talks, supposed)
        for talk, conversation in enumerate(conversations):
            command = commands[talk]
            with believing(supposed_belief(script, fast.codes, int(supposed[talk]))):
                conversation._assessment = None
                if command is not None:
                    conversation.do(command)
                settle(conversation)
        yield talks, standing, conversations, supposed


def settle(conversation: Conversation) -> None:
    """Record the stops that a belief which changed by itself reaches or leaves, as the next command would."""
    from assistant.interview.decide import consequences_of
    from assistant.interview.state import fold

    while consequences := consequences_of(conversation.script.knowledge, conversation.assessment):
        events = conversation._events(consequences, conversation.state.sequence, None)
        conversation._keep(events)
        conversation.state, conversation._assessment = fold(events, conversation.state), None


@pytest.mark.parametrize("role", ROLES)
def test_fast_and_real_agree_on_every_step_of_random_conversations(
    knowledge: Knowledge, plain_script: Script, role: str
) -> None:
    fast = Fast(knowledge, role)
    compared = stopped = hot = 0
    for talks, standing, conversations, _ in followed(fast, plain_script, TALKS, STEPS, ROLES.index(role)):
        for talk, conversation in enumerate(conversations):
            found = differences(fast, talks, standing, talk, conversation.assessment, plain_script)
            assert found == [], conversation.state.answers
            compared += 1
            stopped += standing.stops[talk] != 0
            hot += standing.care[talk] >= 2
    assert compared == TALKS * STEPS
    assert stopped > 100
    assert hot > 0


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
                assert now == {OVEN_IS_OFF}
            decision = plain_script.decision(conversation.state.region)
            if not conversation.assessment.danger.open and not standing.handed_on[talk]:
                told = {decision.actions[n] for n in allowed_actions(plain_script, conversation.assessment)}
                assert {a.remedy for a in told if a.ending == "do_one_thing"} <= {a for a in acts if acts[a][talk]}
    assert len(asked) > 10
