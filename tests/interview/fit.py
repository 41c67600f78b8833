"""Answers after which an oven may be hot for a test."""

GATE = ["adult_stays", "no_child_or_pet_near", "no_home_oxygen", "oven_empty", "cooling_air_as_usual"]
FIT: dict[str, object] = {
    "danger_now": ["none"],
    "what_goes_wrong": ["too_cold_or_slow"],
    "which_appliance": "built_in_knobs",
    "person_at_oven": "yes",
    "may_look_cold": "off_and_cold",
    "look_over": ["none"],
    "ever_tripped": "never",
    "hot_gate": GATE,
}
"""All that a hot test needs."""
