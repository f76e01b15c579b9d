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
from handwheel.shop.lines import key_lines, repeated_key
from handwheel.shop.sense import unsound
from handwheel.shop.values import Compound, Dial, Leadscrew, Shop, System

FEWEST_TEETH = 8
"""Fewer teeth than any loose gear has (common practice, no published source)."""


def load_shop(path: Path) -> Shop:
    """Return the shop read from a TOML file.

    Raises:
        HandwheelError: the file cannot be read; each fault names its key and line and says what would be right.

    >>> load_shop(assets.sample_shop_file()).lathe.spindle_speeds[:3]
    (45.0, 70.0, 105.0)
    """
    try:
        text = path.read_text(encoding="utf-8-sig")  # a byte order mark is no fault of the person's
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
    """Return the shop in a file's text, or None and every fault found in it.

    >>> shop, faults = read_shop('units = "in"', "my-shop.toml")
    >>> faults[0].sentence()
    'my-shop.toml, name: is missing; add name.'
    """
    try:
        document = tomlkit.parse(text).unwrap()
    except ParseError as error:
        what = str(error).split(" at line")[0]
        fault = Fault(
            f"{name}, line {error.line}", f"this is no TOML: {what[0].lower()}{what[1:]}", 'write key = "value"'
        )
        return None, [fault]
    except (TOMLKitError, ValueError, RecursionError) as error:
        if twice := repeated_key(text):
            return None, [Fault(f"{name}, line {twice[1]}, {twice[0]}", "stands twice", "keep one of them")]
        return None, [Fault(name, f"this is no TOML: {error}", 'write each key once, as key = "value"')]
    reader = _Reader(name, key_lines(text), "mm" if document.get("units") == "mm" else "in")
    shop = reader.table(keys.SHOP, document, "")
    return (None, reader.faults) if reader.faults else (cast(Shop, shop), [])


class _Reader:
    """Walks the file along its declaration, collecting faults instead of stopping at the first."""

    def __init__(self, name: str, lines: Mapping[str, int], system: System) -> None:
        self.name = name
        self.lines = lines
        self.system: System = system
        self.faults: list[Fault] = []

    def fault(self, path: str, what: str, remedy: str) -> None:
        """Note a fault at a key, with the line of the key or of the nearest table around it."""
        around = path
        while around and around not in self.lines:
            around = around[: max(around.rfind("."), around.rfind("["), 0)]
        line = f", line {self.lines[around]}" if around else ""
        self.faults.append(Fault(f"{self.name}{line}, {path}", what, remedy))

    def table(self, table: keys.Table, given: object, path: str) -> object:
        """Return the value a table makes, or None where anything in it is at fault."""
        before = len(self.faults)
        if not isinstance(given, Mapping):
            self.fault(path, "a table is wanted here", f"write [{path}] and its keys under it")
            return None
        for key in given:
            if key not in table.keys:
                near = difflib.get_close_matches(key, table.keys, 1)
                hint = f"do you mean {near[0]}" if near else f"there are {', '.join(table.keys)}"
                self.fault(_join(path, key if key.isprintable() else ascii(key)), "no such key", hint)
        values: dict[str, Any] = {}
        for key, kind in table.keys.items():
            place = _join(path, key)
            wanted = kind.kind if isinstance(kind, keys.Optional) else kind
            if key in given:
                values[key.replace("-", "_")] = self.value(wanted, given[key], place)
            elif wanted is kind:
                self.fault(place, "is missing", f"add {key}{_example(kind)}")
        if len(self.faults) > before:
            return None
        made = self.make(table.makes, values, path)
        for key, what, remedy in unsound(made):
            self.fault(_join(path, key), what, remedy)
        return made

    def make(self, makes: Any, values: dict[str, Any], path: str) -> object:
        """Return a table's value; a dial takes its name from its table and its system from the file."""
        if makes is Dial:
            return Dial(path.rpartition(".")[2], self.system, **values)
        if makes is Compound:
            own = {key: values.pop(key) for key in ("stroke", "scale_zero", "swing")}
            return Compound(Dial(path.rpartition(".")[2], self.system, **values), **own)
        if makes is Shop:
            values["system"] = values.pop("units")
        return makes(**values)

    def rows(self, rows: keys.Rows, given: object, place: str) -> tuple[object, ...]:
        """Return the values of a repeated table, those at fault left out."""
        if not isinstance(given, list) or not given:
            self.fault(place, "at least one is wanted", f"write [[{place}]] and its keys under it")
            return ()
        names: set[str] = set()
        made = []
        for number, each in enumerate(given, 1):
            row = f"{place}[{number}]"
            made.append(self.table(rows.table, each, row))
            name = str(each.get("name", "")) if isinstance(each, Mapping) else ""
            if name and name in names:
                self.fault(f"{row}.name", f"{name!r} stands twice", "give each its own name")
            names.add(name)
        return tuple(each for each in made if each is not None)

    def value(self, kind: Any, given: object, place: str) -> object:
        """Return one key's value, or None with a fault."""
        if isinstance(kind, keys.Table):
            return self.table(kind, given, place)
        if isinstance(kind, keys.Rows):
            return self.rows(kind, given, place)
        if isinstance(given, bool) or not isinstance(given, str | int | float):
            key = place.rpartition(".")[2]
            self.fault(place, "text is wanted here", f'write {key} = "..."{_example(kind)}')
            return None
        try:
            return self.read(kind, str(given))
        except HandwheelError as error:
            what, _, remedy = str(error).partition("; ")
            self.fault(place, what, remedy or "type it another way")
            return None

    def read(self, kind: Any, text: str) -> object:
        """Return typed text as its kind."""
        if isinstance(kind, tuple):
            return reading.read_choice(text, kind)
        if kind == "text":
            if not text.strip() or not text.isprintable():
                raise HandwheelError("nothing to print is typed; type a name in one line")
            return text.strip()
        if kind == "yes or no":
            return reading.read_choice(text, ("yes", "no")) == "yes"
        if kind == "count":
            return _positive(text, reading.read_count(text))
        if kind == "tooth counts":
            teeth = tuple(reading.read_count(each) for each in text.split(","))
            if min(teeth) < FEWEST_TEETH:
                raise HandwheelError(f"a gear has fewer than {FEWEST_TEETH} teeth; list tooth counts with commas")
            return teeth
        if kind.startswith("rising list of "):
            listed = [each.value for each in reading.read_list(_bare(kind), text, self.system)]
            if min(listed) <= 0 or listed != sorted(set(listed)):
                raise HandwheelError("the list does not rise from above 0; list each once, the slowest first")
            return tuple(listed)
        value = reading.read(_bare(kind), text, self.system).value
        if kind == "share" and value > 1:
            raise HandwheelError(f"{text!r} is more than 1; write .80 for 80 %")
        if kind == "pitch":
            return Leadscrew(text, _positive(text, value))
        return _positive(text, value, kind.endswith(" or 0"))


def _positive(text: str, value: Any, zero: bool = False) -> Any:
    if value < 0 or (value == 0 and not zero):
        raise HandwheelError(f"{text!r} can't be; give {'0 or more' if zero else 'a number more than 0'}")
    return value


def _bare(kind: str) -> str:
    """Return the kind numbers.reading knows behind a key's kind."""
    bare = kind.removeprefix("rising list of ").removesuffix(" or 0")
    return "number" if bare in ("amount", "share") else bare


def _join(path: str, key: str) -> str:
    return f"{path}.{key}" if path else key


def _example(kind: Any) -> str:
    if isinstance(kind, tuple):
        return f", one of {', '.join(kind)}"
    if isinstance(kind, str):
        example = reading.EXAMPLES.get(_bare(kind))
        return f", such as {example}" if example else ""
    return ""
