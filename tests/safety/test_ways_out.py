"""Whoever measures and ends it, in whatever way, reads that the oven is to be turned off."""

from assistant.interview.script import Script
from assistant.wording.languages import Languages
from tests.safety.fast import Fast
from tests.safety.ways_out import measured_talks

TALKS = 6


def test_every_way_out_of_a_measurement_says_that_the_oven_is_to_be_turned_off(
    plain_script: Script, languages: Languages, fast: Fast
) -> None:
    talks = list(measured_talks(plain_script, languages, fast, TALKS))
    assert len(talks) >= 4 * TALKS
    assert all(terminal.ended for terminal in talks)
    assert any(terminal.rang for terminal in talks)
    assert any(terminal.hot for terminal in talks)
    assert [breach for terminal in talks for breach in terminal.breaches] == []
