"""The virtual bar beside the part: every sampled place, and the centre holes."""

from __future__ import annotations

from collections.abc import Container, Iterable, Sequence
from fractions import Fraction
from typing import Protocol

from handwheel.dryrun.bar import Bar
from handwheel.dryrun.report import Finding, Judged
from handwheel.numbers.reading import Limits, Typed
from handwheel.numbers.showing import length
from handwheel.numbers.showing import limits as shown_limits
from handwheel.shop.values import Shop, System

ALLOWANCE = 1e-6
"""Sizes are compared with this allowance, mm."""
BESIDE = 2.0
"""How far (mm) beside a place the cut is looked for that stopped short of it."""
MOUTH_ALLOWANCE = 0.05
"""How far (mm) a centre hole's mouth may be off: it is drilled by eye."""


class SampleLike(Protocol):
    """A place where the part is judged: least and most radius (mm) at `z` (mm from the datum face)."""

    @property
    def z(self) -> float: ...  # noqa: D102
    @property
    def least(self) -> float: ...  # noqa: D102
    @property
    def most(self) -> float: ...  # noqa: D102
    @property
    def feature(self) -> str: ...  # noqa: D102


class HoleLike(Protocol):
    """A centre hole the part has: its name, its end (`datum` or `far`), body, point and mouth (mm)."""

    @property
    def name(self) -> str: ...  # noqa: D102
    @property
    def end(self) -> str: ...  # noqa: D102
    @property
    def body(self) -> float: ...  # noqa: D102
    @property
    def point(self) -> float: ...  # noqa: D102
    @property
    def mouth(self) -> float: ...  # noqa: D102


def compare(
    bar: Bar, samples: Sequence[SampleLike], system: System, last_lines: dict[str, str]
) -> tuple[list[Judged], list[Finding]]:
    """Judge the bar at every sample: one row a feature, one finding for each feature outside its limits.

    `last_lines` names the last line that served a feature, for stretches no line has cut.
    """
    rows: list[Judged] = []
    findings: list[Finding] = []
    for feature in dict.fromkeys(sample.feature for sample in samples):
        places = [sample for sample in samples if sample.feature == feature]
        worst = min(places, key=lambda sample: _margin(bar, sample))
        ok = _margin(bar, worst) >= -ALLOWANCE
        got = _nearest(bar, worst)
        shown = f"Ø{length(2 * got, system)} at {length(worst.z, system)}"
        limits = _shown_limits(worst, system)
        rows.append(Judged(feature, shown, limits, ok))
        if not ok:
            off_the_end = got <= 0 or worst.most <= 0
            small = got < worst.least
            cut_by = _last_faced(bar) if off_the_end else bar.last_line(bar.start + worst.z)
            if not (off_the_end or small):
                cut_by = _stopped_short(bar, worst) or cut_by
            where = "" if cut_by else "; no line has cut there"
            size = "small" if small else "big"
            findings.append(
                Finding(
                    cut_by or last_lines.get(feature, ""),
                    f"{feature} is too {size} at {length(worst.z, system)} from the datum face: "
                    f"Ø{length(2 * got, system)}{where}",
                    f"Ø{limits} is right there",
                )
            )
    return rows, findings


def _shown_limits(sample: SampleLike, system: System) -> str:
    """Return a sample's limits on the diameter; as on a drawing, rounded inward."""
    upper, lower = (Fraction(2 * radius).limit_denominator(10**9) for radius in (sample.most, sample.least))
    return shown_limits(Limits("", Typed("length", "", Fraction(0), "mm"), upper, lower), system)


def _stopped_short(bar: Bar, sample: SampleLike) -> str:
    """Return the line whose cut ends beside a sample where too much stands: it should have gone on."""
    beside = [bar.start + sample.z + side * BESIDE for side in (-1, 1)]
    return next((bar.last_line(w) for w in beside if 0 < max(bar.radii(w)) <= sample.most), "")


def never_named(samples: Sequence[SampleLike], named: Container[str]) -> list[Finding]:
    """Note each feature with a shape of its own that no line names.

    A chamfer's or a fillet's limits change along it; where its place may vary more than its size, a sharp corner
    would pass for it. Cylinders of one size may be turned in one go, and a cylinder not cut shows in its size.
    """
    shapes = [feature for feature in dict.fromkeys(s.feature for s in samples) if feature not in named]
    return [
        Finding("", f"no line cuts the {feature} or leaves it for later", f"put in the line for the {feature}")
        for feature in shapes
        if len({(s.least, s.most) for s in samples if s.feature == feature}) > 1
    ]


def compare_length(bar: Bar, shortest: float, longest: float, system: System) -> list[Finding]:
    """Judge the overall length (mm) once the work is faced."""
    if not bar.faced or shortest - ALLOWANCE <= bar.length <= longest + ALLOWANCE:
        return []
    wrong, right = ("short", shortest) if bar.length < shortest else ("long", longest)
    most = "least" if wrong == "short" else "most"
    return [
        Finding(
            _last_faced(bar),
            f"after it the work is {length(bar.length, system)} long, which is too {wrong}",
            f"at {most} {length(right, system)} is right",
        )
    ]


def _last_faced(bar: Bar) -> str:
    """Return the line that faced the work to length."""
    return next(reversed(bar.faced.values()), "")


def _nearest(bar: Bar, sample: SampleLike) -> float:
    """Return the bar's radius at a sample; at a step, the side that suits the limits better."""
    return max(bar.radii(bar.start + sample.z), key=lambda radius: _distance(radius, sample))


def _margin(bar: Bar, sample: SampleLike) -> float:
    return _distance(_nearest(bar, sample), sample)


def _distance(radius: float, sample: SampleLike) -> float:
    return min(radius - sample.least, sample.most - radius)


def compare_holes(
    bar: Bar, holes: Iterable[HoleLike], shop: Shop, system: System
) -> tuple[list[Judged], list[Finding]]:
    """Judge the centre holes: each the part asks for is there, by the drill of its size."""
    rows: list[Judged] = []
    findings: list[Finding] = []
    drills = {drill.name: drill for drill in shop.centre_drills}
    for hole in holes:
        drilled = bar.holes.get(hole.end)
        name, line = (drilled.drill, drilled.line) if drilled else ("none", "")
        drill = drills.get(name)
        ok = drill is not None and _same(drill.body, hole.body) and _same(drill.point, hole.point)
        fits = [d.name for d in shop.centre_drills if _same(d.body, hole.body) and _same(d.point, hole.point)]
        wanted = fits[0] if fits else f"body {length(hole.body, system)}"
        rows.append(Judged(hole.name, name, wanted, ok))
        if not ok:
            what = f"drilled with {name}" if line else "never drilled"
            findings.append(Finding(line, f"{hole.name} is {what}", f"drill it with {wanted}"))
        elif drilled and abs(drilled.mouth - hole.mouth) > MOUTH_ALLOWANCE:
            mouths = [length(mm, system) for mm in (drilled.mouth, hole.mouth)]
            findings.append(
                Finding(line, f"{hole.name} is drilled to a mouth of Ø{mouths[0]}", f"Ø{mouths[1]} is right")
            )
    return rows, findings


def _same(a: float, b: float) -> bool:
    return abs(a - b) <= ALLOWANCE
