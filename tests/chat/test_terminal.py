"""The chat through real line editing, and through plain streams."""

import io
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Event

import pytest
from prompt_toolkit.application import create_app_session
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.input.base import PipeInput
from prompt_toolkit.output import DummyOutput

from assistant.chat.alarm import Alarm
from assistant.chat.terminal import EditingTerminal, PlainTerminal
from assistant.reports.screen import Paragraph, laid_out, wants_colour, without_controls, write


@contextmanager
def typing(text: str) -> Iterator[EditingTerminal]:
    """A terminal into which that text is typed; always ends in Enter."""
    with create_pipe_input() as keys, create_app_session(input=keys, output=DummyOutput()):
        keys.send_text(text + "\r")
        yield EditingTerminal()


def test_a_line_is_read() -> None:
    with typing("pale underneath") as terminal:
        assert terminal.ask(["Pale underneath"]) == "pale underneath"


def test_tab_completes_a_choice() -> None:
    with typing("An el\t") as terminal:
        assert terminal.ask(["An electric oven", "A gas oven"]) == "An electric oven"


def test_typing_errors_can_be_corrected() -> None:
    with typing("pael\x7f\x7fle") as terminal:
        assert terminal.ask([]) == "pale"


@pytest.mark.parametrize(("key", "error"), [("\x03", KeyboardInterrupt), ("\x04", EOFError)])
def test_ctrl_c_and_ctrl_d_leave(key: str, error: type[BaseException]) -> None:
    with typing(key) as terminal, pytest.raises(error):
        terminal.ask([])


class _RingingOutput(DummyOutput):
    """Counts the bells, and types the rest of the line when one rings: so no test waits for a time."""

    def __init__(self, keys: PipeInput, rest: str) -> None:
        self._keys, self._rest = keys, rest
        self.bells = 0

    def bell(self) -> None:
        self.bells += 1
        self._keys.send_text(self._rest)


def _alarm(*, due: bool = True) -> Alarm:
    return Alarm(lambda: due, (Paragraph("The time is up.", "danger"),))


def test_an_alarm_rings_above_the_line_that_is_being_typed(capsys: pytest.CaptureFixture[str]) -> None:
    with create_pipe_input() as keys:
        output = _RingingOutput(keys, " out\r")
        with create_app_session(input=keys, output=output):
            keys.send_text("9:10")
            alarm = _alarm()
            assert EditingTerminal().ask([], alarm) == "9:10 out"
    assert output.bells == 1
    assert alarm.rung
    assert capsys.readouterr().out == "The time is up.\n"


def test_an_alarm_that_rang_is_quiet(capsys: pytest.CaptureFixture[str]) -> None:
    alarm = _alarm()
    alarm.rung = True
    with typing("out") as terminal:
        assert terminal.ask([], alarm) == "out"
    assert capsys.readouterr().out == ""


def test_an_alarm_that_is_not_due_lets_the_line_through(capsys: pytest.CaptureFixture[str]) -> None:
    with typing("out") as terminal:
        assert terminal.ask([], _alarm(due=False)) == "out"
    assert capsys.readouterr().out == ""


class _Heard(io.StringIO):
    """A plain screen that tells when a second prompt stands there."""

    def __init__(self, *, terminal: bool) -> None:
        super().__init__()
        self._terminal = terminal
        self.prompted_again = Event()

    def isatty(self) -> bool:
        return self._terminal

    def write(self, text: str) -> int:
        written = super().write(text)
        if self.getvalue().count("> ") > 1:
            self.prompted_again.set()
        return written


class _Patient(io.StringIO):
    """Types its line once the alarm has rung."""

    def __init__(self, line: str, rung: Event) -> None:
        super().__init__(line)
        self._rung = rung

    def readline(self, size: int | None = -1, /) -> str:
        assert self._rung.wait(60)
        return super().readline(-1 if size is None else size)


@pytest.mark.parametrize(("terminal", "bell"), [(True, "\a"), (False, "")])
def test_on_plain_streams_an_alarm_rings_while_a_line_is_awaited(terminal: bool, bell: str) -> None:
    out = _Heard(terminal=terminal)
    lines_in = _Patient("out\n", out.prompted_again)
    assert PlainTerminal(lines_in, out).ask([], _alarm()) == "out"
    assert out.getvalue() == f"> {bell}\nThe time is up.\n> "


def test_on_plain_streams_an_alarm_that_is_not_due_writes_nothing() -> None:
    out = io.StringIO()
    assert PlainTerminal(io.StringIO("out\n"), out).ask([], _alarm(due=False)) == "out"
    assert out.getvalue() == "> "


def test_plain_streams_show_no_escape_and_end_politely() -> None:
    out = io.StringIO()
    terminal = PlainTerminal(io.StringIO("one\ntwo"), out)
    terminal.write([Paragraph("Stop.", "danger")])
    assert [terminal.ask([]), terminal.ask([])] == ["one", "two"]
    with pytest.raises(EOFError):
        terminal.ask([])
    assert "\x1b" not in out.getvalue()
    assert out.getvalue().startswith("Stop.\n> ")


class _Screen(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(
    ("environment", "colour"), [({"TERM": "xterm"}, True), ({"NO_COLOR": "1"}, False), ({"TERM": "dumb"}, False)]
)
def test_colour_is_shown_only_where_it_is_wanted(environment: dict[str, str], colour: bool) -> None:
    assert wants_colour(_Screen(), environment) is colour
    assert wants_colour(io.StringIO(), environment) is False


def test_text_is_cut_to_the_width_and_set_in_under_its_number() -> None:
    lines = [line for _, line in laid_out([Paragraph("word " * 30, label="  12  ")], 40)]
    assert max(map(len, lines)) <= 40
    assert lines[0].startswith("  12  word")
    assert all(line.startswith("      word") for line in lines[1:])


def test_controls_and_direction_marks_are_shown_as_boxes() -> None:
    assert without_controls("a\x1b[31mb\u202ec\r\x9b") == "a�[31mb�c��"


def test_colours_are_switched_off_again() -> None:
    out = io.StringIO()
    write(out, [Paragraph("Stop.", "danger"), Paragraph("calm")], colour=True, width=40)
    assert out.getvalue() == "\x1b[1;31mStop.\x1b[0m\ncalm\n"
