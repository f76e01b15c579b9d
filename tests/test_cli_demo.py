"""The demo's folder: made anew where nobody touched it, left alone where somebody did."""

from __future__ import annotations

import shutil
import subprocess
import sys
from datetime import UTC, datetime

import attrs
import pytest

from handwheel.job.folder import history, open_job, save_job
from handwheel.job.road import printed_sheet, whole_road
from handwheel.numbers import showing


def demo(*arguments: str, cwd=None) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "handwheel", "demo", *arguments], capture_output=True, text=True, cwd=cwd, timeout=120
    )


def refused(done: subprocess.CompletedProcess[str], why: str) -> bool:
    return (done.returncode, done.stdout) == (2, "") and why in done.stderr and len(done.stderr.splitlines()) == 1


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    out = tmp_path_factory.mktemp("demo") / "packet"
    done = demo("--out", str(out))
    assert done.returncode == 0, done.stderr
    return out, done.stdout


@pytest.fixture
def out(made, tmp_path):
    return shutil.copytree(made[0], tmp_path / "packet")


def test_the_job_it_writes_is_the_one_it_speaks_of(made):
    out, said = made
    job = open_job(out / "job")
    road = whole_road(job, out / "job")
    assert printed_sheet(job.sheets["1"]) == road.plan.sheet
    assert showing.money(road.estimate.price, "USD") in said
    assert showing.money(road.estimate.price, "USD") in (out / "estimate.txt").read_text(encoding="utf-8")
    assert f"{len(road.plan.sheet.lines)} lines" in said
    assert road.report.verdict() in said
    assert "invented" in said
    for sentence in road.plan.not_planned:
        assert sentence in said
    assert len(history(out / "job")) == 1


def test_an_untouched_packet_is_made_anew(out):
    assert demo("--out", str(out)).returncode == 0
    assert demo("--out", ".", cwd=out).returncode == 0
    assert open_job(out / "job").sheets


def test_a_demo_stopped_half_way_is_made_anew(out):
    (out / ".handwheel-demo").write_text("", encoding="utf-8")
    (out / "bench-sheet.html").write_text("<ht", encoding="utf-8")
    assert demo("--out", str(out)).returncode == 0
    assert "</html>" in (out / "bench-sheet.html").read_text(encoding="utf-8")


def test_a_job_somebody_worked_on_is_not_lost(out):
    job = open_job(out / "job")
    when = datetime(2026, 3, 4, tzinfo=UTC)
    mine = save_job(attrs.evolve(job, decisions={"bar": "4140 PH 2-1/4 x 36"}), out / "job", when, before=job)
    assert refused(demo("--out", str(out)), "not as the demo wrote it")
    assert open_job(out / "job") == mine


def test_a_photo_put_beside_the_job_is_not_lost(out):
    (out / "job" / "photos" / "seat.jpg").write_bytes(b"x")
    assert refused(demo("--out", str(out)), "seat.jpg")
    assert (out / "job" / "photos" / "seat.jpg").exists()


def test_a_mark_that_is_none_is_no_leave_to_write(tmp_path):
    for mark in ("[]", "{", '"x"'):
        (tmp_path / ".handwheel-demo").write_text(mark, encoding="utf-8")
        (tmp_path / "mine.txt").write_text("x", encoding="utf-8")
        assert refused(demo("--out", str(tmp_path)), "name another")
        assert (tmp_path / "mine.txt").exists()


def test_places_that_cannot_be_written_get_a_sentence(tmp_path):
    (tmp_path / "file").write_text("x", encoding="utf-8")
    assert refused(demo("--out", "file", cwd=tmp_path), "file")
    assert refused(demo("--out", "file/packet", cwd=tmp_path), "file")
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "notes.txt").write_text("x", encoding="utf-8")
    assert refused(demo("--out", "mine", cwd=tmp_path), "not empty")
    assert (tmp_path / "mine" / "notes.txt").exists()
