"""Turning a stretch to one diameter: rough cuts, then two equal last cuts with the work measured between them."""

from __future__ import annotations

import math
from itertools import pairwise

from handwheel.calc.cutting import coarsest_feed, deepest_cut
from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.reading import Limits
from handwheel.plan.finefeed import is_too_coarse, on_diameter
from handwheel.plan.operations.ends import touch_face
from handwheel.plan.operations.strokes import fine_turn, measure, ring_on, touch, turn
from handwheel.plan.setup import Setup, Stretch
from handwheel.shop.values import Tool

LAST_CUT = 0.25
"""What each of the two last cuts takes off the diameter, mm: enough to cut clean, little enough not to spring
(common practice, no published source)."""

SHOULDER_STOCK = 0.25
"""What rough cuts leave along the axis at a shoulder's face, mm."""

FINISH = 1.6
"""Mean roughness the last cut is fed for, µm."""

SHORTEST = 0.5
"""The shortest rough cut there is any sense in, mm."""

NEAR_END = 6.0
"""Where the tool touches a rough diameter, mm from the end, or in the middle of a shorter stretch."""


def rough(setup: Setup, stretch: Stretch, tool: Tool) -> None:
    """Take rough cuts until two last cuts are left standing.

    Above a fillet's block the cuts go up to the shoulder, and the last of them faces it; below, they stop at the
    block.
    """
    section, step = stretch.section, on_diameter(setup.shop.lathe.cross_slide)
    present, aim = setup.outside, section.stands_as.middle
    cuts = _rough_divisions((present - aim) / step, 2 * LAST_CUT / step)
    setup.present[section.name] = present - max(cuts, 0) * step
    if cuts <= 0:
        setup.inward = present
        return
    block = stretch.fillet.size if stretch.fillet else 0.0
    if stretch.inner - stretch.outer - block - SHOULDER_STOCK < SHORTEST:
        raise HandwheelError(
            f"{section.name}: it is too short to be turned up to a shoulder"
            f"{' with a fillet' if block else ''}; make it longer, or leave it to be faced by hand"
        )
    to_block = min(cuts, math.floor((present - aim - 2 * block) / step + 1e-9)) if block else 0
    feed = _rough_feed(setup, tool)
    near = min(NEAR_END, setup.stretches()[-1].inner / 2)
    with setup.operation("rough", section.name) as tally:
        ring = touch(setup, stretch, present, near)
        short = stretch.inner - (SHOULDER_STOCK if stretch.shoulder else 0.0)
        above = _passes(setup, tool, present, 0, to_block, feed)
        below = _passes(setup, tool, present, to_block, cuts, feed)
        for number, (divisions, rpm) in enumerate([*above, *below], 1):
            what = f"Rough pass {number} of {len(above) + len(below)}"
            if divisions == to_block and block:
                words = f"{what}, as deep as the stock left for the fillet"
                turn(
                    setup,
                    stretch,
                    tally,
                    ring,
                    divisions,
                    words,
                    rpm=rpm,
                    to=stretch.inner,
                    feed=feed,
                    out_to=setup.inward,
                )
            elif number <= len(above):
                turn(setup, stretch, tally, ring, divisions, what, rpm=rpm, to=short, feed=feed)
            else:
                words = f"{what}, up to the stock left for the fillet" if block else what
                turn(setup, stretch, tally, ring, divisions, words, rpm=rpm, to=short - block, feed=feed)
    setup.outside = setup.inward = setup.present[section.name]


def _rough_feed(setup: Setup, tool: Tool) -> float:
    """Return the coarsest feed a tool's nose stands in rough cuts: a third of its radius."""
    feeds = setup.shop.lathe.feeds
    return max((each for each in feeds if each <= tool.nose_radius / 3), default=feeds[0])


def _rough_divisions(total: float, last: float) -> int:
    """Return how many of the divisions above the aim are roughed off, at least `last` left for the two last cuts.

    One division more is left where that halves better: the last cuts are to be equal.
    """
    cuts = math.floor(total - last + 1e-9)
    return min((cuts, cuts - 1), key=lambda each: abs((total - each) / 2 - round((total - each) / 2)))


def _passes(setup: Setup, tool: Tool, present: float, done: int, target: int, feed: float) -> list[tuple[int, float]]:
    """Return the fewest equal passes: where each stands, in divisions from the touch on `present` (mm), and its rpm.

    As many as the power and the tool want at the speed for what stands first; a pass further in runs faster where the
    power takes its depth at that speed too.
    """
    if target <= done:
        return []
    step = on_diameter(setup.shop.lathe.cross_slide)
    slowest = setup.rpm(tool, present - done * step)
    most = max(1, math.floor(2 * _deepest(setup, tool, present - done * step, slowest, feed) / step + 1e-9))
    count = math.ceil((target - done) / most)
    stands = [done + round((target - done) * number / count) for number in range(count + 1)]
    found = []
    for before, after in pairwise(stands):
        on = present - before * step
        fast = setup.rpm(tool, on)
        able = [
            rpm
            for rpm in setup.shop.lathe.spindle_speeds
            if slowest < rpm <= fast and _deepest(setup, tool, on, rpm, feed) >= (after - before) * step / 2
        ]
        found.append((after, max(able, default=slowest)))
    return found


def _deepest(setup: Setup, tool: Tool, on: float, rpm: float, feed: float) -> float:
    """Return the deepest cut (mm per side) that power and tool allow on a diameter (mm) at a speed."""
    lathe, steel = setup.shop.lathe, setup.material
    speed = rpm * math.pi * on / 1000
    power = deepest_cut(lathe.power * lathe.efficiency, steel.kc11, steel.mc, feed, speed, tool.approach_angle)
    return min(power, tool.max_depth)


def finish(setup: Setup, stretch: Stretch, tool: Tool) -> None:
    """Take the two last cuts, equal, the work measured between them; by the compound where the dial is too coarse."""
    section, dial = stretch.section, setup.shop.lathe.cross_slide
    present, aim = min(setup.present[section.name], setup.passed), section.stands_as.middle
    fine = setup.fine if is_too_coarse(dial, section) else None
    feed = coarsest_feed(setup.shop.lathe.feeds, tool.nose_radius, FINISH) or setup.shop.lathe.feeds[0]
    block = stretch.fillet.size if stretch.fillet else 0.0
    stop = stretch.inner - block
    faced = stretch.shoulder and not block
    out_to = setup.inward if faced else 0.0
    with setup.operation("finish", section.name) as tally:
        if setup.walk:
            touch_face(setup, "Wind the compound back by what it was fed in, then in again past its backlash.")
        ring = touch(setup, stretch, present, (stretch.inner + stretch.outer) / 2)
        rpm = setup.rpm(tool, present)  # for both last cuts: what springs in one springs in the other
        semi = _last_but_one(setup, stretch, present)
        if semi:
            short = stop - (SHOULDER_STOCK / 2 if faced else 0.0)
            turn(setup, stretch, tally, ring, semi, "Last cut but one", rpm=rpm, to=short, feed=feed)
        measured = present - semi * on_diameter(dial)
        if not semi and _within(section.stands_as, present):
            ring = ring_on(dial, on_diameter(dial), present, present)  # the cut before it has made it already
        elif fine:
            ring = ring_on(setup.shop.lathe.compound.dial, fine.on_diameter, measured, aim)
            measure(setup, stretch, measured, ring, fine)
            fine_turn(setup, stretch, tally, fine, ring, rpm=rpm, to=stop, feed=feed, out_to=out_to)
        else:
            ring = ring_on(dial, on_diameter(dial), measured, aim)
            measure(setup, stretch, measured, ring)
            left = round((measured - ring.zero) / on_diameter(dial))
            words = "Last cut, to the dial's zero"
            turn(setup, stretch, tally, ring, left, words, rpm=rpm, to=stop, feed=feed, out_to=out_to)
        measure(setup, stretch, ring.zero)
    setup.finished[section.name] = setup.inward = setup.passed = ring.zero


def _last_but_one(setup: Setup, stretch: Stretch, present: float) -> int:
    """Return the divisions of the last cut but one: half of what is left, or none where the dial can't halve it.

    Raises:
        HandwheelError: so little is left that no dial takes it off.
    """
    section, dial = stretch.section, setup.shop.lathe.cross_slide
    total = (present - section.stands_as.middle) / on_diameter(dial)
    if round(total) >= 2:
        return round(total / 2)
    enough = setup.fine and is_too_coarse(dial, section) and present > section.stands_as.middle
    if not enough and not _within(section.stands_as, present):
        raise HandwheelError(
            f"{section.name}: it is so little smaller than the section inward of it that no dial takes the difference "
            "off; give both the same limits, or leave more between them"
        )
    return 0


def _within(limits: Limits, diameter: float) -> bool:
    return limits.minimum <= diameter <= limits.maximum
