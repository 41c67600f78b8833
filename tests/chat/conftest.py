"""Chats that are fed with typed lines, and conversations that have come to a measurement."""

from collections.abc import Callable
from functools import partial

import pytest

from assistant.authoring.cases import read_case
from assistant.chat.talk import Talk
from assistant.interview.commands import BeginMeasuring, GiveAnswer, SayNotSure
from assistant.interview.conversation import Conversation
from assistant.interview.view import QuestionView
from assistant.wording.languages import Languages
from tests.chat.fed import Fed
from tests.chat.watched import BEGAN, Watch, watched
from tests.conftest import ROOT, Begin
from tests.interview.fit import GATE
from tests.record_readme import CODE, RecordingTerminal

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


@pytest.fixture
def at_the_lamp_watch(begun: Begin) -> Conversation:
    """An oven that cooks paler from year to year, asked about until the lamp is to be watched."""
    case = read_case(ROOT / "tests/cases/everything_pale_over_the_years.yaml")
    answers = {**case["answers"], "hot_gate": GATE}
    conversation = begun()
    while isinstance(view := conversation.view(), QuestionView) and view.kind != "lamp_log":
        known = view.id in answers
        conversation.do(GiveAnswer(view.id, answers[view.id]) if known else SayNotSure(view.id))
    assert isinstance(view, QuestionView)
    return conversation


@pytest.fixture
def at_the_thermometer(at_the_lamp_watch: Conversation) -> Conversation:
    """The same, where the thermometer's question is opened by hand."""
    at_the_lamp_watch._clock = lambda: BEGAN
    at_the_lamp_watch.do(GiveAnswer("thermometer_kind", "hanging_or_standing"))
    at_the_lamp_watch.do(BeginMeasuring("thermometer_log"))
    return at_the_lamp_watch


@pytest.fixture
def watch(at_the_lamp_watch: Conversation, languages: Languages) -> Watch:
    return partial(watched, at_the_lamp_watch, languages)
