"""The commands that reckon one thing each: their options, and what they start. Heavy imports wait until needed."""

import argparse
import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

from assistant.authoring.outcome_commands import Commands, Options, add_command
from assistant.errors import Refused
from assistant.physics.parameters import ELEMENTS, WAYS

if TYPE_CHECKING:
    from assistant.authoring.reckoned import Reckoned

_FRACTIONS = {"¼": 0.25, "1/4": 0.25, "½": 0.5, "1/2": 0.5}


def _number(written: str) -> float:
    """A number, or a sentence about what it should have been; whether it can be is said by what reckons with it."""
    try:
        return float(written)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{written!r} isn't a number; write 1500 or 0.5") from None


def _heat(written: str) -> float:
    """A number, or a quarter or half mark."""
    return _FRACTIONS[written] if written in _FRACTIONS else _number(written)


JSON_OPTION: Options = (("--json", {"action": "store_true", "help": "print JSON, for other programs"}),)
OPTIONS: Mapping[str, Options] = MappingProxyType(
    {
        "element": (
            ("--watts", {"type": _number, "metavar": "W", "help": "marked on the element (default: a wide band)"}),
            ("--volts", {"type": _number, "metavar": "V", "required": True, "help": "marked beside it"}),
        ),
        "plate": tuple(
            (name, {"type": _number, "nargs": "+", "required": True, "metavar": ("LOW", "HIGH"), "help": help_})
            for name, help_ in (("--watts", "the plate's watts, one or two"), ("--volts", "its volts, one or two"))
        ),
        "sensor": (),
        "supply": (
            ("--volts", {"type": _number, "metavar": "V", "required": True, "help": "at the oven, with its load on"}),
            ("--idle", {"type": _number, "metavar": "V0", "help": "there, without its load"}),
            ("--watts", {"type": _number, "metavar": "W", "help": "marked on the cooker, with --marked"}),
            ("--marked", {"type": _number, "metavar": "V", "help": "the volts of the marking (default: 230)"}),
        ),
        "oven": (
            ("--way", {"choices": WAYS, "required": True, "metavar": "WAY", "help": ", ".join(WAYS)}),
            *(
                (f"--{name}", {"type": _number, "metavar": "W", "help": f"marked on the {name} element"})
                for name in ELEMENTS
            ),
            ("--celsius", {"type": _number, "metavar": "T", "required": True, "help": "the setting in °C"}),
            ("--volts", {"type": _number, "metavar": "V", "help": "at the oven, with its load on (default: 230)"}),
            ("--marked", {"type": _number, "metavar": "V", "help": "the volts of the marking (default: 230)"}),
            ("--kitchen", {"type": _number, "metavar": "K", "default": 20.0, "help": "its °C (default: 20)"}),
        ),
        "heat": (
            ("value", {"type": _heat, "metavar": "VALUE", "help": "such as 180, 350 or ½"}),
            ("unit", {"type": str.lower, "choices": ("c", "f", "mark"), "help": "°C, °F or gas mark"}),
        ),
        "boiling": (("--metres", {"type": _number, "metavar": "H", "required": True, "help": "above the sea"}),),
        "food": (),
    }
)
WHAT: Mapping[str, str] = MappingProxyType(
    {
        "element": "for a qualified engineer: current and resistance of an element, from its marking",
        "plate": "for a qualified engineer: what a rating plate tells of the whole oven",
        "sensor": "for a qualified engineer: a temperature sensor's ohms and degrees",
        "supply": "for a qualified engineer: what a voltage does to power, and what circuits carry",
        "oven": "for a qualified engineer: how long such elements heat an oven up, and their share of time on",
        "heat": "°C, °F, gas marks and fan ovens",
        "boiling": "where water boils, to check a waterproof thermometer",
        "food": "what to do with food from an oven that stayed lukewarm",
    }
)


def add_reckon(commands: Commands, shared: argparse.ArgumentParser) -> None:
    """`reckon`, and each WHAT behind it."""
    reckon = commands.add_parser("reckon", help="numbers for the engineer and the household")
    whats = reckon.add_subparsers(dest="what", required=True, metavar="WHAT")
    for name, options in OPTIONS.items():
        add_command(whats, name, WHAT[name], shared, options + JSON_OPTION)
    _add_sensor_options(whats.choices["sensor"])


def _add_sensor_options(sensor: argparse.ArgumentParser) -> None:
    kind = sensor.add_mutually_exclusive_group(required=True)
    kind.add_argument("--platinum", type=int, choices=(100, 500, 1000), help="its ohms at 0 °C")
    kind.add_argument(
        "--ntc", type=_number, nargs=2, metavar=("OHMS", "B"), help="its ohms at 25 °C, and the constant B in kelvins"
    )
    known = sensor.add_mutually_exclusive_group(required=True)
    known.add_argument("--celsius", type=_number, metavar="T", help="its temperature in °C: tells the ohms")
    known.add_argument("--ohms", type=_number, metavar="R", help="its resistance: tells the temperature")


def reckon(arguments: argparse.Namespace, locales: Path) -> int:
    """The exit status: 0; 1 for input that can't be, said in a sentence on standard error."""
    from assistant.authoring.reckoning_report import report
    from assistant.wording.locale import load_wording

    wording = load_wording(locales, arguments.lang)
    try:
        found = _RECKONERS[arguments.what](arguments)
    except Refused as error:
        sys.stderr.write(wording.say(f"reckon-{error.code}", **error.details) + "\n")
        return 1
    except ValueError as error:
        sys.stderr.write(wording.say("reckon-refused", reason=str(error)) + "\n")
        return 1
    return report(found, wording, sys.stdout, as_json=arguments.json)


def _element(arguments: argparse.Namespace) -> "Reckoned":
    from assistant.authoring.reckoning import element

    return element(arguments.watts, arguments.volts)


def _plate(arguments: argparse.Namespace) -> "Reckoned":
    from assistant.authoring.reckoning import plate

    return plate(tuple(arguments.watts), tuple(arguments.volts))


def _sensor(arguments: argparse.Namespace) -> "Reckoned":
    from assistant.authoring.reckoning import platinum, thermistor

    if arguments.ntc is not None:
        return thermistor(*arguments.ntc, celsius=arguments.celsius, ohms=arguments.ohms)
    return platinum(arguments.platinum, celsius=arguments.celsius, ohms=arguments.ohms)


def _supply(arguments: argparse.Namespace) -> "Reckoned":
    from assistant.authoring.reckoning import supply

    return supply(arguments.volts, arguments.idle, arguments.watts, arguments.marked)


def _oven(arguments: argparse.Namespace) -> "Reckoned":
    from assistant.authoring.oven_reckoning import oven

    watts = {name: getattr(arguments, name) for name in ELEMENTS if getattr(arguments, name) is not None}
    return oven(arguments.way, watts, arguments.celsius, arguments.volts, arguments.marked, arguments.kitchen)


def _heat_of(arguments: argparse.Namespace) -> "Reckoned":
    from assistant.authoring.household_reckoning import heat

    return heat(arguments.value, arguments.unit)


def _boiling(arguments: argparse.Namespace) -> "Reckoned":
    from assistant.authoring.household_reckoning import boiling

    return boiling(arguments.metres)


def _food(_: argparse.Namespace) -> "Reckoned":
    from assistant.authoring.household_reckoning import food

    return food()


_RECKONERS: Mapping[str, Callable[[argparse.Namespace], "Reckoned"]] = MappingProxyType(
    {
        "element": _element,
        "plate": _plate,
        "sensor": _sensor,
        "supply": _supply,
        "oven": _oven,
        "heat": _heat_of,
        "boiling": _boiling,
        "food": _food,
    }
)
