"""The choice of questions doesn't hang on the last bits of a matrix product."""

import pytest

from tests.benchmarks.same_picks import KERNELS, picks_under


def test_two_kernels_put_the_same_questions_and_come_to_the_same_endings():
    kernels, talks = zip(*(picks_under(kernel, talks=12) for kernel in KERNELS), strict=True)
    if kernels[0] == kernels[1]:
        pytest.skip("this machine's numpy has one kernel only")
    assert sum(len(talk.split()) for talk in talks[0]) > 100
    assert talks[0] == talks[1]
