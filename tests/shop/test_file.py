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
    ('swing = "14"', "swing = 1979-05-27", "lathe.swing", "text is wanted"),
    ('backlash = ".005"', 'backlash = "-.005"', "lathe.compound.backlash", "give 0 or more"),
    ('swing = "90"', 'swing = "400"', "lathe.compound.swing", "full circle"),
    ('spindle-bore = "1-1/2"', 'spindle-bore = "15"', "lathe.spindle-bore", "no smaller than the swing"),
    ('set-over = ".500"', 'set-over = "7"', "lathe.tailstock.set-over", "half the swing"),
    ('lines = "12"', 'lines = "48"', "lathe.threading-dial.lines", "more lines than teeth"),
    ('gears = "24, 30', 'gears = "2, 30', "lathe.gears", "fewer than 8 teeth"),
    ('feeds = ".002, .003', 'feeds = "0, .003', "lathe.feeds", "from above 0"),
    ('approach-angle = "45"', 'approach-angle = "135"', "tools[6].approach-angle", "120°"),
    ('point = "1/8"', 'point = "3/8"', "centre-drills[1].point", "no smaller than the body"),
    ('uncertainty = ".001"', 'uncertainty = "12"', "gauges[3].uncertainty", "as much as the range"),
    ('skin = ".060"', 'skin = "1.2"', "rack[2].skin", "leaves nothing"),
    ('name = "1018 2 x 12"', 'name = "1045 1-3/4 x 60"', "rack[4].name", "stands twice"),
    ('price = "34.00"', 'price = "-34.00"', "rack[4].price", "give 0 or more"),
    ('material-markup = ".20"', 'material-markup = "20"', "rates.material-markup", "write .20 for 20 %"),
    ('currency = "USD"', 'currency = " "', "rates.currency", "nothing to print"),
    ('name = "1018 2 x 12"', 'name = "1018\\n2 x 12"', "rack[4].name", "one line"),
    ("[lathe.tailstock]", "[lathe.tail-stock]", "lathe.tail-stock", "do you mean tailstock"),
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


def test_every_fault_of_a_file_is_said_at_once():
    changed = TEXT
    wrong = (
        ('"2 hp"', '"2 hpp"'),
        ('per-turn = ".750"', 'per-turn = ".752"'),
        ('stroke = "2.0"\n', ""),
        ('"24"', '"2,4"'),
    )
    for old, new in wrong:
        changed = changed.replace(old, new, 1)
    _, faults = read_shop(changed, "shop.toml")
    places = [fault.place.rpartition(", ")[2] for fault in faults]
    assert places == ["lathe.power", "lathe.compound.stroke", "lathe.carriage.division", "lathe.threading-dial.teeth"]


def test_a_key_that_stands_twice_is_said_with_its_second_line():
    changed = TEXT.replace('swing = "14"', 'swing = "14"\nswing = "16"', 1)
    _, faults = read_shop(changed, "shop.toml")
    line = changed.splitlines().index('swing = "16"') + 1
    assert [fault.sentence() for fault in faults] == [
        f"shop.toml, line {line}, lathe.swing: stands twice; keep one of them."
    ]


def test_other_ways_to_write_the_same_file():
    plain, _ = read_shop(TEXT, "shop.toml")
    numbers = TEXT.replace('swing = "14"', "swing = 14").replace('efficiency = ".80"', "efficiency = 0.8")
    lines = TEXT.replace("\n", "\r\n")
    dotted = TEXT.replace('[lathe.tailstock]\nset-over = ".500"\nlive-centre = "yes"\n', "").replace(
        "[lathe]\n", '[lathe]\ntailstock.set-over = ".500"\ntailstock.live-centre = "yes"\n'
    )
    metric = TEXT.replace('swing = "14"', 'swing = "355.6 mm"')
    for text in (numbers, lines, dotted, metric):
        assert text != TEXT
        shop, faults = read_shop(text, "shop.toml")
        assert not faults
        assert shop == plain


def test_a_byte_order_mark_is_no_fault(tmp_path):
    (tmp_path / "shop.toml").write_text(TEXT, encoding="utf-8-sig")
    assert load_shop(tmp_path / "shop.toml") == sample_shop()


def test_a_dial_true_to_its_marks_or_not():
    metric_screw = TEXT.replace('division = ".001"', 'division = ".001"\ntrue-lead = "1.00394"', 1)
    shop, _ = read_shop(metric_screw, "shop.toml")
    assert shop.lathe.cross_slide.true_lead == 1.00394
    assert sample_shop().lathe.cross_slide.true_lead == 1


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


JUNK = (
    "", '"', "[", "]]", "[[tools]]", "[lathe]", "nan", "-inf", "-1", "0", "true", "1979-05-27", "{a = 1}", "[[1]]", '"1,5"',
    '"9**9**9"', '"\\u0000"', "99999999999999999999", '"1/0"', '"0 tpi"', '"1e308 in"', "\t", "\x0b", "\u2028", "\\",
    "\"\"\"", '"½ in"', '"in, mm"', '"1, , 2"', "lathe = 3", "tools = 3", '"a\\nb" = 1', '"a[b" = 1', "lathe.swing.a = 1",
)  # fmt: skip


@pytest.mark.property
@given(st.integers(0, 10**9), st.text(max_size=8))
def test_a_damaged_file_gives_a_shop_or_sentences(seed, typed):
    chance = random.Random(seed)
    lines = TEXT.split("\n")
    for _ in range(chance.randint(1, 4)):
        place = chance.randrange(len(lines))
        line, junk = lines[place], chance.choice((*JUNK, typed))
        cut = chance.randint(0, len(line))
        lines[place] = chance.choice(
            [
                junk,
                line[:cut],
                line[:cut] + junk + line[cut:],
                line.partition("=")[0] + "= " + junk,
                line + "\n" + lines[chance.randrange(len(lines))],
            ]
        )
        if chance.random() < 0.2:
            del lines[place]
    shop, faults = read_shop("\n".join(lines), "shop.toml")
    assert (shop is None) == bool(faults)
    for fault in faults:
        assert fault.place.startswith("shop.toml")
        assert fault.sentence().endswith(".")
        assert fault.sentence().isprintable()
        assert fault.what
        assert fault.remedy
