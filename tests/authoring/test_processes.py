"""Work spread over processes."""

import pytest

from assistant.authoring.processes import processors, spread


class Multiplier:
    def __init__(self, factor):
        self.factor = factor

    def __call__(self, number):
        if number < 0:
            raise ValueError(number)
        return self.factor * number


@pytest.mark.parametrize("jobs", [1, 2])
def test_results_come_in_the_order_of_the_tasks(jobs):
    assert list(spread(Multiplier, (3,), range(20), jobs, 4)) == [3 * number for number in range(20)]


@pytest.mark.parametrize("jobs", [1, 2])
def test_what_goes_wrong_in_a_process_goes_wrong_here(jobs):
    with pytest.raises(ValueError, match="-1"):
        list(spread(Multiplier, (3,), [1, -1, 2], jobs, 1))


def test_there_is_at_least_one_processor():
    assert processors() >= 1
