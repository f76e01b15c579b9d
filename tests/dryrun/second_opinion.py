"""A second opinion on a sheet: what its printed positions and diameters alone would leave, on a fine grid.

It reads no cross-slide or compound dial and shares no code with the dry run. Where the dry run finds nothing
wrong with an edited sheet, this must agree that the part still comes out and no pass is too deep.
"""

from __future__ import annotations

import numpy as np
from printed import number

STEP = 0.02
FACED = 0.42  # the last stretch against a shoulder (mm) is faced, not turned
UNITS = {"in": 25.4, "mm": 1.0}


def part_comes_out(sheet, shop, samples) -> bool:
    """Whether the printed positions and diameters leave the part, in passes the tools can take."""
    unit = UNITS[sheet.units]

    def mm(text):
        return float(number(text)) * unit

    length = mm(sheet.blank_length)
    places = np.arange(0.0, length, STEP)
    radius = np.full(places.shape, mm(sheet.blank_diameter) / 2)
    low, high = 0.0, length
    tools = {tool.name: tool for tool in shop.tools}
    tool, far_out, jaws, carriage, touched = None, True, 0.0, 0.0, (low, high)
    dial = shop.lathe.carriage
    marked = UNITS[dial.system]
    for line in sheet.lines:
        values = line.values
        if line.motion == "hold":
            far_out = values["end-out"] == sheet.far_end
            out = mm(values["stick-out"])
            jaws = high - out if far_out else low + out
        elif line.motion == "mount":
            tool = tools[values["tool"]]
        elif line.motion == "saw":
            kept = mm(values["saw-length"])
            low, high = (high - kept, high) if values["from-face"] == sheet.far_end else (low, low + kept)
        elif line.motion == "touch-face":
            carriage = float(number(values["carriage-set"])) * marked
            touched = (low, high)
        elif line.motion == "face":
            reading = int(values["carriage-turns"]) * dial.per_turn + float(number(values["carriage-reading"])) * marked
            off = (reading - carriage) * dial.true_lead + mm(values["carriage-more"])
            low, high = (low, touched[1] - off) if far_out else (touched[0] + off, high)
            if (high <= jaws) if far_out else (low >= jaws):
                return False
        elif line.motion in ("turn", "chamfer"):
            at = mm(values["position"])
            if (high - at <= jaws) if far_out else (low + at >= jaws):
                return False
            inward = (high - places if far_out else places - low) - at
            if line.motion == "turn":
                stands = np.where(
                    (inward <= 0) & (places >= low) & (places <= high), mm(values["diameter"]) / 2, np.inf
                )
                turned = (stands < np.inf) & (inward < -FACED)
                if np.max(radius - stands, where=turned, initial=0.0) > tool.max_depth + 1e-3:
                    return False
            else:
                corner, leg = mm(values["corner-diameter"]) / 2, mm(values["size"])
                stands = np.where((inward >= 0) & (inward <= leg), corner - leg + inward, np.inf)
            radius = np.minimum(radius, stands)
    radius = np.where((places >= low - STEP / 2) & (places <= high + STEP / 2), radius, 0.0)
    near = 2 * STEP
    for sample in samples:
        beside = radius[np.abs(places - low - sample.z) <= near] if low + sample.z <= length else np.zeros(1)
        beside = beside if beside.size else np.zeros(1)
        slack = 1e-3 + near
        if sample.least > 0 and np.all(beside == 0):
            return False
        if not np.any((beside >= sample.least - 2e-3) & (beside <= sample.most + 2e-3)):
            chamfered = np.any((beside >= sample.least - slack) & (beside <= sample.most + slack))
            if sample.most - sample.least < 0.4 or not chamfered:
                return False
    return True
