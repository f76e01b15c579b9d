"""What every motion of the dry run works on: the sheet, the shop, bar, lathe and the faults so far."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from handwheel.dryrun.bar import Bar
from handwheel.dryrun.compare import ALLOWANCE
from handwheel.dryrun.decode import BY_HAND, LineRead, Size, read_line, size
from handwheel.dryrun.lathe import Slide, VirtualLathe
from handwheel.dryrun.report import Finding
from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.showing import feed as shown_feed
from handwheel.numbers.showing import length
from handwheel.plan.lines import Line, Sheet
from handwheel.shop.values import Shop, System, Tool

NEAR = 0.01
"""How far (mm) beside a place the bar is looked at, to be clear of a step."""

TURNING = ("finish turning", "rough turning")
FACING = ("facing", *TURNING)

_END_WORDS: Mapping[str, str] = MappingProxyType({"datum": "far", "far": "datum"})


class CannotGoOnError(HandwheelError):
    """The line at fault cannot be carried out; its fault is already noted."""


class Bench:
    """The dry run's state while it goes through a sheet.

    Raises HandwheelError where the sheet's head is no sheet of this shop.
    """

    def __init__(self, sheet: Sheet, shop: Shop, shortest: float, longest: float) -> None:
        if sheet.units not in ("in", "mm"):
            raise HandwheelError(f"sheet {sheet.number}: units {sheet.units!r} are neither in nor mm")
        if sheet.lathe != shop.lathe.name:
            raise HandwheelError(
                f"sheet {sheet.number} is for the lathe {sheet.lathe!r}, this shop has {shop.lathe.name!r}"
            )
        self.sheet = sheet
        self.shop = shop
        self.system: System = "in" if sheet.units == "in" else "mm"
        diameter = size("length", sheet.blank_diameter, self.system, "blank diameter").value
        blank = size("length", sheet.blank_length, self.system, "blank length").value
        if diameter <= 0 or blank <= 0:
            raise HandwheelError(
                f"sheet {sheet.number}: a blank of Ø{sheet.blank_diameter} × {sheet.blank_length} is no bar"
            )
        self.bar = Bar(blank, diameter / 2)
        self.lathe = VirtualLathe(shop.lathe)
        self.shortest = shortest  # the part may be no shorter and no longer than this, mm
        self.longest = longest
        self.findings: list[Finding] = []
        self.line: Line
        self.read: LineRead

    # the line in hand

    def take(self, line: Line) -> bool:
        """Read the next line; return whether all of it could be read."""
        self.line = line
        self.read = read_line(line, self.system, self.shop.lathe)
        for _, sentence in self.read.unread:
            self.fault(f"it cannot be read: {sentence}", "print it as the field says")
        return not self.read.unread

    def fault(self, what: str, remedy: str) -> None:
        """Note a fault of the line in hand."""
        self.findings.append(Finding(self.line.number, what, remedy))

    def stop(self, what: str, remedy: str) -> CannotGoOnError:
        """Note a fault after which the line in hand cannot be carried out."""
        self.fault(what, remedy)
        return CannotGoOnError(what)

    def size(self, name: str) -> Size:
        """Return a printed size of the line in hand."""
        return self.read.sizes[name]

    def has(self, name: str) -> bool:
        """Whether the line in hand prints a field."""
        return bool(self.read.words.get(name))

    def show(self, mm: float) -> str:
        """Return a length (mm) in the sheet's units."""
        return length(mm, self.system)

    # what is printed beside what is so

    def expect(self, name: str, actual: float, what: str, remedy: str, *, extra: float = 0.0) -> bool:
        """Note a fault where a printed size is not `actual` (mm) within its last place and `extra` (mm)."""
        printed = self.size(name)
        agrees = abs(printed.value - actual) <= printed.half_place + extra + ALLOWANCE
        if not agrees:
            self.fault(what, remedy)
        return agrees

    def speed_and_feed(self) -> None:
        """Note a speed or a feed the lathe has not got."""
        speed = self.size("speed")
        speeds = self.shop.lathe.spindle_speeds
        if not any(abs(speed.value - listed) <= speed.half_place + ALLOWANCE for listed in speeds):
            nearest = min(speeds, key=lambda listed: abs(listed - speed.value))
            self.fault(
                f"the lathe has no spindle speed {speed.text}",
                f"the nearest on its list is {nearest:g} rev/min",
            )
        if not self.has("feed") or self.read.words["feed"] == BY_HAND:
            return
        feed = self.size("feed")
        feeds = self.shop.lathe.feeds
        if not any(abs(feed.value - listed) <= feed.half_place + ALLOWANCE for listed in feeds):
            nearest = min(feeds, key=lambda listed: abs(listed - feed.value))
            self.fault(
                f"the lathe has no feed {feed.text}",
                f"the nearest on its list is {shown_feed(nearest, self.system)}",
            )

    def tool(self, *kinds: str) -> Tool:
        """Return the tool in the post, which must be of one of these kinds."""
        tool = self.lathe.tool
        if tool is None:
            raise self.stop("no tool is in the post", f"mount a {kinds[0]} tool first")
        if tool.kind not in kinds:
            raise self.stop(
                f"{tool.name} is a {tool.kind} tool, which does not {self.line.motion}",
                f"mount a {kinds[0]} tool first",
            )
        return tool

    # places

    def end_named(self, name: str) -> str:
        """Return which end ("datum" or "far") a printed name means."""
        text = self.read.words[name].casefold()
        ends = {"datum": self.sheet.datum_end, "far": self.sheet.far_end}
        named = [end for end, words in ends.items() if words.casefold() in text]
        if len(named) != 1:
            raise self.stop(
                f"the work has no end called {self.read.words[name]!r}",
                f"its ends are {self.sheet.datum_end} and {self.sheet.far_end}",
            )
        return named[0]

    def end_place(self, end: str) -> float:
        """Return the place `w` (mm) of an end of the bar as it now is."""
        return self.bar.end if end == "far" else self.bar.start

    def end_words(self, end: str) -> str:
        """Return what the sheet calls an end."""
        return self.sheet.far_end if end == "far" else self.sheet.datum_end

    def held(self) -> None:
        """Refuse a line while nothing is held."""
        if not self.lathe.out:
            raise self.stop("the work is not held yet", "hold it first")

    def place(self) -> float:
        """Return the place `w` (mm) of the line's position, measured from the face it names."""
        end = self.end_named("from-face")
        if end not in self.bar.faced:
            raise self.stop(
                f"the position is measured from the {self.end_words(end)}, which is not faced yet",
                "face it first",
            )
        return self.place_from(end, self.size("position").value)

    def place_from(self, end: str, distance: float) -> float:
        """Return the place `w` (mm) at a distance (mm) from an end, into the work."""
        return self.end_place(end) + (distance if end == "datum" else -distance)

    def distance_from(self, end: str, w: float) -> float:
        """Return how far (mm) a place lies from an end, into the work."""
        return (w - self.end_place(end)) * (1.0 if end == "datum" else -1.0)

    @property
    def out_place(self) -> float:
        """The place `w` (mm) of the end facing the tailstock."""
        return self.end_place(self.lathe.out)

    def radius_towards(self, w: float, *, tailstock: bool) -> float:
        """Return the bar's radius (mm) just on one side of a place."""
        return max(self.bar.radii(w + (NEAR if tailstock else -NEAR) * self.lathe.outward))

    # dials

    def ready(self, slide: Slide, name: str) -> None:
        """Refuse a dial number where the ring was not set since its reading lost its meaning."""
        if not slide.is_set:
            raise self.stop(
                f"the {name} dial was not set since {slide.cleared_by}",
                "touch the work with this tool and set it",
            )

    def half_mark(self, slide: Slide) -> float:
        """Return half of what one mark of a dial takes off the diameter (mm)."""
        return abs(self.lathe.diameter_per(slide, slide.dial.division)) / 2
