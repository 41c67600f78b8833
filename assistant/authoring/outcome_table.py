"""A table of outcomes as CSV: the names of its columns, its rows, and cells that no spreadsheet takes for a formula."""

import csv
import io
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from assistant.interview.answers import echoed
from assistant.knowledge.problems import nearest_name

FIELDS = ("result", "cause_found", "second_cause", "part_fitted", "minutes", "note", "group")
COLUMNS = ("session", *FIELDS)
NEEDED = ("session", "result")

_FORMULA = re.compile(r"'*[=+\-@\t\r]")
_GUARDED = re.compile(r"'+[=+\-@\t\r]")
_NUMBER = re.compile(r"[+-]?[0-9]+([.,][0-9]+)?")


@dataclass(frozen=True)
class Row:
    """`number` as spreadsheets count, the heading being row 1. `cells`: column -> what stands there."""

    number: int
    cells: Mapping[str, str]


@dataclass(frozen=True)
class Mistake:
    """What is wrong in a row, in one column if there is one; `code` is worded as `outcomes-CODE`."""

    row: int
    column: str
    code: str
    details: Mapping[str, str | float] = field(default_factory=dict)
    nearest: str | None = None


def rows_of_table(content: bytes) -> Iterator[Row | Mistake]:
    """The rows that hold anything, one by one. Mistakes of the heading or of the file as a whole come alone.

    UTF-8, with or without a byte order mark; commas or semicolons, whichever the heading has more of.
    """
    mistake = _no_text(content)
    if mistake is not None:
        yield mistake
        return
    text = io.TextIOWrapper(io.BytesIO(content), "utf-8-sig", newline="")
    heading = text.readline()
    text.seek(0)
    reader = csv.reader(text, delimiter=";" if heading.count(";") > heading.count(",") else ",", strict=True)
    number = 0
    try:
        columns = [_column(cell) for cell in next(reader, [])]
        wrong = tuple(_wrong_columns(columns))
        yield from wrong
        if wrong:
            return
        number = 1
        for number, cells in enumerate(reader, 2):
            plain = [_unguarded(cell) for cell in cells]
            if any(cell.strip() for cell in plain):
                yield _row(number, columns, plain)
    except csv.Error:
        yield Mistake(number + 1, "", "row_unreadable")


def _no_text(content: bytes) -> Mistake | None:
    try:
        content.decode()
    except UnicodeDecodeError as error:
        return Mistake(content[: error.start].count(b"\n") + 1, "", "not_utf8")
    if b"\0" in content:
        return Mistake(1, "", "not_utf8")
    return None


def _column(cell: str) -> str:
    return "_".join(cell.lower().replace("_", " ").split())


def _wrong_columns(columns: list[str]) -> Iterator[Mistake]:
    valid = ", ".join(COLUMNS)
    for place, column in enumerate(columns):
        if column not in COLUMNS:
            nearest = nearest_name(column[:60], COLUMNS)
            yield Mistake(1, echoed(column), "column_unknown", {"found": echoed(column), "valid": valid}, nearest)
        elif column in columns[:place]:
            yield Mistake(1, column, "column_twice")
    for column in NEEDED:
        if column not in columns:
            yield Mistake(1, column, "column_missing")


def _row(number: int, columns: list[str], cells: list[str]) -> Row | Mistake:
    if len(cells) != len(columns):
        return Mistake(number, "", "cells_wrong", {"found": len(cells), "expected": len(columns)})
    return Row(number, dict(zip(columns, cells, strict=True)))


def written_table(rows: Iterable[Mapping[str, str]]) -> str:
    """The table of these rows, headed. What it holds is read back to the letter by `rows_of_table`."""
    out = io.StringIO()
    writer = csv.writer(out, quoting=csv.QUOTE_ALL)
    writer.writerow(COLUMNS)
    for row in rows:
        writer.writerow([guarded(row.get(column, "")) for column in COLUMNS])
    return out.getvalue()


def guarded(cell: str) -> str:
    """With an apostrophe before what a spreadsheet would take for a formula; a number is none."""
    return f"'{cell}" if _FORMULA.match(cell) and not _NUMBER.fullmatch(cell) else cell


def _unguarded(cell: str) -> str:
    return cell[1:] if _GUARDED.match(cell) else cell
