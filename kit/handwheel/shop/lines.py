"""Where each key of a TOML file stands: the line a fault is to be mended at."""

from __future__ import annotations

import re
from collections.abc import Mapping

_HEADER = re.compile(r"\s*(\[\[?)\s*([^\[\]]+?)\s*\]\]?\s*(#.*)?$")
_KEY = re.compile(r"\s*([A-Za-z0-9_\"'.-]+)\s*=")


def key_lines(text: str) -> Mapping[str, int]:
    r"""Return line numbers by dotted key: `lathe.power`, `tools[2].nose-radius`, and of each table's header.

    >>> key_lines('[lathe]\npower = "2 hp"\n[[tools]]\nname = "a"')["tools[1].name"]
    4
    """
    lines: dict[str, int] = {}
    counts: dict[str, int] = {}
    around = ""
    for number, line in enumerate(text.splitlines(), 1):
        if header := _HEADER.match(line):
            around = header[2]
            if header[1] == "[[":
                counts[around] = counts.get(around, 0) + 1
                around = f"{around}[{counts[around]}]"
            lines.setdefault(around, number)
        elif key := _KEY.match(line):
            name = key[1].strip("\"'")
            lines.setdefault(f"{around}.{name}" if around else name, number)
    return lines
