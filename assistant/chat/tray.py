"""How brown bread became, typed when all is cold: both sides at once or one after the other, and what is missing."""

from dataclasses import dataclass, field
from typing import Literal

from assistant.chat.at_the_oven import AtTheOven
from assistant.chat.ending import Ending
from assistant.interview.view import QuestionView
from assistant.wording.typed import is_word
from assistant.wording.typed_tray import TypedSide, no_shades, typed_sides

Side = Literal["top", "underside"]
_OTHER: dict[str, str] = {"top": "underside", "underside": "top"}


@dataclass
class Tray:
    """Takes the figures of the slices. A side that came alone waits for the other one."""

    at: AtTheOven
    ending: Ending
    _first: dict[str, str] = field(default_factory=dict, init=False)
    """Side -> its line, while the other one is missing."""
    _asked_back: tuple[str, ...] | None = field(default=None, init=False)
    """Two sides that were typed without names, in the order in which they are asked for."""

    def forget(self) -> None:
        self._first.clear()
        self._asked_back = None

    def understands(self, line: str) -> bool:
        return typed_sides(line, self.at.wording) is not None or (self._asked_back is not None and self._yes_no(line))

    def _yes_no(self, line: str) -> bool:
        return is_word(line, "yes", self.at.wording) or is_word(line, "no", self.at.wording)

    def take(self, line: str, question: QuestionView) -> bool:
        """False where the line is unclear; `unclear` says why."""
        asked_back, self._asked_back = self._asked_back, None
        if asked_back is not None and self._yes_no(line):
            if is_word(line, "yes", self.at.wording):
                return self._give(question, asked_back)
            self.at.say("measuring-tray_names")
            return True
        sides = typed_sides(line, self.at.wording)
        if sides is None or no_shades(line) or not all(side.whole for side in sides):
            return False
        return self._take_sides(sides, question)

    def _take_sides(self, sides: tuple[TypedSide, ...], question: QuestionView) -> bool:
        names = [side.name for side in sides]
        if names == [None, None]:
            self._asked_back = (sides[0].line("top"), sides[1].line("underside"))
            self.at.say("measuring-tray_order", top=sides[0].line("").strip(), underside=sides[1].line("").strip())
        elif names == [None] and self._first:
            name = _OTHER[next(iter(self._first))]
            return self._give(question, (*self._first.values(), sides[0].line(name)))
        elif None in names:
            self.at.say("measuring-tray_which")
        elif len(names) == 1:
            return self._take_one(sides[0], question)
        else:
            return self._give(question, tuple(side.line(str(side.name)) for side in sides))
        return True

    def _take_one(self, side: TypedSide, question: QuestionView) -> bool:
        """The last of two that are the same side counts."""
        name = str(side.name)
        self._first[name] = side.line(name)
        if _OTHER[name] in self._first:
            return self._give(question, tuple(self._first.values()))
        self.at.say("measuring-tray_other", side=name)
        return True

    def _give(self, question: QuestionView, lines: tuple[str, ...]) -> bool:
        self.forget()
        self.ending.give(question, lines, off="measuring-off_if_on")
        return True

    def unclear(self, line: str) -> str:
        """What is wrong with a line that `take` didn't take."""
        wrong, sides = no_shades(line), typed_sides(line, self.at.wording)
        if wrong:
            return self.at.wording.say("measuring-no_shade", figures=", ".join(wrong), number=len(wrong))
        short = next((side for side in sides or () if not side.whole), None)
        if short is None:
            return self.at.wording.say("measuring-unclear_browning")
        side, number = short.name or "unnamed", len(short.shades)
        return self.at.wording.say("measuring-tray_count", side=side, number=number)
