"""Sheets: each line once, in order, within the margins."""

from hypothesis import given
from hypothesis import strategies as some

from assistant.reports.summary.pdf.sheets import height_of, sheets_of
from assistant.reports.summary.pdf.units import Column, Placed, Unit

TALL = 500.0
HEAD = Unit((Column(("head",), 0, None),), leading=12, hangs=True)

units = some.builds(
    lambda lines, above, padding, hangs, head: Unit(
        (Column(tuple(map(str, range(lines))), 0, None),),
        leading=12,
        above=above,
        padding=padding,
        hangs=hangs,
        head=HEAD if head else None,
    ),
    some.integers(1, 120),
    some.floats(0, 20),
    some.floats(0, 5),
    some.booleans(),
    some.booleans(),
)


def placed_lines(sheets: list[list[Placed]]) -> list[tuple[int, int]]:
    return [
        (id(placed.unit), line)
        for sheet in sheets
        for placed in sheet
        if not placed.again
        for line in range(placed.first, placed.last)
    ]


@given(some.lists(units, min_size=1, max_size=12))
def test_every_line_stands_once_in_order_and_within_the_sheet(units: list[Unit]) -> None:
    sheets = sheets_of([units], TALL)
    assert placed_lines(sheets) == [(id(unit), line) for unit in units for line in range(unit.count)]
    for sheet in sheets:
        assert sheet
        below = 0.0
        for placed in sheet:
            assert placed.top >= below - 1e-6
            below = placed.top + placed.unit.height(placed.last - placed.first)
        assert below <= TALL + 1e-6


@given(some.lists(units, min_size=1, max_size=6).filter(lambda units: height_of(units) <= TALL))
def test_what_holds_on_one_sheet_stands_on_one(units: list[Unit]) -> None:
    assert len(sheets_of([units], TALL)) == 1


def test_each_page_begins_a_new_sheet() -> None:
    page = [Unit((Column(("one",), 0, None),))]
    assert [len(sheet) for sheet in sheets_of([page, page, page], TALL)] == [1, 1, 1]


def test_a_heading_never_stands_alone_at_the_foot() -> None:
    filling = Unit((Column(tuple("x" * 40), 0, None),), leading=12)
    first, second = sheets_of([[filling, HEAD, Unit((Column(("a", "b", "c"), 0, None),), leading=12)]], TALL)
    assert [placed.unit for placed in first] == [filling]
    assert second[0].unit is HEAD


def test_a_short_unit_is_not_broken_and_a_table_begins_again_with_its_head() -> None:
    filling = Unit((Column(tuple("x" * 38), 0, None),), leading=12)
    row = Unit((Column(tuple("abcde"), 0, None),), leading=12, head=HEAD)
    _, second = sheets_of([[filling, row]], TALL)
    assert [(placed.unit, placed.again) for placed in second] == [(HEAD, True), (row, False)]
