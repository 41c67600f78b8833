"""The parameters' table and the functions."""

import re

import numpy as np

from assistant.physics import oven
from assistant.physics.oven import FUNCTIONS, NAMES, picked
from tests.physics.sound import drawn


def test_the_table_names_every_parameter_once_in_order_with_its_unit() -> None:
    row = re.compile(r"^    ([a-z_]+) +(V|W|J/K|m²|W/K|1|0/1|s|K|°C) +\S")
    rows = [found for line in (oven.__doc__ or "").splitlines() if (found := row.match(line))]
    assert [found[1] for found in rows] == list(NAMES)


def test_the_fan_turns_in_functions_named_for_it_and_with_the_ring() -> None:
    turning = {name for name, function in FUNCTIONS.items() if function.fan}
    assert turning == {"fan_with_ring", "fan_assisted", "base_with_ring", "grill_with_fan"}
    assert all(function.fan for function in FUNCTIONS.values() if function.ring)


def test_every_function_heats() -> None:
    assert all(f.base + f.top + f.grill + f.ring > 0 for f in FUNCTIONS.values())


def test_picked_ovens_are_those_at_the_places() -> None:
    ovens = drawn(6)
    some = picked(ovens, np.array([4, 1]))
    assert some.draws == 2
    assert all((getattr(some, name) == getattr(ovens, name)[[4, 1]]).all() for name in NAMES)
