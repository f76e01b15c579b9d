"""A printed bench sheet's text read back into its lines: what a person with the paper has."""

from __future__ import annotations

import re
from io import BytesIO

import attrs
from pypdf import PdfReader

from handwheel.plan.lines import FIELDS, MOTIONS, Line, Sheet
from handwheel.sheets.layout import BOXES, MOTION_WORDS, row

WORDS = {words: motion for motion, words in MOTION_WORDS.items()}
HEADING = re.compile(rf"^([A-Z]\d+) ({'|'.join(map(re.escape, WORDS))})(?:: (.*))?$")


def page_text(pdf: bytes) -> str:
    """Return a PDF's text, its pages one after another, feet of pages left out."""
    lines = []
    for page in PdfReader(BytesIO(pdf)).pages:
        for line in page.extract_text().splitlines():
            text = " ".join(line.split())
            if text and not re.fullmatch(r"Sheet .* printed .*, page \d+ of \d+", text):
                lines.append(text)
    return "\n".join(lines)


def read_back(pdf: bytes, head: Sheet) -> Sheet:
    """Return the sheet whose lines are what the PDF's text says; `head` gives only the sheet's head."""
    lines: list[Line] = []
    blocks: list[tuple[re.Match[str], list[str]]] = []
    for text in page_text(pdf).splitlines():
        heading = HEADING.match(text)
        if heading:
            blocks.append((heading, []))
        elif blocks:
            blocks[-1][1].append(text)
    for heading, block in blocks:
        motion = WORDS[heading[2]]
        lines.append(Line(heading[1], motion, heading[3] or "", "", _values(motion, " ".join(block))))
    return attrs.evolve(head, lines=tuple(lines))


def _values(motion: str, text: str) -> dict[str, str]:
    """Return each labelled value of a line's text, in the order the layout prints them."""
    must, may = MOTIONS[motion]
    sample = Line("A1", motion, "", "", dict.fromkeys((*must, *may), "x"))
    laid = row(sample)
    names = {words: name for name, words in FIELDS.items()}
    particulars = [names[label] for label, _ in laid.particulars]
    rest = [names[label] for label, _ in (*laid.dials, *laid.work)]
    pattern = r"^.*?" if not particulars else r"^.*"

    def field(name: str, joint: str) -> str:
        one = rf"{joint}{re.escape(FIELDS[name])} (?P<{name.replace('-', '_')}>.+?)"
        return one if name in must else f"(?:{one})?"

    for place, name in enumerate(particulars):
        pattern += field(name, r"\b" if place == 0 else r" ?· ")
    pattern += r"(?: ?Caution: .*?)*"
    for name in rest:
        pattern += field(name, " ")
    box = BOXES.get(motion, "")
    match = re.match(pattern + (rf" {re.escape(box)}" if box else "") + "$", text)
    assert match, (motion, text)
    return {name.replace("_", "-"): value for name, value in match.groupdict().items() if value is not None}
