"""Motions that cut: face, turn, chamfer."""

from __future__ import annotations

from math import radians, tan

from handwheel.dryrun.bench import FACING, TURNING, Bench
from handwheel.dryrun.compare import ALLOWANCE
from handwheel.dryrun.holding import no_centre
from handwheel.dryrun.lathe import Slide

SLENDER = 4.0
"""Work standing further out of the chuck than this many diameters is turned on the centre
(common practice, no published source)."""
JAW_CLEARANCE = 0.5
"""The least room (mm) between the tool's edge and the jaws."""
FACED = 0.4
"""The last stretch of a pass (mm) against a shoulder is faced by the tool's side: its depth counts along the work."""
CORNER_REACH = 0.2
"""How near (mm) to the printed position the corner meant must be."""
NO_STEP = 0.01
"""A step lower than this (mm) has no corner to touch."""


def face(bench: Bench) -> None:
    """The end is faced to the centre at a carriage reading."""
    bench.held()
    tool = bench.tool(*FACING)
    no_centre(bench)
    bench.speed_and_feed()
    lathe, bar = bench.lathe, bench.bar
    _move_carriage(bench)
    w = lathe.tip_place
    taken = lathe.outward * (bench.out_place - w)
    if taken <= ALLOWANCE:
        raise bench.stop(
            f"facing takes nothing: the tool stands {bench.show(abs(taken))} outside the end",
            "the carriage must come past the end as it was touched",
        )
    if taken >= bar.length:
        raise bench.stop("facing would take the whole bar", "the carriage reading is too great")
    if taken > tool.max_depth + ALLOWANCE:
        bench.fault(
            f"facing takes {bench.show(taken)} at once, {tool.name} is good for {bench.show(tool.max_depth)}",
            "take it in more cuts",
        )
    _clear_of_jaws(bench, w)
    if lathe.out == "far":
        bar.shorten(bar.start, w)
    else:
        bar.shorten(w, bar.end)
    bar.faced.pop(lathe.out, None)
    bar.faced[lathe.out] = bench.line.number
    if bar.length < bench.shortest - ALLOWANCE:
        bench.fault(
            f"faced to {bench.show(bar.length)} it is too short: the part is {bench.show(bench.shortest)}",
            "the carriage reading is too great or the saw cut too short",
        )


def turn(bench: Bench) -> None:
    """One pass towards the headstock, ending at a position."""
    bench.held()
    tool = bench.tool(*TURNING)
    if tool.hand == "left":
        bench.fault(f"{tool.name} is left-hand and does not cut towards the headstock", "mount a right-hand tool")
    bench.speed_and_feed()
    lathe, bar = bench.lathe, bench.bar
    stop = bench.place()
    for slide, short, name in (
        (lathe.cross, "cross", "cross-slide"),
        (lathe.compound, "compound", "compound"),
    ):
        if bench.has(f"{short}-turns") or bench.has(f"{short}-reading"):
            _move_in(bench, slide, short, name)
    bench.ready(lathe.cross, "cross-slide")
    _move_carriage(bench)
    w, radius = lathe.tip_place, lathe.tip_radius
    end = bench.end_named("from-face")
    bench.expect(
        "position",
        bench.distance_from(end, w),
        f"the carriage stands at {bench.show(bench.distance_from(end, w))}, not at {bench.size('position').text}",
        "the carriage's turns or reading are wrong",
        extra=bench.size("carriage-more").half_place,
    )
    if radius <= 0:
        raise bench.stop("the tool would go past the centre of the work", "the dial number is too great")
    hole = bar.holes.get(lathe.out)
    if lathe.centre_in and hole and 2 * radius <= hole.mouth:
        raise bench.stop("the tool would run into the tailstock centre", "the dial number is too great")
    if not lathe.centre_in and lathe.overhang > SLENDER * 2 * bar.greatest(*sorted((stop, bench.out_place))):
        bench.fault(
            f"the work stands {bench.show(lathe.overhang)} out of the chuck with no centre in its end",
            "bring up the centre first",
        )
    depth = _cut(bench, tool.max_depth, tool.approach_angle, tool.name)
    _after_cut(bench, cuts=depth > 0)


def _move_in(bench: Bench, slide: Slide, short: str, name: str) -> None:
    if not (bench.has(f"{short}-turns") and bench.has(f"{short}-reading") and bench.has(f"{short}-approach")):
        raise bench.stop(
            f"the {name} number is not complete", "print its turns, its reading and the side it comes from"
        )
    if slide is bench.lathe.compound and bench.lathe.from_axis is None:
        raise bench.stop("the compound is fed in but was never swung", "swing it to its angle first")
    bench.ready(slide, name)
    right = bench.read.words[f"{short}-approach"] == "outside"
    if not right:
        bench.fault(
            f"the {name} comes from the inside, so its backlash of "
            f"{bench.show(slide.true(slide.dial.backlash))} is not taken up",
            "draw back further than the backlash and come in from the outside",
        )
    slide.go_to(bench.read.counts[f"{short}-turns"], bench.size(f"{short}-reading").value, right_side=right)
    stroke = bench.shop.lathe.compound.stroke
    if slide is bench.lathe.compound and not -ALLOWANCE <= slide.stands <= stroke + ALLOWANCE:
        bench.fault(
            f"the compound would stand {bench.show(slide.stands)} along its slide, its stroke is {bench.show(stroke)}",
            "swing or set it so that it stays within its stroke",
        )


def _move_carriage(bench: Bench) -> None:
    carriage = bench.lathe.carriage
    bench.ready(carriage, "carriage")
    right = bench.read.words["carriage-approach"] == "the tailstock side"
    if not right:
        bench.fault(
            "the carriage comes from the headstock side, so its backlash is not taken up",
            "draw back and come from the tailstock side",
        )
    carriage.go_to(
        bench.read.counts["carriage-turns"],
        bench.size("carriage-reading").value,
        right_side=right,
        more=bench.size("carriage-more").value,
    )


def _clear_of_jaws(bench: Bench, w: float) -> None:
    room = bench.lathe.outward * (w - bench.lathe.jaw_face)
    if room < JAW_CLEARANCE - ALLOWANCE:
        raise bench.stop(
            f"the tool would run into the jaws: its edge comes {bench.show(max(0.0, -room))} past their face "
            f"(held as line {bench.lathe.hold_line} says)",
            f"stop at least {bench.show(JAW_CLEARANCE)} short of the jaws, or let the work stand out further",
        )


def _cut(bench: Bench, max_depth: float, approach: float, tool: str) -> float:
    """Cut from beyond the end to where the carriage stands; a leaning edge cuts on into the shoulder.

    Returns the deepest cut (mm per side).
    """
    lathe, bar, number = bench.lathe, bench.bar, bench.line.number
    w, radius = lathe.tip_place, lathe.tip_radius
    lean = 0.0
    greatest = max(bar.greatest(bar.start, bar.end), radius)
    if approach < 90.0:
        lean = (bench.radius_towards(w, tailstock=False) - radius) / tan(radians(approach))
    _clear_of_jaws(bench, w - lathe.outward * max(0.0, lean))
    low, high = sorted((w, bench.out_place))
    if lathe.outward * (bench.out_place - w) <= 0:
        raise bench.stop("the pass stops before it meets the work", "the carriage reading is too small")
    if bar.greatest(low, high) < radius - ALLOWANCE:
        bench.fault(
            f"the pass takes nothing: the tool stands at Ø{bench.show(2 * radius)}, outside the work",
            "the dial number is too small",
        )
    turned = sorted((w + FACED * lathe.outward, bench.out_place))
    across = bar.greatest(*turned) - radius if lathe.outward * (bench.out_place - w) > FACED else 0.0
    depth = bar.cut(low, high, radius, radius, number)
    if lean > 0:
        back = (greatest - radius) / tan(radians(approach))
        if lathe.outward > 0:
            bar.cut(w - back, w, greatest, radius, number)
        else:
            bar.cut(w, w + back, radius, greatest, number)
    if across > max_depth + ALLOWANCE:
        bench.fault(
            f"the pass is {bench.show(across)} deep, {tool} is good for {bench.show(max_depth)}",
            "take it in more passes",
        )
    return depth


def _after_cut(bench: Bench, *, cuts: bool) -> None:
    lathe = bench.lathe
    moved = lathe.compound if bench.has("compound-reading") else lathe.cross
    half = bench.half_mark(moved)
    measured = 2 * (lathe.tip_radius if cuts else bench.radius_towards(lathe.tip_place, tailstock=True))
    bench.expect(
        "diameter",
        measured,
        f"after it the work measures Ø{bench.show(measured)}, not Ø{bench.size('diameter').text}",
        "the dial number or the printed diameter is wrong",
        extra=half,
    )
    if lathe.zero_diameter is not None:
        left = measured - lathe.zero_diameter
        bench.expect(
            "left-to-go",
            left,
            f"after it {bench.show(left)} is left on the diameter, not {bench.size('left-to-go').text}",
            "the dial number or what is left to go is wrong",
            extra=half,
        )
    if bench.has("face-out-to"):
        shoulder = 2 * bench.radius_towards(lathe.tip_place, tailstock=False)
        out_to = bench.size("face-out-to")
        if out_to.value < shoulder - out_to.half_place - half - ALLOWANCE:
            bench.fault(
                f"the shoulder stands out to Ø{bench.show(shoulder)}, facing out to Ø{out_to.text} leaves part of it",
                f"face out to Ø{bench.show(shoulder)}",
            )


def chamfer(bench: Bench) -> None:
    """The 45° edge touches a corner, the carriage dial is set, then goes on by the chamfer's leg."""
    bench.held()
    bench.tool("chamfering")
    bench.speed_and_feed()
    lathe, bar = bench.lathe, bench.bar
    # The edge touches the corner that is there; the printed position only says which corner is meant.
    w = bar.corner_near(bench.place(), CORNER_REACH)
    corner = bench.radius_towards(w, tailstock=False)
    outside = bench.radius_towards(w, tailstock=True)
    if corner - outside <= NO_STEP:
        raise bench.stop(f"at {bench.size('position').text} there is no corner to touch", "the position is wrong")
    bench.expect(
        "corner-diameter",
        2 * corner,
        f"the corner there is on Ø{bench.show(2 * corner)}, not Ø{bench.size('corner-diameter').text}",
        "the position or the diameter is wrong",
        extra=bench.half_mark(lathe.cross),
    )
    lathe.touch_place(w, bench.size("carriage-set").value)
    _move_carriage(bench)
    leg = lathe.outward * (w - lathe.tip_place)
    bench.expect(
        "size",
        leg,
        f"the carriage goes on by {bench.show(leg)}, not by {bench.size('size').text}",
        "the carriage's turns or reading are wrong",
        extra=bench.size("carriage-more").half_place,
    )
    if leg <= 0:
        raise bench.stop("the chamfer takes nothing", "the carriage must go on towards the headstock")
    if leg > corner - outside + ALLOWANCE and outside > 0:
        bench.fault(
            f"a chamfer of {bench.show(leg)} is higher than the step of {bench.show(corner - outside)}",
            "make it smaller than the step",
        )
    _clear_of_jaws(bench, w - lathe.outward * leg)
    reach = min(leg, corner)
    if lathe.outward > 0:
        bar.cut(w - reach, w, corner, corner - reach, bench.line.number)
    else:
        bar.cut(w, w + reach, corner - reach, corner, bench.line.number)
