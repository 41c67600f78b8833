"""Answers as small whole numbers, so that thousands of conversations can be followed at once.

Of each question: 0 not asked, 1 not sure, 2 skipped, from 3 on an answer: the choice, the number out of a few that lie
at and beside every bound, or the text. Where several answers may be given, 3 says so and a bit mask says which.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from assistant.knowledge.danger_questions import (
    DANGER_NOW,
    DANGER_PLAINLY,
    NONE,
    OVEN_IS_OFF,
    UNSURE,
    is_danger_question,
    sign_question_id,
)
from assistant.knowledge.model import MEASURED_CODES, Choice, Condition, Knowledge, Question

NOT_ASKED, NOT_SURE, SKIPPED, FIRST = range(4)

WRITTEN_DOWN = {
    "lamp_log": {
        "never_lit": ("0:00 out", "10:00 end"),
        "never_out": ("0:00 lit", "30:00 end"),
        "lit_so_far": ("0:00 lit", "4:00 end"),
        "cycles": ("7:40 out", "9:10 lit", "14:00 end"),
        "out_and_never_on": ("7:40 out", "14:00 end"),
        "dark_and_then_lit": ("6:00 lit", "14:00 end"),
    },
    "temperature_log": {"read": ("2:00 60 C", "9:00 150 C"), "very_hot": ("2:00 60 C", "20:00 305 C")},
    "browning": {"looked_at": ("top 333 332 222", "underside 110 100 000")},
}
"""What somebody writes down, by the word that the rules read of it."""

SANE_LINES = {
    "lamp_log": lambda n: f"{2 + 3 * n}:00 {'lit' if n % 2 else 'out'}",
    "temperature_log": lambda n: f"{2 + 3 * n}:00 {min(60 + 10 * n, 190)} C",
    "browning": lambda n: ("top 333 332 222", "underside 110 100 000", "top 111 111 111")[min(n, 2)],
}
"""The line that follows so many others."""

Ints = NDArray[np.int64]
Flags = NDArray[np.bool_]


def numbers_tried(question: Question, conditions: Iterator[Condition]) -> tuple[float, ...]:
    """The bounds of a number and of all that is tested on it, and what lies just beside them."""
    number = question.number
    assert number is not None
    edges = {number.least, number.most, (number.least + number.most) / 2}
    edges |= {band.below for band in number.bands.values() if band.below is not None}
    for c in conditions:
        edges |= {b for b in (c.at_least, c.more_than, c.at_most, c.less_than) if b is not None}
    near = {round(edge + step, 3) for edge in edges for step in (-0.001, 0, 0.001)}
    return tuple(sorted(value for value in near if number.least <= value <= number.most))


@dataclass(frozen=True)
class Codes:
    """The knowledge's questions and signs by number; signs in the order of their gravity, as bits."""

    knowledge: Knowledge

    @cached_property
    def questions(self) -> tuple[str, ...]:
        return tuple(self.knowledge.questions)

    @cached_property
    def place(self) -> dict[str, int]:
        return {question_id: number for number, question_id in enumerate(self.questions)}

    @cached_property
    def signs(self) -> tuple[str, ...]:
        signs = self.knowledge.signs
        return tuple(sorted(signs, key=lambda sign_id: (signs[sign_id].order, sign_id)))

    @cached_property
    def bit(self) -> dict[str, int]:
        return {sign_id: 1 << number for number, sign_id in enumerate(self.signs)}

    @cached_property
    def answers(self) -> tuple[tuple[str | float, ...], ...]:
        """Of each question the answers that are given, in the order of their codes."""
        return tuple(self._answers_of(q, question) for q, question in self.knowledge.questions.items())

    def _answers_of(self, question_id: str, question: Question) -> tuple[str | float, ...]:
        if question.kind == "choice":
            return tuple(question.choices)
        if question.kind == "number":
            tested = (
                condition
                for finding in self.knowledge.findings.values()
                for group in finding.groups
                for condition in group
                if condition.question == question_id
            )
            return numbers_tried(question, tested)
        return MEASURED_CODES.get(question.kind, ("answered",))

    @cached_property
    def how_many(self) -> Ints:
        return np.array([len(each) for each in self.answers])

    @cached_property
    def several(self) -> tuple[int, ...]:
        """Questions to which several answers may be given."""
        return tuple(n for n, q in enumerate(self.questions) if self.knowledge.questions[q].kind == "choices")

    @cached_property
    def items(self) -> dict[int, tuple[str, ...]]:
        return {n: tuple(self.knowledge.questions[self.questions[n]].choices) for n in self.several}

    @cached_property
    def none_bit(self) -> Ints:
        """(Q,): the bit of 'none of these', 0 where there is no such answer."""
        found = np.zeros(len(self.questions), np.int64)
        for n, items in self.items.items():
            found[n] = 1 << items.index(NONE) if NONE in items else 0
        return found

    @cached_property
    def measured(self) -> tuple[int, ...]:
        """Questions that are answered by what was written down at a hot oven."""
        return tuple(n for n, q in enumerate(self.questions) if self.knowledge.questions[q].is_measurement)

    @cached_property
    def has_readings(self) -> tuple[bool, ...]:
        """Whether each of these is of a thermometer."""
        return tuple(self.kind_of(n) == "temperature_log" for n in self.measured)

    @cached_property
    def most_lines(self) -> tuple[int, ...]:
        """How many lines each of these takes: a tray has two sides, and no walk writes down a hundred."""
        return tuple(2 if self.kind_of(n) == "browning" else 100 for n in self.measured)

    def kind_of(self, question: int) -> str:
        return self.knowledge.questions[self.questions[question]].kind

    def very_hot(self, question: int) -> int:
        """The code of having read far more than the setting."""
        return FIRST + self.answers[question].index("very_hot")

    @cached_property
    def too_hot(self) -> int:
        """The sign of an oven that runs away."""
        return self.signs.index("too_hot")

    @cached_property
    def danger_questions(self) -> Flags:
        return np.array([is_danger_question(q) for q in self.questions])

    @cached_property
    def own(self) -> tuple[int, ...]:
        """Of each sign, its own question."""
        return tuple(self.place[sign_question_id(sign_id)] for sign_id in self.signs)

    @property
    def now(self) -> int:
        return self.place[DANGER_NOW]

    @property
    def plainly(self) -> int:
        return self.place[DANGER_PLAINLY]

    @property
    def is_off(self) -> int:
        return self.place[OVEN_IS_OFF]

    @cached_property
    def spoken(self) -> Ints:
        """(Q, codes): the signs that an answer speaks of; to a sign's own question, whether it says danger."""
        found = np.zeros((len(self.questions), FIRST + int(self.how_many.max())), np.int64)
        for n, question_id in enumerate(self.questions):
            for code, choice in enumerate(self.knowledge.questions[question_id].choices.values(), FIRST):
                if n not in self.items:
                    found[n, code] = self._signals(choice)
        for sign_id, n in zip(self.signs, self.own, strict=True):
            if self.knowledge.signs[sign_id].not_sure_is_danger:
                found[n, [NOT_SURE, SKIPPED]] |= self.bit[sign_id]
        if UNSURE in self.bit:
            found[self.plainly, [NOT_SURE, SKIPPED]] |= self.bit[UNSURE]
        return found

    @cached_property
    def spoken_by_items(self) -> tuple[tuple[int, int, int], ...]:
        """Question, bit of the item and the signs that it speaks of."""
        return tuple(
            (n, 1 << number, self._signals(choice))
            for n in self.several
            for number, choice in enumerate(self.knowledge.questions[self.questions[n]].choices.values())
            if choice.signals is not None
        )

    def _signals(self, choice: Choice) -> int:
        return self.bit.get(choice.signals, 0) if choice.signals is not None else 0

    @cached_property
    def withdrawn_by(self) -> Ints:
        """(Q, codes): the question whose answer an answer takes back, or -1."""
        found = np.full((len(self.questions), FIRST + int(self.how_many.max())), -1, np.int64)
        for n, question_id in enumerate(self.questions):
            if n not in self.items:
                for code, choice in enumerate(self.knowledge.questions[question_id].choices.values(), FIRST):
                    if choice.withdraws is not None:
                        found[n, code] = self.place[choice.withdraws]
        return found

    def value(self, question: int, code: int, mask: int) -> str | float | list[str]:
        """The answer as a person gives it."""
        if question in self.items:
            return [item for number, item in enumerate(self.items[question]) if mask >> number & 1]
        kind = self.knowledge.questions[self.questions[question]].kind
        if kind == "text":
            return "Since the weekend."
        if kind in MEASURED_CODES:
            return list(WRITTEN_DOWN[kind][str(self.answers[question][code - FIRST])])
        return self.answers[question][code - FIRST]
