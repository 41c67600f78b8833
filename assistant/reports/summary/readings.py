"""What the tests of a visit should read at this oven, as far as anything is known of it.

Where nothing is, the widest honest figures stand: the region's voltage, the typical band of elements.
"""

from collections.abc import Mapping

from assistant.interview.answers import still_fits
from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.physics.heating_element import (
    ResistanceBand,
    cold_band_under_plate,
    cold_resistance_band,
    current_a,
    typical_cold_band,
)
from assistant.physics.platinum import ToleranceClass, platinum_limits_ohm
from assistant.physics.supply import HEATING_INSULATION_MEGOHM, USUAL_INSULATION_MEGOHM
from assistant.physics.usual_figures import (
    KITCHEN_C,
    OPENS_WITHIN_K,
    SENSOR_AT_ZERO_OHM,
    TRIAL_SETTING_C,
    USUAL_MARKINGS_W,
)

PLATE_POWER = "plate_power"


def expected_readings(script: Script, assessment: Assessment) -> Mapping[str, str]:
    """The figures that the words of the tests name, in V, W, A, Ω, MΩ and °C, rounded as a meter shows them."""
    supply = script.region(assessment.state.region).supply
    volts = supply.nominal.value
    plate_w = plate_power_w(script, assessment)
    band = _element_band(plate_w, volts)
    sensor_low, _ = platinum_limits_ohm(KITCHEN_C[0], ToleranceClass.B, SENSOR_AT_ZERO_OHM)
    _, sensor_high = platinum_limits_ohm(KITCHEN_C[1], ToleranceClass.B, SENSOR_AT_ZERO_OHM)
    return {
        **{f"{name}_w": f"{watts:.0f}" for name, watts in USUAL_MARKINGS_W.items()},
        **_marked("", 230.0),
        **_marked("_240", 240.0),
        "volts": f"{volts:.0f}",
        "volts_low": f"{supply.lowest.value:.0f}",
        "volts_high": f"{supply.highest.value:.0f}",
        "plate": "untold" if plate_w is None else "told",
        "plate_w": "" if plate_w is None else f"{plate_w:.0f}",
        "plate_a": "" if plate_w is None else f"{current_a(plate_w, volts):.1f}",
        "element_low": f"{band.low_ohm:.0f}",
        "element_high": f"{band.high_ohm:.0f}",
        "sensor_low": f"{sensor_low:.0f}",
        "sensor_high": f"{sensor_high:.0f}",
        "insulation": f"{USUAL_INSULATION_MEGOHM:g}",
        "insulation_heating": f"{HEATING_INSULATION_MEGOHM:g}",
        "boards": "none" if "control_board" in assessment.not_fitted else "possible",
        "opening_low": f"{TRIAL_SETTING_C - OPENS_WITHIN_K:.0f}",
        "opening_high": f"{TRIAL_SETTING_C + OPENS_WITHIN_K:.0f}",
    }


def _marked(suffix: str, volts: float) -> dict[str, str]:
    """What the common elements have when they are marked with so many volts, whatever the supply's are."""
    found: dict[str, str] = {}
    for name, watts in USUAL_MARKINGS_W.items():
        band = cold_resistance_band(watts, volts)
        found |= {f"{name}_low{suffix}": f"{band.low_ohm:.0f}", f"{name}_high{suffix}": f"{band.high_ohm:.0f}"}
    return found


def plate_power_w(script: Script, assessment: Assessment) -> float | None:
    """W of the whole oven, if its plate was read."""
    answer = assessment.state.answers.get(PLATE_POWER)
    if answer is None or not still_fits(script.knowledge.questions.get(PLATE_POWER), answer.value):
        return None
    return answer.value if isinstance(answer.value, float) else None


def _element_band(plate_w: float | None, volts: float) -> ResistanceBand:
    return typical_cold_band(volts) if plate_w is None else cold_band_under_plate(plate_w, volts)
