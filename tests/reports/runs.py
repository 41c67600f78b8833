"""Invented hot runs to be drawn, and any that could be."""

from hypothesis import strategies as some

from assistant.reports.chart import Band, Chart, Lamp, Readings, Words

WORDS = Words(
    title="Oven at 180 C",
    description="What was measured.",
    degrees="C",
    minutes="min",
    expected="expected",
    middle="middle of expected",
    setting="setting",
    reading="reading",
    below="below expected",
    above="above expected",
    opened="door opened",
    lamp="lamp",
    lit="lit",
    out="out",
    both="both",
)

FLAT = Band((0.0, 3600.0), (150.0, 150.0), (170.0, 170.0), (190.0, 190.0))
"""The same from first to last: 150, 170, 190 degrees."""
RISING = Band((0.0, 600.0, 3600.0), (20.0, 150.0, 160.0), (20.0, 160.0, 180.0), (20.0, 170.0, 195.0))
CYCLING = Lamp(True, (600.0, 900.0, 1020.0, 1320.0, 1440.0), 3000.0)
"""Out at 10:00, 17:00 and 24:00: two cycles of 7 minutes, lit for 2 of each."""
READ = Readings((300.0, 1800.0, 3000.0), (60.0, 180.0, 205.0), (1200.0,))
WHOLE = Chart(3600.0, 180.0, RISING, CYCLING, READ)

seconds = some.integers(0, 3 * 3600).map(float)
degrees = some.floats(-5, 320)


@some.composite
def bands(draw: some.DrawFn) -> Band:
    times = sorted(draw(some.sets(seconds, min_size=1, max_size=12)))
    sides = [sorted(draw(some.tuples(degrees, degrees, degrees))) for _ in times]
    low, middle, high = (tuple(each) for each in zip(*sides, strict=True))
    return Band(tuple(times), low, middle, high)


@some.composite
def lamps(draw: some.DrawFn) -> Lamp:
    times = sorted(draw(some.sets(seconds.filter(bool), min_size=1, max_size=60)))
    return Lamp(draw(some.booleans()), tuple(times[:-1]), times[-1])


@some.composite
def read(draw: some.DrawFn) -> Readings:
    times = sorted(draw(some.sets(seconds, max_size=40)))
    values = draw(some.lists(degrees, min_size=len(times), max_size=len(times)))
    return Readings(tuple(times), tuple(values), tuple(sorted(draw(some.lists(seconds, max_size=6)))))


charts = some.builds(
    Chart,
    longest_s=some.floats(1, 3 * 3600),
    set_c=some.floats(30, 300),
    band=some.none() | bands(),
    lamp=some.none() | lamps(),
    readings=some.none() | read(),
)
