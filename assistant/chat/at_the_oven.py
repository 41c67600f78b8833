"""What is measured just now: by whom it is asked, by the clock, and by the rules; and how it is spoken of."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property

from assistant.chat.longest_time import longest_s
from assistant.chat.measured_pages import MeasuredPages
from assistant.errors import Refused
from assistant.interview.commands import Command, TakeBackLine
from assistant.interview.conversation import Conversation
from assistant.interview.state import Measuring
from assistant.interview.thermometer import low_k
from assistant.interview.view import QuestionView
from assistant.knowledge.model import Question
from assistant.knowledge.scale import reading_to_ask_about, runs_away, with_known_scale
from assistant.reports.screen import Paragraph
from assistant.wording.locale import Wording
from assistant.wording.sentences import Sentences

Do = Callable[..., bool]
Write = Callable[[list[Paragraph]], None]


@dataclass
class AtTheOven:
    """What the parts of a talk about a measurement share.

    `clock` gives the time of day; `plain` screens are told in words what others see in a chart.
    """

    conversation: Conversation
    sentences: Sentences
    do: Do
    write: Write
    clock: Callable[[], datetime]
    plain: bool

    @cached_property
    def pages(self) -> MeasuredPages:
        return MeasuredPages(self.sentences, plain=self.plain)

    @property
    def wording(self) -> Wording:
        return self.sentences.wording

    def say(self, message_id: str, style: str = "strong", **arguments: str | float) -> None:
        self.write([Paragraph(self.wording.say(message_id, **arguments), style)])  # type: ignore[arg-type]

    def say_refused(self, refused: Refused) -> None:
        self.write([Paragraph(self.sentences.problem(refused.code, refused.details), "strong")])

    def question(self, question: QuestionView) -> Question:
        return self.conversation.script.knowledge.questions[question.id]

    def under_way(self, question: QuestionView | None) -> Measuring | None:
        return self.conversation.state.measuring.get(question.id) if question is not None else None

    def elapsed_s(self, now: Measuring) -> float:
        return max((self.clock() - now.begun_at).total_seconds(), 0.0)

    def late(self, now: Measuring, question: QuestionView) -> bool:
        """Whether the longest time is over."""
        return self.elapsed_s(now) > longest_s(self.question(question))

    def low_k(self, question_id: str) -> float:
        return low_k(self.conversation.script.knowledge, question_id, self.conversation.state.answers)

    def settled(self, question: QuestionView, lines: tuple[str, ...]) -> tuple[str, ...]:
        """The lines, in the thermometer's scale where that is known by now."""
        return with_known_scale(self.question(question), lines, self.low_k(question.id))

    def runs_away(self, question: QuestionView, lines: tuple[str, ...]) -> bool:
        return runs_away(self.question(question), lines, self.low_k(question.id))

    def in_doubt(self, question: QuestionView, lines: tuple[str, ...]) -> str | None:
        """The reading of which it has to be known whether it is in Celsius or in Fahrenheit. Counts as the former."""
        return reading_to_ask_about(self.question(question), lines, self.low_k(question.id))

    def did(self, *commands: Command) -> bool:
        """True also where nothing could be taken back: the reason was said, and the clock runs on."""
        done = self.do(*commands)
        return done or isinstance(commands[0], TakeBackLine)
