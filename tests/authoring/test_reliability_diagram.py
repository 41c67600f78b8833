from xml.etree import ElementTree as Xml

from assistant.authoring.reliability_diagram import SIDE, Labels, Panel, reliability_diagram
from assistant.belief.scores import Band
from assistant.reports.svg import SVG

LABELS = Labels("a title", "said & done <in words>", "said so likely", "came true", "how many", "what is dashed")
BANDS = (Band(0.0, 0.1, 40, 0.05, 0.1, 0.04, 0.23), Band(0.9, 1.0, 7, 0.95, 1.0, 0.65, 1.0))


def drawn(first=BANDS, second=BANDS):
    text = reliability_diagram((Panel("left", "square", first), Panel("right", "circle", second)), LABELS)
    return Xml.fromstring(text)  # noqa: S314 - what was written just now


def found(root, name):
    return root.findall(f".//{{{SVG}}}{name}")


def test_it_says_in_words_what_it_shows():
    root = drawn()
    assert root.get("role") == "img"
    named = {element.get("id"): element.text for element in (*found(root, "title"), *found(root, "desc"))}
    assert named == {"title": LABELS.title, "description": LABELS.description}
    assert root.get("aria-labelledby") == "title description"


def test_axes_panels_counts_and_the_dashed_line_are_labelled():
    texts = [element.text for element in found(drawn(), "text")]
    assert [texts.count(label) for label in (LABELS.predicted, LABELS.observed, LABELS.counts)] == [2, 2, 2]
    assert {"left", "right", LABELS.title, LABELS.legend, "0 %", "100 %"} <= set(texts)
    assert [texts.count(count) for count in ("40", "7")] == [2, 2]


def test_each_panel_has_its_own_shape_where_it_was_said_and_came():
    left, right = found(drawn(), "g")
    circles = [(float(c.get("cx")), float(c.get("cy"))) for c in found(right, "circle")]
    assert circles == [(SIDE * 0.05, SIDE * 0.9), (SIDE * 0.95, 0.0)]
    assert found(left, "circle") == []
    squares = [rect for rect in found(left, "rect") if rect.get("width") == "10"]
    assert [float(rect.get("x")) + 5 for rect in squares] == [SIDE * 0.05, SIDE * 0.95]


def test_intervals_reach_from_low_to_high():
    _, right = found(drawn(), "g")
    upright = [line for line in found(right, "line") if line.get("stroke-width") == "1.5"]
    heights = {(float(line.get("y1")), float(line.get("y2"))) for line in upright if line.get("x1") == line.get("x2")}
    assert {(round(SIDE - low, 6), round(SIDE - high, 6)) for low, high in heights} == {
        (SIDE * 0.04, SIDE * 0.23),
        (SIDE * 0.65, SIDE * 1.0),
    }


def test_everything_stays_inside_the_picture():
    root = drawn()
    _, _, width, height = map(float, root.get("viewBox").split())
    for group in found(root, "g"):
        left, top = map(float, group.get("transform").removeprefix("translate(").removesuffix(")").split())
        for rect in found(group, "rect"):
            assert 0 <= left + float(rect.get("x", 0)) <= width - float(rect.get("width"))
            assert 0 <= top + float(rect.get("y", 0)) <= height - float(rect.get("height"))


def test_no_forecast_at_all_is_drawn_as_empty_axes():
    assert found(drawn((), ()), "circle") == []
