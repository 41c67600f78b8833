"""The desk without cursor movement: each time what is new, line by line; the right side when it is asked for."""

from typing import TextIO

from assistant.desk import panels
from assistant.desk.desk import Desk, Left
from assistant.desk.layout import page_of
from assistant.reports.screen import BLANK, Paragraph, write


class Plain:
    def __init__(self, desk: Desk, read: TextIO, out: TextIO) -> None:
        self._desk = desk
        self._read = read
        self._out = out

    def run(self) -> None:
        """Until the agent leaves, or there is nothing more to read."""
        self._show()
        for line in self._read:
            try:
                self._desk.take(line)
            except Left:
                return
            self._show()

    def _show(self) -> None:
        desk = self._desk
        page = [Paragraph(each.text, "danger" if each.urgent else "strong") for each in desk.notices]
        banner = panels.danger_banner(desk)
        if banner is not None:
            page.append(Paragraph(banner, "danger"))
        write(self._out, [*page, *self._wanted(), BLANK], colour=False)

    def _wanted(self) -> list[Paragraph]:
        desk, call = self._desk, self._desk.call
        if call is None or desk.picking or desk.shows_calls:
            return page_of(desk).asked
        if desk.shows_side:
            next(call.thinking())
            return [*panels.facts(call, in_full=True), BLANK, *panels.causes(call)]
        shown = panels.why(call) if desk.shows_why else panels.to_read_out(call)
        return [BLANK, *shown]
