"""All numbers here are made up, or are those that makers of card terminals print for tests."""

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.interview.card_numbers import holds_card_number


@pytest.mark.parametrize(
    "text",
    [
        "4111111111111111",
        "paid by 4111 1111 1111 1111 today",
        "4111-1111-1111-1111",
        "4111.1111.1111.1111",
        "4111 - 1111 - 1111 - 1111",
        "visit 12 4111 1111 1111 1111 30",
        "4222222222222",
        "６３０４\u00a0０００００００００ ０００",
        "4\u20111\u20111\u20111\u201111111111111 1",
        "6304000000000000000",
        "line one\n4111\n1111\n1111\n1111",
    ],
)
def test_a_card_number_is_seen_however_it_is_grouped(text):
    assert holds_card_number(text)


@pytest.mark.parametrize(
    "text", ["", "it hums", "4111111111111112", "411111111111", "at 180 for 45 minutes, then 200 for 10", "1" * 40]
)
def test_other_figures_are_none(text):
    assert not holds_card_number(text)


def _check_digit(digits: str) -> str:
    """By the published rule, digit by digit: the tests' own telling of it."""
    total = 0
    for place, digit in enumerate(reversed(digits)):
        value = int(digit) * (2 if place % 2 == 0 else 1)
        total += value - 9 if value > 9 else value
    return str(-total % 10)


@given(some.text("0123456789", min_size=12, max_size=18), some.sampled_from(["", " ", "-"]), some.integers(1, 9))
def test_every_number_with_its_check_digit_is_seen_and_with_another_it_is_none(digits, between, off):
    right = _check_digit(digits)
    wrong = str((int(right) + off) % 10)
    assert holds_card_number(f"no {between.join(digits + right)}.")
    assert not holds_card_number(f"no {digits + wrong}.")
