"""A measurement typed to a chat, at times that a clock tells."""

from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta

from assistant.chat.alarm import Alarm
from assistant.chat.talk import Talk
from assistant.chat.terminal import BELL
from assistant.interview.conversation import Conversation
from assistant.wording.languages import Languages
from tests.chat.fed import Fed
from tests.record_readme import CODE, RecordingTerminal

BEGAN = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)
IF_ON = "If the oven is on for this, turn it off now, and leave its door shut until it is cool."
Watch = Callable[..., Fed]


class Clock:
    """Stands still until it is moved on."""

    def __init__(self) -> None:
        self.now = BEGAN

    def __call__(self) -> datetime:
        return self.now


class TimedTerminal(RecordingTerminal):
    """Types lines at their times: (seconds since the beginning, what is typed). An alarm that is due before rings."""

    def __init__(self, lines: Sequence[tuple[float, str]], clock: Clock) -> None:
        super().__init__([typed for _, typed in lines])
        self._times = iter(lines)
        self._clock = clock

    def ask(self, completions: Sequence[str], alarm: Alarm | None = None) -> str:
        at_s, _ = next(self._times, (0.0, ""))
        self._clock.now = max(self._clock.now, BEGAN + timedelta(seconds=at_s))
        if alarm is not None and alarm.should_ring:
            alarm.rung = True
            self.screen.write(f"{BELL}\n")
            self.write(alarm.said)
        return super().ask(completions, alarm)


def watched(
    conversation: Conversation,
    languages: Languages,
    *lines: tuple[float, str],
    resumed: bool = False,
    plain: bool = False,
) -> Fed:
    clock = Clock()
    conversation._clock = clock
    terminal = TimedTerminal(lines, clock)
    terminal.plain = plain
    sentences, listener = languages.sentences("en-GB", "great_britain"), languages.listener("en-GB")
    Talk(conversation, sentences, listener, terminal, f"ovenside resume {CODE}", clock).run(resumed=resumed)
    return Fed(terminal.screen.getvalue(), conversation)


def flat(fed: Fed) -> str:
    return " ".join(fed.screen.split())
