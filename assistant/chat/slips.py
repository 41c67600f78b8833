"""Readings that no oven comes to, as they are named to whoever typed them."""

from collections.abc import Sequence

A_LIKELY_READING = "90"


def in_words(slips: Sequence[str]) -> str:
    """Of lines such as `4:30 800 C` when and what was read."""
    return ", ".join(line.rsplit(" ", 1)[0] for line in slips)


def example(slip: str) -> str:
    """How the same reading may be typed anew."""
    return f"{slip.split(' ')[0]} {A_LIKELY_READING}"
