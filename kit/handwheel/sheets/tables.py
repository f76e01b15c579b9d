"""Tables of a job's results as plain rows of shown text, for notebooks, files and pages alike."""

from __future__ import annotations

from handwheel.estimate.time import Estimate
from handwheel.job.road import WholeRoad
from handwheel.job.values import Job
from handwheel.numbers import showing
from handwheel.plan.lines import Sheet
from handwheel.sheets.layout import rows

Table = list[dict[str, str]]


def readings_table(job: Job) -> Table:
    """Return a row for each reading of the worn part, as it was typed."""
    return [
        {
            "feature": each.feature,
            "place": each.place,
            "read": each.typed,
            "with": each.instrument,
            "note": each.note,
        }
        for each in job.readings
    ]


def blank_table(road: WholeRoad) -> Table:
    """Return a row for each thing the blank's length is made of, and their sum."""
    units = road.part.units
    places = 3 if units == "in" else 2
    items = [*road.choice.items, ("the blank", road.choice.blank_length)]
    return [{"for": words, units: showing.length(amount, units, places)} for words, amount in items]


def lines_table(sheet: Sheet) -> Table:
    """Return a row for each line of a sheet: what to do, and the numbers as they are printed."""
    return [
        {
            "line": row.number,
            "do": row.heading,
            "dials": ", ".join(f"{label} {value}" for label, value in row.dials),
            "work": ", ".join(f"{label} {value}" for label, value in row.work),
            "particulars": ", ".join(f"{label} {value}" for label, value in row.particulars),
        }
        for row in rows(sheet)
    ]


def time_table(estimate: Estimate) -> Table:
    """Return a row for each operation: its lines and its short, likely and long case in minutes."""
    return [
        {
            "operation": row.operation,
            "lines": row.lines,
            "short": showing.minutes(row.low),
            "likely": showing.minutes(row.likely),
            "long": showing.minutes(row.high),
        }
        for row in estimate.rows
    ]
