"""The part: read as typed, checked between neighbours, its outline and volume, what it is judged by."""

from __future__ import annotations

import math

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st
from random_drawings import random_drawing
from random_parts import random_entry

from handwheel.part.checks import check_part
from handwheel.part.drawing.side_view import side_view
from handwheel.part.profile import outline
from handwheel.part.reading_in import read_part
from handwheel.part.samples import sampled_limits
from handwheel.part.size_table import size_table

IN = 25.4


def typed_over(entry, feature, **fields):
    features = [
        {**each, **{key.replace("_", "-"): text for key, text in fields.items()}} if each["name"] == feature else each
        for each in entry.features
    ]
    return attrs.evolve(entry, features=features)


def sentences(entry):
    part, faults = read_part(entry)
    return [fault.sentence() for fault in (faults or check_part(part))]


def test_the_demo_and_the_second_part_are_sound(demo, second):
    assert check_part(demo) == check_part(second) == []


def test_the_size_table_by_station_from_the_datum_face(demo):
    rows = {row["feature"]: row for row in size_table(demo)}
    seat = rows["bearing seat"]
    assert (seat["from"], seat["to"], seat["diameter"]) == ("2.625", "3.318 / 3.308", "1.3786 / 1.3781")
    assert rows["coupling journal"]["typed"] == "1.3125 +.0000 -.0005"
    assert rows["collar"]["aim"] == "1.7500"
    assert "no thread is cut" in rows["nut thread"]["turning"]
    assert size_table(demo)[0]["feature"] == "coupling journal"


FAULTS = [
    ("collar", {"from": "3.300 ±.005"}, "overlap of .0130", "meet at one station"),
    ("collar", {"from": "3.330 ±.005"}, "gap of .0170", "meet at one station"),
    ("pilot nose", {"to": "10.600"}, "overall length is 10.5940", "the same"),
    ("collar", {"diameter": "1,750 ±.005"}, "comma", "type"),
    ("collar", {"diameter": "1.750"}, "no limits are typed", "type"),
    ("collar", {"diameter": "1.750 -.005 +.005"}, "upper limit stands first", "type"),
    ("collar", {"diamter": "1.750 ±.005"}, "no 'diamter'", "do you mean diameter"),
    ("collar", {"kind": "cilinder"}, "no kind of feature 'cilinder'", "do you mean cylinder"),
    ("collar", {"diameter": ""}, "its diameter is missing", "type its diameter"),
    ("seal lead-in", {"size": "1/4"}, "or more than the step", "smaller than the step"),
    ("seal lead-in", {"at": "5.000"}, "no section ends at 5.0000", "its station is one of"),
    ("seal fillet", {"at": "10.594"}, "no inner corner", "needs a shoulder"),
    ("seal fillet", {"size": "1/2"}, "or more than the step", "smaller than the step"),
    ("collar", {"to": "3.813 ±.500"}, "the limits of its ends meet", "closer limits"),
    ("seal fillet", {"size": "0"}, "is no size to cut", "type its leg"),
    ("nose chamfer", {"size": ".0001"}, "is no size to cut", "type its leg"),
    ("relief groove", {"diameter": ".760 ±.005"}, "no smaller than nut thread beside it", "below both"),
    ("relief groove", {"radius": ".060"}, "does not go into its corners", "allow .0468 at most"),
    ("relief groove", {"radius": "-.030"}, "does not go into its corners", "at most"),
    ("coupling keyseat", {"to": "0"}, "must end further from the datum face", "change the two"),
    ("middle fillet", {"at": "3.813"}, "on one corner", "keep one"),
    ("coupling keyseat", {"to": "2.900"}, "lies on no one section", "keep it on one section"),
    ("nose centre", {"mouth": "1/2", "body": "5/8"}, None, None),
    ("nose centre", {"body": "7/8", "mouth": "3/4"}, "no smaller than the end's face", "smaller centre drill"),
    ("nose centre", {"mouth": "1/16"}, "between the drill's point and its body", "carries the centre"),
    ("nose centre", {"end": "left end"}, "none of the choices", "coupling end, nose end"),
    ("hub taper", {"large-at": "8.000"}, "at neither end", "station of one of them"),
    ("hub taper", {"small": "1.100 ±.001"}, "not smaller", "change the two"),
    ("nut thread", {"call": "3/4 UNF"}, "can't be read as a thread", "type"),
    ("nut thread", {"diameter": ".3485 +.0000 -.0094"}, "no major diameter of 3/4-16", "a little below"),
    ("nut thread", {"diameter": ".7585 +.0000 -.0094"}, "no major diameter of 3/4-16", "a little below"),
    ("collar", {"name": "seal journal"}, "two features have this name", "name of its own"),
    ("collar", {"to": "3.313 ±.005", "from": "3.313 ±.005"}, "starts at 3.3130", "further from the datum face"),
]


@pytest.mark.parametrize(("feature", "fields", "what", "remedy"), FAULTS)
def test_a_check_names_place_fault_and_remedy(demo_entry, feature, fields, what, remedy):
    found = sentences(typed_over(demo_entry, feature, **fields))
    if what is None:
        assert found == []
    else:
        assert any(what in sentence and remedy in sentence for sentence in found), found


def test_two_edges_leave_something_of_the_section_between_them(demo_entry):
    wide = typed_over(demo_entry, "collar", diameter="3.750 ±.005")
    both = [
        {"kind": "chamfer", "name": f"{end} of collar", "at": at, "size": ".3"}
        for end, at in (("left", "3.313"), ("right", "3.813"))
    ]
    found = sentences(attrs.evolve(wide, features=[*wide.features, *both]))
    assert found == [
        "left of collar and right of collar: together they are longer than collar; make one of them smaller."
    ]


@pytest.mark.parametrize(("kind", "at"), [("chamfer", "9.219"), ("chamfer", "9.063"), ("fillet", "9.219")])
def test_an_edge_whose_corner_is_not_there_after_turning_is_not_planned(demo_entry, kind, at):
    """Beside the groove: its stock stands as high as the thread, and the taper as its large end."""
    edge = {"kind": kind, "name": "groove edge", "at": at, "size": ".030"}
    entry = typed_over(demo_entry, "relief groove", radius="")
    part, faults = read_part(attrs.evolve(entry, features=[*entry.features, edge]))
    assert not faults
    assert check_part(part) == []
    found = next(each for each in part.edges if each.name == "groove edge")
    assert not found.stands
    assert not found.planned
    assert "groove edge" not in {sample.feature for sample in sampled_limits(part)}
    plain, _ = read_part(entry)
    assert outline(part, finished=False) == outline(plain, finished=False)
    assert outline(part, finished=True) != outline(plain, finished=True)


def test_every_edge_of_the_demo_has_its_corner(demo, second):
    assert all(edge.stands for part in (demo, second) for edge in part.edges)


def test_a_bad_length_tolerance_is_said_once(demo_entry):
    found = sentences(attrs.evolve(demo_entry, length_tolerance="close"))
    assert found == ["length tolerance: 'close' can't be read as limits; type ±.010."]


def test_stations_are_shown_whole_and_their_limits_never_the_wrong_way_round(demo_entry):
    """3.3135 ±.0004: 3.3139 / 3.3131; at three places rounded inward they would be 3.313 / 3.314."""
    moved = typed_over(demo_entry, "bearing seat", to="3.3135 ±.0004")
    moved = typed_over(moved, "collar", **{"from": "3.3135 ±.0004"})
    part, _ = read_part(typed_over(moved, "bearing fillet", at="3.3135"))
    rows = {row["feature"]: row for row in size_table(part)}
    assert rows["bearing seat"]["to"] == "3.3139 / 3.3131"
    assert rows["bearing seat"]["length"] == ".6885"
    assert rows["collar"]["from"] == "3.3135"


def test_an_empty_part_and_unreadable_lengths_are_said(demo_entry):
    assert "no section" in sentences(attrs.evolve(demo_entry, features=[]))[0]
    assert sentences(attrs.evolve(demo_entry, overall="ten"))[0].startswith("overall length: ")
    assert "give each end a name of its own" in sentences(attrs.evolve(demo_entry, far_face="coupling end"))[0]
    assert "give in or mm" in sentences(attrs.evolve(demo_entry, units="furlong"))[0]
    for wrong in ("text", {"kind": "cylinder", "name": "a", "from": 0}):
        assert "not typed text by field" in sentences(attrs.evolve(demo_entry, features=[wrong]))[0]


@pytest.mark.property
@given(
    seed=st.integers(0, 400),
    chosen=st.integers(0, 60),
    text=st.one_of(st.text(max_size=12), st.from_regex(r"-?\d{0,3}\.?\d{0,4}( ?±\.?\d{1,3})?", fullmatch=True)),
)
def test_whatever_is_typed_gives_a_part_or_sentences(seed, chosen, text):
    entry = random_drawing(seed)
    fields = [(index, key) for index, each in enumerate(entry.features) for key in each]
    index, key = fields[chosen % len(fields)]
    features = [{**each, key: text} if at == index else each for at, each in enumerate(entry.features)]
    part, faults = read_part(attrs.evolve(entry, features=features))
    assert (part is None) == bool(faults)
    if part is not None and not (faults := check_part(part)):
        side_view(part)
        size_table(part)
        assert all(math.isfinite(sample.least + sample.most) for sample in sampled_limits(part))
    for fault in faults:
        assert fault.place
        assert fault.what
        assert fault.remedy


def test_samples_hold_the_finished_shaft_and_what_turning_leaves(demo):
    def radii(points, z):
        return [
            r0 + (r1 - r0) * (z - z0) / (z1 - z0)
            for (z0, r0), (z1, r1) in zip(points, points[1:], strict=False)
            if z0 - 1e-9 <= z <= z1 + 1e-9 and z1 - z0 > 1e-9
        ]

    turned = outline(demo, finished=False)
    for sample in sampled_limits(demo):
        found = radii(turned, sample.z) or [0.0]
        assert any(sample.least - 1e-6 <= radius <= sample.most + 1e-6 for radius in found), sample


def test_samples_find_what_is_out_of_limits(demo):
    journal = [sample for sample in sampled_limits(demo) if sample.feature == "coupling journal"]
    assert {round(2 * sample.least / IN, 4) for sample in journal} == {1.3120}
    assert {round(2 * sample.most / IN, 4) for sample in journal} == {1.3125}
    blank = [sample for sample in sampled_limits(demo) if sample.feature == "hub taper"]
    assert min(sample.least for sample in blank) < 0.83 / 2 * IN  # the taper itself is not cut into
    assert {round(2 * sample.most / IN, 4) for sample in blank} == {1.0635}


def test_every_random_part_is_sound():
    for seed in range(60):
        assert sentences(random_entry(seed)) == [], seed
