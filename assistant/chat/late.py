"""What is typed after the longest time of a measurement, and what it says of the time before."""

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.knowledge.readings import latest_s, minutes_and_seconds

NEVER_MIND_S = 120.0
"""What is typed later than this after the longest time says nothing of the time between."""


@dataclass(frozen=True)
class Late:
    """Typed lines: those until the longest time, those soon after it, and those for which it was far too late."""

    before: tuple[str, ...]
    soon: tuple[str, ...]
    far: tuple[str, ...]


def parted(lines: Sequence[str], longest_s: float) -> Late:
    """An end is no line to be noted, so it is never among those before."""
    timed = [(latest_s([line]), line) for line in lines]
    return Late(
        before=tuple(line for at, line in timed if at <= longest_s and not line.endswith(" end")),
        soon=tuple(line for at, line in timed if longest_s < at <= longest_s + NEVER_MIND_S),
        far=tuple(line for at, line in timed if at > longest_s + NEVER_MIND_S and not line.endswith(" end")),
    )


def cut_to(lines: Sequence[str], longest_s: float) -> tuple[str, ...]:
    """The last of the lines, as if it were of the longest time: two of one time would contradict each other."""
    return tuple(f"{minutes_and_seconds(longest_s)} {line.split(' ', 1)[1]}" for line in lines[-1:])


def lamp_now(noted: Sequence[str]) -> str:
    """`lit` or `out`, as it was noted last. At the start it is lit, for the oven was just switched on."""
    return "out" if noted and noted[-1].endswith(" out") else "lit"


def fits(noted: Sequence[str], soon: Sequence[str]) -> bool:
    """Whether a change of the lamp that was told soon after the longest time can follow what was noted."""
    return not soon or not soon[0].endswith(f" {lamp_now(noted)}")
