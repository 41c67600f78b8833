"""What is finite, tried completely: every sign with every other, every act's conditions, every gate answer by pairs."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import permutations, product
from math import prod
from random import Random

import numpy as np

from assistant.knowledge.danger_questions import DANGER_NOW
from assistant.knowledge.model import Care, Knowledge
from tests.safety import trade
from tests.safety.codes import FIRST, NOT_ASKED, NOT_SURE, SKIPPED, Codes
from tests.safety.fast import Fast, Standing
from tests.safety.people import People, next_events, supposed_next
from tests.safety.talks import (
    ANSWER,
    BEGIN,
    HEAR,
    HOT,
    IDLE,
    NONSENSE,
    NOTE,
    REPEATED,
    SANE,
    WITHDRAW,
    Happened,
    Said,
    Talks,
)
from tests.safety.watch import Watch

AT_ONCE = 8192
MOST_COMBINATIONS = 4000


@dataclass
class Played:
    """What many written conversations came to."""

    talks: Talks
    standing: Standing
    broken: Counter[str]
    offered: np.ndarray


def play(fast: Fast, scripts: Sequence[Sequence[Said]], start: Talks | None = None, supposed: int = 0) -> Played:
    """Let each script happen, with every invariant checked after every event. `start`: where all of them begin."""
    number = len(scripts)
    talks = start if start is not None else Talks(fast.codes, number)
    watch, broken = Watch(fast, number), Counter[str]()
    beliefs = np.full(number, supposed)
    standing = fast.conclude(talks, beliefs)
    watch.ever |= standing.stops
    offered = fast.offered(talks, standing)
    for step in range(max(map(len, scripts))):
        event = _events([script[step] if step < len(script) else (IDLE, 0, 0, 0) for script in scripts])
        talks.happen(event, standing.hearable, standing.fit)
        standing = fast.conclude(talks, beliefs)
        offered = fast.offered(talks, standing)
        for name, where in watch.after(event, talks, standing, offered).items():
            broken[name] += int(where.sum())
    return Played(talks, standing, +broken, offered)


def _events(said: Sequence[Said]) -> Happened:
    kind, question, code, mask = np.array(said, np.int64).T
    return Happened(kind, question, code, mask)


def given(codes: Codes, question_id: str, *answers: str) -> Said:
    """An answer, a few answers, 'not_sure' or 'skipped' to a question."""
    question = codes.place[question_id]
    if answers in (("not_sure",), ("skipped",)):
        return (ANSWER, question, NOT_SURE if answers[0] == "not_sure" else SKIPPED, 0)
    if question in codes.items:
        return (ANSWER, question, FIRST, sum(1 << codes.items[question].index(answer) for answer in answers))
    return (ANSWER, question, FIRST + codes.answers[question].index(answers[0]), 0)


def every_answer(codes: Codes, question_id: str) -> Iterator[Said]:
    """Every single answer to a question, with doubt and a skip; of several answers each alone."""
    question = codes.place[question_id]
    answers = codes.items[question] if question in codes.items else codes.answers[question]
    for number, _ in enumerate(answers):
        if question in codes.items:
            yield (ANSWER, question, FIRST, 1 << number)
        else:
            yield (ANSWER, question, FIRST + number, 0)
    yield (ANSWER, question, NOT_SURE, 0)
    yield (ANSWER, question, SKIPPED, 0)


def raisings(fast: Fast, sign_id: str) -> Iterator[list[Said]]:
    """Every way in which a sign is raised: on the screen, by a typed line, by each answer that names it, or not."""
    codes = fast.codes
    screen = codes.items[codes.now]
    if sign_id in screen:
        yield [given(codes, DANGER_NOW, sign_id)]
    yield [given(codes, DANGER_NOW, "none"), (HEAR, codes.signs.index(sign_id), 0, 0)]
    for question_id, question in fast.knowledge.questions.items():
        for choice_id, choice in question.choices.items():
            if choice.signals == sign_id and not codes.danger_questions[codes.place[question_id]]:
                yield [given(codes, DANGER_NOW, "none"), given(codes, question_id, choice_id)]
    yield [given(codes, DANGER_NOW, "none")]


def sign_scripts(fast: Fast) -> Iterator[list[Said]]:
    """Each sign in each way, alone and with every other before or after it, with each answer; then all taken back."""
    codes = fast.codes
    for sign_id in codes.signs:
        own = f"sign_{sign_id}"
        for raised, answer in product(list(raisings(fast, sign_id)), list(every_answer(codes, own))):
            back: list[Said] = [(WITHDRAW, said[1], 0, 0) for said in raised if said[0] == ANSWER]
            yield [*raised, answer, (WITHDRAW, codes.place[own], 0, 0), *back]
            for other in codes.signs:
                if other != sign_id:
                    means = fast.knowledge.signs[other].answers
                    stopping = given(codes, f"sign_{other}", next(a for a, m in means.items() if m == "stop"))
                    yield [*raised, (HEAR, codes.signs.index(other), 0, 0), answer, stopping, *back]
                    yield [stopping, *raised, answer, (WITHDRAW, stopping[1], 0, 0)]


def read_by(knowledge: Knowledge, findings: Sequence[str]) -> tuple[str, ...]:
    """The questions that these findings read, through every finding between."""
    read: dict[str, None] = {}
    left, seen = list(findings), set(findings)
    while left:
        finding = knowledge.findings[left.pop()]
        further = [*finding.unless]
        for condition in (c for group in finding.groups for c in group):
            if condition.question is not None:
                read[condition.question] = None
            else:
                further.append(str(condition.finding))
        left += [each for each in further if each not in seen]
        seen |= set(further)
    return tuple(read)


def act_scripts(fast: Fast, act_id: str) -> Iterator[list[Said]]:
    """All combinations of the answers to the questions that an act's findings read, each of them also missing."""
    return combinations_of(fast, read_by(fast.knowledge, fast.knowledge.acts[act_id].only_when))


def combinations_of(fast: Fast, questions: Sequence[str]) -> Iterator[list[Said]]:
    """All combinations of single answers to these questions, each of them also missing; no danger is told.

    Where there are more than MOST_COMBINATIONS, as many drawn at random, the same ones each time.
    """
    calm = given(fast.codes, DANGER_NOW, "none")
    answers: list[list[Said | None]] = [[None, *every_answer(fast.codes, question_id)] for question_id in questions]
    every: Iterable[tuple[Said | None, ...]] = product(*answers)
    if prod(map(len, answers)) > MOST_COMBINATIONS:
        draw = Random(1)
        every = (tuple(draw.choice(each) for each in answers) for _ in range(MOST_COMBINATIONS))
    for chosen in every:
        yield [calm, *(said for said in chosen if said is not None)]


def gate_questions(knowledge: Knowledge) -> tuple[str, ...]:
    """What the findings read that allow or cap care, and what the trade's own table names."""
    gates = [f for f, finding in knowledge.findings.items() if finding.then.allows_care or finding.then.care_at_most]
    named = (*trade.NOTHING_HOT_AFTER, *trade.NOTHING_HOT_AFTER_TOLD, *trade.TOO_HOT_AND[1])
    return tuple(dict.fromkeys((*read_by(knowledge, gates), *(q for q in named if q in knowledge.questions))))


def gate_deviations(fast: Fast) -> list[Said]:
    """Every answer to every gate question; of the ticks of a gate also each combination with one left out."""
    codes = fast.codes
    found = [said for question_id in gate_questions(fast.knowledge) for said in every_answer(codes, question_id)]
    gate = codes.place[trade.HOT_GATE[0]]
    every = sum(1 << codes.items[gate].index(item) for item in trade.HOT_GATE[1])
    found += [(ANSWER, gate, FIRST, every & ~(1 << codes.items[gate].index(item))) for item in trade.HOT_GATE[1]]
    return found


def hot_questions(knowledge: Knowledge) -> tuple[str, ...]:
    """Questions that need a hot oven and may be put at home."""
    return tuple(
        question_id
        for question_id, question in knowledge.questions.items()
        if Care.WATCH_HOT.rank <= question.care.rank <= trade.MOST_AT_HOME
    )


def states_before(fast: Fast, wanted: Sequence[str], seed: int = 1, number: int = 2048) -> dict[str, Talks]:
    """question -> a state, reached by a random path, in which it may come next."""
    chance = np.random.default_rng(seed)
    found: dict[str, Talks] = {}
    for _ in range(20):
        talks, people = Talks(fast.codes, number), People.drawn(number, chance)
        people.kind[:] = 2
        supposed = np.zeros(number, np.int64)
        standing = fast.conclude(talks, supposed)
        for _ in range(40):
            offered = fast.offered(talks, standing)
            for question_id in set(wanted) - found.keys():
                if offered[fast.codes.place[question_id]].any():
                    found[question_id] = talks.one(int(offered[fast.codes.place[question_id]].argmax()))
            if len(found) == len(wanted):
                return found
            event = next_events(fast, talks, people, offered, chance)
            talks.happen(event, standing.hearable, standing.fit)
            standing = fast.conclude(talks, supposed_next(fast, supposed, chance, event) * 0)
    return found


def gate_orders(fast: Fast, together: int) -> Iterator[list[list[Said]]]:
    """All pairs (or triples …) of answers to different gate questions, in every order, in batches."""
    batch: list[list[Said]] = []
    for chosen in permutations(gate_deviations(fast), together):
        if len({said[1] for said in chosen}) == together:
            batch.append(list(chosen))
        if len(batch) == AT_ONCE:
            yield batch
            batch = []
    if batch:
        yield batch


def broken_by_gate_answers(fast: Fast, together: int = 2) -> tuple[Counter[str], int]:
    """What gate answers break, so many at a time, after each hot question's own state; and how many were tried."""
    broken, tried = Counter[str](), 0
    for state in states_before(fast, hot_questions(fast.knowledge)).values():
        for batch in gate_orders(fast, together):
            broken += play(fast, batch, state.repeated(len(batch))).broken
            tried += len(batch)
    return broken, tried


def measured_questions(knowledge: Knowledge) -> tuple[str, ...]:
    """Hot questions that are answered by what is written down at the oven."""
    return tuple(q for q in hot_questions(knowledge) if knowledge.questions[q].is_measurement)


def hot_answer_scripts(fast: Fast) -> Iterator[list[Said]]:
    """Of each thermometer, readings far above the setting are the first answer of all."""
    codes = fast.codes
    for row, question in enumerate(codes.measured):
        if codes.has_readings[row]:
            yield [(ANSWER, question, codes.very_hot(question), 0)]


def measuring_scripts(fast: Fast, question_id: str) -> Iterator[list[Said]]:
    """A measurement is begun; then every answer to a gate question, each of them taken back, or a sign heard; then it
    is tried to begin once more. And every three lines that are noted.
    """
    codes = fast.codes
    begun: Said = (BEGIN, codes.place[question_id], 0, 0)
    meanwhile = [*gate_deviations(fast), *((HEAR, sign, 0, 0) for sign in range(len(codes.signs)))]
    meanwhile += [(WITHDRAW, codes.place[gate], 0, 0) for gate in gate_questions(fast.knowledge)]
    for said in meanwhile:
        yield [begun, said, begun]
        yield [said, begun]
    for lines in product((SANE, HOT, NONSENSE, REPEATED), repeat=3):
        yield [begun, *((NOTE, codes.place[question_id], line, 0) for line in lines), begun]


def broken_while_measuring(fast: Fast) -> Counter[str]:
    """What is broken by anything said while something is measured, after each measuring question's own state."""
    broken = Counter[str]()
    for question_id, state in states_before(fast, measured_questions(fast.knowledge)).items():
        scripts = list(measuring_scripts(fast, question_id))
        broken += play(fast, scripts, state.repeated(len(scripts))).broken
    return broken


def answers_of(state: Talks) -> list[Said]:
    """What was answered in the first conversation, in the order in which it was said."""
    told = [number for number in state.at[:, 0].argsort() if state.answer[number, 0] != NOT_ASKED]
    return [(ANSWER, int(n), int(state.answer[n, 0]), int(state.mask[n, 0])) for n in told]
