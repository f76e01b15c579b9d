"""Values of a shop file that can each be read, but make no sense together."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from handwheel.shop.values import Bar, CentreDrill, Compound, Dial, Gauge, Lathe, Rates, ThreadingDial, Tool

WIDEST_APPROACH = 120.0
"""The widest angle from the axis to a turning tool's edge, degrees (common practice, no published source)."""

HIGHEST_MARKUP = 5.0
"""A markup above this is taken for a percentage typed without its point."""

Unsound = Iterator[tuple[str, str, str]]
"""What does not make sense: its key, what is wrong and what would be right."""


def unsound(value: object) -> Unsound:
    """Return what makes no sense in one table's value, by key.

    >>> [key for key, _, _ in unsound(CentreDrill("No. 4", body=3.175, point=7.9375))]
    ['point']
    """
    return _RULES.get(type(value), _nothing)(value)


def _nothing(_: object) -> Unsound:
    return iter(())


def _dial(dial: Dial) -> Unsound:
    count = dial.per_turn / dial.division
    if round(count) < 1 or abs(count - round(count)) > 1e-6 * count:
        yield "division", "a turn is no whole number of divisions", "read both off the dial again"
    if dial.backlash >= dial.per_turn:
        yield "backlash", "is a whole turn or more", "measure it with an indicator, or adjust the nut"
    if not 0.5 <= dial.true_lead <= 2:
        yield "true-lead", "is not near 1", "write true travel / marked travel"


def _compound(compound: Compound) -> Unsound:
    yield from _dial(compound.dial)
    if compound.swing > 360:
        yield "swing", "is more than a full circle", "give the angle it swings to from zero, in degrees"


def _lathe(lathe: Lathe) -> Unsound:
    if lathe.carriage.reads == "diameter":
        yield "carriage.reads", "a carriage runs along the axis and removes no diameter", "write travel"
    if lathe.spindle_bore >= lathe.swing:
        yield "spindle-bore", "is no smaller than the swing", "measure the hole through the spindle"
    if lathe.tailstock.set_over >= lathe.swing / 2:
        yield "tailstock.set-over", "is half the swing or more", "measure how far the tailstock goes off centre"


def _threading_dial(dial: ThreadingDial) -> Unsound:
    if dial.lines > dial.teeth:
        yield "lines", "there are more lines than teeth", "count the lines on the dial's face"


def _tool(tool: Tool) -> Unsound:
    if tool.approach_angle > WIDEST_APPROACH:
        yield "approach-angle", f"is more than {WIDEST_APPROACH:g}°", "measure it from the lathe's axis to the edge"


def _centre_drill(drill: CentreDrill) -> Unsound:
    if drill.point >= drill.body:
        yield "point", "is no smaller than the body", "give the small drill in front as the point"


def _gauge(gauge: Gauge) -> Unsound:
    if gauge.most <= gauge.least:
        yield "most", "is not above least", "give the range it measures"
    elif gauge.uncertainty >= gauge.most - gauge.least:
        yield "uncertainty", "is as much as the range", "take it from the gauge's certificate, or try it on a block"


def _bar(bar: Bar) -> Unsound:
    if abs(bar.measured - bar.diameter) > 0.1 * bar.diameter:
        yield "measured", "is far from the bar's diameter", "measure it again"
    if 2 * bar.skin >= bar.measured:
        yield "skin", "leaves nothing of the bar", "give the depth to sound metal on one side"


def _rates(rates: Rates) -> Unsound:
    if rates.material_markup > HIGHEST_MARKUP:
        yield "material-markup", f"is more than {HIGHEST_MARKUP:g} times the price", "write .20 for 20 %"


_RULES: Mapping[type, Callable[[Any], Unsound]] = {
    Dial: _dial,
    Compound: _compound,
    Lathe: _lathe,
    ThreadingDial: _threading_dial,
    Tool: _tool,
    CentreDrill: _centre_drill,
    Gauge: _gauge,
    Bar: _bar,
    Rates: _rates,
}
