"""The agent's desk: several calls, one of them on the line, and what each typed line does."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal, Protocol

from assistant.desk.call import Call
from assistant.desk.finding import found_questions
from assistant.desk.notice import Notice
from assistant.desk.words import MARK, WORDS, Word, is_word, read_word, spelled
from assistant.errors import Refused, SessionUnknown, StoreUnreadable
from assistant.interview.access_code import CHARACTERS
from assistant.interview.on_the_telephone import CALL_ENDED, NOTES
from assistant.wording.reasons import reason_in_words
from assistant.wording.sentences import Sentences
from assistant.wording.typed import HelperWord, helper_word

Panel = Literal["causes", "facts"]

MOST_DIGITS = 6
_SAID: Mapping[HelperWord | None, Word] = {
    "why": "why",
    "how": "how",
    "not_sure": "unsure",
    "skip": "skip",
    "back": "back",
    "change": "change",
}
"""The words of the chat count here too, without a full stop."""


class Left(Exception):
    """The agent leaves the desk; every call is saved as it stands."""


class Calls(Protocol):
    """Where calls come from."""

    def begin(self) -> Call:
        """A new one. Raises StoreUnreadable."""

    def take(self, code: str) -> Call:
        """One that is in the store. Raises SessionUnknown or StoreUnreadable."""


@dataclass
class Desk:
    """`calls` in the order in which they came; `on_line`: the number of the one being spoken to.

    `picking`: questions that were found, one of which may be picked by its number; `shows_calls`: the calls, likewise.
    `shows_side`: what stands beside is shown in full, or only where there is no room beside.
    """

    source: Calls
    own: Sentences
    calls: list[Call] = field(default_factory=list)
    on_line: int | None = None
    panel: Panel = "causes"
    picking: tuple[str, ...] = ()
    notices: list[Notice] = field(default_factory=list)
    shows_why: bool = False
    shows_calls: bool = False
    shows_side: Literal["", "where_narrow", "in_full"] = ""

    def __post_init__(self) -> None:
        self._words: dict[Word, Callable[[str], list[Notice]]] = {
            "new": self._new,
            "take": self._take,
            "park": self._park,
            "calls": self._calls,
            "find": self._find,
            "change": self._change,
            "back": self._back,
            "note": self._note,
            "view": self._view,
            "all": self._all,
            "end": self._end,
            "why": self._why,
            "how": self._how,
            "unsure": self._unsure,
            "skip": self._skip,
            "code": self._code,
            "save": self._save,
            "leave": self._leave,
        }

    @property
    def call(self) -> Call | None:
        return self.calls[self.on_line] if self.on_line is not None else None

    @property
    def unsaved_calls(self) -> list[Call]:
        return [call for call in self.calls if call.conversation.unsaved]

    def take(self, line: str) -> None:
        """Do what a typed line says; what there is to say of it stands in `notices`. Raises Left."""
        line = line.strip()
        among_calls = self.shows_calls
        self.shows_why = self.shows_calls = False
        self.shows_side = ""
        try:
            picks = among_calls and (_is_number(line) or len(self._named(line)) == 1)
            self.notices = self._take(line) if picks else self._take_line(line)
        except StoreUnreadable as error:
            reason = reason_in_words(error, self.own.wording)
            self.notices = [self.notice("store_unusable", urgent=True, reason=reason)]

    def _take_line(self, line: str) -> list[Notice]:
        picking, self.picking = self.picking, ()
        if picking and _is_number(line):
            place = _place(line, len(picking))
            if place is not None:
                return self._on_call(lambda call: call.reopen(picking[place]))
            self.picking = picking
            return [self.notice("not_in_list", lines=len(picking))]
        if is_word(line):
            return self._take_word(line)
        if not line:
            return self._nothing_typed()
        said = helper_word(line, self.own.wording)
        if said in _SAID and not (self.call is not None and self.call.answers_exactly(line)):
            return self._words[_SAID[said]]("")
        if self.call is None:
            return [self.notice("nobody_on_line")]
        return self.call.take(line)

    def _take_word(self, line: str) -> list[Notice]:
        words, rest = read_word(line, self.own.wording)
        if len(words) == 1:
            return self._words[words[0]](rest)
        if words:
            listed = " ".join(MARK + spelled(word, self.own.wording) for word in words)
            return [self.notice("word_unclear", words=listed)]
        heard = self.call.hear(line) if self.call is not None else []
        every = " ".join(MARK + spelled(word, self.own.wording) for word in WORDS)
        return heard or [replace(self.notice("no_such_word", words=every), line_stays=True)]

    def _nothing_typed(self) -> list[Notice]:
        if self.call is None:
            return []
        self.call.reopened = None
        return self.call.look_again()

    def _on_call(self, doing: Callable[[Call], list[Notice]]) -> list[Notice]:
        return [self.notice("nobody_on_line")] if self.call is None else doing(self.call)

    def _new(self, rest: str) -> list[Notice]:
        self._put(self.source.begin())
        return []

    def _take(self, rest: str) -> list[Notice]:
        """By its place on this desk or who speaks, or by its code."""
        if _is_number(rest) and len(rest) < CHARACTERS:
            place = _place(rest, len(self.calls))
            if place is not None:
                return self._back_on_line(place)
            self.shows_calls = True
            return [self.notice("not_in_list", lines=len(self.calls))]
        named = self._named(rest)
        if len(named) == 1:
            return self._back_on_line(named[0])
        try:
            call = self.source.take(rest)
        except SessionUnknown:
            return [self.notice("code_unknown")]
        except Refused as refused:
            return [Notice(self.own.problem(refused.code, refused.details))]
        here = [number for number, each in enumerate(self.calls) if _same(each, call)]
        if here:
            return self._back_on_line(here[0])
        self._put(call)
        notices = [self.notice("taken", answered=len(call.conversation.state.answers))]
        if call.conversation.under_other_rules:
            notices.append(self.notice("other_rules", headline=self.own.headline(call.verdict)))
        return notices

    def _named(self, typed: str) -> list[int]:
        """The calls of which who speaks is so called."""
        sought = normal(typed)
        return [number for number, each in enumerate(self.calls) if sought and sought in normal(each.speaker)]

    def _back_on_line(self, number: int) -> list[Notice]:
        self.on_line = number
        return self.calls[number].look_again()

    def look_again(self) -> bool:
        """While nobody types: whether somebody else went on with the call on the line. Raises StoreUnreadable."""
        notices = self.call.look_again() if self.call is not None else []
        self.notices = notices or self.notices
        return bool(notices)

    def _put(self, call: Call) -> None:
        self.calls.append(call)
        self.on_line = len(self.calls) - 1

    def _park(self, rest: str) -> list[Notice]:
        """The next one that is parked comes back; where there is none, nobody is on the line."""
        if self.on_line is None:
            return [self.notice("nobody_on_line")]
        others = [*range(self.on_line + 1, len(self.calls)), *range(self.on_line)]
        waiting = [number for number in others if not self.calls[number].ended]
        left = self.calls[self.on_line]
        danger = left.danger_unsettled
        self.on_line = waiting[0] if waiting else None
        notices = [self.notice("parked_in_danger", urgent=True) if danger else self.notice("parked")]
        if self.on_line is None:
            return notices
        who = self.calls[self.on_line].speaker or str(self.on_line + 1)
        return [*notices, self.notice("now_on_line", who=who), *self._back_on_line(self.on_line)]

    def _calls(self, rest: str) -> list[Notice]:
        self.shows_calls = True
        return []

    def _find(self, rest: str) -> list[Notice]:
        def find(call: Call) -> list[Notice]:
            found = found_questions(call, rest)
            if len(found) == 1:
                return call.reopen(found[0])
            self.picking = found
            return [] if found else [self.notice("nothing_found", sought=rest)]

        return self._on_call(find)

    def _change(self, rest: str) -> list[Notice]:
        """By its number among the facts; without one, they are shown to pick from."""

        def change(call: Call) -> list[Notice]:
            place = _place(rest, len(call.answered))
            if place is not None:
                return call.reopen(call.answered[place])
            self.picking = tuple(filter(call.may_reopen, call.answered))
            return [] if self.picking else [self.notice("nothing_known")]

        return self._on_call(change)

    def _back(self, rest: str) -> list[Notice]:
        def back(call: Call) -> list[Notice]:
            earlier = [each for each in call.answered if each != NOTES]
            if call.reopened in earlier:
                earlier = earlier[: earlier.index(call.reopened)]
            return call.reopen(earlier[-1]) if earlier else [self.notice("nothing_known")]

        return self._on_call(back)

    def _note(self, rest: str) -> list[Notice]:
        return self._on_call(lambda call: call.note(rest) if rest else [self.notice("note_empty")])

    def _view(self, rest: str) -> list[Notice]:
        self.panel = "facts" if self.panel == "causes" else "causes"
        self.shows_side = "where_narrow"
        return []

    def _all(self, rest: str) -> list[Notice]:
        self.shows_side = "in_full"
        return []

    def _end(self, rest: str) -> list[Notice]:
        """How the call ended, whatever else would be asked."""
        return self._on_call(lambda call: call.reopen(CALL_ENDED))

    def _why(self, rest: str) -> list[Notice]:
        self.shows_why = True
        return []

    def _how(self, rest: str) -> list[Notice]:
        def how(call: Call) -> list[Notice]:
            question = call.question
            return [Notice(call.read_out.question(question).how)] if question else [self.notice("nothing_open")]

        return self._on_call(how)

    def _unsure(self, rest: str) -> list[Notice]:
        return self._on_call(Call.not_sure)

    def _skip(self, rest: str) -> list[Notice]:
        return self._on_call(Call.skip)

    def _code(self, rest: str) -> list[Notice]:
        def code(call: Call) -> list[Notice]:
            notices = [] if call.conversation.stored else call.save()
            if not call.conversation.stored:
                return notices
            return [self.notice("code" if call.code else "code_unknown_here", code=call.way_back)]

        return self._on_call(code)

    def _save(self, rest: str) -> list[Notice]:
        return self._on_call(Call.save)

    def _leave(self, rest: str) -> list[Notice]:
        """Not while something waits to be written, unless it is said twice."""
        if self.unsaved_calls and normal(rest) != "all":
            for call in self.unsaved_calls:
                call.save()
            if self.unsaved_calls:
                return [self.notice("leave_unsaved", urgent=True)]
        raise Left

    def notice(self, name: str, /, *, urgent: bool = False, **arguments: str | float) -> Notice:
        return Notice(self.own.wording.say(f"desk-{name}", **arguments), urgent)


def _place(typed: str, lines: int) -> int | None:
    """Of a number in a list of so many lines, from 0 on; None for anything else."""
    digits = typed.lstrip("0")
    if not _is_number(typed) or len(digits) > MOST_DIGITS:
        return None
    return int(digits or 0) - 1 if 1 <= int(digits or 0) <= lines else None


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdigit()


def normal(text: str) -> str:
    return text.strip().casefold()


def _same(one: Call, other: Call) -> bool:
    return one.conversation.record.session_id == other.conversation.record.session_id
