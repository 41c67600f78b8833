"""The fast evaluator and the project side by side: the same conversations, and what they say otherwise of them."""

from collections.abc import Iterator, Sequence
from contextlib import suppress
from datetime import datetime

import numpy as np

from assistant.errors import Refused
from assistant.interview.assess import Assessment
from assistant.interview.conversation import Conversation
from assistant.interview.decide import consequences_of
from assistant.interview.script import Script
from assistant.interview.state import Answer, State, fold
from assistant.interview.way import may_ask
from tests.safety.codes import FIRST, NOT_ASKED, NOT_SURE, Ints
from tests.safety.fast import Fast, Standing
from tests.safety.people import People, next_events, supposed_next
from tests.safety.real import begin, believing, command_of, supposed_belief
from tests.safety.talks import Happened, Said, Talks


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
        "parts": (
            {p for p, lacks in fast.findings.parts_not_fitted(talks).items() if lacks[talk]},
            set(real.not_fitted),
        ),
        "care": (int(standing.care[talk]), real.allowed_care.rank),
        "may ask": (
            {q for q, allowed in zip(fast.codes.questions, askable, strict=True) if allowed},
            {q for q in fast.codes.questions if may_ask(script, real, q)},
        ),
        "measuring": (
            {
                fast.codes.questions[fast.codes.measured[row]]: int(talks.lines[row, talk])
                for row in np.flatnonzero(talks.measuring[:, talk])
            },
            {question_id: len(each.lines) for question_id, each in real.state.measuring.items()},
        ),
        "sequence": (int(talks.sequence[talk]), real.state.sequence),
    }
    return [f"{name}: {one} is not {other}" for name, (one, other) in pairs.items() if one != other]


def followed(
    fast: Fast, script: Script, number: int, steps: int, seed: int, first: Sequence[Said] = ()
) -> Iterator[tuple[Talks, Standing, list[Conversation], Ints]]:
    """Both lead the same random conversations, all of which begin with what is said `first`: after each step the states
    of the two.
    """
    chance = np.random.default_rng(seed)
    talks, people, supposed = Talks(fast.codes, number), People.drawn(number, chance), np.zeros(number, np.int64)
    conversations = [begin(script, fast.role) for _ in range(number)]
    standing = fast.conclude(talks, supposed)
    for step in range(len(first) + steps):
        random = step >= len(first)
        if random:
            event = next_events(fast, talks, people, fast.offered(talks, standing), chance)
        else:
            event = Happened(*np.repeat(np.array([first[step]]).T, number, axis=1))
        commands = [command_of(fast.codes, event, talks, talk) for talk in range(number)]
        talks.happen(event, standing.hearable, standing.fit)
        supposed = supposed_next(fast, supposed, chance, event) if random else supposed
        standing = fast.conclude(talks, supposed)
        for talk, conversation in enumerate(conversations):
            command = commands[talk]
            with believing(supposed_belief(script, fast.codes, int(supposed[talk]))):
                conversation._assessment = None
                with suppress(Refused):
                    conversation.do(*([command] if command is not None else []))
                settle(conversation)
        yield talks, standing, conversations, supposed


def settle(conversation: Conversation) -> None:
    """Record the stops that a belief which changed by itself reaches or leaves, as the next command would."""
    while consequences := consequences_of(conversation.script, conversation.assessment):
        events = conversation._events(consequences, conversation.state.sequence, None)
        conversation._keep(events)
        conversation.state, conversation._assessment = fold(events, conversation.state), None


def random_sets(fast: Fast, number: int, seed: int) -> Talks:
    """Sets of answers drawn at random, question by question: most of them no conversation would come to."""
    chance = np.random.default_rng(seed)
    talks = Talks(fast.codes, number)
    for question, how_many in enumerate(fast.codes.how_many):
        talks.answer[question] = chance.integers(NOT_SURE, FIRST + how_many, number)
        talks.answer[question][chance.random(number) < 0.4] = NOT_ASKED
        if question in fast.codes.items:
            several = talks.answer[question] >= FIRST
            every = 1 << len(fast.codes.items[question])
            talks.mask[question] = np.where(several, chance.integers(1, every, number), 0)
    return talks


def state_of(fast: Fast, talks: Talks, talk: int) -> State:
    """The project's state with these answers."""
    answers = {}
    for question, question_id in enumerate(fast.codes.questions):
        code, mask = int(talks.answer[question, talk]), int(talks.mask[question, talk])
        if code >= FIRST:
            given = fast.codes.value(question, code, mask)
            text = fast.knowledge.questions[question_id].kind == "text"
            value = None if text else tuple(given) if isinstance(given, list) else given
            answers[question_id] = Answer(question_id, "answered", value, 2, datetime.min)
        elif code != NOT_ASKED:
            status = "not_sure" if code == NOT_SURE else "skipped"
            answers[question_id] = Answer(question_id, status, None, 2, datetime.min)
    return State(session_id="a", role=fast.role, region=next(iter(fast.knowledge.regions)), sequence=2, answers=answers)
