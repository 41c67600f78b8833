"""Tests that are chosen together: each by what it tells after those before it. Entropies by scipy."""

import numpy as np
import pytest
from scipy.stats import entropy

from assistant.belief.value import Candidate, Outlook, most_telling_together

HYPOTHESES = 5


def _outlook(tables: dict[str, np.ndarray], probabilities: np.ndarray) -> Outlook:
    """`tables`: question -> (answers, hypotheses)."""
    rows, start = {}, 0
    for question_id, table in tables.items():
        rows[question_id] = slice(start, start + len(table))
        start += len(table)
    members = np.eye(len(probabilities))
    return Outlook(probabilities, members, np.vstack(list(tables.values())), rows, {})


def _telling(chance: np.random.Generator, answers: int) -> np.ndarray:
    table = chance.dirichlet(np.full(answers, 0.4), size=HYPOTHESES).T
    return np.maximum(table, 1e-6) / np.maximum(table, 1e-6).sum(axis=0)


def _bits_left(tables: list[np.ndarray], probabilities: np.ndarray) -> float:
    """The entropy of the hypotheses that is expected after all these tests, in bits, summed over every outcome."""
    joint = probabilities[None, :]
    for table in tables:
        joint = (joint[:, None, :] * table[None]).reshape(-1, len(probabilities))
    return float(sum(row.sum() * entropy(row, base=2) for row in joint))


@pytest.mark.parametrize("seed", range(20))
def test_each_is_the_one_that_tells_most_in_a_minute_after_those_before_it(seed: int) -> None:
    chance = np.random.default_rng(seed)
    tables = {f"test_{n}": _telling(chance, answers) for n, answers in enumerate((2, 2, 3, 4, 2))}
    probabilities = chance.dirichlet(np.ones(HYPOTHESES))
    candidates = [Candidate(name, 0.0, float(chance.integers(2, 30))) for name in tables]
    chosen = most_telling_together(_outlook(tables, probabilities), candidates, 3, 0.0)
    before: list[np.ndarray] = []
    left = dict(zip(tables, candidates, strict=True))
    for name in chosen:
        now = _bits_left(before, probabilities)
        rates = {
            each: (now - _bits_left([*before, tables[each]], probabilities)) / (candidate.minutes + 10)
            for each, candidate in left.items()
        }
        assert rates[name] == pytest.approx(max(rates.values()), abs=1e-9)
        before.append(tables[name])
        del left[name]
    assert len(chosen) == 3


def test_what_another_test_has_told_counts_no_second_time() -> None:
    sure = np.array([[0.999, 0.999, 0.001, 0.001, 0.001], [0.001, 0.001, 0.999, 0.999, 0.999]])
    other = np.array([[0.8, 0.2, 0.8, 0.2, 0.5], [0.2, 0.8, 0.2, 0.8, 0.5]])
    tables = {"test_a": sure, "test_a_again": sure, "test_b": other}
    candidates = [Candidate(name, 0.0, 5.0) for name in tables]
    chosen = most_telling_together(_outlook(tables, np.full(HYPOTHESES, 0.2)), candidates, 3, 0.08)
    assert chosen == ["test_a", "test_b"]


def test_a_test_that_tells_too_little_is_not_made() -> None:
    tables = {"test_a": np.array([[0.52, 0.5, 0.48, 0.5, 0.5], [0.48, 0.5, 0.52, 0.5, 0.5]])}
    outlook = _outlook(tables, np.full(HYPOTHESES, 0.2))
    assert most_telling_together(outlook, [Candidate("test_a", 0.0, 1.0)], 3, 0.08) == []
