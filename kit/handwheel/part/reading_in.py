"""From a part as typed to a part as values; what can't be read is said with its place and a remedy."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from typing import Any

import attrs

from handwheel.numbers import reading
from handwheel.numbers.faults import Fault, HandwheelError
from handwheel.part.features import KINDS
from handwheel.part.features.base import EntryField, FeatureKind, Value
from handwheel.part.profile import corner_stands
from handwheel.part.values import CentreHole, Edge, Part, PartEntry, Seat, Section


def read_part(entry: PartEntry) -> tuple[Part | None, list[Fault]]:
    """Return the part read from its entry, or None and every fault in what was typed."""
    faults: list[Fault] = []
    if entry.units not in ("in", "mm"):
        return None, [Fault(entry.name or "part", f"its units are {entry.units!r}", "give in or mm")]
    if entry.datum_face == entry.far_face:
        faults.append(Fault("ends", f"both are called {entry.datum_face!r}", "give each end a name of its own"))
    if entry.length_tolerance.strip():
        try:
            reading.read_limits("1000", entry.units, entry.length_tolerance)
        except HandwheelError:
            example = "±.010" if entry.units == "in" else "±0.3"
            what = f"{entry.length_tolerance!r} can't be read as limits"
            return None, [Fault("length tolerance", what, f"type {example}")]
    try:
        length = reading.read_limits(entry.overall, entry.units, entry.length_tolerance)
    except HandwheelError as error:
        faults.append(_fault("overall length", error))
        length = None
    values: list[Value] = []
    for typed in entry.features:
        value = _read_feature(typed, entry, faults)
        if value is not None:
            values.append(value)
    names = [value.name for value in values]
    for name in sorted({name for name in names if names.count(name) > 1}):
        faults.append(Fault(name, "two features have this name", "give each a name of its own"))
    sections = sorted((each for each in values if isinstance(each, Section)), key=lambda each: each.start)
    if not sections and not faults:
        faults.append(Fault(entry.name or "part", "it has no section", "add a cylinder with from, to and diameter"))
    if faults or length is None:
        return None, faults
    standing = _with_grooves_standing(sections)
    part = Part(
        entry,
        length,
        standing,
        tuple(_with_its_corner(each, standing) for each in values if isinstance(each, Edge)),
        tuple(each for each in values if isinstance(each, CentreHole)),
        tuple(each for each in values if isinstance(each, Seat)),
    )
    return part, []


def _read_feature(typed: object, entry: PartEntry, faults: list[Fault]) -> Value | None:
    if not isinstance(typed, Mapping) or not all(isinstance(text, str) for text in typed.values()):
        faults.append(
            Fault(f"feature {typed!r}"[:60], "it is not typed text by field", 'write "diameter": "1.250 ±.003"')
        )
        return None
    name = typed.get("name", "").strip()
    kind = KINDS.get(typed.get("kind", ""))
    place = name or f"a {typed.get('kind', 'feature')} without a name"
    if kind is None:
        near = difflib.get_close_matches(typed.get("kind", ""), KINDS, 1)
        hint = f"do you mean {near[0]}" if near else f"it can be {', '.join(KINDS)}"
        faults.append(Fault(place, f"there is no kind of feature {typed.get('kind', '')!r}", hint))
        return None
    before = len(faults)
    if not name:
        faults.append(Fault(place, "its name is missing", "give it the name it has on the drawing"))
    read = _read_fields(kind, typed, entry, place, faults)
    if len(faults) > before:
        return None
    try:
        return kind.make(name, read, entry)
    except HandwheelError as error:
        faults.append(_fault(place, error))
        return None


def _read_fields(
    kind: FeatureKind, typed: Mapping[str, str], entry: PartEntry, place: str, faults: list[Fault]
) -> dict[str, Any]:
    known = {field.key: field for field in kind.fields}
    read: dict[str, Any] = {}
    for key in typed:
        if key not in known and key not in ("kind", "name", "note"):
            near = difflib.get_close_matches(key, known, 1)
            hint = f"do you mean {near[0]}" if near else f"a {kind.kind} has {', '.join(known)}"
            faults.append(Fault(place, f"a {kind.kind} has no {key!r}", hint))
    for field in kind.fields:
        text = typed.get(field.key, "")
        if not text.strip():
            if field.required:
                faults.append(Fault(place, f"its {field.key} is missing", f"type its {field.key}"))
            continue
        try:
            read[field.key] = _read_field(field, text, entry)
        except HandwheelError as error:
            faults.append(_fault(f"{place}, {field.key}", error))
    return read


def _read_field(field: EntryField, text: str, entry: PartEntry) -> Any:
    """Return one typed field as its value."""
    match field.reads:
        case "station":
            # The datum face itself is where counting starts: it has no limits of its own.
            if reading.is_zero(text, entry.units):
                return reading.exactly_zero(text, entry.units)
            return reading.read_limits(text, entry.units, entry.length_tolerance)
        case "limits":
            return reading.read_limits(text, entry.units)
        case "length":
            return reading.read("length", text, entry.units)
        case "thread":
            return reading.read_thread(text, entry.units)
        case "face":
            faces = {entry.datum_face: "datum", entry.far_face: "far"}
            return faces[reading.read_choice(text, tuple(faces))]
        case _:
            return text.strip()


def _with_grooves_standing(sections: list[Section]) -> tuple[Section, ...]:
    """Return the sections with each groove standing at its smaller neighbour's diameter."""
    standing = list(sections)
    for index, section in enumerate(sections):
        if section.kind == "groove":
            around = [sections[place] for place in (index - 1, index + 1) if 0 <= place < len(sections)]
            smaller = min(
                (each for each in around if each.kind != "groove"),
                key=lambda each: each.stands_as.middle,
                default=section,
            )
            standing[index] = attrs.evolve(section, stands_as=smaller.stands_as)
    return tuple(standing)


def _with_its_corner(edge: Edge, sections: tuple[Section, ...]) -> Edge:
    """Return the edge; where its corner is not there after turning, as one that is not planned."""
    stands = corner_stands(edge, sections)
    return attrs.evolve(edge, stands=stands, planned=edge.planned and stands)


def _fault(place: str, error: HandwheelError) -> Fault:
    what, _, remedy = str(error).rpartition("; ")
    return Fault(place, what or str(error), remedy if what else "type it again")
