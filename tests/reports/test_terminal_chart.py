from dataclasses import fields, replace
from unicodedata import east_asian_width

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.reports.chart import Chart, Lamp, Readings, Words
from assistant.reports.lettering import cells
from assistant.reports.terminal_chart import BLOCKS, NARROWEST, PLAIN, terminal_chart
from tests.reports.runs import CYCLING, FLAT, WHOLE, WORDS, charts

FIRST = 6
"""The first column of time: four letters of `lamp`, a space, the axis."""
COLUMNS = 72 - FIRST - 5
LONG = Words(**{field.name: "a rather long name in some language or other" for field in fields(Words)})


def drawn(chart, words=WORDS, **how):
    return terminal_chart(chart, words, **{"plain": True, **how})


def row_of(lines, label):
    return next(line for line in lines if line.startswith(f"{label:>4} "))


def column_of(time_s, until_s=3600.0):
    return FIRST + int(time_s / until_s * COLUMNS)


@given(chart=charts, width=some.integers(NARROWEST, 100), plain=some.booleans(), words=some.sampled_from([WORDS, LONG]))
def test_no_line_is_wider_than_asked_and_the_same_is_drawn_twice(chart, width, plain, words):
    lines = terminal_chart(chart, words, width=width, plain=plain)
    assert max(map(cells, lines)) <= width
    assert lines == terminal_chart(chart, words, width=width, plain=plain)
    assert all(line == line.rstrip() and line.isprintable() for line in lines)


@given(chart=charts)
def test_the_plain_form_is_ascii(chart):
    assert "\n".join(drawn(chart)).isascii()


@pytest.mark.parametrize("width", [60, 72, 100])
def test_it_takes_twelve_to_sixteen_lines_where_all_is_measured(width):
    assert 12 <= len(terminal_chart(WHOLE, WORDS, width=width)) <= 16


def test_every_mark_is_one_cell_and_no_two_that_could_be_mistaken_are_alike():
    for marks in (BLOCKS, PLAIN):
        told_apart = (marks.expected, marks.setting, marks.opened, marks.reading, marks.below, marks.above)
        assert len(set(told_apart)) == len(told_apart)
        assert len({marks.lit, marks.out, marks.both}) == 3
        signs = [getattr(marks, field.name) for field in fields(marks)]
        assert all(len(sign) == 1 and east_asian_width(sign) not in "WF" for sign in signs)


def test_a_reading_stands_in_its_minute_and_in_the_row_nearest_to_its_degrees():
    read = Readings((0.0, 1800.0, 3599.0), (20.0, 150.0, 200.0), ())
    lines = drawn(Chart(3600.0, 180.0, None, None, read))
    marks = {(row, at) for row, line in enumerate(lines[:11]) for at, sign in enumerate(line) if sign == "o"}
    # The title, then 200 degrees to 20, 20 a row; 150 goes up to 160. Without a lamp the margin is that of `min`.
    columns = 72 - 5 - 5
    assert marks == {(1 + 9, 5), (1 + 2, 5 + columns // 2), (1, 5 + columns - 1)}


def test_readings_outside_what_was_expected_have_marks_of_their_own():
    read = Readings((600.0, 1800.0, 3000.0), (60.0, 170.0, 200.0), ())
    lines = drawn(Chart(3600.0, 180.0, FLAT, CYCLING, read))
    # The title, then 200 degrees to 60, 20 a row; 170 goes up to 180.
    assert [lines[1 + 7][column_of(600.0)], lines[1 + 1][column_of(1800.0)], lines[1][column_of(3000.0)]] == list("vo^")


def test_of_readings_in_one_place_the_one_outside_is_seen():
    read = Readings((1800.0, 1801.0, 1802.0), (189.0, 190.5, 189.5), ())
    lines = drawn(Chart(3600.0, 180.0, FLAT, None, read))
    marks = {line[5 + 31] for line in lines[1:11]}
    assert "^" in marks
    assert "o" not in marks


def test_the_band_shades_the_rows_whose_degrees_were_expected():
    lines = drawn(Chart(3600.0, 100.0, FLAT, CYCLING, None))
    # The title, then 190 degrees to 100, 10 a row.
    shaded = [line[FIRST : FIRST + COLUMNS] == ":" * COLUMNS for line in lines[1:11]]
    assert shaded == [True] * 5 + [False] * 5
    assert not any(":" in line for line in lines[6:11])


def test_a_band_ends_where_nothing_more_was_expected():
    lines = drawn(Chart(7200.0, 100.0, FLAT, CYCLING, None))
    # Of 61 columns the middle of the 31st is half the time.
    assert lines[1][FIRST:] == ":" * 31


def test_a_band_between_two_rows_takes_the_nearest_one():
    narrow = replace(FLAT, low_c=(151.0, 151.0), middle_c=(152.0, 152.0), high_c=(153.0, 153.0))
    lines = drawn(Chart(3600.0, 180.0, narrow, None, Readings((0.0, 1.0), (20.0, 200.0), ())))
    # The title, then 200 degrees to 20, 20 a row.
    assert [row for row in range(1, 11) if ":" in lines[row]] == [3]


def test_the_setting_is_a_broken_line_with_its_figure_at_the_end():
    lines = drawn(Chart(3600.0, 175.0, None, CYCLING, Readings((1.0, 2.0), (20.0, 205.0), ())))
    # The title, then 200 degrees to 20, 20 a row; 175 goes up to 180.
    assert lines[2] == "     |" + "- " * (COLUMNS // 2) + "- 175"
    assert not any(line.endswith("175") for line in (*lines[:2], *lines[3:]))


def test_an_opened_door_goes_through_every_row():
    lines = drawn(WHOLE)
    axis = next(row for row, line in enumerate(lines) if line.startswith("   C ++"))
    assert {line[column_of(1200.0)] for line in lines[1:axis]} == {"!"}


def test_minutes_stand_below_their_marks():
    lines = drawn(WHOLE)
    axis, numbers = row_of(lines, "C"), row_of(lines, "min")
    for minute in range(0, 51, 10):
        column = column_of(60.0 * minute)
        assert axis[column] == "+"
        assert numbers[column : column + len(str(minute))] == str(minute)
    assert axis[FIRST + COLUMNS - 1] == "+"
    assert axis.count("+") == 8  # the corner, and 0 to 60


def test_numbers_of_three_digits_have_their_middle_below_the_mark():
    lines = drawn(replace(WHOLE, longest_s=10800.0))
    axis, numbers = row_of(lines, "C"), row_of(lines, "min")
    column = column_of(6000.0, 10800.0)
    assert axis[column] == "+"
    assert numbers[column - 2 : column + 3] == " 100 "


def test_the_lamp_is_lit_and_out_where_it_was():
    lamp = Lamp(True, (600.0, 1200.0, 1800.0), 3000.0)
    row = row_of(drawn(Chart(3660.0, 180.0, None, lamp, None)), "lamp")
    # 61 minutes on 61 columns: a column is a minute.
    assert row == "lamp |" + "#" * 10 + "." * 10 + "#" * 10 + "." * 20


def test_a_spell_too_short_for_a_column_is_marked_all_the_same():
    short = Lamp(True, (630.0, 645.0, 1785.0, 1815.0), 3000.0)
    row = row_of(drawn(Chart(3660.0, 180.0, None, short, None)), "lamp")
    assert [at - FIRST for at, sign in enumerate(row) if sign == "="] == [10, 30]


def test_a_lamp_alone_is_drawn_without_degrees():
    lines = drawn(Chart(3600.0, 180.0, None, CYCLING, None))
    assert len(lines) == 5
    assert "setting" not in "".join(lines)


def test_a_lamp_alone_stands_on_the_axis_and_below_temperatures_under_theirs():
    for chart, order in ((Chart(3600.0, 180.0, None, CYCLING, None), ["lamp", "++"]), (WHOLE, ["++", "lamp"])):
        lines = drawn(chart)
        places = {"lamp": lines.index(row_of(lines, "lamp")), "++": next(n for n, e in enumerate(lines) if "++" in e)}
        assert sorted(places, key=places.__getitem__) == order


def test_the_legend_names_what_occurs_and_nothing_else():
    legend = "   ".join(drawn(WHOLE))
    named = ["::: expected", "- - setting", "o reading", "v below expected", "^ above expected", "! door opened"]
    assert all(entry in legend for entry in [*named, "# lit", ". out"])
    assert "both" not in legend
    alone = "   ".join(drawn(Chart(3600.0, 180.0, None, Lamp(True, (), 600.0), Readings((0.0,), (20.0,), ()))))
    assert "o reading" in alone
    assert "# lit" in alone
    assert not any(word in alone for word in ("expected", "below", "above", "opened", "out", "both"))


def test_long_words_stand_on_lines_of_their_own_and_whole():
    lines = terminal_chart(WHOLE, LONG, width=60, plain=True)
    assert " ".join(" ".join(lines).split()).count(LONG.title) >= 4  # title, degrees, minutes, lamp


def test_wide_letters_are_counted_as_two():
    lines = terminal_chart(WHOLE, replace(WORDS, lamp="ランプ", title="オーブン" * 20), width=60)
    assert max(map(cells, lines)) <= 60
    assert any(line.startswith("ランプ  █") for line in lines)


@pytest.mark.parametrize(
    "chart",
    [
        Chart(3600.0, 180.0, None, None, None),
        Chart(3600.0, 180.0, None, None, Readings((0.0,), (20.0,), ())),
        Chart(3600.0, 180.0, FLAT, None, Readings((), (), (60.0, 60.0))),
        Chart(3 * 3600.0, 250.0, FLAT, Lamp(False, (), 3 * 3600.0), Readings((10800.0,), (1e6,), ())),
        Chart(1.0, 50.0, None, Lamp(True, tuple(float(at) for at in range(2, 10800, 3)), 10800.0), None),
    ],
    ids=["nothing", "one reading", "doors alone", "far above", "ever changing"],
)
def test_extremes_are_drawn_within_the_width(chart):
    assert max(map(cells, terminal_chart(chart, WORDS, width=60))) <= 60


def test_too_narrow_a_screen_is_refused():
    with pytest.raises(ValueError, match="40 columns"):
        terminal_chart(WHOLE, WORDS, width=NARROWEST - 1)
