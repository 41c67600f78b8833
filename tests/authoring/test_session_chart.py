"""`ovenside sessions chart`: what was measured, as a picture and in words."""

import io
from pathlib import Path

import pytest

from assistant.authoring.session_chart import draw
from assistant.interview.script import Script
from assistant.wording.sentences import Sentences
from tests.conftest import Begin

CHECKED = {"thermometer_kind": "digital_with_cable", "thermometer_check": "with_ice"}


@pytest.mark.parametrize(
    ("read_in_ice", "said", "last"),
    [
        (None, None, 151),
        (8.0, "found to read 8 degrees too high, and so much was taken off them.", 143),
        (-2.5, "found to read 2.5 degrees too low, and so much was added to them.", 154),
        (0.2, "The thermometer was checked in water and reads as it should.", 151),
    ],
)
def test_readings_that_were_put_right_are_said_to_be_so(
    begun: Begin,
    script: Script,
    sentences: Sentences,
    tmp_path: Path,
    read_in_ice: float | None,
    said: str | None,
    last: int,
) -> None:
    checked = {} if read_in_ice is None else {**CHECKED, "thermometer_in_ice": read_in_ice}
    conversation = begun(danger_now=["none"], **checked, thermometer_log=["1:00 40 C", "10:00 151 C"])
    picture, out = tmp_path / "chart.svg", io.StringIO()
    prefix = conversation.record.session_id[:8]
    assert draw(conversation._log, script, sentences, prefix, picture, out) == 0
    assert f"The last reading was {last} °C" in out.getvalue()
    for told in (out.getvalue(), picture.read_text("utf-8")):
        assert (said in told) if said is not None else ("put right" not in told and "checked" not in told)


def test_a_session_without_a_measurement_draws_nothing(
    begun: Begin, script: Script, sentences: Sentences, tmp_path: Path
) -> None:
    conversation = begun(danger_now=["none"])
    picture, out = tmp_path / "chart.svg", io.StringIO()
    assert draw(conversation._log, script, sentences, conversation.record.session_id[:8], picture, out) == 1
    assert "Nothing was measured" in out.getvalue()
    assert not picture.exists()
