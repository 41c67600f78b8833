"""A chart as figures, for whoever doesn't see it: what a sentence each can be made of, in the order of telling."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from assistant.reports.chart import Chart, Lamp, spells

FIGURES: Mapping[str, tuple[str, ...]] = {
    "setting": ("set_c",),
    "lamp_never_out": ("ended_s",),
    "lamp_never_lit": ("ended_s",),
    "lamp_first_lit": ("at_s",),
    "lamp_first_out": ("at_s",),
    "lamp_cycles": ("cycles", "mean_s", "share_lit"),
    "lamp_stayed_lit": ("since_s", "ended_s"),
    "lamp_stayed_out": ("since_s", "ended_s"),
    "lamp_in_all": ("ended_s", "share_lit"),
    "hottest_reading": ("at_s", "reading_c"),
    "last_reading": ("at_s", "reading_c"),
    "last_expected": ("at_s", "low_c", "middle_c", "high_c"),
    "readings_compared": ("readings", "below", "above"),
    "opened": ("times", "first_s", "last_s"),
}
"""All that may be told, and the values of each: seconds since switching on, degrees Celsius, shares from 0 to 1."""


@dataclass(frozen=True)
class Figure:
    """`what` is a key of FIGURES, `values` has exactly the names that stand there."""

    what: str
    values: Mapping[str, float]


def described(chart: Chart) -> tuple[Figure, ...]:
    """What the chart shows. What can't be said of it is left out: nothing stands for 'unknown'."""
    return (Figure("setting", {"set_c": chart.set_c}), *_of_lamp(chart.lamp), *_of_readings(chart))


def _of_lamp(lamp: Lamp | None) -> Iterator[Figure]:
    if lamp is None:
        return
    if not lamp.changes_s:
        yield Figure("lamp_never_out" if lamp.lit_first else "lamp_never_lit", {"ended_s": lamp.ended_s})
        return
    if not lamp.lit_first:
        yield Figure("lamp_first_lit", {"at_s": lamp.changes_s[0]})
    outs = _times_out_s(lamp)
    if outs:
        yield Figure("lamp_first_out", {"at_s": outs[0]})
    if len(outs) > 1:
        cycles = len(outs) - 1
        whole_s = outs[-1] - outs[0]
        share = _lit_s(lamp, outs[0], outs[-1]) / whole_s
        yield Figure("lamp_cycles", {"cycles": cycles, "mean_s": whole_s / cycles, "share_lit": share})
    lit_last = lamp.lit_first == (len(lamp.changes_s) % 2 == 0)
    since = {"since_s": lamp.changes_s[-1], "ended_s": lamp.ended_s}
    yield Figure("lamp_stayed_lit" if lit_last else "lamp_stayed_out", since)
    share = _lit_s(lamp, 0.0, lamp.ended_s) / lamp.ended_s
    yield Figure("lamp_in_all", {"ended_s": lamp.ended_s, "share_lit": share})


def first_out_s(lamp: Lamp) -> float | None:
    """When it first went out, in seconds since switching on; None where it didn't."""
    return next(iter(_times_out_s(lamp)), None)


def _times_out_s(lamp: Lamp) -> tuple[float, ...]:
    return lamp.changes_s[0 if lamp.lit_first else 1 :: 2]


def _lit_s(lamp: Lamp, from_s: float, to_s: float) -> float:
    """How long it was lit between two times, in seconds."""
    lit = (spell for spell in spells(lamp) if spell.lit)
    return sum(max(min(spell.end_s, to_s) - max(spell.start_s, from_s), 0.0) for spell in lit)


def _of_readings(chart: Chart) -> Iterator[Figure]:
    read = chart.placed_readings
    if read:
        hottest_s, hottest_c, _ = max(read, key=lambda each: each[1])
        yield Figure("hottest_reading", {"at_s": hottest_s, "reading_c": hottest_c})
        last_s, last_c, _ = read[-1]
        yield Figure("last_reading", {"at_s": last_s, "reading_c": last_c})
        if chart.band and (expected := chart.band.at(last_s)):
            sides = {"low_c": expected.low_c, "middle_c": expected.middle_c, "high_c": expected.high_c}
            yield Figure("last_expected", {"at_s": last_s, **sides})
    compared = [place for time, _, place in read if chart.band and chart.band.at(time)]
    if compared:
        outside = {"below": compared.count("below"), "above": compared.count("above")}
        yield Figure("readings_compared", {"readings": len(compared), **outside})
    if chart.readings and chart.readings.opened_s:
        doors = chart.readings.opened_s
        yield Figure("opened", {"times": len(doors), "first_s": min(doors), "last_s": max(doors)})
