"""The project's own verdicts under any belief and any costs, against what the answers alone demand."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from assistant.belief.decision import Decision
from assistant.belief.hypotheses import NOTHING_WRONG, Hypothesis
from assistant.interview.actions import allowed_actions
from assistant.interview.assess import Assessment, assess
from assistant.interview.choice import Choice, choose
from assistant.interview.script import Script
from assistant.interview.state import Answer, State
from assistant.interview.verdict import Verdict, give_verdict
from assistant.knowledge.danger_questions import DANGER_PLAINLY, OVEN_IS_OFF, SIGN_PREFIX, UNSURE
from assistant.knowledge.model import Knowledge
from tests.safety import trade
from tests.safety.exhaustive import Said, combinations_of, read_by
from tests.safety.fast import Fast
from tests.safety.real import begin, belief_in, believing, say_all
from tests.safety.steps import steps_in_breach

MORE_THAN_TALK = ("use_differently", "do_one_thing", "all_normal")
VISITS = ("book_visit", "maker_seller_or_landlord_first", "outside")
FACTORS = (1.0, 0.0, 1000.0)


def signs_told(knowledge: Knowledge, answers: Mapping[str, Answer]) -> list[str]:
    """The signs that these answers call danger, the gravest first."""
    told = {sign_id for question_id, a in answers.items() for sign_id in _told_by(knowledge, question_id, a)}
    return sorted(told, key=lambda sign_id: knowledge.signs[sign_id].order)


def _told_by(knowledge: Knowledge, question_id: str, answer: Answer) -> Iterator[str]:
    own = question_id.removeprefix(SIGN_PREFIX) if question_id.startswith(SIGN_PREFIX) else None
    if answer.status != "answered":
        if own is not None and own not in trade.MAY_BE_UNSURE:
            yield own
        if question_id == DANGER_PLAINLY:
            yield UNSURE
        return
    chosen = (answer.value,) if isinstance(answer.value, str) else answer.value
    if own is not None:
        if knowledge.signs[own].answers[str(answer.value)] == "stop":
            yield own
        return
    choices = knowledge.questions[question_id].choices
    for code in chosen if isinstance(chosen, tuple) and choices else ():
        sign_id = choices[code].signals
        if sign_id is not None and knowledge.signs[sign_id].grade == "stop":
            yield sign_id


def beliefs(script: Script) -> Iterator[Hypothesis]:
    """Every single cause, and that nothing is wrong."""
    yield NOTHING_WRONG
    yield from ((cause,) for cause in script.knowledge.causes)


def telling_beliefs(script: Script) -> Iterator[Hypothesis]:
    """One of each kind: nothing wrong, dangerous faults, others, habits with advice, an act, an act on terms."""
    yield NOTHING_WRONG
    acts = script.knowledge.acts
    kinds = {
        (cause.kind, cause.danger is not None, cause.act is not None and acts[cause.act].only_when): cause_id
        for cause_id, cause in script.knowledge.causes.items()
    }
    yield from ((cause_id,) for cause_id in kinds.values())


def with_costs(script: Script, factor: float) -> Script:
    """The script with everything that a region's endings cost multiplied."""
    return replace(script, decisions={region: _times(d, factor) for region, d in script.decisions.items()})


def with_dear_visits(script: Script) -> Script:
    """Visits cost a fortune, and nothing else costs anything."""

    def dear(decision: Decision) -> Decision:
        cheap = _times(decision, 0.0)
        price = cheap.price.copy()
        price[list(decision.visits)] = 1e9
        return replace(cheap, price=price)

    return replace(script, decisions={region: dear(d) for region, d in script.decisions.items()})


def _times(decision: Decision, factor: float) -> Decision:
    return replace(
        decision,
        price=decision.price * factor,
        left=decision.left * factor,
        return_visit=decision.return_visit * factor,
        part_brought=decision.part_brought * factor,
        test=decision.test * factor,
        tried_in_vain=decision.tried_in_vain * factor,
    )


def scripts_of(script: Script) -> list[Script]:
    return [*(with_costs(script, factor) for factor in FACTORS), with_dear_visits(script)]


def breaches(scripts: list[Script], state: State, hypothesis: Hypothesis) -> Iterator[str]:
    """What is wrong with the verdicts on this state, if exactly this is believed."""
    posterior = belief_in(scripts[0].evidence_model, {hypothesis: 1.0})
    with believing(posterior):
        assessment = assess(scripts[0], state)
    for script in scripts:
        yield from breaches_of_choice(script.knowledge, assessment, choose(script, assessment))


def breaches_of_choice(knowledge: Knowledge, assessment: Assessment, choice: Choice | Verdict) -> Iterator[str]:
    """What is wrong with an ending, by the answers alone."""
    answers, danger = assessment.state.answers, assessment.danger
    told = signs_told(knowledge, answers)
    standing = [stop.sign_id for stop in danger.stops]
    if not set(told) <= set(standing):
        yield f"a sign without its stop: {told} told, {standing} stand"
    if (told or standing) and choice.action != "stop_and_isolate":
        yield f"a stop outranked by {choice.action}"
    if choice.action == "stop_and_isolate":
        yield from _of_a_stop(knowledge, standing, choice)
    if danger.open and choice.action in MORE_THAN_TALK and (told or standing):
        yield f"more than talk while danger is open: {choice.action}"
    if assessment.state.reached and not standing and choice.action not in VISITS:
        yield f"a sign taken back and no visit: {choice.action}"
    if choice.action == "do_one_thing":
        yield from _of_an_act(str(choice.details["act"]), answers)
    if choice.action == "use_differently" and choice.details["advice"] not in knowledge.advice:
        yield f"advice off the list: {choice.details['advice']}"


def _of_a_stop(knowledge: Knowledge, standing: list[str], choice: Choice | Verdict) -> Iterator[str]:
    if not standing:
        yield "a stop without a sign"
        return
    steps = choice.details["steps"]
    assert isinstance(steps, tuple)
    by_gravity = sorted(standing, key=lambda sign_id: knowledge.signs[sign_id].order)
    yield from (f"wrong steps after a stop: {what}" for what in steps_in_breach(knowledge, by_gravity, steps))
    if choice.details.get("then") == OVEN_IS_OFF and set(standing) & set(trade.NO_SWITCH_AFTER):
        yield f"near a switch after fire, gas or CO: {standing}"


def _of_an_act(act: str, answers: Mapping[str, Answer]) -> Iterator[str]:
    if act not in trade.ACTS:
        yield f"an act off the closed list: {act}"
    for question_id, needed in trade.ACTS.get(act, {}).items():
        answer = answers.get(question_id)
        if answer is None or answer.value not in needed:
            yield f"an act without its condition: {act}, {question_id}"


def breaches_of_verdict(script: Script, assessment: Assessment) -> Iterator[str]:
    """The same of the whole verdict, and no tip while danger is open or was taken back."""
    verdict = give_verdict(script, assessment)
    yield from breaches_of_choice(script.knowledge, assessment, verdict)
    if (assessment.danger.open or assessment.state.reached) and "tips" in verdict.details:
        yield f"a tip while danger is open or was taken back: {verdict.details['tips']}"


def acts_told_wrongly(script: Script, fast: Fast) -> Iterator[str]:
    """Acts that the project allows under answers which the trade's table doesn't: every combination of answers to the
    questions that decide, with the act's own cause believed for sure.
    """
    for act_id in (act for act, needed in trade.ACTS.items() if needed):
        named = set(trade.ACTS[act_id]) | set(read_by(script.knowledge, script.knowledge.acts[act_id].only_when))
        cause = next(cause_id for cause_id, cause in script.knowledge.causes.items() if cause.act == act_id)
        with believing(belief_in(script.evidence_model, {(cause,): 1.0})):
            for said in combinations_of(fast, sorted(named)):
                state = _state_after(script, fast, said)
                if state is not None and act_id in _allowed_acts(script, state):
                    yield from _of_an_act(act_id, state.state.answers)


def _state_after(script: Script, fast: Fast, said: list[Said]) -> Assessment | None:
    """What follows from these answers; None while danger is open."""
    talked = begin(script, "householder")
    say_all(talked, fast.codes, said)
    return None if talked.assessment.danger.open else talked.assessment


def _allowed_acts(script: Script, assessment: Assessment) -> set[str]:
    decision = script.decision(assessment.state.region)
    actions = [decision.actions[number] for number in allowed_actions(script, assessment)]
    return {action.remedy for action in actions if action.ending == "do_one_thing"}
