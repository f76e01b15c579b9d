"""Motions that hold the work and make the lathe ready: hold, saw, support, mount, swing, centre, leave."""

from __future__ import annotations

from handwheel.dryrun.bar import Hole
from handwheel.dryrun.bench import Bench
from handwheel.dryrun.compare import ALLOWANCE
from handwheel.numbers.showing import angle

GRIP_ALLOWANCE = 0.05
"""How far (mm) the diameter gripped may be from the one printed: the jaws close on what is there."""
CHUCK_ROOM = 5.0
"""How far (mm) work may stand in behind the jaws before it meets the spindle's bore."""
SHORTEST_GRIP = 0.25
"""The least grip, as a share of the diameter gripped (common practice, no published source)."""


def hold(bench: Bench) -> None:
    """The work is gripped, one end out."""
    lathe, bar = bench.lathe, bench.bar
    lathe.out = ""
    end = bench.end_named("end-out")
    lathe.out = end
    lathe.centre_in = False
    lathe.hold_line = bench.line.number
    lathe.unset_dials(f"the work was held anew (line {bench.line.number})")
    stick_out, grip = bench.size("stick-out").value, bench.size("grip-length").value
    lathe.jaw_face = bench.out_place - lathe.outward * stick_out
    lathe.overhang = stick_out
    inner = lathe.jaw_face - lathe.outward * grip
    low, high = sorted((lathe.jaw_face, inner))
    if stick_out <= 0 or grip <= 0 or low < bar.start - ALLOWANCE or high > bar.end + ALLOWANCE:
        bench.fault(
            f"the jaws would grip past the end of the work: {bench.show(stick_out)} out "
            f"and {bench.show(grip)} gripped of {bench.show(bar.length)}",
            f"with {bench.show(grip)} gripped at most {bench.show(bar.length - grip)} can stand out",
        )
    jaws = bench.shop.lathe.chuck_jaw_length
    if grip > jaws + ALLOWANCE:
        bench.fault(
            f"the jaws are {bench.show(jaws)} long and cannot grip {bench.show(grip)}",
            "grip no more than the jaws are long",
        )
    least, greatest = 2 * bar.least(low, high), 2 * bar.greatest(low, high)
    if greatest - least > GRIP_ALLOWANCE:
        bench.fault(
            f"the jaws would lie across a step, from Ø{bench.show(least)} to Ø{bench.show(greatest)}",
            "move the jaws onto one diameter",
        )
    else:
        bench.expect(
            "grip-diameter",
            greatest,
            f"where the jaws close the work is Ø{bench.show(greatest)}, not Ø{bench.size('grip-diameter').text}",
            "the stick-out or the diameter gripped is wrong",
            extra=GRIP_ALLOWANCE,
        )
    into_spindle = inner - lathe.outward * CHUCK_ROOM
    thickest = 2 * bar.greatest(*((bar.start, into_spindle) if lathe.out == "far" else (into_spindle, bar.end)))
    bore = bench.shop.lathe.spindle_bore
    if thickest > bore + ALLOWANCE:
        bench.fault(
            f"behind the jaws the work is Ø{bench.show(thickest)} and must go into a spindle bored {bench.show(bore)}",
            "close the jaws further towards the end that is held",
        )
    if grip < SHORTEST_GRIP * least:
        bench.fault(
            f"{bench.show(grip)} gripped of Ø{bench.show(least)} does not hold",
            f"grip at least {bench.show(SHORTEST_GRIP * least)}",
        )
    if bench.read.words["holding"] == "chuck and centre":
        _bring_up_centre(bench)


def support(bench: Bench) -> None:
    """The tailstock centre comes into the centre hole."""
    bench.held()
    if bench.read.words["holding"] != "chuck and centre":
        bench.fault("it says the work is not on the centre", "after this line it is held in chuck and centre")
    _bring_up_centre(bench)


def _bring_up_centre(bench: Bench) -> None:
    end = bench.lathe.out
    if end not in bench.bar.holes:
        raise bench.stop(f"the {bench.end_words(end)} has no centre hole", "centre drill it first")
    bench.lathe.centre_in = True


def no_centre(bench: Bench) -> None:
    """Refuse work on the end while the tailstock centre stands in it."""
    if bench.lathe.centre_in:
        raise bench.stop("the tailstock centre is in the way", "draw the centre back first")


def saw(bench: Bench) -> None:
    """The work is taken out of the lathe and sawn to an overall length."""
    end = bench.end_named("from-face")
    kept = bench.size("saw-length").value
    w = bench.place_from(end, kept)
    if not bench.bar.start < w < bench.bar.end:
        raise bench.stop(
            f"the work is {bench.show(bench.bar.length)} long and cannot be sawn to {bench.show(kept)}",
            "the saw cut must lie on the work",
        )
    if kept < bench.shortest - ALLOWANCE:
        bench.fault(
            f"sawn to {bench.show(kept)} it is too short: the part is {bench.show(bench.shortest)}",
            f"saw to {bench.show(bench.shortest)} and what facing takes off",
        )
    start, stop = (w, bench.bar.end) if end == "far" else (bench.bar.start, w)
    bench.bar.shorten(start, stop)
    sawn = "datum" if end == "far" else "far"
    bench.bar.faced.pop(sawn, None)
    bench.bar.holes.pop(sawn, None)
    bench.lathe.out = ""
    bench.lathe.centre_in = False
    bench.lathe.unset_dials(f"the work was taken out and sawn (line {bench.line.number})")


def mount(bench: Bench) -> None:
    """A tool goes into the post."""
    name = bench.read.words["tool"]
    bench.lathe.unset_dials(f"the tool was changed (line {bench.line.number})")
    bench.lathe.tool = next((tool for tool in bench.shop.tools if tool.name == name), None)
    if bench.lathe.tool is None:
        raise bench.stop(f"the shop has no tool {name!r}", "its tools are " + _listed(bench))


def _listed(bench: Bench) -> str:
    return ", ".join(tool.name for tool in bench.shop.tools)


def swing(bench: Bench) -> None:
    """The compound is swivelled by the lathe's own scale."""
    compound = bench.shop.lathe.compound
    scale, printed = bench.size("scale-reads"), bench.size("from-axis")
    true = 90.0 - scale.value if compound.scale_zero == "cross-slide" else scale.value
    zero = "along the cross-slide" if compound.scale_zero == "cross-slide" else "along the lathe axis"
    if abs(true - printed.value) > scale.half_place + printed.half_place + ALLOWANCE:
        right = 90.0 - printed.value if compound.scale_zero == "cross-slide" else printed.value
        bench.fault(
            f"the compound's scale reads zero {zero}, so {scale.text} on it is {angle(true)} from the axis, "
            f"not {printed.text}",
            f"set the scale to {angle(right)}",
        )
    if abs(scale.value) > compound.swing + ALLOWANCE or not 0 < true <= 90.0:
        bench.fault(
            f"the compound cannot be swung to {scale.text} on its scale",
            f"its scale goes to {angle(compound.swing)} and it must feed towards the axis",
        )
    way = bench.read.words["way"].casefold()
    towards = "headstock" in way
    if towards == ("tailstock" in way):
        raise bench.stop(
            f"the swivel {bench.read.words['way']!r} does not say which way feeding in moves the tool",
            "say whether it goes towards the headstock or towards the tailstock",
        )
    bench.lathe.swing(true, towards_headstock=towards)
    bench.lathe.unset_dials(f"the compound was swung (line {bench.line.number})")


def centre(bench: Bench) -> None:
    """The end is centre drilled."""
    bench.held()
    no_centre(bench)
    bench.speed_and_feed()
    end, name = bench.lathe.out, bench.read.words["drill"]
    if end not in bench.bar.faced:
        bench.fault(f"the {bench.end_words(end)} is not faced yet", "face it before the centre is drilled")
    drill = next((drill for drill in bench.shop.centre_drills if drill.name == name), None)
    if drill is None:
        raise bench.stop(
            f"the shop has no centre drill {name!r}",
            "it has " + ", ".join(drill.name for drill in bench.shop.centre_drills),
        )
    mouth = bench.size("mouth")
    if not drill.point < mouth.value <= drill.body + mouth.half_place + ALLOWANCE:
        bench.fault(
            f"{name} cannot make a mouth of Ø{mouth.text}",
            f"it lies between Ø{bench.show(drill.point)} and Ø{bench.show(drill.body)}",
        )
    if bench.size("depth").value <= 0:
        bench.fault(f"a centre {bench.size('depth').text} deep is none", "drill into the end")
    bench.bar.holes[end] = Hole(name, bench.line.number, mouth.value)


def leave(bench: Bench) -> None:
    """Nothing is cut; the place must lie on the work."""
    bench.end_named("from-face")
    distance = bench.size("position")
    if not -distance.half_place <= distance.value <= bench.bar.length:
        bench.fault(f"{distance.text} lies off the work", f"the work is {bench.show(bench.bar.length)} long")
