"""The outline and its volume, beside independent integrations and pencil and paper."""

from __future__ import annotations

import math

import attrs
import pytest
from random_drawings import random_drawing
from random_parts import random_entry
from scipy import integrate
from shapely.geometry import Polygon

from handwheel.part.checks import check_part
from handwheel.part.profile import outline, volume
from handwheel.part.reading_in import read_part
from handwheel.part.samples import sampled_limits

IN = 25.4


def drawings(count):
    for seed in range(count):
        part, faults = read_part(random_drawing(seed))
        assert not faults, seed
        assert check_part(part) == [], seed
        yield part


def test_random_drawings_are_sound_and_their_outlines_never_turn_back():
    for part in drawings(60):
        for finished in (True, False):
            points = outline(part, finished=finished)
            assert all(z1 >= z0 - 1e-9 for (z0, _), (z1, _) in zip(points, points[1:], strict=False))
            half = Polygon(points)
            assert half.is_valid
            pappus = 2 * math.pi * half.centroid.y * half.area  # the area's way round, by Pappus's theorem
            assert volume(part, finished=finished) == pytest.approx(pappus, rel=1e-9)
        # turning aims at the middle of the limits, the drawing shows the nominal size
        assert volume(part, finished=False) >= volume(part, finished=True) * 0.98
        assert all(sample.least <= sample.most + 1e-9 for sample in sampled_limits(part))


@pytest.mark.validation
@pytest.mark.parametrize("seed", range(0, 40, 2))
def test_the_finished_volume_from_the_typed_sizes_alone(seed):
    """r(z) from the entry's own numbers, chamfers and true round fillets, integrated by scipy.

    The outline's fillets are 24 straight pieces: within 2e-4 of the whole.
    """
    entry = random_entry(seed)
    unit = IN if entry.units == "in" else 1.0
    sections, edges = [], []
    for each in entry.features:
        if each["kind"] == "cylinder":
            size, start, end = (float(each[key].split()[0]) * unit for key in ("diameter", "from", "to"))
            sections.append((start, end, size / 2))
        elif each["kind"] in ("chamfer", "fillet"):
            edges.append((each["kind"], float(each["at"]) * unit, float(each["size"]) * unit))

    def radius(z):
        index, (start, end, found) = next((i, each) for i, each in enumerate(sections) if each[0] <= z <= each[1])
        for kind, at, size in edges:
            if min(abs(at - start), abs(at - end)) > 1e-6 or abs(z - at) >= size:
                continue
            beside = index - 1 if abs(at - start) < 1e-6 else index + 1
            other = sections[beside][2] if 0 <= beside < len(sections) else 0.0
            away = abs(z - at)
            if kind == "chamfer" and found > other:
                found -= size - away
            if kind == "fillet" and found < other:
                found += size - math.sqrt(size**2 - (size - away) ** 2)
        return found

    breaks = sorted({each for start, end, _ in sections for each in (start, end)})
    breaks = sorted({*breaks, *(at + side * size for _, at, size in edges for side in (-1, 1))})
    total = sum(
        integrate.quad(lambda z: math.pi * radius(z) ** 2, a + 1e-9, b - 1e-9, limit=200)[0]
        for a, b in zip(breaks, breaks[1:], strict=False)
        if a >= 0 and b <= sections[-1][1] + 1e-9 and b - a > 1e-6
    )
    part, _ = read_part(entry)
    assert volume(part, finished=True) == pytest.approx(total, rel=2e-4)


# Volume: frustums beside an independent integration of pi r² dz over the outline (scipy), and beside shapely's area
# and centroid by Pappus's theorem.
@pytest.mark.validation
@pytest.mark.parametrize("finished", [True, False])
@pytest.mark.parametrize("seed", range(12))
def test_volume_by_two_other_ways(seed, finished):
    part, faults = read_part(random_entry(seed))
    assert not faults
    points = outline(part, finished=finished)
    half = Polygon([*points])
    pappus = 2 * math.pi * half.centroid.y * half.area
    assert volume(part, finished=finished) == pytest.approx(pappus, rel=1e-9)

    def radius_squared(z):
        return max(
            (r0 + (r1 - r0) * (z - z0) / (z1 - z0)) ** 2
            for (z0, r0), (z1, r1) in zip(points, points[1:], strict=False)
            if z0 <= z <= z1 and z1 > z0
        )

    breaks = sorted({z for z, _ in points})
    total = sum(
        integrate.quad(lambda z: math.pi * radius_squared(z), a, b, limit=200)[0]
        for a, b in zip(breaks, breaks[1:], strict=False)
        if b - a > 1e-9
    )
    assert volume(part, finished=finished) == pytest.approx(total, rel=1e-6)


def test_a_plain_cylinder_weighs_what_it_must():
    # pi/4 × 2² × 4 in³ (exact)
    entry = attrs.evolve(
        random_entry(0),
        overall="4",
        features=[{"kind": "cylinder", "name": "bar", "from": "0", "to": "4", "diameter": "2 ±.001"}],
    )
    part, faults = read_part(entry)
    assert not faults
    assert volume(part, finished=True) == pytest.approx(math.pi * 4 * IN**3)


def test_turning_leaves_no_less_than_the_finished_shaft(demo, second):
    for part in (demo, second):
        assert volume(part, finished=False) > volume(part, finished=True)


def test_a_groove_has_its_corners_rounded(demo_entry, demo):
    """Two quarter rounds of radius r in the corners of a floor of diameter d (Pappus): each adds
    (1 - pi/4) r² at a mean radius of d/2 + r (10 - 3 pi) / (12 - 3 pi)."""
    sharp, _ = read_part(
        attrs.evolve(
            demo_entry,
            features=[{key: text for key, text in each.items() if key != "radius"} for each in demo_entry.features],
        )
    )
    r, d = 0.030 * IN, 0.655 * IN
    mean = d / 2 + r * (10 - 3 * math.pi) / (12 - 3 * math.pi)
    # the corner away from the centre of the round: its centroid lies (10 - 3 pi)/(12 - 3 pi) r from both walls
    added = 2 * (1 - math.pi / 4) * r * r * 2 * math.pi * mean
    assert volume(demo, finished=True) - volume(sharp, finished=True) == pytest.approx(added, rel=3e-3)
