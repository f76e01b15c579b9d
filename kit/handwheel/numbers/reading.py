"""What people type at the bench, read by kind: the one door from text to values."""

from handwheel.numbers.calls import Limits, ThreadCall, exactly_zero, is_zero, read_limits, read_thread
from handwheel.numbers.typed import (
    EXAMPLES,
    Typed,
    plain_decimal,
    read,
    read_choice,
    read_count,
    read_list,
)

__all__ = [
    "EXAMPLES",
    "Limits",
    "ThreadCall",
    "Typed",
    "exactly_zero",
    "is_zero",
    "plain_decimal",
    "read",
    "read_choice",
    "read_count",
    "read_limits",
    "read_list",
    "read_thread",
]
