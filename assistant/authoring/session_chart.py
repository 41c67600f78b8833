"""`ovenside sessions chart`: what was measured in a session, as a picture."""

from pathlib import Path
from typing import TextIO

from assistant.authoring.session_list import say_unknown
from assistant.errors import SessionUnknown
from assistant.interview.log import EventLog
from assistant.interview.script import Script
from assistant.interview.state import fold
from assistant.reports.measured import charts_of, described_in_words, put_right_in_words, words_of
from assistant.reports.svg_chart import svg_chart
from assistant.wording.sentences import Sentences


def draw(log: EventLog, script: Script, sentences: Sentences, prefix: str, picture: Path, out: TextIO) -> int:
    """The latest measurement that can be drawn, into the file; told in words too. Returns the exit status."""
    say = sentences.wording.say
    try:
        record = log.find_by_id_prefix(prefix)
    except SessionUnknown:
        return say_unknown(sentences.wording, out)
    answers = fold(log.read(record.session_id)).answers
    for question_id, chart, bias in charts_of(script, answers):
        try:
            picture.write_text(svg_chart(chart, words_of(sentences, question_id, chart, bias)), encoding="utf-8")
        except OSError as error:
            out.write(say("measured-not_written", reason=error.strerror or str(error)) + "\n")
            return 1
        told = (*put_right_in_words(sentences, bias), *described_in_words(sentences, chart))
        out.write("\n".join((*told, say("measured-written", where=str(picture)))) + "\n")
        return 0
    out.write(say("measured-nothing_drawn") + "\n")
    return 1
