import math

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.knowledge.scalars import number_written


@pytest.mark.parametrize(
    ("text", "number"),
    [("0", 0), ("-1", -1), ("+2", 2), ("010", 10), (".5", 0.5), ("5.", 5), ("1e3", 1000), ("2.5E-1", 0.25)],
)
def test_a_number_is_what_yaml_1_2_takes_for_one(text, number):
    """YAML 1.2.2, 10.3.2 Tag Resolution, the rows of integers to base 10 and of floating point numbers."""
    assert number_written(text) == number


@pytest.mark.parametrize(
    "text",
    ["", " 1", "1 ", "1_000", "1,5", "1:30", "0x1F", "0o17", ".inf", ".nan", "nan", "inf", "1e999", "１", "1\n", "."],
)
def test_anything_else_is_no_number(text):
    assert number_written(text) is None


@given(some.floats(allow_nan=False, allow_infinity=False))
def test_every_finite_number_is_read_back(number):
    found = number_written(repr(number))
    assert found is not None
    assert math.isfinite(found)
    assert found == number
