"""What a talk shows, and where it stands between one typed line and the next."""

from dataclasses import dataclass, field

from assistant.chat.pages import Pages
from assistant.chat.terminal import Terminal
from assistant.interview.answers import still_fits
from assistant.interview.conversation import Conversation
from assistant.interview.on_the_telephone import is_for_role
from assistant.interview.verdict import Verdict, give_verdict
from assistant.interview.view import QuestionView, question_view
from assistant.reports.screen import Paragraph
from assistant.wording.locale import Wording
from assistant.wording.sentences import Sentences


@dataclass
class Place:
    """Where a talk stands. What was shown is kept with the number of the latest event then.

    `reopened`: an earlier question that is asked again; `suggested`: a question and the choice that was asked back;
    `scale_asked`: a question and the bare reading of which it was asked whether it is in °C or in °F;
    `misses`: lines that weren't understood since the question was shown.
    """

    reopened: str | None = None
    suggested: tuple[str, str] | None = None
    scale_asked: tuple[str, float] | None = None
    verdict_shown: tuple[Verdict, int] | None = None
    question_shown: tuple[str, int] | None = None
    misses: int = 0


@dataclass
class Showing:
    """Writes one conversation's words to its terminal."""

    conversation: Conversation
    sentences: Sentences
    terminal: Terminal
    place: Place = field(default_factory=Place)

    def __post_init__(self) -> None:
        role = self.conversation.script.knowledge.roles.get(self.conversation.state.role)
        self.pages = Pages(self.sentences, in_figures=role is not None and role.sees_probabilities)

    @property
    def wording(self) -> Wording:
        return self.sentences.wording

    def say(self, message_id: str, style: str = "strong", **arguments: str | float) -> None:
        self.terminal.write([Paragraph(self.wording.say(message_id, **arguments), style)])  # type: ignore[arg-type]

    def say_text(self, text: str) -> None:
        self.terminal.write([Paragraph(text, "strong")])

    def say_what_stands(self, otherwise: str) -> None:
        """While danger stands, whatever wasn't understood is answered with what matters."""
        stop = self.standing_stop()
        if stop is not None:
            self.terminal.write([Paragraph(self.sentences.meanwhile(stop), "danger")])
        else:
            self.say_text(otherwise)

    def standing_stop(self) -> Verdict | None:
        """The verdict of a stop that stands, even while questions go on after it."""
        if not self.conversation.assessment.danger.stops:
            return None
        return give_verdict(self.conversation.script, self.conversation.assessment)

    def view_of(self, question_id: str) -> QuestionView:
        state = self.conversation.state
        danger_open = self.conversation.assessment.danger.open
        return question_view(self.conversation.script.knowledge, question_id, state, danger_open)

    def mark(self, question: QuestionView | None) -> tuple[str, int] | None:
        """Tells whether a question was shown since anything changed."""
        return (question.id, self.conversation.state.sequence) if question else None

    def verdict(self, verdict: Verdict) -> None:
        """In full when it reads differently; in a word when something changed and it doesn't.

        While nobody has said that the oven is off, a word of steps would be one too many: what matters is said instead.
        """
        page = self.pages.verdict(verdict)
        before, now = self.place.verdict_shown, self.conversation.state.sequence
        self.place.verdict_shown = (verdict, now)
        if before is None or self.pages.verdict(before[0]) != page:
            self.terminal.write(page)
        elif before[1] != now and not (verdict.stops and not verdict.details.get("off_confirmed")):
            self.say("chat-verdict_stays", headline=self.sentences.headline(verdict))

    def answered(self) -> list[str]:
        """Questions with an answer that today's rules still know and that are for this role, the latest first."""
        knowledge, role = self.conversation.script.knowledge, self.conversation.state.role
        answers = self.conversation.state.answers.values()
        known = [a for a in answers if still_fits(knowledge.questions.get(a.question_id), a.value)]
        known = [a for a in known if is_for_role(knowledge, role, a.question_id)]
        return [a.question_id for a in sorted(known, key=lambda answer: -answer.sequence)]
