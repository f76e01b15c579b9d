"""The table of shaft steels: every row, each figure's source, and a sentence for what it does not hold."""

from __future__ import annotations

import pytest

from handwheel import assets
from handwheel.numbers.faults import HandwheelError
from handwheel.shop.file import load_shop, sample_shop
from handwheel.tables.materials import material, materials, same_material

ROWS = 7
KNOWN = (", seen in a secondary copy", ", from memory")


def test_the_number_of_rows():
    assert len(materials()) == ROWS


@pytest.mark.parametrize("steel", materials().values(), ids=materials())
def test_every_row_is_a_steel(steel):
    assert 7600 <= steel.density <= 7950
    assert 9e-6 <= steel.expansion <= 18e-6
    assert 10 <= steel.hss_speed < steel.carbide_speed <= 200
    assert 1500 <= steel.kc11 <= 3000
    assert 0.1 <= steel.mc <= 0.35


@pytest.mark.parametrize("steel", materials().values(), ids=materials())
def test_every_figure_says_where_it_comes_from_and_how_it_is_known(steel):
    for source in (steel.density_source, steel.expansion_source, steel.speed_source, steel.force_source):
        assert source.endswith(KNOWN)
        assert len(source) > len(max(KNOWN))


def test_no_two_rows_share_a_name():
    names = [name for steel in materials().values() for name in (steel.name, *steel.aliases)]
    assert len({"".join(name.casefold().split()) for name in names}) == len(names)


@pytest.mark.parametrize("name", ["4140 PH", "4140 pre-hardened", "4140 ht", " 1.4021 QT ", "C45", "42CrMo4"])
def test_a_steel_is_found_by_any_of_its_names(name):
    assert material(name).density > 0


def test_the_racks_hold_no_steel_that_the_table_does_not():
    for shop in (sample_shop(), load_shop(assets.sample_shop_file().with_name("sample-shop-metric.toml"))):
        for bar in shop.rack:
            assert material(bar.material).name == bar.material


def test_names_of_one_material():
    assert same_material("4140 Pre-Hardened", "4140PH")
    assert not same_material("4140", "4140 PH")  # annealed bar is not pre-hardened bar
    assert same_material("8620", " 8620 ")  # not in the table, the same name all the same
    assert not same_material("8620", "8640")


def test_an_unknown_material_lists_what_there_is():
    with pytest.raises(HandwheelError, match=r"'cheese' is not in the table; it has 4140 PH, .*C45"):
        material("cheese")
