"""After fire, gas or a carbon monoxide alarm no step sends anybody to a switch, whatever else stands."""

from collections.abc import Callable, Iterator
from itertools import combinations

from assistant.interview.choice import steps_for
from assistant.interview.danger import Stop
from assistant.knowledge.model import Knowledge
from tests.safety import trade
from tests.safety.steps import sends_to_a_switch


def steps_to_a_switch(knowledge: Knowledge, text_of: Callable[[str], str], together: int = 3) -> Iterator[str]:
    """Steps told after one of those signs, alone and with up to two others, whose words send to a switch."""
    sending = {step for step in knowledge.steps if sends_to_a_switch(text_of(step))}
    by_gravity = sorted(knowledge.signs, key=lambda sign_id: knowledge.signs[sign_id].order)
    for number in range(1, together + 1):
        for signs in combinations(by_gravity, number):
            grave = [sign_id for sign_id in signs if sign_id in trade.NO_SWITCH_AFTER]
            if grave:
                allowed = {step for sign_id in grave for step in trade.MAY_NAME_A_SWITCH.get(sign_id, ())}
                told = steps_for(knowledge, tuple(Stop(sign_id, "sign", sign_id, 1) for sign_id in signs))
                yield from (step for step in told if step in sending - allowed)
