"""Views -> paragraphs for the terminal."""

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from assistant.chat.opening import Opening
from assistant.knowledge.danger_questions import DANGER_NOW
from assistant.knowledge.kinds import MEASUREMENTS
from assistant.reports.screen import BLANK, Paragraph, numbered
from assistant.wording.sentences import QuestionText, Sentences
from assistant.wording.typed import first_words

if TYPE_CHECKING:
    from assistant.interview.state import State
    from assistant.interview.verdict import Verdict
    from assistant.interview.view import QuestionView


class Pages:
    """Lays out what a chat shows, in the words of one language."""

    def __init__(self, sentences: Sentences, *, in_figures: bool = False) -> None:
        self._sentences = sentences
        self._in_figures = in_figures
        self._say = sentences.wording.say

    def opening(self) -> Opening:
        """The first screen, ready to be kept."""
        text = self._sentences.question_by_id(DANGER_NOW)
        return Opening(
            welcome=self._say("chat-welcome"),
            caution=self._say("chat-caution"),
            question=text.text,
            choices=tuple(label for _, label in text.choices),
            hint=self._say("chat-hint_choices"),
            helper_words=self._helper_words(),
            goodbye=self._say("chat-nothing_saved"),
            completions=(*(label for _, label in text.choices), *first_words(self._sentences.wording)),
        )

    def _helper_words(self) -> str:
        return self._say("chat-helper_words", words=" · ".join(first_words(self._sentences.wording)))

    def question(self, view: "QuestionView") -> list[Paragraph]:
        text = self._sentences.question(view)
        progress = self._say("chat-progress", answered=view.answered_so_far, care=text.care)
        page = [
            BLANK,
            Paragraph(progress, "quiet"),
            Paragraph(text.text, "danger" if view.about_danger else "strong"),
            *numbered([label for _, label in text.choices]),
        ]
        if text.kind in MEASUREMENTS or view.should_read_c is not None:
            page.append(Paragraph(text.how))
        if view.standing is not None:
            standing = self._sentences.given(view.id, view.standing)
            page.append(Paragraph(self._say("chat-standing", answer=standing), "quiet"))
        exact = view.about_danger and text.kind == "choice"
        in_water = view.should_read_c is not None
        hint = "chat-hint_danger" if exact else "chat-hint_thermometer" if in_water else None
        return [*page, Paragraph(self._say(hint) if hint is not None else self._hint(text), "quiet")]

    def _hint(self, text: QuestionText) -> str:
        if text.kind == "number":
            return self._say("chat-hint_number", unit=str(text.unit))
        return self._say(f"chat-hint_{text.kind}")

    def how(self, view: "QuestionView") -> list[Paragraph]:
        return [BLANK, Paragraph(self._sentences.question(view).how)]

    def why(self, view: "QuestionView | None", verdict: "Verdict | None") -> list[Paragraph]:
        """Why the question is asked; at the end, what the likeliest cause means."""
        if view is not None:
            return [BLANK, Paragraph(self._sentences.question(view).why)]
        why = self._sentences.why(verdict) if verdict is not None else None
        return [BLANK, Paragraph(why or self._say("chat-why_verdict"))]

    def verdict(self, verdict: "Verdict") -> list[Paragraph]:
        text = self._sentences.verdict(verdict, in_figures=self._in_figures)
        stopped = verdict.action == "stop_and_isolate"
        page = [
            BLANK,
            Paragraph(text.headline, "danger" if stopped else "strong"),
            Paragraph(text.explanation),
        ]
        if stopped and not verdict.details.get("off_confirmed"):
            page += [BLANK, *numbered(text.steps)]
        page += self._listed("chat-likely_heading", text.likely)
        if not stopped:
            page += self._listed("chat-because_heading", text.because)
        page += self._listed("chat-change_heading", text.would_change)
        return page + self._listed("chat-tips_heading", text.tips)

    def _listed(self, heading: str, lines: Iterable[str]) -> list[Paragraph]:
        items = [Paragraph(line, "plain", "  – ") for line in lines]
        return [BLANK, Paragraph(self._say(heading), "quiet"), *items] if items else []

    def after_verdict(self) -> list[Paragraph]:
        return [BLANK, Paragraph(self._say("chat-after_verdict"), "quiet")]

    def answers(self, state: "State", answered: Sequence[str]) -> list[Paragraph]:
        """The answers given, numbered, to pick one to change."""
        lines = []
        for question_id in answered:
            answer = state.answers[question_id]
            if answer.status == "answered":
                given = self._sentences.given(question_id, answer.value)
            else:
                given = self._say(f"answer-{answer.status}")
            lines.append(f"{self._sentences.question_by_id(question_id).text} — {given}")
        return [
            BLANK,
            Paragraph(self._say("chat-answers_heading"), "strong"),
            *numbered(lines),
            Paragraph(self._say("chat-change_which"), "quiet"),
        ]

    def after_the_pause(self) -> list[Paragraph]:
        """Before a measurement goes on."""
        choices = [self._say(f"measuring-pause_{each}") for each in ("all_well", "is_off", "unusual")]
        return [BLANK, Paragraph(self._say("measuring-pause"), "danger"), *numbered(choices)]

    def saved_as_you_go(self, resume_command: str) -> list[Paragraph]:
        return [Paragraph(self._say("chat-saved_as_you_go"), "quiet"), Paragraph(f"  {resume_command}", "quiet")]

    def goodbye(
        self, *, stored: bool, answered: bool, resume_command: str | None, keep_off: str | None, hot: bool
    ) -> list[Paragraph]:
        page = [BLANK]
        if keep_off is not None:
            page.append(Paragraph(keep_off, "danger"))
        if hot:
            page.append(Paragraph(self._say("chat-turn_off"), "strong"))
        if not stored:
            return [*page, Paragraph(self._say("chat-nothing_kept" if answered else "chat-nothing_saved"))]
        page.append(Paragraph(self._say("chat-saved")))
        if resume_command is None:
            return [*page, Paragraph(self._say("chat-resume_again"))]
        return [*page, Paragraph(self._say("chat-resume_with")), Paragraph(f"  {resume_command}", "strong")]
