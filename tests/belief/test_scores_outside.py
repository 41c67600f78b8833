"""The scores against the metrics of scikit-learn."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some
from sklearn.metrics import brier_score_loss, log_loss

from assistant.belief.scores import brier_score, brier_score_of_categories, log_score, log_score_of_categories


@given(seed=some.integers(0, 2**32 - 1), count=some.integers(2, 30), categories=some.integers(3, 6))
def test_the_scores_are_those_of_scikit_learn(seed, count, categories):
    draw = np.random.default_rng(seed)
    said, came = draw.random(count), draw.integers(0, 2, count)
    assert brier_score(said, came.astype(float)) == pytest.approx(brier_score_loss(came, said))
    assert log_score(said, came.astype(float)) == pytest.approx(log_loss(came, said, labels=[0, 1]))
    rows, category = draw.dirichlet(np.ones(categories), count), draw.integers(0, categories, count)
    labels = list(range(categories))
    assert log_score_of_categories(rows, category) == pytest.approx(log_loss(category, rows, labels=labels))
    whole = sum(brier_score(rows[:, k], (category == k).astype(float)) for k in labels)
    assert brier_score_of_categories(rows, category) == pytest.approx(whole)
