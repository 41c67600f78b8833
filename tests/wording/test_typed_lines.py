"""What people type while they measure."""

import pytest

from assistant.knowledge.model import Kind
from assistant.wording.sentences import Sentences
from assistant.wording.typed_lines import typed_lines, typed_off, typed_scale


@pytest.mark.parametrize(
    ("typed", "lines"),
    [
        ("7:40 out, 9:10 on", ("7:40 out", "9:10 lit")),
        ("7.40 out 9.10 on 12:00 end", ("7:40 out", "9:10 lit", "12:00 end")),
        ("7 min 40 sec went out; 9 min came on", ("7:40 out", "9:00 lit")),
        ("at 7:40 it danced", None),
        ("out", None),
        ("", None),
    ],
)
def test_times_of_a_lamp(typed: str, lines: tuple[str, ...] | None, sentences: Sentences) -> None:
    assert typed_lines(typed, "lamp_log", sentences.wording) == lines


@pytest.mark.parametrize(
    ("kind", "typed", "lines"),
    [
        ("lamp_log", "out", ("8:20 out",)),
        ("lamp_log", "lights up", ("8:20 lit",)),
        ("lamp_log", "7:40 out", ("7:40 out",)),
        ("temperature_log", "143", ("8:20 143 ?",)),
        ("temperature_log", "300 degrees", ("8:20 300 ?",)),
        ("temperature_log", "290 F", ("8:20 290 F",)),
        ("temperature_log", "12:00 143,5 °C", ("12:00 143.5 C",)),
        ("temperature_log", "7:00 143.5 c", ("7:00 143.5 C",)),
        ("temperature_log", "opened the door", ("8:20 opened",)),
        ("temperature_log", "hot", None),
    ],
)
def test_while_the_clock_runs_a_line_without_a_time_is_of_now(
    kind: Kind, typed: str, lines: tuple[str, ...] | None, sentences: Sentences
) -> None:
    assert typed_lines(typed, kind, sentences.wording, 500.0) == lines


@pytest.mark.parametrize(
    ("typed", "scale"),
    [
        ("C", "C"),
        ("°F", "F"),
        ("fahrenheit", "F"),
        ("300 f", "F"),
        ("300 degrees celsius", "C"),
        ("300", None),
        ("degrees", None),
        ("310 F", None),
        ("", None),
    ],
)
def test_a_scale_is_told_alone_or_behind_its_reading(typed: str, scale: str | None, sentences: Sentences) -> None:
    assert typed_scale(typed, "300", sentences.wording) == scale


@pytest.mark.parametrize(
    ("typed", "ambiguous"),
    [
        ("its off", True),
        ("it is off", True),
        ("It's off!", True),
        ("7:40 its off", True),
        ("7:40 out, 9:10 on, 20:00 it is off", True),
        ("off", False),
        ("7:40 off", False),
        ("its out", False),
        ("oven off", False),
    ],
)
def test_it_is_off_may_be_the_light_or_the_oven(typed: str, ambiguous: bool, sentences: Sentences) -> None:
    assert typed_off(typed, sentences.wording) == ambiguous
