"""Fluent's text -> its messages, as the library's own parser reads them, but a stretch at a time.

The library looks at each character several times, which took longer than all else when the program starts.
"""

import re

from fluent.syntax import FluentParser, ast
from fluent.syntax.stream import FluentParserStream

_TEXT = re.compile(r"[^{}\n]*")
_IDENTIFIER_REST = re.compile(r"[a-zA-Z0-9_-]*")
_SPACES = re.compile(r" *")
_BLANK = re.compile(r"[ \n]*")


def parsed(text: str) -> ast.Resource:
    """Messages, terms and junk, in their order; comments are left out. Nothing has a span."""
    return _Parser(with_spans=False).parse(text)


class _Stream(FluentParserStream):
    """A text whose lines end in one character."""

    def __init__(self, text: str) -> None:
        super().__init__(text.replace("\r\n", "\n"))

    def get(self, offset: int) -> str | None:
        return self.string[offset] if offset < len(self.string) else None

    char_at = get

    @property
    def current_char(self) -> str | None:
        return self.get(self.index)

    @property
    def current_peek(self) -> str | None:
        return self.get(self.index + self.peek_offset)

    def next(self) -> str | None:
        self.peek_offset = 0
        self.index += 1
        return self.get(self.index)

    def peek(self) -> str | None:
        self.peek_offset += 1
        return self.get(self.index + self.peek_offset)

    def peek_blank_inline(self) -> str:
        return self._peeked(_SPACES)

    def peek_blank(self) -> None:
        self._peeked(_BLANK)

    def _peeked(self, stretch: re.Pattern[str]) -> str:
        found = self._matched(stretch, self.index + self.peek_offset)
        self.peek_offset += len(found)
        return found

    def taken(self, stretch: re.Pattern[str]) -> str:
        """What matches from here on, which may be nothing; the cursor moves behind it."""
        found = self._matched(stretch, self.index)
        self.index += len(found)
        self.peek_offset = 0
        return found

    def _matched(self, stretch: re.Pattern[str], start: int) -> str:
        found = stretch.match(self.string, start)
        return found[0] if found is not None else ""


class _Parser(FluentParser):
    def parse(self, source: str) -> ast.Resource:
        stream = _Stream(source)
        stream.skip_blank_block()
        entries: list[ast.EntryType] = []
        while stream.current_char:
            entry = self.get_entry_or_junk(stream)
            if isinstance(entry, ast.Message | ast.Term | ast.Junk):
                entries.append(entry)
            stream.skip_blank_block()
        return ast.Resource(entries)

    def get_identifier(self, ps: _Stream) -> ast.Identifier:
        return ast.Identifier(f"{ps.take_id_start()}{ps.taken(_IDENTIFIER_REST)}")

    def get_text_element(self, ps: _Stream) -> ast.TextElement:
        return ast.TextElement(ps.taken(_TEXT))
