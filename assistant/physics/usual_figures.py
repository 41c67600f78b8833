"""Usual figures of household ovens that no standard limits: what is assumed where nothing is known of this one.

Each is common practice or this project's own estimate; none of them says alone that an oven is sound or faulty.
"""

from collections.abc import Mapping

USUAL_MARKINGS_W: Mapping[str, float] = {"base": 1200.0, "top": 1000.0, "grill": 1800.0, "ring": 2200.0}
"""W: a common marking of each element, to show by an instance what its own marking says. Common practice; base 900 to
1500, top 700 to 1300, grill 1200 to 2500, ring 1600 to 2600.
"""
KITCHEN_C = (15.0, 25.0)
"""°C of a cool and of a warm kitchen. Own estimate; 10 to 30 would still be believed."""
SENSOR_AT_ZERO_OHM = 1000.0
"""Ω of the platinum sensor that stands for an instance, at 0 °C. Common practice; 100 and 500 are met too."""
TRIAL_SETTING_C = 180.0
"""°C at which a thermostat is tried. Common practice; 160 to 200."""
OPENS_WITHIN_K = 15.0
"""K by which a sound oven's mean may lie from its setting. Own estimate, 10 to 20: no standard limits it."""
