"""A taper: a stretch from a large to a small diameter. Turning leaves a cylinder at the large end's diameter."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.numbers.faults import HandwheelError
from handwheel.part.features.base import STRETCH, EntryField, FeatureKind
from handwheel.part.values import PartEntry, Section

MEETS = 0.01
"""How near (mm) the large end's station must be to one of the taper's ends."""


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> Section:
    """Return the section as read.

    Raises:
        HandwheelError: the large end is at neither end, or is not the larger.
    """
    start, end = read["from"], read["to"]
    at = read["large-at"].value
    if min(abs(at - start.nominal.value), abs(at - end.nominal.value)) > MEETS:
        raise HandwheelError("large-at: the large end is at neither end of the taper; give the station of one of them")
    if read["small"].maximum >= read["large"].minimum:
        raise HandwheelError("small: the small end is not smaller than the large end; change the two")
    return Section(
        name, "taper", start.nominal.value, end.nominal.value, start, end, read["large"], read["large"],
        planned=False, small_end=read["small"], large_at_start=abs(at - start.nominal.value) <= MEETS,
    )  # fmt: skip


FEATURE = FeatureKind(
    "taper",
    (
        *STRETCH,
        EntryField("large", "limits"),
        EntryField("small", "limits"),
        EntryField("large-at", "length"),
    ),
    make,
    planned=False,
    stands="a cylinder stands there at the diameter of its large end",
)
