"""A table says where its figures come from, or it is not taken."""

from __future__ import annotations

from importlib import resources

import pytest

from handwheel.numbers.faults import HandwheelError
from handwheel.tables.load import HEAD, load, parse

NAMES = sorted(
    each.name.removesuffix(".csv")
    for each in resources.files("handwheel.tables").iterdir()
    if each.name.endswith(".csv")
)
GOOD = "# source: a standard\n# edition: 2001\n# table: 3\n# unit: mm\nname,size\nA,1\nB,2\n"


@pytest.mark.parametrize("name", NAMES)
def test_every_table_of_the_kit_says_its_source_edition_table_and_unit(name):
    table = load(name)
    assert all(table.head[word] for word in HEAD)
    assert len(table.rows) > 1


def test_rows_by_column():
    assert parse("bolts", GOOD).rows == ({"name": "A", "size": "1"}, {"name": "B", "size": "2"})


@pytest.mark.parametrize("word", HEAD)
def test_a_table_without_a_word_of_its_head_is_refused(word):
    lines = GOOD.splitlines(keepends=True)
    for without in ("", f"# {word}: \n"):
        changed = "".join(without if line.startswith(f"# {word}") else line for line in lines)
        with pytest.raises(HandwheelError, match=f"table bolts: its head does not say its {word}; add"):
            parse("bolts", changed)


@pytest.mark.parametrize("row", ["B,2,3", "B"])
def test_a_row_with_a_cell_too_many_or_too_few_is_refused(row):
    with pytest.raises(HandwheelError, match="the row of 'B' has a cell too many or too few"):
        parse("bolts", GOOD.replace("B,2", row))
