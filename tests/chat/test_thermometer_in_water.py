"""A thermometer that is held into ice or boiling water first."""

import pytest

from assistant.interview.commands import BeginMeasuring, Command, GiveAnswer, SayNotSure
from assistant.interview.conversation import Conversation
from assistant.interview.view import QuestionView
from assistant.interview.way import may_ask
from assistant.wording.languages import Languages
from tests.chat.watched import BEGAN, flat, watched
from tests.conftest import Begin
from tests.interview.fit import GATE


def _kind_told(conversation: Conversation, kind: str) -> QuestionView:
    conversation.do(GiveAnswer("thermometer_kind", kind))
    view = conversation.view()
    assert isinstance(view, QuestionView)
    return view


@pytest.mark.parametrize("kind", ["digital_with_cable", "waterproof_one"])
def test_a_thermometer_that_may_get_wet_may_be_checked_first(at_the_lamp_watch: Conversation, kind: str) -> None:
    assert _kind_told(at_the_lamp_watch, kind).id == "thermometer_check"


@pytest.mark.parametrize("kind", ["hanging_or_standing", "other_kind", "none_here"])
def test_one_that_may_not_get_wet_is_never_offered_a_check(at_the_lamp_watch: Conversation, kind: str) -> None:
    assert _kind_told(at_the_lamp_watch, kind).id != "thermometer_check"
    for question_id in ("thermometer_check", "thermometer_in_ice", "thermometer_in_boiling_water"):
        assert not may_ask(at_the_lamp_watch.script, at_the_lamp_watch.assessment, question_id)


def test_without_the_hot_gate_no_thermometer_is_put_into_boiling_water(begun: Begin) -> None:
    conversation = begun(danger_now=["none"], thermometer_kind="digital_with_cable", thermometer_check="boiling_water")
    assert not may_ask(conversation.script, conversation.assessment, "thermometer_in_boiling_water")


@pytest.mark.parametrize(
    ("check", "water"), [("boiling_water", "thermometer_in_boiling_water"), ("with_ice", "thermometer_in_ice")]
)
@pytest.mark.parametrize(
    "then",
    [
        GiveAnswer("hot_gate", GATE[1:]),
        SayNotSure("hot_gate"),
        GiveAnswer("thermometer_kind", "hanging_or_standing"),
        SayNotSure("thermometer_kind"),
    ],
    ids=str,
)
def test_once_the_hot_gate_is_shut_no_water_is_asked_for_any_more(
    at_the_lamp_watch: Conversation, check: str, water: str, then: Command
) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    at_the_lamp_watch.do(GiveAnswer("thermometer_check", check), GiveAnswer("height_above_sea", "hills"))
    assert may_ask(at_the_lamp_watch.script, at_the_lamp_watch.assessment, water)
    at_the_lamp_watch.do(then)
    for question_id in (water, "height_above_sea"):
        assert not may_ask(at_the_lamp_watch.script, at_the_lamp_watch.assessment, question_id)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("3", "reads 3 degrees too high. So much is taken off its readings."),
        ("28.4 F", "reads 2 degrees too low. So much is added to its readings."),
        ("0", "reads as it should"),
        ("12", "more than 10 degrees off, so it is no good for this"),
    ],
)
def test_what_it_reads_in_ice_is_told_at_once(
    at_the_lamp_watch: Conversation, languages: Languages, typed: str, said: str
) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    fed = watched(at_the_lamp_watch, languages, (0, "ice"), (5, typed))
    screen = " ".join(fed.screen.split())
    assert "well stirred, it should read 0 °C" in screen
    assert said in screen
    usable = "thermometer_no_good" not in fed.conversation.assessment.trace.concluded
    assert may_ask(fed.conversation.script, fed.conversation.assessment, "thermometer_log") == usable == (typed != "12")


def test_32_without_a_unit_is_not_taken_for_celsius(at_the_lamp_watch: Conversation, languages: Languages) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    fed = watched(at_the_lamp_watch, languages, (0, "ice"), (5, "32"), (9, "32 F"))
    assert "Is that 32 °C or 32 °F?" in fed.screen
    assert fed.answer("thermometer_in_ice") == 0.0


@pytest.mark.parametrize(
    ("height", "expected"), [("by the sea", 100), ("hills", 98), ("1000 m", 97), ("in the mountains", 95)]
)
def test_boiling_water_is_expected_as_it_boils_where_they_live(
    at_the_lamp_watch: Conversation, languages: Languages, height: str, expected: int
) -> None:
    _kind_told(at_the_lamp_watch, "waterproof_one")
    fed = watched(at_the_lamp_watch, languages, (0, "no ice"), (5, height), (9, str(expected + 4)))
    screen = " ".join(fed.screen.split())
    assert f"it should read about {expected} °C where you live" in screen
    assert "Steam scalds: stand aside" in screen
    assert "degrees too high" in screen


def test_a_check_may_be_left_out(at_the_lamp_watch: Conversation, languages: Languages) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    fed = watched(at_the_lamp_watch, languages, (0, "not sure"))
    assert may_ask(fed.conversation.script, fed.conversation.assessment, "thermometer_log")
    assert fed.answer("thermometer_in_ice") is None


def test_what_is_drawn_is_put_right(at_the_lamp_watch: Conversation, languages: Languages) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    at_the_lamp_watch.do(GiveAnswer("thermometer_check", "with_ice"), GiveAnswer("thermometer_in_ice", 8.0))
    at_the_lamp_watch._clock = lambda: BEGAN
    at_the_lamp_watch.do(BeginMeasuring("thermometer_log"))
    fed = watched(at_the_lamp_watch, languages, (60, "40"), (600, "151"), (1200, "end"), plain=True)
    after = " ".join(fed.screen.rpartition("> end")[2].split())
    assert "reads 8 degrees too high" in after
    assert "The last reading was 143 °C" in after
    assert fed.answer("thermometer_log") == ("1:00 40 C", "10:00 151 C")


def test_a_thermometer_known_to_read_low_is_believed_to_be_hotter(
    at_the_lamp_watch: Conversation, languages: Languages
) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    at_the_lamp_watch.do(GiveAnswer("thermometer_check", "with_ice"), GiveAnswer("thermometer_in_ice", -9.0))
    at_the_lamp_watch._clock = lambda: BEGAN
    at_the_lamp_watch.do(BeginMeasuring("thermometer_log"))
    fed = watched(at_the_lamp_watch, languages, (60, "80 C"), (600, "249"))
    assert "far more than the setting" in fed.screen
    assert fed.conversation.assessment.danger.stops


@pytest.mark.parametrize(
    ("typed", "then", "answer"),
    [
        ("32", "F", 0.0),
        ("33", "33 F", 0.556),
        ("30", "fahrenheit", -1.111),
        ("32", "C", 25.0),
        ("20", "C", 20.0),
        ("32", "3", 3.0),
    ],
)
def test_a_bare_reading_near_the_ice_in_fahrenheit_is_asked_back(
    at_the_lamp_watch: Conversation, languages: Languages, typed: str, then: str, answer: float
) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    fed = watched(at_the_lamp_watch, languages, (0, "ice"), (5, typed), (9, then))
    assert f"Is that {typed} °C or {typed} °F?" in flat(fed)
    assert fed.answer("thermometer_in_ice") == answer


@pytest.mark.parametrize("typed", ["3", "-9", "12", "25 C", "33 F"])
def test_a_reading_that_is_clear_is_not_asked_back(
    at_the_lamp_watch: Conversation, languages: Languages, typed: str
) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    fed = watched(at_the_lamp_watch, languages, (0, "ice"), (5, typed))
    assert "°F?" not in flat(fed)
    assert fed.answer("thermometer_in_ice") is not None


def test_a_reading_out_of_bounds_is_told_of_fahrenheit(at_the_lamp_watch: Conversation, languages: Languages) -> None:
    _kind_told(at_the_lamp_watch, "digital_with_cable")
    fed = watched(at_the_lamp_watch, languages, (0, "ice"), (5, "70"))
    assert "If the thermometer shows °F, type F behind the number." in flat(fed)
    assert "Please give a number from -25 to 25 in °C. If it is in °F, type F behind it." in flat(fed)


def test_boiling_water_in_fahrenheit_is_asked_back(at_the_lamp_watch: Conversation, languages: Languages) -> None:
    _kind_told(at_the_lamp_watch, "waterproof_one")
    fed = watched(at_the_lamp_watch, languages, (0, "no ice"), (5, "by the sea"), (9, "210"), (12, "F"))
    assert "Is that 210 °C or 210 °F?" in flat(fed)
    assert fed.answer("thermometer_in_boiling_water") == 98.889
