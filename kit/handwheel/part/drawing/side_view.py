"""The side view: the shaft as drawn, its diameters above and its stations from the datum face below.

Our own SVG, as text: lines by the conventions of ISO 128 (wide for visible edges, narrow for dimensions and
threads, long-dash dotted for the axis, dashed for hidden edges), stations by superimposed running dimensions
from one origin (ISO 129-1). Conventions from memory.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from html import escape

from attrs import frozen

from handwheel.numbers import showing
from handwheel.part.profile import end_radii, outline, stations
from handwheel.part.values import CentreHole, Part, Section

WIDTH = 1000.0
MARGIN = 50.0
LINE = 16.0
"""Height of a line of lettering, in the view's units."""

LETTER = 6.7
"""Width reckoned for a letter at 12 units' height."""

LETTERING = 'font-family="\'DejaVu Sans\', Arial, sans-serif" font-size="12" fill="#000"'
WIDE, NARROW = 'stroke="#000" stroke-width="1.6" fill="none"', 'stroke="#000" stroke-width="0.7" fill="none"'


@frozen
class _Label:
    x: float
    y: float
    text: str


def side_view(part: Part, highlight: str | None = None) -> str:
    """Return the side view as SVG text; the section or edge named `highlight` is marked by a frame and an arrow.

    Every section is a group with its name and diameter (`data-feature`, `data-diameter`), for a panel to find.
    """
    scale = (WIDTH - 2 * MARGIN) / part.sections[-1].end
    radius = max(section.diameter.maximum for section in part.sections) / 2 * scale
    labels = list(_in_lanes(_labels(part, scale)))
    top = (max((label.y for label in labels), default=0.0) + 2) * LINE
    axis = top + LINE + radius
    foot = axis + radius + 14
    height = foot + 74
    width = max([WIDTH, *(label.x + 3 + len(label.text) * LETTER + 6 for label in labels)])
    body = [
        *(_section(part, section, scale, axis, section.name == highlight) for section in part.sections),
        _outline(part, scale, axis),
        *_threads(part, scale, axis),
        *(_centre_hole(part, hole, scale, axis) for hole in part.centre_holes),
        f'<path d="M{MARGIN - 15:.1f} {axis:.1f}H{WIDTH - MARGIN + 15:.1f}" {NARROW} stroke-dasharray="18 3 3 3"/>',
        *_leaders(labels, part, scale, axis, top),
        *_stations(part, scale, axis, foot),
    ]
    marked = f", {highlight} marked" if highlight else ""
    title = escape(f"Side view of {part.name}{marked}")
    described = escape(
        f"Stations from the {part.entry.datum_face}, diameters with their limits, "
        f"{'inches' if part.units == 'in' else 'millimetres'}"
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.0f} {height:.0f}" role="img" '
        f'class="side-view" width="100%" style="background:#fff"><title>{title}</title><desc>{described}</desc>'
        + "".join(body)
        + "</svg>"
    )


def _labels(part: Part, scale: float) -> Iterator[tuple[float, str]]:
    """Yield what is lettered above the shaft: station (in the view's units) and text."""
    for section in part.sections:
        yield MARGIN + (section.start + section.end) / 2 * scale, f"{section.name} {_diameter(section, part)}"
    for edge in part.edges:
        sign = f"{edge.typed} × 45°" if edge.kind == "chamfer" else f"R {edge.typed}"
        yield MARGIN + edge.at * scale, sign
    for seat in part.seats:
        yield MARGIN + (seat.start + seat.end) / 2 * scale + 9, seat.call


def _diameter(section: Section, part: Part) -> str:
    if section.call:
        return section.call
    limits = f"Ø{showing.limits(section.diameter, part.units)}"
    if section.small_end is None:
        return limits
    large, small = (showing.length(each.nominal.value, part.units) for each in (section.diameter, section.small_end))
    return f"Ø{large} to Ø{small}"


def _in_lanes(labels: Iterable[tuple[float, str]]) -> Iterator[_Label]:
    """Yield labels with a lane each (as y), so that no text meets another text or another's leader.

    From right to left, each text starts at its leader and goes into the lane above every text it would reach.
    """
    placed: list[_Label] = []
    last = math.inf
    for x, text in sorted(labels, reverse=True):
        at = min(x, last - 5)  # two leaders at one station stand side by side
        last = at
        end = at + len(text) * LETTER + 8
        lane = 1 + max((label.y for label in placed if label.x < end), default=-1.0)
        placed.append(_Label(at, lane, text))
        yield placed[-1]


def _leaders(labels: list[_Label], part: Part, scale: float, axis: float, top: float) -> Iterator[str]:
    for label in labels:
        y = top - label.y * LINE
        foot = axis - _radius_at(part, (label.x - MARGIN) / scale) * scale
        yield f'<path d="M{label.x:.1f} {y + 3:.1f}V{foot:.1f}" {NARROW}/>'
        yield f'<text x="{label.x + 3:.1f}" y="{y:.1f}" {LETTERING}>{escape(label.text)}</text>'


def _radius_at(part: Part, z: float) -> float:
    """Return the drawn radius (mm) at a station, the greater of two."""
    radii = [0.0]
    for section in part.sections:
        if section.start - 1e-6 <= z <= section.end + 1e-6:
            start, end = end_radii(section, finished=True)
            radii.append(start + (end - start) * (z - section.start) / max(section.end - section.start, 1e-9))
    return max(radii)


def _section(part: Part, section: Section, scale: float, axis: float, marked: bool) -> str:
    start, end = end_radii(section, finished=True)
    x0, x1 = MARGIN + section.start * scale, MARGIN + section.end * scale
    points = " ".join(
        f"{x:.1f},{y:.1f}"
        for x, y in (
            (x0, axis - start * scale),
            (x1, axis - end * scale),
            (x1, axis + end * scale),
            (x0, axis + start * scale),
        )
    )
    edges = "".join(
        f'<path d="M{x:.1f} {axis - radius * scale:.1f}V{axis + radius * scale:.1f}" {WIDE}/>'
        for x, radius in ((x0, start), (x1, end))
    )
    frame = (
        'stroke="#000" stroke-width="3" stroke-dasharray="2 3" fill="#e8e8e8"'
        if marked
        else 'fill="#fff" stroke="none"'
    )
    arrow = f'<path d="M{(x0 + x1) / 2 - 7:.1f} {axis - 18:.1f}h14l-7 14z" fill="#000"/>' if marked else ""
    shown = showing.limits(section.diameter, part.units)
    return (
        f'<g data-feature="{escape(section.name)}" data-diameter="{escape(shown)}">'
        f"<title>{escape(f'{section.name}: Ø{shown}')}</title>"
        f'<polygon points="{points}" {frame}/>{edges}{arrow}</g>'
    )


def _outline(part: Part, scale: float, axis: float) -> str:
    points = [(MARGIN + z * scale, radius * scale) for z, radius in outline(part, finished=True)]
    upper = "L".join(f"{x:.2f} {axis - r:.2f}" for x, r in points)
    lower = "L".join(f"{x:.2f} {axis + r:.2f}" for x, r in reversed(points))
    return f'<path d="M{upper}L{lower}Z" {WIDE} stroke-linejoin="round"/>'


def _threads(part: Part, scale: float, axis: float) -> Iterator[str]:
    """Yield each thread's root as narrow lines; drawn an eighth of the radius in, as a sign and not to measure."""
    for section in part.sections:
        if section.kind == "thread":
            x0, x1 = MARGIN + section.start * scale, MARGIN + section.end * scale
            root = section.diameter.nominal.value / 2 * scale * 0.88
            for side in (-1, 1):
                yield f'<path d="M{x0:.1f} {axis + side * root:.1f}H{x1:.1f}" {NARROW}/>'


def _centre_hole(part: Part, hole: CentreHole, scale: float, axis: float) -> str:
    inward = 1.0 if hole.end == "datum" else -1.0
    face = MARGIN + (0.0 if hole.end == "datum" else part.sections[-1].end) * scale
    cone = (hole.mouth - hole.point) / 2 / math.tan(math.radians(30)) * scale
    mouth, point = hole.mouth / 2 * scale, hole.point / 2 * scale
    x1, x2 = face + inward * cone, face + inward * (cone + 2 * point)
    path = (
        f"M{face:.1f} {axis - mouth:.1f}L{x1:.1f} {axis - point:.1f}H{x2:.1f}V{axis + point:.1f}H{x1:.1f}"
        f"L{face:.1f} {axis + mouth:.1f}"
    )
    return f'<path d="{path}" {NARROW} stroke-dasharray="4 2"><title>{escape(hole.name)}</title></path>'


def _stations(part: Part, scale: float, axis: float, foot: float) -> Iterator[str]:
    """Yield the stations as running dimensions from the datum face, spread where they would meet."""
    taken = -math.inf
    for z in stations(part):
        x = MARGIN + z * scale
        at = max(x, taken + LINE)
        taken = at
        edge = axis + _radius_at(part, z) * scale + 3
        text = showing.length(z, part.units, 3 if part.units == "in" else 1)
        yield f'<path d="M{x:.1f} {edge:.1f}V{foot:.1f}L{at:.1f} {foot + 10:.1f}V{foot + 14:.1f}" {NARROW}/>'
        yield (
            f'<text transform="translate({at + 4:.1f} {foot + 18:.1f}) rotate(90)" {LETTERING}>{escape(text)}</text>'
        )
    yield f'<circle cx="{MARGIN:.1f}" cy="{foot:.1f}" r="3.5" {NARROW}/>'
