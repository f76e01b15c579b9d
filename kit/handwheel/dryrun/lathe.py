"""The virtual lathe: slides with their dials and backlash, the compound's swivel, jaws, centre and tool.

The movements are written here on their own and not taken from the set-up calculations: a dry run that used
the plan's arithmetic would repeat its mistakes.
"""

from __future__ import annotations

from math import cos, radians, sin

from handwheel.shop.values import Dial, Lathe, Tool


class Slide:
    """A slide on its screw: where it stands (true mm, inwards or towards the headstock) and its dial's ring.

    Turning back leaves the slide where it was until the backlash is taken up. So a number come to from the
    wrong side finds the slide further in than the dial says, by the whole backlash.

    >>> slide = Slide(Dial("cross-slide", "in", 2.54, 0.0254, "travel", 0.2032))
    >>> slide.set_ring(0.0)
    >>> slide.go_to(turns=1, reading=1.27, right_side=True)
    >>> slide.stands
    3.81
    >>> slide.go_to(turns=1, reading=1.27, right_side=False)
    >>> slide.stands
    4.0132
    """

    def __init__(self, dial: Dial) -> None:
        self.dial = dial
        self.stands = 0.0
        self.cleared_by = ""
        self._ring: tuple[float, float] | None = None

    @property
    def is_set(self) -> bool:
        """Whether the ring was set since the last change that makes its reading meaningless."""
        return self._ring is not None

    def true(self, marked: float) -> float:
        """Return the true travel (mm) of a marked amount (mm as marked on this dial)."""
        return marked * self.dial.true_lead / (2 if self.dial.reads == "diameter" else 1)

    def clear(self, why: str) -> None:
        """Forget the ring: `why` says which change made its reading meaningless."""
        self._ring = None
        self.cleared_by = why

    def set_ring(self, reading: float) -> None:
        """Set the ring to `reading` (marked mm) while the slide stands still."""
        self._ring = (reading, self.stands)

    def go_to(self, turns: int, reading: float, *, right_side: bool, more: float = 0.0) -> None:
        """Bring the slide to a dial number: `turns` zeros passed since the ring was set, then `reading`."""
        assert self._ring is not None
        ring, stood = self._ring
        self.stands = stood + self.true(turns * self.dial.per_turn + reading - ring) + more
        if not right_side:
            self.stands += self.true(self.dial.backlash)


class VirtualLathe:
    """The lathe as the sheet has set it up so far. Places `w` are along the virtual bar, mm."""

    def __init__(self, lathe: Lathe) -> None:
        self.lathe = lathe
        self.cross = Slide(lathe.cross_slide)
        self.compound = Slide(lathe.compound.dial)
        self.carriage = Slide(lathe.carriage)
        for slide in (self.cross, self.compound, self.carriage):
            slide.clear("the start of the sheet")
        self.from_axis: float | None = None  # the compound's angle from the lathe axis, degrees
        self.walk = 1.0  # +1: feeding the compound in moves the tool towards the headstock
        self.tool: Tool | None = None
        self.out = ""  # the end facing the tailstock: "datum", "far", or "" with nothing held
        self.jaw_face = 0.0
        self.overhang = 0.0
        self.hold_line = ""
        self.centre_in = False
        self.zero_diameter: float | None = None
        self._radius_at_rest = 0.0
        self._place_at_rest = 0.0

    @property
    def outward(self) -> float:
        """+1 where the tailstock lies towards greater `w`, else -1."""
        return 1.0 if self.out == "far" else -1.0

    def unset_dials(self, why: str) -> None:
        """Forget all three rings: the tool's edge is elsewhere now."""
        for slide in (self.cross, self.compound, self.carriage):
            slide.clear(why)
        self.zero_diameter = None

    def swing(self, from_axis: float, *, towards_headstock: bool) -> None:
        """Swing the compound to an angle (degrees) from the axis, drawn back to the start of its stroke."""
        self.from_axis = from_axis
        self.walk = 1.0 if towards_headstock else -1.0
        self.compound.stands = 0.0

    @property
    def tip_radius(self) -> float:
        """The radius (mm) the tool's edge stands at."""
        angle = radians(self.from_axis or 0.0)
        return self._radius_at_rest - self.cross.stands - self.compound.stands * sin(angle)

    @property
    def tip_place(self) -> float:
        """The place `w` (mm) the tool's edge stands at."""
        return self._place_at_rest - self.outward * self._along

    @property
    def _along(self) -> float:
        angle = radians(self.from_axis or 0.0)
        return self.carriage.stands + self.walk * self.compound.stands * cos(angle)

    def touch_radius(self, radius: float, ring: float) -> None:
        """The edge touches a radius (mm) and the cross-slide's ring is set (marked mm)."""
        self._radius_at_rest += radius - self.tip_radius
        self.cross.set_ring(ring)

    def touch_place(self, w: float, ring: float) -> None:
        """The edge touches a place `w` (mm) and the carriage's ring is set (marked mm)."""
        self._place_at_rest += w - self.tip_place
        self.carriage.set_ring(ring)

    def diameter_per(self, slide: Slide, marked: float) -> float:
        """Return what a marked amount (mm) of a slide's dial takes off the diameter (mm)."""
        share = sin(radians(self.from_axis or 0.0)) if slide is self.compound else 1.0
        return 2 * slide.true(marked) * share
