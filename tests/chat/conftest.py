"""A chat fed with typed lines: what it showed, and the conversation it left."""

from collections.abc import Callable
from dataclasses import dataclass

import pytest

from assistant.chat.talk import Talk
from assistant.interview.conversation import Conversation
from assistant.interview.state import State
from assistant.wording.languages import Languages
from tests.conftest import Begin
from tests.record_readme import CODE, RecordingTerminal


@dataclass
class Fed:
    screen: str
    conversation: Conversation

    @property
    def state(self) -> State:
        return self.conversation.state

    def answer(self, question_id: str) -> object:
        answer = self.state.answers.get(question_id)
        return answer.value if answer else None

    def status(self, question_id: str) -> str:
        return self.state.status(question_id)


Feed = Callable[..., Fed]


@pytest.fixture
def feed(begun: Begin, languages: Languages) -> Feed:
    """Types the lines, then leaves; `given` are answers that stand before."""

    def feed(*lines: str, lang: str = "en-GB", **given: object) -> Fed:
        conversation = begun(**given)
        terminal = RecordingTerminal(lines)
        talk = Talk(
            conversation,
            languages.sentences(lang, "great_britain"),
            languages.listener(lang),
            terminal,
            f"ovenside resume {CODE}",
        )
        talk.run()
        return Fed(terminal.screen.getvalue(), conversation)

    return feed
