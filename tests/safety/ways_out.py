"""Talks in which something is measured, typed at random: every way out of it tells to turn the oven off."""

import io
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, timedelta
from random import Random

from assistant.chat.alarm import Alarm
from assistant.chat.talk import Talk
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.knowledge.scale import reading_to_ask_about
from assistant.reports.screen import Paragraph, write
from assistant.wording.languages import Languages
from tests.safety.codes import SANE_LINES
from tests.safety.exhaustive import answers_of, measured_questions, states_before
from tests.safety.fast import CALM, Fast
from tests.safety.heard import TYPED
from tests.safety.real import begin, believing, say_all, supposed_belief
from tests.safety.talks import Said

BEGAN = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)
OFF = ("turn the oven off now", "turn it off now")
WORDS = ("undo", "F", "end", "not sure", "skip", "back", "change", "why", "how", "1", "")
NONSENSE = ("purple", "25:61 out", "900", "800", "-40 C", "7:00 out, 6:00 on", "2:00 80, 2:00 81")
HOT = ("300", "600 F", "4:00 60, 4:00 310 C", "400 C, 60", "59:00 300 C")
"""Far above the setting, or so unless it is Fahrenheit."""
ASKED = "°C or"
LAST = ("stop", None)
"""Typed as the last thing; None is a closed window."""


class Watched:
    """A terminal that types prepared lines some minutes apart, and says where a measurement ended without a word of it,
    or a hot reading passed for nothing. The alarm's own words don't count.
    """

    plain = True

    def __init__(self, lines: Sequence[str | None], conversation: Conversation, chance: Random) -> None:
        self.now = BEGAN
        self.rang = 0
        self.hot = 0
        self._chance = chance
        self._in_doubt = self._reads = False
        self.breaches: list[str] = []
        self.ended = 0
        self._lines = iter(lines)
        self._conversation = conversation
        self._before, self._typed, self._since = False, "", io.StringIO()

    def clock(self) -> datetime:
        return self.now

    def write(self, paragraphs: Sequence[Paragraph]) -> None:
        write(self._since, paragraphs, colour=False, width=10_000)

    def ask(self, completions: Sequence[str], alarm: Alarm | None = None) -> str:
        self.look()
        line = next(self._lines, None)
        if line is None:
            self._typed = "a closed window"
            raise EOFError
        self.now += timedelta(minutes=self._chance.randint(1, 20))
        if alarm is not None and alarm.should_ring:
            alarm.rung = True
            self.rang += 1
        self._typed = line
        return line

    def look(self, *, left: bool = False) -> None:
        """What became of the measurement since the last line; `left`: the person is gone, whether or not it ended."""
        measuring = bool(self._conversation.state.measuring)
        if self._before and (left or not measuring):
            self.ended += 1
            if not any(off in self._since.getvalue().lower() for off in OFF):
                self.breaches.append(f"after {self._typed!r} nothing says that the oven is to be turned off")
        if measuring and self._conversation.assessment.danger.open:
            self.breaches.append(f"after {self._typed!r} it is measured while danger is open")
        self._look_for_heat(measuring)
        self._before, self._since = measuring, io.StringIO()

    def _look_for_heat(self, measuring: bool) -> None:
        """A hot reading makes danger, or is asked about; one that was asked about isn't forgotten at the end."""
        danger = self._conversation.assessment.danger.open
        asked = ASKED in self._since.getvalue()
        if self._before and self._reads and self._typed in HOT:
            self.hot += 1
            if not danger and not asked:
                self.breaches.append(f"a hot reading was typed, {self._typed!r}, and no danger is open or asked about")
        if self._before and self._in_doubt and not measuring and self._typed != "F" and not danger:
            self.breaches.append(f"a reading in doubt was left by {self._typed!r}, and no danger is open")
        state, questions = self._conversation.state, self._conversation.script.knowledge.questions
        logs = [(questions[each], now.lines) for each, now in state.measuring.items()]
        self._reads = any(question.kind == "temperature_log" for question, _ in logs)
        self._in_doubt = any(reading_to_ask_about(*log) is not None for log in logs)


def typed_lines(kind: str, chance: Random) -> Iterator[str | None]:
    """What somebody types who measures: mostly what belongs there."""
    yield "begin"
    for number in range(chance.randint(1, 9)):
        sane = SANE_LINES[kind](number).removeprefix(f"{2 + 3 * number}:00 ").replace("lit", "on")
        sort = chance.random()
        if sort < 0.3:
            yield sane
        elif sort < 0.6:
            yield chance.choice(HOT) if kind == "temperature_log" else sane
        else:
            yield chance.choice(chance.choice((WORDS, NONSENSE, HOT, tuple(TYPED.values()))))
    yield chance.choice(LAST)


def measured_talk(
    script: Script, languages: Languages, fast: Fast, question_id: str, first: Sequence[Said], chance: Random
) -> Watched:
    """A person measures, in a conversation in which that is the next question. Nothing is believed to be wrong."""
    with believing(supposed_belief(script, fast.codes, CALM)):
        conversation = begin(script, "householder")
        say_all(conversation, fast.codes, first)
        terminal = Watched(
            list(typed_lines(fast.codes.kind_of(fast.codes.place[question_id]), chance)), conversation, chance
        )
        conversation._clock = terminal.clock
        sentences = languages.sentences("en-GB", next(iter(script.knowledge.regions)))
        talk = Talk(conversation, sentences, languages.listener("en-GB"), terminal, None, terminal.clock)
        talk._showing.place.reopened = question_id
        talk.run()
        terminal.look(left=True)
    return terminal


def measured_talks(script: Script, languages: Languages, fast: Fast, talks: int, seed: int = 1) -> Iterator[Watched]:
    """So many talks about each measurement that has a clock."""
    chance = Random(seed)
    for question_id, state in states_before(fast, measured_questions(fast.knowledge)).items():
        if fast.codes.kind_of(fast.codes.place[question_id]) != "browning":  # it is typed when the oven is off
            for _ in range(talks):
                yield measured_talk(script, languages, fast, question_id, answers_of(state), chance)
