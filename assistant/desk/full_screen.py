"""The desk on the whole screen, by keyboard alone."""

import asyncio
import contextlib
from typing import Any

from prompt_toolkit.application import Application
from prompt_toolkit.buffer import Buffer
from prompt_toolkit.filters import Condition
from prompt_toolkit.formatted_text import StyleAndTextTuples
from prompt_toolkit.input import Input
from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
from prompt_toolkit.key_binding.key_processor import KeyPress
from prompt_toolkit.keys import Keys
from prompt_toolkit.layout import BufferControl, FormattedTextControl, HSplit, Layout, VSplit, Window
from prompt_toolkit.output import Output
from prompt_toolkit.styles import Style as Colours

from assistant.desk import panels
from assistant.desk.call import Call
from assistant.desk.desk import Desk, Left
from assistant.desk.layout import Laid, laid_desk
from assistant.desk.words import MARK, Word, spelled
from assistant.errors import StoreUnreadable
from assistant.reports.screen import Paragraph, without_controls

KEYS: dict[str, Word] = {
    "f2": "find",
    "f3": "view",
    "f4": "note",
    "f5": "change",
    "f6": "park",
    "f7": "calls",
    "f8": "code",
    "f9": "why",
}
TYPED_ON = ("find", "note", "change")
"""What wants more than the word: it is put before what is typed already."""
BEFORE_THINKING_S = 0.2
"""A fast typist isn't held up."""
LOOKS_EVERY_S = 3.0
"""While nobody types, for what somebody else told of the same call."""
BELOW = 2
"""Rows for the line that is typed and for the keys."""


class FullScreen:
    """One desk on one terminal. What was typed and couldn't be done isn't lost: it stands there again."""

    def __init__(self, desk: Desk, *, colour: bool, read: Input | None = None, write: Output | None = None) -> None:
        self._desk = desk
        self._scrolled = 0
        self._lines = 0
        self._stays = False
        self._thinking: asyncio.Task[None] | None = None
        self._kept: tuple[tuple[int, ...], Laid] | None = None
        self._typed = Buffer(multiline=False, accept_handler=self._accept)
        self._application: Application[None] = Application(
            layout=Layout(self._window()),
            key_bindings=self._keys(),
            style=Colours.from_dict({"strong": "bold", "danger": "bold ansired" if colour else "bold", "quiet": ""}),
            full_screen=True,
            input=read,
            output=write,
        )

    def run(self) -> None:
        self._application.run(pre_run=self._think)

    def _window(self) -> HSplit:
        prompt = Window(FormattedTextControl([("class:strong", "> ")]), width=2, height=1)
        return HSplit(
            [
                Window(FormattedTextControl(self._body, focusable=False), wrap_lines=False),
                VSplit([prompt, Window(BufferControl(self._typed), height=1)]),
                Window(FormattedTextControl(self._hint), height=1),
            ]
        )

    def _laid(self) -> Laid:
        """Anew only after a line was taken, the side was looked up, or the terminal has another size."""
        size = self._application.output.get_size()
        key = (size.columns, size.rows, self._scrolled, self._lines)
        if self._kept is None or self._kept[0] != key:
            self._kept = key, laid_desk(self._desk, size.columns, size.rows - BELOW, self._scrolled)
        return self._kept[1]

    def _body(self) -> StyleAndTextTuples:
        pieces: StyleAndTextTuples = []
        for row in self._laid().rows:
            pieces += [(f"class:{style}", without_controls(text)) for style, text in row]
            pieces.append(("", "\n"))
        return pieces[:-1]

    def _hint(self) -> StyleAndTextTuples:
        say = self._desk.own.wording.say
        keys = [f"{key.upper()} {spelled(word, self._desk.own.wording)}" for key, word in KEYS.items()]
        laid = self._laid()
        more = say("desk-more", above=laid.above, below=laid.below) + " " if laid.above or laid.below else ""
        if self._stays and self._typed.text:
            keys = [say("desk-line_stays")]
        while len(keys) > 1 and len(more) + len(" ".join(keys)) > self._application.output.get_size().columns:
            keys.pop()
        return [("class:quiet", more + " ".join(keys))]

    def _accept(self, typed: Buffer) -> bool:
        """Whether what was typed is to stay, to be put right or replaced."""
        self._take(typed.text)
        self._stays = any(notice.line_stays for notice in self._desk.notices)
        return self._stays

    def _take(self, line: str) -> None:
        before = self._to_do()
        self._lines += 1
        try:
            self._desk.take(line)
        except Left:
            self._application.exit()
        if not before or before != self._to_do():
            self._scrolled = 0
        self._think()

    def _to_do(self) -> list[Paragraph]:
        """The steps that are being read out: whoever is in the middle of them stays there."""
        return panels.to_do(self._desk.call) if self._desk.call is not None else []

    def _think(self) -> None:
        """While nobody types; what was thought of for an earlier line is let go."""
        if self._thinking is not None:
            self._thinking.cancel()
        call = self._desk.call
        if call is not None and self._application.is_running:
            self._thinking = self._application.create_background_task(self._think_of(call))

    async def _think_of(self, call: Call) -> None:
        await asyncio.sleep(BEFORE_THINKING_S)
        for step, _ in enumerate(call.thinking()):
            if step == 0:
                self._show_anew()
            await asyncio.sleep(0)
        with contextlib.suppress(StoreUnreadable):  # it is said with the next line, which has to wait for it anyway
            while True:
                await asyncio.sleep(LOOKS_EVERY_S)
                if await asyncio.to_thread(call.is_behind) and self._desk.look_again():
                    self._show_anew()

    def _show_anew(self) -> None:
        self._lines += 1
        self._application.invalidate()

    def _keys(self) -> KeyBindings:
        keys = KeyBindings()
        for key, word in KEYS.items():
            keys.add(key)(self._press(word))

        @keys.add("pageup")
        def _(event: KeyPressEvent) -> None:
            self._scrolled = min(self._scrolled + 8, self._scrolled + self._laid().above)

        @keys.add("pagedown")
        def _(event: KeyPressEvent) -> None:
            self._scrolled = self._scrolled - min(8, self._laid().below)

        stays = Condition(lambda: self._stays and bool(self._typed.text))

        @keys.add(Keys.Any, filter=stays)
        def _(event: KeyPressEvent) -> None:
            """Begins anew."""
            self._stays = False
            self._typed.reset()
            self._typed.insert_text(event.data)

        @keys.add("left", filter=stays)
        @keys.add("home", filter=stays)
        @keys.add("end", filter=stays)
        @keys.add("backspace", filter=stays)
        def _(event: KeyPressEvent) -> None:
            """Puts it right."""
            self._stays = False
            event.app.key_processor.feed(KeyPress(event.key_sequence[0].key, event.data), first=True)

        @keys.add(Keys.Vt100MouseEvent)
        def _(event: KeyPressEvent) -> None:
            """Nothing here is done by mouse, and what is pasted may look like one."""

        @keys.add("c-c")
        def _(event: KeyPressEvent) -> None:
            """Lets go of what is being typed; where nothing is, leaves."""
            if self._typed.text:
                self._typed.reset()
            else:
                self._do("leave")

        @keys.add("c-d")
        def _(event: KeyPressEvent) -> None:
            self._do("leave")

        return keys

    def _press(self, word: Word) -> Any:
        def pressed(event: KeyPressEvent) -> None:
            if word in TYPED_ON:
                self._stays = False
                self._typed.text = f"{MARK}{spelled(word, self._desk.own.wording)} {self._typed.text}"
                self._typed.cursor_position = len(self._typed.text)
            else:
                self._do(word)

        return pressed

    def _do(self, word: Word) -> None:
        """Without touching what is being typed."""
        self._take(MARK + spelled(word, self._desk.own.wording))
