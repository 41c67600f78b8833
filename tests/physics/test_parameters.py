"""The names that the rules are checked by are those of the oven model."""

from assistant.physics.oven import FUNCTIONS, NAMES
from assistant.physics.parameters import PARAMETERS, WAYS


def test_the_names_of_parameters_and_ways_of_heating_are_the_models_own() -> None:
    assert PARAMETERS == NAMES
    assert tuple(FUNCTIONS) == WAYS
