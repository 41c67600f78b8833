"""Whether the ending of a played interview serves the oven that was drawn."""

from collections.abc import Mapping
from typing import Any

from assistant.belief.decision import TRADES, Action, Decision
from assistant.belief.hypotheses import NOTHING_WRONG, Hypothesis
from assistant.knowledge.model import Knowledge

STOP = "stop_and_isolate"


def ending_of(played: Mapping[str, Any]) -> Action | None:
    """The verdict as an action of the table; a stop as the visit that follows it; None for 'outside'."""
    details = played["details"]
    match played["action"]:
        case "all_normal":
            return Action("all_normal")
        case "do_one_thing":
            return Action("do_one_thing", details["act"])
        case "use_differently":
            return Action("use_differently", details["advice"])
        case "outside":
            return None
    who = details["who"] if details["who"] in TRADES else TRADES[0]
    return Action("book_visit", who)


def is_served(knowledge: Knowledge, decision: Decision, hypothesis: Hypothesis, played: Mapping[str, Any]) -> bool:
    """The ending serves every cause that is there, or says that all is normal of a sound oven.

    A stop serves an oven with a dangerous cause, and no other.
    """
    if played["action"] == STOP:
        return is_dangerous(knowledge, hypothesis)
    action = ending_of(played)
    return action is not None and serves_all(knowledge, decision, hypothesis, action)


def is_dangerous(knowledge: Knowledge, hypothesis: Hypothesis) -> bool:
    return any(cause in knowledge.causes and knowledge.causes[cause].danger for cause in hypothesis)


def serves_all(knowledge: Knowledge, decision: Decision, hypothesis: Hypothesis, action: Action) -> bool:
    if hypothesis == NOTHING_WRONG:
        return action.ending == "all_normal"
    place = {cause: row for row, cause in enumerate(knowledge.causes)}
    column = decision.serves[:, decision.actions.index(action)]
    return all(column[place.get(cause, len(place))] == 1 for cause in hypothesis)
