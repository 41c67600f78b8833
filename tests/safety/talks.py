"""Many conversations at once: what was answered, raised, heard and stood, and how each event changes it."""

from dataclasses import dataclass

import numpy as np

from tests.safety.codes import FIRST, NOT_ASKED, SKIPPED, Codes, Flags, Ints

ANSWER, WITHDRAW, HEAR, IDLE, BEGIN, NOTE, TAKE_BACK, LEAVE = range(8)
SANE, HOT, NONSENSE, REPEATED = range(4)
"""Lines that are noted: one that may follow, a reading far above the setting, no line at all, one said already."""


Said = tuple[int, int, int, int]
"""Kind, question or sign, code, mask."""


@dataclass
class Happened:
    """One event in each conversation: its kind, the question (or the sign), the code and the mask of the answer.

    Of a line that is noted the code says of which sort it is.
    """

    kind: Ints
    question: Ints
    code: Ints
    mask: Ints


class Talks:
    """The states of many conversations. The last axis of every array is the conversation."""

    def __init__(self, codes: Codes, number: int) -> None:
        questions, signs = len(codes.questions), len(codes.signs)
        self.codes = codes
        self.number = number
        self.all = np.arange(number)
        self.answer = np.zeros((questions, number), np.int64)
        self.mask = np.zeros((questions, number), np.int64)
        self.at = np.zeros((questions, number), np.int64)
        self.speaks = np.zeros((questions, number), np.int64)
        self.skips = np.zeros((questions, number), np.int64)
        self.raised_before = np.zeros((signs, number), np.int64)
        self.heard = np.zeros((signs, number), np.int64)
        self.reached = np.zeros((signs, number), np.int64)
        self.standing = np.zeros(number, np.int64)
        self.sequence = np.ones(number, np.int64)
        self.measuring = np.zeros((len(codes.measured), number), bool)
        self.lines = np.zeros((len(codes.measured), number), np.int64)

    def happen(self, event: Happened, hearable: Ints, fit: Flags) -> None:
        """Apply one event each. `hearable`: signs that would be recorded as heard, as bits; `fit` (measured, N): what
        might be measured with a hot oven.
        """
        self._measure(event, fit)
        answers = event.kind == ANSWER
        self._answer(self.all[answers], event.question[answers], event.code[answers], event.mask[answers])
        withdrawn = (event.kind == WITHDRAW) & (self.answer[event.question, self.all] != NOT_ASKED)
        self._withdraw(self.all[withdrawn], event.question[withdrawn])
        for talk in self.all[event.kind == HEAR]:
            sign = event.question[talk]
            if hearable[talk] >> sign & 1:
                self.sequence[talk] += 1
                self.heard[sign, talk] = self.sequence[talk]

    def _measure(self, event: Happened, fit: Flags) -> None:
        """Begun where it is fit, noted, taken back and left where it is under way; else refused."""
        for talk in self.all[event.kind >= BEGIN]:
            kind, question = int(event.kind[talk]), int(event.question[talk])
            row = self.codes.measured.index(question)
            if kind == BEGIN and fit[row, talk] and not self.measuring[row, talk]:
                self.measuring[row, talk], self.lines[row, talk] = True, 0
                self.sequence[talk] += 1
            elif kind != BEGIN and self.measuring[row, talk]:
                self._go_on(kind, row, talk, int(event.code[talk]))

    def _go_on(self, kind: int, row: int, talk: int, sort: int) -> None:
        question, lines = self.codes.measured[row], int(self.lines[row, talk])
        hot = sort == HOT and self.codes.has_readings[row]
        if kind == LEAVE or (kind == TAKE_BACK and lines):
            self.sequence[talk] += 1
            self.measuring[row, talk] = kind != LEAVE
            self.lines[row, talk] -= 1
        elif kind == NOTE and hot and lines:
            self.sequence[talk] += 1
            self._answer(*(np.array([each]) for each in (talk, question, self.codes.very_hot(question), 0)))
        elif kind == NOTE and hot:
            self.sequence[talk] += 3
            self.measuring[row, talk] = False
            self.heard[self.codes.too_hot, talk] = self.sequence[talk]
        elif kind == NOTE and sort == SANE and lines < self.codes.most_lines[row]:
            self.sequence[talk] += 1
            self.lines[row, talk] += 1

    def end_all(self, which: Flags) -> None:
        """A stop ends whatever is measured."""
        self.measuring &= ~which

    def leave(self, rows: Flags) -> None:
        """These measurements (measured, N) may not go on."""
        ended = self.measuring & rows
        self.measuring &= ~ended
        self.sequence += ended.sum(axis=0)

    def _answer(self, talks: Ints, questions: Ints, codes: Ints, masks: Ints) -> None:
        danger = self.codes.danger_questions[questions] | (questions == self.codes.is_off)
        codes = np.where(danger & (codes == SKIPPED), 1, codes)
        self._forget(talks, questions)
        self.sequence[talks] += 1
        self.answer[questions, talks] = codes
        self.mask[questions, talks] = masks
        self.at[questions, talks] = self.sequence[talks]
        self.speaks[questions, talks] = self._spoken(questions, codes, masks)
        self.skips[questions, talks] += codes == SKIPPED
        for row, question in enumerate(self.codes.measured):
            self.measuring[row, talks[questions == question]] = False
        others = self.codes.withdrawn_by[questions, codes]
        also = (others >= 0) & (self.answer[others, talks] != NOT_ASKED)
        self._withdraw(talks[also], others[also])

    def _withdraw(self, talks: Ints, questions: Ints) -> None:
        self._forget(talks, questions)
        self.sequence[talks] += 1
        for kept in (self.answer, self.mask, self.at, self.speaks):
            kept[questions, talks] = 0

    def _forget(self, talks: Ints, questions: Ints) -> None:
        """What an answer spoke of when it was changed or taken back is remembered."""
        spoke = self.speaks[questions, talks]
        some = spoke != 0
        talks, at, spoke = talks[some], self.at[questions[some], talks[some]], spoke[some]
        for sign in range(len(self.codes.signs)):
            of_it = (spoke >> sign & 1).astype(bool)
            self.raised_before[sign, talks[of_it]] = np.maximum(self.raised_before[sign, talks[of_it]], at[of_it])

    def _spoken(self, questions: Ints, codes: Ints, masks: Ints) -> Ints:
        spoken = self.codes.spoken[questions, codes].copy()
        for question, item, signs in self.codes.spoken_by_items:
            spoken |= np.where((questions == question) & (codes == FIRST) & (masks & item != 0), signs, 0)
        return spoken

    def record(self, stops: Ints) -> None:
        """Keep the stops that were reached or left, as the log does."""
        new, left = stops & ~self.standing, self.standing & ~stops
        self.end_all(new != 0)
        for sign in range(len(self.codes.signs)):
            reached = (new >> sign & 1).astype(bool)
            self.sequence += reached
            self.reached[sign] = np.where(reached, self.sequence, self.reached[sign])
        for sign in range(len(self.codes.signs)):
            self.sequence += left >> sign & 1
        self.standing = stops.copy()

    def one(self, talk: int) -> "Talks":
        """A copy of one conversation."""
        return self._picked(np.array([talk]))

    def repeated(self, number: int) -> "Talks":
        """The first conversation as often as this."""
        return self._picked(np.zeros(number, np.int64))

    def _picked(self, which: Ints) -> "Talks":
        picked = Talks(self.codes, len(which))
        for name in (
            *("answer", "mask", "at", "speaks", "skips", "raised_before", "heard", "reached"),
            *("measuring", "lines"),
        ):
            setattr(picked, name, getattr(self, name)[:, which])
        picked.standing, picked.sequence = self.standing[which], self.sequence[which]
        return picked

    def restart(self, which: Flags) -> None:
        """Begin these conversations anew."""
        for kept in (self.answer, self.mask, self.at, self.speaks, self.skips, self.raised_before):
            kept[:, which] = 0
        for kept in (self.heard, self.reached, self.lines):
            kept[:, which] = 0
        self.measuring[:, which] = False
        self.standing[which] = 0
        self.sequence[which] = 1
