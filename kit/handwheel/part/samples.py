"""Where the turned part is judged: radius limits by station, for the dry run and the inspection."""

from __future__ import annotations

import math
from collections.abc import Iterator

from handwheel.part.profile import edge_at
from handwheel.part.values import Edge, Part, Sample, Section

CLEAR = 0.02
"""How far (mm) beside a band of limits the part is judged."""

LEG_TOLERANCE = 0.25
"""How far (mm) a chamfer's leg may be off where no limits are typed; never more than a third of the leg."""

BLOCK_TOLERANCE = 0.25
"""How far (mm) the stock left for a fillet may stand over its radius."""

WITHIN = 9
"""Places judged along a section, and across a chamfer."""


def sampled_limits(part: Part) -> tuple[Sample, ...]:
    """Return the places where the turned part is judged, in order of z.

    A planned section is judged both ways. Stock standing for something not planned yet is judged by what must
    not be cut into, and by how much may stand.
    """
    samples = [sample for index in range(len(part.sections)) for sample in _section(part, index)]
    samples += [sample for index in range(len(part.sections) + 1) for sample in _boundary(part, index)]
    far = part.length.maximum + CLEAR
    samples.append(Sample(far, 0.0, 0.0, part.entry.far_face))
    return tuple(sorted(samples, key=lambda sample: sample.z))


def _band(part: Part, index: int) -> tuple[float, float]:
    """Return the least and most station (mm) of the boundary before section `index`."""
    if index == 0:
        return 0.0, 0.0
    if index == len(part.sections):
        return part.length.minimum, part.length.maximum
    limits = part.sections[index - 1].end_limits
    return limits.minimum, limits.maximum


def _limits(section: Section, z: float) -> tuple[float, float]:
    """Return the least and most radius (mm) that may stand at z."""
    most = section.stands_as.maximum / 2
    if section.planned or section.kind == "thread":
        return section.stands_as.minimum / 2, most
    if section.small_end is None:
        return section.diameter.minimum / 2, most
    share = (z - section.start) / (section.end - section.start)
    if not section.large_at_start:
        share = 1 - share
    large, small = section.diameter.minimum / 2, section.small_end.minimum / 2
    return large + (small - large) * min(max(share, 0.0), 1.0), most


def _reach(part: Part, index: int, boundary: int) -> float:
    """Return how far (mm) from a boundary a section is under a chamfer or in a fillet's corner."""
    chamfer, fillet, owner = _edges(part, boundary)
    if index == owner:
        return chamfer.size + _leg_tolerance(chamfer) if chamfer else 0.0
    return fillet.size + BLOCK_TOLERANCE if fillet else 0.0


def _edges(part: Part, boundary: int) -> tuple[Edge | None, Edge | None, int]:
    """Return the chamfer and the fillet at a boundary, and the index of the larger section, which has the chamfer."""
    last = len(part.sections)
    z = part.sections[boundary].start if boundary < last else part.sections[-1].end
    if boundary == 0:
        owner = 0
    elif boundary == last:
        owner = last - 1
    else:
        before, after = part.sections[boundary - 1].stands_as.middle, part.sections[boundary].stands_as.middle
        owner = boundary if after > before else boundary - 1
    fillet = edge_at(part, "fillet", z) if 0 < boundary < last else None
    return edge_at(part, "chamfer", z), fillet, owner


def _leg_tolerance(chamfer: Edge) -> float:
    return min(LEG_TOLERANCE, chamfer.size / 3)


def _section(part: Part, index: int) -> Iterator[Sample]:
    """Yield places along a section, clear of what stands at its ends."""
    section = part.sections[index]
    start = _band(part, index)[1] + _reach(part, index, index) + CLEAR
    end = _band(part, index + 1)[0] - _reach(part, index, index + 1) - CLEAR
    if start > end:
        return
    for step in range(WITHIN):
        z = start + (end - start) * step / (WITHIN - 1)
        yield Sample(z, *_limits(section, z), section.name)


def _boundary(part: Part, boundary: int) -> Iterator[Sample]:
    """Yield places across the chamfer and in the fillet's corner at a boundary."""
    chamfer, fillet, owner = _edges(part, boundary)
    low, high = _band(part, boundary)
    inward = 1.0 if owner == boundary else -1.0  # from the boundary into the larger section
    near, far = (high, low) if inward > 0 else (low, high)
    if chamfer:
        spare = _leg_tolerance(chamfer)
        for step in range(1, WITHIN):
            z = near + inward * (chamfer.size + spare) * step / WITHIN
            least, most = _limits(part.sections[owner], z)
            yield Sample(
                z,
                max(0.0, least - max(0.0, chamfer.size + spare - inward * (z - near))),
                most - max(0.0, chamfer.size - spare - inward * (z - far)),
                chamfer.name,
            )
    if fillet:
        small = part.sections[boundary - 1 if owner == boundary else boundary]
        outward = -inward
        start = low if outward < 0 else high
        face = high if outward < 0 else low  # the shoulder's face may lie as deep as this
        for step in range(1, WITHIN):
            z = start + outward * fillet.size * step / WITHIN
            least, most = _limits(small, z)
            away = min(outward * (z - face), fillet.size)
            arc = fillet.size - math.sqrt(fillet.size**2 - (fillet.size - away) ** 2)
            yield Sample(z, least + arc, most + fillet.size + BLOCK_TOLERANCE, fillet.name)
