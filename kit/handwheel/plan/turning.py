"""The turning plan: from a part, a shop and a blank to the sheet that is carried to the lathe."""

from __future__ import annotations

from collections.abc import Mapping

from attrs import frozen

from handwheel.numbers.faults import Fault, HandwheelError
from handwheel.numbers.reading import read
from handwheel.numbers.showing import length
from handwheel.part.profile import edge_at, greatest
from handwheel.part.values import Edge, Part
from handwheel.plan.finefeed import fine_feed
from handwheel.plan.holdings import Holding, choose_holdings
from handwheel.plan.lines import Sheet
from handwheel.plan.operations import cylinder, ends, leave
from handwheel.plan.operations.chamfer import chamfer
from handwheel.plan.setup import Operation, Setup
from handwheel.plan.stock import StockChoice
from handwheel.shop.values import Shop


@frozen
class Plan:
    """A plan: its sheet, the holdings with their reasons, the operations, and what it leaves alone."""

    sheet: Sheet
    holdings: tuple[Holding, ...]
    operations: tuple[Operation, ...]
    not_planned: tuple[str, ...]


def plan_turning(
    part: Part,
    shop: Shop,
    choice: StockChoice,
    sheet_number: str = "1",
    decisions: Mapping[str, str] | None = None,
) -> tuple[Plan | None, list[Fault]]:
    """Return the plan for turning a part from a blank in two holdings, or None and what stands against it.

    `decisions` are what a person decided against the kit's own choice: `first end` names the end turned first.
    """
    decided = decisions or {}
    places = 3 if part.units == "in" else 2
    bar = length(choice.bar.measured, part.units, places)
    try:
        holdings, faults = choose_holdings(part, shop, choice, decided.get("first end", ""))
        setups: list[Setup] = []
        feeds = []
        for holding in holdings:
            feed, too_fine = fine_feed([part.sections[index] for index in holding.sections], shop.lathe)
            feeds.append(feed)
            faults += too_fine
        for holding, feed in zip(holdings, feeds, strict=True):
            if faults:
                break
            printed = read("length", bar, part.units).value  # the numbers count from what the sheet says is there
            turned = setups[0].finished_on(part.sections[greatest(part)]) if setups else printed
            setups.append(Setup(part, shop, holding, feed, printed, turned))
            _hold_and_turn(setups[-1])
    except HandwheelError as error:
        return None, [_as_fault(error, part)]
    if faults:
        return None, faults
    sheet = Sheet(
        sheet_number,
        part.units,
        part.name,
        shop.lathe.name,
        part.entry.datum_face,
        part.entry.far_face,
        bar,
        length(choice.blank_length, part.units, places),
        tuple(line for setup in setups for line in setup.writer.lines),
    )
    not_planned = tuple(leave.sentence(name, kind) for name, kind, _ in leave.unplanned(part))
    operations = tuple(operation for setup in setups for operation in setup.operations)
    return Plan(sheet, holdings, operations, not_planned), []


def _as_fault(error: HandwheelError, part: Part) -> Fault:
    """Return a refusal, said as `place: what; remedy`, as a fault a screen can list."""
    what, _, remedy = str(error).partition("; ")
    place, colon, rest = what.partition(": ")
    return Fault(
        place if colon else part.name,
        rest if colon else what,
        remedy or "mend what it names in the job or the shop file",
    )


def _hold_and_turn(setup: Setup) -> None:
    """Write one holding: hold, face, centre, rough, finish, chamfer, what is left, and the stub sawn off."""
    ends.hold(setup)
    stretches = setup.stretches()
    if stretches:
        tool = ends.change_tool(setup, "rough turning", touching=True)
        for stretch in stretches:
            cylinder.rough(setup, stretch, tool)
        tool = ends.change_tool(setup, "finish turning", touching=True)
        setup.inward = setup.shoulder
        for stretch in stretches:
            cylinder.finish(setup, stretch, tool)
    corners = _corners(setup)
    if corners:
        ends.change_tool(setup, "chamfering")
        for edge, diameter in corners:
            chamfer(setup, edge, diameter)
    for name, kind, z in leave.unplanned(setup.part):
        if _on_this_side(setup, z):
            leave.leave(setup, name, kind, z)
    if setup.holding.letter == "A":
        ends.saw(setup)


def _corners(setup: Setup) -> list[tuple[Edge, float]]:
    """Return the chamfers this holding cuts, each with the diameter turned under it."""
    part, found = setup.part, []
    top = greatest(part)
    for index in dict.fromkeys((top, *setup.holding.sections)):
        section = part.sections[index]
        edge = edge_at(part, "chamfer", section.end if setup.holding.end == "far" else section.start)
        if edge:
            found.append(
                (edge, setup.shoulder if index == top and setup.holding.letter == "B" else setup.finished_on(section))
            )
    return found


def _on_this_side(setup: Setup, z: float) -> bool:
    """Return whether a station (mm) lies on the side of the greatest section that this holding works on."""
    top = setup.part.sections[greatest(setup.part)]
    return z > top.start + 1e-6 if setup.holding.end == "far" else z < top.end - 1e-6
