"""A job as it is kept: what was ordered, typed, measured, decided and handed over.

`unknown` keeps, at each level, what a later kit wrote and this one does not know; it is written back as it was.
"""

from __future__ import annotations

from typing import Any

from attrs import Factory, frozen

from handwheel.part.values import PartEntry

FORMAT = 1
"""The version of the job file's form that this kit writes."""


@frozen
class Reading:
    """A reading of the worn part as it was taken: text as typed, where, with what."""

    feature: str
    place: str
    typed: str
    instrument: str = ""
    note: str = ""
    unknown: dict[str, Any] = Factory(dict)


@frozen
class PrintedSheet:
    """A sheet as it was printed and handed over: its lines never change afterwards.

    `when` is the time of printing; `sheet` is the sheet's own values, all of them printed strings; `kit` is the
    version of the kit that planned it.
    """

    when: str
    sheet: dict[str, Any]
    kit: str = ""
    unknown: dict[str, Any] = Factory(dict)


@frozen
class Quote:
    """A price as it was given to the customer: it stands, whatever today's numbers say.

    `price` and `time` are the words that were given; `when` is the time, `kit` the version that reckoned it.
    """

    when: str
    price: str
    time: str
    kit: str = ""
    unknown: dict[str, Any] = Factory(dict)


@frozen
class Job:
    """Everything a person typed, measured, chose or promised for one job.

    `shop` is `sample` or the name of a shop file beside the job; `decisions` holds choices made against the
    kit's own proposal, by name. What is not known within the part is kept in `unknown` under `part`.
    """

    title: str
    order: dict[str, str]
    part: PartEntry
    shop: str = "sample"
    invented: bool = False
    readings: list[Reading] = Factory(list)
    decisions: dict[str, str] = Factory(dict)
    sheets: dict[str, PrintedSheet] = Factory(dict)
    quotes: list[Quote] = Factory(list)
    unknown: dict[str, Any] = Factory(dict)
