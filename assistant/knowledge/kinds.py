"""The kinds of questions. Standard library only: the first screen waits for it."""

from collections.abc import Mapping
from typing import Literal

Kind = Literal["choice", "choices", "number", "text", "lamp_log", "temperature_log", "browning"]
VERY_HOT = "very_hot"
MEASURED_CODES: Mapping[Kind, tuple[str, ...]] = {
    "lamp_log": ("never_lit", "never_out", "lit_so_far", "cycles", "out_and_never_on", "dark_and_then_lit"),
    "temperature_log": ("read", VERY_HOT),
    "browning": ("looked_at",),
}
"""The words by which rules read what was measured."""
MEASUREMENTS = tuple(MEASURED_CODES)
