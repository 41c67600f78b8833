"""Assessment -> the verdict, from one closed list, with what it rests on and what would change it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Literal

from assistant.belief.hypotheses import NOTHING_WRONG, SOMETHING_ELSE
from assistant.belief.posterior import Posterior, posterior, weights_of_evidence
from assistant.interview.answers import value_of
from assistant.interview.assess import Assessment, answers_behind, applies, assess
from assistant.interview.danger import Stop
from assistant.interview.next_question import gates_open, within_care
from assistant.interview.script import Script
from assistant.interview.state import Answer, State, Value
from assistant.knowledge.danger_questions import OVEN_IS_OFF
from assistant.knowledge.model import Knowledge, Question

Action = Literal[
    "use_differently",
    "do_one_thing",
    "all_normal",
    "book_visit",
    "maker_seller_or_landlord_first",
    "stop_and_isolate",
    "outside",
]
ACTIONS: tuple[Action, ...] = Action.__args__  # type: ignore[attr-defined]

Details = Mapping[str, str | bool | tuple[str, ...]]

URGENCIES = ("emergency", "soon", "routine")
TELLING_DECIBANS = 1.0
MOST_REASONS = 6
MOST_CHANGES = 4
FEW_ANSWERS = 3


@dataclass(frozen=True)
class Reason:
    """An answer, a finding or a sign that the verdict rests on; for answers, its decibans for the leader."""

    kind: Literal["answer", "finding", "sign"]
    id: str
    value: Value | None = None
    decibans: float | None = None


@dataclass(frozen=True)
class Change:
    """What would change the verdict: an answer given otherwise (or given at all), or taken back."""

    question_id: str
    value: str | None
    action: Action


@dataclass(frozen=True)
class Verdict:
    """`details` holds ids only; `causes` are marginals, `hypotheses` exclusive."""

    action: Action
    details: Details
    leading: str
    stops: tuple[Stop, ...]
    causes: tuple[tuple[str, float], ...]
    hypotheses: tuple[tuple[str, float], ...]
    because: tuple[Reason, ...]
    would_change: tuple[Change, ...] = ()


@dataclass(frozen=True)
class _Choice:
    action: Action
    details: Details = field(default_factory=dict)
    because: tuple[Reason, ...] = ()


def give_verdict(script: Script, assessment: Assessment) -> Verdict:
    """A crisp stop outranks everything; then what is outside; then the belief, within what danger leaves."""
    choice = _choose(script, assessment)
    ranked = assessment.posterior.ranked()
    return Verdict(
        action=choice.action,
        details={**choice.details, **_always_told(assessment)},
        leading=ranked[0][0],
        stops=assessment.danger.stops,
        causes=assessment.posterior.causes(),
        hypotheses=ranked,
        because=choice.because,
        would_change=tuple(_changes(script, assessment, choice)) if choice.action in _MOVABLE else (),
    )


def _choose(script: Script, assessment: Assessment) -> _Choice:
    return (
        _stopped(script.knowledge, assessment)
        or _handed_on(assessment)
        or _booked_for_danger(script.knowledge, assessment)
        or _believed(script, assessment)
    )


_MOVABLE = ("use_differently", "do_one_thing", "all_normal", "book_visit", "maker_seller_or_landlord_first")


def _always_told(assessment: Assessment) -> dict[str, tuple[str, ...]]:
    """What no verdict leaves out: signs that were taken back, and the tips of the findings."""
    withdrawn = assessment.danger.withdrawn
    told = {"withdrawn_signs": withdrawn} if withdrawn else {}
    if assessment.danger.open or withdrawn:
        return told
    advice = tuple(dict.fromkeys(a for effect in assessment.effects.values() for a in effect.advises))
    return told | {"tips": advice} if advice else told


def _stopped(knowledge: Knowledge, assessment: Assessment) -> _Choice | None:
    danger = assessment.danger
    if not danger.stops:
        return None
    gravest = knowledge.signs[danger.stops[0].sign_id]
    urgencies = {knowledge.signs[stop.sign_id].urgency for stop in danger.stops}
    details: dict[str, str | bool | tuple[str, ...]] = {
        "who": gravest.who,
        "urgency": "emergency" if "emergency" in urgencies else "soon",
        "steps": steps_for(knowledge, danger.stops),
        "off_confirmed": danger.off_confirmed,
    }
    if danger.ask_whether_off and not danger.off_confirmed:
        details["then"] = OVEN_IS_OFF
    because = tuple(Reason("sign" if stop.source == "sign" else "finding", stop.source_id) for stop in danger.stops)
    return _Choice("stop_and_isolate", details, because)


def steps_for(knowledge: Knowledge, stops: tuple[Stop, ...]) -> tuple[str, ...]:
    """The gravest sign's own steps and, of the other signs, those that touch nothing; in the order of the steps' file.

    What a step of any standing sign rules out is left out ('not the wall switch', 'touch no switch').
    """
    gravest, *others = [knowledge.signs[stop.sign_id] for stop in stops]
    further = [step for sign in others for step in sign.steps if knowledge.steps[step].touches_nothing]
    ruled_out = {s for sign in (gravest, *others) for step in sign.steps for s in knowledge.steps[step].rules_out}
    told = {*gravest.steps, *further} - ruled_out
    return tuple(step for step in knowledge.steps if step in told)


def _handed_on(assessment: Assessment) -> _Choice | None:
    for finding_id, effect in assessment.effects.items():
        if effect.hands_on_to is not None:
            return _Choice("outside", {"who": effect.hands_on_to}, _finding_reasons(finding_id, assessment))
    return None


def _finding_reasons(finding_id: str, assessment: Assessment) -> tuple[Reason, ...]:
    behind = answers_behind(finding_id, assessment.trace, assessment.state)
    return (
        Reason("finding", finding_id),
        *(Reason("answer", answer.question_id, answer.value) for answer in behind),
    )


_AFTER_THE_EMERGENCY = {"gas_emergency": "registered_gas_engineer", "network_operator": "electrician"}


def _booked_for_danger(knowledge: Knowledge, assessment: Assessment) -> _Choice | None:
    """Danger told and then taken back: a visit, whatever belief says."""
    withdrawn = assessment.danger.withdrawn
    if not withdrawn:
        return None
    because = tuple(Reason("sign", sign_id) for sign_id in withdrawn)
    gravest = min((knowledge.signs[sign_id] for sign_id in withdrawn), key=lambda sign: sign.order)
    who = _AFTER_THE_EMERGENCY.get(gravest.who, "appliance_engineer")
    details: Details = {"who": who, "urgency": "soon"}
    return _send_to_owner(assessment, _Choice("book_visit", details, because))


def _believed(script: Script, assessment: Assessment) -> _Choice:
    """The action with most of the probability behind it; a habit that leads is tried first, for it costs nothing."""
    choice = _least_wrong(script.knowledge, assessment.posterior)
    floor = _visit_floor(script.knowledge, assessment)
    if floor is not None:
        who = str(choice.details.get("who", "appliance_engineer"))
        urgency = _soonest(str(choice.details.get("urgency", "routine")), floor[0])
        reasons = (*floor[1], *_answer_reasons(script, assessment), *_explanations(assessment))
        choice = _Choice("book_visit", {"who": who, "urgency": urgency}, tuple(dict.fromkeys(reasons)))
    else:
        reasons = (*_answer_reasons(script, assessment), *_explanations(assessment))
        choice = _Choice(choice.action, choice.details, reasons)
    known_as_normal = choice.action == "all_normal" and any(e.is_normal for e in assessment.effects.values())
    little_known = len(assessment.evidence) < FEW_ANSWERS and not known_as_normal
    if little_known and choice.action in ("all_normal", "book_visit"):
        choice = _Choice(
            "book_visit",
            {"who": "appliance_engineer", "urgency": "routine", **choice.details, "little_known": True},
            choice.because,
        )
    return _send_to_owner(assessment, choice)


def _visit_floor(knowledge: Knowledge, assessment: Assessment) -> tuple[str, tuple[Reason, ...]] | None:
    """The urgency and reasons of a visit that must be, whatever is likeliest: by a finding, or by likely danger."""
    urgencies = [(effect.visit_anyway, f) for f, effect in assessment.effects.items() if effect.visit_anyway]
    reasons = tuple(reason for _, f in urgencies for reason in _finding_reasons(f, assessment))
    wanted = [urgency for urgency, _ in urgencies]
    dangerous = sum(p for cause, p in assessment.posterior.causes() if knowledge.causes[cause].danger)
    if dangerous >= knowledge.settings.dangerous_above.share:
        wanted.append("soon")
    return (_soonest(*wanted), reasons) if wanted else None


def _soonest(*urgencies: str) -> str:
    return min(urgencies, key=URGENCIES.index)


def _least_wrong(knowledge: Knowledge, belief: Posterior) -> _Choice:
    served: dict[tuple[Action, str], float] = {}
    for hypothesis, probability in belief.ranked():
        key = _remedy(knowledge, hypothesis)
        served[key] = served.get(key, 0.0) + probability
    leader, probability = belief.ranked()[0]
    action, remedy = _remedy(knowledge, leader)
    enough = probability >= knowledge.settings.habit_first_above.share
    if action not in ("do_one_thing", "use_differently") or not enough:
        (action, remedy), _ = max(served.items(), key=lambda item: round(item[1], 9))
    if action == "do_one_thing":
        return _Choice(action, {"act": remedy})
    if action == "use_differently":
        return _Choice(action, {"advice": remedy})
    if action == "all_normal":
        return _Choice(action)
    return _Choice(action, _visit_details(knowledge, belief))


def _remedy(knowledge: Knowledge, hypothesis: str) -> tuple[Action, str]:
    if hypothesis == NOTHING_WRONG:
        return "all_normal", ""
    if hypothesis == SOMETHING_ELSE:
        return "book_visit", ""
    cause = knowledge.causes[hypothesis]
    if cause.act is not None:
        return "do_one_thing", cause.act
    if cause.advice is not None:
        return "use_differently", cause.advice
    return "book_visit", ""


def _visit_details(knowledge: Knowledge, belief: Posterior) -> dict[str, str]:
    faults = [knowledge.causes[c] for c, _ in belief.causes() if knowledge.causes[c].kind == "fault"]
    if not faults or belief.ranked()[0][0] == SOMETHING_ELSE:
        return {"who": "appliance_engineer", "urgency": "routine"}
    return {"who": faults[0].mended_by, "urgency": faults[0].urgency}


def _send_to_owner(assessment: Assessment, choice: _Choice) -> _Choice:
    """Under guarantee or in a rented home somebody else is told before a visit is booked."""
    if choice.action != "book_visit":
        return choice
    details = dict(choice.details)
    if any(effect.may_not_be_worth_mending for effect in assessment.effects.values()):
        details["may_not_be_worth_mending"] = True
    for finding_id, effect in assessment.effects.items():
        if effect.visit_first is not None:
            details["first"] = effect.visit_first
            because = (*_finding_reasons(finding_id, assessment), *choice.because)
            return _Choice("maker_seller_or_landlord_first", details, because)
    return _Choice(choice.action, details, choice.because)


def _answer_reasons(script: Script, assessment: Assessment) -> tuple[Reason, ...]:
    """The answers that speak for the leader against the runner-up, strongest first."""
    (leader, _), (runner_up, _), *_ = assessment.posterior.ranked()
    decibans = weights_of_evidence(script.evidence_model, assessment.evidence, leader, runner_up)
    reasons = [
        Reason("answer", question_id, code, round(decibans[script.evidence_model.observable_of[question_id]], 1))
        for question_id, code in assessment.evidence.items()
    ]
    telling = [reason for reason in reasons if (reason.decibans or 0) >= TELLING_DECIBANS]
    return tuple(sorted(telling, key=lambda reason: -(reason.decibans or 0))[:MOST_REASONS])


def _explanations(assessment: Assessment) -> tuple[Reason, ...]:
    return tuple(Reason("finding", f) for f, effect in assessment.effects.items() if effect.explains)


def _changes(script: Script, assessment: Assessment, choice: _Choice) -> Iterator[Change]:
    """Single answers, taken back or given otherwise, that would change the verdict.

    Belief proposes them, since it is quick; each is then assessed as if it had been given.
    """
    found = 0
    now = _least_wrong(script.knowledge, assessment.posterior).action
    for question_id, code, evidence in _one_step_away(script, assessment):
        belief = posterior(script.evidence_model, evidence, assessment.not_fitted)
        if _least_wrong(script.knowledge, belief).action != now:
            then = _choose(script, assess(script, _answered_otherwise(script, assessment.state, question_id, code)))
            if then.action != choice.action:
                yield Change(question_id, code, then.action)
                found += 1
        if found == MOST_CHANGES:
            return


def _answered_otherwise(script: Script, state: State, question_id: str, code: str | None) -> State:
    """The state as if that question had been answered so, or never."""
    answers = {q: answer for q, answer in state.answers.items() if q != question_id}
    if code is not None:
        value = value_of(script.knowledge.questions[question_id], code)
        answers[question_id] = Answer(question_id, "answered", value, state.sequence, datetime.min)
    return replace(state, answers=answers)


def _one_step_away(script: Script, assessment: Assessment) -> Iterator[tuple[str, str | None, Mapping[str, str]]]:
    evidence = assessment.evidence
    for question_id in evidence:
        yield question_id, None, {q: c for q, c in evidence.items() if q != question_id}
    for question_id, codes in script.evidence_model.codes.items():
        question = script.knowledge.questions[question_id]
        if question_id not in evidence and _could_be_asked(question, assessment):
            for code in codes:
                yield question_id, code, {**evidence, question_id: code}


def _could_be_asked(question: Question, assessment: Assessment) -> bool:
    return (
        applies(question, assessment.not_fitted)
        and within_care(assessment, question.care)
        and gates_open(assessment, question)
    )
