"""The shaft's outline r(z), as drawn and as turning leaves it, and its volume.

One of the two places outside calc where geometry is worked out: what the drawing shows and what the dry run
judges by comes from here.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator

from handwheel.part.values import Edge, Part, Section

SAME = 0.01
"""How near (mm) a typed station must be to a section's end to mean it."""

ARC_STEPS = 24
"""Straight pieces a fillet's quarter circle is drawn with."""

Point = tuple[float, float]


def outline(part: Part, *, finished: bool) -> tuple[Point, ...]:
    """Return the outline as (z, radius) points in mm, from the axis at the datum face to the axis at the far one.

    `finished` gives the shaft as drawn; otherwise what turning leaves: tapers, threads and grooves standing as
    cylinders, fillets as square blocks.
    """
    points: list[Point] = [(0.0, 0.0)]
    for index in range(len(part.sections) + 1):
        points += _corner(part, index, finished=finished)
    points.append((part.sections[-1].end, 0.0))
    return tuple(points)


def _corner(part: Part, index: int, *, finished: bool) -> Iterator[Point]:
    """Yield the outline's points at the boundary before section `index`, in the direction of z."""
    left = part.sections[index - 1] if index else None
    right = part.sections[index] if index < len(part.sections) else None
    z = right.start if right else part.sections[-1].end
    before = end_radii(left, finished=finished)[1] if left else 0.0
    after = end_radii(right, finished=finished)[0] if right else 0.0
    rising = after > before
    small, large = min(before, after), max(before, after)
    away = -1.0 if rising else 1.0  # from the boundary towards the small side
    found = drawn_at if finished else edge_at
    fillet, chamfer = found(part, "fillet", z), found(part, "chamfer", z)
    lower = left if rising else right
    rounded = fillet.size if fillet else lower.corner_radius if finished and lower else 0.0
    points = [*_fillet(rounded if small else 0.0, z, small, away, finished=finished)]
    leg = min(chamfer.size, large) if chamfer else 0.0
    points += [(z, large - leg), (z - away * leg, large)] if leg else [(z, large)]
    yield from points if rising else reversed(points)


def _fillet(radius: float, z: float, small: float, away: float, *, finished: bool) -> Iterator[Point]:
    """Yield the inner corner's points, from the cylinder's side to the shoulder's face."""
    if not radius:
        yield (z, small)
        return
    if not finished:
        yield from ((z + away * radius, small), (z + away * radius, small + radius), (z, small + radius))
        return
    for step in range(ARC_STEPS + 1):
        turn = math.pi / 2 * step / ARC_STEPS
        yield (z + away * radius * (1 - math.sin(turn)), small + radius * (1 - math.cos(turn)))


def end_radii(section: Section, *, finished: bool) -> tuple[float, float]:
    """Return a section's radii (mm) at its start and at its end."""
    if not finished:
        return section.stands_as.middle / 2, section.stands_as.middle / 2
    large = section.diameter.nominal.value / 2
    if section.small_end is None:
        return large, large
    small = section.small_end.nominal.value / 2
    return (large, small) if section.large_at_start else (small, large)


def edge_at(part: Part, kind: str, z: float) -> Edge | None:
    """Return the chamfer or fillet that turning meets at a station (mm), if there is one."""
    edge = drawn_at(part, kind, z)
    return edge if edge and edge.stands else None


def drawn_at(part: Part, kind: str, z: float) -> Edge | None:
    """Return the chamfer or fillet drawn at a station (mm), if there is one."""
    return next((edge for edge in part.edges if edge.kind == kind and abs(edge.at - z) <= SAME), None)


def around(sections: Iterable[Section], z: float) -> tuple[Section | None, Section | None]:
    """Return the sections that end and start at a station (mm)."""
    before = after = None
    for section in sections:
        before = section if abs(section.end - z) <= SAME else before
        after = section if abs(section.start - z) <= SAME else after
    return before, after


def corner_stands(edge: Edge, sections: Iterable[Section]) -> bool:
    """Return whether an edge's corner is there when turning is done, and as high as the edge wants.

    It is not beside a groove or a taper's small end, where more stands than is drawn.
    """
    before, after = around(sections, edge.at)
    drawn, turned = (
        (end_radii(before, finished=each)[1] if before else 0.0, end_radii(after, finished=each)[0] if after else 0.0)
        for each in (True, False)
    )
    rising = drawn[1] > drawn[0]
    if edge.size > (turned[1] - turned[0] if rising else turned[0] - turned[1]):
        return False
    owner = after if rising else before
    if edge.kind == "fillet" or owner is None:
        return True
    at_small_end = owner.small_end is not None and owner.large_at_start != rising
    return owner.stands_as == owner.diameter and not at_small_end


def stations(part: Part) -> tuple[float, ...]:
    """Return where sections meet and the shaft ends, mm from the datum face."""
    return (part.sections[0].start, *(section.end for section in part.sections))


def greatest(part: Part) -> int:
    """Return the index of the section that turning leaves greatest; of several, the longest."""
    return max(
        range(len(part.sections)),
        key=lambda index: (
            part.sections[index].stands_as.maximum,
            part.sections[index].end - part.sections[index].start,
        ),
    )


def volume(part: Part, *, finished: bool) -> float:
    """Return the volume inside the outline, mm³, as a sum of frustums."""
    points = outline(part, finished=finished)
    return sum(
        math.pi / 3 * (z1 - z0) * (r0 * r0 + r0 * r1 + r1 * r1) for (z0, r0), (z1, r1) in itertools.pairwise(points)
    )
