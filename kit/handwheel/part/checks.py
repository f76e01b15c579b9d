"""Checks between neighbours that a machinist would make before a chip is cut."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from handwheel.numbers.faults import Fault
from handwheel.numbers.showing import length
from handwheel.part.profile import SAME, around, drawn_at, end_radii, stations
from handwheel.part.values import Edge, Part, Section

LEFT = 0.05
"""What a chamfer must leave of the step it is cut on, mm: less is no shoulder any more."""

SMALLEST = 0.05
"""The smallest chamfer there is any sense in, mm."""


def check_part(part: Part) -> list[Fault]:
    """Return what is wrong between the features of a readable part: place, fault and remedy."""
    return [
        *_sections(part),
        *_bands(part),
        *_grooves(part),
        *_ends(part),
        *(fault for edge in part.edges for fault in _edge(part, edge)),
        *_rooms(part),
        *_pairs(part),
        *_seats(part),
        *_centres(part),
    ]


def _sections(part: Part) -> Iterator[Fault]:
    def show(mm: float) -> str:
        return length(mm, part.units)

    for section in part.sections:
        if section.end - section.start <= SAME:
            yield Fault(
                section.name,
                f"it ends at {show(section.end)} but starts at {show(section.start)}",
                "its end must lie further from the datum face than its start",
            )
    for before, after in zip(part.sections, part.sections[1:], strict=False):
        gap = after.start - before.end
        if abs(gap) > SAME:
            what = "a gap" if gap > 0 else "an overlap"
            yield Fault(
                f"{before.name} and {after.name}",
                f"there is {what} of {show(abs(gap))}: one ends at {show(before.end)}, "
                f"the next starts at {show(after.start)}",
                "let them meet at one station",
            )


def _bands(part: Part) -> Iterator[Fault]:
    """The limits of one station end before those of the next begin, or the section between may vanish."""
    bands = [(0.0, 0.0), *((each.end_limits.minimum, each.end_limits.maximum) for each in part.sections[:-1])]
    bands.append((part.length.minimum, part.length.maximum))
    for section, ((_, before), (after, _)) in zip(part.sections, pairwise(bands), strict=True):
        if before >= after and section.end > section.start:
            yield Fault(
                section.name,
                f"the limits of its ends meet: it may start as far as {length(before, part.units)} and end at "
                f"{length(after, part.units)}",
                "give its stations closer limits",
            )


def _grooves(part: Part) -> Iterator[Fault]:
    """A groove lies below what is beside it, on both sides."""
    for index, groove in enumerate(part.sections):
        if groove.kind != "groove":
            continue
        beside = [
            (part.sections[at], end_radii(part.sections[at], finished=True)[side])
            for at, side in ((index - 1, 1), (index + 1, 0))
            if 0 <= at < len(part.sections)
        ]
        width, floor = groove.end - groove.start, groove.diameter.nominal.value
        deep = min([width, *(2 * radius - floor for _, radius in beside)]) / 2
        if groove.corner_radius < 0 or 0 < deep < groove.corner_radius:
            yield Fault(
                f"{groove.name}, radius",
                f"{length(groove.corner_radius, part.units)} does not go into its corners",
                f"its depth and half its width allow {length(deep, part.units)} at most",
            )
        for section, radius in beside:
            if groove.diameter.maximum >= 2 * radius:
                yield Fault(
                    groove.name,
                    f"its {length(groove.diameter.nominal.value, part.units)} is no smaller than {section.name} "
                    "beside it",
                    "a groove lies below both its neighbours",
                )


def _ends(part: Part) -> Iterator[Fault]:
    def show(mm: float) -> str:
        return length(mm, part.units)

    first, last = part.sections[0], part.sections[-1]
    if abs(first.start) > SAME:
        yield Fault(
            first.name,
            f"it starts at {show(first.start)}, not at the datum face",
            "let the first section start at 0",
        )
    overall = part.length.nominal.value
    if abs(last.end - overall) > SAME:
        yield Fault(
            last.name,
            f"the sections end at {show(last.end)} but the overall length is {show(overall)}",
            "make the two the same",
        )


def _edge(part: Part, edge: Edge) -> Iterator[Fault]:
    def show(mm: float) -> str:
        return length(mm, part.units)

    if min(abs(edge.at - z) for z in stations(part)) > SAME:
        places = ", ".join(show(z) for z in stations(part))
        yield Fault(edge.name, f"no section ends at {show(edge.at)}", f"its station is one of {places}")
        return
    if edge.size < SMALLEST:
        yield Fault(edge.name, f"{show(edge.size)} is no size to cut", "type its leg or radius, such as 1/32")
        return
    before, after = around(part.sections, edge.at)
    left = end_radii(before, finished=True)[1] if before else 0.0
    right = end_radii(after, finished=True)[0] if after else 0.0
    step = abs(left - right)
    at_end = before is None or after is None
    if edge.kind == "fillet" and (at_end or step <= SAME):
        yield Fault(edge.name, f"there is no inner corner at {show(edge.at)}", "a fillet needs a shoulder")
    elif step <= SAME:
        yield Fault(edge.name, f"there is no outer corner at {show(edge.at)}", "a chamfer needs a step or an end")
    elif edge.size > step - (0.0 if edge.kind == "fillet" else LEFT):
        yield Fault(
            edge.name,
            f"{show(edge.size)} is as much as or more than the step of {show(step)} per side it stands on",
            "make it smaller than the step",
        )
    owner = _lies_on(part, edge)
    if owner is not None and edge.size > owner.end - owner.start:
        yield Fault(edge.name, f"it is longer than {owner.name}", "make it shorter than the section it lies on")


def _lies_on(part: Part, edge: Edge) -> Section | None:
    """Return the section an edge takes its length from: a chamfer the larger one, a fillet the smaller."""
    before, after = around(part.sections, edge.at)
    left = end_radii(before, finished=True)[1] if before else 0.0
    right = end_radii(after, finished=True)[0] if after else 0.0
    return after if (right > left) == (edge.kind == "chamfer") else before


def _rooms(part: Part) -> Iterator[Fault]:
    """The edges at the two ends of one section leave something of it."""
    for section in part.sections:
        edges = [edge for edge in part.edges if _lies_on(part, edge) is section]
        room = section.end - section.start
        if len(edges) > 1 and sum(edge.size for edge in edges) > room >= max(edge.size for edge in edges):
            yield Fault(
                " and ".join(edge.name for edge in edges),
                f"together they are longer than {section.name}",
                "make one of them smaller",
            )


def _pairs(part: Part) -> Iterator[Fault]:
    """A corner takes one edge; a chamfer and a fillet may share a station only where both fit the step."""
    for index, edge in enumerate(part.edges):
        for other in part.edges[index + 1 :]:
            if edge.kind == other.kind and abs(edge.at - other.at) <= SAME:
                yield Fault(f"{edge.name} and {other.name}", "both lie on one corner", "keep one of them")
    for z in stations(part):
        chamfer, fillet = drawn_at(part, "chamfer", z), drawn_at(part, "fillet", z)
        before, after = around(part.sections, z)
        if chamfer and fillet and before and after:
            step = abs(end_radii(before, finished=True)[1] - end_radii(after, finished=True)[0])
            if chamfer.size + fillet.size > step:
                yield Fault(
                    f"{chamfer.name} and {fillet.name}",
                    "together they are higher than the step they share",
                    "make one of them smaller",
                )


def _seats(part: Part) -> Iterator[Fault]:
    for seat in part.seats:
        on = [s for s in part.sections if s.start - SAME <= seat.start and seat.end <= s.end + SAME]
        if not on:
            yield Fault(
                seat.name,
                f"from {length(seat.start, part.units)} to {length(seat.end, part.units)} it lies on no one section",
                "keep it on one section",
            )


def _centres(part: Part) -> Iterator[Fault]:
    for hole in part.centre_holes:
        section = part.sections[0] if hole.end == "datum" else part.sections[-1]
        z = 0.0 if hole.end == "datum" else section.end
        chamfer = drawn_at(part, "chamfer", z)
        taper = section.small_end if section.large_at_start == (hole.end == "far") else None
        face = (taper or section.diameter).minimum - 2 * (chamfer.size if chamfer else 0.0)
        if 0 < face <= hole.mouth:
            yield Fault(
                hole.name,
                f"its mouth of {length(hole.mouth, part.units)} is no smaller than the end's face of "
                f"{length(face, part.units)}",
                "choose a smaller centre drill",
            )
    for end in ("datum", "far"):
        holes = [hole.name for hole in part.centre_holes if hole.end == end]
        if len(holes) > 1:
            yield Fault(" and ".join(holes), "both are in one end", "keep one of them")
