"""Which bar the blank is sawn from, how long, what it weighs and costs, and why the others stay in the rack."""

from __future__ import annotations

import math
import random

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from handwheel.numbers.faults import HandwheelError
from handwheel.plan.stock import CLEANING, choose_bar
from handwheel.shop.values import Bar

IN = 25.4


def with_rack(shop, *bars):
    return attrs.evolve(shop, rack=bars)


@pytest.fixture(scope="module")
def bar(demo):
    return demo.shop.rack[0]


def test_the_demo(demo):
    """10.594 + 2 × .060 to face + 1.250 stub + .125 to saw = 12.089 in; of the 24 in bar 11.786 stay behind the cut."""
    choice = choose_bar(demo.part, demo.shop)
    assert choice.bar.name == "4140 PH 1-7/8 x 24"
    assert choice.blank_length / IN == pytest.approx(12.089)
    assert [round(amount / IN, 4) for _, amount in choice.items] == [10.594, 0.06, 0.06, 0.125, 1.25]
    assert sum(amount for _, amount in choice.items) == choice.blank_length
    assert choice.cost == pytest.approx(92.00 * 12.089 / 24)
    # .284 lb/in³ (property sheets of AISI 4140, seen in secondary copies)
    assert choice.mass / 0.45359237 == pytest.approx(math.pi / 4 * 1.874**2 * 12.089 * 0.284, rel=0.002)
    assert "measures 1.874 in: .060 in per side" in choice.reason
    assert choice.second_try.startswith("11.786 in of the bar is left: a second try must make do")
    assert {bar.name: why for bar, why in choice.refused} == {
        "4140 PH 2-1/4 x 36": "it serves, but there is more to turn off than with 4140 PH 1-7/8 x 24",
        "1045 1-3/4 x 60": "it is 1045, and 4140 PH is asked for; 1.750 in of sound metal leaves no skin to clean: "
        "the greatest section wants 1.775 in",
        "1018 2 x 12": "it is 1018, and 4140 PH is asked for; it is 12.000 in long, and the blank needs 12.089 in",
    }


def test_the_second_job(second):
    """529 + 2 × 1.5 to face + 40 stub + 3 to part = 575 mm from the Ø35 × 1000 bar: one part, not two."""
    choice = choose_bar(second.part, second.shop)
    assert choice.bar.name == "1.4021 QT 35 x 1000"
    assert choice.blank_length == pytest.approx(575)
    assert sorted(amount for _, amount in choice.items) == pytest.approx([1.5, 1.5, 3, 40, 529])
    assert choice.cost == pytest.approx(64.00 * 0.575)
    # EN 10060: 7.55 kg/m at 35 mm and 7.85 kg/dm³ (from memory); stainless weighs 7.70, the bar measures 34.94
    assert choice.mass == pytest.approx(7.55 * 0.575 * 7.70 / 7.85 * (34.94 / 35) ** 2, rel=0.001)
    assert choice.second_try == (
        "422.0 mm of the bar is left: not enough for a second try; know where the next bar comes from."
    )
    refused = {bar.name: why for bar, why in choice.refused}
    assert refused["1.4021 QT 40 x 700"] == "it serves, but there is more to turn off than with 1.4021 QT 35 x 1000"
    assert refused["42CrMo4 QT 36 x 550"] == (
        "it is 42CrMo4 QT, and 1.4021 QT is asked for; it is 550.0 mm long, and the blank needs 575.0 mm"
    )
    assert "32.00 mm of sound metal leaves no skin to clean" in refused["C45 32 x 1500"]


def test_a_steel_asked_for_by_another_of_its_names(demo):
    asked = attrs.evolve(demo.part, entry=attrs.evolve(demo.part.entry, material="4140 pre-hardened"))
    assert choose_bar(asked, demo.shop).bar.name == "4140 PH 1-7/8 x 24"
    annealed = attrs.evolve(demo.part, entry=attrs.evolve(demo.part.entry, material="4140"))
    with pytest.raises(HandwheelError, match=r"4140 PH 1-7/8 x 24: it is 4140 PH, and 4140 is asked for\."):
        choose_bar(annealed, demo.shop)


def test_a_bar_chosen_by_hand_is_taken_where_it_serves(demo):
    choice = choose_bar(demo.part, demo.shop, "4140 PH 2-1/4 x 36")
    assert choice.bar.name == "4140 PH 2-1/4 x 36"
    assert choice.reason.startswith("4140 PH 2-1/4 x 36: chosen by hand.")
    assert {bar.name: why for bar, why in choice.refused}["4140 PH 1-7/8 x 24"] == (
        "it serves, but 4140 PH 2-1/4 x 36 was chosen by hand"
    )
    refused = choose_bar(demo.part, demo.shop, "1018 2 x 12")
    assert refused.bar.name == "4140 PH 1-7/8 x 24"
    assert "1018 2 x 12" in [bar.name for bar, _ in refused.refused]


def test_a_bar_of_exactly_the_length_and_size_serves_and_one_a_hair_less_does_not(demo, bar):
    blank = choose_bar(demo.part, demo.shop).blank_length
    least = max(section.stands_as.maximum for section in demo.part.sections) + CLEANING
    exact = attrs.evolve(bar, length=blank, measured=least, diameter=least)
    choice = choose_bar(demo.part, with_rack(demo.shop, exact))
    assert choice.cost == pytest.approx(bar.price)
    assert choice.second_try.startswith(".000 in of the bar is left: not enough")
    for hair in ({"length": blank - 0.1}, {"measured": least - 0.1}, {"skin": 0.1}):
        with pytest.raises(HandwheelError, match=r"^no bar of the rack serves; order one of 4140 PH\. "):
            choose_bar(demo.part, with_rack(demo.shop, attrs.evolve(exact, **hair)))


def test_scale_is_no_sound_metal(demo, bar):
    # hot-rolled 1-7/8 with .060 of scale a side: 1.754 of sound metal for a collar of up to 1.755
    scaled = attrs.evolve(bar, name="hot-rolled", skin=0.060 * IN)
    with pytest.raises(HandwheelError, match=r"hot-rolled: 1\.754 in of sound metal leaves no skin to clean"):
        choose_bar(demo.part, with_rack(demo.shop, scaled))


def test_of_bars_as_thick_the_thinner_skin_then_the_shorter_then_the_first(demo, bar):
    skin = attrs.evolve(bar, name="skinned", skin=0.5)
    long = attrs.evolve(bar, name="long", length=bar.length * 2)
    twin = attrs.evolve(bar, name="twin")
    choice = choose_bar(demo.part, with_rack(demo.shop, skin, long, bar, twin))
    assert choice.bar is bar
    assert {each.name: why for each, why in choice.refused} == {
        "skinned": f"it serves, but {bar.name} has the thinner skin",
        "long": f"it serves, but {bar.name} is the shorter piece, to be used up first",
        "twin": f"it serves as well; {bar.name} stands before it in the rack",
    }


@pytest.mark.parametrize(
    ("inches", "said"),
    [
        (24.303, "12.089 in of the bar is left: enough for a second try."),  # 2 × 12.089 + .125
        (24.302, "12.088 in of the bar is left: a second try must make do with a shorter chucking stub."),
        (23.678, "11.464 in of the bar is left: a second try must make do with a shorter chucking stub."),  # less half a stub
        (23.677, "11.463 in of the bar is left: not enough for a second try; know where the next bar comes from."),
        (12.15, ".000 in of the bar is left: not enough for a second try; know where the next bar comes from."),
    ],
)  # fmt: skip
def test_what_the_rest_of_the_bar_is_good_for(demo, bar, inches, said):
    choice = choose_bar(demo.part, with_rack(demo.shop, attrs.evolve(bar, length=inches * IN)))
    assert choice.second_try == said


def test_a_steel_without_a_density_is_said(demo, bar):
    part = attrs.evolve(demo.part, entry=attrs.evolve(demo.part.entry, material="8620"))
    with pytest.raises(HandwheelError, match=r"material: '8620' is not in the table; it has 4140 PH"):
        choose_bar(part, with_rack(demo.shop, attrs.evolve(bar, material="8620")))


@pytest.mark.property
@given(st.integers(0, 10**9))
def test_for_any_rack_the_thinnest_bar_that_serves_or_a_reason_for_each(demo, seed):
    chance = random.Random(seed)
    rack = [
        Bar(
            f"bar {number}", chance.choice(["4140 PH", "1045"]), size, size + chance.choice([0.0, -0.05]),
            chance.choice([200.0, 307.0606, 350.0, 914.4]), "any", chance.choice([0.0, 0.0, 1.5]), chance.choice([0.0, 40.0]),
        )
        for number in range(chance.randint(1, 6))
        for size in [chance.choice([40.0, 44.45, 45.0, 45.127, 47.6, 57.15])]
    ]  # fmt: skip
    most = max(section.diameter.maximum for section in demo.part.sections)  # the collar, 1.755 in
    serving = [
        bar for bar in rack
        if bar.material == "4140 PH" and bar.measured - 2 * bar.skin >= most + 0.5 and bar.length >= 307.06
    ]  # fmt: skip
    try:
        choice = choose_bar(demo.part, with_rack(demo.shop, *rack))
    except HandwheelError as error:
        assert not serving
        assert all(f"{bar.name}: " in str(error) for bar in rack)
        return
    assert choice.bar in serving
    assert choice.bar.measured == min(bar.measured for bar in serving)
    assert choice.blank_length <= choice.bar.length + 1e-6
    assert 0 <= choice.cost <= choice.bar.price + 1e-6
    assert sorted(bar.name for bar in (choice.bar, *(bar for bar, _ in choice.refused))) == [bar.name for bar in rack]
    assert all(why for _, why in choice.refused)
