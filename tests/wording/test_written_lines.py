"""Lines of a measurement in a language's words."""

from assistant.knowledge.readings import MOST_LINES
from assistant.wording.languages import Languages
from assistant.wording.pseudo import PSEUDO_LANG
from assistant.wording.sentences import Sentences
from assistant.wording.written_lines import written_lines


def test_times_and_figures_stay_and_words_are_the_languages(sentences: Sentences, languages: Languages) -> None:
    lines = ("7:40 out", "9:10 lit", "20:00 end", "5:00 90.5 C", "8:00 opened", "10:00 302 F", "top 333 332 22-")
    said = ["7:40 out", "9:10 lit", "20:00 end", "5:00 90.5 °C", "8:00 opened", "10:00 302 °F", "top 333 332 22-"]
    assert written_lines(lines, sentences.wording) == said
    marked = written_lines(lines, languages.sentences(PSEUDO_LANG, None).wording)
    assert marked[0] == "7:40 ⟦óút⟧"
    assert marked[-1] == "⟦tóp⟧ 333 332 22-"


def test_as_many_lines_as_are_taken_can_be_told(sentences: Sentences) -> None:
    lines = tuple(f"{number // 6}:{number % 6}0 {100 + number / 100:.2f} C" for number in range(MOST_LINES))
    told = sentences.given("thermometer_log", lines)
    assert "0:00 100.00 °C" in told
    assert "…" in told
