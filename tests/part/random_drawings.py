"""Random shafts with every kind of feature a drawing can have, from 8 to 80 mm: more than two holdings can turn."""

from __future__ import annotations

import random

from handwheel.part.values import PartEntry


def random_drawing(seed: int) -> PartEntry:
    """Return a random part as typed, in mm: cylinders, tapers, threads, grooves, edges, seats, centre holes."""
    chance = random.Random(seed)
    features: list[dict[str, str]] = []
    z, before = 0.0, 0.0  # station, and the diameter drawn where the last section ends
    for index in range(chance.randint(1, 7)):
        start, end = _section(chance, features, index, z, before)
        _edges(chance, features, index, z, before, start)
        z, before = float(features[_last(features)]["to"].split()[0]), end
        if before > 16 and index and chance.random() < 0.3:
            z, before = _groove(chance, features, index, z, before)
    size = chance.choice([0.0, 0.5, 1.0])
    if size:
        features.append({"kind": "chamfer", "name": "end chamfer", "at": f"{z:.2f}", "size": f"{size}"})
    for end in ("left", "right"):
        hole = {"body": "3.15", "point": "1", "mouth": "2.12"}
        features.append({"kind": "centre hole", "name": f"{end} centre", "end": f"{end} end", **hole})
    return PartEntry(f"shaft {seed}", "C45", "mm", "left end", "right end", f"{z:.2f}", "±0.3", features)


def _last(features):
    return max(index for index, each in enumerate(features) if "to" in each and each["kind"] != "keyseat")


def _section(chance, features, index, z, before):
    """Add a section; return the diameters drawn at its start and its end."""
    length, diameter = round(chance.uniform(12, 90), 2), round(chance.uniform(8, 80), 1)
    if features and features[_last(features)]["kind"] == "groove":
        diameter = round(before + chance.uniform(4, 20), 1)
    kind = chance.choice(["cylinder", "cylinder", "taper", "thread"])
    name, places = f"section {index}", {"from": f"{z:.2f}" if z else "0", "to": f"{z + length:.2f}"}
    if chance.random() < 0.3:
        places["to"] += " ±0.05"
    if kind == "taper" and diameter > 12:
        small = round(diameter - length / 20, 2)
        grooved = bool(features) and features[_last(features)]["kind"] == "groove"
        rising = small > before + 2 if grooved else chance.random() < 0.5
        at = places["to"].split()[0] if rising else places["from"]
        sizes = {"large": f"{diameter} ±0.02", "small": f"{small} ±0.02", "large-at": at}
        features.append({"kind": "taper", "name": name, **places, **sizes})
        if chance.random() < 0.5:
            seat = {"at": f"{z + length / 2:.2f}", "call": "key", "angle": "a quarter turn on"}
            features.append({"kind": "woodruff seat", "name": f"seat {index}", **seat})
        return (small, diameter) if rising else (diameter, small)
    if kind == "thread":
        diameter = float(round(diameter))
        call = {"call": f"M{diameter:.0f}x1.5-6g", "diameter": f"{diameter:.0f} -0.032 -0.268"}
        features.append({"kind": "thread", "name": name, **places, **call})
    else:
        features.append({"kind": "cylinder", "name": name, **places, "diameter": f"{diameter} ±0.05"})
        if chance.random() < 0.3:
            ends = chance.choice(["both round", "square"])
            seat = {"from": f"{z + 3:.2f}", "to": f"{z + length - 3:.2f}", "call": "key, N9", "ends": ends}
            features.append({"kind": "keyseat", "name": f"seat {index}", **seat})
    return diameter, diameter


def _groove(chance, features, index, z, before):
    diameter = round(before - chance.uniform(3, 6), 1)
    places = {"from": f"{z:.2f}", "to": f"{z + 5:.2f}", "diameter": f"{diameter} 0 -0.2"}
    radius = {"radius": "0.6"} if chance.random() < 0.7 else {}
    features.append({"kind": "groove", "name": f"groove {index}", **places, **radius})
    return round(z + 5, 2), diameter


def _edges(chance, features, index, z, before, after):
    """Add a chamfer and a fillet to the step at a station where they go."""
    step = abs(before - after) / 2
    grooved = any(each["kind"] == "groove" and each["to"] == f"{z:.2f}" for each in features)
    if step > 2.5 and chance.random() < 0.6:
        features.append({"kind": "chamfer", "name": f"chamfer {index}", "at": f"{z:.2f}", "size": "1"})
    if z and step > 2.5 and not grooved and chance.random() < 0.6:
        features.append({"kind": "fillet", "name": f"fillet {index}", "at": f"{z:.2f}", "size": "1.2"})
