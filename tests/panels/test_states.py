"""What the panels know, without a screen; and that their views mirror it."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from handwheel import panels
from handwheel.job.folder import history, open_job
from handwheel.job.here import open_here
from handwheel.panels.calculation_state import CalculationState
from handwheel.panels.part_state import PartState
from handwheel.worked import forms

WHEN = datetime(2026, 3, 4, tzinfo=UTC)


@pytest.fixture
def state(tmp_path):
    return PartState(*open_here(tmp_path))


def test_a_calculation_asks_answers_and_refuses():
    state = CalculationState("taper")
    assert state.answer is None
    assert state.sentence.startswith("Give large + small + length")
    state.type_in("large", "1-1/16")
    assert "are missing" in state.sentence
    state.type_in("small", ".828125")
    state.type_in("length", "1-7/8")
    assert state.answer.ratio == "1:8"
    assert state.echo(state.form.fields[0]) == "1-1/16 in = 1.0625 in"
    state.type_in("length", "nonsense")
    assert state.answer is None
    assert state.sentence.startswith("length: 'nonsense' can't be read")
    state.type_in("length", "")
    state.use_units("mm")
    assert state.answer is None


@pytest.mark.parametrize("name", sorted(forms.registry()))
def test_every_calculation_has_its_panel_from_its_own_form(name):
    panel = panels.for_calculation(name)
    labels = {field.name.replace("-", " ") for field in forms.form(name).fields}
    shown = {entry.children[0].description for entry in panel.children[2:-1]}
    assert shown == labels


def test_a_view_mirrors_its_state():
    panel = panels.for_calculation("fine-feed-angle", {"per-division": ".001", "advance": ".0001"})
    assert "5.7392" in panel.children[-1].value
    panel.children[3].children[0].value = "<b>1,5"
    assert "&lt;b&gt;1,5" in panel.children[-1].value
    assert "5.7392" not in panel.children[-1].value


def test_a_size_typed_over_moves_the_drawing_and_the_dial(state):
    before = {line.number: line.values for line in state.lines()}
    state.type_over("collar", "diameter", "1.760 ±.005")
    assert state.sentences == ()
    touch = state.lines()[0].values
    # Ø1.874 - 1.760 = .114: .057 of travel, so the ring is set at .100 - .057 = .043
    assert (touch["cross-set"], touch["zero-diameter"]) == (".043", "1.7600")
    assert 'data-feature="collar" data-diameter="1.7650 / 1.7550"' in state.drawing()
    assert state.changed
    assert before != {line.number: line.values for line in state.lines()}


@pytest.mark.parametrize("text", ["1,5", "1.76", "", "9.000 ±.005", "0.5 ±.001", "1.76 -.005 +.005", "<b>"])
def test_nonsense_keeps_the_part_and_gets_a_sentence(state, text):
    job, road = state.job, state.road
    state.type_over("collar", "diameter", text)
    assert len(state.sentences) == 1
    assert state.sentences[0].endswith(".")
    assert (state.job, state.road) == (job, road)


def test_moving_a_shoulder_moves_what_meets_there(state):
    state.type_over("collar", "to", "3.900")
    assert state.sentences == ()
    typed = {entry["name"]: entry for entry in state.job.part.features}
    assert typed["seal journal"]["from"] == "3.900"
    assert typed["seal fillet"]["at"] == "3.900"
    state.type_over("bearing seat", "to", "3.320 ±.005")
    typed = {entry["name"]: entry for entry in state.job.part.features}
    assert typed["collar"]["from"] == "3.320 ±.005"
    assert typed["bearing fillet"]["at"] == "3.320"


def test_keeping_saves_the_job_and_the_version_before(state):
    state.type_over("collar", "diameter", "1.760 ±.005")
    state.keep(WHEN)
    assert not state.changed
    assert open_job(state.folder) == state.job
    assert len(history(state.folder)) == 1
    state.type_over("collar", "diameter", "1.755 ±.005")
    state.keep(WHEN)
    assert len(history(state.folder)) == 2


def test_the_parts_panel_types_and_shows(state):
    panel = panels.for_part(state.job, state.folder, clock=lambda: WHEN)
    field = panel._fields["collar", "diameter"]
    field.value = "1.760 ±.005"
    assert ".043" in panel._dials.value
    assert not panel._keep.disabled
    field.value = "1,76"
    assert "comma" in panel._said.value
    assert panel.state.fields["collar", "diameter"] == "1.760 ±.005"
    panel._keep.click()
    assert open_job(state.folder).part == panel.state.job.part
    assert panel._keep.disabled
