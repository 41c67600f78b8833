"""What pairs of answers leave, against sums over every hypothesis."""

import numpy as np
import pytest

from assistant.belief.two_answers import pairs_of_rows

ROWS = [slice(0, 2), slice(2, 5), slice(5, 6), slice(6, 9)]


@pytest.fixture
def drawn():
    chance = np.random.default_rng(3)
    probabilities = chance.dirichlet(np.ones(40))
    members = (chance.random((40, 7)) < 0.3).astype(float)
    members[:, 4] = 0.0
    return chance.random((9, 40)), probabilities, members


@pytest.mark.parametrize("at_once", [1, 12, 30, 1000])
def test_every_pair_of_two_questions_answers_comes_once_with_what_it_leaves(drawn, at_once):
    given, probabilities, members = drawn
    seen = set()
    for pairs in pairs_of_rows(given, probabilities, members, ROWS, at_once):
        for first, second, marginals, total in zip(
            pairs.first, pairs.second, pairs.marginals, pairs.total, strict=True
        ):
            joint = given[first] * given[second] * probabilities
            assert marginals == pytest.approx(joint @ members)
            assert total == pytest.approx(joint.sum())
            assert (first, second) not in seen
            seen.add((int(first), int(second)))
    question = [number for number, rows in enumerate(ROWS) for _ in range(rows.stop - rows.start)]
    assert seen == {(a, b) for a in range(9) for b in range(9) if question[a] < question[b]}


def test_the_pairs_of_two_questions_are_found(drawn):
    (pairs,) = pairs_of_rows(*drawn, ROWS, 1000)
    at = pairs.places(ROWS[1], ROWS[3])
    wanted = [(a, b) for a in range(2, 5) for b in range(6, 9)]
    assert list(zip(pairs.first[at], pairs.second[at], strict=True)) == wanted


def test_no_questions_make_no_pairs(drawn):
    _, probabilities, members = drawn
    assert list(pairs_of_rows(np.empty((0, 40)), probabilities, members, [])) == []
