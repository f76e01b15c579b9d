"""The shaft's shapes in the side view: sections, edges seen from the side, threads, centre holes, keyseats."""

from __future__ import annotations

import math
from collections.abc import Iterator
from html import escape
from itertools import pairwise

from attrs import frozen

from handwheel.numbers import showing
from handwheel.part.profile import SAME, around, drawn_at, end_radii, outline, stations
from handwheel.part.values import CentreHole, Part, Seat, Section

WIDE, NARROW = 'stroke="#000" stroke-width="1.8" fill="none"', 'stroke="#000" stroke-width="0.8" fill="none"'

ROOT = 0.88
"""A thread's root is drawn at this share of its radius: a sign, not to scale."""

KEY = 0.25
"""A keyseat is drawn this share of the shaft wide: a sign, not to scale."""

WOODRUFF = 0.8
"""A Woodruff keyseat is drawn this share of the shaft long: a sign, not to scale."""


@frozen
class Frame:
    """Where millimetres of the part lie in the view: its scale, and the height of the axis."""

    scale: float
    axis: float

    def x(self, z: float) -> float:
        """Return where a station (mm) lies along the view."""
        return z * self.scale

    def y(self, radius: float) -> float:
        """Return how far down the view a radius (mm) above the axis lies."""
        return self.axis - radius * self.scale


def section(part: Part, each: Section, frame: Frame, *, marked: bool) -> str:
    """Return a section's shape as a group; what is marked is framed, grey, and has an arrow on it."""
    pieces = [
        (one, other)
        for one, other in pairwise(outline(part, finished=True))
        if other[0] - one[0] > 1e-9 and each.start - SAME <= (one[0] + other[0]) / 2 <= each.end + SAME
    ]
    upper = [*(one for one, _ in pieces[:1]), *(other for _, other in pieces)]
    points = " ".join(
        f"{frame.x(z):.1f},{frame.y(radius):.1f}"
        for z, radius in (*upper, *((z, -radius) for z, radius in reversed(upper)))
    )
    look = (
        'stroke="#000" stroke-width="3.5" stroke-dasharray="3 3" fill="#e4e4e4"'
        if marked
        else 'fill="#fff" stroke="none"'
    )
    x = frame.x((each.start + each.end) / 2)
    arrow = f'<path d="M{x - 8:.1f} {frame.axis - 22:.1f}h16l-8 16z"/>' if marked else ""
    shown = showing.limits(each.diameter, part.units)
    return (
        f'<g data-feature="{escape(each.name)}" data-diameter="{escape(shown)}">'
        f"<title>{escape(f'{each.name}: Ø{shown}')}</title>"
        f'<polygon points="{points}" {look}/>{arrow}</g>'
    )


def outline_of(part: Part, frame: Frame) -> str:
    """Return the shaft's outline, above and below the axis."""
    points = outline(part, finished=True)
    upper = "L".join(f"{frame.x(z):.2f} {frame.y(radius):.2f}" for z, radius in points)
    lower = "L".join(f"{frame.x(z):.2f} {frame.y(-radius):.2f}" for z, radius in reversed(points))
    return f'<path d="M{upper}L{lower}Z" {WIDE} stroke-linejoin="round"/>'


def circles(part: Part, frame: Frame) -> Iterator[str]:
    """Yield the round edges, seen from the side as lines: at every step and end, and where a chamfer begins.

    Where two sections of one size meet, nothing is seen: a narrow line shows where one ends.
    """
    for z in stations(part):
        before, after = around(part.sections, z)
        left = end_radii(before, finished=True)[1] if before else 0.0
        right = end_radii(after, finished=True)[0] if after else 0.0
        chamfer = drawn_at(part, "chamfer", z)
        leg = chamfer.size if chamfer else 0.0
        flush = abs(left - right) < SAME / 2 and not any(each and each.small_end for each in (before, after))
        yield _upright(frame, z, max(left, right) - leg, NARROW if flush else WIDE)
        if leg:
            yield _upright(frame, z + (leg if right > left else -leg), max(left, right), WIDE)


def _upright(frame: Frame, z: float, radius: float, line: str) -> str:
    return f'<path d="M{frame.x(z):.1f} {frame.y(radius):.1f}V{frame.y(-radius):.1f}" {line}/>'


def threads(part: Part, frame: Frame) -> Iterator[str]:
    """Yield each thread's root as narrow lines."""
    for each in part.sections:
        if each.kind == "thread":
            root = each.diameter.nominal.value / 2 * ROOT
            for radius in (root, -root):
                start, end = frame.x(each.start), frame.x(each.end)
                yield f'<path d="M{start:.1f} {frame.y(radius):.1f}H{end:.1f}" {NARROW}/>'


def centre_hole(part: Part, hole: CentreHole, frame: Frame, *, marked: bool) -> str:
    """Return a centre hole: 60° cone, and the pilot hole as deep as it is wide."""
    inward = 1.0 if hole.end == "datum" else -1.0
    face = 0.0 if hole.end == "datum" else part.sections[-1].end
    cone = face + inward * (hole.mouth - hole.point) / 2 / math.tan(math.radians(30))
    floor = cone + inward * hole.point
    tip = floor + inward * hole.point / 2 * math.tan(math.radians(31))
    mouth, point = hole.mouth / 2, hole.point / 2
    shape = [(face, mouth), (cone, point), (floor, point), (tip, 0.0), (floor, -point), (cone, -point), (face, -mouth)]
    path = "L".join(f"{frame.x(z):.1f} {frame.y(radius):.1f}" for z, radius in shape)
    cross = "".join(
        f"M{frame.x(z):.1f} {frame.y(radius):.1f}V{frame.y(-radius):.1f}"
        for z, radius in ((cone, point), (floor, point))
    )
    line = WIDE if marked else NARROW
    return (
        f'<g data-feature="{escape(hole.name)}"><title>{escape(hole.name)}</title>'
        f'<path d="M{path}{cross}" {line} stroke-dasharray="4 2"/></g>'
    )


def seat(part: Part, each: Seat, frame: Frame) -> str:
    """Return a keyseat's outline as a sign, as if it lay towards the reader."""
    middle = (each.start + each.end) / 2
    on = next((s for s in part.sections if s.start - SAME <= middle <= s.end + SAME), part.sections[-1])
    radius = sum(end_radii(on, finished=True)) / 2
    half = radius * KEY
    start, end = each.start, each.end
    if end - start < SAME:
        start, end = middle - radius * WOODRUFF, middle + radius * WOODRUFF
    corner = min(half, (end - start) / 2) * frame.scale if "round" in each.ends.lower() else 0.0
    return (
        f'<rect x="{frame.x(start):.1f}" y="{frame.y(half):.1f}" width="{(end - start) * frame.scale:.1f}" '
        f'height="{2 * half * frame.scale:.1f}" rx="{corner:.1f}" {NARROW}/>'
    )
