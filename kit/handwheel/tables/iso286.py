"""Limits and fits by ISO 286: tolerance grades and fundamental deviations by nominal size."""

from __future__ import annotations

from handwheel.numbers.faults import HandwheelError
from handwheel.tables.load import load

LARGEST = 500.0
"""The largest nominal size of the tables, mm."""

GRADES = tuple(range(5, 13))
"""The tolerance grades of the table."""

SHAFT_LETTERS = ("d", "e", "f", "g", "h", "js", "j", "k", "m", "n", "p", "r", "s")
"""The shaft zones of the table; holes have the same letters in capitals, without J."""


def grade(size: float, number: int) -> float:
    """Return the standard tolerance (µm) of a grade for a nominal size (mm).

    Raises:
        HandwheelError: the table does not reach to the size or the grade.

    >>> grade(35, 6)
    16.0
    """
    if number not in GRADES:
        raise HandwheelError(f"zone: grade {number} is not in the table; it has {GRADES[0]} to {GRADES[-1]}")
    return float(_row("iso286_grades", size)[f"IT{number}"])


def shaft_deviation(size: float, letter: str) -> float:
    """Return a shaft zone's fundamental deviation (µm): the upper one for d to h, the lower one for the others.

    That of k is the one for grades 4 to 7, that of j the one for grades 5 and 6; js has none.

    Raises:
        HandwheelError: the table does not reach to the size or the letter.

    >>> shaft_deviation(35, "k")
    2.0
    """
    column = {"j": "j6"}.get(letter, letter)
    row = _row("iso286_shafts", size)
    if column not in row:
        raise HandwheelError(f"zone: {letter!r} is not in the table; it has {', '.join(SHAFT_LETTERS)}")
    return float(row[column])


def _row(table: str, size: float) -> dict[str, str]:
    for row in load(table).rows:
        # a size on the edge of two bands belongs to the lower: over 18, up to and including 30
        if float(row["over"]) < size <= float(row["to"]):
            return row
    raise HandwheelError(f"size: {size:g} mm lies outside the table, which goes from over 0 to {LARGEST:g} mm")
