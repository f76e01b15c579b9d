"""The virtual bar: its radius along the axis, exact, and which line cut each stretch last.

Places `w` are mm along the bar, counted from the blank's datum-end side towards its far end. The bar is a
chain of straight pieces, so a pass, a shoulder and a chamfer are cut without a grid.
"""

from __future__ import annotations

from itertools import pairwise

from attrs import frozen

SHORTEST = 1e-9
"""Pieces shorter than this (mm) are not kept."""


@frozen
class Piece:
    """A straight stretch from `start` to `end` (mm) whose radius runs from `first` to `last` (mm)."""

    start: float
    end: float
    first: float
    last: float
    line: str

    def radius(self, w: float) -> float:
        """Return the radius (mm) at `w` (mm)."""
        if self.first == self.last:
            return self.first
        return self.first + (self.last - self.first) * (w - self.start) / (self.end - self.start)

    def part(self, start: float, end: float) -> Piece:
        """Return the stretch of this piece from `start` to `end` (mm)."""
        return Piece(start, end, self.radius(start), self.radius(end), self.line)


@frozen
class Hole:
    """A centre hole in an end: the drill's name, the line that drilled it, its mouth's diameter (mm)."""

    drill: str
    line: str
    mouth: float


class Bar:
    """A round bar in the lathe, cut by passes.

    >>> bar = Bar(length=100.0, radius=10.0)
    >>> bar.cut(60.0, 100.0, 8.0, 8.0, "A3")
    2.0
    >>> bar.radii(60.0), bar.last_line(80.0)
    ((10.0, 8.0), 'A3')
    """

    def __init__(self, length: float, radius: float) -> None:
        self.pieces = [Piece(0.0, length, radius, radius, "")]
        self.faced: dict[str, str] = {}  # end ("datum" or "far") -> line that faced it
        self.holes: dict[str, Hole] = {}  # by end

    @property
    def start(self) -> float:
        """The place (mm) of the datum-side end as it now is."""
        return self.pieces[0].start if self.pieces else 0.0

    @property
    def end(self) -> float:
        """The place (mm) of the far-side end as it now is."""
        return self.pieces[-1].end if self.pieces else 0.0

    @property
    def length(self) -> float:
        """The length (mm) that is left."""
        return self.end - self.start

    def radii(self, w: float) -> tuple[float, float]:
        """Return the radius (mm) just below and just above `w` (mm); 0 where there is no bar."""
        near = [p for p in self.pieces if p.start - SHORTEST <= w <= p.end + SHORTEST]
        below = next((p.radius(w) for p in near if p.start < w - SHORTEST), 0.0)
        above = next((p.radius(w) for p in near if w < p.end - SHORTEST), 0.0)
        return below, above

    def greatest(self, start: float, end: float) -> float:
        """Return the greatest radius (mm) between two places (mm); 0 where there is no bar."""
        return max((max(p.first, p.last) for p in self._within(start, end)), default=0.0)

    def least(self, start: float, end: float) -> float:
        """Return the least radius (mm) between two places (mm); 0 where there is no bar."""
        return min((min(p.first, p.last) for p in self._within(start, end)), default=0.0)

    def corner_near(self, w: float, reach: float) -> float:
        """Return the place (mm) of the highest step within `reach` (mm) of `w`, or `w` where there is none."""
        ends = [place for p in self.pieces for place in (p.start, p.end) if abs(place - w) <= reach]
        return max(ends, key=lambda place: abs(self.radii(place)[0] - self.radii(place)[1]), default=w)

    def last_line(self, w: float) -> str:
        """Return the line that cut last at `w` (mm); empty where nothing did."""
        return next((p.line for p in self.pieces if p.start - SHORTEST <= w <= p.end + SHORTEST), "")

    def cut(self, start: float, end: float, first: float, last: float, line: str) -> float:
        """Take the bar down to a straight edge from (`start`, `first`) to (`end`, `last`) mm.

        Returns the deepest cut taken (mm per side), 0 where the edge meets no bar.
        """
        edge = Piece(start, end, first, last, line)
        deepest = 0.0
        kept: list[Piece] = []
        for piece in self.pieces:
            low, high = max(start, piece.start), min(end, piece.end)
            if high - low <= SHORTEST:
                kept.append(piece)
                continue
            if low - piece.start > SHORTEST:
                kept.append(piece.part(piece.start, low))
            for a, b in pairwise(_meeting_places(piece, edge, low, high)):
                middle = (a + b) / 2
                cuts = edge.radius(middle) < piece.radius(middle) - SHORTEST
                kept.append((edge if cuts else piece).part(a, b))
                if cuts:
                    deepest = max(deepest, *(piece.radius(w) - edge.radius(w) for w in (a, b)))
            if piece.end - high > SHORTEST:
                kept.append(piece.part(high, piece.end))
        self.pieces = kept
        return deepest

    def shorten(self, start: float, end: float) -> None:
        """Keep only what lies between `start` and `end` (mm)."""
        self.pieces = self._within(start, end)

    def _within(self, start: float, end: float) -> list[Piece]:
        return [
            piece.part(max(start, piece.start), min(end, piece.end))
            for piece in self.pieces
            if min(end, piece.end) - max(start, piece.start) > SHORTEST
        ]


def _meeting_places(piece: Piece, edge: Piece, low: float, high: float) -> list[float]:
    before = edge.radius(low) - piece.radius(low)
    after = edge.radius(high) - piece.radius(high)
    if before * after < 0:
        meeting = low + (high - low) * before / (before - after)
        if min(meeting - low, high - meeting) > SHORTEST:
            return [low, meeting, high]
    return [low, high]
