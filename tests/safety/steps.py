"""What the steps after a stop must be, said again: the gravest sign's own, and of the others what touches nothing."""

import re
from collections.abc import Iterator, Sequence

from assistant.knowledge.model import Knowledge
from tests.safety import trade

SENDS_TO_A_SWITCH = re.compile(
    r"\b(?:switch|turn) (?:it |the [\w' ]*?)?off\b|\bgo to the fuse box\b|\bknobs? to off\b"
    r"|\buse (?:the|a) \w* ?switch\b"
)
FORBIDS = re.compile(r"\b(?:do not|don't|never|no)\b")


def steps_in_breach(knowledge: Knowledge, signs: Sequence[str], told: Sequence[str]) -> Iterator[str]:
    """What is wrong with the steps told after these signs, which stand, the gravest first."""
    first, *others = signs
    own = knowledge.signs[first].steps
    ruled_out = {s for sign in signs for step in knowledge.signs[sign].steps for s in knowledge.steps[step].rules_out}
    if [step for step in told if step in own] != [step for step in own if step not in ruled_out]:
        yield f"not the own steps of {first} in their order: {told}"
    for sign_id in others:
        for step in knowledge.signs[sign_id].steps:
            harmless = knowledge.steps[step].touches_nothing and step not in ruled_out
            if (step in told) != harmless and step not in own:
                yield f"{step} of {sign_id} beside {first}"
    every = {*own, *(step for sign_id in others for step in knowledge.signs[sign_id].steps)}
    yield from (f"{step} is of no sign that stands" for step in told if step not in every)
    yield from (f"{step} although ruled out" for step in told if step in ruled_out)
    yield from trade.out_of_order(tuple(told), " and ".join(signs))
    yield from _left_out(knowledge, first, told, ruled_out)


def _left_out(knowledge: Knowledge, sign_id: str, told: Sequence[str], ruled_out: set[str]) -> Iterator[str]:
    for step in trade.NEEDED_STEPS.get(sign_id, trade.NEEDED_BY_OTHERS):
        if step not in told and step not in ruled_out:
            yield f"{step} left out after {sign_id}"


def sends_to_a_switch(text: str) -> bool:
    """Whether a step's sentence sends somebody to a switch, a knob or the fuse box."""
    for sentence in re.split(r"(?<=[.!?:])\s+", text.lower()):
        found = SENDS_TO_A_SWITCH.search(sentence)
        if found and not FORBIDS.search(sentence[: found.start()]):
            return True
    return False
