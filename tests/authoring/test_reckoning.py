"""What `ovenside reckon` tells, against figures from outside; each WHAT once as it is typed."""

import functools
import io
import json
import os
import subprocess
import sys

import numpy as np
import pytest

from assistant.authoring import household_reckoning, oven_reckoning, reckoning
from assistant.authoring.reckon_commands import OPTIONS, WHAT, reckon
from assistant.authoring.reckoned import Number, Reckoned
from assistant.authoring.reckoning_report import report, written
from assistant.cli import parser
from assistant.errors import Refused
from assistant.physics.expectation import expected
from assistant.wording.locale import Wording, load_wording
from assistant.wording.pseudo import CLOSING, OPENING, PSEUDO_LANG
from tests.conftest import ROOT
from tests.wording.messages import message_names

LOCALES = ROOT / "locales"

TYPED = {
    "element": "element --watts 2000 --volts 230",
    "element of no marking": "element --volts 230",
    "element without a lower limit of input": "element --watts 20 --volts 12",
    "plate": "plate --watts 2850 3100 --volts 220 240",
    "plate of one figure": "plate --watts 3000 --volts 230",
    "platinum by degrees": "sensor --platinum 100 --celsius 200",
    "platinum by ohms": "sensor --platinum 1000 --ohms 900",
    "thermistor by degrees": "sensor --ntc 100000 3950 --celsius 85",
    "thermistor by ohms": "sensor --ntc 100000 3950 --ohms 10000",
    "supply": "supply --volts 219 --idle 235 --watts 10000 --marked 240",
    "low supply": "supply --volts 207",
    "high supply": "supply --volts 260",
    "oven": "oven --way conventional --base 1150 --top 900 --celsius 180",
    "oven of little power": "oven --way base_only --base 820 --top 900 --celsius 180",
    "oven that never opens": "oven --way base_only --base 600 --celsius 250",
    "mark": "heat ½ mark",
    "celsius": "heat 180 c",
    "fahrenheit": "heat 350 f",
    "heat of no recipe": "heat -40 f",
    "boiling": "boiling --metres 1500",
    "food": "food",
}
REFUSED = {
    "element --watts 0 --volts 230": "A power in watts must be from 1 to 100000; it is 0.",
    "element --watts -2000 --volts 230": "it is -2000.",
    "element --watts 2000 --volts nan": "A voltage in volts must be a finite number; it is nan.",
    "element --volts 1e400": "A voltage in volts must be a finite number; it is inf.",
    "element --watts 1e-320 --volts 230": "A power in watts must be from 1",
    "element --volts 1e200": "A voltage in volts must be from 1 to 1000",
    "plate --watts 3100 2850 --volts 230": "lower figures must not be above its higher ones",
    "plate --watts 1 2 3 --volts 230": "After --watts there are one or two figures, the lower first; there are 3.",
    "plate --watts 3000 --volts 1 2 3 4": "After --volts there are one or two figures",
    "sensor --platinum 100 --ohms 5": "from 18.5201 Ω to 390.481 Ω",
    "sensor --platinum 100 --ohms -1": "not -1 Ω",
    "sensor --platinum 100 --celsius 900": "must be from -200 to 850",
    "sensor --ntc 0 3950 --celsius 25": "The resistance in ohms at 25 °C must be from 1",
    "sensor --ntc 100000 0 --celsius 25": "The constant B in kelvins must be from 100",
    "sensor --ntc 100000 3950 --ohms 0.01": "it is too small for this curve",
    "sensor --ntc 100000 3950 --ohms 1": "where no such sensor works",
    "sensor --ntc 100000 3950 --ohms 1e-320": "The resistance in ohms must be from 0.001",
    "sensor --ntc 100000 3950 --celsius -300": "must be from -100 to 1000",
    "supply --volts 240 --idle 230": "under load must be from 0 to 230; it is 240",
    "supply --volts 230 --watts 3000": "also give --marked",
    "supply --volts 230 --watts 3000 --marked 0": "A voltage in volts must be from 1 to 1000; it is 0.",
    "oven --way conventional --base 1150 --celsius 180": "For conventional also give the watts of: --top.",
    "oven --way full_grill --celsius 200": "also give the watts of: --top, --grill.",
    "oven --way base_only --base 0 --celsius 180": "power of an element in watts must be from 100 to 3600",
    "oven --way base_only --base 1150 --top nan --celsius 180": "must be a finite number; it is nan.",
    "oven --way base_only --base 1150 --celsius 300": "The setting in °C must be from 100 to 250; it is 300.",
    "oven --way base_only --base 1150 --celsius 180 --volts 23": "must be from 100 to 440; it is 23.",
    "oven --way base_only --base 1150 --celsius 180 --marked 0": "A voltage in volts must be from 100 to 440; it is 0.",
    "oven --way base_only --base 1150 --celsius 180 --kitchen -20": "in °C must be from 0 to 40",
    "oven --way fan_with_ring --ring 3600 --celsius 250 --volts 440": "these elements trip the cut-out",
    "heat -300 c": "A temperature in °C must be from -273.15 to 1000",
    "heat -273.15 c": "above absolute zero",
    "heat inf f": "finite number",
    "heat 1e308 f": "finite number",
    "heat 1e9 f": "A temperature in °C must be from -273.15",
    "heat 10 mark": "There is no gas mark 10; there are ¼, ½ and 1 to 9.",
    "heat nan mark": "There is no gas mark nan",
    "boiling --metres 20000": "The altitude in metres must be from -2000 to 11000",
    "boiling --metres nan": "finite number",
}
MISTYPED = {
    "element": "required: --volts",
    "element --volts many": "'many' isn't a number",
    "heat 1,5 c": "'1,5' isn't a number",
    "heat 180 k": "invalid choice",
    "sensor --platinum 100": "--celsius --ohms is required",
    "sensor --platinum 200 --celsius 20": "invalid choice",
    "sensor --platinum 100 --celsius 20 --ohms 100": "not allowed with",
    "sensor --celsius 20": "--platinum --ntc is required",
    "oven --base 1150 --celsius 180": "required: --way",
    "oven --way base_only --base 1150": "required: --celsius",
    "oven --way boil --base 1150 --celsius 180": "invalid choice",
    "oven --way base_only --base much --celsius 180": "'much' isn't a number",
    "boiling": "required: --metres",
    "gravity": "invalid choice",
}


class Recording(Wording):
    """Remembers which messages were said."""

    said: set[str]

    def say(self, message_id, attribute=None, /, **arguments):
        self.said = {*getattr(self, "said", ()), message_id}
        return super().say(message_id, attribute, **arguments)


@pytest.fixture(scope="module")
def wording():
    return load_wording(LOCALES, "en-GB")


@pytest.fixture(scope="module")
def loaded_once():
    return functools.cache(load_wording)


@pytest.fixture(scope="module")
def simulated_once():
    """The same ovens are simulated once."""
    known = {}

    def once(*asked):
        if repr(asked) not in known:
            known[repr(asked)] = expected(*asked)
        return known[repr(asked)]

    return once


@pytest.fixture
def typed(capsys, monkeypatch, loaded_once, simulated_once):
    """What is printed for words that follow `reckon`, and the status."""
    monkeypatch.setattr("assistant.wording.locale.load_wording", loaded_once)
    monkeypatch.setattr(oven_reckoning, "expected", simulated_once)

    def typed(words, *more):
        status = reckon(parser().parse_args(["reckon", *words.split(), *more]), LOCALES)
        printed = capsys.readouterr()
        return status, printed.out, printed.err

    return typed


def values(found: Reckoned, name: str, **of) -> tuple[float, ...]:
    (only,) = [n.values for n in found.numbers if n.name == name and of.items() <= n.of.items()]
    return only


def test_an_elements_numbers_are_those_of_arithmetic():
    found = reckoning.element(2000, 230)
    assert values(found, "current") == pytest.approx((8.69565,), abs=1e-5)  # 2000 / 230
    assert values(found, "working") == pytest.approx((26.45,))  # 230² / 2000
    assert values(found, "working_limits") == pytest.approx((52900 / 2100, 52900 / 1800))  # 5 % more, 10 % less
    # Largest factor Ct of the published tables: 1.026 and 1.044.
    assert values(found, "cold", alloy="Ni80Cr20") == pytest.approx((26.45 / 1.026, 26.45))
    assert values(found, "cold", alloy="FeCrAl 25-5") == pytest.approx((26.45 / 1.044, 26.45))
    assert values(found, "cold_band") == pytest.approx((52900 / 2100 / 1.044, 52900 / 1800))


def test_an_element_without_marking_has_a_band_that_is_marked_as_an_estimate(typed):
    found = reckoning.element(None, 230)
    # 600 W drawing 10 % less; 3600 W drawing 5 % more, cold by the largest factor.
    assert values(found, "typical_band") == pytest.approx((52900 / 3780 / 1.044, 52900 / 540))
    _, out, _ = typed("element --volts 230")
    assert "[this project's own estimate, from no standard]" in out
    assert "It is no measure of this oven" in out


def test_a_plate_tells_of_the_whole_oven_and_of_no_element(typed):
    found = reckoning.plate((2850, 3100), (220, 240))
    assert values(found, "whole_current") == pytest.approx((2850 / 240, 3100 / 220))
    assert values(found, "whole_input") == pytest.approx((2565, 3255))  # 10 % less than 2850, 5 % more than 3100
    assert {number.unit for number in found.numbers} == {"A", "W"}
    assert "so no element's ohms" in typed(TYPED["plate"])[1]


# Ω of a Pt100 as tables of IEC 60751 print them.
PRINTED = [(-200, 18.52), (-100, 60.26), (0, 100.00), (100, 138.51), (200, 175.86), (250, 194.10), (850, 390.48)]


@pytest.mark.parametrize(("celsius", "ohms"), PRINTED)
@pytest.mark.parametrize("nominal", [100, 500, 1000])
def test_platinum_is_that_of_the_standards_table_either_way(celsius, ohms, nominal):
    there = reckoning.platinum(nominal, celsius=celsius, ohms=None)
    assert values(there, "sensor_ohms")[0] * 100 / nominal == pytest.approx(ohms, abs=0.0051)
    back = reckoning.platinum(nominal, celsius=None, ohms=values(there, "sensor_ohms")[0])
    assert values(back, "sensor_celsius") == pytest.approx((celsius,), abs=1e-6)


def test_platinums_classes_are_the_standards():
    found = reckoning.platinum(100, celsius=200, ohms=None)
    # IEC 60751: 0.1 + 0.0017 t, 0.15 + 0.002 t, 0.3 + 0.005 t, 0.6 + 0.01 t
    for grade, kelvins in (("AA", 0.44), ("A", 0.55), ("B", 1.3), ("C", 2.6)):
        assert values(found, "class_kelvin", **{"class": grade}) == pytest.approx((kelvins,))
    # IEC 60751 tables of tolerances: class B at 200 °C is 0.48 Ω either way.
    low, high = values(found, "class_ohms", **{"class": "B"})
    assert (175.86 - low, high - 175.86) == pytest.approx((0.48, 0.48), abs=0.01)


def test_a_thermistor_goes_through_its_own_two_points():
    # B = T1 T2 / (T2 − T1) ln(R1 / R2), by hand: 10 000 Ω at 25 °C and 1000 Ω at 85 °C make 4097.927 K.
    found = reckoning.thermistor(10_000, 4097.927, celsius=85, ohms=None)
    assert values(found, "ntc_ohms") == pytest.approx((1000,), rel=1e-5)
    back = reckoning.thermistor(10_000, 4097.927, celsius=None, ohms=1000)
    assert values(back, "ntc_celsius") == pytest.approx((85,), abs=1e-3)


def test_a_constant_b_is_said_to_depart_at_oven_heat(typed):
    for name in ("thermistor by degrees", "thermistor by ohms"):
        assert "At oven heat real parts depart from it" in typed(TYPED[name])[1]


def test_a_supplys_numbers_are_those_of_arithmetic():
    found = reckoning.supply(219, 235, 10_000, 240)
    assert values(found, "limits") == pytest.approx((216.2, 253.0))  # 230 V, 6 % less and 10 % more
    assert values(found, "ratio") == pytest.approx((83.265625,))  # (219 / 240)²
    assert values(found, "power") == pytest.approx((8326.5625,))
    assert values(found, "drop") == pytest.approx((100 * 16 / 235,))
    assert [n.values[0] for n in found.numbers if n.name == "circuit"] == [2847, 3504, 4380, 7008]
    assert values(found, "total") == pytest.approx((41.6667,), abs=1e-4)
    assert values(found, "design") == pytest.approx((19.5,))  # 10 + 0.3 × 31.667
    assert values(found, "design_socket") == pytest.approx((24.5,))


@pytest.mark.parametrize(
    ("volts", "note"), [(216.1, "below"), (216.3, "within"), (230, "within"), (252.9, "within"), (253.1, "above")]
)
def test_a_voltage_is_held_against_the_limits(volts, note):
    assert f"{note}_limits" in reckoning.supply(volts, None, None, None).notes


def test_diversity_is_never_a_reason_why_a_breaker_should_not_go(typed):
    for name in ("supply", "low supply", "high supply"):
        assert "never a reason why a breaker should not go" in typed(TYPED[name])[1]


def test_an_ovens_currents_and_power_are_those_of_arithmetic():
    found = oven_reckoning.oven("conventional", {"base": 1200, "top": 900}, 180, 207, 230, 20)
    assert values(found, "element_current", element="base") == pytest.approx((1200 / 230 * 0.9,))
    assert values(found, "element_current", element="top") == pytest.approx((900 / 230 * 0.9,))
    assert values(found, "heating_power") == pytest.approx((2100 * 0.81,))


def test_what_is_simulated_of_an_oven_is_a_range_about_its_middle_and_its_energy_is_share_times_power():
    found = oven_reckoning.oven("fan_with_ring", {"ring": 2250}, 180, None, None, 20)
    for name in ("opens", "duty"):
        (middle,), (low, high) = values(found, f"{name}_middle"), values(found, name)
        assert low < middle < high
    # One element of one power: the energy is the same share of it.
    assert values(found, "hourly") == pytest.approx([share / 100 * 2.25 for share in values(found, "duty")])
    # As testers and makers' instructions give preheating times, and as is seen of lamps.
    low, high = values(found, "opens")
    assert (low, high) == pytest.approx((8.5, 8.5), abs=2.5)
    assert all(120 / 60 <= minutes <= 420 / 60 for minutes in values(found, "period"))


def test_nine_in_ten_of_the_drawn_ovens_lie_within_the_range():
    drawn = np.arange(200.0)[::-1]
    low, high = oven_reckoning._at(drawn, oven_reckoning.RANGE)
    assert ((drawn >= low) & (drawn <= high)).mean() == pytest.approx(0.9, abs=0.006)
    low, high = oven_reckoning._at(np.where(drawn > 180, np.inf, drawn), oven_reckoning.RANGE)
    assert (low, high) == (9, np.inf)


def test_what_is_simulated_of_an_oven_says_so(typed):
    _, out, _ = typed(TYPED["oven"])
    assert "Simulated, never measured" in out
    assert "is assumed" in out
    for line in out.splitlines():
        if line.endswith("]") and "by hand" not in line and "[Ohm's" not in line and "[Joule's" not in line:
            assert ", simulated, " in line
    assert "isn't shown to be faulty" in out


def test_an_oven_that_hardly_opens_is_told_without_a_time_that_is_none(typed):
    assert "from 48 min up, with no upper limit" in typed(TYPED["oven of little power"])[1]
    _, out, _ = typed(TYPED["oven that never opens"])
    assert "first opens" not in out
    assert "the middle oven: 100 %" in out
    assert "may never reach the setting" in out


# Cookery tables: the mark, its °F, and its °C as they print them.
MARKS = [
    (0.25, 225, (110,)),
    (0.5, 250, (120, 130)),
    (1, 275, (140,)),
    (2, 300, (150,)),
    (3, 325, (165, 170)),
    (4, 350, (180,)),
    (5, 375, (190,)),
    (6, 400, (200,)),
    (7, 425, (220,)),
    (8, 450, (230,)),
    (9, 475, (240,)),
]


@pytest.mark.parametrize(("mark", "dial", "printed"), MARKS)
def test_heat_is_that_of_cookery_tables_from_each_side(mark, dial, printed):
    found = household_reckoning.heat(mark, "mark")
    assert values(found, "fahrenheit") == (dial,)
    assert values(found, "printed") == printed
    assert values(found, "fan") == tuple(celsius - 20 for celsius in printed)
    assert ("tables_disagree" in found.notes) == (len(printed) > 1)
    for value, unit in ((dial, "f"), *((celsius, "c") for celsius in printed)):
        back = household_reckoning.heat(value, unit)
        assert values(back, "mark") == (mark,)
        assert values(back, "printed") == printed
        assert ("tables_disagree" in back.notes) == (len(printed) > 1)


def test_both_printed_values_are_said_where_tables_disagree(typed):
    assert "120 or 130 °C" in typed("heat 1/2 mark")[1]
    assert "165 or 170 °C" in typed("heat 325 F")[1]
    assert "gas mark ½" in typed("heat 250 f")[1]


def test_fan_and_conventional_are_twenty_degrees_apart_and_only_where_recipes_are():
    found = household_reckoning.heat(180, "c")
    assert values(found, "fan") == (160,)
    assert values(found, "conventional") == (200,)
    assert "fan_rule" in found.notes
    for celsius, names in ((40, {"conventional"}), (310, {"fan"}), (20, set()), (400, set())):
        found = household_reckoning.heat(celsius, "c")
        assert {n.name for n in found.numbers} & {"fan", "conventional"} == names
        assert ("fan_rule" in found.notes) == bool(names)


@pytest.mark.parametrize(
    ("metres", "hectopascals", "celsius"),
    # Pressures from the tables of ISO 2533; there the steam tables of IAPWS-IF97 give these temperatures.
    [(0, 1013.25, 99.97), (1000, 898.8, 96.7), (2000, 795.0, 93.3), (3000, 701.2, 90.0)],
)
def test_water_boils_by_height(metres, hectopascals, celsius):
    found = household_reckoning.boiling(metres)
    assert values(found, "pressure") == pytest.approx((hectopascals,), abs=0.2)
    assert values(found, "boiling") == pytest.approx((celsius,), abs=0.06)


def test_steam_is_said_to_scald_and_the_thermometer_to_be_waterproof(typed):
    _, out, _ = typed("boiling --metres 0")
    assert "scald" in out
    assert "waterproof" in out


def test_of_food_it_is_never_said_that_it_is_safe(typed):
    _, out, _ = typed("food")
    assert "in doubt, throw it away" in out
    for who in ("babies", "pregnant", "frail", "ill"):
        assert who in out
    assert "proves neither" in out
    assert "safe" not in out.lower()


@pytest.mark.parametrize("name", TYPED)
def test_every_number_has_its_unit_and_source_and_its_reader(name, typed):
    status, out, err = typed(TYPED[name], "--json")
    assert (status, err) == (0, "")
    found = json.loads(out)
    assert list(found) == ["what", "for", "heading", "given", "numbers", "notes"]
    for number in found["numbers"]:
        assert number["name"]
        assert number["unit"]
        assert number["source"]
        assert len({"value", "low", "either"} & set(number)) == 1
    units = {number["unit"] for number in found["numbers"]}
    electrical = found["what"] in ("element", "plate", "sensor", "supply", "oven")
    assert found["for"] == ("engineer" if electrical else "household")
    assert electrical or not units & {"Ω", "V", "A", "W"}
    assert all(note["text"] for note in found["notes"])
    shown = typed(TYPED[name])[1].splitlines()
    assert shown[0] == found["heading"]
    assert len([line for line in shown if line.endswith("]")]) == len(found["numbers"])
    assert [line for line in shown if line][-len(found["notes"]) :] == [note["text"] for note in found["notes"]]


@pytest.mark.parametrize("name", ["element", "element of no marking", "platinum by ohms", "thermistor by ohms"])
def test_whoever_measures_ohms_is_an_engineer_with_the_part_dead(name, typed):
    _, out, _ = typed(TYPED[name])
    assert out.startswith("For a qualified engineer only. A householder measures nothing")
    assert "isolated, locked off, proved dead, and one lead of the part off" in out


def test_no_upper_limit_is_null_and_said(typed):
    assert '"high": null' in typed(TYPED["element without a lower limit of input"], "--json")[1]
    assert "from 6 Ω up, with no upper limit" in typed(TYPED["element without a lower limit of input"])[1]


@pytest.mark.parametrize("words", REFUSED)
def test_input_that_can_not_be_is_one_sentence_and_status_1(words, typed):
    for more in ((), ("--json",)):
        status, out, err = typed(words, *more)
        assert (status, out) == (1, "")
        assert REFUSED[words] in err
        assert err.count("\n") == 1


@pytest.mark.parametrize("words", MISTYPED)
def test_what_was_mistyped_is_told_with_status_2(words, capsys):
    with pytest.raises(SystemExit) as left:
        parser().parse_args(["reckon", *words.split()])
    assert left.value.code == 2
    assert MISTYPED[words] in capsys.readouterr().err


@pytest.mark.parametrize("reckoner", [reckoning.platinum, reckoning.thermistor])
def test_a_sensor_needs_one_of_degrees_and_ohms(reckoner):
    nominal = (100,) if reckoner is reckoning.platinum else (100, 3950)
    with pytest.raises(Refused, match="one_of_two"):
        reckoner(*nominal, celsius=None, ohms=None)


def test_no_message_is_missing_and_none_is_left_over(monkeypatch, capsys, simulated_once):
    monkeypatch.setattr(oven_reckoning, "expected", simulated_once)
    text = (LOCALES / "en-GB" / "reckon.ftl").read_text("utf-8")
    recording = Recording("en-GB", [text])
    monkeypatch.setattr("assistant.wording.locale.load_wording", lambda folder, lang: recording)
    for words in (*TYPED.values(), *REFUSED):
        reckon(parser().parse_args(["reckon", *words.split()]), LOCALES)
    capsys.readouterr()
    assert set(message_names(text)) - recording.said == {"reckon-one_of_two"}  # argparse asks for it first
    assert recording.say("reckon-one_of_two")


@pytest.mark.parametrize("name", TYPED)
def test_every_sentence_comes_from_the_locale(name, typed):
    status, out, _ = typed(TYPED[name], "--lang", PSEUDO_LANG)
    lines = [line for line in out.splitlines() if line]
    assert status == 0
    assert lines
    assert [line for line in lines if not (line.startswith(OPENING) and line.endswith(CLOSING))] == []


@pytest.mark.parametrize(
    ("value", "digits", "shown"),
    [(0.25, 4, "0.25"), (10_000.0, 4, "10000"), (-25.5, 9, "−25.5"), (-0.0, 4, "0"), (1e-7, 4, "0.0000001")],
)
def test_numbers_are_written_without_exponents(value, digits, shown):
    assert written(value, digits) == shown


def test_a_quarter_that_is_no_mark_is_not_written_as_one(wording):
    out = io.StringIO()
    number = Number("current", (0.25,), "A", "ohm", {"watts": 0.5, "volts": 2.0})
    report(Reckoned("element", "engineer", {}, (number,), ()), wording, out)
    assert "0.5 W at 2 V: 0.25 A" in out.getvalue()


def run(*words):
    done = subprocess.run(
        [sys.executable, "-m", "assistant", "reckon", *words],
        capture_output=True,
        text=True,
        timeout=60,
        cwd=ROOT,
        env={**os.environ, "PYTHONIOENCODING": "utf-8"},
    )
    assert "Traceback" not in done.stderr, done.stderr
    return done


@pytest.mark.parametrize("what", OPTIONS)
def test_every_what_is_a_command_with_help(what):
    words = next(words for words in TYPED.values() if words.split()[0] == what).split()
    done = run(*words)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("For ")
    helped = run(what, "--help")
    assert helped.returncode == 0
    assert "--json" in helped.stdout
    refused = next((words for words in REFUSED if words.split()[0] == what), None)
    if refused is not None:
        done = run(*refused.split())
        assert (done.returncode, done.stdout, done.stderr.count("\n")) == (1, "", 1)


def test_every_what_is_documented():
    readme = (ROOT / "README.md").read_text("utf-8")
    section = readme.split("## Reckoning")[1].split("\n## ")[0]
    assert set(WHAT) == set(OPTIONS)
    assert [what for what in OPTIONS if f"| `{what}" not in section] == []


def test_the_examples_of_the_readme_are_taken(typed):
    readme = (ROOT / "README.md").read_text("utf-8")
    section = readme.split("## Reckoning")[1].split("\n## ")[0]
    rows = [row.split("|")[1] for row in section.splitlines() if row.startswith("| `") and "WHAT" not in row]
    examples = [part for row in rows for part in row.split("`")[1::2]]
    assert len(examples) >= len(OPTIONS)
    for example in examples:
        status, out, err = typed(example)
        assert (status, err) == (0, "")
        assert out.startswith("For ")
