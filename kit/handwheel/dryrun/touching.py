"""Motions that touch and measure, and set the dials' rings: touch-face, touch, measure."""

from __future__ import annotations

from handwheel.dryrun.bench import FACING, TURNING, Bench
from handwheel.dryrun.lathe import Slide


def touch_face(bench: Bench) -> None:
    """The tool touches the end of the work; the carriage dial's ring is set."""
    bench.held()
    bench.tool(*FACING)
    end = bench.end_named("from-face")
    if end != bench.lathe.out:
        raise bench.stop(
            f"the {bench.end_words(end)} is in the chuck and cannot be touched",
            f"touch the {bench.end_words(bench.lathe.out)}",
        )
    bench.lathe.touch_place(bench.out_place, bench.size("carriage-set").value)


def touch(bench: Bench) -> None:
    """The tool touches the outside; the cross-slide dial's ring is set so that zero is a diameter."""
    bench.held()
    bench.tool(*TURNING)
    bench.speed_and_feed()
    w = bench.place()
    radius = max(bench.bar.radii(w))
    if radius <= 0 or bench.lathe.outward * (w - bench.lathe.jaw_face) <= 0:
        raise bench.stop(
            f"at {bench.size('position').text} there is no work to touch outside the jaws",
            "touch on the work",
        )
    bench.expect(
        "touch-diameter",
        2 * radius,
        f"the work is Ø{bench.show(2 * radius)} there, not Ø{bench.size('touch-diameter').text}",
        f"set the dial for Ø{bench.show(2 * radius)}",
        extra=bench.half_mark(bench.lathe.cross),
    )
    bench.lathe.touch_radius(radius, bench.size("cross-set").value)
    _zero(bench, bench.lathe.cross, "cross-slide")


def _zero(bench: Bench, slide: Slide, name: str) -> None:
    """Note a ring that does not put its zero on the diameter printed beside it."""
    number = bench.read.counts["zero-pass"]
    per = bench.lathe.diameter_per(slide, slide.dial.per_turn)
    ring = bench.lathe.diameter_per(slide, bench.size(f"{_short(slide, bench)}-set").value)
    actual = 2 * bench.lathe.tip_radius - (number * per - ring)
    bench.expect(
        "zero-diameter",
        actual,
        f"set so, the {name} dial's zero number {number} is Ø{bench.show(actual)}, "
        f"not Ø{bench.size('zero-diameter').text}",
        "the ring's number or the count of zeros is wrong",
        extra=bench.half_mark(slide),
    )
    bench.lathe.zero_diameter = bench.size("zero-diameter").value


def _short(slide: Slide, bench: Bench) -> str:
    return "compound" if slide is bench.lathe.compound else "cross"


def measure(bench: Bench) -> None:
    """The work is measured; a ring may be set so that its zero is the finish size."""
    bench.held()
    lathe = bench.lathe
    w = bench.place()
    printed = bench.size("diameter")
    measured = min((2 * radius for radius in bench.bar.radii(w)), key=lambda d: abs(d - printed.value))
    bench.expect(
        "diameter",
        measured,
        f"the work measures Ø{bench.show(measured)} there, not Ø{printed.text}",
        "the lines before it do not leave what is printed",
        extra=0.0 if bench.has("compound-set") else bench.half_mark(lathe.cross),
    )
    judged, what = measured, "measured"
    for slide, name in ((lathe.cross, "cross"), (lathe.compound, "compound")):
        if not bench.has(f"{name}-set"):
            continue
        bench.ready(lathe.cross, "cross-slide")
        if slide is lathe.compound and lathe.from_axis is None:
            raise bench.stop("the compound's dial is set but it was never swung", "swing it to its angle first")
        if not (bench.has("zero-diameter") and bench.has("zero-pass")):
            raise bench.stop("the ring is set but not for which diameter", "print the diameter at zero")
        slide.set_ring(bench.size(f"{name}-set").value)
        _zero(bench, slide, "cross-slide" if name == "cross" else name)
        judged, what = bench.size("zero-diameter").value, "the dial's zero"
    limits = bench.read.limits
    if limits and not limits[0] - printed.half_place <= judged <= limits[1] + printed.half_place:
        bench.fault(
            f"{what} Ø{bench.show(judged)} lies outside its limits",
            f"it must lie between {bench.read.words['limits']}",
        )
