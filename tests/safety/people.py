"""What random people do next in many conversations: answers, measurements, second thoughts, danger told in between."""

from dataclasses import dataclass

import numpy as np

from tests.safety.codes import FIRST, NOT_ASKED, NOT_SURE, SKIPPED, Codes, Flags, Ints
from tests.safety.fast import CALM, DANGEROUS, STOPPING, Fast
from tests.safety.talks import (
    ANSWER,
    BEGIN,
    HEAR,
    HOT,
    IDLE,
    LEAVE,
    NONSENSE,
    NOTE,
    REPEATED,
    SANE,
    TAKE_BACK,
    WITHDRAW,
    Happened,
    Talks,
)

BEGINNINGS = 3
"""Kinds of people: who answers at random, who mostly has no danger to tell, and who also mostly says what lets a
conversation go on."""


@dataclass
class People:
    """Of each conversation: the kind of person, how readily it ends, and how many second thoughts are left."""

    kind: Ints
    ends: np.ndarray
    thoughts: Ints

    @classmethod
    def drawn(cls, number: int, chance: np.random.Generator) -> "People":
        return cls(
            kind=chance.integers(0, BEGINNINGS, number),
            ends=chance.choice([0.0, 0.01, 0.05], number),
            thoughts=chance.integers(0, 5, number),
        )

    def replace(self, which: Flags, chance: np.random.Generator) -> None:
        """Other people in these conversations."""
        others = People.drawn(int(which.sum()), chance)
        self.kind[which], self.ends[which], self.thoughts[which] = others.kind, others.ends, others.thoughts


def next_events(fast: Fast, talks: Talks, people: People, offered: Flags, chance: np.random.Generator) -> Happened:
    """One event in each conversation: mostly an answer to any of the questions that are offered.

    Where none is offered, a second thought: something changed, taken back, heard or told unasked; or nothing.
    """
    codes, number = fast.codes, talks.number
    asked = any_of(offered, chance)
    towards = any_of(offered & (fast.findings.wanted_for_care[:, None] > 0), chance)
    asked = np.where((towards >= 0) & (people.kind == 2) & (chance.random(number) < 0.35), towards, asked)
    put = asked >= 0
    what = chance.random(number)
    second = (people.thoughts > 0) & (~put | (what < 0.06))
    people.thoughts = people.thoughts - second
    kind = np.where(put & ~second, ANSWER, IDLE)
    kind = np.where(second, chance.choice([ANSWER, WITHDRAW, HEAR, WITHDRAW], number), kind)
    unasked = chance.choice(fast.answerable, number)
    earlier = any_of(talks.answer != NOT_ASKED, chance)
    changed = np.where((earlier >= 0) & (chance.random(number) < 0.6), earlier, unasked)
    question = np.where(put & ~second, asked, changed)
    code, mask = answers_to(fast, question, people, chance)
    question = np.where((kind == WITHDRAW) & (earlier >= 0), earlier, question)
    question = np.where(kind == HEAR, chance.integers(0, len(codes.signs), number), question)
    return _measuring(fast, talks, Happened(kind, question, code, mask), chance)


def _measuring(fast: Fast, talks: Talks, event: Happened, chance: np.random.Generator) -> Happened:
    """Where something is to be measured, half the people do so with a clock; a few try to at any other time.

    While it is under way, most of what they say belongs to it: lines of every sort, slips taken back, leaving
    it, danger told. The rest is said in the middle of it.
    """
    measured = np.array(fast.codes.measured)
    if not len(measured):
        return event
    what = chance.random(talks.number)
    to_measure = (event.kind == ANSWER) & np.isin(event.question, measured)
    untimely = what > 0.997
    begins = (to_measure & (what < 0.5)) | untimely
    under_way = any_of(talks.measuring, chance)
    goes_on = (under_way >= 0) & (what < 0.75)
    event.kind[begins] = BEGIN
    event.question[untimely] = chance.choice(measured, talks.number)[untimely]
    said = chance.choice([NOTE, NOTE, NOTE, NOTE, TAKE_BACK, LEAVE, HEAR], talks.number)
    signs = chance.integers(0, len(fast.codes.signs), talks.number)
    event.kind[goes_on] = said[goes_on]
    event.question[goes_on] = np.where(said == HEAR, signs, measured[under_way])[goes_on]
    sorts = chance.choice([SANE, SANE, SANE, HOT, NONSENSE, REPEATED], talks.number)
    event.code[goes_on] = sorts[goes_on]
    return event


def any_of(allowed: Flags, chance: np.random.Generator) -> Ints:
    """(N,): one of the allowed rows of each column at random, -1 where there is none."""
    drawn = chance.random(allowed.shape, dtype=np.float32) * allowed
    return np.where(allowed.any(axis=0), drawn.argmax(axis=0), -1)


def answers_to(fast: Fast, question: Ints, people: People, chance: np.random.Generator) -> tuple[Ints, Ints]:
    """A code and, where several answers may be given, a mask for each question."""
    codes, number = fast.codes, len(question)
    code = FIRST + (chance.random(number) * codes.how_many[question]).astype(np.int64)
    easy = (people.kind == 2) & (chance.random(number) < 0.6)
    code = np.where(easy, FIRST, code)
    wanted = fast.findings.wanted_for_care[question]
    leading = (people.kind == 2) & (wanted > 0) & (chance.random(number) < 0.95)
    code = np.where(leading, wanted, code)
    calm = (people.kind > 0) & (chance.random(number) < np.where(people.kind == 2, 0.99, 0.95))
    code = np.where(calm & codes.danger_questions[question], _harmless(codes)[question], code)
    doubt = chance.random(number)
    doubt = np.where(people.kind == 2, 2 * doubt, doubt)
    code = np.where(doubt < 0.07, NOT_SURE, np.where(doubt < 0.12, SKIPPED, code))
    mask = np.zeros(number, np.int64)
    several = np.isin(question, codes.several) & (code >= FIRST)
    mask[several] = _masks(codes, question[several], calm[several], leading[several], chance)
    return np.where(several, FIRST, code), mask


def _harmless(codes: Codes) -> Ints:
    """(Q,): for a sign's own question the last answer that clears it, else the first."""
    found = np.full(len(codes.questions), FIRST)
    for sign_id, own in zip(codes.signs, codes.own, strict=True):
        means = list(codes.knowledge.signs[sign_id].answers.values())
        found[own] = FIRST + max((n for n, each in enumerate(means) if each == "clear"), default=0)
    return found


def _masks(codes: Codes, question: Ints, calm: Flags, leading: Flags, chance: np.random.Generator) -> Ints:
    """One to a few answers; all of them; or 'none of these', mostly so on the screens for who has no danger to tell."""
    number = len(question)
    many = np.array([len(codes.items.get(n, ())) for n in range(len(codes.questions))])[question]
    none = codes.none_bit[question]

    def one() -> Ints:
        return 1 << (chance.random(number) * many).astype(np.int64)

    amount = chance.random(number)
    mask = one()
    mask |= np.where(amount < 0.5, one(), 0)
    mask |= np.where(amount < 0.2, one() | one(), 0)
    every = (1 << many) - 1
    mask = np.where(leading | (chance.random(number) < 0.1), every, mask)
    wants_none = np.where(codes.danger_questions[question], calm, (chance.random(number) < 0.1) & ~leading)
    mask = np.where(wants_none & (none > 0), none, mask)
    others = mask & ~none
    return np.where(others != 0, np.where(wants_none & (none > 0), none, others), mask)


def supposed_next(fast: Fast, supposed: Ints, chance: np.random.Generator, event: Happened) -> Ints:
    """What belief says next: mostly what it said before; else anything that it could. Beginning to measure tells it
    nothing.
    """
    dangers = sorted({fast.codes.signs.index(c.danger) for c in fast.knowledge.causes.values() if c.danger})
    could = np.array([DANGEROUS, *(STOPPING + sign for sign in dangers)])
    now = np.where(chance.random(len(supposed)) < 0.2, CALM, supposed)
    now = np.where(chance.random(len(supposed)) < 0.006, chance.choice(could, len(supposed)), now)
    return np.where(event.kind == BEGIN, supposed, now)
