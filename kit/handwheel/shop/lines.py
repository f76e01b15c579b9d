"""Where each key of a TOML file stands: the line a fault is to be mended at."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

_HEADER = re.compile(r"\s*(\[\[?)\s*([^\[\]]+?)\s*\]\]?\s*(#.*)?$")
_KEY = re.compile(r"\s*([A-Za-z0-9_\"'.-]+)\s*=")


def key_lines(text: str) -> Mapping[str, int]:
    r"""Return line numbers by dotted key: `lathe.power`, `tools[2].nose-radius`, and of each table's header.

    >>> key_lines('[lathe]\npower = "2 hp"\n[[tools]]\nname = "a"')["tools[1].name"]
    4
    """
    lines: dict[str, int] = {}
    for key, number in _keys(text):
        lines.setdefault(key, number)
    return lines


def repeated_key(text: str) -> tuple[str, int] | None:
    r"""Return the first key that stands twice, and the line of its second place; None where there is none.

    >>> repeated_key('[lathe]\npower = "2 hp"\nswing = "14"\npower = "3 hp"')
    ('lathe.power', 4)
    """
    seen = set()
    for key, number in _keys(text):
        if key in seen:
            return key, number
        seen.add(key)
    return None


def _keys(text: str) -> Iterator[tuple[str, int]]:
    counts: dict[str, int] = {}
    around = ""
    # TOML ends a line with a line feed only; other characters that look like one stand inside a line
    for number, line in enumerate(text.split("\n"), 1):
        if header := _HEADER.match(line):
            around = header[2]
            if header[1] == "[[":
                counts[around] = counts.get(around, 0) + 1
                around = f"{around}[{counts[around]}]"
            yield around, number
        elif key := _KEY.match(line):
            name = key[1].strip("\"'")
            yield (f"{around}.{name}" if around else name), number
