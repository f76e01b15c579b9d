"""Two sheets written by hand with a pencil, and the shops they are for: all invented.

`inch_sheet` is a shaft of two sections on a lathe whose dials read travel in inches: turned in two
holdings, the last cut by the compound. `metric_sheet` is one on a lathe whose dials read diameter in
millimetres.
"""

from __future__ import annotations

from types import SimpleNamespace

from hand_shops import INCH

from handwheel.plan.lines import Line, Sheet


class _Writer:
    """Writes lines of one holding, with what they share."""

    def __init__(self, letter, face):
        self.letter, self.face, self.lines = letter, face, []

    def line(self, motion, feature="", **values):
        named = {name.replace("_", "-"): text for name, text in values.items()}
        self.lines.append(Line(f"{self.letter}{len(self.lines) + 1}", motion, feature, motion, named))

    def hold(self, **values):
        self.line("hold", holding="chuck", end_out=self.face, **values)

    def touch_face(self, reading):
        self.line("touch-face", from_face=self.face, carriage_set=reading)

    def carriage(self, turns, reading, more):
        return {
            "carriage_turns": turns,
            "carriage_reading": reading,
            "carriage_more": more,
            "carriage_approach": "the tailstock side",
        }

    def turn(self, feature, position, carriage, diameter, left, speed, feed, **slides):
        for name in [name for name in slides if name.endswith("_reading")]:
            slides[name.replace("reading", "approach")] = "outside"
        self.line(
            "turn",
            feature,
            from_face=self.face,
            position=position,
            **self.carriage(*carriage),
            diameter=diameter,
            left_to_go=left,
            speed=speed,
            feed=feed,
            **slides,
        )


def inch_sheet() -> Sheet:
    """4.000 long: Ø1.000 ±.0002 for 1.500 from the drive end with a 1/32 chamfer, then Ø1.250 ±.005.

    Blank Ø1.500 × 5.620 = 4.000 + .060 to face + 1.560 that is sawn off and faced at the drive end.
    """
    a = _Writer("A", "tail end")
    # 5.620 - 4.500 out - 1.000 gripped = .120 behind the jaws
    a.hold(grip_on="chucking stub", grip_diameter="1.500", grip_length="1.000", stick_out="4.500")
    a.line("mount", tool="facing tool")
    a.touch_face(".000")
    a.line("face", "tail end", **a.carriage("0", ".060", "0"), speed="240 rev/min", feed=".004 in/rev")
    a.line("centre", "tail centre", drill="No. 3 centre drill", mouth=".200", depth=".250", speed="540 rev/min")
    a.line("support", holding="chuck and centre")
    a.line("mount", tool="right-hand turning tool")
    a.touch_face(".000")
    # (1.500 - 1.250) / 2 = .125 to go in: .075 + .125 = .200, the second zero after setting
    a.line(
        "touch",
        "body",
        touch_diameter="1.5000",
        from_face="tail end",
        position=".100",
        cross_set=".075",
        zero_diameter="1.2500",
        zero_pass="2",
        speed="240 rev/min",
    )
    # 2.600 = 3 turns of .750 and .350
    to = ("2.600", ("3", ".350", "0"))
    # .075 in: .075 + .075 = .150; 1.500 - .150 = 1.350
    a.turn("body", *to, "1.3500", ".1000", "240 rev/min", ".008 in/rev", cross_turns="1", cross_reading=".050")
    # .115 in: .075 + .115 = .190; 1.500 - .230 = 1.270
    a.turn("body", *to, "1.2700", ".0200", "240 rev/min", ".008 in/rev", cross_turns="1", cross_reading=".090")
    # .020 on the diameter left is .010 in: set at .090, the first zero is 1.250
    a.line(
        "measure",
        "body",
        diameter="1.2700",
        from_face="tail end",
        position="1.000",
        limits="1.255 / 1.245",
        cross_set=".090",
        zero_diameter="1.2500",
        zero_pass="1",
    )
    a.turn("body", *to, "1.2500", ".0000", "360 rev/min", ".004 in/rev", cross_turns="1", cross_reading=".000")

    # taken out and sawn off: 4.000 and .060 to face
    a.line("saw", "drive end", from_face="tail end", saw_length="4.060")

    b = _Writer("B", "drive end")
    # the work is 4.060 now; its last 2.600 are Ø1.250; jaws from 1.160 to .160 off the tail end
    b.hold(grip_on="body", grip_diameter="1.250", grip_length="1.000", stick_out="2.900")
    b.line("swing", scale_reads="87.13°", from_axis="2.87°", way="feeding in goes in and towards the headstock")
    b.line("mount", tool="facing tool")
    b.touch_face(".000")
    b.line("face", "drive end", **b.carriage("0", ".060", "0"), speed="240 rev/min", feed=".004 in/rev")
    b.line("centre", "drive centre", drill="No. 3 centre drill", mouth=".200", depth=".250", speed="540 rev/min")
    b.line("support", holding="chuck and centre")
    b.line("mount", tool="right-hand turning tool")
    b.touch_face(".000")
    # (1.500 - 1.000) / 2 = .250 to go in: .050 + .250 = .300, the third zero
    b.line(
        "touch",
        "journal",
        touch_diameter="1.5000",
        from_face="drive end",
        position=".100",
        cross_set=".050",
        zero_diameter="1.0000",
        zero_pass="3",
        speed="240 rev/min",
    )
    to = ("1.5000", ("2", ".000", "0"))
    # .100 in: .150; 1.300. then .200 in: .250; 1.100. then .245 in: .295; 1.010
    b.turn("journal", *to, "1.3000", ".3000", "240 rev/min", ".008 in/rev", cross_turns="1", cross_reading=".050")
    b.turn("journal", *to, "1.1000", ".1000", "240 rev/min", ".008 in/rev", cross_turns="2", cross_reading=".050")
    b.turn("journal", *to, "1.0100", ".0100", "240 rev/min", ".004 in/rev", cross_turns="2", cross_reading=".095")
    # 2 × .100 × sin 2.87° = .01001: one whole turn of the compound takes .0100 off the diameter
    b.line(
        "measure",
        "journal",
        diameter="1.0100",
        from_face="drive end",
        position=".500",
        limits="1.0002 / .9998",
        compound_set=".000",
        zero_diameter="1.0000",
        zero_pass="1",
    )
    # .100 × cos 2.87° = .0999 towards the headstock: the carriage stays at 1.4001 = 1 × .750 + .650 + .0001
    b.turn(
        "journal",
        "1.5000",
        ("1", ".650", "+.0001"),
        "1.0000",
        ".0000",
        "360 rev/min",
        ".004 in/rev",
        compound_turns="1",
        compound_reading=".000",
    )
    b.line(
        "measure",
        "journal",
        diameter="1.0000",
        from_face="drive end",
        position=".500",
        limits="1.0002 / .9998",
    )
    b.line("mount", tool="45° chamfering tool")
    # 1/32 = .03125: .030 on the dial and .001 by the indicator
    b.line(
        "chamfer",
        "drive chamfer",
        from_face="drive end",
        position=".000",
        corner_diameter="1.0000",
        size=".031",
        carriage_set=".000",
        **b.carriage("0", ".030", "+.001"),
        speed="240 rev/min",
    )
    b.line("leave", "drive keyseat", from_face="drive end", position=".750", size="1/4 square keyseat")
    return Sheet(
        number="1",
        units="in",
        part="hand shaft",
        lathe="12 × 30",
        datum_end="drive end",
        far_end="tail end",
        blank_diameter="1.500",
        blank_length="5.620",
        lines=(*a.lines, *b.lines),
    )


def sample(z, feature, least, most):
    """A place to judge: diameter limits, any one unit turned into mm outside."""
    return SimpleNamespace(z=z, least=least / 2, most=most / 2, feature=feature)


def hole(name, end, body, point, mouth):
    """A centre hole the part asks for."""
    return SimpleNamespace(name=name, end=end, body=body, point=point, mouth=mouth)


def inch_samples():
    """What `inch_sheet`'s shaft must be: ends and shoulder within .010, diameters as their limits say."""
    rows = [
        (0.0, "drive chamfer", 0.92, 0.95),
        (0.016, "drive chamfer", 0.95, 0.98),
        *((z, "journal", 0.9998, 1.0002) for z in (0.05, 0.5, 1.0, 1.48)),
        *((z, "body", 1.245, 1.255) for z in (1.52, 2.5, 3.5, 3.99)),
        (4.01, "tail end", 0.0, 0.0),
    ]
    return [sample(z * INCH, feature, least * INCH, most * INCH) for z, feature, least, most in rows]


def inch_holes():
    """Both ends are centre drilled."""
    return [
        hole("drive centre", "datum", 0.25 * INCH, 7 / 64 * INCH, 0.2 * INCH),
        hole("tail centre", "far", 0.25 * INCH, 7 / 64 * INCH, 0.2 * INCH),
    ]


def metric_sheet() -> Sheet:
    """100 long: Ø40 ±0.1 bar with a Ø30 ±0.05 journal for 40 from the free end; dials read diameter.

    Blank Ø40 × 131.5: 1.5 to face at the free end; the far side stays as it came, 130 long after facing.
    """
    a = _Writer("A", "free end")
    # 131.5 - 101.5 out - 30 gripped = 0: to the end of the bar
    a.hold(grip_on="bar", grip_diameter="40.0", grip_length="30.0", stick_out="101.5")
    a.line("mount", tool="facing tool")
    a.touch_face("0.0")
    a.line("face", "free end", **a.carriage("0", "1.5", "0"), speed="200 rev/min", feed="0.1 mm/rev")
    a.line("mount", tool="right-hand turning tool")
    a.touch_face("0.0")
    # 40 - 30 = 10 on a dial that reads diameter: 2.00 + 10 = 12 = the third zero
    a.line(
        "touch",
        "journal",
        touch_diameter="40.00",
        from_face="free end",
        position="5.0",
        cross_set="2.00",
        zero_diameter="30.00",
        zero_pass="3",
        speed="200 rev/min",
    )
    to = ("40.0", ("2", "0.0", "0"))
    # 5 off: 2 + 5 = 7 = 1 × 4 + 3; 35 left standing, 5 to go
    a.turn("journal", *to, "35.00", "5.00", "200 rev/min", "0.2 mm/rev", cross_turns="1", cross_reading="3.00")
    # 4.5 more: 11.5 = 2 × 4 + 3.5; 30.5
    a.turn("journal", *to, "30.50", "0.50", "200 rev/min", "0.2 mm/rev", cross_turns="2", cross_reading="3.50")
    # 0.5 left on the diameter: set at 3.50, the first zero is 30
    a.line(
        "measure",
        "journal",
        diameter="30.50",
        from_face="free end",
        position="20.0",
        limits="30.05 / 29.95",
        cross_set="3.50",
        zero_diameter="30.00",
        zero_pass="1",
    )
    a.turn("journal", *to, "30.00", "0.00", "500 rev/min", "0.1 mm/rev", cross_turns="1", cross_reading="0.00")
    a.line("leave", "bar", from_face="free end", position="40.0")
    return Sheet(
        number="2",
        units="mm",
        part="hand journal",
        lathe="300 × 750",
        datum_end="free end",
        far_end="held end",
        blank_diameter="40.0",
        blank_length="131.5",
        lines=tuple(a.lines),
    )


def metric_samples():
    """What `metric_sheet`'s piece must be."""
    rows = [
        *((z, "journal", 29.95, 30.05) for z in (0.1, 20.0, 39.8)),
        *((z, "bar", 39.9, 40.1) for z in (40.2, 80.0)),
    ]
    return [sample(z, feature, least, most) for z, feature, least, most in rows]
