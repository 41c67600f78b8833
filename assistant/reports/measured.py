"""What was written down at the oven -> its chart: the readings before what a sound oven would have shown."""

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

import numpy as np

from assistant.belief.instruments import Instrument
from assistant.belief.measured import lamp_features
from assistant.interview.answers import still_fits
from assistant.interview.state import Answer
from assistant.interview.thermometer import bias_k, how_far_off
from assistant.knowledge.readings import LampLog, TemperatureLog, lamp_log, put_right, temperature_log
from assistant.reports.chart import Band, Chart, Words
from assistant.reports.described import described
from assistant.wording.sentences import Sentences

if TYPE_CHECKING:
    from assistant.interview.script import Script

WITHIN = (0.05, 0.5, 0.95)
"""Of the simulated sound ovens nine in ten lie within the band."""
DRAWN = ("lamp_log", "temperature_log")


def instrument_of(script: "Script", question_id: str) -> Instrument | None:
    """The measuring question's instrument, if it draws a chart."""
    found = script.evidence_model.instruments.get(question_id)
    return found if isinstance(found, Instrument) and found.kind in DRAWN else None


def chart_of(instrument: Instrument, lines: Sequence[str]) -> Chart:
    """Of lines that can be read: raises Refused. Simulates the sound ovens, if that wasn't done yet."""
    run = instrument.hot_run
    longest_s, set_c = run.longest.value * 60, run.setting.value
    if instrument.kind == "lamp_log":
        log: LampLog = lamp_log(lines)
        return Chart(longest_s=max(log.ended_s, 60.0), set_c=set_c, lamp=log)
    readings: TemperatureLog = temperature_log(lines)
    return Chart(longest_s=longest_s, set_c=set_c, band=_expected(instrument), readings=readings)


def charts_of(script: "Script", answers: Mapping[str, Answer]) -> Iterator[tuple[str, Chart, float | None]]:
    """Measuring question, the chart of what was written down there, and by how many K its readings were put right
    (None where the thermometer wasn't checked); latest first.
    """
    for answer in sorted(answers.values(), key=lambda each: -each.sequence):
        instrument = instrument_of(script, answer.question_id)
        question = script.knowledge.questions.get(answer.question_id)
        if instrument is None or not isinstance(answer.value, tuple) or not still_fits(question, answer.value):
            continue
        bias = bias_k(script.knowledge, answer.question_id, answers)
        lines = put_right(answer.value, bias) if bias is not None else answer.value
        yield answer.question_id, chart_of(instrument, lines), bias


def _expected(instrument: Instrument) -> Band:
    seen = instrument.prepare()
    low, middle, high = np.quantile(seen.shown_c[0].astype(np.float64), WITHIN, axis=0)
    return Band(tuple(map(float, seen.times_s)), *(tuple(map(float, side)) for side in (low, middle, high)))


def usual_first_out_s(instrument: Instrument) -> tuple[float, float] | None:
    """Between which times nine in ten simulated sound ovens' lamps first go out; None where some never do."""
    seen = instrument.prepare()
    turns = seen.turns_s[:1].astype(np.float64)
    first = np.exp(lamp_features(seen.lit_first[:1], turns, instrument.hot_run.longest.value * 60).values[0, :, 0])
    if not np.isfinite(first).all():
        return None
    early, late = np.quantile(first, (WITHIN[0], WITHIN[-1]))
    return float(early), float(late)


def words_of(sentences: Sentences, question_id: str, chart: Chart, bias_k: float | None = None) -> Words:
    """The chart's words in the language of the sentences. `bias_k`: how far its readings were put right, in K."""

    def say(name: str) -> str:
        return sentences.wording.say(f"measured-{name}")

    return Words(
        title=say(f"title_{sentences.knowledge.questions[question_id].kind}"),
        description=" ".join((*put_right_in_words(sentences, bias_k), *described_in_words(sentences, chart))),
        **{
            name: say(name)
            for name in (
                "degrees",
                "minutes",
                "expected",
                "middle",
                "setting",
                "reading",
                "below",
                "above",
                "opened",
                "lamp",
                "lit",
                "out",
                "both",
            )
        },
    )


def described_in_words(sentences: Sentences, chart: Chart) -> tuple[str, ...]:
    """What the chart shows, a sentence each: for readers of screens, and beside the picture."""
    return tuple(
        sentences.wording.say(f"measured-says_{figure.what}", **as_shown(figure.values)) for figure in described(chart)
    )


def put_right_in_words(sentences: Sentences, bias_k: float | None) -> tuple[str, ...]:
    """That the readings which are drawn aren't those that were written down. `bias_k`: what was taken off them, in K;
    None where the thermometer wasn't checked.
    """
    if bias_k is None:
        return ()
    off, kelvins = how_far_off(bias_k)
    return (sentences.wording.say("measured-put_right", off=off, kelvins=f"{kelvins:g}"),)


def as_shown(values: Mapping[str, float]) -> dict[str, str | float]:
    """Seconds as minutes and seconds, degrees without decimals, shares as percent."""
    shown: dict[str, str | float] = {}
    for name, value in values.items():
        if name.endswith("_s"):
            shown[name] = f"{round(value) // 60}:{round(value) % 60:02d}"
        elif name.endswith("_c"):
            shown[name] = f"{value:.0f}"
        elif name.startswith("share"):
            shown[name] = f"{100 * value:.0f}"
        else:
            shown[name] = value
    return shown
