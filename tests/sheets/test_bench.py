"""The bench sheet: the paper itself says enough to cut the part, and says it safely."""

from __future__ import annotations

import sys
from datetime import UTC, datetime
from html.parser import HTMLParser
from pathlib import Path

import attrs
import pytest

from handwheel import assets
from handwheel.job.folder import open_job
from handwheel.job.road import replay, whole_road
from handwheel.part.drawing.side_view import side_view
from handwheel.sheets.bench import Surround, bench_sheet_html, bench_sheet_pdf
from handwheel.sheets.packet import write_packet

sys.path.insert(0, str(Path(__file__).parent))
from read_back import page_text, read_back

WHEN = datetime(2026, 3, 4, 5, 6, 7, 891, tzinfo=UTC)
SECOND = Path(__file__).parents[1] / "job" / "data" / "second-job"


@pytest.fixture(scope="module", params=["demo", "second"])
def road(request):
    return whole_road(open_job(assets.demo_job_file() if request.param == "demo" else SECOND))


@pytest.fixture(scope="module")
def pdf(road):
    around = Surround(side_view(road.part), road.plan.not_planned, road.report.verdict(), "invented")
    return bench_sheet_pdf(road.plan.sheet, WHEN, around)


def test_the_papers_own_text_cuts_the_part(road, pdf):
    """Every value is read back from the PDF's text; the dry run of that is the dry run of the plan's sheet."""
    paper = read_back(pdf, road.plan.sheet)
    assert [line.number for line in paper.lines] == [line.number for line in road.plan.sheet.lines]
    for printed, planned in zip(paper.lines, road.plan.sheet.lines, strict=True):
        assert printed.values == planned.values
    assert replay(paper, road).ok


def test_the_same_values_give_the_same_bytes(road, pdf):
    around = Surround(side_view(road.part), road.plan.not_planned, road.report.verdict(), "invented")
    assert bench_sheet_pdf(road.plan.sheet, WHEN, around) == pdf
    assert bench_sheet_pdf(road.plan.sheet, WHEN, around, paper="a4") != pdf


def test_cautions_and_what_is_not_planned_stand_on_the_paper(road, pdf):
    text = " ".join(page_text(pdf).split())
    for words in ("Chuck key out", "long hair", "local codes", "licensed engineer", "Not planned on this sheet yet"):
        assert words in text
    for sentence in road.plan.not_planned:
        assert " ".join(sentence.split()) in text


class _Text(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.text: list[str] = []

    def handle_data(self, data: str) -> None:
        self.text.append(data)


def test_the_page_prints_every_string_and_escapes_what_people_typed(road):
    sheet = attrs.evolve(road.plan.sheet, part='<img src=x onerror="1">')
    page = bench_sheet_html(sheet, Surround(origin="<b>& co"))
    assert "<img" not in page
    assert "&lt;b&gt;" in page
    reader = _Text()
    reader.feed(page)
    text = " ".join("".join(reader.text).split())
    for line in sheet.lines:
        for value in line.values.values():
            assert value in text


def test_the_packet_holds_every_file(road, tmp_path):
    job = open_job(assets.demo_job_file())
    written = write_packet(job, road, tmp_path / "out", WHEN)
    assert {path.name for path in written} == {
        "bench-sheet.html", "bench-sheet.pdf", "side-view.svg", "estimate.txt", "estimate.csv", "dry-run.txt",
    }  # fmt: skip
    assert (tmp_path / "out" / "bench-sheet.pdf").read_bytes().startswith(b"%PDF")
    assert "no fault" in (tmp_path / "out" / "dry-run.txt").read_text(encoding="utf-8")
    rows = (tmp_path / "out" / "estimate.csv").read_text(encoding="utf-8").splitlines()
    assert len(rows) == len(road.estimate.rows) + 1
