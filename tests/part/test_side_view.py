"""The side view: lettering that meets nothing, what is marked, the user's text, the numbers on it."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import attrs
import pytest
from random_drawings import random_drawing
from random_parts import random_entry

from handwheel import assets
from handwheel.part.drawing.lettering import SIZE, width
from handwheel.part.drawing.side_view import side_view
from handwheel.part.reading_in import read_part

SPACE = "{http://www.w3.org/2000/svg}"


def texts(root):
    """Each text with the box it fills: left, top, right, bottom; letters hang at most a quarter below their line."""
    for text in root.iter(f"{SPACE}text"):
        wide = width(text.text)
        if "transform" in text.attrib:  # read from the right, ending at its top
            x, y = map(float, re.findall(r"-?[\d.]+", text.attrib["transform"])[:2])
            yield text.text, (x - 0.78 * SIZE, y, x + 0.25 * SIZE, y + wide)
        else:
            x, y = float(text.attrib["x"]), float(text.attrib["y"])
            left = x - wide if text.attrib.get("text-anchor") == "end" else x
            yield text.text, (left, y - 0.78 * SIZE, left + wide, y + 0.25 * SIZE)


def lines(root):
    """Every straight piece of every unfilled path: its two ends."""
    for path in root.iter(f"{SPACE}path"):
        if path.attrib.get("fill") != "none":
            continue
        x = y = 0.0
        for letter, numbers in re.findall(r"([MLHV])([^MLHVZ]*)", path.attrib["d"]):
            values = [float(each) for each in re.findall(r"-?[\d.]+", numbers)]
            before = x, y
            if letter != "V":
                x = values[0]
            if letter != "H":
                y = values[-1]
            if letter != "M":
                yield before, (x, y)


def meets(box, one, other):
    """Whether a line meets a box, by 64 places along it."""
    left, top, right, bottom = box
    for step in range(65):
        x, y = (one[axis] + (other[axis] - one[axis]) * step / 64 for axis in (0, 1))
        if left < x < right and top < y < bottom:
            return True
    return False


def part_of(seed, demo_entry):
    entry = demo_entry if seed is None else random_entry(-seed) if seed < 0 else random_drawing(seed)
    part, faults = read_part(entry)
    assert not faults
    return part


@pytest.mark.parametrize("seed", [None, *range(-12, 40)])
def test_lettering_meets_no_other_and_no_line_and_stays_in_the_view(demo_entry, seed):
    part = part_of(seed, demo_entry)
    root = ET.fromstring(side_view(part))
    boxes = list(texts(root))
    left, top, wide, high = map(float, root.attrib["viewBox"].split())
    for index, (text, box) in enumerate(boxes):
        assert left <= box[0], text
        assert top <= box[1], text
        assert box[2] <= left + wide, text
        assert box[3] <= top + high, text
        for other, beside in boxes[index + 1 :]:
            apart = box[2] <= beside[0] or beside[2] <= box[0] or box[3] <= beside[1] or beside[3] <= box[1]
            assert apart, (text, other)
        for one, other in lines(root):
            assert not meets(box, one, other), (text, one, other)


# Advance widths of DejaVu Sans 2.35 (units of 1/2048, read from the font's own table) for a height of 15.
@pytest.mark.parametrize(
    ("text", "needs"),
    [
        ("bearing seat Ø1.3786 / 1.3781", 230.3),
        ("3/4-16 UNF-2A LH", 133.9),
        ("1/16 × 45°", 82.4),
        ("M20x1.5-6g", 89.2),
        ("WWWWMMMM@@@", 156.1),
        ("Millimetres; stations from the thread end", 308.5),
    ],
)
def test_a_text_is_given_the_room_it_needs(text, needs):
    assert needs <= width(text) <= 1.25 * needs


def test_every_section_edge_seat_and_hole_can_be_found(demo):
    root = ET.fromstring(side_view(demo))
    groups = {group.attrib["data-feature"]: group for group in root.iter(f"{SPACE}g")}
    assert groups.keys() == {each["name"] for each in demo.entry.features}
    assert groups["bearing seat"].attrib["data-diameter"] == "1.3786 / 1.3781"
    assert root.attrib["role"] == "img"
    assert root.find(f"{SPACE}title").text == "Side view of stub shaft of a grain auger"
    assert "coupling end" in root.find(f"{SPACE}desc").text


def test_any_feature_can_be_marked_and_an_unknown_one_is_not_said_to_be(demo):
    plain = side_view(demo)
    for name in (each["name"] for each in demo.entry.features):
        marked = side_view(demo, highlight=name)
        assert f"{name} marked" in marked
        without_title = re.sub(r"<title>Side view.*?</title>", "", marked)
        assert without_title != re.sub(r"<title>Side view.*?</title>", "", plain), name
    assert side_view(demo, highlight="no such feature") == plain


def test_what_a_person_typed_is_escaped(demo_entry):
    part, _ = read_part(attrs.evolve(demo_entry, name='<script>"&', datum_face="coupling end"))
    assert "<script>" not in side_view(part)
    features = [
        {**each, "name": '<b onload="x">'} if each["name"] == "collar" else each for each in demo_entry.features
    ]
    part, _ = read_part(attrs.evolve(demo_entry, features=features))
    view = side_view(part, highlight='<b onload="x">')
    assert "<b onload" not in view
    ET.fromstring(view)


def test_the_numbers_of_the_drawing(demo, second):
    shown = [text for text, _ in texts(ET.fromstring(side_view(demo)))]
    for text in ("bearing seat Ø1.3786 / 1.3781", "1/64 × 45°", "R .030", "nut thread 3/4-16 UNF-2A LH", "10.594"):
        assert text in shown
    assert "3.313 ±.005" in shown  # its own limits; 2.625 has the part's
    assert "2.625" in shown
    assert any("lengths without limits ±.010" in text for text in shown)
    assert any("a quarter turn from the Woodruff seat" in text for text in shown)
    assert "body Ø26.100 / 25.900" in [text for text, _ in texts(ET.fromstring(side_view(second)))]


def test_a_station_is_lettered_whole():
    """26.25 mm is no 26.2."""
    entry = random_entry(1)
    first = {"kind": "cylinder", "name": "a", "from": "0", "to": "26.25 +0.1 -0.05", "diameter": "20 ±0.1"}
    second = {"kind": "cylinder", "name": "b", "from": "26.25", "to": "50", "diameter": "18 ±0.1"}
    part, faults = read_part(attrs.evolve(entry, overall="50", features=[first, second]))
    assert not faults
    assert "26.25 +0.1 -0.05" in [text for text, _ in texts(ET.fromstring(side_view(part)))]


def test_the_same_part_gives_the_same_text(demo):
    assert side_view(demo) == side_view(demo)
    assert not re.search(
        r"\d\.\d{3}[\d.]*[\"LHV ]", re.sub(r"<text.*?</text>|<title>.*?</title>|data-[^>]*", "", side_view(demo))
    )


def test_the_picture_beside_the_readme_is_the_demos_side_view(demo):
    stored = assets.sample_shop_file().with_name("side-view.svg").read_text(encoding="utf-8")
    assert stored == side_view(demo) + "\n"
