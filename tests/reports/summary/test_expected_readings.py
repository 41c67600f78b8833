"""What tests should read at three ovens, worked by hand.

The arithmetic is written out beside each figure, with the source of what goes into it.
"""

from collections.abc import Mapping
from typing import Any

from assistant.interview.script import Script
from assistant.reports.summary.engineer import engineer_summary
from assistant.reports.summary.session import Told
from assistant.wording.sentences import Sentences
from tests.reports.summary.test_engineer import BASE_DEAD, IDENTIFIED
from tests.reports.summary.told_cases import paragraphs, section, table, told_with

TOO_COLD: Mapping[str, Any] = {
    "what_goes_wrong": ["too_cold_or_slow"],
    "which_appliance": "built_in_digits",
    "how_it_began": "little_by_little",
}


def plain(words: str) -> str:
    return words.replace("\N{NO-BREAK SPACE}", " ")


def expected(told: Told, test_id: str) -> str:
    return plain(told.test_words(test_id, "expected"))


def should_read(told: Told, test_id: str) -> str:
    """The cell of the plan's table."""
    label = told.test_words(test_id, "label")
    return plain(next(row[2] for row in table(section(engineer_summary(told), "tests")).rows if row[1] == label))


def test_a_dead_base_element_in_an_oven_whose_plate_says_2700_watts(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, IDENTIFIED)
    # An element marked 1200 W at 230 V has 230² / 1200 = 52,900 / 1200 = 44.08 Ω.
    # Its input may be 5 % more or 10 % less (IEC 60335-1, 10.1, table 1): 52,900 / 1260 = 41.98 Ω to
    # 52,900 / 1080 = 48.98 Ω in use. Cold it has up to 1 / 1.044 of that (Ct of FeCrAl 25-5 at 1000 °C, table by the
    # grades of GB/T 1234): 41.98 / 1.044 = 40.21 Ω. So 40 to 49 Ω, which is 8.8 % less to 11.1 % more than 44.08 Ω.
    assert should_read(told, "test_base_element") == (
        "Continuous. Volts² ÷ watts as marked, −9 to +11 %. "
        "If marked 1200 W, for example: 40 to 49 Ω at 230 V, 44 to 53 Ω at 240 V."
    )
    # Marked 240 V: 57,600 / 1200 = 48 Ω; 57,600 / 1260 / 1.044 = 43.79 Ω to 57,600 / 1080 = 53.33 Ω.
    # No element has more than the whole oven's 2700 W: 52,900 / (1.05 · 2700) / 1.044 = 18.66 / 1.044 = 17.87 Ω.
    # The smallest that is assumed has 600 W: 52,900 / (0.9 · 600) = 97.96 Ω.
    assert plain(paragraphs(section(engineer_summary(told), "how_to_test"))[-1]) == (
        "A heater without a marking: 18 to 98 Ω shows no more than that it is whole "
        "(none has more than the plate’s 2700 W)."
    )


def test_a_drifted_sensor_in_an_oven_without_a_plate(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, TOO_COLD)
    # IEC 60751: R = 1000 (1 + 3.9083e-3 t − 5.775e-7 t²). At 15 °C 1000 (1 + 0.0586245 − 0.0001299) = 1058.49 Ω, at
    # 25 °C 1097.35 Ω. Class B is 0.3 + 0.005 t kelvin off at the most: 0.375 K and 0.425 K, at 3.89 and 3.88 Ω a
    # kelvin 1.46 Ω and 1.65 Ω. So from 1057.0 Ω to 1099.0 Ω.
    assert expected(told, "test_sensor") == (
        "A platinum 1000: 1057 to 1099 Ω from 15 to 25 °C (IEC 60751, class B). Other types by their own table."
    )
    # Without a plate the largest single element that is assumed has 3600 W:
    # 52,900 / (1.05 · 3600) / 1.044 = 13.99 / 1.044 = 13.40 Ω.
    assert told.readings["element_low"] == "13"
    assert told.readings["element_high"] == "98"


def test_a_large_oven_on_a_weak_supply_in_germany(script: Script, sentences: Sentences) -> None:
    answers = {**BASE_DEAD, "person_at_oven": "yes", "may_look_cold": "off_and_cold", "plate_power": 7400}
    told = told_with(script, sentences, answers, region="germany")
    # EN 50160, from memory: 230 V, 10 % less to 10 % more: 207 to 253 V.
    assert expected(told, "test_supply") == "207 to 253 V from each line to neutral."
    # 7400 W / 230 V = 32.17 A.
    assert expected(told, "test_plug_fuse").endswith("here 32.2 A at 230 V.")
    # No single element has more than 3600 W by assumption, so a plate of 7400 W narrows nothing: 13 Ω as above.
    assert told.readings["element_low"] == "13"
    # DIN EN 50678 (VDE 0701), class I, from memory: 1 MΩ, and 0.3 MΩ where heaters are measured along.
    assert expected(told, "test_insulation") == (
        "1 MΩ or more at 500 V d.c.; 0.3 MΩ is allowed where heaters are in the measurement."
    )


def test_the_british_supply_is_told_within_its_limits(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, BASE_DEAD)
    # Note to SI 1994/3021: 230 V, 6 % less to 10 % more: 216.2 to 253.0 V.
    assert expected(told, "test_supply") == "216 to 253 V from each line to neutral."


def test_boards_are_unplugged_before_insulation_is_measured_where_the_oven_may_have_any(
    script: Script, sentences: Sentences
) -> None:
    for kind, begins in (("built_in_digits", "Boards unplugged, 1 MΩ or more"), ("built_in_knobs", "1 MΩ or more")):
        told = told_with(script, sentences, {**BASE_DEAD, "which_appliance": kind})
        assert expected(told, "test_insulation").startswith(begins)
