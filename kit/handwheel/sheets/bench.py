"""The bench sheet: what is carried to the lathe, as a page for the screen and as a PDF."""

from __future__ import annotations

import json
from collections.abc import Sequence
from datetime import datetime
from functools import cache
from html import escape
from importlib import resources
from typing import TYPE_CHECKING

import attrs
from attrs import frozen

from handwheel.plan.lines import Line, Sheet
from handwheel.sheets.layout import HOW_TO_READ, SAFETY, row, rows

if TYPE_CHECKING:
    import jinja2

PAPERS = {"letter": "us-letter", "a4": "a4"}
"""Paper sizes a sheet can be printed on, with typst's names for them."""


@frozen
class Surround:
    """What is printed around the lines, all of it shown text.

    `picture` is the side view as SVG, `leaves` the sentences on what the sheet does not plan yet, `verdict` the
    dry run's one line, `origin` a word on the job.
    """

    picture: str = ""
    leaves: Sequence[str] = ()
    verdict: str = ""
    origin: str = ""


def bench_sheet_html(sheet: Sheet, around: Surround = Surround()) -> str:
    """Return the bench sheet as one self-contained HTML page; all text is escaped but the picture."""
    return _page().render(content=_content(sheet, around), picture=around.picture)


def bench_sheet_pdf(
    sheet: Sheet,
    when: datetime,
    around: Surround = Surround(),
    paper: str = "letter",
) -> bytes:
    """Return the bench sheet as PDF bytes, dated `when`; the same values give the same bytes.

    Raises:
        KeyError: the paper is not in PAPERS.
    """
    import typst  # a compiler of pages: loaded only when one is printed

    inputs = {
        "content": json.dumps(_content(sheet, around), allow_nan=False),
        "picture": around.picture,
        "paper": PAPERS[paper],
        "printed": when.strftime("%Y-%m-%d %H:%M"),
    }
    source = resources.files(__package__).joinpath("bench.typ").read_bytes()
    pdf: bytes = typst.compile(source, sys_inputs=inputs, timestamp=when.replace(microsecond=0))
    return pdf


def lines_html(lines: Sequence[Line]) -> str:
    """Return a few lines of a sheet as an HTML table, for a panel."""
    shown = [row(line) for line in lines]
    cells = [
        f"<tr><td><b>{escape(each.number)}</b></td><td>{escape(each.heading)}</td><td>{_pairs(each.dials)}</td>"
        f"<td>{_pairs(each.work)}</td></tr>"
        for each in shown
    ]
    return f'<table class="dial-lines" style="line-height:1.4"><tbody>{"".join(cells)}</tbody></table>'


def _pairs(pairs: Sequence[tuple[str, str]]) -> str:
    return " · ".join(f"{escape(label)} <b>{escape(value)}</b>" for label, value in pairs)


def _content(sheet: Sheet, around: Surround) -> dict[str, object]:
    """Return everything both pages print, as plain text by name."""
    return {
        "number": sheet.number,
        "part": sheet.part,
        "units": sheet.units,
        "facts": [
            ["Lathe", sheet.lathe],
            ["Blank", f"{sheet.blank_diameter} diameter, {sheet.blank_length} long, {sheet.units}"],
            ["Ends", f"{sheet.datum_end} (positions on the drawing count from it) and {sheet.far_end}"],
            ["Dry run", around.verdict],
            ["Job", around.origin],
        ],
        "how_to_read": HOW_TO_READ,
        "safety": SAFETY,
        "leaves": list(around.leaves),
        "rows": [attrs.asdict(each) for each in rows(sheet)],
    }


@cache
def _page() -> jinja2.Template:
    import jinja2

    text = resources.files(__package__).joinpath("bench.html").read_text(encoding="utf-8")
    return jinja2.Environment(autoescape=True, undefined=jinja2.StrictUndefined).from_string(text)
