import io
import tracemalloc

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from assistant.authoring.outcome_import import Import, import_file
from assistant.authoring.outcome_table import COLUMNS, written_table
from assistant.interview.events import OutcomeRecorded
from assistant.store.memory import MemoryStore
from assistant.store.sqlite import SqliteStore
from tests.authoring.visited import CODE, NOW, event_of, keep_session
from tests.interview.told import told

FIRST, SECOND, THIRD = "a1" * 16, "b2" * 16, "c3" * 16
HEADING = "session,result,cause_found,second_cause,part_fitted,minutes,note\n"
SOUND = HEADING + f"{CODE},mended,base_element_open,,base_element,40,it hummed\nb2b2b2b2,no access,,,,,\n"


@pytest.fixture(params=["memory", "sqlite"])
def log(request, tmp_path):
    log = MemoryStore() if request.param == "memory" else SqliteStore(tmp_path / "s.db")
    keep_session(log, FIRST, code=CODE)
    keep_session(log, SECOND)
    keep_session(log, THIRD)
    yield log
    log.close()


@pytest.fixture
def imported(log, knowledge, sentences):
    """What importing a table prints, and its exit status."""

    def imported(text, dry=False):
        out = io.StringIO()
        content = text if isinstance(text, bytes) else text.encode()
        status = Import(log, knowledge, sentences.wording, content).run(NOW, out, dry=dry)
        return status, out.getvalue()

    return imported


def kept(log):
    return {session: [event.happening for event in log.read(session)[2:]] for session in (FIRST, SECOND, THIRD)}


NOTHING = {FIRST: [], SECOND: [], THIRD: []}
BOTH = {
    FIRST: [told()],
    SECOND: [told(result="no_access", causes_found=(), part_fitted=None, minutes=None, text="")],
    THIRD: [],
}


def test_all_rows_are_recorded_as_events_of_an_engineer(imported, log):
    assert imported(SOUND) == (0, "2 outcomes were recorded; none was known before.\n")
    assert kept(log) == BOTH
    assert {event.role for event in log.events_of(OutcomeRecorded)} == {"engineer"}


def test_the_same_table_again_changes_nothing(imported, log):
    imported(SOUND)
    before = [log.read(session) for session in (FIRST, SECOND, THIRD)]
    assert imported(SOUND) == (0, "0 outcomes were recorded; 2 were recorded before and stay as they are.\n")
    assert [log.read(session) for session in (FIRST, SECOND, THIRD)] == before


def test_what_was_replaced_meanwhile_is_not_brought_back_by_the_same_table(imported, log):
    imported(SOUND)
    back = told(result="back_within_30_days", causes_found=())
    log.append(FIRST, 3, [event_of(FIRST, 4, back)])
    imported(SOUND)
    assert kept(log)[FIRST] == [told(), back]


def test_a_note_that_was_erased_is_not_brought_back_by_the_same_table(imported, log):
    imported(SOUND)
    log.erase_text(FIRST)
    imported(SOUND)
    assert kept(log)[FIRST] == [told(text=None)]


def test_a_row_that_says_something_else_replaces_what_was_recorded(imported, log):
    imported(SOUND)
    assert imported(SOUND.replace("40", "45"))[1].startswith("1 outcome was recorded; 1 was recorded before")
    assert kept(log)[FIRST] == [told(), told(minutes=45)]


def test_a_dry_run_says_what_would_be_done_and_does_nothing(imported, log):
    status, text = imported(SOUND, dry=True)
    assert (status, kept(log)) == (0, NOTHING)
    assert text == "2 outcomes would be recorded; none was known before. Nothing is recorded yet.\n"


def test_every_mistake_is_named_by_row_and_column_and_nothing_is_recorded(imported, log):
    rows = (
        f"{FIRST},mended,base_element_open,,,,",
        f"{SECOND},mendet,base_elemnt_open,,nob,soon,",
        "zzzzzzzz,mended,base_element_open,,,,",
        "a1a1a1a1,advised,foil_or_stone_on_floor,shelf_position,,,card 4111 1111 1111 1111",
        ",no_fault_found,base_element_open,,,,",
        f"{THIRD},advised,,shelf_position,,,",
        f"{THIRD},cancelled,,,knob,,",
    )
    status, text = imported(HEADING + "\n".join(rows))
    assert (status, kept(log)) == (1, NOTHING)
    *lines, last = text.splitlines()
    assert last == "13 mistakes. Nothing was recorded."
    assert [line.split(":")[0] for line in lines] == [
        "Row 3, column result",
        "Row 3, column cause_found",
        "Row 3, column part_fitted",
        "Row 3, column minutes",
        "Row 4, column session",
        "Row 5, column session",
        "Row 5, column second_cause",
        "Row 5, column note",
        "Row 6, column session",
        "Row 6, column cause_found",
        "Row 7, column second_cause",
        "Row 8, column session",
        "Row 8, column part_fitted",
    ]
    assert lines[0].endswith("Did you mean “mended”?")
    assert lines[1].endswith("Did you mean “base_element_open”?")
    assert lines[5] == "Row 5, column session: This session stands in row 2 already. Keep the row that is right."
    assert "4111" not in text


def test_one_wrong_row_at_the_end_keeps_all_others_out(imported, log):
    assert imported(SOUND + "c3c3c3c3,mended,,,,,\n")[0] == 1
    assert kept(log) == NOTHING


@pytest.mark.parametrize("encoding", ["cp1252", "utf-16"])
def test_another_encoding_is_a_sentence(imported, log, encoding):
    status, text = imported(SOUND.replace("it hummed", "café").encode(encoding))
    assert (status, kept(log)) == (1, NOTHING)
    assert "This isn't text in UTF-8. Save the table as “CSV UTF-8”.\n1 mistake. Nothing was recorded." in text


def test_the_mark_of_utf_8_and_semicolons_are_taken(imported, log):
    imported(SOUND.replace(",", ";").encode("utf-8-sig"))
    assert kept(log) == BOTH


@pytest.mark.parametrize("dry", [False, True])
def test_a_table_without_rows_is_said_to_have_none(imported, dry):
    nothing = (1, "The table holds no rows, only a heading. Nothing was recorded.\n")
    assert imported(HEADING, dry=dry) == imported(HEADING + ",,,,,,\n", dry=dry) == nothing


@pytest.mark.parametrize("typed", ["a", "c3c3c3c", " c3c3c3c ", CODE[:7]])
def test_a_few_characters_name_no_session_in_a_table(imported, log, typed):
    status, text = imported(HEADING + f"{typed},no access,,,,,\n")
    assert (status, kept(log)) == (1, NOTHING)
    said = f"“{typed.strip()}” is too short to name a session for sure."
    assert text.startswith(f"Row 2, column session: {said} Give its whole code, or at least 8 characters of its id.")


@pytest.mark.parametrize("typed", ["c3c3c3c3", "C3C3C3C3", THIRD])
def test_eight_characters_of_an_id_name_its_session(imported, log, typed):
    assert imported(HEADING + f"{typed},no access,,,,,\n")[0] == 0
    assert len(kept(log)[THIRD]) == 1


def test_a_session_that_is_erased_while_the_table_is_read_keeps_all_of_it_out(imported, log, monkeypatch):
    append_all = log.append_all

    def after_an_erasure(appendings):
        log.erase(SECOND)
        append_all(appendings)

    monkeypatch.setattr(log, "append_all", after_an_erasure)
    status, text = imported(SOUND)
    assert (status, text) == (
        1,
        "Sessions were changed or erased while the table was read. Nothing was recorded; please do it again.\n",
    )
    assert log.events_of(OutcomeRecorded) == ()


def test_somebody_who_goes_on_answering_meanwhile_is_in_nobodys_way(imported, log, monkeypatch):
    append_all = log.append_all

    def after_an_answer(appendings):
        log.append(FIRST, 2, [event_of(FIRST, 3, told(minutes=1))])
        append_all(appendings)

    monkeypatch.setattr(log, "append_all", after_an_answer)
    assert imported(SOUND)[0] == 0
    assert kept(log)[FIRST] == [told(minutes=1), told()]


def test_formulas_in_a_note_are_kept_as_they_were_typed(imported, log):
    imported(HEADING + f"""{FIRST},mended,base_element_open,,base_element,40,"'=HYPERLINK(""x"")"\n""")
    assert kept(log)[FIRST] == [told(text='=HYPERLINK("x")')]


HOSTILE = some.text(alphabet="a'\"=@+-,;\n\r\t\0\x1b\u202eé\ud83d\udd25 1", max_size=10)
WORDS = some.one_of(
    HOSTILE, some.sampled_from([FIRST, SECOND[:8], "a1", "mended", "no_access", "base_element_open", "40", ""])
)


@settings(max_examples=150, deadline=None)
@given(some.lists(some.fixed_dictionaries(dict.fromkeys(COLUMNS, WORDS)), max_size=4))
def test_whatever_stands_in_the_cells_all_is_recorded_or_nothing(knowledge, sentences, rows):
    log, out = MemoryStore(), io.StringIO()
    for session in (FIRST, SECOND):
        keep_session(log, session)
    content = written_table(rows).encode("utf-8", "replace")
    status = Import(log, knowledge, sentences.wording, content).run(NOW, out, dry=False)
    recorded = len(log.events_of(OutcomeRecorded))
    whole = [row for row in rows if any(cell.strip() for cell in row.values())]
    assert recorded == (len(whole) if status == 0 else 0)
    *mistakes, _ = out.getvalue().splitlines()
    assert all(line.startswith("Row ") and line.isprintable() for line in mistakes)
    again = Import(log, knowledge, sentences.wording, content).run(NOW, io.StringIO(), dry=False)
    assert (again, len(log.events_of(OutcomeRecorded))) == (status, recorded)


def test_memory_grows_no_more_than_the_table(tmp_path, knowledge, sentences):
    """Beyond the table itself and each session's row number: a few hundred bytes a row would be rows that are kept."""
    log = SqliteStore(tmp_path / "s.db")
    ids = [f"{number:032x}" for number in range(600)]
    for session in ids:
        keep_session(log, session)
    peaks = []
    for count in (100, 600):
        rows = "".join(f"{session},mended,base_element_open,,,,{'x' * 400}\n" for session in ids[:count])
        content = (HEADING + rows).encode()
        tracemalloc.start()
        assert Import(log, knowledge, sentences.wording, content).run(NOW, io.StringIO(), dry=False) == 0
        peaks.append(tracemalloc.get_traced_memory()[1] - 2 * len(content))
        tracemalloc.stop()
    log.close()
    assert peaks[1] - peaks[0] < 500 * 300


def test_a_file_that_can_not_be_read_or_is_too_large_is_a_sentence(log, knowledge, sentences, tmp_path, monkeypatch):
    def said(file):
        out = io.StringIO()
        return import_file(file, log, knowledge, sentences.wording, NOW, out, dry=False), out.getvalue()

    assert said(tmp_path / "none.csv") == (1, f"{tmp_path / 'none.csv'} can't be read: No such file or directory.\n")
    (tmp_path / "o.csv").write_text(SOUND)
    assert said(tmp_path / "o.csv")[0] == 0
    monkeypatch.setattr("assistant.authoring.outcome_import.MOST_BYTES", 1024 * 1024)
    (tmp_path / "large.csv").write_text("x" * (1024 * 1024 + 1))
    assert said(tmp_path / "large.csv") == (1, f"{tmp_path / 'large.csv'} is larger than 1 megabytes.\n")
