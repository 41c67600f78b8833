"""`ovenside rules try`: an interview with its trace on, line by line, kept nowhere."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, TextIO

from assistant.authoring.cases import command_for
from assistant.authoring.trial_trace import Trace
from assistant.errors import Refused
from assistant.interview.commands import Command, GiveAnswer, HearDanger, SayNotSure, SkipQuestion, WithdrawAnswer
from assistant.interview.conversation import Conversation
from assistant.interview.next_question import next_chosen
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView, question_view
from assistant.wording.listener import Listener
from assistant.wording.replies import Given, NotUnderstood, reply_to
from assistant.wording.sentences import Sentences
from assistant.wording.typed import helper_word

PROMPT = "> "


class _Left(Exception):
    """The person leaves."""


class _Ended(Exception):
    """The input has no more lines."""


@dataclass
class Trial:
    """One interview. `answers`: what is answered from the file `where`; the rest is asked for.

    `echo`: lines come from no terminal, so what was read is written too.
    """

    conversation: Conversation
    sentences: Sentences
    listener: Listener
    lines_in: TextIO
    out: TextIO
    answers: Mapping[str, Any] = field(default_factory=dict)
    where: str = ""
    echo: bool = False

    def __post_init__(self) -> None:
        self._wording = self.sentences.wording
        self._trace = Trace(self.conversation.script, self.sentences)
        self._from_file: set[str] = set()
        self._asked = 0

    def run(self, rules: str) -> int:
        """To the verdict, or as long as there are lines. Returns the exit status."""
        self._write(self._say("begin", where=rules), "", *self._trace.ranking(self.conversation.assessment))
        try:
            while (question := self._question()) is not None:
                self._asked += 1
                self._put(question)
                self._answer(question)
        except _Ended:
            self._write("", self._say("ended"))
        except (_Left, KeyboardInterrupt):
            self._write("", self._say("left"))
        return 0

    def _say(self, name: str, /, **details: str | int) -> str:
        return self._wording.say(f"trial-{name}", **details)

    def _write(self, *lines: str) -> None:
        self.out.writelines(f"{line}\n" for line in lines)
        self.out.flush()

    def _question(self) -> QuestionView | None:
        """The next one, after saying why it is that one; None at the end. A verdict is shown before what follows it."""
        assessment = self.conversation.assessment
        view = self.conversation.view()
        if isinstance(view, QuestionView):
            chosen = next_chosen(self.conversation.script, assessment)
            assert chosen is not None
            self._write("", self._trace.why(chosen, assessment))
            return view
        self._write("", *self._trace.verdict(view, assessment, self._asked))
        return self._after(view)

    def _after(self, verdict: Verdict) -> QuestionView | None:
        """Whether the oven is off, after a stop: once."""
        then = str(verdict.details.get("then", ""))
        state = self.conversation.state
        if not then or then in state.answers:
            return None
        self._write("", self._say("next_then"))
        return question_view(self.conversation.script.knowledge, then, state, open_danger=True)

    def _put(self, view: QuestionView) -> None:
        text = self.sentences.question(view)
        self._write(self._say("question", number=str(self._asked), text=text.text, id=view.id))
        for number, (choice_id, label) in enumerate(text.choices, 1):
            self._write("  " + self._say("choice", number=str(number).rjust(2), text=label, id=choice_id))

    def _answer(self, view: QuestionView) -> None:
        """Until an answer is taken; then what it moved."""
        before = self.conversation.assessment
        if not self._answered_from_file(view):
            while not self._take(self._read(), view):
                pass
        self._write(*(f"    {line}" for line in self._trace.moved(before, self.conversation.assessment)))

    def _answered_from_file(self, view: QuestionView) -> bool:
        """The file's answer, the first time the question is asked."""
        if view.id not in self.answers or view.id in self._from_file:
            return False
        self._from_file.add(view.id)
        question = self.conversation.script.knowledge.questions[view.id]
        given = self.answers[view.id]
        shown = given if isinstance(given, str) else ", ".join(map(str, given))
        try:
            self.conversation.do(command_for(view.id, question, self.answers))
        except Refused as refused:
            reason = self.sentences.problem(refused.code, refused.details)
            self._write(self._say("not_taken", question=view.id, where=self.where, reason=reason))
            return False
        self._write(PROMPT + self._say("from_file", answer=shown, where=self.where))
        return True

    def _read(self) -> str:
        self.out.write(PROMPT)
        self.out.flush()
        line = self.lines_in.readline()
        if not line:
            raise _Ended
        line = "".join(c if c.isprintable() else " " for c in line).strip()
        if self.echo:
            self._write(line)
        return line

    def _take(self, line: str, view: QuestionView) -> bool:
        """Whether the line answered, or moved the interview some other way."""
        word = helper_word(line, self._wording)
        if word is not None:
            return self._help(word, view)
        reply = self._by_ids(line, view) or reply_to(line, view, self.sentences)
        if not (isinstance(reply, Given) and reply.exact) and self._hear(line):
            return True
        if isinstance(reply, Given):
            return self._do(GiveAnswer(view.id, reply.value, reply.unit))
        self._write(self._unclear(reply, view))
        return False

    def _by_ids(self, line: str, view: QuestionView) -> Given | None:
        """Choices typed as the rules call them."""
        named = [part for part in line.replace(",", " ").split() if part]
        if not named or not set(named) <= set(view.choices) or (view.kind == "choice" and len(named) > 1):
            return None
        return Given(named if view.kind == "choices" else named[0])

    def _help(self, word: str, view: QuestionView) -> bool:
        text = self.sentences.question(view)
        match word:
            case "why" | "how":
                self._write(text.why if word == "why" else text.how)
                return False
            case "not_sure":
                return self._do(SayNotSure(view.id))
            case "skip":
                return self._do(SkipQuestion(view.id))
            case "back":
                return self._back()
            case "stop":
                raise _Left
        self._write(self._say("not_here"))
        return False

    def _back(self) -> bool:
        answers = self.conversation.state.answers.values()
        if not answers:
            self._write(self._say("nothing_before"))
            return False
        latest = max(answers, key=lambda answer: answer.sequence).question_id
        self._write(self._say("taken_back", question=latest))
        return self._do(WithdrawAnswer(latest))

    def _hear(self, line: str) -> bool:
        """Whether the line speaks of danger that is neither told nor asked about already."""
        before = self.conversation.state.sequence
        heard = self.listener.hear(line)
        self._do(*(HearDanger(each.sign_id, each.clear) for each in heard))
        if self.conversation.state.sequence == before:
            return False
        self._write(self._say("heard", signs=", ".join(each.sign_id for each in heard)))
        return True

    def _do(self, *commands: Command) -> bool:
        try:
            self.conversation.do(*commands)
        except Refused as refused:
            self._write(self.sentences.problem(refused.code, refused.details))
            return False
        return True

    def _unclear(self, reply: NotUnderstood, view: QuestionView) -> str:
        if view.kind == "number":
            return self._say("unclear_number", unit=self._wording.say(f"unit-{view.unit}"))
        if reply.candidates:
            return self._say("unclear_between", candidates=_joined(reply.candidates))
        return self._say("unclear")


def _joined(names: Sequence[str]) -> str:
    return " / ".join(names)
