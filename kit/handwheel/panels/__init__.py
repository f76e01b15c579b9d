"""Panels for notebooks: state that can be tested without a screen, and thin widgets over it."""

from handwheel.panels.calculation_panel import for_calculation
from handwheel.panels.part_panel import for_part

__all__ = ["for_calculation", "for_part"]
