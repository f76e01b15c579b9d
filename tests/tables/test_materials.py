"""The table of shaft steels: every row, its source, and a sentence for what it does not hold."""

from __future__ import annotations

import pytest

from handwheel.numbers.faults import HandwheelError
from handwheel.tables.load import HEAD, load
from handwheel.tables.materials import material, materials

ROWS = 7


def test_the_table_says_where_it_comes_from():
    assert set(HEAD) <= set(load("materials").head)
    assert "from memory" in load("materials").head["edition"]


def test_every_row_is_a_steel():
    found = materials()
    assert len(found) == ROWS
    for steel in found.values():
        assert 7600 <= steel.density <= 7950
        assert 9e-6 <= steel.expansion <= 18e-6
        assert 10 <= steel.hss_speed < steel.carbide_speed <= 200
        assert 1500 <= steel.kc11 <= 3000
        assert 0.1 <= steel.mc <= 0.35
        assert steel.source


@pytest.mark.parametrize("name", ["4140 PH", "4140 pre-hardened", "4140 ht", " 1.4021 QT ", "C45", "42CrMo4"])
def test_a_steel_is_found_by_any_of_its_names(name):
    assert material(name).density > 0


def test_an_unknown_material_lists_what_there_is():
    with pytest.raises(HandwheelError, match=r"'cheese' is not in the table; it has 4140 PH, .*C45"):
        material("cheese")


@pytest.mark.validation
def test_4140_beside_its_published_property_sheets():
    """AISI 4140: .284 lb/in³, 6.83e-6/°F from 68 to 212 °F, 12.3e-6/°C (published property sheets, secondary copies)."""
    steel = material("4140 PH")
    assert steel.density == pytest.approx(0.284 * 0.45359237 / 0.0254**3, rel=0.003)
    assert steel.expansion == pytest.approx(6.83e-6 * 1.8, rel=0.005)
    assert steel.expansion == pytest.approx(12.3e-6)


@pytest.mark.validation
def test_densities_beside_handbook_values():
    # carbon steel .284 lb/in³; martensitic stainless 7.7 kg/dm³ (general handbooks, EN 10088-1; from memory)
    assert material("1018").density == pytest.approx(0.284 * 0.45359237 / 0.0254**3, rel=0.003)
    assert material("1.4021").density == pytest.approx(7700)
