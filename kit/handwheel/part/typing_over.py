"""Typing a size of a part over: what meets at a moved station moves with it."""

from __future__ import annotations

import attrs

from handwheel.numbers import reading
from handwheel.numbers.faults import HandwheelError
from handwheel.part.features import KINDS
from handwheel.part.profile import SAME
from handwheel.part.values import PartEntry

MEETING = ("from", "at", "large-at")
"""The fields of other features that follow when a section's end is moved."""


def typed_over(entry: PartEntry, feature: str, field: str, text: str) -> PartEntry:
    """Return the part's entry with one typed size replaced.

    Where the end of a section is moved, the next section's start and the edges that stand there move along.

    >>> from handwheel.part.values import PartEntry
    >>> entry = PartEntry("p", "1018", "in", "left", "right", "2", "±.01", [
    ...     {"kind": "cylinder", "name": "a", "from": "0", "to": "1", "diameter": "1 ±.01"},
    ...     {"kind": "cylinder", "name": "b", "from": "1.000", "to": "2", "diameter": ".9 ±.01"}])
    >>> typed_over(entry, "a", "to", "1.125 ±.005").features[1]["from"]
    '1.125 ±.005'
    """
    old = next(each for each in entry.features if each["name"] == feature)
    moved = field == "to" and _is_section(old)
    features = []
    for each in entry.features:
        if each["name"] == feature:
            features.append({**each, field: text})
        elif moved:
            follows = [name for name in MEETING if name in each and _same_place(each[name], old["to"], entry)]
            features.append({**each, **{name: text if name == "from" else _station(text, entry) for name in follows}})
        else:
            features.append(each)
    return attrs.evolve(entry, features=features)


def _is_section(feature: dict[str, str]) -> bool:
    kind = KINDS.get(feature.get("kind", ""))
    return kind is not None and any(field.key == "to" and field.reads == "station" for field in kind.fields)


def _station(text: str, entry: PartEntry) -> str:
    """Return a station as typed, without its limits; what can't be read stays as it is, for the reading to refuse."""
    try:
        nominal = reading.read_limits(text, entry.units, entry.length_tolerance).nominal
    except HandwheelError:
        return text
    return text if text == nominal.typed else nominal.typed


def _same_place(one: str, other: str, entry: PartEntry) -> bool:
    try:
        places = [reading.read_limits(each, entry.units, "±.0001").nominal.value for each in (one, other)]
    except HandwheelError:
        return False
    return abs(places[0] - places[1]) <= SAME
