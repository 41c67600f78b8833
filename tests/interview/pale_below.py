"""What is told of an oven that stays pale below and whose fan cooks well."""

from collections.abc import Mapping

PALE: Mapping[str, object] = {
    "danger_now": ["none"],
    "what_goes_wrong": ["pale_below"],
    "which_appliance": "built_in_knobs",
    "underside_pale": "white_or_raw",
    "fan_cooks": "cooks_well",
    "bottom_heat_alone": "white_or_raw",
}
