"""From a length to the numbers of a graduated dial, and a finer feed than the dial has."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from handwheel.calc.refusals import positive
from handwheel.numbers.faults import HandwheelError
from handwheel.worked.result import (
    Angle,
    Count,
    Diameter,
    Length,
    Number,
    Reads,
    Step,
    Working,
    calculation,
    working,
)


@dataclass(frozen=True)
class DialPosition:
    """Where a dial stands: divisions gone, zeros passed, its reading and what it cannot show (mm as marked)."""

    divisions: int
    turns: int
    reading: float
    left_over: float


def on_dial(
    marked: Length, division: Length, per_turn: Length, start: Length = 0.0, *, short: bool = False
) -> DialPosition:
    """Turn an amount into turns and divisions of a dial: the one place where a length meets a dial's marks.

    Args:
        marked: what the dial is to count from its start, mm as marked; not negative.
        division: one division, mm as marked.
        per_turn: one turn, mm as marked; a whole number of divisions.
        start: the reading it starts from, mm as marked; within one turn.
        short: stop at the last division not beyond the amount, a plain yes or no; else at the nearest.

    Returns:
        Divisions gone, zeros passed since the start, the reading at the end and
        what is left over, mm as marked.

    Raises:
        HandwheelError: the dial is not marked in whole divisions, or the start lies outside a turn.

    Examples:
        >>> on_dial(3.4061 * 25.4, 0.127, 19.05).turns
        4
    """
    positive("read it off the dial as marked", division=division, per_turn=per_turn)
    count = round(per_turn / division)
    if abs(count * division - per_turn) > 1e-6 * per_turn:
        raise HandwheelError("per-turn: a turn must be a whole number of divisions; read both off the dial again")
    if not 0 <= start < per_turn * (1 - 1e-9):
        raise HandwheelError("start: the dial's reading lies between 0 and one turn; a full turn reads 0")
    # Half a division is a half after a change of units too, not a float's breadth to either side of it.
    gone = round(marked / division, 6)
    divisions = math.floor(gone) if short else round(gone)
    # Counted in whole divisions, so that a reading a float's breadth below a full turn is no turn short.
    position = start / division + divisions
    turns = math.floor(position / count + 1e-9)
    reading = max(0.0, (position - turns * count) * division)
    return DialPosition(divisions, turns, reading, marked - divisions * division)


def ring_for_zero(marked: Length, division: Length, per_turn: Length) -> Length:
    """Return what to set a dial's ring to, so that it reads zero after counting `marked` more.

    Args:
        marked: what the dial is still to count, mm as marked.
        division: one division, mm as marked.
        per_turn: one turn, mm as marked.

    Returns:
        The reading to set now, mm as marked, on a division.

    Examples:
        >>> round(ring_for_zero(0.310 * 25.4, 0.0254, 2.54) / 25.4, 4)
        0.09
    """
    to_go = on_dial(marked, division, per_turn)
    return 0.0 if to_go.reading < division / 2 else per_turn - to_go.reading


@dataclass(frozen=True)
class DialCut:
    """Where a dial stands at the end of a cut; lengths mm, `reading` in the dial's own marks."""

    travel: Length
    divisions: Count
    turns: Count
    reading: Length
    left_over: Diameter
    reduce: Diameter = field(repr=False)
    division: Length = field(repr=False)
    per_turn: Length = field(repr=False)
    reads: Reads = field(repr=False)
    start: Length = field(repr=False)
    true_lead: Number = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        on_diameter = self.reads == "diameter"
        marked = {"x": (self.reduce, "length"), "k": (self.true_lead, "number")}
        wanted = self.reduce / (1 if on_diameter else 2) / self.true_lead
        return working(
            "dial-cut",
            (
                Step("s", "The slide travels half of what comes off the diameter", "x/2",
                     {"x": (self.reduce, "length")}, self.travel, "length"),
                Step("m", "What the dial must count: " + ("diameter removed" if on_diameter else "slide travel"),
                     "x/k" if on_diameter else "x/(2*k)", marked, wanted, "length"),
                Step("N", "In whole divisions, the nearest", "round(m/g)",
                     {"m": (wanted, "length"), "g": (self.division, "length")}, self.divisions, "count"),
                Step("t", "The dial passes its zero this often", "floor((r + N*g)/p)",
                     {"r": (self.start, "length"), "N": (self.divisions, "count"),
                      "g": (self.division, "length"), "p": (self.per_turn, "length")}, self.turns, "count"),
                Step("R", "And then shows", "r + N*g - t*p",
                     {"r": (self.start, "length"), "N": (self.divisions, "count"), "t": (self.turns, "count"),
                      "g": (self.division, "length"), "p": (self.per_turn, "length")}, self.reading, "length"),
                Step("e", "Left over on the diameter, which the dial cannot show",
                     "x - N*g*k" if on_diameter else "x - 2*N*g*k",
                     {"x": (self.reduce, "length"), "N": (self.divisions, "count"),
                      "g": (self.division, "length"), "k": (self.true_lead, "number")}, self.left_over, "length"),
            ),
            (
                "Count from the diameter measured where the tool touched, not from the size the bar is sold by.",
                "Come to the reading in the cutting direction; after an overshoot back off more than the backlash.",
            ),
        )  # fmt: skip


@calculation(
    "dial-cut",
    "A cut on a graduated dial",
    given=(("reduce", "division", "per_turn", "reads"),),
    meanings={
        "reduce": "what comes off the diameter",
        "division": "one division of the dial, as marked",
        "per_turn": "one turn of the dial, as marked",
        "reads": "what the dial's marks count: slide travel, or diameter removed",
        "start": "what the dial shows when the tool touches",
        "true_lead": "true travel of the slide per travel marked on the dial",
        "travel": "true travel of the slide",
        "divisions": "divisions to go, the nearest whole number",
        "turns": "how often the dial passes its zero, counted from the start",
        "reading": "what the dial shows at the end",
        "left_over": "what the dial cannot show, on the diameter",
    },
    sources=("common practice, no published source",),
)
def dial_cut(
    reduce: Diameter,
    division: Length,
    per_turn: Length,
    reads: Reads,
    start: Length = 0.0,
    true_lead: Number = 1.0,
) -> DialCut:
    """Turn a reduction of the diameter into turns and divisions of a dial, and say what is left over.

    Args:
        reduce: what comes off the diameter, mm; not negative.
        division: one division of the dial as marked, mm (diameter units on a diameter dial).
        per_turn: one turn of the dial as marked, mm; a whole number of divisions.
        reads: 'travel' or 'diameter', what the marks count.
        start: the dial's reading at touch-off, mm as marked; within one turn.
        true_lead: true slide travel per marked travel, a plain number (.984252 for a 2.5 mm screw marked .100).

    Returns:
        Travel (mm), divisions, turns past zero, the reading at the end (mm as marked), what is left over (mm).

    Raises:
        HandwheelError: a size is impossible; one sentence says which and why.

    Examples:
        >>> cut = dial_cut(0.250 * 25.4, 0.0254, 2.54, "travel", start=0.037 * 25.4)
        >>> cut.divisions, cut.turns, round(cut.reading / 25.4, 4)
        (125, 1, 0.062)
    """
    if not (math.isfinite(reduce) and reduce >= 0):
        raise HandwheelError("reduce: a cut takes 0 or more off the diameter; to go back, wind the slide out")
    if not 0 < true_lead <= 2:
        raise HandwheelError(
            "true-lead: true travel per marked travel is more than 0, 1 for most; .984252 for a 2.5 mm screw "
            "marked .100"
        )
    if reads not in ("travel", "diameter"):
        raise HandwheelError("reads: a dial reads travel or diameter")
    per_mark = 1.0 if reads == "diameter" else 2.0
    end = on_dial(reduce / per_mark / true_lead, division, per_turn, start)
    left_over = per_mark * true_lead * end.left_over
    return DialCut(
        reduce / 2, end.divisions, end.turns, end.reading, left_over,
        reduce, division, per_turn, reads, start, true_lead,
    )  # fmt: skip


@dataclass(frozen=True)
class FineFeedAngle:
    """The compound's angle to the lathe axis for a fine feed, degrees."""

    angle_to_axis: Angle
    per_division: Length = field(repr=False)
    advance: Length = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        return working(
            "fine-feed-angle",
            (
                Step("A", "The compound moves the tool across by the sine of its angle to the axis", "asin(a/s)",
                     {"a": (self.advance, "length"), "s": (self.per_division, "length")},
                     self.angle_to_axis, "angle"),
            ),
            (
                ("The angle counts from the lathe axis; a compound scale with its zero along the cross-slide reads "
                "90° less it."),
                ("The diameter changes by twice the advance, and the tool walks along the work while it feeds: "
                "set the carriage back by that much at a shoulder."),
            ),
        )  # fmt: skip


@calculation(
    "fine-feed-angle",
    "The compound as a fine feed",
    given=(("per_division", "advance"),),
    meanings={
        "per_division": "one division of the compound's dial, in true travel",
        "advance": "how far the tool is to move across for that division (half of it counts on the radius)",
        "angle_to_axis": "the compound's angle to the lathe axis",
    },
    sources=("common practice, no published source; the sine of a right triangle",),
)
def fine_feed_angle(per_division: Length, advance: Length) -> FineFeedAngle:
    """Return the compound's angle to the lathe axis at which one division moves the tool across by `advance`.

    Args:
        per_division: true travel of the compound for one division, mm.
        advance: how far the tool shall move across the lathe for that division, mm of radius.

    Returns:
        The angle to the lathe axis, degrees.

    Raises:
        HandwheelError: the advance is not between 0 and the division itself.

    Examples:
        >>> round(fine_feed_angle(0.0254, 0.00254).angle_to_axis, 6)
        5.73917
    """
    positive("it is one division of the compound's dial", per_division=per_division)
    if not 0 < advance <= per_division:
        raise HandwheelError("advance: must be more than 0 and no more than the compound itself moves in a division")
    return FineFeedAngle(math.degrees(math.asin(advance / per_division)), per_division, advance)
