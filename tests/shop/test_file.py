"""A shop file is read whole, or each fault is named by key and line."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handwheel import assets
from handwheel.numbers.faults import HandwheelError
from handwheel.shop.file import load_shop, read_shop, sample_shop

TEXT = assets.sample_shop_file().read_text(encoding="utf-8")
METRIC = assets.sample_shop_file().with_name("sample-shop-metric.toml")


def test_the_sample_shop_is_the_demo_lathe():
    lathe = sample_shop().lathe
    assert lathe.spindle_speeds == (45, 70, 105, 160, 240, 360, 540, 820)
    assert lathe.power * lathe.efficiency == pytest.approx(2 * 0.745699872 * 0.8)
    assert (lathe.cross_slide.per_turn, lathe.cross_slide.division) == pytest.approx((2.54, 0.0254))
    assert lathe.cross_slide.backlash == pytest.approx(0.008 * 25.4)
    assert lathe.compound.scale_zero == "cross-slide"
    assert lathe.leadscrew.pitch == pytest.approx(25.4 / 6)
    assert 127 in lathe.gears


def test_the_metric_sample_shop_reads_diameter():
    lathe = load_shop(METRIC).lathe
    assert lathe.cross_slide.reads == lathe.compound.dial.reads == "diameter"
    assert lathe.compound.scale_zero == "axis"
    assert lathe.cross_slide.system == "mm"


FAULTS = [
    ('power = "2 hp"', 'power = "2 hpp"', "lathe.power", "no unit"),
    ('power = "2 hp"', 'pwer = "2 hp"', "lathe.pwer", "do you mean power"),
    ('reads = "travel"', 'reads = "radius"', "lathe.cross-slide.reads", "travel, diameter"),
    ('division = ".001"', 'division = ".003"', "lathe.cross-slide.division", "whole number"),
    ('backlash = ".008"', 'backlash = ".200"', "lathe.cross-slide.backlash", "whole turn"),
    ('backlash = ".008"', 'backlash = "-.008"', "lathe.cross-slide.backlash", "can't be"),
    ('nose-radius = "1/64"', 'nose-radius = "1,5"', "tools[2].nose-radius", "comma"),
    ('spindle-speeds = "45, 70', 'spindle-speeds = "70, 45', "lathe.spindle-speeds", "does not rise"),
    ('efficiency = ".80"', 'efficiency = "80"', "lathe.efficiency", "more than 1"),
    ('units = "in"', 'units = "cm"', "units", "in, mm"),
    ("[rates]", "[ratess]", "ratess", "do you mean rates"),
    ('measured = "1.874"', 'measured = "18.74"', "rack[1].measured", "far from"),
    ('name = "finish turning tool"', 'name = "rough turning tool"', "tools[2].name", "stands twice"),
    ('hourly = "75.00"', 'hourly = "-1"', "rates.hourly", "can't be"),
    ('leadscrew = "6 tpi"', 'leadscrew = "-1 mm"', "lathe.leadscrew", "can't be"),
    ('leadscrew = "6 tpi"', 'leadscrew = "6"', "lathe.leadscrew", "threads to the inch"),
    ('swing = "14"', "swing = [14]", "lathe.swing", "text is wanted"),
]


@pytest.mark.parametrize(("old", "new", "key", "why"), FAULTS)
def test_a_fault_names_key_line_and_remedy(old, new, key, why):
    assert old in TEXT
    changed = TEXT.replace(old, new, 1)
    shop, faults = read_shop(changed, "shop.toml")
    assert shop is None
    fault = next(fault for fault in faults if fault.place.endswith(f", {key}"))
    line = int(fault.place.split("line ")[1].split(",")[0])
    assert new.split("\n")[0].split(" =")[0].strip("[]") in changed.splitlines()[line - 1]
    assert why in fault.sentence()


def test_a_missing_key_is_named_with_an_example():
    _, faults = read_shop(TEXT.replace('swing = "14"\n', "", 1), "shop.toml")
    assert [fault.sentence() for fault in faults] == [
        "shop.toml, line 7, lathe.swing: is missing; add swing, such as 1-3/8, .8745 or 25 mm."
    ]


def test_broken_toml_gets_one_sentence_with_its_line():
    _, faults = read_shop(TEXT.replace('name = "sample job shop (invented)"', "name = = 1", 1), "shop.toml")
    assert len(faults) == 1
    assert faults[0].place == "shop.toml, line 4"


def test_a_file_that_is_not_there(tmp_path):
    with pytest.raises(HandwheelError, match="can't be opened"):
        load_shop(tmp_path / "none.toml")
    for odd in (tmp_path, tmp_path / "x\0y"):
        with pytest.raises(HandwheelError, match="can't be opened"):
            load_shop(odd)
    (tmp_path / "bytes.toml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(HandwheelError, match="can't be opened"):
        load_shop(tmp_path / "bytes.toml")


@pytest.mark.property
@given(st.integers(0, 10_000), st.text(max_size=8))
def test_a_damaged_file_gives_a_shop_or_sentences(seed, junk):
    chance = random.Random(seed)
    lines = TEXT.splitlines()
    for _ in range(chance.randint(1, 4)):
        place = chance.randrange(len(lines))
        lines[place] = chance.choice(
            ["", junk, lines[place] + junk, lines[place].replace('"', "", 1), lines[place][: len(lines[place]) // 2]]
        )
    shop, faults = read_shop("\n".join(lines), "shop.toml")
    assert (shop is None) == bool(faults)
    for fault in faults:
        assert fault.place.startswith("shop.toml")
        assert fault.sentence().endswith(".")
