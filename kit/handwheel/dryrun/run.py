"""The dry run: a sheet's printed lines, read back and carried out on a virtual lathe.

It believes the strings of the sheet and the shop's dials, nothing else: no number of the plan comes in, and
the movements are its own. The lathe is rigid and the tool's edge is a point, so a shoulder's corner is sharp.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from math import inf
from types import MappingProxyType

from attrs import evolve

from handwheel.dryrun import cutting, holding, touching
from handwheel.dryrun.bench import Bench, CannotGoOnError
from handwheel.dryrun.compare import HoleLike, SampleLike, compare, compare_holes, compare_length, never_named
from handwheel.dryrun.report import Report
from handwheel.plan.lines import Sheet
from handwheel.shop.values import Shop

MOTIONS: Mapping[str, Callable[[Bench], None]] = MappingProxyType(
    {
        "hold": holding.hold,
        "saw": holding.saw,
        "support": holding.support,
        "mount": holding.mount,
        "swing": holding.swing,
        "centre": holding.centre,
        "leave": holding.leave,
        "touch-face": touching.touch_face,
        "face": cutting.face,
        "touch": touching.touch,
        "turn": cutting.turn,
        "measure": touching.measure,
        "chamfer": cutting.chamfer,
    }
)
"""How each motion of a sheet is carried out."""


def dry_run(sheet: Sheet, shop: Shop, samples: Sequence[SampleLike], holes: Sequence[HoleLike]) -> Report:
    """Read a sheet back, cut a virtual bar by it and compare the bar with the part.

    `samples` are the places where the part is judged (mm from the datum face, radius limits in mm; past its
    far end both limits are 0), `holes` the centre holes it must have. The faults of the report stand in the
    order of the sheet's lines, and after them what the finished bar shows.

    Raises HandwheelError where the sheet is none for this shop or its blank cannot be read; a fault in a
    line is a finding in the report.
    """
    shortest = max((sample.z for sample in samples if sample.least > 0), default=0.0)
    longest = min((sample.z for sample in samples if sample.most <= 0), default=inf)
    bench = Bench(sheet, shop, shortest, longest)
    for line in sheet.lines:
        if bench.take(line):
            try:
                MOTIONS[line.motion](bench)
            except CannotGoOnError:
                continue
    last_lines = {line.feature: line.number for line in sheet.lines if line.feature}
    unserved = never_named(samples, last_lines)
    length = compare_length(bench.bar, shortest, longest, bench.system)
    judged, outside = compare(bench.bar, samples, bench.system, last_lines)
    drilled, missing = compare_holes(bench.bar, holes, shop, bench.system)
    faults = (*bench.findings, *length, *unserved, *outside, *missing)
    left = {line.feature for line in sheet.lines if line.motion == "leave"}
    rows = (evolve(row, feature=f"{row.feature} (stock left)") if row.feature in left else row for row in judged)
    return Report(sheet.number, len(sheet.lines), faults, (*rows, *drilled))
