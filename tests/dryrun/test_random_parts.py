"""Random shafts, planned for the two sample shops, are cut without a false alarm."""

from __future__ import annotations

from collections import Counter

import pytest
from random_parts import random_entry
from second_opinion import part_comes_out
from tallies import all_kinds, check, table

from handwheel import assets
from handwheel.dryrun.run import dry_run
from handwheel.part.reading_in import read_part
from handwheel.part.samples import sampled_limits
from handwheel.plan.stock import choose_bar
from handwheel.plan.turning import plan_turning
from handwheel.shop.file import load_shop

KINDS = ("cylinder", "shoulder", "face", "chamfer", "fillet", "centre hole", "fine feed")


@pytest.fixture(scope="module")
def shops():
    inch = assets.sample_shop_file()
    return load_shop(inch), load_shop(inch.with_name("sample-shop-metric.toml"))


def planned(seed, shops):
    """A random part and its sheet; even seeds for the inch shop, odd ones for the metric one."""
    shop = shops[seed % 2]
    part, faults = read_part(random_entry(seed))
    assert part is not None, (seed, faults)
    plan, faults = plan_turning(part, shop, choose_bar(part, shop))
    assert plan is not None, (seed, faults)
    return part, plan.sheet, shop


def kinds_of(part, sheet):
    """The kinds of feature a sheet really deals with."""
    motions = {line.motion for line in sheet.lines}
    sizes = {section.stands_as.middle for section in part.sections}
    leaves = {line.feature for line in sheet.lines if line.motion == "leave"}
    kinds = {"cylinder": "turn" in motions, "shoulder": len(sizes) > 1, "face": "face" in motions}
    kinds |= {"chamfer": "chamfer" in motions, "centre hole": "centre" in motions}
    kinds["fillet"] = any(edge.kind == "fillet" and edge.name in leaves for edge in part.edges)
    kinds["fine feed"] = any("compound-reading" in line.values for line in sheet.lines)
    return [kind for kind in KINDS if kinds[kind]]


def no_false_alarm(seeds, shops):
    seen = Counter()
    for seed in seeds:
        part, sheet, shop = planned(seed, shops)
        report = dry_run(sheet, shop, sampled_limits(part), part.centre_holes)
        assert report.ok, f"seed {seed}: {report.text()}"
        seen.update(kinds_of(part, sheet))
    print(f"\n{len(seeds)} random shafts: " + ", ".join(f"{kind} in {seen[kind]}" for kind in KINDS))
    for kind in KINDS:
        assert seen[kind] >= len(seeds) / 5, f"{kind} in only {seen[kind]} of {len(seeds)} shafts"


def test_fifty_random_shafts_give_no_false_alarm(shops):
    no_false_alarm(range(50), shops)


@pytest.mark.deep
def test_two_hundred_random_shafts_give_no_false_alarm(shops):
    no_false_alarm(range(50, 250), shops)


@pytest.mark.deep
def test_wrong_sheets_of_random_shafts_are_caught(shops):
    total = {}
    for seed in range(300, 330):
        part, sheet, shop = planned(seed, shops)
        samples = sampled_limits(part)
        assert part_comes_out(sheet, shop, samples), seed
        for name, tally in all_kinds(sheet, shop, samples, part.centre_holes).items():
            tally.missed = [f"seed {seed} {line}" for line in tally.missed]
            tally.misnamed = [f"seed {seed} {line}" for line in tally.misnamed]
            total[name] = total[name] + tally if name in total else tally
    print(f"\n30 random shafts\n{table(total)}")
    check(total)
