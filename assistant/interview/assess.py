"""State -> what follows from it: findings, danger, the oven's parts, allowed care, belief."""

from collections.abc import Mapping, Set
from dataclasses import dataclass

from assistant.belief.hypotheses import CHOSEN, NOT_CHOSEN, codes_of, item_key
from assistant.belief.posterior import Posterior, posterior
from assistant.engine.crisp import Trace
from assistant.interview.answers import code_of, still_fits
from assistant.interview.danger import Danger, Stop, danger_of
from assistant.interview.script import Script, question_of_key, region_of
from assistant.interview.state import Answer, State
from assistant.interview.thermometer import bias_k, low_k
from assistant.knowledge.danger_questions import sign_question_id
from assistant.knowledge.kinds import VERY_HOT
from assistant.knowledge.model import Care, Effects, Knowledge, Question
from assistant.knowledge.readings import put_right, summary


@dataclass(frozen=True)
class Assessment:
    """Everything derived from one state; nothing of it is stored.

    `evidence`: report -> its code; `not_fitted`: parts this oven is known not to have; `dangerous`: the
    probability that at least one dangerous cause is there.
    """

    state: State
    trace: Trace
    effects: Mapping[str, Effects]
    danger: Danger
    not_fitted: frozenset[str]
    allowed_care: Care
    evidence: Mapping[str, str]
    posterior: Posterior
    dangerous: float


def assess(script: Script, state: State) -> Assessment:
    """Pure: the same state gives the same assessment."""
    knowledge = script.knowledge
    fitting, standing, not_fitted = answers_in_force(knowledge, state)
    facts = facts_of(standing, knowledge) | _too_hot(fitting, standing.keys(), knowledge)
    trace = script.trace(facts)
    effects = {f: knowledge.findings[f].then for f in knowledge.findings if f in trace.concluded}
    evidence = evidence_of(standing, knowledge)
    belief = posterior(script.evidence_model, evidence, not_fitted)
    dangerous = belief.of_any(script.dangerous)
    stops = _finding_stops(effects, trace, state)
    if dangerous >= knowledge.settings.stop_above.share:
        since = _likely_since(script, evidence, standing, not_fitted)
        likely = _likely_danger(script, belief, since)
        stops.setdefault(likely.sign_id, likely)
    danger = danger_of(state, knowledge, stops)
    return Assessment(
        state=state,
        trace=trace,
        effects=effects,
        danger=danger,
        not_fitted=not_fitted,
        allowed_care=allowed_care(knowledge, state.role, effects, danger, dangerous),
        evidence=evidence,
        posterior=belief,
        dangerous=dangerous,
    )


def answers_in_force(knowledge: Knowledge, state: State) -> tuple[dict[str, Answer], dict[str, Answer], frozenset[str]]:
    """The answers that their questions take today; those of them that make sense for this oven; the parts it lacks."""
    fitting = {q: a for q, a in state.answers.items() if still_fits(knowledge.questions.get(q), a.value)}
    not_fitted = parts_not_fitted(fitting, knowledge) | frozenset(region_of(knowledge, state.region).has_not)
    standing = {q: a for q, a in fitting.items() if applies(knowledge.questions[q], not_fitted)}
    return fitting, standing, not_fitted


def seen_by_belief(knowledge: Knowledge, state: State) -> tuple[dict[str, str], frozenset[str]]:
    """The evidence, and the parts that this oven is known not to have, as in an Assessment, without weighing them."""
    _, standing, not_fitted = answers_in_force(knowledge, state)
    return evidence_of(standing, knowledge), not_fitted


def parts_not_fitted(answers: Mapping[str, Answer], knowledge: Knowledge) -> frozenset[str]:
    """Parts the oven is known to lack, from answers about its functions and from 'mine hasn't one'."""
    lacking: set[str] = set()
    having: set[str] = set()
    kinds = knowledge.ovens.kinds
    kind = kind_of_oven(answers, knowledge)
    for question_id, question in knowledge.questions.items():
        answer = answers.get(question_id)
        if answer is None or answer.value is None or isinstance(answer.value, float):
            continue
        chosen = (answer.value,) if isinstance(answer.value, str) else answer.value
        for code in filter(question.choices.__contains__, chosen):
            lacking.update(question.choices[code].has_not)
            having.update(question.choices[code].has)
        if question.tells == "kind":
            lacking.update(part for name in chosen if name in kinds for part in kinds[name].has_not)
        if question.tells == "functions":
            used = {part for name in chosen for part in knowledge.ovens.uses(name, kind)}
            lacking.update({part for name in knowledge.ovens.functions for part in knowledge.ovens.uses(name)} - used)
            having.update(used)
    return frozenset(lacking - having)


def kind_of_oven(answers: Mapping[str, Answer], knowledge: Knowledge) -> str | None:
    """The kind that was told, if any was."""
    asked = (answers.get(question_id) for question_id, q in knowledge.questions.items() if q.tells == "kind")
    told = (answer.value for answer in asked if answer is not None and isinstance(answer.value, str))
    return next((kind for kind in told if kind in knowledge.ovens.kinds), None)


def applies(question: Question, not_fitted: frozenset[str]) -> bool:
    """Whether the question makes sense for this oven."""
    return not_fitted.isdisjoint(question.needs)


def facts_of(answers: Mapping[str, Answer], knowledge: Knowledge) -> dict[str, str | float]:
    """Answers as the engine's facts: a code or a number for each key; text only says that it was given."""
    facts: dict[str, str | float] = {}
    for question_id, answer in answers.items():
        if answer.status != "answered":
            facts[question_id] = answer.status
        elif isinstance(answer.value, str | float):
            facts[question_id] = answer.value
        elif (word := _measured(knowledge, answer, answers)) is not None:
            facts[question_id] = word
        else:
            facts[question_id] = "answered"
            chosen = answer.value or ()
            if knowledge.questions[question_id].kind == "choices":
                for choice in knowledge.questions[question_id].choices:
                    facts[item_key(question_id, choice)] = "yes" if choice in chosen else "no"
    return facts


def _too_hot(answers: Mapping[str, Answer], but: Set[str], knowledge: Knowledge) -> dict[str, str | float]:
    """Readings far above the setting stay facts, whatever was said of the oven's parts."""
    read = [q for q in answers if q not in but and knowledge.questions[q].kind == "temperature_log"]
    told = facts_of(answers, knowledge) if read else {}
    return {question_id: told[question_id] for question_id in read if told[question_id] == VERY_HOT}


def evidence_of(answers: Mapping[str, Answer], knowledge: Knowledge) -> dict[str, str]:
    """The reports that belief weighs. 'Not sure' and 'skipped' are evidence of nothing.

    Nor is what somebody didn't choose among several answers, unless all are gone through: people name what bothers
    them most. A danger sign counts once for each observable, however often it is told, and as its own question says.
    """
    found: dict[str, str] = {}
    told: set[tuple[str | None, str]] = set()
    raised = _signs_raised(answers, knowledge)
    for question_id, answer in answers.items():
        question = knowledge.questions[question_id]
        if answer.status != "answered":
            continue
        own = _own_report(
            question, answer, bias_k(knowledge, question_id, answers) if question.is_measurement else None
        )
        if own is not None:
            found[question_id] = own
        chosen = _chosen(answer)
        for choice_id, choice in question.choices.items() if chosen else ():
            if choice_id not in chosen and (not question.all_gone_through or choice.signals in raised):
                continue
            if choice.signals is not None and _asked_by_itself(choice.signals, question_id, answers):
                continue
            if (
                choice_id in chosen
                and choice.signals is not None
                and _may_be_cleared(choice.signals, answers, knowledge)
            ):
                continue
            for name in choice.said_when:
                if choice.signals is None or (choice.signals, name) not in told:
                    code = CHOSEN if choice_id in chosen else NOT_CHOSEN
                    found[item_key(item_key(question_id, choice_id), name)] = code
                    told.add((choice.signals, name))
    return found


def _own_report(question: Question, answer: Answer, bias: float | None) -> str | None:
    """What the answer reports as a whole: a code, or the lines that were written down, put right by the bias."""
    if question.is_measurement:
        if not isinstance(answer.value, tuple):
            return None
        return "\n".join(put_right(answer.value, bias) if bias is not None else answer.value)
    code = code_of(question, answer.value)
    return code if question.observable and code is not None and code in codes_of(question) else None


def _measured(knowledge: Knowledge, answer: Answer, answers: Mapping[str, Answer]) -> str | None:
    """The word by which rules read a measurement."""
    question = knowledge.questions[answer.question_id]
    if not question.is_measurement or not isinstance(answer.value, tuple):
        return None
    return summary(question, answer.value, low_k(knowledge, answer.question_id, answers))


def _chosen(answer: Answer) -> tuple[str, ...]:
    """The choices of an answer; none of a number."""
    if isinstance(answer.value, str):
        return (answer.value,)
    return answer.value if isinstance(answer.value, tuple) else ()


def _signs_raised(answers: Mapping[str, Answer], knowledge: Knowledge) -> set[str]:
    """The danger signs that some answer signals."""
    chosen = ((knowledge.questions[q], code) for q, answer in answers.items() for code in _chosen(answer))
    signals = (question.choices[code].signals for question, code in chosen if code in question.choices)
    return {sign_id for sign_id in signals if sign_id is not None}


def _asked_by_itself(sign_id: str, question_id: str, answers: Mapping[str, Answer]) -> bool:
    """Whether the sign's own question was answered, and this isn't it."""
    own = answers.get(sign_question_id(sign_id))
    return own is not None and own.status == "answered" and question_id != sign_question_id(sign_id)


def _may_be_cleared(sign_id: str, answers: Mapping[str, Answer], knowledge: Knowledge) -> bool:
    """Whether the sign's own question is to narrow it, and wasn't put yet."""
    own = answers.get(sign_question_id(sign_id))
    return knowledge.signs[sign_id].grade == "narrow" and (own is None or own.status == "skipped")


def _finding_stops(effects: Mapping[str, Effects], trace: Trace, state: State) -> dict[str, Stop]:
    stops: dict[str, Stop] = {}
    for finding_id, effect in effects.items():
        if effect.stops is not None:
            resting_on = answers_behind(finding_id, trace, state)
            since = max((answer.sequence for answer in resting_on), default=0)
            stops[effect.stops] = Stop(effect.stops, "finding", finding_id, since)
    return stops


def _likely_danger(script: Script, belief: Posterior, since: int) -> Stop:
    """The sign of the likeliest dangerous cause."""
    likeliest = next(cause for cause, _ in belief.causes() if cause in script.dangerous)
    return Stop(str(script.knowledge.causes[likeliest].danger), "belief", likeliest, since)


def _likely_since(
    script: Script, evidence: Mapping[str, str], answers: Mapping[str, Answer], not_fitted: frozenset[str]
) -> int:
    """The report from which on danger was likely enough to stop, whatever was told after it."""
    told_at = {report: answers[question_of_key(report)].sequence for report in evidence}
    for at in sorted(set(told_at.values()), reverse=True):
        before = {report: code for report, code in evidence.items() if told_at[report] < at}
        belief = posterior(script.evidence_model, before, not_fitted)
        if belief.of_any(script.dangerous) < script.knowledge.settings.stop_above.share:
            return at
    return 0


def answers_behind(finding_id: str, trace: Trace, state: State) -> tuple[Answer, ...]:
    """The answers that a finding rests on, through every finding between."""
    keys = {question_of_key(key) for fired in trace.because(finding_id) for key in fired.from_keys}
    return tuple(answer for question_id, answer in state.answers.items() if question_id in keys)


def allowed_care(
    knowledge: Knowledge, role: str, effects: Mapping[str, Effects], danger: Danger, dangerous: float
) -> Care:
    """Talk only, unless a finding allows more; never beyond a cap, the role's limit, or while danger is open.

    After a sign was taken back nothing hot is asked. A role that the rules no longer know is only talked to.
    """
    allowed = max((e.allows_care for e in effects.values() if e.allows_care), key=lambda c: c.rank, default=Care.TALK)
    return min(allowed, care_limit(knowledge, role, effects, danger, dangerous), key=lambda care: care.rank)


def care_limit(
    knowledge: Knowledge, role: str, effects: Mapping[str, Effects], danger: Danger, dangerous: float
) -> Care:
    """How far care could rise if findings allowed it: the role's limit, caps, no hot test where danger is likely."""
    if danger.open or role not in knowledge.roles:
        return Care.TALK
    caps = [e.care_at_most for e in effects.values() if e.care_at_most]
    if danger.withdrawn or dangerous >= knowledge.settings.dangerous_above.share:
        caps.append(Care.LOOK_COLD)
    return min([*caps, knowledge.roles[role].asked_up_to], key=lambda care: care.rank)
