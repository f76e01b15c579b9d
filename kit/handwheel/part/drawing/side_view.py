"""The side view: the shaft as drawn, its diameters above and its stations from the datum face below.

Our own SVG, as text: lines by the conventions of ISO 128 (wide for visible edges, narrow for dimensions and
threads, long-dash dotted for the axis, dashed for hidden edges), stations by superimposed running dimensions
from one origin, read from the right (ISO 129-1). Conventions from memory.
"""

from __future__ import annotations

import math
from html import escape

from handwheel.numbers import showing
from handwheel.numbers.reading import Limits
from handwheel.part.drawing.lettering import LINE, SIZE, Label, Placed, in_lanes, spread, width
from handwheel.part.drawing.shapes import NARROW, WIDE, Frame, centre_hole, circles, outline_of, seat, section, threads
from handwheel.part.profile import around, end_radii, stations
from handwheel.part.size_table import station
from handwheel.part.values import Edge, Part, Section

LENGTH, HEIGHT = 900.0, 300.0
"""The most the shaft takes of the view, along and across."""

LETTERING = f'font-family="\'DejaVu Sans\', Arial, sans-serif" font-size="{SIZE:.0f}" fill="#000"'
EDGE = 10.0
"""Room at the edges of the view."""


BESIDE = 10.0
"""How far beside its middle a keyseat's leader ends."""


def side_view(part: Part, highlight: str | None = None) -> str:
    """Return the side view as SVG text; the feature named `highlight` is marked by a frame about its shape or size.

    Every section is a group with its name and diameter (`data-feature`, `data-diameter`), and so is the call of
    every edge and keyseat (`data-feature`), for a panel to find.
    """
    greatest = max(each.diameter.maximum for each in part.sections)
    scale = min(LENGTH / part.sections[-1].end, HEIGHT / greatest)
    placed = in_lanes(_labels(part, Frame(scale, 0.0)), part.sections[-1].end * scale)
    lanes = 1 + max(each.lane for each in placed)
    frame = Frame(scale, lanes * LINE + 26 + greatest / 2 * scale)
    lowest = frame.axis + greatest / 2 * scale + 18
    dimensions, foot = _stations(part, frame, lowest)
    notes = _notes(part)
    reach = [
        *((each.left, each.right) for each in placed),
        (-24.0, frame.x(part.sections[-1].end) + 24),
        *((0.0, width(note)) for note in notes),
    ]
    left, right = min(each for each, _ in reach) - EDGE, max(each for _, each in reach) + EDGE
    if right - left < LENGTH:  # a short, thick part stands in the middle and its lettering keeps its size
        left, right = (left + right - LENGTH) / 2, (left + right + LENGTH) / 2
    marked = highlight if any(each["name"] == highlight for each in part.entry.features) else None
    body = [
        *(section(part, each, frame, marked=each.name == marked) for each in part.sections),
        *circles(part, frame),
        outline_of(part, frame),
        *threads(part, frame),
        *(centre_hole(part, each, frame, marked=each.name == marked) for each in part.centre_holes),
        *(seat(part, each, frame) for each in part.seats),
        _axis(frame, frame.x(part.sections[-1].end)),
        *(_call(each, lanes, frame, part, marked=each.label.feature == marked) for each in placed),
        *dimensions,
        *(
            f'<text x="0" y="{foot + (line + 1) * LINE:.1f}" {LETTERING}>{escape(note)}</text>'
            for line, note in enumerate(notes)
        ),
    ]
    title = escape(f"Side view of {part.name}" + (f", {marked} marked" if marked else ""))
    described = escape(
        f"Stations from the {part.entry.datum_face}, diameters with their limits, "
        f"{'inches' if part.units == 'in' else 'millimetres'}"
    )
    view = f"{left:.0f} 0 {right - left:.0f} {foot + len(notes) * LINE + EDGE:.0f}"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" role="img" class="side-view" width="100%" '
        f'style="background:#fff"><title>{title}</title>'
        f"<desc>{described}</desc>" + "".join(body) + "</svg>"
    )


def _axis(frame: Frame, end: float) -> str:
    return f'<path d="M-18.0 {frame.axis:.1f}H{end + 18:.1f}" {NARROW} stroke-dasharray="18 3 3 3"/>'


def _labels(part: Part, frame: Frame) -> list[Label]:
    """Return what is lettered above the shaft, each with the point its leader ends on, counted from the axis."""
    labels = []
    for each in part.sections:
        middle = (each.start + each.end) / 2
        radius = sum(end_radii(each, finished=True)) / 2
        labels.append(Label(frame.x(middle), frame.y(radius), f"{each.name} {_diameter(each, part)}", each.name))
    for edge in part.edges:
        z, radius = _on_edge(part, edge)
        sign = f"{edge.typed} × 45°" if edge.kind == "chamfer" else f"R {edge.typed}"
        labels.append(Label(frame.x(z), frame.y(radius), sign, edge.name))
    for key in part.seats:
        z = (key.start + key.end) / 2
        on = next((each for each in part.sections if each.start <= z <= each.end), part.sections[-1])
        clear = BESIDE if z > (on.start + on.end) / 2 else -BESIDE  # of the section's own leader
        middle = frame.x(z) + clear
        labels.append(Label(middle, -2.0, key.call, key.name, dot=True))
    return labels


def _diameter(each: Section, part: Part) -> str:
    if each.call:
        return each.call
    limits = f"Ø{showing.limits(each.diameter, part.units)}"
    if each.corner_radius:
        return f"{limits}, R {station(each.corner_radius, part.units)}"
    if each.small_end is None:
        return limits
    large, small = (showing.length(end.nominal.value, part.units) for end in (each.diameter, each.small_end))
    return f"Ø{large} to Ø{small}"


def _on_edge(part: Part, edge: Edge) -> tuple[float, float]:
    """Return the middle of a chamfer or of a fillet's arc: z and radius, mm."""
    before, after = around(part.sections, edge.at)
    left = end_radii(before, finished=True)[1] if before else 0.0
    right = end_radii(after, finished=True)[0] if after else 0.0
    to_large = 1.0 if right > left else -1.0
    if edge.kind == "chamfer":
        return edge.at + to_large * edge.size / 2, max(left, right) - edge.size / 2
    within = edge.size * (1 - math.sqrt(0.5))
    return edge.at - to_large * within, min(left, right) + within


def _call(placed: Placed, lanes: int, frame: Frame, part: Part, *, marked: bool) -> str:
    """Return a label with its leader; what is marked has a frame about it."""
    label, foot = placed.label, frame.axis + placed.label.y
    y = (lanes - placed.lane) * LINE
    bend = lanes * LINE + 6
    line = WIDE if marked else NARROW
    end = (
        f'<circle cx="{label.x:.1f}" cy="{foot:.1f}" r="2.5"/>'
        if label.dot
        else f'<path d="M{label.x - 2.5:.1f} {foot - 8:.1f}h5l-2.5 8z"/>'
    )
    about = (
        f'<rect x="{placed.left - 2:.1f}" y="{y - SIZE:.1f}" width="{placed.right - placed.left + 4:.1f}" '
        f'height="{LINE - 1:.1f}" {NARROW} stroke-dasharray="3 2"/>'
        if marked
        else ""
    )
    anchor, x = ("end", placed.at - 4) if placed.leftward else ("start", placed.at + 4)
    drawn = (
        f'<path d="M{placed.at:.1f} {y - SIZE + 4:.1f}V{bend:.1f}L{label.x:.1f} {bend + 12:.1f}V{foot:.1f}" {line}/>'
        f'{end}{about}<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}" {LETTERING}>{escape(label.text)}</text>'
    )
    if any(each.name == label.feature for each in part.sections):
        return drawn
    return f'<g data-feature="{escape(label.feature)}"><title>{escape(label.feature)}</title>{drawn}</g>'


def _stations(part: Part, frame: Frame, y: float) -> tuple[list[str], float]:
    """Return the stations as running dimensions from the datum face, and where their lettering ends."""
    places = stations(part)
    ends = [None, *(each.end_limits for each in part.sections[:-1]), part.length]
    texts = [
        station(z, part.units) + (_own_limits(limits, part) if limits else "")
        for z, limits in zip(places, ends, strict=True)
    ]
    columns = spread([frame.x(z) for z in places], LINE)
    body = [
        f'<path d="M{frame.x(places[0]):.1f} {y:.1f}H{frame.x(places[-1]):.1f}" {NARROW}/>',
        f'<circle cx="{frame.x(places[0]):.1f}" cy="{y:.1f}" r="3.5" {NARROW}/>',
    ]
    for z, at, text in zip(places, columns, texts, strict=True):
        x = frame.x(z)
        around_it = [
            radius
            for each, side in zip(around(part.sections, z), (1, 0), strict=True)
            if each
            for radius in (end_radii(each, finished=True)[side],)
        ]
        start = 2 * frame.axis - frame.y(max(around_it)) + 3
        body.append(f'<path d="M{x:.1f} {start:.1f}V{y + 6:.1f}L{at:.1f} {y + 18:.1f}V{y + 23:.1f}" {NARROW}/>')
        if z > places[0]:
            body.append(f'<path d="M{x:.1f} {y:.1f}l-8 -2.5v5z"/>')
        body.append(
            f'<text transform="translate({at + SIZE * 0.36:.1f} {y + 27:.1f}) rotate(-90)" text-anchor="end" '
            f"{LETTERING}>{escape(text)}</text>"
        )
    return body, y + 27 + max(width(text) for text in texts)


def _own_limits(limits: Limits, part: Part) -> str:
    """Return the limits typed with a station; nothing where the part's length tolerance holds."""
    if limits.typed == limits.nominal.typed:
        return ""
    upper, lower = limits.maximum - limits.nominal.value, limits.minimum - limits.nominal.value
    high, low = (showing.put_in(abs(each), "length", part.units) for each in (upper, lower))
    if math.isclose(upper, -lower, abs_tol=1e-9):
        return f" ±{high}"
    return f" {'-' if upper < 0 else '+'}{high} {'+' if lower > 0 else '-'}{low}"


def _notes(part: Part) -> list[str]:
    """Return the lines under the view: unit, where stations count from, limits of lengths, what is a sign only."""
    system = "Inches" if part.units == "in" else "Millimetres"
    tolerance = part.entry.length_tolerance
    limits = f"; lengths without limits {tolerance}" if tolerance else ""
    signs = [
        *(["keyseats"] if part.seats else []),
        *(["thread roots"] if any(each.kind == "thread" for each in part.sections) else []),
    ]
    more = f" Signs, not to scale: {' and '.join(signs)}." if signs else ""
    lies = [(key.name, ", ".join(text for text in (key.ends, key.angle) if text)) for key in part.seats]
    return [
        f"{system}; stations from the {part.entry.datum_face}{limits}.{more}",
        *(f"{name}: {text}." for name, text in lies if text),
    ]
