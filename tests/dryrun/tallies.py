"""How the kinds of wrong sheet fare: applied, caught with the right line named, proven harmless."""

from __future__ import annotations

from dataclasses import dataclass, field

from second_opinion import part_comes_out
from wrong_sheets import KINDS

from handwheel.dryrun.run import dry_run


@dataclass
class Tally:
    """How one kind of wrong sheet fared."""

    applied: int = 0
    caught: int = 0
    harmless: int = 0
    missed: list[str] = field(default_factory=list)
    misnamed: list[str] = field(default_factory=list)

    def __add__(self, other: Tally) -> Tally:
        """Both tallies together."""
        return Tally(
            self.applied + other.applied,
            self.caught + other.caught,
            self.harmless + other.harmless,
            self.missed + other.missed,
            self.misnamed + other.misnamed,
        )


def tally(kind, sheet, shop, samples, holes) -> Tally:
    """Make every wrong sheet of a kind and see what the dry run says of it."""
    result = Tally()
    for wrong in kind(sheet, shop):
        result.applied += 1
        report = dry_run(wrong.sheet, shop, samples, holes)
        if not report.faults:
            harmless = wrong.may_be_harmless and part_comes_out(wrong.sheet, shop, samples)
            result.harmless += harmless
            if not harmless:
                result.missed.append(wrong.edited)
        elif wrong.rightly_named(report.faults[0]):
            result.caught += 1
        else:
            result.misnamed.append(f"{wrong.edited}: {report.faults[0].sentence()}")
    return result


def table(tallies: dict[str, Tally]) -> str:
    """The table of kinds: caught with the right line named, proven harmless, applied."""
    rows = [f"{'kind':36} {'applied':>8} {'caught':>8} {'harmless':>9}"]
    rows += [f"{name:36} {t.applied:8} {t.caught:8} {t.harmless:9}" for name, t in tallies.items()]
    total = [sum(getattr(t, name) for t in tallies.values()) for name in ("applied", "caught", "harmless")]
    return "\n".join([*rows, f"{'all':36} {total[0]:8} {total[1]:8} {total[2]:9}"])


def check(tallies: dict[str, Tally]) -> None:
    """Every wrong sheet is caught with the right line named, or proven harmless."""
    for name, t in tallies.items():
        assert not t.missed, f"{name}: not caught at {t.missed}"
        assert not t.misnamed, f"{name}: {t.misnamed}"
        assert t.caught + t.harmless == t.applied
        assert not t.applied or t.caught, f"{name}: none was caught"


def all_kinds(sheet, shop, samples, holes) -> dict[str, Tally]:
    """Every kind's tally on one sheet."""
    return {kind.__name__.replace("_", " "): tally(kind, sheet, shop, samples, holes) for kind in KINDS}
