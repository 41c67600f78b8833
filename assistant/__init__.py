"""Ovenside: a self-check assistant for electric ovens that cook badly.

The flow of one answer:
    rules/*.yaml  --knowledge-->  a typed model
    a typed line  --chat or drive-->  a command  --interview.decide-->  events
    events  --store-->  committed, then folded into the state of the session
    state  --engine-->  findings (what must stop, what may be asked)
    state  --belief-->  how probable each cause is
    findings + belief  --interview.look-->  the next question or the verdict  --wording-->  sentences
"""

__version__ = "0.1.0"
