"""A chat fed with typed lines: what it showed, and the conversation it left."""

from dataclasses import dataclass

from assistant.interview.conversation import Conversation
from assistant.interview.state import State


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
