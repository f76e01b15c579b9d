"""What the dry run has to say: faults by line, and how each feature came out."""

from __future__ import annotations

from attrs import frozen


@frozen
class Finding:
    """One fault of the sheet: the line it lies in, what is wrong and what would be right.

    >>> Finding("A7", "the dial was never set", "touch the work and set it first").sentence()
    'line A7: the dial was never set; touch the work and set it first.'
    """

    line: str
    what: str
    remedy: str

    def sentence(self) -> str:
        """Return the finding as one sentence."""
        place = f"line {self.line}" if self.line else "the sheet"
        return f"{place}: {self.what}; {self.remedy}."


@frozen
class Judged:
    """One feature of the virtual bar beside what the part allows, both as shown text."""

    feature: str
    got: str
    limits: str
    ok: bool


@frozen
class Report:
    """The outcome of a dry run: `faults` in the order they come to light, `judged` one row a feature."""

    sheet: str
    lines: int
    faults: tuple[Finding, ...]
    judged: tuple[Judged, ...]

    @property
    def ok(self) -> bool:
        """Whether the sheet cuts the part: no fault, every judged feature within limits."""
        return not self.faults and all(row.ok for row in self.judged)

    def text(self) -> str:
        """Return the report as plain text, for a screen or a file.

        >>> print(Report("1", 2, (Finding("A2", "no such tool", "mount one of the shop's"),), ()).text())
        Dry run of sheet 1: 2 lines read, 1 fault.
        line A2: no such tool; mount one of the shop's.
        """
        rows = [self.verdict(), *(fault.sentence() for fault in self.faults)]
        if len(self.faults) > 1:
            rows.append("Mend the first fault first: a later one may only follow from it.")
        if self.judged:
            head = Judged("feature", "virtual bar", "limits", ok=True)
            wide = max(len(row.feature) for row in (head, *self.judged))
            got = max(len(row.got) for row in (head, *self.judged))
            limits = max(len(row.limits) for row in (head, *self.judged))
            rows += ["", f"{head.feature:{wide}}  {head.got:{got}}  {head.limits:{limits}}  verdict"]
            for row in self.judged:
                verdict = "right" if row.ok else "WRONG"
                rows.append(f"{row.feature:{wide}}  {row.got:{got}}  {row.limits:{limits}}  {verdict}")
        return "\n".join(rows)

    def verdict(self) -> str:
        """Return the dry run's one line: lines read, faults, features within limits."""
        faults = {0: "no fault", 1: "1 fault"}.get(len(self.faults), f"{len(self.faults)} faults")
        right = sum(row.ok for row in self.judged)
        judged = f", {right} of {len(self.judged)} features within limits" if self.judged else ""
        return f"Dry run of sheet {self.sheet}: {self.lines} lines read, {faults}{judged}."
