"""Measurements as evidence: what was written down at the oven -> how likely it is under each hypothesis."""

import contextlib
import io
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from hashlib import sha256
from pathlib import Path
from threading import Lock

import numpy as np

from assistant.belief import measured
from assistant.belief.combination import Floats
from assistant.belief.hypotheses import EvidenceModel
from assistant.belief.measured import Measured
from assistant.belief.outcomes_ahead import table
from assistant.belief.physical import DRAWS, SEED, UNKNOWN, Behaviours, Seen, behaviours, model_mark, simulate
from assistant.belief.remembered import Remembered
from assistant.knowledge import readings
from assistant.knowledge.fingerprint import sealed, unsealed, write_beside
from assistant.knowledge.model import HotRun, Kind, Knowledge

MOST_ROWS = 64

Weigh = Callable[[Seen, Sequence[str], float], Measured]
"""From what was simulated, the lines, and how long was simulated (s): what came later isn't weighed."""

WEIGHED: Mapping[Kind, Weigh] = {
    "lamp_log": lambda seen, lines, until_s: measured.of_lamp(seen, readings.lamp_log(lines).until(until_s)),
    "temperature_log": lambda seen, lines, until_s: measured.of_temperatures(
        seen, readings.temperature_log(lines).until(until_s)
    ),
    "browning": lambda seen, lines, _: measured.of_bread(seen, readings.browned_bread(lines)),
}


def _remembered() -> Remembered[Measured]:
    return Remembered(MOST_ROWS)


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
    _weighed: Remembered[Measured] = field(default_factory=_remembered)

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

    def weighed(self, written: str) -> Measured:
        """By behaviour. `written` are the lines, one below the other. Raises Refused for lines that can't be."""
        until_s = self.hot_run.longest.value * 60
        return self._weighed.get(written, lambda: WEIGHED[self.kind](self.prepare(), written.split("\n"), until_s))

    def replaces(self, written: str) -> tuple[str, ...]:
        """The observables that it tells more of than any other report: none, where a light was watched too briefly."""
        if self.kind == "lamp_log":
            log = readings.lamp_log(written.split("\n"))
            if not log.changes_s and log.ended_s < readings.LONG_ENOUGH * self.hot_run.longest.value * 60:
                return ()
        return self.measures

    def log_likelihood(self, written: str) -> Floats:
        """(H,) of each hypothesis."""
        found = self.weighed(written)
        of_hypothesis = self.behaviours.of_hypothesis
        return np.where(of_hypothesis == UNKNOWN, found.unnamed, found.log_likelihood[of_hypothesis])

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
    return replace(
        model,
        instruments={
            q: Instrument(question.kind, question.run, question.measures, ways, cache)
            for q, question in asked.items()
            if question.run is not None
        },
        state_given={**model.state_given, **{seen_by(q): found for q, found in tables.items()}},
        report_given={**model.report_given, **{q: np.eye(len(found)) for q, found in tables.items()}},
        codes={**model.codes, **{q: foreseen[q].outcomes for q in tables}},
        observable_of={**model.observable_of, **{q: seen_by(q) for q in asked}},
    )


def seen_by(question_id: str) -> str:
    """What a measurement reports, beside the observables of the rules: that which was seen."""
    return f"seen by {question_id}"
