"""Chamfering an outer corner with a 45° tool: touch the corner, go on by the leg."""

from __future__ import annotations

from handwheel.part.values import Edge
from handwheel.plan.setup import Setup


def chamfer(setup: Setup, edge: Edge, corner_diameter: float) -> None:
    """Cut a chamfer on the corner at its station; `corner_diameter` (mm) is what was turned there."""
    writer, tool = setup.writer, setup.pick_tool("chamfering")
    at = setup.distance(edge.at)
    leg = writer.carriage(edge.size)
    rpm = setup.rpm(tool, corner_diameter)
    zero = writer.carriage(0.0)["carriage-reading"]
    with setup.operation("chamfer", edge.name) as tally:
        values = {
            "from-face": writer.face,
            "position": writer.place(at),
            "corner-diameter": writer.size(corner_diameter),
            "size": writer.place(edge.size),
            "carriage-set": zero,
            **{name: leg[name] for name in leg if name.startswith("carriage-")},
            "speed": writer.speed(rpm),
        }
        writer.add(
            "chamfer",
            edge.name,
            f"Spindle on: let the 45° edge touch the corner at {values['position']} from the {writer.face}, coming "
            "from the tailstock side. Set the dial, lock the cross-slide, then go on by the chamfer's leg.",
            values,
        )
        tally.minutes += 0.5
