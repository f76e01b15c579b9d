"""Published tables: a CSV file each, its source, edition, table and unit in the file's own head."""

from __future__ import annotations

import csv
from functools import cache
from importlib import resources

from attrs import frozen

from handwheel.numbers.faults import HandwheelError

HEAD = ("source", "edition", "table", "unit")
"""What the head of every table must say."""


@frozen
class Table:
    """A table as published: its head by word, and its rows by column."""

    head: dict[str, str]
    rows: tuple[dict[str, str], ...]


@cache
def load(name: str) -> Table:
    """Return a table of the kit by its file's name, read on first use.

    Raises:
        HandwheelError: the file does not say where its figures come from, or a row has a cell too many or too few.

    >>> load("materials").head["unit"][:8]
    'density '
    """
    return parse(name, resources.files(__package__).joinpath(f"{name}.csv").read_text(encoding="utf-8"))


def parse(name: str, text: str) -> Table:
    """Return a table from its text: head lines (`# source: ...`), a line of column names, a line a row.

    Raises:
        HandwheelError: the head does not say where the figures come from, or a row has a cell too many or too few.

    >>> parse("bolts", "name,size")
    Traceback (most recent call last):
    ...
    handwheel.numbers.faults.HandwheelError: table bolts: its head does not say its source, edition, table, unit; ...
    """
    lines = text.splitlines()
    head = {}
    for line in lines:
        if line.startswith("#"):
            word, _, words = line.lstrip("# ").partition(": ")
            head[word] = words.strip()
    if missing := [word for word in HEAD if not head.get(word)]:
        raise HandwheelError(f"table {name}: its head does not say its {', '.join(missing)}; add '# {missing[0]}: ...'")
    rows = tuple(csv.DictReader((line for line in lines if line and not line.startswith("#")), strict=True))
    for row in rows:
        first = next(iter(row.values()))
        # the reader files surplus cells under None and fills missing ones with None
        if None in row or None in row.values():
            raise HandwheelError(f"table {name}: the row of {first!r} has a cell too many or too few; count its commas")
    return Table(head, rows)
