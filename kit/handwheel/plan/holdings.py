"""How the work is held: which end is turned first, what the jaws close on the second time, and why."""

from __future__ import annotations

from attrs import frozen

from handwheel.numbers.faults import Fault, HandwheelError
from handwheel.numbers.showing import length
from handwheel.part.profile import edge_at, greatest
from handwheel.part.values import Part, Section
from handwheel.plan.stock import StockChoice
from handwheel.shop.values import Shop

OVERRUN = 1.5
"""How far past the greatest section its diameter is carried on, so that the other side blends in, mm."""

JAW_MARGIN = 2.0
"""Room between the jaws and the ends of the section they close on, mm."""

CHUCK_ROOM = 5.0
"""How far work may stand in behind what the jaws close on before it meets the spindle's bore, mm."""

TRUE = {"in": ".0005", "mm": "0.01"}
"""How true the work is set before the second holding, in its own units (common practice, no published source)."""

SLENDER = 4.0
"""Work further out of the chuck than this many diameters wants the centre (common practice, no published source)."""

SPRINGY = 12.0
"""Work between jaws and centre that is longer than this many diameters wants a steady
(common practice, no published source)."""

SHORT_OUT = 1.5
"""How far bar that passes through the spindle stands out to be faced and centre drilled, in diameters."""


@frozen
class Holding:
    """One holding: the end worked on, the sections turned in it from the greatest outward, and the jaws.

    `end` is the end facing the tailstock. Lengths mm. `short_out` is the stick-out for facing and centre drilling
    where the bar is first held short, else 0.
    """

    letter: str
    end: str
    end_name: str
    sections: tuple[int, ...]
    grip_on: str
    grip_diameter: float
    grip_length: float
    stick_out: float
    short_out: float
    facing: float
    reason: str
    cautions: tuple[str, ...]


def choose_holdings(
    part: Part, shop: Shop, choice: StockChoice, first_end: str = ""
) -> tuple[tuple[Holding, ...], list[Fault]]:
    """Return the two holdings, or the faults that stand against turning this part in two.

    `first_end` is the name of the end a person wants turned first; without it, the end whose sections offer the
    jaws the better grip afterwards.
    """
    faults = [*_necks(part), *_machine(part, shop, choice)]
    if faults:
        return (), faults
    top = greatest(part)
    sides = {
        "datum": tuple(range(top, -1, -1)),
        "far": tuple(range(top, len(part.sections))),
    }
    names = {"datum": part.entry.datum_face, "far": part.entry.far_face}
    grips = {end: _best_grip(part, shop, end, indices) for end, indices in sides.items()}
    first, why = _first_end(shop, grips, names, first_end)
    if first is None:
        return (), [
            Fault(
                part.name,
                "the jaws find no section to close on for the second holding",
                f"they want {length(shop.lathe.chuck_jaw_length / 2, part.units)} of one diameter, with nothing behind "
                f"them thicker than the spindle's bore of {length(shop.lathe.spindle_bore, part.units)}; or turn it "
                "between centres",
            )
        ]
    second = "datum" if first == "far" else "far"
    grip = grips[first]
    assert grip is not None
    holdings = (
        _first(part, shop, choice, first, sides[first], names, why),
        _second(part, shop, choice, second, sides[second][1:], names, grip),
    )
    return holdings, []


def _necks(part: Part) -> list[Fault]:
    """Return a fault for each section that is smaller than both its neighbours: no turning tool reaches it."""
    top = greatest(part)
    faults = []
    for index in range(1, len(part.sections)):
        inner, outer = (index, index - 1) if index <= top else (index - 1, index)
        if part.sections[outer].stands_as.middle > part.sections[inner].stands_as.middle + 1e-6:
            faults.append(
                Fault(
                    part.sections[inner].name,
                    f"{part.sections[outer].name} beside it is larger and lies further out, so it is a neck",
                    "a neck wants a grooving or left-hand tool, which this plan does not use yet",
                )
            )
    return faults


def _machine(part: Part, shop: Shop, choice: StockChoice) -> list[Fault]:
    lathe = shop.lathe
    faults = []
    if choice.blank_length > lathe.between_centres:
        faults.append(
            Fault(
                part.name,
                f"the blank of {length(choice.blank_length, part.units)} does not go between centres "
                f"{length(lathe.between_centres, part.units)} apart",
                "turn it on a longer lathe",
            )
        )
    if choice.bar.measured > lathe.swing / 2:
        faults.append(
            Fault(part.name, "the bar is more than half of what the lathe swings", "turn it on a larger lathe")
        )
    return faults


@frozen
class _Grip:
    section: Section
    start: float
    end: float


def _best_grip(part: Part, shop: Shop, side: str, indices: tuple[int, ...]) -> _Grip | None:
    """Return the stretch of one turned diameter that the jaws best close on: the widest limits, full jaws first.

    What reaches further back than the jaws goes into the spindle, so the jaws close far enough out for that.
    """
    jaws = shop.lathe.chuck_jaw_length
    thick = [
        part.sections[index] for index in indices if part.sections[index].stands_as.maximum >= shop.lathe.spindle_bore
    ]
    found = []
    for index in indices:
        section = part.sections[index]
        start, end = section.start + JAW_MARGIN, section.end - JAW_MARGIN
        for edge in (edge_at(part, "fillet", section.start), edge_at(part, "chamfer", section.start)):
            start += edge.size if edge else 0.0
        for edge in (edge_at(part, "fillet", section.end), edge_at(part, "chamfer", section.end)):
            end -= edge.size if edge else 0.0
        if thick and side == "far":
            start = max(start, thick[-1].end - jaws)
            reaches_in = thick[-1].end - end
        elif thick:
            end = min(end, thick[-1].start + jaws)
            reaches_in = start - thick[-1].start
        else:
            reaches_in = 0.0
        enough = max(jaws / 2, section.stands_as.maximum / 2)
        if reaches_in <= CHUCK_ROOM and end - start >= enough and section.kind not in ("groove", "thread"):
            found.append(_Grip(section, start, end))
    return max(
        found,
        key=lambda grip: (grip.end - grip.start >= jaws, grip.section.diameter.tolerance, grip.end - grip.start),
        default=None,
    )


def _first_end(
    shop: Shop, grips: dict[str, _Grip | None], names: dict[str, str], wanted: str
) -> tuple[str | None, str]:
    """Return the end turned first, and the reason in words."""
    able = {end: grip for end, grip in grips.items() if grip is not None}
    if wanted:
        end = next((end for end, name in names.items() if name == wanted), None)
        if end is None:
            raise HandwheelError(
                f"first end: {wanted!r} is no end of this part; it can be {names['datum']} or {names['far']}"
            )
        return (end if end in able else None), f"the {wanted} first, as decided by hand"
    if not able:
        return None, ""
    jaws = shop.lathe.chuck_jaw_length
    end = max(
        able,
        key=lambda each: (
            able[each].end - able[each].start >= jaws,
            able[each].section.diameter.tolerance,
            each == "far",
        ),
    )
    return end, (
        f"the {names[end]} first, because its {able[end].section.name} has the widest limits of the sections "
        "that the jaws can well close on afterwards"
    )


def _first(
    part: Part,
    shop: Shop,
    choice: StockChoice,
    end: str,
    sections: tuple[int, ...],
    names: dict[str, str],
    why: str,
) -> Holding:
    bar = choice.bar
    grip = min(shop.stock.chucking, shop.lathe.chuck_jaw_length)
    stick_out = choice.blank_length - grip
    short = 0.0
    cautions = _springs(part, sections, stick_out)
    if stick_out > SLENDER * bar.measured:
        if bar.measured < shop.lathe.spindle_bore:
            short = SHORT_OUT * bar.measured
        else:
            cautions.append(_steady(stick_out / bar.measured))
    return Holding(
        "A", end, names[end], sections, "the chucking stub, rough bar", bar.measured, grip, stick_out, short,
        shop.stock.facing, f"First holding: {why}. The jaws close on the stub that is sawn off afterwards.",
        tuple(cautions),
    )  # fmt: skip


def _second(
    part: Part,
    shop: Shop,
    choice: StockChoice,
    end: str,
    sections: tuple[int, ...],
    names: dict[str, str],
    grip: _Grip,
) -> Holding:
    overall = part.length.nominal.value
    room = min(shop.lathe.chuck_jaw_length, grip.end - grip.start)
    face = grip.start if end == "datum" else overall - grip.end  # from the end worked on
    stick_out = face + shop.stock.facing
    cautions = [
        (
            f"Soft pads under the jaws; true the work at {grip.section.name} and at its outer end to within "
            f"{TRUE[part.units]} with an indicator before it is centre drilled: what runs out now stays out."
        ),
    ]
    cautions += _springs(part, sections, stick_out)
    out = stick_out / grip.section.diameter.middle
    if out > SLENDER:
        cautions.append(_steady(out))
    return Holding(
        "B", end, names[end], sections, f"{grip.section.name}, soft "
        "pads", grip.section.diameter.middle, room, stick_out,
        0.0, shop.stock.facing,
        f"Second holding: turned end for end, the jaws on {grip.section.name} "
        f"({length(grip.section.diameter.tolerance, part.units)} between its limits), the stub sawn off.",
        tuple(cautions),
    )  # fmt: skip


def _springs(part: Part, sections: tuple[int, ...], stick_out: float) -> list[str]:
    """Return the caution for work that is long between jaws and centre for what is turned on it."""
    turned = max((part.sections[index].stands_as.middle for index in sections), default=stick_out)
    if stick_out <= SPRINGY * turned:
        return []
    return [
        (
            f"Between jaws and centre the work is {stick_out / turned:.0f} times as long as thick and springs away "
            "from the tool, most in the middle: run it in a steady where one can stand, cut lightly, and measure near "
            "both ends and in the middle."
        )
    ]


def _steady(diameters: float) -> str:
    return (
        f"Until the centre is in, the work stands {diameters:.0f} diameters out of the chuck: set a steady rest "
        "near its "
        "end for facing and centre drilling, slow speed, light cuts; keep clear of its end."
    )
