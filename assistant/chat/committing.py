"""Commands -> the conversation: refusals are said, and what is lost with a store or a session."""

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.chat.showing import Showing
from assistant.errors import Refused, SessionMovedOn, SessionUnknown, StoreUnreadable
from assistant.interview.commands import Command, GiveAnswer, HearDanger, SayNotSure
from assistant.interview.conversation import Conversation
from assistant.knowledge.danger_questions import is_danger_question
from assistant.wording.reasons import reason_in_words


@dataclass
class Committing:
    """`resume_command` is told once, as soon as something was saved; None where there is none to tell."""

    conversation: Conversation
    showing: Showing
    resume_command: str | None

    def __post_init__(self) -> None:
        self._told_of_the_clock = False
        self._tell_command = self.resume_command is not None and not self.conversation.stored

    def do(self, *commands: Command) -> bool:
        """Commit the commands; a refusal is said, and the question stays open."""
        try:
            self.conversation.do(*commands)
        except Refused as refused:
            self.showing.say_text(self.showing.sentences.problem(refused.code, refused.details))
            return False
        except SessionMovedOn:
            return self._go_on_from_the_others(commands)
        except (StoreUnreadable, SessionUnknown) as error:
            return self._go_on_unsaved(error, commands)
        self._tell_of_the_clock()
        if commands:
            self.showing.place.reopened = self.showing.place.suggested = None
        if self._tell_command and self.conversation.stored:
            self._tell_command = False
            self.showing.terminal.write(self.showing.pages.saved_as_you_go(str(self.resume_command)))
        return True

    def _tell_of_the_clock(self) -> None:
        """Once for each time it went back."""
        behind, told = self.conversation.clock_behind, self._told_of_the_clock
        self._told_of_the_clock = behind is not None
        if behind is not None and not told:
            self.showing.say("chat-clock_went_back", "quiet", minutes=round(behind.total_seconds() / 60))

    def _go_on_from_the_others(self, commands: Sequence[Command]) -> bool:
        """Show how the session stands now. Of what was typed only danger counts; the rest is asked again.

        A measurement that was ended elsewhere ends here too.
        """
        measuring = bool(self.conversation.state.measuring)
        try:
            self.conversation.refresh()
        except (StoreUnreadable, SessionUnknown) as error:
            return self._go_on_unsaved(error, commands)
        if measuring and not self.conversation.state.measuring:
            self.showing.say("measuring-off_now", "danger")
        self.showing.place.reopened = self.showing.place.suggested = None
        self.showing.say("chat-moved_on")
        danger = [c for c in commands if isinstance(c, HearDanger) or _answers_danger(c)]
        if danger:
            self.do(*danger)
        return False

    def _go_on_unsaved(self, error: StoreUnreadable | SessionUnknown, commands: Sequence[Command]) -> bool:
        """Safety advice doesn't end with the store, nor with a session that somebody erased."""
        self.conversation.stop_saving()
        if isinstance(error, StoreUnreadable):
            self.showing.say("chat-no_longer_saved", reason=reason_in_words(error, self.showing.wording))
        else:
            self.showing.say("chat-erased_meanwhile")
        return self.do(*commands)


def _answers_danger(command: Command) -> bool:
    return isinstance(command, GiveAnswer | SayNotSure) and is_danger_question(command.question_id)
