"""Which ways to end are allowed now, and which an answer could still allow."""

from assistant.belief.decision import Action, Decision
from assistant.belief.hypotheses import NOTHING_WRONG
from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.interview.way import Way, WayFinder
from assistant.knowledge.model import Care

Actions = tuple[int, ...]
"""Numbers of the decision's actions."""


def allowed_actions(script: Script, assessment: Assessment) -> Actions:
    """Those that findings and danger leave, but nothing that would sound like a lie.

    That is that nothing points to a fault while some cause is likelier than none, or that something be tried which is
    no likely answer.
    """
    decision = script.decision(assessment.state.region)
    left = actions_left(script, assessment)
    return tuple(number for number in left if _may_be_said(script, assessment, decision, number))


def actions_left(script: Script, assessment: Assessment) -> Actions:
    """Only a visit where a finding or likely danger asks for one; an act only if one of its findings holds."""
    decision = script.decision(assessment.state.region)
    if _visit_for_danger(script, assessment) or any(e.visit_anyway for e in assessment.effects.values()):
        return tuple(decision.visits)
    concluded = assessment.trace.concluded
    return tuple(n for n, a in enumerate(decision.actions) if not (held := _only_when(script, a)) or held & concluded)


def _may_be_said(script: Script, assessment: Assessment, decision: Decision, number: int) -> bool:
    belief = assessment.posterior
    match decision.actions[number].ending:
        case "all_normal":
            return round(belief.of_set(NOTHING_WRONG), 9) >= round(float(belief.marginals.max()), 9)
        case "do_one_thing" | "use_differently":
            served = float(belief.marginals @ decision.serves[:, number])
            return served >= script.knowledge.settings.proposed_above.share
        case _:
            return True


def actions_in_reach(script: Script, assessment: Assessment, finder: WayFinder) -> Actions:
    """Those that are allowed, or would be after some answers: what questions are weighed by."""
    decision = script.decision(assessment.state.region)
    floors = [f for f, effect in assessment.effects.items() if effect.visit_anyway]
    if _visit_for_danger(script, assessment) or any(_way_past(script, finder, f) is None for f in floors):
        return tuple(decision.visits)
    return tuple(n for n, a in enumerate(decision.actions) if _way_to_act(script, finder, a) is not None)


def way_to_action(script: Script, assessment: Assessment, finder: WayFinder, action: Action) -> Way:
    """Questions that would allow an action in reach, the first one first; empty if it is allowed."""
    floors = [f for f, effect in assessment.effects.items() if effect.visit_anyway]
    past = [_way_past(script, finder, f) or () for f in floors] if action.ending != "book_visit" else []
    return tuple(dict.fromkeys(step for way in (*past, _way_to_act(script, finder, action) or ()) for step in way))


def _visit_for_danger(script: Script, assessment: Assessment) -> bool:
    likely = assessment.dangerous >= script.knowledge.settings.dangerous_above.share
    return likely or bool(assessment.danger.withdrawn)


def _only_when(script: Script, action: Action) -> frozenset[str]:
    if action.ending != "do_one_thing":
        return frozenset()
    return frozenset(script.knowledge.acts[action.remedy].only_when)


def _way_to_act(script: Script, finder: WayFinder, action: Action) -> Way | None:
    held = _only_when(script, action)
    return _cold(script, finder.shortest(sorted(held))) if held else ()


def _way_past(script: Script, finder: WayFinder, finding_id: str) -> Way | None:
    """How a finding that asks for a visit could come to hold no more: by one of those that it is silent under."""
    return _cold(script, finder.shortest(script.knowledge.findings[finding_id].unless))


def _cold(script: Script, way: Way | None) -> Way | None:
    """A way that asks for nothing hot: nobody tests a hot oven only to be allowed an ending."""
    questions = script.knowledge.questions
    if way is None or any(questions[step].care.rank > Care.LOOK_COLD.rank for step in way):
        return None
    return way
