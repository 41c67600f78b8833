"""What the household's own measurements mean, in plain words: its thermometer, the small light, its bread."""

from collections.abc import Iterator

import numpy as np

from assistant.belief.instruments import Instrument
from assistant.belief.measured import STAYED_WHITE
from assistant.belief.synthetic import Compared
from assistant.errors import Refused
from assistant.knowledge.readings import BrownedBread, browned_bread, minutes_and_seconds
from assistant.reports.chart import Chart, Lamp
from assistant.reports.described import first_out_s
from assistant.reports.measured import WITHIN, charts_of, instrument_of, put_right_in_words, usual_first_out_s
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Items


def own_measurements(told: Told) -> Iterator[Block]:
    """An item for each measurement, beside what sound ovens would show; in danger none, lest somebody measure again."""
    if not told.assessment.danger.open:
        yield Items((*_charts(told), *_breads(told)))


def were_made(told: Told) -> bool:
    """Whether the household measured anything that can be read."""
    return any(True for _ in (*_charts(told), *_breads(told)))


def _charts(told: Told) -> Iterator[str]:
    for question_id, chart, bias in charts_of(told.script, told.state.answers):
        instrument = instrument_of(told.script, question_id)
        said = [*put_right_in_words(told.sentences, bias), *_thermometer(told, chart)]
        if chart.lamp is not None and instrument is not None:
            said += _light(told, chart.lamp, chart.set_c, usual_first_out_s(instrument))
        yield " ".join(said)


def _thermometer(told: Told, chart: Chart) -> Iterator[str]:
    read = chart.placed_readings
    if not read:
        return
    last_s, last_c, place = read[-1]
    yield told.say(
        "own_thermometer",
        set_c=f"{chart.set_c:.0f}",
        reading_c=f"{last_c:.0f}",
        minutes=f"{last_s / 60:.0f}",
    )
    expected = chart.band.at(last_s) if chart.band is not None else None
    if expected is not None:
        low_c, high_c = f"{expected.low_c:.0f}", f"{expected.high_c:.0f}"
        yield told.say("own_thermometer_expected", low_c=low_c, high_c=high_c, place=place)


def _light(told: Told, lamp: Lamp, set_c: float, usual_s: tuple[float, float] | None) -> Iterator[str]:
    """When it first went out; a light that was never lit tells of itself alone."""
    own_s = first_out_s(lamp)
    if own_s is None and not lamp.lit_first:
        yield told.say("own_light_dark", minutes=minutes_and_seconds(lamp.ended_s))
        return
    went = "out" if own_s is not None else "never"
    seen_s = own_s if own_s is not None else lamp.ended_s
    yield told.say("own_light", went=went, set_c=f"{set_c:.0f}", minutes=minutes_and_seconds(seen_s))
    if usual_s is not None:
        early_s, late_s = usual_s
        place = "later" if seen_s > late_s else "sooner" if own_s is not None and own_s < early_s else "within"
        early, late = map(minutes_and_seconds, usual_s)
        yield told.say("own_light_expected", early=early, late=late, place=place)


def _breads(told: Told) -> Iterator[str]:
    for answer in told.answered("signs"):
        instrument = told.script.evidence_model.instruments.get(answer.question_id)
        if isinstance(instrument, Instrument) and instrument.kind == "browning" and isinstance(answer.value, tuple):
            lines = tuple(map(str, answer.value))
            try:
                yield _bread(told, browned_bread(lines), instrument.compared("\n".join(lines)))
            except Refused:
                continue


def _bread(told: Told, bread: BrownedBread, beside: Compared) -> str:
    """Whether one side stayed paler than in nine of ten simulated sound ovens, and than is seen wrong."""
    low, high = np.quantile(beside.simulated.values[0, :, 0], (WITHIN[0], WITHIN[-1]))
    unsure, top_less_underside = float(np.sqrt(beside.noise[0])), float(beside.told.values[0])
    place = "within"
    if int(beside.told.pattern) == STAYED_WHITE:
        place = "white"
    elif top_less_underside > high + unsure:
        place = "pale_below"
    elif top_less_underside < low - unsure:
        place = "pale_above"
    top, underside = (f"{np.nanmean(side):.1f}" for side in (bread.top, bread.underside))
    return told.say("own_bread", top=top, underside=underside, place=place)
