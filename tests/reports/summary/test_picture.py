"""Drawings as elements: what ours have is kept, what could act is not."""

from xml.etree import ElementTree as Xml

import pytest

from assistant.reports.summary.picture import picture_of
from assistant.reports.svg import SVG
from tests.reports.summary.samples import CHART

HOSTILE = f"""<svg xmlns="{SVG}" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 9 9" width="9" height="9"
 onload="alert(1)"><script>alert(1)</script><a href="https://example.org"><text>out</text></a>
 <image xlink:href="https://example.org/a.png"/><rect id="r" fill="url(https://example.org/#a)" style="x:url(b)"
 width="3" height="3" onclick="alert(1)"/><foreignObject><p>out</p></foreignObject><style>@import 'a'</style></svg>"""


def test_nothing_of_our_own_charts_is_lost() -> None:
    whole = Xml.fromstring(CHART)  # noqa: S314 - drawn by this project
    kept = picture_of(CHART, "")
    assert [(e.tag.removeprefix(f"{{{SVG}}}"), e.attrib) for e in whole.iter()] == [
        (e.tag, e.attrib) for e in kept.iter()
    ]


def test_what_runs_or_fetches_is_left_out() -> None:
    kept = picture_of(HOSTILE, "")
    assert [element.tag for element in kept.iter()] == ["svg", "rect"]
    assert kept[0].attrib == {"id": "r", "width": "3", "height": "3"}
    assert set(kept.attrib) == {"viewBox", "width", "height"}


def test_two_of_them_share_no_id() -> None:
    first, second = (picture_of(CHART, prefix) for prefix in ("a-", "b-"))
    ids = [{e.get("id") for e in each.iter() if e.get("id")} for each in (first, second)]
    assert ids[0]
    assert not ids[0] & ids[1]
    fills = {e.get("fill") for e in first.iter() if "url" in (e.get("fill") or "")}
    assert fills == {"url(#a-shade)"}


@pytest.mark.parametrize("svg", ["", "<svg", "<p/>", "<html/>"])
def test_what_is_no_drawing_is_refused(svg: str) -> None:
    with pytest.raises(Xml.ParseError):
        picture_of(svg, "")
