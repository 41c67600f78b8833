"""What each way to end costs, given which causes are there: the least expected cost decides.

Costs add up over causes: an action has its own price, and every cause that it doesn't serve costs what is left
undone. So a pair is served only when both are, and expected costs need the marginals of the causes alone. A visit
also costs the parts that weren't brought and the tests made before the cause is found; the best kit and the best
order of tests are those of the most probable. Injury has no price here.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

import numpy as np
import numpy.typing as npt

from assistant.belief.combination import Floats
from assistant.belief.hypotheses import SOMETHING_ELSE
from assistant.knowledge.model import Cause, Costs, Knowledge, Trade

Ending = Literal["all_normal", "do_one_thing", "use_differently", "book_visit"]
TRADES: tuple[Trade, ...] = Trade.__args__  # type: ignore[attr-defined]


@dataclass(frozen=True)
class Action:
    """One way to end; `remedy` is the act, the advice or the trade, empty for `all_normal`."""

    ending: Ending
    remedy: str = ""


@dataclass(frozen=True)
class Decision:
    """The table of action x cause. A actions, C causes, P parts; money in the region's currency.

    `price`: (A,). `left`: (C, A), added for each cause that is there. `serves`: (C, A) of 0 and 1. `visits`: for
    each visiting action its row of causes that its trade looks for, (C,) of 0 and 1. `part_of`: (C, P) of 0 and 1.
    """

    actions: tuple[Action, ...]
    price: Floats
    left: Floats
    serves: Floats
    visits: dict[int, Floats]
    part_of: Floats
    parts: tuple[str, ...]
    return_visit: float
    part_brought: float
    test: float
    parts_brought: int
    tests_planned: int
    tried_in_vain: float

    @cached_property
    def is_tried(self) -> npt.NDArray[np.bool_]:
        """(A,): whether it is something to try."""
        return np.array([action.ending in ("do_one_thing", "use_differently") for action in self.actions])


def decision_of(knowledge: Knowledge, region: str) -> Decision:
    """Raises KeyError for an unknown region."""
    costs = knowledge.regions[region].costs
    actions = _actions(knowledge)
    causes: list[tuple[str, Cause | None]] = [*knowledge.causes.items(), (SOMETHING_ELSE, None)]
    parts = tuple(dict.fromkeys(c.part for c in knowledge.causes.values() if c.kind == "fault" and c.part))
    part_of = [[c is not None and c.kind == "fault" and c.part == part for part in parts] for _, c in causes]
    sought = {
        number: np.array([float(_mended_by(cause) == action.remedy) for _, cause in causes])
        for number, action in enumerate(actions)
        if action.ending == "book_visit"
    }
    return Decision(
        actions=actions,
        price=np.array([_price(action, costs) for action in actions]),
        left=np.array([[_left(action, cause, costs) for action in actions] for _, cause in causes]),
        serves=np.array([[_serves(action, cause) for action in actions] for _, cause in causes], dtype=np.float64),
        visits=sought,
        part_of=np.array(part_of, dtype=np.float64).reshape(len(causes), len(parts)),
        parts=parts,
        return_visit=costs.return_visit.value,
        part_brought=costs.part_brought.value,
        test=costs.test.value,
        parts_brought=int(knowledge.settings.parts_brought.value),
        tests_planned=int(knowledge.settings.tests_planned.value),
        tried_in_vain=costs.tried_in_vain.value,
    )


def _actions(knowledge: Knowledge) -> tuple[Action, ...]:
    acts = dict.fromkeys(cause.act for cause in knowledge.causes.values() if cause.act)
    advice = dict.fromkeys(cause.advice for cause in knowledge.causes.values() if cause.advice)
    return (
        Action("all_normal"),
        *(Action("do_one_thing", act) for act in acts),
        *(Action("use_differently", each) for each in advice),
        *(Action("book_visit", trade) for trade in TRADES),
    )


def _mended_by(cause: Cause | None) -> str:
    """The unnamed cause is looked for by the appliance engineer."""
    return "appliance_engineer" if cause is None else cause.mended_by


def _price(action: Action, costs: Costs) -> float:
    if action.ending == "book_visit":
        return costs.visit[_trade(action)].value
    if action.ending == "all_normal":
        return 0.0
    return (costs.act if action.ending == "do_one_thing" else costs.advice).value


def _trade(action: Action) -> Trade:
    return next(trade for trade in TRADES if trade == action.remedy)


def _serves(action: Action, cause: Cause | None) -> bool:
    """A visit serves the faults of its trade and every habit: who comes also sees how the oven is used."""
    if action.ending == "book_visit":
        return _mended_by(cause) in (action.remedy, "householder")
    if cause is None or action.ending == "all_normal":
        return False
    return action.remedy == (cause.act if action.ending == "do_one_thing" else cause.advice)


def _left(action: Action, cause: Cause | None, costs: Costs) -> float:
    """What it costs that this cause is there when that action is taken; where the action serves it, nothing.

    But somebody who comes for a way of use comes for little, and a fault that isn't served needs a visit after all.
    """
    habit = cause is not None and cause.kind == "habit"
    if _serves(action, cause):
        return costs.habit_visited.value if habit and action.ending == "book_visit" else 0.0
    if habit:
        return costs.habit_left.value if action.ending == "all_normal" else 0.0
    mended_by = _mended_by(cause)
    visit = next(costs.visit[trade].value for trade in TRADES if trade == mended_by)
    return visit + (costs.fault_left.value if action.ending == "all_normal" else 0.0)


def expected_costs(decision: Decision, marginals: Floats, total: Floats) -> Floats:
    """(R, A) from marginals (R, C) and the probability of each row (R,), both unnormalised: costs times that.

    Every visit, also one that follows, brings parts and makes tests; one follows for each cause that wasn't served.
    Something to try is in vain unless what it serves is there, whatever else is or isn't. Each of these costs is
    concave in what is believed, so knowing more never makes the best ending dearer. (Of what is tried in vain it
    holds because acts and ways of use serve habits, of which no set has two: what is served never exceeds the total.)
    """
    found = total[:, None] * decision.price + marginals @ decision.left
    in_vain = np.maximum(total[:, None] - marginals @ decision.serves, 0.0)
    found += decision.tried_in_vain * in_vain * decision.is_tried
    for action, sought in decision.visits.items():
        now, later = _of_the_visits(decision, sought, marginals, total)
        found += later[:, None]
        found[:, action] += now - later
    return found


def _of_the_visits(decision: Decision, sought: Floats, marginals: Floats, total: Floats) -> tuple[Floats, Floats]:
    """(R,) of a visit now, and of one for each cause that is left: parts brought, second trips for those that
    weren't, and tests before the cause is found.

    A part is brought where that is expected to cost less than a second trip, the likeliest first.
    """
    causes = np.flatnonzero(sought)
    theirs = marginals[:, causes]
    part_of = decision.part_of[causes]
    trips = decision.return_visit * (theirs @ part_of[:, part_of.any(axis=0)])
    every = theirs.sum(axis=1)
    unspared = trips.sum(axis=1) + decision.test * _tests_until_found(theirs, every, decision.tests_planned)
    now, later = (unspared - _spared_by_parts(decision, trips, visits) for visits in (total, every))
    return now, later


def _tests_until_found(theirs: Floats, every: Floats, planned: int) -> Floats:
    """(R,): one for the likeliest cause, two for the next; the last planned one stands for all that are left."""
    planned = min(planned, theirs.shape[1])
    if planned < 2:
        return planned * every
    likeliest = np.sort(_likeliest(theirs, planned - 1), axis=1)
    found: Floats = planned * every - likeliest[:, 1 - planned :] @ np.arange(1.0, planned)
    return found


def _spared_by_parts(decision: Decision, trips: Floats, visits: Floats) -> Floats:
    """(R,): what the best kit spares of second trips (R, P), less the parts in it; each visit brings it.

    Parts that no row would bring are left out before the best are looked for.
    """
    brought = (decision.part_brought * visits)[:, None]
    worth_it = (trips > brought).any(axis=0)
    if not worth_it.any():
        return np.zeros(len(trips))
    spared = np.maximum(trips[:, worth_it] - brought, 0.0)
    total: Floats = _likeliest(spared, decision.parts_brought).sum(axis=1)
    return total


def _likeliest(values: Floats, number: int) -> Floats:
    """(R, number): the greatest of each row, in no order."""
    if values.shape[1] <= number:
        return values
    found: Floats = np.partition(values, values.shape[1] - number, axis=1)[:, -number:]
    return found


def least_costs(decision: Decision, marginals: Floats, total: Floats, allowed: Sequence[int]) -> Floats:
    """(R,): the expected cost of the best allowed action, times the probability of the row.

    As the least of `expected_costs`, but what is alike is computed once: of things to try that cost the same and
    leave the same, that one is best which serves the most.
    """
    visits = {action: _of_the_visits(decision, sought, marginals, total) for action, sought in decision.visits.items()}
    later = sum((after for _, after in visits.values()), np.zeros(len(total)))
    by_group = []
    for group in _alike(decision, tuple(allowed)):
        first = group[0]
        costs = total * decision.price[first] + marginals @ decision.left[:, first] + later
        if decision.is_tried[first]:
            served = decision.serves[:, list(group)]
            causes = np.flatnonzero(served.any(axis=1))
            most = (marginals[:, causes] @ served[causes]).max(axis=1)
            costs += decision.tried_in_vain * np.maximum(total - most, 0.0)
        if first in visits:
            now, after = visits[first]
            costs += now - after
        by_group.append(costs)
    least: Floats = np.min(by_group, axis=0)
    return least


def _alike(decision: Decision, allowed: tuple[int, ...]) -> list[list[int]]:
    """The allowed actions; together those to try whose price and what they leave are the same."""
    groups: dict[object, list[int]] = {}
    for number in allowed:
        same = (decision.price[number], decision.left[:, number].tobytes()) if decision.is_tried[number] else number
        groups.setdefault(same, []).append(number)
    return list(groups.values())


def least_action(decision: Decision, marginals: Floats, allowed: Sequence[int]) -> Action:
    """The action with the least expected cost, to a hundredth; among equals the first in the table."""
    costs = expected_costs(decision, marginals[None, :], np.ones(1))[0].round(2)
    return decision.actions[min(allowed, key=lambda number: costs[number])]


def kit(decision: Decision, marginals: Floats, trade: str) -> tuple[str, ...]:
    """The parts that the trade brings, most probable first: those for which a second trip is expected to cost more."""
    probable = _looked_for(decision, marginals, trade) @ decision.part_of
    order = np.argsort(-probable.round(12), kind="stable")[: decision.parts_brought]
    return tuple(decision.parts[i] for i in order if decision.return_visit * probable[i] > decision.part_brought)


def order_of_tests(decision: Decision, causes: Sequence[str], marginals: Floats, trade: str) -> tuple[str, ...]:
    """The causes that the trade looks for first, most probable first."""
    probable = _looked_for(decision, marginals, trade)
    order = np.argsort(-probable.round(12), kind="stable")[: decision.tests_planned]
    return tuple(causes[i] for i in order if probable[i] >= LEAST_TESTED)


def _looked_for(decision: Decision, marginals: Floats, trade: str) -> Floats:
    """(C,): the marginals of the causes that the trade mends, 0 elsewhere."""
    visits = {decision.actions[number].remedy: sought for number, sought in decision.visits.items()}
    found: Floats = marginals * visits[trade]
    return found


LEAST_TESTED = 0.01
"""A test for something less probable isn't named."""
