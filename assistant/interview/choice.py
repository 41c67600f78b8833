"""Assessment -> how it ends: one action of a closed list, with its details and what it rests on."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from assistant.belief.decision import TRADES, kit, least_action, order_of_tests
from assistant.interview.actions import allowed_actions
from assistant.interview.assess import Assessment, answers_behind
from assistant.interview.danger import Stop
from assistant.interview.plan_of_tests import plan_of_tests
from assistant.interview.reasons import Reason, danger_reasons
from assistant.interview.script import Script, question_of_key
from assistant.knowledge.danger_questions import DANGER_NOW, OVEN_IS_OFF
from assistant.knowledge.model import Knowledge

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
FEW_ANSWERS = 3
LIKELY_ENOUGH = 0.2
"""A fault from here on decides how soon somebody comes."""


@dataclass(frozen=True)
class Choice:
    """How it ends. `because` leaves out what a choice that is `believed` owes to the answers: see reasons.py."""

    action: Action
    details: Details = field(default_factory=dict)
    because: tuple[Reason, ...] = ()
    believed: bool = False


def choose(script: Script, assessment: Assessment) -> Choice:
    """The verdict's action and what it rests on."""
    return (
        _stopped(script, assessment)
        or _handed_on(assessment)
        or _booked_for_danger(script.knowledge, assessment)
        or _believed(script, assessment)
    )


def _stopped(script: Script, assessment: Assessment) -> Choice | None:
    knowledge, danger = script.knowledge, assessment.danger
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
    if gravest.who in TRADES:
        details |= _brought(script, assessment, gravest.who)
    because = tuple(reason for stop in danger.stops for reason in _stop_reasons(script, assessment, stop))
    return Choice("stop_and_isolate", details, because)


def _stop_reasons(script: Script, assessment: Assessment, stop: Stop) -> tuple[Reason, ...]:
    """The sign or the finding itself; behind likely danger, the answers that speak for it."""
    if stop.source == "belief":
        return danger_reasons(script, assessment)
    return (Reason(stop.source, stop.source_id),)


def steps_for(knowledge: Knowledge, stops: tuple[Stop, ...]) -> tuple[str, ...]:
    """The gravest sign's own steps and, of the other signs, those that touch nothing; in the order of the steps' file.

    What a step of any standing sign rules out is left out ('not the wall switch', 'touch no switch').
    """
    gravest, *others = [knowledge.signs[stop.sign_id] for stop in stops]
    further = [step for sign in others for step in sign.steps if knowledge.steps[step].touches_nothing]
    ruled_out = {s for sign in (gravest, *others) for step in sign.steps for s in knowledge.steps[step].rules_out}
    told = {*gravest.steps, *further} - ruled_out
    return tuple(step for step in knowledge.steps if step in told)


@dataclass(frozen=True)
class StepsInParts:
    """The steps after a stop, in their order: those that count only `until_off`, and what holds in any case, which
    comes before them (`first`) or after (`then`).
    """

    first: tuple[str, ...]
    until_off: tuple[str, ...]
    then: tuple[str, ...]


def steps_in_parts(knowledge: Knowledge, stops: tuple[Stop, ...]) -> StepsInParts:
    """What `steps_for` names. Beside a danger that the oven's being off doesn't end, all of it holds in any case."""
    steps = steps_for(knowledge, stops)
    off_is_enough = all(knowledge.signs[stop.sign_id].oven_off_is_enough for stop in stops)
    until_off = tuple(step for step in steps if off_is_enough and knowledge.steps[step].until_off)
    if not until_off:
        return StepsInParts(steps, (), ())
    begins = steps.index(until_off[0])
    return StepsInParts(steps[:begins], until_off, steps[begins + len(until_off) :])


def _handed_on(assessment: Assessment) -> Choice | None:
    for finding_id, effect in assessment.effects.items():
        if effect.hands_on_to is not None:
            return Choice("outside", {"who": effect.hands_on_to}, _finding_reasons(finding_id, assessment))
    return None


def _finding_reasons(finding_id: str, assessment: Assessment) -> tuple[Reason, ...]:
    behind = answers_behind(finding_id, assessment.trace, assessment.state)
    return (
        Reason("finding", finding_id),
        *(Reason("answer", a.question_id, a.value) for a in behind if a.value is not None),
    )


_AFTER_THE_EMERGENCY = {"gas_emergency": "registered_gas_engineer", "network_operator": "electrician"}


def _booked_for_danger(knowledge: Knowledge, assessment: Assessment) -> Choice | None:
    """Danger told and then taken back: a visit, whatever belief says."""
    withdrawn = assessment.danger.withdrawn
    if not withdrawn:
        return None
    because = tuple(Reason("sign", sign_id) for sign_id in withdrawn)
    gravest = min((knowledge.signs[sign_id] for sign_id in withdrawn), key=lambda sign: sign.order)
    who = _AFTER_THE_EMERGENCY.get(gravest.who, "appliance_engineer")
    details: Details = {"who": who, "urgency": "soon"}
    return _send_to_owner(assessment, Choice("book_visit", details, because))


def _believed(script: Script, assessment: Assessment) -> Choice:
    """The action with the least expected cost, among those that findings and likely danger leave."""
    decision = script.decision(assessment.state.region)
    allowed = allowed_actions(script, assessment)
    best = least_action(decision, assessment.posterior.marginals, allowed)
    because = _floor_reasons(assessment)
    if best.ending == "do_one_thing":
        choice = Choice(best.ending, {"act": best.remedy}, because, believed=True)
    elif best.ending == "use_differently":
        choice = Choice(best.ending, {"advice": best.remedy}, because, believed=True)
    elif best.ending == "all_normal":
        choice = Choice(best.ending, {}, because, believed=True)
    else:
        choice = Choice("book_visit", _visit_details(script, assessment, best.remedy), because, believed=True)
    return _send_to_owner(assessment, _unless_little_is_known(script, assessment, choice))


def little_is_known(assessment: Assessment) -> bool:
    """Whether so few answers speak of anything that neither a visit nor 'all normal' may rest on them."""
    told = {question_of_key(report) for report in assessment.evidence} - {DANGER_NOW}
    return len(told) < FEW_ANSWERS and not any(effect.is_normal for effect in assessment.effects.values())


def _unless_little_is_known(script: Script, assessment: Assessment, choice: Choice) -> Choice:
    if not little_is_known(assessment) or choice.action not in ("all_normal", "book_visit"):
        return choice
    details = choice.details or _visit_details(script, assessment, "appliance_engineer")
    return replace(choice, action="book_visit", details={**details, "little_known": True})


def _visit_details(script: Script, assessment: Assessment, who: str) -> Details:
    """Who comes, how soon, what to bring and what to test first."""
    belief = assessment.posterior
    causes = script.knowledge.causes
    likely = [causes[c].urgency for c, p in belief.causes() if p >= LIKELY_ENOUGH and causes[c].kind == "fault"]
    wanted = [effect.visit_anyway for effect in assessment.effects.values() if effect.visit_anyway]
    if assessment.dangerous >= script.knowledge.settings.dangerous_above.share:
        wanted.append("soon")
    return {
        "who": who,
        "urgency": _soonest("routine", *wanted, *likely),
        **_brought(script, assessment, who),
    }


def _brought(script: Script, assessment: Assessment, who: str) -> dict[str, tuple[str, ...]]:
    """The parts to bring, the causes to look for first, and the tests by what they tell in a minute."""
    decision = script.decision(assessment.state.region)
    marginals = assessment.posterior.marginals
    return {
        "kit": kit(decision, marginals, who),
        "tests": order_of_tests(decision, script.evidence_model.causes, marginals, who),
        "test_plan": plan_of_tests(script, assessment),
    }


def _floor_reasons(assessment: Assessment) -> tuple[Reason, ...]:
    """Findings that ask for a visit whatever is likeliest, and what they rest on."""
    wanting = (f for f, effect in assessment.effects.items() if effect.visit_anyway)
    return tuple(reason for f in wanting for reason in _finding_reasons(f, assessment))


def _soonest(*urgencies: str) -> str:
    return min(urgencies, key=URGENCIES.index)


def _send_to_owner(assessment: Assessment, choice: Choice) -> Choice:
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
            return replace(choice, action="maker_seller_or_landlord_first", details=details, because=because)
    return replace(choice, details=details)
