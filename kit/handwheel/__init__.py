"""Handwheel: from a worn shaft's readings to a proven sheet you carry to the lathe.

Every calculation of the kit is offered here by name, reading what a person types:

>>> import handwheel
>>> handwheel.dial_cut(reduce=".150", division=".001", per_turn=".100", reads="travel").divisions
75

Lengths are inches unless `units="mm"` is given or the text names a unit. Nothing heavy is imported
until it is asked for.
"""

from __future__ import annotations

from importlib.util import find_spec
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from handwheel.worked.answer import Answer

__version__ = "0.1.0"


def _calculations() -> dict[str, Callable[..., Answer]]:
    """Each calculation's edge function by its Python name (`dial_cut` for `dial-cut`)."""
    from handwheel.worked.forms import registry

    return {name.replace("-", "_"): form.answer for name, form in registry().items()}


def __getattr__(name: str) -> Callable[..., Answer]:
    # `from handwheel import cli` asks for the attribute first; the room itself is what is meant.
    if not name.startswith("_") and find_spec(f"{__name__}.{name}") is None:
        calculations = _calculations()
        if name in calculations:
            return calculations[name]
    raise AttributeError(f"handwheel has no calculation named {name!r}; see `handwheel calc --list`")


def __dir__() -> list[str]:
    return sorted([*globals(), *_calculations()])
