"""Reading a shop file: typed text in TOML, every fault with its key and its line."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from pathlib import Path
from typing import Any, cast

import tomlkit
from tomlkit.exceptions import ParseError, TOMLKitError

from handwheel import assets
from handwheel.numbers import reading
from handwheel.numbers.faults import Fault, HandwheelError
from handwheel.shop import keys
from handwheel.shop.lines import key_lines
from handwheel.shop.values import Compound, Dial, Leadscrew, Shop


def load_shop(path: Path) -> Shop:
    """Return the shop read from a TOML file.

    Raises:
        HandwheelError: the file cannot be read; each fault names its key and line and says what would be right.

    >>> load_shop(assets.sample_shop_file()).lathe.spindle_speeds[:3]
    (45.0, 70.0, 105.0)
    """
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, ValueError) as error:
        raise HandwheelError(
            f"{path.name or path}: the shop file can't be opened; check that it is there and is text"
        ) from error
    shop, faults = read_shop(text, path.name)
    if shop is None:
        raise HandwheelError(" ".join(fault.sentence() for fault in faults))
    return shop


def sample_shop() -> Shop:
    """Return the sample shop (invented) that comes with the kit.

    >>> sample_shop().system
    'in'
    """
    return load_shop(assets.sample_shop_file())


def read_shop(text: str, name: str) -> tuple[Shop | None, list[Fault]]:
    """Return the shop in a file's text, or None and every fault found in it."""
    try:
        document = tomlkit.parse(text).unwrap()
    except ParseError as error:
        what = "this is no TOML: " + str(error).split(" at line")[0][0].lower() + str(error).split(" at line")[0][1:]
        return None, [Fault(f"{name}, line {error.line}", what, 'write key = "value"')]
    except (TOMLKitError, ValueError, RecursionError) as error:
        return None, [Fault(name, f"this is no TOML: {error}", 'write each key once, as key = "value"')]
    system = "mm" if document.get("units") == "mm" else "in"
    reader = _Reader(name, key_lines(text), system)
    values = reader.table(keys.SHOP, document, "")
    if reader.faults:
        return None, reader.faults
    values["system"] = values.pop("units")
    shop = Shop(**values)
    faults = list(reader.sense(shop))
    return (None, faults) if faults else (shop, [])


class _Reader:
    """Walks the file along its declaration, collecting faults instead of stopping at the first."""

    def __init__(self, name: str, lines: Mapping[str, int], system: str) -> None:
        self.name = name
        self.lines = lines
        self.system = system
        self.faults: list[Fault] = []

    def fault(self, path: str, what: str, remedy: str) -> Fault:
        """Return a fault at a key, with the line of the key or of the nearest table around it."""
        around = path
        while around and around not in self.lines:
            around = around.rpartition(".")[0] if "." in around else ""
        line = f", line {self.lines[around]}" if around else ""
        return Fault(f"{self.name}{line}, {path}", what, remedy)

    def table(self, table: keys.Table, given: object, path: str) -> dict[str, Any]:
        """Return a table's values by Python name; what is missing or makes no sense becomes a fault."""
        if not isinstance(given, Mapping):
            self.faults.append(self.fault(path, "a table is wanted here", f"write [{path}] and its keys under it"))
            return {}
        is_dial = table.makes in (Dial, Compound)
        known = {**table.keys, **(keys.OPTIONAL if is_dial else {})}
        for key in given:
            if key not in known:
                near = difflib.get_close_matches(str(key), known, 1)
                hint = f"do you mean {near[0]}" if near else f"there are {', '.join(known)}"
                self.faults.append(self.fault(_join(path, str(key)), "no such key", hint))
        values: dict[str, Any] = {}
        for key, kind in known.items():
            place = _join(path, key)
            if key in given:
                values[key.replace("-", "_")] = self.value(kind, given[key], place, key)
            elif key not in keys.OPTIONAL:
                self.faults.append(self.fault(place, "is missing", f"add {key}" + _example(kind)))
        if self.faults:
            return values
        return self.dials(values, path) if is_dial else values

    def value(self, kind: Any, given: Any, place: str, key: str) -> Any:
        """Return one key's value, or None with a fault."""
        if isinstance(kind, keys.Table):
            values = self.table(kind, given, place)
            return None if self.faults else (kind.makes(**values))
        if isinstance(kind, keys.Rows):
            if not isinstance(given, list) or not given:
                self.faults.append(
                    self.fault(place, "at least one is wanted", f"write [[{place}]] and its keys under it")
                )
                return ()
            made = [self.table(kind.table, each, f"{place}[{number}]") for number, each in enumerate(given, 1)]
            return () if self.faults else tuple(kind.table.makes(**each) for each in made)
        if isinstance(given, bool) or not isinstance(given, str | int | float):
            self.faults.append(self.fault(place, "text is wanted here", f'write {key} = "..."' + _example(kind)))
            return None
        try:
            value = self.read(kind, str(given))
        except HandwheelError as error:
            what, _, remedy = str(error).rpartition("; ")
            self.faults.append(self.fault(place, what, remedy))
            return None
        size = value.pitch if isinstance(value, Leadscrew) else value
        if isinstance(size, int | float) and (size < 0 or (size == 0 and key not in keys.MAY_BE_ZERO)):
            self.faults.append(self.fault(place, f"{given!r} can't be", "give a number more than 0"))
        return value

    def read(self, kind: Any, text: str) -> Any:
        """Return typed text as its kind."""
        if isinstance(kind, tuple):
            return reading.read_choice(text, kind)
        if kind == "text":
            if not text.strip():
                raise HandwheelError("nothing is typed; type a name")
            return text.strip()
        if kind == "yes or no":
            return reading.read_choice(text, ("yes", "no")) == "yes"
        if kind == "count":
            return reading.read_count(text)
        if kind == "counts":
            return tuple(reading.read_count(each) for each in text.split(","))
        if kind == "amount":
            return reading.read("number", text, self.system).value
        if kind == "pitch":
            return Leadscrew(text, reading.read("pitch", text, self.system).value)
        if kind.startswith("list of "):
            return tuple(each.value for each in reading.read_list(kind.removeprefix("list of "), text, self.system))
        return reading.read(kind, text, self.system).value

    def dials(self, values: dict[str, Any], path: str) -> dict[str, Any]:
        """Return a dial's values with its name and system; a compound's dial keys put into a dial of its own."""
        system = self.system
        name = path.rpartition(".")[2]
        dial_keys = ("per_turn", "division", "reads", "backlash", "true_lead")
        dial = {key: values.pop(key) for key in dial_keys if key in values}
        made = Dial(name=name, system=cast(Any, system), **dial)
        count = made.per_turn / made.division
        if abs(count - round(count)) > 1e-6 * count:
            self.faults.append(self.fault(_join(path, "division"), "a turn is no whole number of divisions",
                                          "read both off the dial again"))  # fmt: skip
        if made.backlash >= made.per_turn:
            self.faults.append(self.fault(_join(path, "backlash"), "is a whole turn or more",
                                          "measure it with an indicator, or adjust the nut"))  # fmt: skip
        if not 0.5 <= made.true_lead <= 2:
            self.faults.append(
                self.fault(_join(path, "true-lead"), "is not near 1", "write true travel / marked travel")
            )
        return {"dial": made, **values} if values else {
            field: getattr(made, field) for field in ("name", "system", *dial_keys)
        }  # fmt: skip

    def sense(self, shop: Shop) -> list[Fault]:
        """Return the faults of values that are readable each, but make no sense together."""
        found = []
        lathe = shop.lathe
        for key, listed in (("spindle-speeds", lathe.spindle_speeds), ("feeds", lathe.feeds)):
            if any(each <= 0 for each in listed) or list(listed) != sorted(set(listed)):
                found.append(self.fault(f"lathe.{key}", "the list does not rise", "list each once, the slowest first"))
        if lathe.efficiency > 1:
            found.append(self.fault("lathe.efficiency", "is more than 1", "write .80 for 80 %"))
        if not lathe.gears or min(lathe.gears) < 8:
            found.append(self.fault("lathe.gears", "a gear has fewer than 8 teeth", "list tooth counts with commas"))
        for number, bar in enumerate(shop.rack, 1):
            if abs(bar.measured - bar.diameter) > 0.1 * bar.diameter:
                found.append(
                    self.fault(f"rack[{number}].measured", "is far from the bar's diameter", "measure it again")
                )
        for number, gauge in enumerate(shop.gauges, 1):
            if gauge.most <= gauge.least:
                found.append(self.fault(f"gauges[{number}].most", "is not above least", "give the range it measures"))
        names = [tool.name for tool in shop.tools]
        for number, name in enumerate(names, 1):
            if names.index(name) != number - 1:
                found.append(
                    self.fault(f"tools[{number}].name", f"{name!r} stands twice", "give each tool its own name")
                )
        return found


def _join(path: str, key: str) -> str:
    return f"{path}.{key}" if path else key


def _example(kind: Any) -> str:
    if isinstance(kind, tuple):
        return f", one of {', '.join(kind)}"
    if isinstance(kind, str):
        example = reading.EXAMPLES.get(kind.removeprefix("list of "))
        return f", such as {example}" if example else ""
    return ""
