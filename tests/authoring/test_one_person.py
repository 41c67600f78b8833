"""What is kept of one person."""

import json
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from assistant import cli
from assistant.authoring import one_person
from assistant.errors import SessionUnknown
from assistant.interview.log import EventLog
from assistant.store import open_store
from tests.store.samples import event, started, text_event


@pytest.fixture(params=["memory:", "sessions.db"])
def log(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[EventLog]:
    with closing(open_store(request.param if request.param == "memory:" else str(tmp_path / request.param))) as opened:
        yield opened


def told(log: EventLog, *texts: str, **changes: str) -> str:
    session_id = started(log, **changes).session_id
    log.append(session_id, 1, [text_event(session_id, number, text) for number, text in enumerate(texts, start=2)])
    return session_id


@pytest.mark.parametrize(
    "sought",
    ["01632 960 147", "(01632) 960147", "+44 1632 960147", "0044 1632 960147", "Wren", "wren OLIVE", "Élodie's"],
)
def test_a_person_is_found_by_number_or_words_in_any_spelling(log: EventLog, sought: str) -> None:
    theirs = told(log, "Olive Wren, or Elodie\u2019s neighbour", "ring 01632-960147 after six")
    told(log, "Olive Wray", "01632 960148")
    assert one_person.sessions_about(log, sought.replace("'", "\u2019")) == [theirs]


def test_every_word_has_to_be_told_in_the_same_session(log: EventLog) -> None:
    told(log, "Olive")
    told(log, "Wren")
    both = told(log, "Olive", "it hums", "Wren")
    assert one_person.sessions_about(log, "olive wren") == [both]


@pytest.mark.parametrize("sought", ["", "   ", "12", "ive", "%", "_", "01632 9"])
def test_pieces_and_marks_find_nobody(log: EventLog, sought: str) -> None:
    told(log, "Olive Wren", "01632 960147")
    assert one_person.sessions_about(log, sought) == []


def test_a_clients_own_name_for_a_session_counts_too(log: EventLog) -> None:
    named = told(log, "it hums", name="customer 41")
    assert one_person.sessions_about(log, "customer 41") == [named]


def test_texts_are_gathered_over_more_than_one_page(log: EventLog, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(one_person, "PAGE", 2)
    theirs = sorted(told(log, "one", "two", "Olive", "four", "Wren") for _ in range(3))
    assert one_person.sessions_about(log, "wren olive") == theirs


def test_the_copy_holds_everything_that_was_told_and_no_code(log: EventLog) -> None:
    session = started(log)
    log.append(session.session_id, 1, [text_event(session.session_id, 2, "Ö\u202e"), event(session.session_id, 3)])
    copy = json.loads(one_person.told_of_person(log, [session.session_id]))
    [kept] = copy["sessions"]
    assert [entry["type"] for entry in kept["entries"]] == ["SessionStarted", "TextAnswered", "QuestionAnswered"]
    assert kept["entries"][1]["text"] == "Ö\u202e"
    assert kept["entries"][2]["told"]["value"] == 3.0
    assert session.code_hash not in json.dumps(copy)


def test_from_the_command_line_they_are_listed_copied_and_forgotten(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    place, copy = tmp_path / "s.db", tmp_path / "copy.json"
    kept = open_store(str(place))
    theirs, other = told(kept, "Olive Wren"), told(kept, "Ash Tern")
    words = ["sessions", "person", "Olive", "Wren", "--store", str(place)]
    assert cli.run(words) == 0
    assert theirs[:8] in (listed := capsys.readouterr().out)
    assert other[:8] not in listed
    assert cli.run([*words, "--copy", str(copy)]) == 0
    assert copy.stat().st_mode & 0o077 == 0
    assert "Olive Wren" in copy.read_text("utf-8")
    assert cli.run([*words, "--erase"]) == 0
    with pytest.raises(SessionUnknown):
        kept.read(theirs)
    assert kept.last_sequence(other) == 2
    assert cli.run(words) == 1
    kept.close()
    assert b"Olive" not in b"".join(each.read_bytes() for each in place.parent.glob("s.db*"))
