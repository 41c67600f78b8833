"""Drawings in a PDF: every shape that our charts are made of is drawn, and stands where it should."""

from dataclasses import replace

from pypdf.generic import ContentStream

from assistant.reports.summary.as_pdf import as_pdf
from assistant.reports.summary.pdf.picture import NOT_DRAWN, SHAPES
from assistant.reports.summary.picture import picture_of
from assistant.reports.summary.value import Drawing, Page, Section
from tests.reports.summary.read_pdf import opened
from tests.reports.summary.samples import CHART, FOOTING, PLAIN


def test_no_kind_of_shape_is_left_out() -> None:
    kinds = {element.tag for element in picture_of(CHART, "").iter()}
    assert {"rect", "line", "polygon", "polyline", "circle", "text"} <= kinds
    assert kinds <= SHAPES | NOT_DRAWN | {"text"}


def test_each_shape_is_one_path_and_each_word_one_string() -> None:
    picture = picture_of(CHART, "")
    bare = replace(PLAIN, pages=(Page((Section("measured", "M", (Drawing(CHART, "d"),)),)),))
    reader = opened(as_pdf(bare, FOOTING))
    stream = ContentStream(reader.pages[0]["/Contents"], reader).operations
    begin = next(at for at, (operands, operator) in enumerate(stream) if operands[:1] == ["/Figure"])
    end = next(at for at, (_, operator) in enumerate(stream) if at > begin and operator == b"EMC")
    drawn = [operator for _, operator in stream[begin:end]]
    shaded = [each for each in picture if (each.get("fill") or "").startswith("url")]
    shapes = [each for each in picture if each.tag in SHAPES]
    rows = drawn.count(b"d") - 2 * len(shapes)
    assert len(shaded) == 2
    assert drawn.count(b"W*") + drawn.count(b"W") == len(shaded)
    assert rows == 2 * len(shaded)
    painted = sum(drawn.count(operator) for operator in (b"S", b"f", b"f*", b"B", b"B*"))
    assert painted > len(shapes)
    assert drawn.count(b"Tj") >= len([each for each in picture if each.tag == "text"])
