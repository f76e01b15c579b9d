"""One holding being planned: what stands on the work so far, which tool is up, and the operations written."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from contextlib import contextmanager

from attrs import frozen

from handwheel.calc.cutting import cutting_time, spindle_speed
from handwheel.numbers.faults import HandwheelError
from handwheel.part.profile import edge_at
from handwheel.part.values import Edge, Part, Section
from handwheel.plan.finefeed import FineFeed
from handwheel.plan.holdings import OVERRUN, Holding
from handwheel.plan.writer import Writer
from handwheel.shop.values import Shop, Tool
from handwheel.tables.materials import Material, material


@frozen
class Operation:
    """One operation for the estimate: the lines it covers, cutting minutes, and how often hands are needed."""

    kind: str
    holding: str
    feature: str
    first_line: str
    last_line: str
    cutting_minutes: float
    passes: int = 0
    touch_offs: int = 0
    measurements: int = 0
    tool_changes: int = 0


@frozen
class Stretch:
    """What is turned to one diameter in one go: a section, with a groove's standing stock beside it.

    `inner` and `outer` are distances (mm) from the face worked from; `fillet` lies in the corner at `inner`,
    and `shoulder` says whether there is a face to finish there.
    """

    section: Section
    inner: float
    outer: float
    fillet: Edge | None
    shoulder: bool


class Setup:
    """A holding's work in progress. Sizes mm.

    `present` is the diameter standing on each stretch, by its section's name; `outside` what stands at the outer
    end before the next rough cut; `inward` the diameter just inward of the stretch in hand, where its shoulder
    ends; `shoulder` is what `inward` starts from.
    """

    def __init__(
        self,
        part: Part,
        shop: Shop,
        holding: Holding,
        fine: FineFeed | None,
        bar_diameter: float,
        shoulder: float,
    ) -> None:
        self.part = part
        self.shop = shop
        self.holding = holding
        self.fine = fine
        self.writer = Writer(part, shop, holding)
        self.material: Material = material(part.entry.material)
        self.tool: Tool | None = None
        self.outside = bar_diameter
        self.shoulder = shoulder
        self.inward = shoulder
        self.present: dict[str, float] = {}
        self.finished: dict[str, float] = {}
        self.passed = math.inf  # the least diameter a last cut in this holding has carried past the outer end
        self.walk = 0.0  # how far the compound has moved the edge along since the carriage was zeroed
        self.operations: list[Operation] = []

    @property
    def overall(self) -> float:
        """The part's nominal length, mm."""
        return self.part.length.nominal.value

    def distance(self, z: float) -> float:
        """Return how far a station (mm from the datum face) is from the face worked from."""
        return z if self.holding.end == "datum" else self.overall - z

    def stretches(self) -> Sequence[Stretch]:
        """Return what this holding turns, the greatest first."""
        found: list[Stretch] = []
        for index in self.holding.sections:
            section = self.part.sections[index]
            inner, outer = sorted((self.distance(section.start), self.distance(section.end)), reverse=True)
            first = self.holding.letter == "A" and not found
            if found and found[-1].section.stands_as == section.stands_as:
                kept = found[-1].section if section.kind == "groove" else section
                found[-1] = Stretch(kept, found[-1].inner, outer, found[-1].fillet, found[-1].shoulder)
                continue
            z = section.start if self.holding.end == "far" else section.end
            fillet = None if first else edge_at(self.part, "fillet", z)
            found.append(Stretch(section, inner + (OVERRUN if first else 0.0), outer, fillet, not first))
        return found

    def finished_on(self, section: Section) -> float:
        """Return the diameter (mm) turned on a section, its own or that of the stretch it was turned with."""
        if section.name in self.finished:
            return self.finished[section.name]
        return next(
            self.finished[each.section.name] for each in self.stretches() if each.section.stands_as == section.stands_as
        )

    def pick_tool(self, kind: str) -> Tool:
        """Return the shop's tool of a kind.

        Raises:
            HandwheelError: the shop has none.
        """
        for tool in self.shop.tools:
            if tool.kind == kind and tool.hand != "left":
                return tool
        raise HandwheelError(f"tools: the shop has no {kind} tool for the right hand; add one to its file")

    def rpm(self, tool: Tool, diameter: float) -> float:
        """Return the spindle speed to set for a tool on a diameter (mm)."""
        lathe = self.shop.lathe
        return spindle_speed(self.material.cutting_speed(tool.material), diameter, lathe.spindle_speeds).chosen_rpm

    def gauge(self, diameter: float) -> str:
        """Return the name of the shop's surest gauge for a diameter (mm), or nothing."""
        able = [gauge for gauge in self.shop.gauges if gauge.least <= diameter <= gauge.most]
        return min(able, key=lambda gauge: gauge.uncertainty).name if able else ""

    def minutes(self, distance: float, feed: float, rpm: float) -> float:
        """Return the minutes of a cut, two millimetres of air in front of it."""
        return cutting_time(distance + 2.0, feed, rpm)

    @contextmanager
    def operation(self, kind: str, feature: str) -> Iterator[Tally]:
        """Count what is written inside as one operation."""
        before = len(self.writer.lines)
        tally = Tally()
        yield tally
        lines = self.writer.lines[before:]
        if lines:
            self.operations.append(
                Operation(
                    kind, self.holding.letter, feature, lines[0].number, lines[-1].number, tally.minutes,
                    sum(line.motion in ("turn", "face", "chamfer") for line in lines),
                    sum(line.motion in ("touch", "touch-face") for line in lines),
                    sum(line.motion == "measure" for line in lines),
                    sum(line.motion == "mount" for line in lines),
                )
            )  # fmt: skip


class Tally:
    """Cutting minutes of an operation being written."""

    def __init__(self) -> None:
        self.minutes = 0.0
