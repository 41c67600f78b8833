"""How well a played interview served the oven that was drawn, in money and in plain terms."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from assistant.authoring.simulated_endings import STOP, ending_of, is_dangerous, is_served
from assistant.belief.combination import Floats
from assistant.belief.decision import Action, Decision, expected_costs, kit, order_of_tests
from assistant.belief.hypotheses import EvidenceModel, Hypothesis
from assistant.interview.verdict import NONE
from assistant.knowledge.model import Care, Knowledge

HOT = (Care.WATCH_HOT.value, Care.OPEN_HOT.value)
VISITS = ("book_visit", "maker_seller_or_landlord_first")


@dataclass(frozen=True)
class Judge:
    """What interviews are judged by: the table of costs, and which cause is what. One for both trees."""

    knowledge: Knowledge
    model: EvidenceModel
    decision: Decision
    region: str


@dataclass(frozen=True)
class Score:
    """One interview. Costs in the region's money; `minutes` before anything hot is asked, all of them if nothing is.

    `served`: the ending serves every cause that is there, or says that all is normal of a sound oven.
    `cheapest`: no ending would have cost less on the oven as it is.
    `sure`: the probability that the first name was given; `until_ripe`: questions before those for the visit.
    """

    hypothesis: Hypothesis
    action: str
    remedy: str
    first: str
    sure: float
    first_right: bool
    any_in_three: bool
    all_in_three: bool
    served: bool
    cheapest: bool
    ending_cost: float
    effort: float
    until_ripe: int
    asked: int
    minutes: float
    hot: bool
    needless_visit: bool
    missed: bool
    false_stop: bool


def score(judge: Judge, hypothesis: Hypothesis, played: Mapping[str, Any]) -> Score:
    action = ending_of(played)
    there = set(hypothesis) or {NONE}
    names = [name for name, _ in played["named"]]
    faults = [c for c in hypothesis if c not in judge.knowledge.causes or judge.knowledge.causes[c].kind == "fault"]
    dangerous = is_dangerous(judge.knowledge, hypothesis)
    visit = action is not None and action.ending == "book_visit"
    stopped = played["action"] == STOP
    served = is_served(judge.knowledge, judge.decision, hypothesis, played)
    ending_cost = cost_of(judge, hypothesis, action, played)
    ripe = [question for question in played["asked"] if question["stage"] not in ("look", "visit")]
    hot_at = next((number for number, question in enumerate(ripe) if question["care"] in HOT), None)
    return Score(
        hypothesis=hypothesis,
        action=played["action"],
        remedy=action.remedy if action else "",
        first=names[0],
        sure=float(played["named"][0][1]),
        first_right=names[0] in there,
        any_in_three=not there.isdisjoint(names[:3]),
        all_in_three=there <= set(names[:3]),
        served=served,
        cheapest=served and (stopped or action == cheapest_action(judge, hypothesis)),
        ending_cost=ending_cost,
        effort=effort_of(judge, ripe),
        until_ripe=len(ripe),
        asked=len(played["asked"]),
        minutes=sum(question["minutes"] for question in ripe[:hot_at]),
        hot=hot_at is not None,
        needless_visit=(visit or stopped) and not faults,
        missed=bool(faults) and not (visit or stopped),
        false_stop=stopped and not dangerous,
    )


def number_of(decision: Decision, action: Action) -> int:
    return decision.actions.index(action)


def truth(judge: Judge, hypothesis: Hypothesis) -> Floats:
    """(C,): 1 for each cause that is there."""
    return judge.model.members[judge.model.hypotheses.index(hypothesis)].astype(np.float64)


def cheapest_action(judge: Judge, hypothesis: Hypothesis) -> Action:
    """The ending that would cost least to who knows the oven."""
    costs = expected_costs(judge.decision, truth(judge, hypothesis)[None, :], np.ones(1))[0]
    return judge.decision.actions[int(costs.argmin())]


def cost_of(judge: Judge, hypothesis: Hypothesis, action: Action | None, played: Mapping[str, Any]) -> float:
    """What that ending costs on the oven as it is.

    Every visit that is made, now or after something else was tried, brings the parts and makes the tests that the
    interview's beliefs give.
    """
    decision, there = judge.decision, truth(judge, hypothesis)
    number = number_of(decision, action or Action("all_normal"))
    made = [trade for trade, sought in decision.visits.items() if trade == number or (there * sought).any()]
    visits = sum(_of_the_visit(judge, hypothesis, trade, played) for trade in made)
    in_vain = decision.tried_in_vain if tries(action) and not (there @ decision.serves[:, number]) else 0.0
    return float(decision.price[number] + there @ decision.left[:, number]) + visits + in_vain


def tries(action: Action | None) -> bool:
    return action is not None and action.ending in ("do_one_thing", "use_differently")


def _of_the_visit(judge: Judge, hypothesis: Hypothesis, number: int, played: Mapping[str, Any]) -> float:
    """Parts brought, second trips for those that weren't, and tests until each of its causes is found."""
    decision, sought = judge.decision, judge.decision.visits[number]
    believed = dict(played["named"])
    marginals = np.array([believed.get(cause, 0.0) for cause in judge.model.causes])
    trade = decision.actions[number].remedy
    brought = kit(decision, marginals, trade)
    tests = order_of_tests(decision, judge.model.causes, marginals, trade)
    needed = (truth(judge, hypothesis) * sought) @ decision.part_of
    parts_there = {part for part, is_needed in zip(decision.parts, needed, strict=True) if is_needed}
    looked_for = [cause for cause in hypothesis if sought[judge.model.causes.index(cause)]]
    made = sum(tests.index(cause) + 1 if cause in tests else decision.tests_planned for cause in looked_for)
    second_trips = len(parts_there - set(brought))
    return decision.part_brought * len(brought) + decision.return_visit * second_trips + decision.test * made


def effort_of(judge: Judge, asked: list[dict[str, Any]]) -> float:
    """As the choice of questions counts it: minutes, care, and each question dearer than the one before."""
    costs = judge.knowledge.regions[judge.region].costs
    patience = judge.knowledge.settings.patience.value
    return sum(
        question["minutes"] * costs.minute.value
        + costs.care[Care(question["care"])].value
        + costs.question.value * (1 + number / patience)
        for number, question in enumerate(asked)
    )
