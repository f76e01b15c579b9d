"""What no size of the shop can be, said in one sentence."""

from __future__ import annotations

import math

from handwheel.numbers.faults import HandwheelError
from handwheel.worked.result import Number


def positive(hint: str = "", /, **sizes: Number) -> None:
    """Refuse the first of some sizes that is not more than 0, or has no end.

    Args:
        hint: words on what would be right, a plain sentence part without a unit.
        sizes: each size by its Python name, a plain number in any unit.

    Raises:
        HandwheelError: a size is 0, negative, infinite or no number.

    Examples:
        >>> positive("read it off the tool", nose_radius=0)
        Traceback (most recent call last):
        handwheel.numbers.faults.HandwheelError: nose-radius: must be more than 0; read it off the tool
    """
    for name, size in sizes.items():
        if not 0 < size < math.inf:
            raise HandwheelError(f"{name.replace('_', '-')}: must be more than 0{f'; {hint}' if hint else ''}")
