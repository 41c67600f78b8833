"""Measurements weighed at once, as they are in an interview one after the other."""

from collections.abc import Sequence

from assistant.belief.synthetic import Compared, Measured, broad, combined, own, subsets


def weighed(measurements: Sequence[Compared], breadth: float) -> Measured:
    """All measurements of one oven together; `breadth` as in `combined`."""
    return combined([own(some) for some in subsets(measurements)], [broad(each) for each in measurements], breadth)
