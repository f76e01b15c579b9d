"""The job's folder: opened with a sentence or a job, saved whole or not at all, every version before kept."""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import filelock

from handwheel.job.serial import compact, from_text, to_text
from handwheel.job.values import Job
from handwheel.numbers.faults import HandwheelError

JOB_FILE = "job.json"
HISTORY = "history"
PHOTOS = "photos"
NEW = ".new"
"""The ending of a file that is still being written."""

LOCK_SECONDS = 10
"""How long a save waits for another one of the same job."""


def job_file(path: Path) -> Path:
    """Return the job file meant by a folder or by the file itself."""
    return path / JOB_FILE if path.is_dir() else path


def open_job(path: Path) -> Job:
    """Return the job in a folder, or in a job file.

    Raises:
        HandwheelError: there is none, or it can't be read; one sentence says why.
    """
    return from_text(_text(job_file(path)), job_file(path).name)


def new_job(job: Job, folder: Path, when: datetime) -> Job:
    """Make a job's folder and save the job in it.

    Raises:
        HandwheelError: the folder holds a job already, or can't be made.
    """
    if (folder / JOB_FILE).exists():
        raise HandwheelError(f"{folder.name}: the folder holds a job already; choose another name, or open that job")
    with _said_plainly(folder):
        for inside in (folder, folder / HISTORY, folder / PHOTOS):
            inside.mkdir(parents=True, exist_ok=True)
    return save_job(job, folder, when, before=None)


def save_job(job: Job, folder: Path, when: datetime, *, before: Job | None) -> Job:
    """Save a job in its folder, whole or not at all, and keep the version it replaces in the history.

    `before` is the job as it was opened: a file that changed since, was broken or comes from a newer kit is
    left alone.

    Raises:
        HandwheelError: the job was not saved; one sentence says why, and the file is as it was.
    """
    text = to_text(job)
    from_text(text, JOB_FILE)  # what could not be opened again is not written
    place = folder / JOB_FILE
    with _said_plainly(folder), _locked(folder):
        _sweep(folder)
        if place.exists() or before is not None:
            found = _text(place)
            there = to_text(from_text(found, JOB_FILE))
            if before is None or there != to_text(before):
                raise HandwheelError(
                    f"{JOB_FILE}: it was changed by someone else since it was opened; open it again and repeat "
                    "the change"
                )
            if there == text:
                return job
            _keep(found, folder / HISTORY, when)
        _replace(place, text)
    return job


def history(folder: Path) -> list[Path]:
    """Return the versions a job's folder keeps, the oldest first."""
    return sorted((folder / HISTORY).glob("job-*.json"))


def _text(place: Path) -> str:
    try:
        return place.read_text(encoding="utf-8-sig")
    except FileNotFoundError as error:
        raise HandwheelError(
            f"{place.name}: there is no job at {place.parent.name or 'this place'}; check the name"
        ) from error
    except UnicodeDecodeError as error:
        raise HandwheelError(
            f"{place.name}: the file is broken (it is no text); take the last good one from its history folder"
        ) from error
    except OSError as error:
        raise HandwheelError(
            f"{place.name}: the job can't be opened ({error.strerror}); check the folder's rights"
        ) from error


def _keep(text: str, kept: Path, when: datetime) -> None:
    """Put the version that is about to be replaced into the history, on disk before it is replaced."""
    kept.mkdir(exist_ok=True)
    numbers = [int(path.name.split("-")[1]) for path in kept.glob("job-[0-9]*-*.json")]
    number = max(numbers, default=0) + 1
    _replace(kept / f"job-{number:05d}-{when:%Y%m%d-%H%M%S}.json", compact(text))


def _sweep(folder: Path) -> None:
    """Clear away what saves left that were killed half-way: whoever holds the lock is the only one writing."""
    for inside in (folder, folder / HISTORY):
        for left in inside.glob(f".job*.json-*{NEW}"):
            left.unlink()


def _replace(place: Path, text: str) -> None:
    """Write a file durably: a temporary one beside it, on disk, then put in its place, and the folder on disk."""
    handle, name = tempfile.mkstemp(prefix=f".{place.name}-", suffix=NEW, dir=place.parent)
    try:
        with os.fdopen(handle, "w", encoding="utf-8") as out:
            out.write(text)
            out.flush()
            os.fsync(out.fileno())
        os.chmod(name, place.stat().st_mode if place.exists() else 0o644)
        os.replace(name, place)
    except BaseException:
        with contextlib.suppress(OSError):
            os.unlink(name)
        raise
    _sync_folder(place.parent)


def _sync_folder(folder: Path) -> None:
    if os.name != "posix":
        return  # there a folder can't be opened; the rename itself is durable enough
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


@contextlib.contextmanager
def _locked(folder: Path) -> Iterator[None]:
    with filelock.FileLock(folder / ".job.lock", timeout=LOCK_SECONDS):
        yield


@contextlib.contextmanager
def _said_plainly(folder: Path) -> Iterator[None]:
    """Turn what the system refuses into a sentence; nothing was replaced then."""
    try:
        yield
    except filelock.Timeout as error:
        raise HandwheelError(f"{folder.name}: another save of this job is under way; try again in a moment") from error
    except OSError as error:
        raise HandwheelError(
            f"{folder.name}: the job was not saved ({error.strerror or error}); the file is as it was: make room or "
            "check the folder's rights, and save again"
        ) from error
