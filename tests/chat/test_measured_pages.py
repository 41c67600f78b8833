"""What is shown of a measurement."""

import re

import pytest

from assistant.interview.conversation import Conversation
from assistant.wording.languages import Languages
from tests.chat.watched import Watch, flat, watched


def test_what_was_measured_is_drawn_beside_what_simulated_ovens_do(watch: Watch) -> None:
    fed = watch((0, "begin"), (420, ""), (560, ""), (730, ""), (800, "end"))
    assert "simulated sound ovens" in " ".join(fed.screen.split())
    assert "small light" in fed.screen


def test_the_own_time_is_told_beside_the_usual_ones(watch: Watch) -> None:
    fed = watch((0, "begin"), (1265, ""), (1500, "end"))
    told = re.search(r"goes out between (\d+):\d\d and (\d+):\d\d minutes; yours went out at 21:05", flat(fed))
    assert told is not None
    assert 1 <= int(told[1]) < int(told[2]) <= 30


def test_a_light_that_never_went_out_is_told_beside_the_usual_times(watch: Watch) -> None:
    assert "yours did not go out in 26:40" in flat(watch((0, "begin"), (1600, "end")))


def test_the_shaded_band_is_told_in_words(at_the_thermometer: Conversation, languages: Languages) -> None:
    typed = (60, "40"), (600, "143"), (1200, "end")
    assert "The shaded band is where the thermometer would have stood" in flat(
        watched(at_the_thermometer, languages, *typed)
    )


def test_a_resumed_measurement_shows_what_was_noted(watch: Watch) -> None:
    watch((0, "begin"), (420, ""))
    fed = watch((600, "1"), resumed=True)
    assert "7:00  the light went out" in fed.screen.rpartition("How is it now?")[2]


def test_after_a_pause_it_is_told_how_many_lines_were_kept_and_the_last_of_them(watch: Watch) -> None:
    watch((0, "begin"), *((60.0 * minute, "") for minute in range(3, 9)))
    after = flat(watch((600, "1"), resumed=True)).rpartition("How is it now?")[2]
    assert "6 lines were kept from before the pause. The last of them: 5:00 the light went out" in after


@pytest.mark.parametrize(
    ("typed", "said"), [((), "Nothing was noted before the pause."), (((120, "40"),), "One line was kept")]
)
def test_nothing_and_one_line_are_told_after_a_pause_too(
    at_the_thermometer: Conversation, languages: Languages, typed: tuple[tuple[float, str], ...], said: str
) -> None:
    watched(at_the_thermometer, languages, *typed)
    after = flat(watched(at_the_thermometer, languages, (600, "1"), resumed=True)).rpartition("How is it now?")[2]
    assert said in after
    assert "0 lines" not in after
    assert "Nothing is noted yet" not in after
