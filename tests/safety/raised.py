"""Which danger signs of many conversations stand by answers, are open, or were heard; and whether the oven is off."""

from functools import cached_property

import numpy as np

from assistant.interview.danger import STILL_ON
from assistant.knowledge.model import Knowledge
from tests.safety.codes import FIRST, NOT_ASKED, NOT_SURE, SKIPPED, Codes, Flags, Ints
from tests.safety.talks import Talks


class Raised:
    """The compiled signs of one rules folder."""

    def __init__(self, knowledge: Knowledge, codes: Codes) -> None:
        self.knowledge = knowledge
        self.codes = codes
        signs = [knowledge.signs[sign_id] for sign_id in codes.signs]
        self.confirming = sum(1 << n for n, sign in enumerate(signs) if sign.confirm_off)
        self._at_once = sum(1 << n for n, sign in enumerate(signs) if sign.grade == "stop")
        self._all_signs = (1 << len(signs)) - 1
        self._speakers = [n for n in range(len(codes.questions)) if self._may_speak(n)]

    def _may_speak(self, question: int) -> bool:
        by_items = any(question == q for q, _, _ in self.codes.spoken_by_items)
        return bool(self.codes.spoken[question].any()) or by_items

    def stops_by_answers(self, talks: Talks) -> Ints:
        """Signs that stand by an answer: by their own question, or, if they stop at once, by any."""
        raised = np.bitwise_or.reduce(talks.speaks[self._speakers], axis=0) & self._at_once
        for sign, own in enumerate(self.codes.own):
            raised |= talks.speaks[own] & (1 << sign)
        return raised

    def open(self, talks: Talks) -> Ints:
        """Signs that were ever raised, heard or stood, and whose own question has no answer since then."""
        found = talks.standing.copy()
        for sign, own in enumerate(self.codes.own):
            latest = np.maximum(np.maximum(talks.raised_before[sign], talks.heard[sign]), talks.reached[sign])
            for question in self._speakers_of(sign):
                latest = np.maximum(latest, np.where(talks.speaks[question] >> sign & 1, talks.at[question], 0))
            found |= np.where(latest > talks.at[own], 1 << sign, 0)
        return found

    def _speakers_of(self, sign: int) -> tuple[int, ...]:
        if sign not in self._of_sign:
            by_items = {q for q, _, signs in self.codes.spoken_by_items if signs >> sign & 1}
            by_codes = {q for q in self._speakers if (self.codes.spoken[q] >> sign & 1).any()}
            self._of_sign[sign] = tuple(sorted(by_items | by_codes))
        return self._of_sign[sign]

    @cached_property
    def _of_sign(self) -> dict[int, tuple[int, ...]]:
        return {}

    def screen(self, talks: Talks) -> Ints:
        """The screen that is open, as a question, or -1."""
        now, plainly = self.codes.now, self.codes.plainly
        unsure = (talks.answer[now] == NOT_SURE) | (talks.answer[now] == SKIPPED)
        again = unsure & ((talks.answer[plainly] == NOT_ASKED) | (talks.at[plainly] < talks.at[now]))
        return np.where(talks.answer[now] == NOT_ASKED, now, np.where(again, plainly, -1))

    def off_confirmed(self, talks: Talks, stops: Ints, by_answers: Ints, since: dict[int, Ints]) -> Flags:
        off = self.codes.is_off
        still_on = FIRST + self.codes.answers[off].index(STILL_ON)
        confirmed = (talks.answer[off] >= FIRST) & (talks.answer[off] != still_on)
        for sign in range(len(self.codes.signs)):
            latest = talks.heard[sign].copy()
            for question in self._speakers_of(sign):
                counts = (talks.speaks[question] >> sign & 1 == 1) & (by_answers >> sign & 1 == 1)
                if not self._at_once >> sign & 1 and question != self.codes.own[sign]:
                    continue
                latest = np.maximum(latest, np.where(counts, talks.at[question], 0))
            if sign in since:
                by_finding = (by_answers >> sign & 1 == 0) & (since[sign] >= 0)
                latest = np.maximum(latest, np.where(by_finding, since[sign], 0))
            stands = stops >> sign & 1 == 1
            confirmed &= ~stands | (talks.at[off] > latest)
        return confirmed

    def hearable(self, talks: Talks, by_answers: Ints) -> Ints:
        open_now = self.open(talks) & ~by_answers & ~talks.standing
        told = np.where(talks.answer[self.codes.is_off] == NOT_ASKED, talks.standing, 0)
        return self._all_signs & ~(told | open_now)
