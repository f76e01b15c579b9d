"""Holding the work, facing its end, the centre hole, and sawing the stub off."""

from __future__ import annotations

from handwheel.calc.centres import centre_depth
from handwheel.calc.cutting import spindle_speed
from handwheel.numbers.faults import HandwheelError
from handwheel.part.profile import greatest
from handwheel.plan.holdings import SLENDER
from handwheel.plan.setup import Setup
from handwheel.shop.values import CentreDrill, Tool

LAST_FACING = 0.4
"""What is left for the cut that faces the work to length, mm."""


def hold(setup: Setup) -> None:
    """Grip the work; held short first where the bar goes into the spindle."""
    holding, writer = setup.holding, setup.writer
    short = bool(holding.short_out)
    with setup.operation("hold", "holding"):
        _hold(setup, "chuck", holding.short_out or holding.stick_out, short=short)
        if setup.fine and not short:
            swing(setup)
    change_tool(setup, "facing")
    face(setup)
    centre(setup)
    if short:
        with setup.operation("hold", "holding"):
            _hold(setup, "chuck and centre", holding.stick_out - holding.facing, short=False)
            if setup.fine:
                swing(setup)
    else:
        with setup.operation("support", "tailstock centre"):
            writer.add(
                "support",
                "tailstock centre",
                "Bring the tailstock centre up into the centre hole, lock the tailstock and the quill. Ease the "
                "centre when "
                "the work warms: it grows.",
                {"holding": "chuck and centre"},
                ("A dead centre wants grease; a live centre none. Loose is dangerous, tight burns.",),
            )


def _hold(setup: Setup, holding: str, stick_out: float, *, short: bool) -> None:
    held, writer = setup.holding, setup.writer
    if short:
        words = "Push the bar into the spindle so that it stands out short, to be faced and centre drilled. "
    elif holding == "chuck and centre":
        words = "Draw the bar out, bring the tailstock centre up into its hole, then close the jaws. "
    else:
        words = ""
    grip = held.grip_length
    writer.add(
        "hold",
        "holding",
        f"{words}Jaws on {held.grip_on}; the {held.end_name} stands {writer.place(stick_out)} out of them.",
        {
            "holding": holding,
            "end-out": held.end_name,
            "grip-on": held.grip_on,
            "grip-diameter": writer.size(held.grip_diameter),
            "grip-length": writer.place(grip),
            "stick-out": writer.place(stick_out),
        },
        ("Take the chuck key out. Turn the chuck by hand once: nothing may touch.", *(() if short else held.cautions)),
    )


def swing(setup: Setup) -> None:
    """Swivel the compound for the fine feed this holding needs."""
    fine, writer = setup.fine, setup.writer
    assert fine is not None
    dial = setup.shop.lathe.compound.dial
    zero = setup.shop.lathe.compound.scale_zero
    along = "along the cross-slide" if zero == "cross-slide" else "along the lathe axis"
    writer.add(
        "swing",
        "fine feed",
        f"The compound's scale has its zero {along}. Swivelled so, one division takes "
        f"{writer.size(fine.on_diameter)} off the "
        "diameter. Wind it back to the start of its stroke, then in again past its backlash.",
        {"scale-reads": fine.scale_reads, "from-axis": fine.from_axis, "way": fine.way},
        (
            (
                f"The compound's handle now points along the bed: see that it clears the tailstock. Its backlash is "
                f"{writer.compound(dial.backlash)} on the dial."
            ),
        ),
    )


def change_tool(setup: Setup, kind: str, *, touching: bool = False) -> Tool:
    """Change to the shop's tool of a kind and, where wanted, touch the face with it: one operation."""
    with setup.operation("change tool", kind):
        tool = mount(setup, kind)
        if touching:
            touch_face(setup, "")
    return tool


def mount(setup: Setup, kind: str) -> Tool:
    """Change to the shop's tool of a kind, if it is not up already."""
    tool = setup.pick_tool(kind)
    if setup.tool != tool:
        setup.tool = tool
        writer, lathe = setup.writer, setup.shop.lathe
        backlash = (
            f"Backlash: {writer.cross(lathe.cross_slide.backlash)} on the cross-slide's dial, "
            f"{writer.on_carriage(lathe.carriage.backlash)} on the carriage's. Gone past a number, back off more than "
            "that and come in again."
        )
        writer.add(
            "mount",
            tool.kind,
            f"Mount the {tool.name} at centre height, short and tight in the post.",
            {"tool": tool.name},
            (backlash,) if kind == "rough turning" else (),
        )
    return tool


def touch_face(setup: Setup, words: str) -> None:
    """Touch the end of the work and zero the carriage's ring there."""
    writer = setup.writer
    zero = writer.carriage(0.0)["carriage-reading"]
    setup.walk = 0.0
    writer.add(
        "touch-face",
        setup.holding.end_name,
        f"{words} Touch the {setup.holding.end_name} beside the centre with the tool's edge, coming from the "
        "tailstock side, and set the dial.".strip(),
        {"from-face": setup.holding.end_name, "carriage-set": zero},
    )


def face(setup: Setup) -> None:
    """Face the end: what the blank allows; in the second holding the last cut brings the part to length."""
    holding, writer = setup.holding, setup.writer
    tool = setup.pick_tool("facing")
    to_length = holding.letter == "B"
    diameter = setup.outside
    overhung = (holding.short_out or holding.stick_out) > SLENDER * diameter
    rpm = _slow(setup, setup.rpm(tool, diameter)) if overhung else setup.rpm(tool, diameter)
    feed = max(
        (each for each in setup.shop.lathe.feeds if each <= tool.nose_radius / 2),
        default=setup.shop.lathe.feeds[0],
    )
    cuts = _facing_cuts(holding.facing, tool.max_depth / (2 if overhung else 1), to_length)
    with setup.operation("face", holding.end_name) as tally:
        setup.tool = tool
        writer.add(
            "touch-face",
            holding.end_name,
            f"Touch the sawn {holding.end_name} at its highest spot and set the dial.",
            {"from-face": holding.end_name, "carriage-set": writer.carriage(0.0)["carriage-reading"]},
        )
        for number, depth in enumerate(cuts, 1):
            fields = writer.carriage(depth)
            last = number == len(cuts)
            words = f"Face the {holding.end_name} to the centre, carriage locked."
            if to_length and last:
                low, high = (writer.place(mm) for mm in (setup.part.length.minimum, setup.part.length.maximum))
                left = cuts[-1] - (cuts[-2] if len(cuts) > 1 else 0.0)
                reach, what = _reachable(setup)
                words += (
                    f" Before this cut stop the spindle and measure {what}: planned is {writer.place(reach + left)}, "
                    f"{writer.place(left)} over. What it is longer, set the ring less; what it is shorter, more. After "
                    f"it {writer.place(reach)} is left there, and the length is {writer.place(setup.overall)} "
                    f"({high} / {low})."
                )
            writer.add(
                "face",
                holding.end_name,
                words,
                {name: fields[name] for name in fields if name.startswith("carriage-")}
                | {"speed": writer.speed(rpm), "feed": writer.feed(feed)},
            )
            tally.minutes += setup.minutes(diameter / 2, feed, rpm)


def _slow(setup: Setup, rpm: float) -> float:
    """Return the listed speed for work that stands far out of the chuck without a centre: no more than half of it."""
    speeds = setup.shop.lathe.spindle_speeds
    return max((each for each in speeds if each <= rpm / 2), default=speeds[0])


def _reachable(setup: Setup) -> tuple[float, str]:
    """Return what the length is measured to while the work is held: a distance (mm) from the end, and in words.

    The other end is in the chuck; the shoulder behind the greatest section stands in front of it.
    """
    section = setup.part.sections[greatest(setup.part)]
    far = setup.distance(section.end if setup.holding.end == "datum" else section.start)
    if far > setup.overall - 1e-6:
        return setup.overall, "the overall length, the work out of the chuck if its other end is covered"
    return far, f"from the {setup.holding.end_name} to the shoulder behind {section.name}"


def _facing_cuts(facing: float, deepest: float, to_length: bool) -> list[float]:
    """Return the depths (mm from the sawn end) of the facing cuts."""
    first = facing - LAST_FACING if to_length and facing > 2 * LAST_FACING else facing
    count = max(1, -int(-(first - 1e-6) // deepest))
    cuts = [first * number / count for number in range(1, count + 1)]
    return cuts if first == facing else [*cuts, facing]


def centre(setup: Setup) -> None:
    """Drill the centre hole in the end worked on, as the part asks for it."""
    holding, writer = setup.holding, setup.writer
    hole = next((each for each in setup.part.centre_holes if each.end == holding.end), None)
    if hole is None:
        raise HandwheelError(
            f"{holding.end_name}: no centre hole is asked for, and the work turns on one; add a centre hole there"
        )
    drill = _drill(setup, hole.body, hole.point, hole.name)
    speed = setup.material.cutting_speed("HSS")  # what centre drills are made of; the mouth runs fastest
    rpm = spindle_speed(speed, hole.mouth, setup.shop.lathe.spindle_speeds).chosen_rpm
    if (holding.short_out or holding.stick_out) > SLENDER * setup.outside:
        rpm = _slow(setup, rpm)
    depth = centre_depth(hole.mouth, hole.point)
    with setup.operation("centre", hole.name) as tally:
        tally.minutes += 1.0
        writer.add(
            "centre",
            hole.name,
            f"Centre drill the {holding.end_name} until the cone's mouth measures {writer.place(hole.mouth)}.",
            {
                "drill": drill.name,
                "mouth": writer.place(hole.mouth),
                "depth": writer.place(depth),
                "speed": writer.speed(rpm),
            },
            (
                (
                    "Feed lightly, with cutting oil, and clear the chips often: a centre drill's point breaks off and "
                    "stays in."
                ),
            ),
        )


def _drill(setup: Setup, body: float, point: float, name: str) -> CentreDrill:
    for drill in setup.shop.centre_drills:
        if abs(drill.body - body) < 1e-6 and abs(drill.point - point) < 1e-6:
            return drill
    have = ", ".join(drill.name for drill in setup.shop.centre_drills)
    raise HandwheelError(f"{name}: the shop has no centre drill of that body and point; it has {have}")


def saw(setup: Setup) -> None:
    """Take the work out and saw the chucking stub off."""
    writer = setup.writer
    kept = setup.overall + setup.shop.stock.facing
    other = setup.part.entry.datum_face if setup.holding.end == "far" else setup.part.entry.far_face
    with setup.operation("saw", other):
        writer.add(
            "saw",
            other,
            f"Take the work out. Saw the chucking stub off, {writer.place(kept)} from the faced "
            f"{setup.holding.end_name}.",
            {"from-face": setup.holding.end_name, "saw-length": writer.place(kept)},
            ("Pads in the vice: the jaws close on turned sizes.",),
        )
