import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as some

from assistant.authoring.outcome_table import COLUMNS, Mistake, Row, guarded, rows_of_table, written_table

HEADING = "session,result,note\n"


def read(text, encoding="utf-8"):
    return list(rows_of_table(text.encode(encoding)))


def codes(content):
    return [(found.row, found.column, found.code) for found in rows_of_table(content) if isinstance(found, Mistake)]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig"])
@pytest.mark.parametrize("comma", [",", ";"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_a_table_is_read_with_commas_or_semicolons_and_with_or_without_a_mark(encoding, comma, end):
    text = f'Session{comma}RESULT{comma} Cause found {end}a1{comma}mended{comma}"x{comma}y;z"{end}'
    assert read(text, encoding) == [Row(2, {"session": "a1", "result": "mended", "cause_found": f"x{comma}y;z"})]


def test_empty_rows_are_passed_over_and_counted():
    assert [row.number for row in read(HEADING + "a,b,c\n\n , ,\nd,e,f\n")] == [2, 5]


def test_a_cell_may_hold_several_lines_and_counts_as_one_row():
    first, second = read(HEADING + 'a,b,"one\r\ntwo ""three"""\nd,e,f')
    assert first.cells["note"] == 'one\r\ntwo "three"'
    assert second.number == 3


@pytest.mark.parametrize(
    ("content", "found"),
    [
        (b"", [(1, "session", "column_missing"), (1, "result", "column_missing")]),
        (b"session,result,notes\na,b,c\n", [(1, "notes", "column_unknown")]),
        (b"session,result,session\n", [(1, "session", "column_twice")]),
        (b"session,note\n", [(1, "result", "column_missing")]),
        (
            b"session\tresult\na\tb\n",
            [
                (1, "session_result", "column_unknown"),
                (1, "session", "column_missing"),
                (1, "result", "column_missing"),
            ],
        ),
        (b"session,result\na\n", [(2, "", "cells_wrong")]),
        (b"session,result\na,b,c\nd,e\n", [(2, "", "cells_wrong")]),
        (b'session,result\na,"b\n', [(2, "", "row_unreadable")]),
        (b'session,result\na,b\nc,"d"e\n', [(3, "", "row_unreadable")]),
        (b"session,result\na," + b"x" * 140_000 + b"\n", [(2, "", "row_unreadable")]),
        ("session,result,note\na,b,café\n".encode("cp1252"), [(2, "", "not_utf8")]),
        ("session,result\na,b\n".encode("utf-16"), [(1, "", "not_utf8")]),
        ("session,result\na,b\n".encode("utf-16-le"), [(1, "", "not_utf8")]),
        (b"\x89PNG\r\n\x1a\n\0\0\0", [(1, "", "not_utf8")]),
    ],
)
def test_what_is_no_such_table_is_named_by_row_and_column(content, found):
    assert codes(content) == found


def test_the_nearest_column_is_named():
    (mistake,) = [each for each in read("session,result,minuets\n") if isinstance(each, Mistake)]
    assert mistake.nearest == "minutes"


@pytest.mark.parametrize("cell", ["=1+1", "+cmd", "-2+3", "@sum", "\t=1", "\r=1", "'=1", "''@x", "=", "-"])
def test_what_a_spreadsheet_takes_for_a_formula_gets_an_apostrophe(cell):
    assert guarded(cell) == f"'{cell}"


@pytest.mark.parametrize("cell", ["", "it hums", "45", "-5", "+2.5", "-0,5", "'tis", "a=b", " =1"])
def test_numbers_and_other_text_stay_as_they_are(cell):
    assert guarded(cell) == cell


@given(
    some.lists(some.fixed_dictionaries(dict.fromkeys(COLUMNS, some.text(alphabet="ab=+-@'\t\r\n\",;é1 ", max_size=8))))
)
def test_every_table_is_read_back_to_the_letter_and_holds_no_formula(rows):
    written = written_table(rows)
    kept = [row for row in rows if any(cell.strip() for cell in row.values())]
    assert [row.cells for row in rows_of_table(written.encode("utf-8-sig"))] == kept
    for cells in csv.reader(io.StringIO(written, newline="")):
        assert not any(cell.startswith(("=", "@", "\t", "\r")) for cell in cells)
        assert all(cell[1:].replace(",", ".", 1).replace(".", "", 1).isdigit() for cell in cells if cell[:1] in {*"+-"})


@given(some.binary(max_size=300))
def test_whatever_the_bytes_are_there_are_rows_or_mistakes(content):
    for found in rows_of_table(content):
        assert isinstance(found, Row | Mistake)


@given(some.text(alphabet='session,result;"\n\r =\0é', max_size=60))
def test_whatever_the_text_is_after_a_sound_heading_every_row_is_whole(text):
    for found in rows_of_table(("session,result\n" + text).encode()):
        assert isinstance(found, Mistake) or set(found.cells) == {"session", "result"}
