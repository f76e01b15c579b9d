"""A job to and from plain JSON values, old forms brought up to date, unknown keys kept."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import attrs
import cattrs
from cattrs.errors import ClassValidationError, ForbiddenExtraKeysError, IterableValidationError

from handwheel.job.values import FORMAT, Job
from handwheel.numbers.faults import HandwheelError

MIGRATIONS: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {}
"""For each older form, the function that brings its values to the next."""

_KNOWN = {field.name for field in attrs.fields(Job)} - {"unknown"}
_converter = cattrs.Converter()


@_converter.register_structure_hook
def _text(value: Any, _: type) -> str:
    if not isinstance(value, str):
        raise TypeError(f"{value!r} is not text")
    return value


def to_text(job: Job) -> str:
    """Return the job as the text of its file.

    Raises:
        HandwheelError: the job holds something JSON cannot say, such as a number that is none.
    """
    plain = _converter.unstructure(job)
    unknown = plain.pop("unknown")
    try:
        return json.dumps({"format": FORMAT, **plain, **unknown}, indent=1, ensure_ascii=False, allow_nan=False) + "\n"
    except (TypeError, ValueError) as error:
        raise HandwheelError(f"the job can't be saved: {error}; it was left as it was") from error


def from_text(text: str, name: str) -> Job:
    """Return the job in a file's text.

    Raises:
        HandwheelError: the text is no job this kit can read; one sentence says where and why.
    """
    try:
        plain = json.loads(text, parse_constant=_no_number)
    except RecursionError as error:
        raise HandwheelError(f"{name}: it is no job: its values are nested without end") from error
    except ValueError as error:
        where = f", line {error.lineno}, column {error.colno}" if isinstance(error, json.JSONDecodeError) else ""
        what = "it ends too early" if _is_cut_short(text) else str(error).split(":", maxsplit=1)[0]
        raise HandwheelError(
            f"{name}{where}: the file is broken ({what}); take the last good one from its history folder"
        ) from error
    if not isinstance(plain, dict) or not isinstance(plain.get("format"), int) or isinstance(plain["format"], bool):
        raise HandwheelError(f"{name}: this is no job file: it does not say its format; open a job's folder")
    form = plain.pop("format")
    if form > FORMAT:
        raise HandwheelError(
            f"{name}: a newer kit wrote it (format {form}, this kit knows {FORMAT}); open it with that kit or a "
            "newer one"
        )
    while form < FORMAT:
        if form not in MIGRATIONS:
            raise HandwheelError(f"{name}: format {form} is none this kit ever wrote; check where the file comes from")
        plain, form = MIGRATIONS[form](plain), form + 1
    unknown = {key: plain.pop(key) for key in list(plain) if key not in _KNOWN}
    try:
        return _converter.structure({**plain, "unknown": unknown}, Job)
    except Exception as error:
        if not isinstance(
            error,
            ClassValidationError
            | IterableValidationError
            | ForbiddenExtraKeysError
            | TypeError
            | KeyError
            | ValueError,
        ):
            raise
        raise HandwheelError(f"{name}: {_reason(error)}; mend the file or take one from its history folder") from error


def _is_cut_short(text: str) -> bool:
    return not text.rstrip().endswith("}")


def _no_number(constant: str) -> float:
    raise ValueError(f"{constant} is no number")


def _reason(error: BaseException) -> str:
    """Return where a job's values are not as they must be, in words."""
    path: list[str] = []
    while isinstance(error, ClassValidationError | IterableValidationError) and error.exceptions:
        error = error.exceptions[0]
        for note in getattr(error, "__notes__", ()):
            if "attribute " in note:
                path.append(note.rpartition("attribute ")[2])
            elif "index " in note:
                path.append(note.rpartition("index ")[2])
    where = ".".join(path)
    what = f"{error.args[0]} is missing" if isinstance(error, KeyError) else str(error)
    return f"{where}: {what}" if where else what
