"""What every kind of feature says of itself: the fields it is typed in, and the value read from them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from attrs import frozen

from handwheel.part.values import CentreHole, Edge, PartEntry, Seat, Section

Value = Section | Edge | CentreHole | Seat


@frozen
class EntryField:
    """One typed field: its key, how it is read, and whether it must be there.

    `reads` is `station` (with the part's length limits where none are typed), `length`, `limits`, `thread`,
    `text` or `face` (the name of an end).
    """

    key: str
    reads: str
    required: bool = True


@frozen
class FeatureKind:
    """A kind of feature.

    `make` turns the read fields into its value. `planned` says whether turning cuts it yet; where one is not cut,
    `stands` says in words what is left standing for it meanwhile.
    """

    kind: str
    fields: tuple[EntryField, ...]
    make: Callable[[str, Mapping[str, Any], PartEntry], Value]
    planned: bool
    stands: str = ""


STRETCH = (EntryField("from", "station"), EntryField("to", "station"))
"""The fields of a section: where it starts and ends, from the datum face."""
