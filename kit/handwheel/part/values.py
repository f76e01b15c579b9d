"""The shaft as values: sections along one axis, what stands on their edges, and what is typed for them.

Z runs from the datum face. Every length is mm; `Limits` and `Typed` keep what was typed. What a person
typed (`PartEntry`) is saved; a `Part` is read from it each time.
"""

from __future__ import annotations

from typing import Literal

from attrs import Factory, frozen

from handwheel.numbers.reading import Limits


@frozen
class PartEntry:
    """A part as typed: each feature is a mapping of field name to typed text, with `kind` and `name`."""

    name: str
    material: str
    units: Literal["in", "mm"]
    datum_face: str
    far_face: str
    overall: str
    length_tolerance: str
    features: list[dict[str, str]] = Factory(list)


@frozen
class Section:
    """A stretch of the shaft from `start` to `end` (mm from the datum face).

    `diameter` holds the limits at the larger end; `small_end` the other end's of a taper. `end_limits` are
    the limits of the station where it ends. `stands_as` are the limits of the cylinder that turning leaves
    there: the section itself where `planned`, else what stands until its own operation is planned. `call` is
    a thread's call as typed; `corner_radius` (mm) rounds both of a groove's corners.
    """

    name: str
    kind: str
    start: float
    end: float
    start_limits: Limits
    end_limits: Limits
    diameter: Limits
    stands_as: Limits
    planned: bool
    small_end: Limits | None = None
    large_at_start: bool = True
    call: str = ""
    corner_radius: float = 0.0


@frozen
class Edge:
    """A chamfer or fillet at a station; `size` is the leg of a 45° chamfer or the fillet's radius, mm.

    `stands` says whether its corner is there when turning is done: beside a groove whose stock still stands, it
    is not.
    """

    name: str
    kind: Literal["chamfer", "fillet"]
    at: float
    size: float
    typed: str
    planned: bool
    stands: bool = True


@frozen
class CentreHole:
    """A 60° centre hole in one end face: drill body, point and mouth diameters, mm."""

    name: str
    end: Literal["datum", "far"]
    body: float
    point: float
    mouth: float


@frozen
class Seat:
    """A keyseat kept in the job but not yet planned: where it lies; its call, ends and angle as typed."""

    name: str
    kind: str
    start: float
    end: float
    call: str
    ends: str = ""
    angle: str = ""


@frozen
class Part:
    """A shaft read from its entry."""

    entry: PartEntry
    length: Limits
    sections: tuple[Section, ...]
    edges: tuple[Edge, ...]
    centre_holes: tuple[CentreHole, ...]
    seats: tuple[Seat, ...]

    @property
    def name(self) -> str:
        """The part's name as typed."""
        return self.entry.name

    @property
    def units(self) -> Literal["in", "mm"]:
        """The unit system the part is dimensioned in."""
        return self.entry.units


@frozen
class Sample:
    """One place where the turned part is judged: radius limits (mm) at `z` (mm from the datum face)."""

    z: float
    least: float
    most: float
    feature: str
