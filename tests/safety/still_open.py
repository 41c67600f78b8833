"""Breaches that the checks have found in the rules as they are, each with what would mend it.

Nothing here is excused: every run names them, and a test fails as soon as one of them is mended and still listed, or
as soon as there is any other.
"""

from collections.abc import Mapping

HOT: Mapping[str, str] = {
    "a hot question without the gate: hot_before_it_stopped": (
        "food burned before the heat failed; then the heat is said to be back, and a hot test is asked for: "
        "bar_far_too_hot needs a group {question: hot_before_it_stopped, is: burnt_things}"
    ),
    "a hot question without the gate: breaker_position": (
        "a breaker off again, or with a test button, and then 'no' to the danger question: "
        "bar_tripped needs breaker_position, is_one_of: [off_first_time, off_again, rcd_off]"
    ),
}

STEPS: Mapping[str, str] = {
    "shock_still_held": (
        "told beside fire, gas or a CO alarm, for it touches nothing, it says 'switch off at the fuse box': "
        "its switch belongs into a step of its own, which these signs' steps rule out"
    ),
    "only_a_dry_board": (
        "told beside fire, gas or a CO alarm it says 'go to the fuse box only if it is dry': "
        "steps of these signs should rule it out"
    ),
}
