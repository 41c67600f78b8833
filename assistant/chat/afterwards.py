"""What was measured without this program's clock and is typed when it is over, as one list."""

from dataclasses import dataclass, field

from assistant.chat.at_the_oven import AtTheOven
from assistant.chat.ending import Ending
from assistant.chat.slips import example, in_words
from assistant.interview.view import QuestionView
from assistant.knowledge.readings import in_order
from assistant.knowledge.scale import in_one_scale, that_can_be
from assistant.wording.typed import is_word
from assistant.wording.typed_lines import typed_lines, typed_off, typed_scale

Lines = tuple[str, ...]


@dataclass
class Afterwards:
    """Takes lists for the question that is open. Nothing is lost of one that is asked about."""

    at: AtTheOven
    ending: Ending
    in_doubt: dict[str, Lines] = field(default_factory=dict, init=False)
    """Question -> what doesn't count before it is known in which scale it is."""
    _kept: dict[str, Lines] = field(default_factory=dict, init=False)
    """Question -> the lines beside readings that no oven comes to, while these are asked for anew."""

    def forget(self) -> None:
        self.in_doubt.clear()
        self._kept.clear()

    def understands(self, line: str, question: QuestionView) -> bool:
        return question.id in self._kept and is_word(line, "measuring_end", self.at.wording)

    def take(self, line: str, question: QuestionView) -> bool:
        scale = None
        if self.open_reading(question) is not None:
            scale = typed_scale(line, str(self.open_reading(question)), self.at.wording)
        if scale is not None:
            self._give(question, in_one_scale(self.in_doubt.pop(question.id), scale))
            return True
        if question.id in self._kept and is_word(line, "measuring_end", self.at.wording):
            self.ending.give(question, self._kept.pop(question.id))
            return True
        if question.kind == "lamp_log" and typed_off(line, self.at.wording):
            self.at.say("measuring-light_or_oven_list")
            return True
        lines = typed_lines(line, self.at.question(question).kind, self.at.wording)
        if lines is None:
            return self.ask_scale(question)
        if question.kind == "lamp_log" and len(lines) == 1:
            self.at.say("measuring-until_when")
            return True
        lines = self.at.settled(question, self._beside_the_kept(question, lines))
        self.in_doubt[question.id] = lines
        if not self.ask_scale(question):
            self._give(question, self.in_doubt.pop(question.id))
        return True

    def open_reading(self, question: QuestionView) -> str | None:
        return self.at.in_doubt(question, self.in_doubt.get(question.id, ()))

    def ask_scale(self, question: QuestionView) -> bool:
        """True if it has to be asked."""
        reading = self.open_reading(question)
        if reading is not None:
            self.at.say("measuring-which_scale", "danger", reading=reading)
        return reading is not None

    def _beside_the_kept(self, question: QuestionView, lines: Lines) -> Lines:
        """A line takes the place of one that was kept of the same time."""
        kept = self._kept.pop(question.id, ())
        anew = {line.split(" ")[0] for line in lines}
        return in_order((*(line for line in kept if line.split(" ")[0] not in anew), *lines)) if kept else lines

    def _give(self, question: QuestionView, lines: Lines) -> None:
        """A reading that no oven comes to is a slip: it is asked for anew, and the others are kept."""
        can_be = that_can_be(lines)
        if can_be == lines or not can_be or self.at.runs_away(question, lines):
            self.ending.give(question, lines)
            return
        self._kept[question.id] = can_be
        slips = tuple(line for line in lines if line not in can_be)
        self.at.say("measuring-slips", readings=in_words(slips), number=len(slips), example=example(slips[0]))
        self.at.say("measuring-slips_or_end")
