"""Random paths through the whole script, many at once, with every invariant checked after every step."""

from collections import Counter, deque
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

import numpy as np

from assistant.knowledge.model import Care
from tests.safety.codes import FIRST, NOT_SURE, SKIPPED, Codes, Flags
from tests.safety.fast import Fast, Standing
from tests.safety.people import People, next_events, supposed_next
from tests.safety.talks import ANSWER, BEGIN, HEAR, IDLE, LEAVE, NOTE, TAKE_BACK, WITHDRAW, Happened, Talks
from tests.safety.watch import Watch

AT_ONCE = 4096
MOST_STEPS = 400
"""A path that is longer is cut, and counted as cut: never silently."""

MANY_QUESTIONS = 40
MEASURING = {BEGIN: "begun", TAKE_BACK: "less its last line", LEAVE: "left"}


@dataclass
class Found:
    """What was seen on all paths. `shortest`: of each invariant broken, the shortest path to it, in words."""

    paths: int = 0
    steps: int = 0
    offered: int = 0
    cut: int = 0
    many: int = 0
    longest: int = 0
    hot: int = 0
    measured: int = 0
    broken: Counter[str] = field(default_factory=Counter)
    raised: Counter[str] = field(default_factory=Counter)
    stopped: Counter[str] = field(default_factory=Counter)
    endings: Counter[str] = field(default_factory=Counter)
    shortest: dict[str, list[str]] = field(default_factory=dict)

    def add(self, other: "Found") -> None:
        """Take in what was seen elsewhere."""
        self.paths, self.steps, self.offered = (
            self.paths + other.paths,
            self.steps + other.steps,
            self.offered + other.offered,
        )
        self.cut, self.many, self.hot = self.cut + other.cut, self.many + other.many, self.hot + other.hot
        self.measured += other.measured
        self.longest = max(self.longest, other.longest)
        for name in ("broken", "raised", "stopped", "endings"):
            getattr(self, name).update(getattr(other, name))
        for name, path in other.shortest.items():
            if name not in self.shortest or len(path) < len(self.shortest[name]):
                self.shortest[name] = path


class Walk:
    """Walks a number of paths of one role."""

    def __init__(self, fast: Fast, paths: int, seed: int, at_once: int = AT_ONCE) -> None:
        number = min(paths, at_once)
        self.fast, self.found = fast, Found()
        self._left = paths - number
        self._chance = np.random.default_rng(seed)
        self._talks = Talks(fast.codes, number)
        self._watch = Watch(fast, number)
        self._people = People.drawn(number, self._chance)
        self._supposed = np.zeros(number, np.int64)
        self._going = np.ones(number, bool)
        self._put = np.zeros(number, np.int64)
        self._age = np.zeros(number, np.int64)
        self._hot = np.zeros(number, bool)
        self._measured = np.zeros(number, bool)
        self._past: deque[Happened] = deque(maxlen=MOST_STEPS + 1)

    def run(self, told: Callable[[Found], None] = lambda _: None) -> Found:
        """Walk all the paths; `told` hears how far it is now and then."""
        standing = self.fast.conclude(self._talks, self._supposed)
        offered = self.fast.offered(self._talks, standing)
        while self._going.any():
            event = next_events(self.fast, self._talks, self._people, offered, self._chance)
            self._leave(event, standing)
            self._past.append(event)
            self._count(event, offered)
            self._talks.happen(event, standing.hearable, standing.fit)
            self._supposed = supposed_next(self.fast, self._supposed, self._chance, event)
            standing = self.fast.conclude(self._talks, self._supposed)
            offered = self.fast.offered(self._talks, standing)
            self._check(event, standing, offered)
            told(self.found)
        return self.found

    def _leave(self, event: Happened, standing: Standing) -> None:
        """Paths that end: nothing more is said, or the person leaves with the verdict. New ones begin instead."""
        verdict = ~standing.danger_open | (standing.stops != 0)
        leaving = verdict & (self._chance.random(len(verdict)) < self._people.ends)
        cut = self._age >= MOST_STEPS
        ends = self._going & ((event.kind == IDLE) | leaving | cut)
        self.found.cut += int((ends & cut).sum())
        if ends.any():
            self._close(ends, standing)
            again = ends & (np.cumsum(ends) <= self._left)
            self._left -= int(again.sum())
            self._going &= ~ends | again
            self._restart(ends)
        silent = ends | ~self._going
        event.kind[silent] = IDLE

    def _close(self, ends: Flags, standing: Standing) -> None:
        found, put = self.found, self._put[ends]
        found.paths += int(ends.sum())
        found.many += int((put >= MANY_QUESTIONS).sum())
        found.longest = max(found.longest, int(put.max()))
        found.hot += int(self._hot[ends].sum())
        found.measured += int(self._measured[ends].sum())
        for sign_id, bit in self.fast.codes.bit.items():
            found.raised[sign_id] += int(((self._watch.ever | self._watch.pending)[ends] & bit != 0).sum())
            found.stopped[sign_id] += int((self._watch.ever[ends] & bit != 0).sum())
        for name, where in _endings(standing).items():
            found.endings[name] += int(where[ends].sum())

    def _restart(self, which: Flags) -> None:
        self._talks.restart(which)
        self._watch.restart(which)
        self._people.replace(which, self._chance)
        for kept in (self._supposed, self._put, self._age, self._hot, self._measured):
            kept[which] = 0

    def _count(self, event: Happened, offered: Flags) -> None:
        said = self._going & (event.kind != IDLE)
        asked = said & (event.kind == ANSWER) & offered[event.question, self._talks.all]
        self._put += asked
        self._age += self._going
        self.found.steps += int(said.sum())
        self.found.offered += int(offered[:, self._going].sum())

    def _check(self, event: Happened, standing: Standing, offered: Flags) -> None:
        self._hot |= offered[self.fast.care_of >= Care.WATCH_HOT.rank].any(axis=0)
        self._measured |= self._talks.measuring.any(axis=0)
        for name, where in self._watch.after(event, self._talks, standing, offered).items():
            where = where & self._going
            if where.any():
                self.found.broken[name] += int(where.sum())
                self._keep_shortest(name, where)

    def _keep_shortest(self, name: str, where: Flags) -> None:
        ages = np.where(where, self._age, MOST_STEPS + 1)
        talk = int(ages.argmin())
        if name not in self.found.shortest or ages[talk] < len(self.found.shortest[name]):
            past = list(self._past)[-int(ages[talk]) :]
            words = [in_words(self.fast.codes, event, talk) for event in past]
            self.found.shortest[name] = [word for word in words if word]


def _endings(standing: Standing) -> Mapping[str, Flags]:
    stopped = standing.stops != 0
    outside = ~stopped & standing.handed_on
    visit = ~stopped & ~outside & standing.must_visit
    return {
        "stop and isolate": stopped,
        "outside": outside,
        "a visit whatever belief says": visit,
        "as belief says": ~(stopped | outside | visit),
    }


def in_words(codes: Codes, event: Happened, talk: int) -> str:
    """What one person said, for who reads the path to a breach."""
    kind, question, code = (int(each[talk]) for each in (event.kind, event.question, event.code))
    match kind:
        case _ if kind == HEAR:
            return f"heard {codes.signs[question]}"
        case _ if kind == WITHDRAW:
            return f"{codes.questions[question]} taken back"
        case _ if kind == NOTE:
            return f"{codes.questions[question]}, noted: {('as usual', 'far too hot', 'nonsense', 'once more')[code]}"
        case _ if kind in MEASURING:
            return f"{codes.questions[question]} {MEASURING[kind]}"
        case _ if kind == ANSWER and code in (NOT_SURE, SKIPPED):
            return f"{codes.questions[question]}: {'not sure' if code == NOT_SURE else 'skipped'}"
        case _ if kind == ANSWER:
            return f"{codes.questions[question]}: {codes.value(question, max(code, FIRST), int(event.mask[talk]))}"
    return ""
