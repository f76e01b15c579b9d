"""A 60° centre hole in an end face."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.numbers.faults import HandwheelError
from handwheel.part.features.base import EntryField, FeatureKind
from handwheel.part.values import CentreHole, PartEntry


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> CentreHole:
    """Return the centre hole as read.

    Raises:
        HandwheelError: its diameters do not go together.
    """
    point, mouth, body = (read[key].value for key in ("point", "mouth", "body"))
    if not point < mouth <= body:
        raise HandwheelError("mouth: must lie between the drill's point and its body; the cone carries the centre")
    return CentreHole(name, read["end"], body, point, mouth)


FEATURE = FeatureKind(
    "centre hole",
    (
        EntryField("end", "face"),
        EntryField("body", "length"),
        EntryField("point", "length"),
        EntryField("mouth", "length"),
    ),
    make,
    planned=True,
)
