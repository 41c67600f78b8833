"""`ovenside rules calibration`: how well what was called likely came true, in figures and as a picture."""

from collections.abc import Iterator
from pathlib import Path
from typing import TextIO

from assistant.authoring.reliability_diagram import Labels, Panel, reliability_diagram
from assistant.belief.calibration import Calibration, Scores, calibration
from assistant.belief.outcomes import Outcome
from assistant.belief.scores import Band
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording

SCORES = ("brier_of_hypotheses", "log_of_hypotheses", "brier_of_causes", "log_of_causes")


def report(knowledge: Knowledge, outcomes: tuple[Outcome, ...], svg: Path | None, wording: Wording, out: TextIO) -> int:
    """Print scores and bands; draw them too where `svg` says so. Returns the exit status."""
    found = calibration(outcomes, knowledge)
    if found is None:
        out.write(wording.say("outcomes-none") + "\n")
        return 1
    for line in _lines(found, wording):
        out.write(line + "\n")
    return 0 if svg is None else _draw(found, svg, wording, out)


def _lines(found: Calibration, wording: Wording) -> Iterator[str]:
    yield wording.say("calibration-cases", count=found.cases)
    yield wording.say("calibration-scores")
    for name in SCORES:
        yield wording.say(
            f"calibration-{name}", answers=_score(found.scores, name), rates=_score(found.scores_of_rates_alone, name)
        )
    yield ""
    yield wording.say("calibration-leader")
    yield from (_band(band, wording) for band in found.bands_of_leader)
    yield ""
    yield wording.say("calibration-causes")
    yield from (_band(band, wording) for band in found.bands_of_causes)


def _score(scores: Scores, name: str) -> str:
    return f"{getattr(scores, name):.4f}"


def _band(band: Band, wording: Wording) -> str:
    return wording.say(
        "calibration-band",
        low=_whole(band.low),
        high=_whole(band.high),
        count=str(band.count).rjust(6),
        predicted=_percent(band.predicted),
        observed=_percent(band.observed),
        least=_percent(band.observed_low),
        most=_percent(band.observed_high),
    )


def _whole(share: float) -> str:
    return f"{share * 100:.0f}".rjust(3)


def _percent(share: float) -> str:
    return f"{share * 100:.1f}".rjust(5)


def _draw(found: Calibration, svg: Path, wording: Wording, out: TextIO) -> int:
    say = wording.say
    labels = Labels(
        title=say("calibration-title"),
        description="\n".join([say("calibration-picture"), *_lines(found, wording)]),
        predicted=say("calibration-axis_predicted"),
        observed=say("calibration-axis_observed"),
        counts=say("calibration-axis_counts"),
        legend=say("calibration-legend"),
    )
    panels = (
        Panel(say("calibration-panel_leader"), "square", found.bands_of_leader),
        Panel(say("calibration-panel_causes"), "circle", found.bands_of_causes),
    )
    try:
        svg.write_text(reliability_diagram(panels, labels), "utf-8")
    except OSError as error:
        out.write(say("learn-not_written", where=str(svg), reason=error.strerror or str(error)) + "\n")
        return 1
    out.write(say("calibration-drawn", where=str(svg)) + "\n")
    return 0
