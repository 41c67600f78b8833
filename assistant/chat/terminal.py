"""Where a chat is read and written: a terminal with line editing, or plain streams."""

import asyncio
import os
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from functools import partial
from threading import Event, Thread
from typing import Protocol, TextIO

from assistant.chat.alarm import LOOK_EVERY_S, Alarm
from assistant.reports.screen import Paragraph, wants_colour, write

PROMPT = "> "
BELL = "\a"


class Terminal(Protocol):
    @property
    def plain(self) -> bool:
        """Whether it is read line by line: by a pipe, or by a reader of screens."""

    def write(self, paragraphs: Sequence[Paragraph]) -> None:
        """Write and let it be seen at once."""

    def ask(self, completions: Sequence[str], alarm: Alarm | None = None) -> str:
        """One typed line. Raises EOFError (Ctrl-D, end of input) and KeyboardInterrupt (Ctrl-C).

        If the alarm is due before the line is there, it rings, and what is being typed stays.
        """


class PlainTerminal:
    """No cursor movement, no colour: for pipes and screen readers."""

    plain = True

    def __init__(self, lines_in: TextIO, lines_out: TextIO) -> None:
        self._in = lines_in
        self._out = lines_out

    def write(self, paragraphs: Sequence[Paragraph]) -> None:
        write(self._out, paragraphs, colour=False)

    def ask(self, completions: Sequence[str], alarm: Alarm | None = None) -> str:
        self._prompt()
        with self._rings(alarm):
            line = self._in.readline()
        if not line:
            self._out.write("\n")
            raise EOFError
        return line.rstrip("\n")

    def _prompt(self) -> None:
        self._out.write(PROMPT)
        self._out.flush()

    @contextmanager
    def _rings(self, alarm: Alarm | None) -> Iterator[None]:
        """Meanwhile the alarm may ring; nothing is written by it afterwards."""
        enough, begun = Event(), None
        try:
            if alarm is not None:
                thread = Thread(target=self._ring_when_due, args=(alarm, enough), daemon=True)
                thread.start()
                begun = thread  # not before: Ctrl-C may come while it starts, and then it can't be joined
            yield
        finally:
            enough.set()
            if begun is not None:
                begun.join()

    def _ring_when_due(self, alarm: Alarm, enough: Event) -> None:
        while not enough.is_set():
            if alarm.should_ring:
                with suppress(OSError):  # nobody reads any more; whoever writes next says so
                    self._ring(alarm)
                return
            enough.wait(LOOK_EVERY_S)

    def _ring(self, alarm: Alarm) -> None:
        """On lines of its own, with a new prompt: the machine keeps what was typed so far."""
        alarm.rung = True
        self._out.write(f"{BELL}\n" if self._out.isatty() else "\n")
        self.write(alarm.said)
        self._prompt()


class EditingTerminal:
    """Line editing, history within the chat and completion, by prompt_toolkit."""

    plain = False

    def __init__(self) -> None:
        from prompt_toolkit import PromptSession
        from prompt_toolkit.key_binding import KeyBindings
        from prompt_toolkit.keys import Keys

        keys = KeyBindings()

        @keys.add(Keys.Vt100MouseEvent)
        def _(event: object) -> None:
            """Nothing here is done by mouse, and colours that are pasted look like one."""

        self._session: PromptSession[str] = PromptSession(key_bindings=keys)
        self._colour = wants_colour(sys.stdout, os.environ)

    def write(self, paragraphs: Sequence[Paragraph]) -> None:
        write(sys.stdout, paragraphs, colour=self._colour)

    def ask(self, completions: Sequence[str], alarm: Alarm | None = None) -> str:
        from prompt_toolkit.completion import WordCompleter
        from prompt_toolkit.shortcuts import CompleteStyle

        completer = WordCompleter(list(completions), ignore_case=True, sentence=True)
        return self._session.prompt(
            PROMPT,
            completer=completer,
            complete_while_typing=False,
            complete_style=CompleteStyle.READLINE_LIKE,
            reserve_space_for_menu=0,
            pre_run=partial(self._ring_later, alarm) if alarm is not None else None,
        )

    def _ring_later(self, alarm: Alarm) -> None:
        from prompt_toolkit.application import get_app

        get_app().create_background_task(self._ring_when_due(alarm))

    async def _ring_when_due(self, alarm: Alarm) -> None:
        """Above the prompt, which is drawn anew with what is being typed. Ends with the prompt."""
        from prompt_toolkit.application import run_in_terminal

        while not alarm.rung:
            if alarm.should_ring:
                await run_in_terminal(partial(self._ring, alarm))
            else:
                await asyncio.sleep(LOOK_EVERY_S)

    def _ring(self, alarm: Alarm) -> None:
        from prompt_toolkit.application import get_app

        alarm.rung = True
        output = get_app().output
        output.bell()
        output.flush()
        self.write(alarm.said)


def terminal_for(*, plain: bool) -> Terminal:
    """Line editing where a person types into a terminal that can do it; plain streams otherwise."""
    capable = sys.stdin.isatty() and sys.stdout.isatty() and os.environ.get("TERM", "dumb") != "dumb"
    return EditingTerminal() if capable and not plain else PlainTerminal(sys.stdin, sys.stdout)
