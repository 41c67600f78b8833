"""What interviews make of each cause: small runs, on a small folder of rules."""

import io
import json
from dataclasses import replace
from xml.etree import ElementTree as Xml

import pytest

from assistant.authoring.coverage import Covered, Plan, _Player, coverage
from assistant.authoring.coverage_picture import LONGEST_NAME
from assistant.authoring.coverage_report import _draw, lines, report, worst_first
from assistant.authoring.separation import HARD_TO_TELL
from assistant.errors import Refused
from assistant.knowledge.danger_questions import is_danger_question
from assistant.reports.svg import SVG
from assistant.wording.locale import load_wording
from tests.belief import tiny
from tests.knowledge.broken import LOCALES, english

KNOWLEDGE = tiny.easily_asked()
REGION = next(iter(KNOWLEDGE.regions))
CAUSES = tuple(KNOWLEDGE.causes)
PLAN = Plan(CAUSES, 4, 7, 0.0, REGION)


def run(plan=PLAN, jobs=1):
    steps = []
    return coverage(KNOWLEDGE, plan, jobs, lambda: steps.append(1)), len(steps)


def said(plan=PLAN, picture=None, as_json=False):
    out = io.StringIO()
    status = report(KNOWLEDGE, plan, picture, english(), out, as_json=as_json)
    return status, out.getvalue()


def test_every_interview_is_counted_once():
    found, steps = run()
    assert steps == len(CAUSES) * 4
    assert [each.cause for each in found.causes] == list(CAUSES)
    for each in found.causes:
        assert each.ovens == 4
        assert 0 <= each.leads <= each.in_three <= 4
        assert each.leads + sum(count for _, count in each.instead) == 4
        assert 0 < each.questions_median <= each.questions_most
    assert not any(map(is_danger_question, found.never_asked))
    assert set(found.never_asked) < set(KNOWLEDGE.questions)


def test_neither_processes_nor_the_choice_of_causes_change_an_interview():
    whole, _ = run()
    in_two, _ = run(jobs=2)
    assert in_two == whole
    alone, _ = run(Plan(CAUSES[1:2], 4, 7, 0.0, REGION))
    assert alone.causes == whole.causes[1:2]


def test_mistakes_are_made_where_they_are_asked_for():
    plain, _ = run(Plan(CAUSES, 10, 7, 0.0, REGION))
    mistaken, _ = run(Plan(CAUSES, 10, 7, 1.0, REGION))
    assert sum(each.leads for each in mistaken.causes) < sum(each.leads for each in plain.causes)


def test_the_report_says_first_that_it_is_simulated():
    status, text = said()
    assert status == 0
    first = text.splitlines()[0]
    assert first.startswith("Simulated")
    assert "never shows how often the program would be right" in first
    assert all(any(line.startswith(cause) for line in text.splitlines()) for cause in CAUSES)


def test_json_holds_the_same_figures():
    status, text = said(as_json=True)
    assert status == 0
    data = json.loads(text)
    found, _ = run()
    assert data["simulated"].startswith("Simulated")
    assert [(c["id"], c["leads"], c["served"]) for c in data["causes"]] == [
        (c.cause, c.leads, c.served) for c in found.causes
    ]
    assert len(data["pairs"]) == len(CAUSES) * (len(CAUSES) + 1) // 2


def test_the_picture_has_a_row_for_each_cause_and_says_it_in_words(tmp_path):
    file = tmp_path / "picture.svg"
    status, text = said(picture=file)
    assert status == 0
    assert text.endswith(f"The picture is in {file}.\n")
    root = Xml.parse(file).getroot()  # noqa: S314 - written just now
    words = [element.text for element in root.findall(f".//{{{SVG}}}text")]
    assert set(CAUSES) <= set(words)
    assert {"named first", "named second or third", "not among the first three", "the longest one"} <= set(words)
    description = root.find(f"{{{SVG}}}desc").text
    assert description.splitlines() == list(lines(run()[0], english()))
    _, _, width, height = map(float, root.get("viewBox").split())
    for rect in root.findall(f"{{{SVG}}}rect"):
        assert float(rect.get("x", 0)) + float(rect.get("width")) <= width
        assert float(rect.get("y", 0)) + float(rect.get("height")) <= height
    assert max(map(len, words)) < 4 * LONGEST_NAME


def test_why_a_cause_seldom_leads_is_told_beside_it():
    found, _ = run()
    bad = replace(found.causes[0], leads=0, stopped=1, instead=((CAUSES[1], 4),))
    text = "\n".join(lines(replace(found, causes=(bad,)), english()))
    pair = found.nearest(bad.cause)
    assert pair == min((pair for pair in found.pairs if bad.cause in pair.causes), key=lambda each: each.least)
    (twin,) = set(pair.causes) - {bad.cause}
    seen = "" if pair.least >= HARD_TO_TELL else ", which a householder can't see apart"
    assert f"instead: {CAUSES[1]} 4; stopped in 25 %; nearest {twin}, {pair.least:.1f} decibans{seen}" in text


def test_a_cause_that_the_region_can_not_have_is_played_in_another(knowledge):
    player = _Player(knowledge, Plan(("phase_lost",), 1, 1, 0.0, "great_britain"))
    played = player(("phase_lost", 0))
    assert played.region == "germany"
    covered = replace(run()[0].causes[0], cause="phase_lost", region="germany")
    text = "\n".join(lines(replace(run()[0], causes=(covered,)), english()))
    assert "phase_lost: in germany" in text


def test_a_stop_serves_a_dangerous_cause(knowledge):
    player = _Player(knowledge, Plan(("base_element_leaks",), 6, 1, 0.0, "great_britain"))
    played = [player(("base_element_leaks", number)) for number in range(6)]
    stopped = [each for each in played if each.stopped]
    assert stopped
    assert all(each.served for each in stopped)


def test_in_the_picture_no_two_causes_are_called_alike(tmp_path, knowledge):
    covered = tuple(Covered(cause, 4, 1, 2, 3, 11, 31, (), 1) for cause in knowledge.causes)
    found = replace(run()[0], causes=covered)
    _draw(found, tmp_path / "all.svg", english(), io.StringIO(), quiet=True)
    root = Xml.parse(tmp_path / "all.svg").getroot()  # noqa: S314 - written just now
    words = [element.text for element in root.findall(f".//{{{SVG}}}text")]
    names = [each.text for each in root.findall(f".//{{{SVG}}}text") if each.get("text-anchor") == "end"]
    called = [name for name in names if not name.endswith("%")]
    assert len(set(called)) >= len(covered)
    assert "selector_contact_above" in called
    assert words.count("40") == 2


def test_every_line_is_in_the_language():
    marked = load_wording(LOCALES, "x-marked")
    assert all("⟦" in line for line in lines(run()[0], marked) if line)


def test_the_worst_stand_first():
    good, bad = (Covered(name, 4, leads, leads, 0, 1, 1, ()) for name, leads in (("good", 3), ("bad", 1)))
    assert worst_first([good, bad]) == [bad, good]
    assert bad.leads_too_seldom
    assert not Covered("enough", 5, 4, 5, 0, 1, 1, ()).leads_too_seldom


def test_what_can_not_be_is_a_sentence(tmp_path):
    near = f"{CAUSES[0]}s"
    assert said(Plan((near,), 1, 1, 0.0, REGION)) == (
        1,
        f"There is no cause “{near}” in these rules. Did you mean “{CAUSES[0]}”?\n",
    )
    status, text = said(Plan(CAUSES[:1], 1, 1, 0.0, REGION), tmp_path)
    assert status == 1
    assert text.endswith(f"{tmp_path} can't be written: Is a directory.\n")
    with pytest.raises(Refused, match="unknown_region"):
        said(Plan(CAUSES, 1, 1, 0.0, "mars"))
