"""Which danger signs stand, which are still open, which were withdrawn. Computed before anything else."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Literal

from assistant.interview.answers import still_fits
from assistant.interview.state import Answer, State
from assistant.knowledge.danger_questions import (
    DANGER_NOW,
    DANGER_PLAINLY,
    OVEN_IS_OFF,
    SIGN_PREFIX,
    UNSURE,
    sign_question_id,
)
from assistant.knowledge.model import Knowledge

STILL_ON = "still_on"


@dataclass(frozen=True)
class Stop:
    """A danger sign that stands, since which event, and what it rests on: the sign, a finding, or a likely cause."""

    sign_id: str
    source: Literal["sign", "finding", "belief"]
    source_id: str
    since: int


@dataclass(frozen=True)
class Danger:
    """`stops` gravest first; `open_questions` must be asked before anything else; `withdrawn` signs once stood.

    `urgent_question` is an open one about a sign graver than all that stand: it comes even before their steps.
    `ask_whether_off` is false where nobody should go near the oven any more, not even to confirm that it is off.
    """

    stops: tuple[Stop, ...]
    open_questions: tuple[str, ...]
    urgent_question: str | None
    withdrawn: tuple[str, ...]
    off_confirmed: bool
    ask_whether_off: bool

    @property
    def open(self) -> bool:
        """While this holds: no hot test, no 'use it differently', no 'do it yourself'."""
        return bool(self.stops or self.open_questions)


def danger_of(state: State, knowledge: Knowledge, finding_stops: Mapping[str, Stop]) -> Danger:
    """`finding_stops`: sign -> the stop that a crisp finding puts on it."""
    gravity = sorted(knowledge.signs, key=lambda sign_id: (knowledge.signs[sign_id].order, sign_id))
    raised = _raised_by(state.answers.values(), knowledge)
    ever_raised = _raised_by((*state.answers.values(), *state.replaced), knowledge)
    stands = {sign_id: _stop_from_answers(sign_id, state, knowledge, raised) for sign_id in gravity}
    standing = {sign_id: stop or _heard_since(finding_stops.get(sign_id), state) for sign_id, stop in stands.items()}
    if _forgotten_by_the_rules(state, knowledge):
        standing[UNSURE] = standing[UNSURE] or Stop(UNSURE, "sign", UNSURE, 0)
    stops = [stop for stop in standing.values() if stop is not None]
    ask_whether_off = all(knowledge.signs[stop.sign_id].confirm_off for stop in stops)
    open_signs = [s for s in gravity if standing[s] is None and _is_open(s, state, ever_raised)]
    graver = gravity[: gravity.index(stops[0].sign_id)] if stops else []
    return Danger(
        stops=tuple(stops),
        open_questions=(*map(sign_question_id, open_signs), *_open_screens(state, knowledge)),
        urgent_question=next((sign_question_id(s) for s in open_signs if s in graver), None),
        withdrawn=_withdrawn(state, standing),
        off_confirmed=ask_whether_off and _off_confirmed(state, stops),
        ask_whether_off=ask_whether_off,
    )


def _heard_since(stop: Stop | None, state: State) -> Stop | None:
    """A finding's stop, dated from when its sign was last heard if that is later."""
    return replace(stop, since=max(stop.since, state.heard.get(stop.sign_id, 0))) if stop is not None else None


def _withdrawn(state: State, standing: Mapping[str, Stop | None]) -> tuple[str, ...]:
    """Signs that stood at some time and stand no more; one that the rules no longer know counts as `unsure`."""
    known = [s if s in standing else UNSURE for s in state.reached]
    return tuple(s for s in dict.fromkeys(known) if standing[s] is None)


def _forgotten_by_the_rules(state: State, knowledge: Knowledge) -> bool:
    """A sign stood, or was heard and not yet asked for, that the rules in use no longer know: still danger."""
    unasked = {s for s, at in state.heard.items() if not _answered_since(sign_question_id(s), at, state)}
    return bool((state.standing_signs | unasked) - knowledge.signs.keys())


def _answered_since(question_id: str, sequence: int, state: State) -> bool:
    answer = state.answers.get(question_id)
    return answer is not None and answer.sequence > sequence


def _open_screens(state: State, knowledge: Knowledge) -> Iterator[str]:
    """The opening screen, while it has no answer that it would take today; its plainer form after 'not sure'."""
    now = state.answers.get(DANGER_NOW)
    if now is None or not still_fits(knowledge.questions[DANGER_NOW], now.value):
        yield DANGER_NOW
        return
    plainly = state.answers.get(DANGER_PLAINLY)
    if now.status != "answered" and (plainly is None or plainly.sequence < now.sequence):
        yield DANGER_PLAINLY


def _signalled(answer: Answer, knowledge: Knowledge) -> set[str]:
    """The signs that an answer speaks of."""
    question = knowledge.questions.get(answer.question_id)
    if question is None or answer.value is None or isinstance(answer.value, float):
        return set()
    chosen = (answer.value,) if isinstance(answer.value, str) else answer.value
    signals = (question.choices[c].signals for c in chosen if c in question.choices)
    return {sign_id for sign_id in signals if sign_id is not None}


Raised = Mapping[str, list[Answer]]
"""Sign -> the answers that raise it; of those to its own question, the ones that say danger."""


def _raised_by(answers: Iterable[Answer], knowledge: Knowledge) -> Raised:
    raised: dict[str, list[Answer]] = {}
    for answer in answers:
        for sign_id in _spoken_of(answer, knowledge):
            raised.setdefault(sign_id, []).append(answer)
    return raised


def _spoken_of(answer: Answer, knowledge: Knowledge) -> set[str]:
    """The signs that an answer raises; not to know is danger where the sign says so."""
    if answer.status == "answered":
        return _signalled(answer, knowledge)
    if answer.question_id == DANGER_PLAINLY:
        return {UNSURE}
    sign_id = answer.question_id.removeprefix(SIGN_PREFIX)
    own = sign_id != answer.question_id and sign_id in knowledge.signs
    return {sign_id} if own and knowledge.signs[sign_id].not_sure_is_danger else set()


def _stop_from_answers(sign_id: str, state: State, knowledge: Knowledge, raised: Raised) -> Stop | None:
    """A sign stands by its own question, or, if it is of the grade that stops at once, by any answer."""
    own = sign_question_id(sign_id)
    at_once = knowledge.signs[sign_id].grade == "stop"
    raisers = [answer.sequence for answer in raised.get(sign_id, ()) if at_once or answer.question_id == own]
    since = max([*raisers, state.heard.get(sign_id, 0)])
    return Stop(sign_id, "sign", sign_id, since) if raisers else None


def _is_open(sign_id: str, state: State, ever_raised: Raised) -> bool:
    """A sign that was ever raised or heard or stood, and whose own question has no answer since then.

    An answer that raised it and was then changed still counts: taking danger back is asked about once. So does a
    sign that stood by a finding or by likely danger, or by an answer which the rules no longer take.
    """
    if sign_id in state.standing_signs:
        return True
    own = state.answers.get(sign_question_id(sign_id))
    raised_at = [answer.sequence for answer in ever_raised.get(sign_id, ())]
    raised_at += [state.heard.get(sign_id, 0), state.reached.get(sign_id, 0)]
    return max(raised_at) > (own.sequence if own is not None else 0)


def _off_confirmed(state: State, stops: list[Stop]) -> bool:
    """Whether the oven was said to be off after the latest sign."""
    answer = state.answers.get(OVEN_IS_OFF)
    if answer is None or answer.status != "answered" or answer.value == STILL_ON:
        return False
    return all(answer.sequence > stop.since for stop in stops)
