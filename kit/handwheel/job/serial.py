"""A job to and from plain JSON values, old forms brought up to date, unknown keys kept."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import attrs
import cattrs
from cattrs.errors import ClassValidationError, IterableValidationError
from cattrs.gen import make_dict_structure_fn, make_dict_unstructure_fn

from handwheel import __version__
from handwheel.job.values import FORMAT, Job, PrintedSheet, Quote, Reading
from handwheel.numbers.faults import HandwheelError
from handwheel.part.values import PartEntry

MIGRATIONS: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {}
"""For each older form, the function that brings its values to the next."""


class _WrongError(TypeError):
    """A value that is not what it must be, in words."""


_converter = cattrs.Converter()


@_converter.register_structure_hook
def _text(value: Any, _: type) -> str:
    if not isinstance(value, str):
        raise _WrongError(f"{value!r} is not text")
    return value


@_converter.register_structure_hook
def _yes_or_no(value: Any, _: type) -> bool:
    if not isinstance(value, bool):
        raise _WrongError(f"{value!r} is neither true nor false")
    return value


def _keep_unknown(kind: type[Any]) -> None:
    """Let a class's values keep the keys it does not know, and write them back beside its own."""
    known = _names(kind) - {"unknown"}
    structure = make_dict_structure_fn(kind, _converter)
    unstructure = make_dict_unstructure_fn(kind, _converter)

    def read(value: Any, _: type) -> Any:
        mine, unknown = _parted(value, known)
        return structure({**mine, "unknown": unknown}, kind)

    def write(value: Any) -> dict[str, Any]:
        plain = unstructure(value)
        unknown = plain.pop("unknown")
        return {**plain, **unknown}

    _converter.register_structure_hook(kind, read)
    _converter.register_unstructure_hook(kind, write)


def _names(kind: type[Any]) -> set[str]:
    return {field.name for field in attrs.fields(kind)}


def _parted(value: Any, known: set[str]) -> tuple[dict[str, Any], dict[str, Any]]:
    """Return what is known of a table of keys, and the rest.

    Raises:
        _WrongError: it is no table of keys.
    """
    if not isinstance(value, dict):
        raise _WrongError("keys with their values are wanted here")
    return (
        {key: each for key, each in value.items() if key in known},
        {key: each for key, each in value.items() if key not in known},
    )


for _kind in (Reading, PrintedSheet, Quote):
    _keep_unknown(_kind)


def to_text(job: Job) -> str:
    """Return the job as the text of its file.

    Raises:
        HandwheelError: the job holds something JSON cannot say, such as a number that is none.
    """
    try:
        return _dumped(job)
    except (TypeError, ValueError) as error:
        raise HandwheelError(f"the job can't be saved: {_unsayable(error)}; it was left as it was") from error


def _dumped(job: Job) -> str:
    plain = _converter.unstructure(job)
    unknown = dict(plain.pop("unknown"))
    plain["part"] = {**plain["part"], **unknown.pop("part", {})}
    whole = {"format": FORMAT, "kit": __version__, **plain, **unknown}
    text = json.dumps(whole, indent=1, ensure_ascii=False, allow_nan=False)
    text.encode()
    return text + "\n"


def compact(text: str) -> str:
    """Return a job file's text without the white space that only makes it easier to look at."""
    return json.dumps(json.loads(text), separators=(",", ":"), ensure_ascii=False)


def from_text(text: str, name: str) -> Job:
    """Return the job in a file's text.

    Raises:
        HandwheelError: the text is no job this kit can read; one sentence says where and why.
    """
    plain = _loaded(text, name)
    if not isinstance(plain, dict) or not isinstance(plain.get("format"), int) or isinstance(plain["format"], bool):
        raise HandwheelError(f"{name}: this is no job file: it does not say its format; open a job's folder")
    form, kit = plain.pop("format"), plain.pop("kit", "")
    if form > FORMAT:
        which = f"Handwheel {kit}" if isinstance(kit, str) and kit else "a newer kit"
        raise HandwheelError(
            f"{name}: {which} wrote it (format {form}, this kit knows {FORMAT}); open it with that kit or a newer one"
        )
    while form < FORMAT:
        if form not in MIGRATIONS:
            raise HandwheelError(f"{name}: format {form} is none this kit ever wrote; check where the file comes from")
        plain, form = MIGRATIONS[form](plain), form + 1
    try:
        mine, unknown = _parted(plain, _names(Job) - {"unknown"})
        if isinstance(mine.get("part"), dict):
            mine["part"], within_part = _parted(mine["part"], _names(PartEntry))
            if within_part:
                unknown["part"] = within_part
        job = _converter.structure({**mine, "unknown": unknown}, Job)
    except (ClassValidationError, IterableValidationError, TypeError, KeyError, ValueError) as error:
        raise HandwheelError(f"{name}: {_reason(error)}; mend the file or take one from its history folder") from error
    try:
        _dumped(job)
    except (TypeError, ValueError) as error:  # what could not be saved again is not opened
        raise HandwheelError(
            f"{name}: {_unsayable(error)}; mend the file or take one from its history folder"
        ) from error
    return job


def _loaded(text: str, name: str) -> Any:
    """Return the plain values in a file's text.

    Raises:
        HandwheelError: the text is broken; line and column say where.
    """
    try:
        return json.loads(text, parse_constant=_no_number, object_pairs_hook=_no_key_twice)
    except RecursionError as error:
        raise HandwheelError(f"{name}: it is no job: its values are nested without end") from error
    except ValueError as error:
        where = f", line {error.lineno}, column {error.colno}" if isinstance(error, json.JSONDecodeError) else ""
        what = "it ends too early" if _is_cut_short(text) else str(error).split(":", maxsplit=1)[0]
        raise HandwheelError(
            f"{name}{where}: the file is broken ({what}); take the last good one from its history folder"
        ) from error


def _is_cut_short(text: str) -> bool:
    return not text.rstrip().endswith("}")


def _no_number(constant: str) -> float:
    raise ValueError(f"{constant} is no number")


def _no_key_twice(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """Refuse a key that stands twice: one of its two values would be lost without a word."""
    found = dict(pairs)
    if len(found) < len(pairs):
        keys = [key for key, _ in pairs]
        twice = next(key for key in keys if keys.count(key) > 1)
        raise ValueError(f"{twice!r} stands twice at one level")
    return found


def _unsayable(error: TypeError | ValueError) -> str:
    if isinstance(error, UnicodeEncodeError):
        return "half a character stands in a text"
    return "a number in it is none, or endless" if isinstance(error, ValueError) else str(error)


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
    if isinstance(error, KeyError):
        return f"{where or error.args[0]} is missing"
    what = str(error) if isinstance(error, _WrongError) else "its value is not what it must be"
    return f"{where}: {what}" if where else what
