"""What a desk says to the agent about the latest line."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Notice:
    """`urgent`: about danger, or that something isn't saved; `line_stays`: what was typed may be put right."""

    text: str
    urgent: bool = False
    line_stays: bool = False
