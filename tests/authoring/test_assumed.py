"""Assumed numbers at the ends of their ranges: the quick way against rules that are compiled anew with the number."""

import io
import json
from dataclasses import replace

import numpy as np
import pytest

from assistant.authoring.assumed import KINDS, Mover, assumed, assumed_numbers, steps
from assistant.authoring.assumed_cases import AnsweredCase, difference
from assistant.authoring.assumed_report import lines, report
from assistant.authoring.cases import begin_case, hold
from assistant.authoring.places import figures_within, with_figure
from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.learning import base_rates
from assistant.errors import Refused
from assistant.interview.assess import assess
from assistant.interview.script import script_of
from assistant.interview.verdict import Verdict
from assistant.knowledge.likelihoods import NotADistribution
from assistant.knowledge.load import knowledge_of
from assistant.knowledge.rules_folder import read_folder
from assistant.wording.locale import load_wording
from tests.belief import tiny
from tests.benchmarks.small_networks import without_causes
from tests.conftest import ROOT
from tests.knowledge.broken import LOCALES, english

KNOWLEDGE = tiny.sound_knowledge()
REGION = next(iter(KNOWLEDGE.regions))
CASES = {
    "cold": {"answers": {"temperature_reached": "120", "browning_seen": "hardly"}},
    "gaps": {"answers": {"seal_seen": "has_gaps", "browning_seen": "on_one_side"}},
    "unsure": {"answers": {}},
}
TOLD = {
    "pale": {"what_goes_wrong": ["pale_below"], "underside_pale": "white_or_raw", "how_it_began": "from_one_day"},
    "hot": {"what_goes_wrong": ["too_hot"], "lamp_remembered": "never_goes_out", "low_setting": "stays_lit"},
    "worry": {"what_goes_wrong": ["a_worry"], "which_dishes": "one_dish"},
    "smell": {"danger_now": ["burning_smell"], "sign_burning_smell": "like_plastic_or_fish"},
    "trips": {"what_goes_wrong": ["trips_electricity"], "sign_trips": "went_again"},
}
ENTRIES = {"signs": "danger", "settings": "belief.yaml"}
"""Kind of a number -> where its entry stands in the folder that was read, where that is called otherwise."""


def answered(script, answers, region):
    """A session of which only the answers count: given one after the other, whatever would be asked."""
    conversation = begin_case(script, {}, region)
    hold(conversation, answers)
    return conversation


@pytest.fixture(scope="module")
def read():
    """The project's rules as they are written: nothing taken over from effects or signs."""
    return read_folder(ROOT / "rules")


@pytest.fixture(scope="module")
def left_out(knowledge):
    """All causes but some, so that the others are compiled quickly: those in pairs, some with one effect, some more."""
    in_pairs = {cause for pair in knowledge.pairs.values() for cause in pair.causes}
    alike = [cause_id for cause_id, cause in knowledge.causes.items() if cause.effect == "leaks_to_earth"]
    return knowledge.causes.keys() - {*list(knowledge.causes)[:8], *alike[:2], "terminal_burnt"} - in_pairs


@pytest.fixture(scope="module")
def script(knowledge, left_out):
    return script_of(without_causes(knowledge, left_out))


def compiled_anew(read, left_out, number, value):
    """The rules with the number in its own file, and loaded from there. Raises NotADistribution."""
    kind = ENTRIES.get(number.kind, number.kind)
    entry = with_figure(
        read.entries[kind][number.entry_id], number.path, number.figure.model_copy(update={"value": value})
    )
    entries = {**read.entries, kind: {**read.entries[kind], number.entry_id: entry}}
    return script_of(without_causes(knowledge_of(replace(read, entries=entries), "changed"), left_out))


@pytest.fixture(scope="module")
def mover(script):
    states = {name: answered(script, answers, "great_britain").state for name, answers in TOLD.items()}
    return Mover(script.knowledge, states)


def every_kind(numbers, each):
    """Some numbers of every kind and place."""
    kinds = {}
    for number in numbers:
        if not number.asking_only:
            kinds.setdefault((number.kind, number.path[0]), []).append(number)
    return [number for of_kind in kinds.values() for number in of_kind[:: max(1, len(of_kind) // each)][:each]]


def test_the_quick_way_ends_and_believes_as_rules_compiled_anew(mover, script, read, left_out):
    """Every kind of number, both ends, every case."""
    numbers = every_kind(assumed_numbers(script.knowledge, "great_britain"), 2)
    assert {number.kind for number in numbers} == {*KINDS, "settings", "regions"}
    compared, differing, _ = agree(mover, script, read, left_out, numbers)
    assert compared > 50
    assert differing


@pytest.mark.parametrize("kind", ["effects", "signs"])
def test_what_entries_have_in_common_moves_in_all_of_them(mover, script, read, left_out, kind):
    """Only the numbers that some of the causes or cases take over."""
    effects = {cause.effect for cause in script.knowledge.causes.values()}
    wanted = {"effects": effects, "signs": {"burning_smell", "trips"}}[kind]
    numbers = [n for n in assumed_numbers(script.knowledge, "great_britain") if n.kind == kind and n.entry_id in wanted]
    compared, _, moved = agree(mover, script, read, left_out, numbers[:12])
    assert compared > 20
    assert moved > 5


def agree(mover, script, read, left_out, numbers):
    """How often the quick way and the other were compared and found alike, and how often a case ended otherwise or
    moved at all.
    """
    compared = differing = moving = 0
    for number in numbers:
        for value in number.figure.range:
            try:
                quick = mover.script_with(number, value)
                anew = compiled_anew(read, left_out, number, value)
            except NotADistribution:
                continue
            change = difference(script.evidence_model, quick.evidence_model)
            for case in mover.cases.values():
                reference = AnsweredCase(anew, case.state)
                ended, moved = case.under(quick, change)
                assert ended == reference.as_it_is, (number, value)
                before, after = (assess(s, case.state).posterior for s in (script, anew))
                wanted = np.abs(before.marginals - after.marginals).max()
                wanted = max(wanted, abs(before.of_set(()) - after.of_set(())))
                assert moved == pytest.approx(wanted, abs=1e-9), (number, value)
                assert case.touched_by(change) or moved == 0
                compared += 1
                differing += ended != case.as_it_is
                moving += moved > 1e-6
    return compared, differing, moving


def test_no_number_is_moved_twice_or_left_out(knowledge, read):
    """Those of the folder as it is written, each once, under the file in which it stands."""
    written = {
        (f"{kind}/{entry_id}.yaml", path)
        for kind in ("causes", "effects", "pairs", "observables", "questions", "danger")
        for entry_id, entry in read.entries[kind].items()
        for path, figure in figures_within(entry)
        if figure.source == "assumed"
    }
    numbers = [n for n in assumed_numbers(knowledge, "great_britain") if n.kind in KINDS]
    assert len({(n.file, n.path) for n in numbers}) == len(numbers)
    assert {(n.file, n.path) for n in numbers} == written


def test_a_case_ends_under_the_rules_as_they_are_as_its_interview_did(script):
    for answers in TOLD.values():
        conversation = answered(script, answers, "great_britain")
        verdict = conversation.view()
        assert isinstance(verdict, Verdict)
        ended = AnsweredCase(script, conversation.state).as_it_is
        assert (ended.action, ended.first) == (verdict.action, verdict.leading)
        assert ended.stop == tuple(stop.sign_id for stop in verdict.stops)
        assert ended.who in (*map(str, verdict.details.values()), "")


def test_a_number_that_only_decides_what_is_asked_is_not_moved():
    numbers = list(assumed_numbers(KNOWLEDGE, REGION))
    asking = [number for number in numbers if number.asking_only]
    assert {number.path[-1] for number in asking if number.kind == "questions"} == {"minutes"}
    assert asking
    assert all(number.figure.source == "assumed" for number in numbers)
    assert all(number.figure.range is not None for number in numbers)
    assert steps(KNOWLEDGE, CASES, REGION) == len(CASES) + len(numbers) - len(asking)


def test_one_process_and_two_find_the_same():
    counted = []
    one = assumed(KNOWLEDGE, CASES, REGION, 1, lambda: counted.append(1))
    assert len(counted) == steps(KNOWLEDGE, CASES, REGION)
    two = assumed(KNOWLEDGE, CASES, REGION, 2, lambda: None)
    assert two == one
    order = [(len(each.cases), each.moved) for each in one.swayed]
    assert order == sorted(order, key=lambda pair: (-pair[0], -round(pair[1], 9)))


def said(folder, cases, most=20, as_json=False, region=REGION):
    out = io.StringIO()
    status = report(folder, KNOWLEDGE, cases, region, most, english(), out, as_json=as_json)
    return status, out.getvalue()


@pytest.fixture
def cases(tmp_path):
    folder = tmp_path / "tests" / "cases"
    folder.mkdir(parents=True)
    for name, case in CASES.items():
        (folder / f"{name}.yaml").write_text(json.dumps(case))
    return folder


def test_the_report_says_how_it_was_done_and_names_file_place_and_range(cases, tmp_path):
    status, text = said(tmp_path / "rules", None)
    assert status == 0
    assert text.startswith("Each number marked “assumed” is moved to each end of its range")
    found = assumed(KNOWLEDGE, CASES, REGION, 1, lambda: None)
    assert text.splitlines() == list(lines(found, cases.resolve(), 20, english()))
    changing = [each for each in found.swayed if each.cases]
    for each in changing[:20]:
        least, most = each.number.figure.range
        where = f"{each.number.file}: {'.'.join(each.number.path)} {each.number.figure.value:g}"
        assert any(line.startswith(where) and f"({least:g} to {most:g})" in line for line in text.splitlines())
    assert all("⟦" in line for line in lines(found, cases, 20, load_wording(LOCALES, "x-marked")) if line)
    few = list(lines(found, cases, 0, english()))
    assert (few[-1] == f"{len(changing)} more aren't shown; see --most.") == (len(changing) > 1)


def test_json_holds_every_number_that_was_moved(cases, tmp_path):
    data = json.loads(said(tmp_path, cases, as_json=True)[1])
    numbers = list(assumed_numbers(KNOWLEDGE, REGION))
    assert len(data["numbers"]) + data["asking_only"] == len(numbers)
    assert data["cases"].keys() == CASES.keys()
    assert all(len(number["ends"]) == len(set(number["range"])) for number in data["numbers"])


def test_no_cases_and_an_unknown_region_are_sentences(tmp_path):
    status, text = said(tmp_path / "rules", None)
    assert status == 1
    assert text.startswith("There are no cases beside")
    assert said(tmp_path, tmp_path) == (1, f"There is no case in {tmp_path}: a case is a YAML file with “answers”.\n")
    with pytest.raises(Refused, match="unknown_region"):
        said(tmp_path, None, region="mars")


def test_a_model_compiled_anew_differs_in_nothing_though_it_measures_nothing():
    knowledge = knowledge_of(read_folder(ROOT / "rules"), "")
    whole, anew = script_of(knowledge).evidence_model, compile_evidence_model(knowledge, base_rates(knowledge))
    assert whole.state_given.keys() > anew.state_given.keys()
    found = difference(whole, anew)
    assert (found.priors, found.states, found.reports) == (None, {}, frozenset())
