"""`handwheel calc`: the contract's names, units and meanings, and its refusals."""

from __future__ import annotations

import json
import math

import pytest

from handwheel import cli
from handwheel.tables.materials import material
from handwheel.worked import forms


def calc(capsys, *arguments):
    with pytest.raises(SystemExit) as ended:
        cli.main(["calc", *arguments])
    said = capsys.readouterr()
    return ended.value.code, said.out, said.err


def answer(capsys, *arguments):
    code, out, err = calc(capsys, *arguments, "--json")
    assert (code, err) == (0, "")
    return json.loads(out)


# The contract's inputs and results, in inches and in millimetres: each result with its unit, None for text or a whole
# number. Values by hand, to the places given.
INCH = [
    ("dial-cut reduce=.250 division=.001 per-turn=.100 reads=travel start=.037",
     {"travel": (0.125, "in"), "divisions": 125, "turns": 1, "reading": (0.062, "in"), "left-over": (0, "in")}),
    ("dial-cut reduce=.2004 division=.001 per-turn=.250 reads=diameter",
     {"travel": (0.1002, "in"), "divisions": 200, "turns": 0, "reading": (0.200, "in"), "left-over": (0.0004, "in")}),
    ("dial-cut reduce=2.000 division=.001 per-turn=.100 reads=travel",
     {"travel": (1.0, "in"), "divisions": 1000, "turns": 10, "reading": (0, "in"), "left-over": (0, "in")}),
    ("fine-feed-angle per-division=.001 advance=.0001", {"angle-to-axis": (5.739170, "°")}),
    # 1 in aluminium at 30 °C by an instrument at 20 °C: 1/(1 + 23e-6 × 10)
    ("size-at-20 reading=1 part-temperature=30 instrument-temperature=20 expansion=23e-6",
     {"size": (0.99977005, "in"), "correction": (-0.00022995, "in")}),
    ("spindle-speed cutting-speed=90 diameter=1.5 speeds=45,70,105,160,240,360",
     {"exact-rpm": (229.183, "rev/min"), "chosen-rpm": (240, "rev/min")}),
    ("spindle-speed cutting-speed=90 diameter=1.5", {"exact-rpm": (229.183, "rev/min"), "chosen-rpm": (229.183, "rev/min")}),
    ("turning-power kc11=1700 mc=.25 depth=2mm feed=0.2mm/rev cutting-speed=80m/min",
     {"force": (1016.84, "N"), "power": (1.35578, "kW")}),
    # f²/8r = .004²/(8 × .015625) = 128e-6 in
    ("surface-finish feed=.004 nose-radius=1/64", {"rt": (128, "µin"), "ra": (32, "µin")}),
    ("taper large=1.0625 small=.828125 length=1-7/8",
     {"taper-per-foot": (1.5, "in/ft"), "diameter-per-length": (0.125, "1"), "half-angle": (3.576334, "°"),
      "included-angle": (7.152669, "°"), "ratio": "1:8"}),
    # π/4 × 2² × 12 × .284 lb
    ("bar-stock diameter=2 length=12 density=.284", {"mass": (10.70655, "lb")}),
]  # fmt: skip
MM = [
    ("dial-cut reduce=5 division=0.02 per-turn=4 reads=diameter start=3.5",
     {"travel": (2.5, "mm"), "divisions": 250, "turns": 2, "reading": (0.5, "mm"), "left-over": (0, "mm")}),
    ("spindle-speed cutting-speed=25 diameter=40", {"exact-rpm": (198.944, "rev/min"), "chosen-rpm": (198.944, "rev/min")}),
    ("turning-power kc11=1700 mc=.25 depth=2 feed=.2 cutting-speed=80 approach-angle=45",
     {"force": (1108.87, "N"), "power": (1.47849, "kW")}),
    ("surface-finish feed=.2 nose-radius=.8", {"rt": (6.25, "µm"), "ra": (1.5625, "µm")}),
    ("taper ratio=1:10",
     {"taper-per-foot": (1.2, "in/ft"), "diameter-per-length": (0.1, "1"), "half-angle": (2.862405, "°"),
      "included-angle": (5.724811, "°"), "ratio": "1:10"}),
    # π/4 × 50² × 1000 mm³ × 7.85e-6 kg/mm³
    ("bar-stock diameter=50 length=1000 density=7850", {"mass": (15.41344, "kg")}),
    ("size-at-20 reading=50 part-temperature=20 instrument-temperature=30 expansion=11.5e-6",
     {"size": (50.00575, "mm"), "correction": (0.00575, "mm")}),
]  # fmt: skip


@pytest.mark.parametrize(
    ("line", "system", "expected"),
    [(line, "in", expected) for line, expected in INCH] + [(line, "mm", expected) for line, expected in MM],
)
def test_a_calculation_answers_in_the_contracts_names_and_units(capsys, line, system, expected):
    name, *inputs = line.split()
    found = answer(capsys, name, *inputs, "--units", system)
    assert list(found) == ["name", "inputs", "results", "sources", "cautions"]
    assert found["name"] == name
    assert set(found["inputs"]) == {each.partition("=")[0] for each in inputs}
    assert found["sources"]
    assert set(found["results"]) == set(expected)
    for result, wanted in expected.items():
        if isinstance(wanted, tuple):
            value, unit = wanted
            assert found["results"][result] == {"value": pytest.approx(value, rel=5e-6, abs=1e-8), "unit": unit}, result
        else:
            assert found["results"][result] == wanted
            assert type(found["results"][result]) is type(wanted)


def test_a_material_stands_for_its_figure_and_its_source_is_named(capsys):
    steel = material("1018")
    by_name = answer(capsys, "bar-stock", "diameter=2", "length=12", "material=AISI 1018")
    by_figure = answer(capsys, "bar-stock", "diameter=2", "length=12", f"density={steel.density} kg/m3")
    assert by_name["results"] == by_figure["results"]
    assert by_name["inputs"]["material"] == "AISI 1018"
    assert any("1018" in source for source in by_name["sources"])
    assert not any("1018" in source for source in by_figure["sources"])
    warm = answer(capsys, "size-at-20", "reading=2", "part-temperature=120 F", "material=1018")
    same = answer(capsys, "size-at-20", "reading=2", "part-temperature=120 F", f"expansion={steel.expansion!r}")
    for result, found in warm["results"].items():
        assert found["value"] == pytest.approx(same["results"][result]["value"], rel=1e-12)
    assert any("1018" in source for source in warm["sources"])


def test_every_listed_speed_too_fast_takes_the_lowest_and_says_so(capsys):
    found = answer(capsys, "spindle-speed", "cutting-speed=10", "diameter=14", "speeds=105,70")
    assert found["results"]["chosen-rpm"]["value"] == 70
    assert any("slowest" in caution for caution in found["cautions"])


@pytest.mark.parametrize("system", ["in", "mm"])
def test_inputs_come_back_as_typed_in_the_asked_units(capsys, system):
    found = answer(capsys, "turning-power", "kc11=1700", "mc=.25", "depth=.08 in", "feed=.008 in/rev",
                   "cutting-speed=260 sfm", "--units", system)["inputs"]  # fmt: skip
    assert found["kc11"] == {"value": 1700, "unit": "MPa"}  # a bare specific force is MPa in either system
    factor, unit = (1, "in") if system == "in" else (25.4, "mm")
    assert found["depth"] == {"value": pytest.approx(0.08 * factor), "unit": unit}


REFUSED = [
    ("taper large=1 small=.5", "length is missing"),
    ("taper large=1 small=1 length=2", "larger"),
    ("taper large=1 small=.5 length=0", "length"),
    ("taper large=1 small=.5 length=2 half-angle=3", "too many"),
    ("taper half-angle=90", "between 0 and 90"),
    ("taper ratio=1:0", "zero"),
    ("taper ratio=-1:8", "ratio"),
    ("taper taper-per-foot=0", "more than 0"),
    ("taper named=Morse9", "Morse 0 to 7"),
    ("taper small-end=1", "do you mean small"),
    ("dial-cut reduce=-.1 division=.001 per-turn=.1 reads=travel", "reduce"),
    ("dial-cut reduce=.1 division=0 per-turn=.1 reads=travel", "division"),
    ("dial-cut reduce=.1 division=-.001 per-turn=.1 reads=travel", "division"),
    ("dial-cut reduce=.1 division=.001 per-turn=.1 reads=travel start=.1", "a full turn reads 0"),
    ("dial-cut reduce=.1 division=.001 per-turn=.1 reads=travel start=-.01", "start"),
    ("dial-cut reduce=.1 division=.001 per-turn=.1 reads=travel true-lead=0", "true-lead"),
    ("dial-cut reduce=.1 division=.001 per-turn=.1 reads=radius", "travel, diameter"),
    ("dial-cut reduce=.1 division=.001 per-turn=.1", "reads is missing"),
    ("dial-cut reduce=.1 division=.001 per-turn=.1 per_turn=.2 reads=travel", "twice"),
    ("spindle-speed cutting-speed=90 diameter=0", "diameter: must be more than 0"),
    ("spindle-speed cutting-speed=90 diameter=1 speeds=45,-70", "speeds"),
    ("spindle-speed cutting-speed=1e999 diameter=1", "cutting-speed"),
    ("turning-power kc11=1700 mc=1.2 depth=.1 feed=.01 cutting-speed=90", "mc"),
    ("turning-power kc11=1700 mc=.2 depth=.1 feed=.01 cutting-speed=90 approach-angle=0", "approach-angle"),
    ("turning-power kc11=1700 mc=.2 depth=.1 feed=0 cutting-speed=90", "feed"),
    ("bar-stock diameter=2 length=12", "density is missing"),
    ("bar-stock diameter=2 length=12 material=oak", "it has"),
    ("bar-stock diameter=2 length=12 density=0", "density"),
    ("size-at-20 reading=1 part-temperature=30", "expansion is missing"),
    ("size-at-20 reading=1 part-temperature=30 expansion=nan", "expansion"),
    ("size-at-20 reading=1 part-temperature=30 expansion=2", "expansion"),
    ("fine-feed-angle per-division=.001 advance=.0011", "advance"),
    ("fine-feed-angle per-division=.001 advance=0", "advance"),
    ("surface-finish feed=inf nose-radius=1", "feed"),
    ("surface-finish feed=.02 nose-radius=0", "nose-radius"),
]


@pytest.mark.parametrize(("line", "why"), REFUSED)
def test_bad_input_is_one_line_on_standard_error_and_status_2(capsys, line, why):
    code, out, err = calc(capsys, *line.split())
    assert (code, out) == (2, "")
    assert len(err.splitlines()) == 1
    assert why in err


def test_help_after_a_name_says_what_it_takes_and_gives(capsys):
    for name, form in forms.registry().items():
        code, out, _ = calc(capsys, name, "--help")
        assert code == 0
        for field in form.fields:
            assert f"  {field.name} " in out
        for result in form.results():
            assert f"  {result} " in out
    assert "may be left out" not in calc(capsys, "surface-finish", "--help")[1]


def test_no_answer_holds_what_json_does_not_know(capsys):
    found = answer(capsys, "dial-cut", "reduce=0", "division=.001", "per-turn=.1", "reads=diameter")
    numbers = [each["value"] for each in found["results"].values() if isinstance(each, dict)]
    assert all(map(math.isfinite, numbers))
