"""What the plan's tests share: lines by feature, the demo's part with other sections, random shafts planned."""

from __future__ import annotations

import attrs
from random_parts import random_entry

from handwheel import assets
from handwheel.part.reading_in import read_part
from handwheel.plan.stock import choose_bar
from handwheel.plan.turning import plan_turning
from handwheel.shop.file import load_shop, sample_shop

IN = 25.4
METRIC = assets.sample_shop_file().with_name("sample-shop-metric.toml")


def lines_of(plan, feature, motion):
    return [line for line in plan.sheet.lines if line.feature == feature and line.motion == motion]


def dial(line, name="cross"):
    return int(line.values[f"{name}-turns"]), line.values[f"{name}-reading"]


def plans(count):
    """Random shafts and their plans: even seeds for the inch shop, odd ones for the metric one."""
    for seed in range(count):
        part, faults = read_part(random_entry(seed))
        assert not faults
        shop = load_shop(METRIC) if seed % 2 else sample_shop()
        plan, faults = plan_turning(part, shop, choose_bar(part, shop))
        assert not faults, (seed, faults)
        yield seed, part, shop, plan


def shaft(demo, sections, units="in", overall=None):
    """The demo's part with other sections: (start, end, diameter as typed)."""
    features = [
        {"kind": "cylinder", "name": f"s{number}", "from": start, "to": end, "diameter": diameter}
        for number, (start, end, diameter) in enumerate(sections, 1)
    ]
    holes = [each for each in demo.part.entry.features if each["kind"] == "centre hole"]
    holes = [
        {key: f"{text} in" if key in ("body", "point", "mouth") else text for key, text in each.items()}
        for each in holes
    ]
    entry = attrs.evolve(
        demo.part.entry, units=units, overall=overall or sections[-1][1], length_tolerance="±.010" if units == "in" else "±0.3",
        features=[*features, *holes],
    )  # fmt: skip
    part, faults = read_part(entry)
    assert not faults
    return part
