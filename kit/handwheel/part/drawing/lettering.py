"""Where a drawing's lettering goes: how wide a text is, and places in which no text meets another or a leader."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from itertools import count
from math import inf

from attrs import frozen

SIZE = 15.0
"""Height of the lettering, in the view's units."""

LINE = 21.0
"""From one line of lettering to the next."""

GAP = 9.0
"""Room left beside a text."""

LEADERS = 7.0
"""From one leader to the next, at least."""

OUTER = 6
"""How many labels at either end may hang inward, over the shaft."""

WIDTHS = (
    (" ',.:;/\\|IJfijl·", 0.36),
    ("()-[]t!r", 0.44),
    ('"*_`°–?Lcsz', 0.56),
    ("$0123456789EFPSTYabdeghknopquvxy{}µ", 0.64),
    ("ABCHKNRUVXZ", 0.76),
    ("#&+<=>^~±×−DGOQwØ", 0.84),
)
"""Letters and their width for a height of 1, no less than in DejaVu Sans, a wide one; any other letter has 1."""

WIDTH_OF = {letter: wide for letters, wide in WIDTHS for letter in letters}


def width(text: str) -> float:
    """Return the room a text takes, in the view's units; never less than it needs.

    >>> width("Ø1.3125") < width("Ø1.3125 / 1.3120")
    True
    """
    return sum(WIDTH_OF.get(letter, 1.0) for letter in text) * SIZE


@frozen
class Label:
    """A text and the point its leader ends on, in the view's units; `feature` is what it belongs to."""

    x: float
    y: float
    text: str
    feature: str
    dot: bool = False


@frozen
class Placed:
    """A label in its lane, counted from the shaft; its leader rises at `at`, its text lies from `left` to `right`."""

    label: Label
    at: float
    lane: int
    left: float
    right: float

    @property
    def leftward(self) -> bool:
        """Whether the text hangs to the left of its leader."""
        return self.left < self.at


def in_lanes(labels: Sequence[Label], length: float) -> list[Placed]:
    """Return the labels placed so that no text meets another text or another's leader.

    A text hangs to the left or the right of its leader and lies above every leader it reaches. Of the ways tried,
    that is taken which keeps the view of a shaft of `length` narrow and low.
    """
    ordered = sorted(labels, key=lambda label: (label.x, label.feature))
    at = spread([label.x for label in ordered], LEADERS)
    rooms = [4 + width(label.text) for label in ordered]
    many = len(ordered)
    best: list[Placed] = []
    least = inf
    for first in range(min(OUTER, many) + 1):
        for split in range(first, many + 1):
            for last in range(max(split, many - OUTER), many + 1):
                spans = [
                    (x + 4, x + room) if index < first or split <= index < last else (x - room, x - 4)
                    for index, (x, room) in enumerate(zip(at, rooms, strict=True))
                ]
                wide = max([length, *(right for _, right in spans)]) - min([0.0, *(left for left, _ in spans)])
                if wide >= least or (lanes := _lanes(spans, at)) is None:
                    continue
                # how large the view comes out: its width, and half as much again of the height of its lettering
                large = wide + 1.5 * max(lanes, default=0) * LINE
                if large < least:
                    least = large
                    best = [
                        Placed(label, x, lane, *span)
                        for label, x, lane, span in zip(ordered, at, lanes, spans, strict=True)
                    ]
    return best


def _lanes(spans: Sequence[tuple[float, float]], at: Sequence[float]) -> list[int] | None:
    """Return a lane for each text, or None where two of them reach over each other's leaders."""
    over = []
    for index, (left, right) in enumerate(spans):
        first, last = bisect_right(at, left - GAP), bisect_left(at, right + GAP)
        over.append({other for other in range(first, last) if other != index})
    lanes: dict[int, int] = {}
    while len(lanes) < len(spans):
        ready = [index for index in range(len(spans)) if index not in lanes and over[index] <= lanes.keys()]
        if not ready:
            return None
        for index in ready:
            left, right = spans[index]
            beside = {
                lane for other, lane in lanes.items() if spans[other][0] - GAP < right and left - GAP < spans[other][1]
            }
            lowest = 1 + max((lanes[other] for other in over[index]), default=-1)
            lanes[index] = next(lane for lane in count(lowest) if lane not in beside)
    return [lanes[index] for index in range(len(spans))]


def spread(places: Sequence[float], gap: float) -> list[float]:
    """Return places in rising order moved as little as may be (least squares) so that no two are nearer than `gap`.

    >>> spread([0.0, 10.0, 11.0], 5.0)
    [0.0, 8.0, 13.0]
    """
    blocks: list[tuple[float, int]] = []  # what moves as one: its sum, and how many
    for index, place in enumerate(places):
        total, many = place - index * gap, 1
        while blocks and blocks[-1][0] / blocks[-1][1] > total / many:
            before, more = blocks.pop()
            total, many = total + before, many + more
        blocks.append((total, many))
    level = [total / many for total, many in blocks for _ in range(many)]
    return [each + index * gap for index, each in enumerate(level)]
