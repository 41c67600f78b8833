import re
from dataclasses import fields, replace
from xml.etree import ElementTree as Xml

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.reports.chart import Chart, Lamp, Readings, Words
from assistant.reports.lettering import cells
from assistant.reports.svg import SVG
from assistant.reports.svg_chart import NARROW, WIDE, svg_chart
from tests.reports.runs import CYCLING, FLAT, WHOLE, WORDS, charts

LONG = Words(**{field.name: "a rather long name in some language, " * 5 for field in fields(Words)})
NASTY = Words(**{field.name: f'<b>{field.name}</b> & "it\'s" ]]> \x00\x1b' for field in fields(Words)})
LETTER = 0.6
"""How wide a letter is, in parts of its size: an average of common fonts without serifs."""
LEFT, ACROSS = 64.0, 600.0
"""Where the axis of time begins, and its length, in pixels."""


def root_of(chart, words=WORDS, **how):
    return Xml.fromstring(svg_chart(chart, words, **how))  # noqa: S314 - what was written just now


def found(root, name):
    """Leaves out the defs, which aren't drawn where they stand."""
    hidden = set(root.find(f"{{{SVG}}}defs").iter())
    return [each for each in root.iter(f"{{{SVG}}}{name}") if each not in hidden]


def number(element, name):
    return float(element.get(name, 0))


def corners(element):
    """(left, top, right, bottom) of what is drawn."""
    kind = element.tag.removeprefix(f"{{{SVG}}}")
    if kind == "text":
        size, x, y = (number(element, name) for name in ("font-size", "x", "y"))
        wide = LETTER * size * cells(element.text)
        left = x - wide * {"start": 0.0, "middle": 0.5, "end": 1.0}[element.get("text-anchor")]
        return left, y - size, left + wide, y + 0.3 * size
    if kind == "circle":
        x, y, radius = (number(element, name) for name in ("cx", "cy", "r"))
        return x - radius, y - radius, x + radius, y + radius
    if kind == "rect":
        x, y = number(element, "x"), number(element, "y")
        return x, y, x + number(element, "width"), y + number(element, "height")
    if kind == "line":
        xs, ys = ([number(element, f"{axis}{end}") for end in (1, 2)] for axis in "xy")
    else:
        xs, ys = zip(*(map(float, point.split(",")) for point in element.get("points").split()), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def all_drawn(root):
    return [each for kind in ("text", "circle", "rect", "line", "polygon", "polyline") for each in found(root, kind)]


FORMS = some.sampled_from([WIDE, NARROW])


@given(chart=charts, words=some.sampled_from([WORDS, LONG, NASTY]), form=FORMS)
def test_all_of_it_lies_within_the_picture_and_the_same_is_drawn_twice(chart, words, form):
    root = root_of(chart, words, form=form)
    _, _, width, height = map(float, root.get("viewBox").split())
    for element in all_drawn(root):
        left, top, right, bottom = corners(element)
        assert left >= 0, Xml.tostring(element)
        assert top >= 0, Xml.tostring(element)
        assert right <= width, Xml.tostring(element)
        assert bottom <= height, Xml.tostring(element)
    assert svg_chart(chart, words) == svg_chart(chart, words)


@given(chart=charts, words=some.sampled_from([WORDS, LONG]), form=FORMS)
def test_no_words_lie_on_other_words(chart, words, form):
    boxes = [corners(element) for element in found(root_of(chart, words, form=form), "text")]
    for place, (left, top, right, bottom) in enumerate(boxes):
        for other_left, other_top, other_right, other_bottom in boxes[:place]:
            beside = right <= other_left or other_right <= left
            assert beside or bottom <= other_top + 1 or other_bottom <= top + 1


def test_readers_of_screens_get_the_title_and_the_description():
    root = root_of(WHOLE, name="run-2-")
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "run-2-title run-2-description"
    named = {each.get("id"): each.text for each in root.iter() if each.get("id")}
    assert named["run-2-title"] == WORDS.title
    assert named["run-2-description"] == WORDS.description
    assert all(name.startswith("run-2-") for name in named)


def test_shades_are_those_of_the_same_picture():
    text = svg_chart(WHOLE, WORDS, name="b-")
    assert set(re.findall(r"url\(#([^)]+)\)", text)) == {"b-shade"}
    assert 'id="b-shade"' in text


def test_words_with_marks_of_markup_are_written_as_words():
    root = root_of(WHOLE, NASTY)
    title = root.find(f"{{{SVG}}}title").text
    assert title == '<b>title</b> & "it\'s" ]]> ' + 2 * "\N{REPLACEMENT CHARACTER}"
    assert not list(root.iter(f"{{{SVG}}}b")) + list(root.iter("b"))


def test_no_letter_is_smaller_than_eleven_pixels():
    sizes = {number(each, "font-size") for each in found(root_of(WHOLE), "text")}
    assert min(sizes) >= 11


def test_both_forms_say_the_same():
    wide, narrow = ({*" ".join(t.text for t in found(root_of(WHOLE, form=f), "text")).split()} for f in (WIDE, NARROW))
    assert {word for word in wide ^ narrow if not word.isdigit()} == set()


def test_readings_stand_where_they_were_taken():
    read = Readings((0.0, 1800.0, 3600.0), (20.0, 120.0, 220.0), ())
    discs = found(root_of(Chart(3600.0, 180.0, None, None, read)), "circle")[:3]
    assert [number(disc, "cx") for disc in discs] == [LEFT, LEFT + ACROSS / 2, LEFT + ACROSS]
    first, second, third = (number(disc, "cy") for disc in discs)
    # From 20 to 220 degrees on 264 pixels.
    assert first - second == pytest.approx(132.0, abs=0.01)
    assert second - third == pytest.approx(132.0, abs=0.01)


def test_degrees_at_the_axis_stand_at_their_height():
    read = Readings((0.0, 1800.0), (20.0, 220.0), ())
    root = root_of(Chart(3600.0, 180.0, None, None, read))
    labels = {each.text: number(each, "y") for each in found(root, "text") if each.get("text-anchor") == "end"}
    discs = found(root, "circle")
    assert [labels["20"], labels["220"]] == pytest.approx([number(disc, "cy") + 4 for disc in discs[:2]], abs=0.01)
    assert set(labels) == {str(degrees) for degrees in range(20, 221, 20)}


def test_readings_outside_point_to_where_they_lie():
    read = Readings((600.0, 1200.0), (100.0, 200.0), ())
    root = root_of(Chart(3600.0, 170.0, FLAT, None, read))
    triangles = [each for each in found(root, "polygon") if len(each.get("points").split()) == 3][:2]
    for triangle, points_down, time_s in zip(triangles, (True, False), (600.0, 1200.0), strict=True):
        *_, (tip_x, tip_y) = (tuple(map(float, point.split(","))) for point in triangle.get("points").split())
        _, top, _, bottom = corners(triangle)
        assert tip_y == (bottom if points_down else top)
        assert tip_x == LEFT + ACROSS * time_s / 3600
    assert "setting" in {each.text for each in found(root, "text")}


def test_the_band_reaches_from_low_to_high():
    read = Readings((0.0, 1.0), (20.0, 220.0), ())
    root = root_of(Chart(3600.0, 180.0, FLAT, None, read))
    band = next(each for each in found(root, "polygon") if len(each.get("points").split()) == 4)
    left, top, right, bottom = corners(band)
    assert (left, right) == (LEFT, LEFT + ACROSS)
    assert bottom - top == pytest.approx(264 * (190 - 150) / 200, abs=0.01)


def test_the_lamp_is_black_where_it_was_lit_and_white_where_it_was_out():
    root = root_of(Chart(3600.0, 180.0, None, CYCLING, None))
    strip = [each for each in found(root, "rect") if number(each, "height") == 18 and each.get("fill") != "none"]
    edges = [0.0, *CYCLING.changes_s, CYCLING.ended_s]
    assert [number(each, "x") for each in strip] == pytest.approx([LEFT + ACROSS * at / 3600 for at in edges[:-1]])
    assert sum(number(each, "width") for each in strip) == pytest.approx(ACROSS * CYCLING.ended_s / 3600)
    assert [each.get("fill") for each in strip] == ["#1b1b1b", "#ffffff"] * 3


def test_it_is_black_and_grey_on_white():
    colours = set(re.findall(r"#[0-9a-f]{6}\b", svg_chart(WHOLE, WORDS)))
    assert colours
    assert all(colour[1:3] == colour[3:5] == colour[5:7] for colour in colours)


def test_the_legend_names_what_occurs_and_nothing_else():
    words = {each.text for each in found(root_of(WHOLE), "text")}
    occurring = {
        "expected",
        "middle",
        "setting",
        "reading",
        "below",
        "above",
        "opened",
        "lit",
        "out",
        "lamp",
        "minutes",
    }
    assert {getattr(WORDS, name) for name in occurring} <= words
    alone = {each.text for each in found(root_of(Chart(3600.0, 180.0, None, Lamp(True, (), 60.0), None)), "text")}
    assert alone == {WORDS.title, WORDS.minutes, WORDS.lamp, WORDS.lit, *(str(at) for at in range(0, 61, 5))}


@pytest.mark.parametrize(
    "chart",
    [
        Chart(3600.0, 180.0, None, None, None),
        Chart(1.0, 180.0, None, None, Readings((0.0,), (20.0,), ())),
        Chart(10800.0, 250.0, FLAT, Lamp(False, (), 10800.0), Readings((10800.0,), (99999.0,), ())),
        replace(WHOLE, longest_s=1e6),
    ],
    ids=["nothing", "one reading", "far above", "very long"],
)
def test_extremes_are_drawn_within_the_picture(chart):
    root = root_of(chart)
    _, _, width, height = map(float, root.get("viewBox").split())
    boxes = [corners(each) for each in all_drawn(root)]
    assert min(min(left, top) for left, top, _, _ in boxes) >= 0
    assert max(right for _, _, right, _ in boxes) <= width
    assert max(bottom for _, _, _, bottom in boxes) <= height
