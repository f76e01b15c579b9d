"""The strokes a diameter is turned with: touching, passing, measuring, and the fine cut by the compound."""

from __future__ import annotations

from attrs import frozen

from handwheel.calc.dials import on_dial, ring_for_zero
from handwheel.numbers import showing
from handwheel.numbers.faults import HandwheelError
from handwheel.plan.finefeed import FineFeed, on_diameter
from handwheel.plan.setup import Setup, Stretch, Tally
from handwheel.plan.writer import FROM_OUTSIDE
from handwheel.shop.values import Dial

ASTRAY = 0.2
"""How far a measured diameter may well lie from the planned one, mm: so far the words on setting a ring go."""


@frozen
class Ring:
    """A dial's ring as it was set: its reading (mm as marked), and the diameters where it was set and at its zero."""

    reading: float
    set_on: float
    zero: float
    zero_number: int


def ring_on(dial: Dial, per_division: float, present: float, aim: float) -> Ring:
    """Return the ring set on a diameter so that it reads zero at `aim`, to the nearest division.

    `per_division` is what one division takes off the diameter, mm; so are both diameters.
    """
    divisions = round((present - aim) / per_division)
    marked = divisions * dial.division
    reading = ring_for_zero(marked, dial.division, dial.per_turn)
    turns = on_dial(marked, dial.division, dial.per_turn, reading).turns
    return Ring(reading, present, present - divisions * per_division, turns)


def touch(setup: Setup, stretch: Stretch, present: float, at: float) -> Ring:
    """Touch the work and set the cross-slide's ring so that the stretch's aim reads zero."""
    writer, dial = setup.writer, setup.shop.lathe.cross_slide
    ring = ring_on(dial, on_diameter(dial), present, stretch.section.stands_as.middle)
    assert setup.tool is not None
    rpm = setup.rpm(setup.tool, present)
    writer.add(
        "touch",
        stretch.section.name,
        "Spindle on: let the edge just touch, then draw the carriage clear and leave the cross-slide. Spindle off: "
        f"measure where it touched; planned is Ø{writer.size(present)}. Set the dial; its zero number "
        f"{ring.zero_number} from here is Ø{writer.size(ring.zero)}. {_correction(setup, ring, None)}",
        {
            "touch-diameter": writer.size(present),
            "from-face": writer.face,
            "position": writer.place(at),
            "cross-set": writer.cross(ring.reading),
            "zero-diameter": writer.size(ring.zero),
            "zero-pass": str(ring.zero_number),
            "speed": writer.speed(rpm),
        },
    )
    return ring


def _correction(setup: Setup, ring: Ring, fine: FineFeed | None) -> str:
    """Return how a ring is set where the measured size differs from the printed one, and how its zeros then count."""
    lathe, writer = setup.shop.lathe, setup.writer
    dial = lathe.compound.dial if fine else lathe.cross_slide
    per, show = (fine.on_diameter, writer.compound) if fine else (on_diameter(dial), writer.cross)
    words = (
        f"Each {writer.size(per)} it measures more: set one division ({show(dial.division)}) less; each it measures "
        "less: one more."
    )
    astray = ASTRAY / per * dial.division
    if ring.reading < astray:
        words += f" Less than {show(0.0)} is counted back from {show(dial.per_turn)}: then one zero more."
    if ring.reading + astray >= dial.per_turn:
        past = "then one zero fewer" if ring.zero_number > 1 else "then nothing is left to take off"
        words += f" Past {show(dial.per_turn)} it goes on at {show(0.0)}: {past}."
    return words


def turn(
    setup: Setup,
    stretch: Stretch,
    tally: Tally,
    ring: Ring,
    divisions: int,
    what: str,
    *,
    rpm: float,
    to: float,
    feed: float,
    out_to: float = 0.0,
) -> None:
    """Take a pass at so many divisions of the cross-slide from where its ring was set, ending at `to` (mm).

    `what` says in words which pass it is; `rpm` the spindle speed.
    """
    writer, dial = setup.writer, setup.shop.lathe.cross_slide
    at = on_dial(divisions * dial.division, dial.division, dial.per_turn, ring.reading)
    fields = {
        "cross-turns": str(at.turns),
        "cross-reading": writer.cross(at.reading),
        "cross-approach": FROM_OUTSIDE,
    }
    diameter = ring.set_on - divisions * on_diameter(dial)
    _pass(setup, stretch, tally, fields, what, ring, diameter, rpm=rpm, to=to, feed=feed, out_to=out_to)


def fine_turn(
    setup: Setup,
    stretch: Stretch,
    tally: Tally,
    fine: FineFeed,
    ring: Ring,
    *,
    rpm: float,
    to: float,
    feed: float,
    out_to: float,
) -> None:
    """Take the last cut with the compound, the cross-slide left where it stands; the compound ends at its zero.

    Raises:
        HandwheelError: the compound's stroke is too short for it.
    """
    writer, dial = setup.writer, setup.shop.lathe.compound.dial
    divisions = round((ring.set_on - ring.zero) / fine.on_diameter)
    true = divisions * dial.division * dial.true_lead / (2 if dial.reads == "diameter" else 1)
    stroke = setup.shop.lathe.compound.stroke
    if true > stroke:
        raise HandwheelError(
            f"{stretch.section.name}: its last cut takes {writer.place(true)} of the compound, which has a stroke of "
            f"{writer.place(stroke)}; widen its limits, or leave it to be ground or polished to size"
        )
    setup.walk += true * fine.along
    at = on_dial(divisions * dial.division, dial.division, dial.per_turn, ring.reading)
    fields = {
        "compound-turns": str(at.turns),
        "compound-reading": writer.compound(at.reading),
        "compound-approach": FROM_OUTSIDE,
    }
    words = (
        "Last cut, by the compound alone, the carriage clear at the tailstock side: cross-slide back at the number "
        "of the cut before, come to from outside, "
        f"and locked. The compound walks the edge {writer.place(setup.walk)} towards the headstock; the carriage "
        "number allows for it"
    )
    _pass(setup, stretch, tally, fields, words, ring, ring.zero, rpm=rpm, to=to, feed=feed, out_to=out_to)


def _pass(
    setup: Setup,
    stretch: Stretch,
    tally: Tally,
    fields: dict[str, str],
    words: str,
    ring: Ring,
    diameter: float,
    *,
    rpm: float,
    to: float,
    feed: float,
    out_to: float,
) -> None:
    writer = setup.writer
    carriage = writer.carriage(to - setup.walk, to)
    values = {
        **carriage,
        "speed": writer.speed(rpm),
        "feed": writer.feed(feed),
        "diameter": writer.size(diameter),
        "left-to-go": writer.size(diameter - ring.zero),
        **fields,
    }
    instruction = f"{words}. Feed to {values['position']} from the {writer.face}."
    if out_to:
        values["face-out-to"] = writer.size(out_to)
        unlock = "unlock the cross-slide and " if "compound-reading" in fields else ""
        instruction += f" There {unlock}face the shoulder, winding out to Ø{values['face-out-to']}."
    writer.add("turn", stretch.section.name, instruction, values)
    tally.minutes += setup.minutes(to, feed, rpm)


def measure(
    setup: Setup, stretch: Stretch, diameter: float, ring: Ring | None = None, fine: FineFeed | None = None
) -> None:
    """Measure the stretch; with a ring, set it so that the aim reads zero from what is measured."""
    writer, section = setup.writer, stretch.section
    at = (stretch.inner + stretch.outer) / 2
    values = {
        "diameter": writer.size(diameter),
        "from-face": writer.face,
        "position": writer.place(at),
        "limits": showing.limits(section.stands_as, setup.part.units),
    }
    gauge = setup.gauge(diameter)
    words = f"Stop the spindle, let the work cool, measure {writer.place(at)} from the {writer.face}"
    words += f" with the {gauge}" if gauge else ""
    if ring is None:
        words += f": it must lie between {values['limits']}. Write it in."
    else:
        slide, show = ("compound", writer.compound) if fine else ("cross", writer.cross)
        values[f"{slide}-set"] = show(ring.reading)
        values["zero-diameter"] = writer.size(ring.zero)
        values["zero-pass"] = str(ring.zero_number)
        name = "compound" if fine else "cross-slide"
        words += (
            f"; planned is Ø{values['diameter']}. With the cross-slide at the number of that cut, set the {name} "
            f"dial: its zero number {ring.zero_number} from here is Ø{values['zero-diameter']}. "
            f"{_correction(setup, ring, fine)}"
        )
    writer.add("measure", section.name, words, values)
