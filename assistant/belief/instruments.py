"""Measurements as evidence: what was written down at the oven -> how likely it is under each hypothesis."""

import contextlib
import io
from collections.abc import Callable, Mapping, Sequence, Set
from copy import deepcopy
from dataclasses import dataclass, field, fields, replace
from hashlib import sha256
from pathlib import Path
from threading import Lock

import numpy as np
import numpy.typing as npt

from assistant.belief import measured
from assistant.belief.combination import Floats
from assistant.belief.hypotheses import EvidenceModel
from assistant.belief.outcomes_ahead import table
from assistant.belief.physical import DRAWS, SEED, UNKNOWN, Behaviours, Seen, behaviours, model_mark, simulate
from assistant.belief.posterior import DECIBANS_PER_NAT
from assistant.belief.remembered import Remembered
from assistant.belief.synthetic import (
    GROUPS,
    Compared,
    Measured,
    broad,
    combined,
    jackknife_error,
    left_out,
    own,
    subsets,
)
from assistant.knowledge import readings
from assistant.knowledge.fingerprint import sealed, unsealed, write_beside
from assistant.knowledge.model import HotRun, Kind, Knowledge

MOST_ROWS = 64

Compare = Callable[[Seen, Sequence[str], float], Compared]
"""From what was simulated, the lines, and how long was simulated (s): what came later isn't weighed."""

COMPARED: Mapping[Kind, Compare] = {
    "lamp_log": lambda seen, lines, until_s: measured.of_lamp(seen, readings.lamp_log(lines).until(until_s)),
    "temperature_log": lambda seen, lines, until_s: measured.of_temperatures(
        seen, readings.temperature_log(lines).until(until_s)
    ),
    "browning": lambda seen, lines, _: measured.of_bread(seen, readings.browned_bread(lines)),
}


@dataclass
class Instrument:
    """One measuring question. What the ovens would show is simulated when it is first needed, or earlier by
    `prepare`, and kept in the folder `cache` if there is one.
    """

    kind: Kind
    hot_run: HotRun
    measures: tuple[str, ...]
    behaviours: Behaviours
    cache: Path | None = None
    _seen: Seen | None = None
    _lock: Lock = field(default_factory=Lock)

    def __deepcopy__(self, memo: object) -> "Instrument":
        return Instrument(self.kind, self.hot_run, self.measures, self.behaviours, self.cache, self._seen)

    def prepare(self) -> Seen:
        """Simulate, or fetch what was kept. Takes seconds the first time; safe for two threads."""
        with self._lock:
            if self._seen is None:
                self._seen = self._kept() or self._simulated()
            return self._seen

    @property
    def ready(self) -> bool:
        return self._seen is not None

    def compared(self, written: str) -> Compared:
        """`written` are the lines, one below the other. Raises Refused for lines that can't be."""
        until_s = self.hot_run.longest.value * 60
        return COMPARED[self.kind](self.prepare(), written.split("\n"), until_s)

    def replaces(self, written: str) -> tuple[str, ...]:
        """The observables that it tells more of than any other report: none, where a light was watched too briefly."""
        if self.kind == "lamp_log":
            log = readings.lamp_log(written.split("\n"))
            if not log.changes_s and log.ended_s < readings.LONG_ENOUGH * self.hot_run.longest.value * 60:
                return ()
        return self.measures

    def _simulated(self) -> Seen:
        seen = simulate(self.behaviours.distinct, self.hot_run)
        if self.cache is not None:
            write_beside(self._place(self.cache), sealed(_packed(seen)))
        return seen

    def _kept(self) -> Seen | None:
        if self.cache is None:
            return None
        with contextlib.suppress(OSError, ValueError, KeyError):
            return _unpacked(unsealed(self._place(self.cache).read_bytes()))
        return None

    def _place(self, cache: Path) -> Path:
        run = self.hot_run
        named = (model_mark(), DRAWS, SEED, run.way, run.setting.value, run.longest.value, self.behaviours.distinct)
        return cache / f"seen-{sha256(repr(named).encode()).hexdigest()[:32]}.npz"


@dataclass
class Measurements:
    """What was measured at one oven, weighed together: `instruments` by their questions.

    `breadth`: the share of something else that shows anything.
    """

    instruments: Mapping[str, Instrument]
    breadth: float
    _compared: Remembered[Compared] = field(default_factory=lambda: Remembered(MOST_ROWS))
    _own: Remembered[Floats] = field(default_factory=lambda: Remembered(MOST_ROWS))
    _broad: Remembered[float] = field(default_factory=lambda: Remembered(MOST_ROWS))

    def __deepcopy__(self, memo: dict[int, object]) -> "Measurements":
        return Measurements(deepcopy(self.instruments, memo), self.breadth)

    def log_likelihoods(self, written: Mapping[str, str]) -> dict[str, Floats]:
        """Question -> (H,): what its measurement adds to those before it.

        `written`: question -> the lines, one below the other. Raises Refused for lines that can't be.
        """
        found: dict[str, Floats] = {}
        so_far: dict[str, str] = {}
        together: Floats = np.zeros(())
        for question_id, lines in written.items():
            so_far[question_id] = lines
            before, together = together, self._of_hypotheses(so_far)
            found[question_id] = together - before
        return found

    def _of_hypotheses(self, written: Mapping[str, str]) -> Floats:
        return self._by_hypothesis(self.weighed(written))

    def _by_hypothesis(self, found: Measured) -> Floats:
        of_hypothesis = self._of_hypothesis
        return np.where(of_hypothesis == UNKNOWN, found.unnamed, found.log_likelihood[of_hypothesis])

    def weighed(self, written: Mapping[str, str]) -> Measured:
        """By behaviour, by `combined`: of what was weighed before, nothing is computed again."""
        told = tuple(sorted(written.items()))
        right, wrong = map(self._of_right, subsets(told)), map(self._of_wrong, told)
        return combined(list(right), list(wrong), self.breadth)

    def _of_right(self, told: tuple[tuple[str, str], ...]) -> Floats:
        return self._own.get(told, lambda: own([self._beside(each) for each in told]))

    def _of_wrong(self, told: tuple[str, str]) -> float:
        return self._broad.get(told, lambda: broad(self._beside(told)))

    def _beside(self, told: tuple[str, str]) -> Compared:
        question_id, lines = told
        return self._compared.get(told, lambda: self.instruments[question_id].compared(lines))

    def error_decibans(self, written: Mapping[str, str], new: Set[str], first: int, second: int) -> float:
        """Of by how much the `new` ones among them speak for the first hypothesis against the second."""
        after = self._apart_without(written, first, second)
        before = self._apart_without({q: lines for q, lines in written.items() if q not in new}, first, second)
        error = jackknife_error([now - then for now, then in zip(after, before, strict=True)])
        return float(error * DECIBANS_PER_NAT)

    def _apart_without(self, written: Mapping[str, str], first: int, second: int) -> list[float]:
        """The first log-likelihood less the second, with each group of draws left out in turn."""
        if not written:
            return [0.0] * GROUPS
        compared = [self._beside(each) for each in sorted(written.items())]
        rows = [self._by_hypothesis(each) for each in left_out(compared, self.breadth)]
        return [float(row[first] - row[second]) for row in rows]

    @property
    def _of_hypothesis(self) -> npt.NDArray[np.intp]:
        return next(iter(self.instruments.values())).behaviours.of_hypothesis


def _packed(seen: Seen) -> bytes:
    packed = io.BytesIO()
    np.savez(packed, **{each.name: getattr(seen, each.name) for each in fields(Seen)})
    return packed.getvalue()


def _unpacked(packed: bytes) -> Seen:
    with np.load(io.BytesIO(packed), allow_pickle=False) as kept:
        return Seen(**{each.name: kept[each.name] for each in fields(Seen)})


def with_instruments(model: EvidenceModel, knowledge: Knowledge, cache: Path | None = None) -> EvidenceModel:
    """The model with the measuring questions among its reports.

    What a measurement may come to is foreseen in a few outcomes, so that it can be weighed against other questions;
    once it was made, its own likelihoods count. One that isn't foreseen is never chosen for its worth. `cache`: where
    simulated ovens are kept.
    """
    asked = {q: question for q, question in knowledge.questions.items() if question.run is not None}
    if not asked:
        return model
    ways = behaviours(knowledge, model.hypotheses)
    foreseen = {q: knowledge.foreseen[q] for q in asked if q in knowledge.foreseen}
    tables = {q: found for q, f in foreseen.items() if (found := table(f, knowledge, model.hypotheses)) is not None}
    instruments = {
        q: Instrument(question.kind, question.run, question.measures, ways, cache)
        for q, question in asked.items()
        if question.run is not None
    }
    return replace(
        model,
        instruments=instruments,
        measurements=Measurements(instruments, knowledge.settings.something_else_breadth.share),
        state_given={**model.state_given, **{seen_by(q): found for q, found in tables.items()}},
        report_given={**model.report_given, **{q: np.eye(len(found)) for q, found in tables.items()}},
        codes={**model.codes, **{q: foreseen[q].outcomes for q in tables}},
        observable_of={**model.observable_of, **{q: seen_by(q) for q in asked}},
    )


def seen_by(question_id: str) -> str:
    """What a measurement reports, beside the observables of the rules: that which was seen."""
    return f"seen by {question_id}"
