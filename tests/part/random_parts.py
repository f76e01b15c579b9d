"""Random shafts that rise to one greatest section and fall again: what two holdings can turn."""

from __future__ import annotations

import random

from handwheel.part.values import PartEntry


def random_entry(seed: int) -> PartEntry:
    """Return a random part as typed: 2 to 8 sections, chamfers, fillets, centre holes, limits wide and tight.

    Even seeds are in inches and odd ones in millimetres, for the two sample shops.
    """
    chance = random.Random(seed)
    inch = seed % 2 == 0
    unit = 25.4 if inch else 1.0

    def size(mm: float) -> str:
        return f"{mm / unit:.4f}" if inch else f"{mm:.2f}"

    count = chance.randint(2, 8)
    top = chance.randrange(count)
    greatest = chance.uniform(30, 44) if inch else chance.uniform(24, 32)
    limits_of = [_limits(chance, inch) for _ in range(count)]
    diameters = [0.0] * count
    diameters[top] = greatest
    for order in (range(top - 1, -1, -1), range(top + 1, count)):
        at, inner = greatest, top
        for index in order:
            step = chance.choice([0.0, 1.2, 2.0, 4.0, 7.0])
            if step == 0.0 or at - step < 10.0:  # two sections of one size, turned in one go
                limits_of[index] = limits_of[inner]
            else:
                at -= step
            diameters[index], inner = at, index
    lengths = [chance.uniform(8, 40) for _ in range(count)]
    lengths[top if count == 2 else chance.randrange(count)] += 45.0  # something to grip
    if not any(length > 40 for length in lengths):
        lengths[top] += 45.0
    features: list[dict[str, str]] = []
    edges: list[dict[str, str]] = []
    stations = [0.0]
    for index, (diameter, length) in enumerate(zip(diameters, lengths, strict=True)):
        stations.append(float(size(stations[-1] + length)) * unit)
        features.append(
            {
                "kind": "cylinder",
                "name": f"section {index + 1}",
                "from": size(stations[-2]) if index else "0",
                "to": size(stations[-1]) + chance.choice(["", f" ±{0.15 / unit:.4f}"]),
                "diameter": f"{size(diameter)} {limits_of[index]}",
            }
        )
    for index, z in enumerate(stations):
        before = diameters[index - 1] if index else 0.0
        after = diameters[index] if index < count else 0.0
        step, room = abs(before - after) / 2, min(lengths[max(0, index - 1)], lengths[min(index, count - 1)])
        inside = 0 < index < count
        leg = chance.choice([0.4, 0.8, 1.6])
        if chance.random() < 0.5 and leg <= min(step * 0.45, room / 3):
            edges.append({"kind": "chamfer", "name": f"chamfer {index}", "at": size(z), "size": size(leg)})
        if inside and chance.random() < 0.4 and step * 0.45 >= 0.6:
            edges.append(
                {"kind": "fillet", "name": f"fillet {index}", "at": size(z), "size": size(min(1.6, step * 0.45))}
            )
    body, point, mouth = ("1/4", "7/64", "3/16") if inch else ("8", "3.15", "6.7")
    holes = [
        {
            "kind": "centre hole",
            "name": f"{end} centre",
            "end": f"{end} end",
            "body": body,
            "point": point,
            "mouth": mouth,
        }
        for end in ("left", "right")
    ]
    return PartEntry(
        name=f"random shaft {seed}",
        material="4140 PH" if inch else "1.4021 QT",
        units="in" if inch else "mm",
        datum_face="left end",
        far_face="right end",
        overall=size(stations[-1]),
        length_tolerance=f"±{0.25 / unit:.4f}" if inch else "±0.3",
        features=[*features, *edges, *holes],
    )


def _limits(chance: random.Random, inch: bool) -> str:
    """Return limits as typed, from tight ones that want a fine feed to open ones."""
    unit = 25.4 if inch else 1.0
    tolerance = chance.choice([0.016, 0.03, 0.08, 0.15, 0.3, 0.5])
    half = f"{tolerance / 2 / unit:.5f}"
    whole = f"{tolerance / unit:.5f}"
    return chance.choice([f"+{half} -{half}", f"+0.0000 -{whole}", f"+{whole} +0.0000"])
