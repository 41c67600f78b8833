"""What must hold after every step of every path, stated on what was answered and not on what the rules conclude."""

from dataclasses import dataclass

import numpy as np

from assistant.interview.choice import steps_for
from assistant.interview.danger import Stop
from assistant.knowledge.danger_questions import UNSURE
from assistant.knowledge.model import Care
from tests.safety import trade
from tests.safety.codes import FIRST, NOT_SURE, SKIPPED, Flags, Ints
from tests.safety.fast import Fast, Standing
from tests.safety.steps import steps_in_breach
from tests.safety.talks import ANSWER, HEAR, NOTE, Happened, Talks
from tests.safety.talks import HOT as HOT_LINE

HOT = "a hot question without the gate"

INVARIANTS = (
    "a question beyond the role's care",
    "a question beyond its gate",
    "a sign without its stop",
    "a raised sign forgotten",
    "wrong steps after a stop",
    "a stop outranked",
    "a sign taken back and no visit",
    "more than talk while danger is open",
    "an act without its condition",
    HOT,
    "near a switch after fire, gas or CO",
    "a measurement while danger is open",
    "a measurement without the gate",
    "a reading far too hot and no stop",
)

Breaches = dict[str, Flags]


@dataclass
class _SignOfAnswers:
    """Of a sign: its own question, the codes there that are danger, and the answers elsewhere that name it."""

    own: int
    dangerous: Ints
    named_by: tuple[tuple[int, int, int], ...]
    at_once: bool


class Watch:
    """Follows what people told, apart from the evaluator that is watched."""

    def __init__(self, fast: Fast, number: int) -> None:
        self.fast = fast
        self.number = number
        codes = fast.codes
        self._at_home = fast.role in trade.AT_HOME
        self._signs = [self._sign(sign_id) for sign_id in codes.signs]
        self._no_switch = sum(codes.bit.get(sign_id, 0) for sign_id in trade.NO_SWITCH_AFTER)
        self.pending = np.zeros(number, np.int64)
        self.ever = np.zeros(number, np.int64)
        self._under_way = np.zeros((len(codes.measured), number), bool)
        self._steps_known: dict[int, bool] = {}
        self._tables: dict[tuple[str, frozenset[str]], Flags] = {}

    def _sign(self, sign_id: str) -> _SignOfAnswers:
        codes, knowledge = self.fast.codes, self.fast.knowledge
        own = codes.own[codes.signs.index(sign_id)]
        sign = knowledge.signs[sign_id]
        dangerous = [means == "stop" for means in sign.answers.values()]
        unsure = sign_id not in trade.MAY_BE_UNSURE
        named_by = tuple(
            (n, FIRST + (0 if n in codes.items else number), 1 << number if n in codes.items else 0)
            for n, question_id in enumerate(codes.questions)
            if n != own
            for number, choice in enumerate(knowledge.questions[question_id].choices.values())
            if choice.signals == sign_id
        )
        return _SignOfAnswers(own, np.array([False, unsure, unsure, *dangerous]), named_by, sign.grade == "stop")

    def restart(self, which: Flags) -> None:
        self.pending[which] = 0
        self.ever[which] = 0
        self._under_way[:, which] = False

    def _named(self, sign: _SignOfAnswers, talks: Talks) -> Flags:
        found = np.zeros(self.number, bool)
        for question, code, item in sign.named_by:
            found |= (talks.answer[question] == code) & ((item == 0) | (talks.mask[question] & item != 0))
        return found

    def told(self, talks: Talks) -> Ints:
        """Signs that the answers as they stand call danger."""
        found = np.zeros(self.number, np.int64)
        for number, (sign_id, sign) in enumerate(zip(self.fast.codes.signs, self._signs, strict=True)):
            says = sign.dangerous[talks.answer[sign.own]]
            if sign.at_once:
                says = says | self._named(sign, talks)
            if sign_id == UNSURE:
                says = says | np.isin(talks.answer[self.fast.codes.plainly], [NOT_SURE, SKIPPED])
            found |= np.where(says, 1 << number, 0)
        return found

    def after(self, event: Happened, talks: Talks, standing: Standing, offered: Flags) -> Breaches:
        """Where each invariant is broken after these events."""
        read_hot = self._read_hot(event)
        self._follow(event, talks, read_hot)
        self._under_way = talks.measuring.copy()
        told = self.told(talks)
        self.ever |= told | standing.stops
        danger = (told | self.pending | standing.stops) != 0
        acts = self.fast.acts_in_reach(talks, standing)
        any_act = np.logical_or.reduce(list(acts.values()))
        free = any_act | ~(standing.must_visit | standing.handed_on | standing.danger_open)
        taken_back = (self.ever & ~standing.stops) != 0
        care = self.fast.care_of
        most = np.where(offered & (care <= trade.MOST_AT_HOME)[:, None], care[:, None], 0).max(axis=0)
        beyond_talk = (offered & (care > Care.TALK.rank)[:, None]).any(axis=0)
        forbidden = self.hot_forbidden(talks, standing)
        hottest = np.where(talks.measuring, care[list(self.fast.codes.measured), None], 0).max(axis=0, initial=0)
        unfit = np.logical_or.reduce([*forbidden.values(), taken_back])
        too_hot = (standing.open_signs | standing.stops) >> self.fast.codes.too_hot & 1 == 1
        return {
            "a question beyond the role's care": (offered & (care > self._role_limit())[:, None]).any(axis=0),
            "a question beyond its gate": self._beyond_gate(most, talks),
            "a sign without its stop": (told & ~standing.stops) != 0,
            "a raised sign forgotten": (self.pending & ~(standing.open_signs | standing.stops)) != 0,
            "wrong steps after a stop": self._wrong_steps(standing.stops),
            "a stop outranked": ((told | standing.stops) != 0) & free,
            "a sign taken back and no visit": taken_back & (free | (most > Care.LOOK_COLD.rank)),
            "more than talk while danger is open": danger & (beyond_talk | free),
            "an act without its condition": self._unfounded(acts, talks),
            "near a switch after fire, gas or CO": self._near_a_switch(told, standing, offered),
            "a measurement while danger is open": danger & talks.measuring.any(axis=0),
            "a measurement without the gate": self._beyond_gate(hottest, talks)
            | ((hottest >= Care.WATCH_HOT.rank) & unfit),
            "a reading far too hot and no stop": (read_hot & (~too_hot | talks.measuring.any(axis=0)))
            | (self._answered_hot(event) & ~too_hot),
            **{
                f"{HOT}: {question_id}": (most >= Care.WATCH_HOT.rank) & where
                for question_id, where in forbidden.items()
            },
        }

    def _read_hot(self, event: Happened) -> Flags:
        """Where a thermometer that was being watched was read far above the setting."""
        codes = self.fast.codes
        found = np.zeros(self.number, bool)
        for row, question in enumerate(codes.measured):
            if codes.has_readings[row]:
                found |= self._under_way[row] & (event.question == question)
        return found & (event.kind == NOTE) & (event.code == HOT_LINE)

    def _answered_hot(self, event: Happened) -> Flags:
        """Where an answer tells of such a reading at once."""
        codes = self.fast.codes
        found = np.zeros(self.number, bool)
        for row, question in enumerate(codes.measured):
            if codes.has_readings[row]:
                found |= (event.question == question) & (event.code == codes.very_hot(question))
        return found & (event.kind == ANSWER)

    def _follow(self, event: Happened, talks: Talks, read_hot: Flags) -> None:
        """What was raised, heard or read stays pending until the sign's own question is answered."""
        answered = event.kind == ANSWER
        for number, sign in enumerate(self._signs):
            raised = (event.kind == HEAR) & (event.question == number)
            if number == self.fast.codes.too_hot:
                raised |= read_hot
            for question, code, item in sign.named_by:
                now = answered & (event.question == question) & (talks.answer[question] == code)
                raised |= now & ((item == 0) | (talks.mask[question] & item != 0))
            self.pending |= np.where(raised, 1 << number, 0)
            self.pending &= ~np.where(answered & (event.question == sign.own), 1 << number, 0)

    def _role_limit(self) -> int:
        limit = self.fast.knowledge.roles[self.fast.role].asked_up_to.rank
        return min(limit, trade.MOST_AT_HOME) if self._at_home else limit

    def _given(self, needed: trade.Answers, talks: Talks) -> Flags:
        """Where each of these questions has one of these answers."""
        found = np.ones(self.number, bool)
        for question_id, answers in needed.items():
            found &= self._one_of(question_id, answers, talks)
        return found

    def _one_of(self, question_id: str, answers: frozenset[str], talks: Talks) -> Flags:
        codes = self.fast.codes
        if question_id not in codes.place:
            return np.zeros(self.number, bool)
        question = codes.place[question_id]
        if question in codes.items:
            bits = sum(1 << n for n, item in enumerate(codes.items[question]) if item in answers)
            return talks.mask[question] & bits != 0
        if (question_id, answers) not in self._tables:
            given = ("", "not_sure", "skipped", *codes.answers[question])
            self._tables[question_id, answers] = np.array([answer in answers for answer in given])
        return self._tables[question_id, answers][talks.answer[question]]

    def _beyond_gate(self, most: Ints, talks: Talks) -> Flags:
        found = np.zeros(self.number, bool)
        for care, needed in trade.NEEDED_FOR_CARE.items():
            found |= (most >= care.rank) & ~self._given(needed, talks)
        return found

    def hot_forbidden(self, talks: Talks, standing: Standing) -> Breaches:
        """question -> where its answer forbids all that is hot, or isn't the one that is needed.

        An answer about a part that the oven was said not to have forbids nothing: no fan is heard where none is.
        """
        gate, ticked = trade.HOT_GATE
        found = {gate: ~np.logical_and.reduce([self._one_of(gate, frozenset({item}), talks) for item in ticked])}
        for needed in trade.NEEDED_FOR_CARE.values():
            found |= {q: ~self._one_of(q, answers, talks) for q, answers in needed.items()}
        (question, item), worse = trade.TOO_HOT_AND
        too_hot = self._one_of(question, frozenset({item}), talks)
        for q, answers in {**trade.NOTHING_HOT_AFTER, **trade.NOTHING_HOT_AFTER_TOLD}.items():
            given = self._one_of(q, answers, talks)
            if q in worse:
                given |= too_hot & self._one_of(q, worse[q], talks)
            given &= self._makes_sense(q, standing)
            found[q] = found[q] | given if q in found else given
        for q in worse.keys() - found.keys():
            found[q] = too_hot & self._one_of(q, worse[q], talks) & self._makes_sense(q, standing)
        return found

    def _makes_sense(self, question_id: str, standing: Standing) -> Flags:
        question = self.fast.knowledge.questions.get(question_id)
        return standing.applies[frozenset(question.needs if question else ())]

    def _unfounded(self, acts: dict[str, Flags], talks: Talks) -> Flags:
        found = np.zeros(self.number, bool)
        for act, told in acts.items():
            needed = trade.ACTS.get(act)
            found |= told if needed is None else told & ~self._given(needed, talks)
        return found

    def _near_a_switch(self, told: Ints, standing: Standing, offered: Flags) -> Flags:
        stands = ((told | standing.stops) & self._no_switch) != 0
        raised = (self.pending & self._no_switch) != 0
        others = offered & ~self.fast.codes.danger_questions[:, None]
        return (stands & offered[self.fast.codes.is_off]) | (raised & others.any(axis=0))

    def _wrong_steps(self, stops: Ints) -> Flags:
        together, of = np.unique(stops, return_inverse=True)
        wrong = [bool(bits) and self._wrong(int(bits)) for bits in together]
        return np.array(wrong, bool)[of]

    def _wrong(self, bits: int) -> bool:
        if bits not in self._steps_known:
            signs = [sign_id for sign_id, bit in self.fast.codes.bit.items() if bits & bit]
            told = steps_for(self.fast.knowledge, tuple(Stop(sign_id, "sign", sign_id, 1) for sign_id in signs))
            self._steps_known[bits] = next(steps_in_breach(self.fast.knowledge, signs, told), None) is not None
        return self._steps_known[bits]
