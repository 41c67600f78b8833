"""What is kept of one person."""

import io
import json
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from assistant import cli
from assistant.authoring import one_person
from assistant.errors import SessionUnknown, StoreUnreadable
from assistant.interview.log import EventLog
from assistant.store import open_store
from assistant.wording.sentences import Sentences
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


NUMBER = "01632 960147"


@pytest.mark.parametrize(
    "text",
    [
        "01632 960147 / 01632 960148",
        "01632 960147 6-8 pm",
        "01632 960147 1st floor",
        "it is 12, or ring 01632 960147",
        "01632\u00a0960147",
        "01632\u2011960\u2011147",
        "01632\u200b960147",
        "01632 / 96.01:47",
        "\uff10\uff11\uff16\uff13\uff12 \uff19\uff16\uff10\uff11\uff14\uff17",
        "\u0660\u0661\u0666\u0663\u0662 \u0669\u0666\u0660\u0661\u0664\u0667",
        "+44 (0)1632 960147.",
        "no 01632960147x2",
    ],
)
@pytest.mark.parametrize("sought", [NUMBER, "+44 1632 960\u00a0147", "\uff10\uff11\uff16\uff13\uff12960147", "960147"])
def test_a_number_is_found_whatever_stands_between_its_digits_and_behind_them(
    log: EventLog, text: str, sought: str
) -> None:
    theirs = told(log, text)
    assert one_person.sessions_about(log, sought) == [theirs]


@pytest.mark.parametrize("text", ["01632 960148", "01632 9601471", "01632 960 a 147", "0163", "01632", "960", "147"])
def test_other_numbers_are_nobodys(log: EventLog, text: str) -> None:
    told(log, text)
    assert one_person.sessions_about(log, NUMBER) == []


def test_the_two_halves_of_a_number_in_two_texts_are_no_number(log: EventLog) -> None:
    told(log, "01632", "960147")
    assert one_person.sessions_about(log, NUMBER) == []


def test_a_name_and_a_number_both_have_to_be_told(log: EventLog) -> None:
    told(log, "Wren")
    told(log, "Wray, 01632-960147")
    theirs = told(log, "ring Wren", "at 01632-960147")
    assert one_person.sessions_about(log, f"wren {NUMBER}") == [theirs]


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


@pytest.mark.parametrize("sought", ["olive wren", "WREN", "kitchen Olive", "01632 960147", "!"])
def test_a_clients_own_name_is_found_by_its_words_and_its_number(log: EventLog, sought: str) -> None:
    named = told(log, "it hums", name="!" if sought == "!" else "Olive Wren kitchen 01632-960147")
    told(log, "it hums", name="Olive-Ann Wr\u00e9n's")
    assert named in one_person.sessions_about(log, sought)


def test_words_may_stand_partly_in_the_name_and_partly_in_the_texts(log: EventLog) -> None:
    theirs = told(log, "speak to Olive", name="wren")
    told(log, "Olive", name="wr")
    assert one_person.sessions_about(log, "Olive Wren") == [theirs]


def test_of_names_no_piece_of_a_word_counts(log: EventLog) -> None:
    told(log, "it hums", name="Olive Wren")
    assert one_person.sessions_about(log, "wre") == []


def test_names_are_gathered_over_more_than_one_page(log: EventLog, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(one_person, "PAGE", 2)
    theirs = sorted(told(log, "one", "two", "three", name=f"Wren {number}") for number in range(5))
    assert one_person.sessions_about(log, "wren") == theirs


def test_where_traces_are_left_of_one_the_others_are_erased_too(
    log: EventLog, sentences: Sentences, monkeypatch: pytest.MonkeyPatch
) -> None:
    ids, out = [told(log, "Olive") for _ in range(3)], io.StringIO()
    erase = log.erase

    def erase_with_traces(session_id: str) -> None:
        erase(session_id)
        raise StoreUnreadable("somewhere", "traces_left", "locked")

    monkeypatch.setattr(log, "erase", erase_with_traces)
    with pytest.raises(StoreUnreadable, match="traces_left"):
        one_person.erase_all(log, ids, sentences.wording, out, 8)
    assert log.ids_after("", 9) == []
    assert "3 sessions were erased." in out.getvalue()


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
