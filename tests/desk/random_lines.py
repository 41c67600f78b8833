"""What an agent may type in any order, and what has to hold after each line."""

import random
from collections.abc import Callable, Iterator

from assistant.desk.desk import Desk
from assistant.desk.layout import page_of
from assistant.interview.state import fold
from assistant.knowledge.danger_questions import OVEN_IS_OFF, is_danger_question
from assistant.knowledge.model import CALL_STAGES, Care
from assistant.reports.screen import laid_out
from assistant.store.memory import MemoryStore

ANSWERS = ("1", "2", "3", "4", "5", "1 3", "none of these", "no", "0700", "Ada", "\x1b[2J\u202e")
ASIDE = (
    "6", "16", "99", "yes", "yes now", "not any more", "a bit", "hello", "", "nobody is hurt", "my son burnt his arm",
    "it is pale beneath", "I smell gas", "there are sparks", "the kitchen is full of smoke", "no smell at all",
    "it's off at the wall", "4111 1111 1111 1111", ".new", ".park", ".calls", ".take 1", ".take 2", ".find fan",
    ".find thermometer", ".find insulation", ".find terminal", ".change", ".change 3", ".back",
    ".note it smells of hot plastic", ".note rings twice", ".view", ".all", ".why", ".how", ".unsure", ".skip",
    ".code", ".save", ".end", ".nonsense", ".",
)  # fmt: skip
BEGINNINGS = ((".new",), (".new", "1", "16"), (".new", "1", "16", "Ada", "0700", "4", "5", "2"))
DANGERS = ("I smell gas", "there are sparks", ".note it smells of hot plastic")

Check = Callable[[Desk, MemoryStore, str], bool]


def nothing_beyond_care(desk: Desk, log: MemoryStore, line: str) -> bool:
    """An engineer's own test is never put, nor found."""
    call = desk.call
    if call is None:
        return True
    put = [*desk.picking, *([call.question.id] if call.question else [])]
    questions = call.conversation.script.knowledge.questions
    return all(questions[each].care.rank < Care.ENGINEER.rank for each in put)


def danger_comes_first(desk: Desk, log: MemoryStore, line: str) -> bool:
    """While something stands that isn't isolated, only what belongs to it or to the call is asked by itself."""
    call = desk.call
    if call is None or call.reopened or call.question is None or not call.danger_unsettled:
        return True
    asked = call.question.id
    stage = call.conversation.script.knowledge.questions[asked].stage
    return is_danger_question(asked) or asked == OVEN_IS_OFF or stage in CALL_STAGES


def no_figures_are_read_out(desk: Desk, log: MemoryStore, line: str) -> bool:
    if desk.shows_side or desk.shows_calls or desk.call is None:
        return True
    page = page_of(desk)
    return not any(" % " in text for _, text in laid_out([*page.to_do, *page.asked], 200))


def the_log_is_what_is_shown(desk: Desk, log: MemoryStore, line: str) -> bool:
    """Folded anew, the events give the call as it stands at the desk."""
    stored = [call for call in desk.calls if call.conversation.stored]
    told = [(call.conversation.state, fold(log.read(call.conversation.record.session_id))) for call in stored]
    return all((now.sequence, now.answers) == (kept.sequence, kept.answers) for now, kept in told)


def danger_is_never_missed(desk: Desk, log: MemoryStore, line: str) -> bool:
    """Whoever tells of it is asked about it, or told what to do."""
    if line not in DANGERS or desk.call is None:
        return True
    return desk.call.conversation.assessment.danger.open


CHECKS: dict[str, Check] = {
    each.__name__: each
    for each in (
        nothing_beyond_care,
        danger_comes_first,
        no_figures_are_read_out,
        the_log_is_what_is_shown,
        danger_is_never_missed,
    )
}


def breaches(desk: Desk, log: MemoryStore, chance: random.Random, lines: int) -> Iterator[tuple[str, str]]:
    """Each check that doesn't hold, with the line after which it didn't."""
    beginning = chance.choice(BEGINNINGS)
    further = (chance.choice(ANSWERS if chance.random() < 0.6 else ASIDE) for _ in range(lines))
    for line in (*beginning, *further):
        desk.take(line)
        yield from ((name, line) for name, holds in CHECKS.items() if not holds(desk, log, line))
