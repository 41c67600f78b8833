"""Where a chat is read and written: a terminal with line editing, or plain streams."""

import os
import sys
from collections.abc import Sequence
from typing import Protocol, TextIO

from assistant.chat.screen import Paragraph, wants_colour, write

PROMPT = "> "


class Terminal(Protocol):
    @property
    def plain(self) -> bool:
        """Whether it is read line by line: by a pipe, or by a reader of screens."""

    def write(self, paragraphs: Sequence[Paragraph]) -> None:
        """Write and let it be seen at once."""

    def ask(self, completions: Sequence[str]) -> str:
        """One typed line. Raises EOFError (Ctrl-D, end of input) and KeyboardInterrupt (Ctrl-C)."""


class PlainTerminal:
    """No cursor movement, no colour: for pipes and screen readers."""

    plain = True

    def __init__(self, lines_in: TextIO, lines_out: TextIO) -> None:
        self._in = lines_in
        self._out = lines_out

    def write(self, paragraphs: Sequence[Paragraph]) -> None:
        write(self._out, paragraphs, colour=False)

    def ask(self, completions: Sequence[str]) -> str:
        self._out.write(PROMPT)
        self._out.flush()
        line = self._in.readline()
        if not line:
            self._out.write("\n")
            raise EOFError
        return line.rstrip("\n")


class EditingTerminal:
    """Line editing, history within the chat and completion, by prompt_toolkit."""

    plain = False

    def __init__(self) -> None:
        from prompt_toolkit import PromptSession

        self._session: PromptSession[str] = PromptSession()
        self._colour = wants_colour(sys.stdout, os.environ)

    def write(self, paragraphs: Sequence[Paragraph]) -> None:
        write(sys.stdout, paragraphs, colour=self._colour)

    def ask(self, completions: Sequence[str]) -> str:
        from prompt_toolkit.completion import WordCompleter
        from prompt_toolkit.shortcuts import CompleteStyle

        completer = WordCompleter(list(completions), ignore_case=True, sentence=True)
        return self._session.prompt(
            PROMPT,
            completer=completer,
            complete_while_typing=False,
            complete_style=CompleteStyle.READLINE_LIKE,
            reserve_space_for_menu=0,
        )


def terminal_for(*, plain: bool) -> Terminal:
    """Line editing where a person types into a terminal that can do it; plain streams otherwise."""
    capable = sys.stdin.isatty() and sys.stdout.isatty() and os.environ.get("TERM", "dumb") != "dumb"
    return EditingTerminal() if capable and not plain else PlainTerminal(sys.stdin, sys.stdout)
