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
        HandwheelError: the file does not say where its figures come from.

    >>> load("materials").head["unit"][:8]
    'density '
    """
    text = resources.files(__package__).joinpath(f"{name}.csv").read_text(encoding="utf-8")
    lines = text.splitlines()
    head = {}
    for line in lines:
        if line.startswith("#"):
            word, _, words = line.lstrip("# ").partition(": ")
            head[word] = words
    if missing := [word for word in HEAD if not head.get(word)]:
        raise HandwheelError(f"table {name}: its head does not say its {', '.join(missing)}; add the line")
    rows = csv.DictReader(line for line in lines if line and not line.startswith("#"))
    return Table(head, tuple(rows))
