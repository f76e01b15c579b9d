"""The virtual bar against a second, brute-force one on a grid."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from handwheel.dryrun.bar import Bar

places = st.integers(-50, 1050).map(lambda tenths: tenths / 10)
radii = st.integers(10, 220).map(lambda tenths: tenths / 10)
edges = st.tuples(places, places, radii, radii).filter(lambda edge: edge[1] - edge[0] > 0.05)


@pytest.mark.property
@given(st.lists(edges, max_size=12))
def test_any_cuts_leave_what_a_grid_leaves(cuts):
    bar = Bar(100.0, 20.0)
    grid = np.arange(0.025, 100.0, 0.05)
    radius = np.full(grid.shape, 20.0)
    for start, end, first, last in cuts:
        inside = (grid > start) & (grid < end)
        edge = first + (last - first) * (grid - start) / (end - start)
        taken = float(np.max(radius - edge, where=inside, initial=0.0))
        radius = np.where(inside, np.minimum(radius, edge), radius)
        deepest = bar.cut(start, end, first, last, "A1")
        assert deepest >= taken - 1e-9
        assert deepest == pytest.approx(taken, abs=0.05 * (2 + abs(last - first) / (end - start) * 4))
    assert max(abs(max(bar.radii(w)) - r) for w, r in zip(grid, radius, strict=True)) < 1e-9
    assert (bar.start, bar.end) == (0.0, 100.0)


def test_a_step_has_two_radii_and_the_ends_have_one():
    bar = Bar(100.0, 20.0)
    bar.cut(60.0, 100.0, 15.0, 15.0, "A1")
    assert bar.radii(60.0) == (20.0, 15.0)
    assert bar.radii(0.0) == (0.0, 20.0)
    assert bar.radii(100.0) == (15.0, 0.0)
    assert bar.radii(101.0) == (0.0, 0.0)
    assert (bar.last_line(59.0), bar.last_line(61.0)) == ("", "A1")
    assert (bar.greatest(50.0, 70.0), bar.least(50.0, 70.0)) == (20.0, 15.0)


def test_what_is_sawn_off_is_gone():
    bar = Bar(100.0, 20.0)
    bar.shorten(30.0, 90.0)
    assert (bar.start, bar.end, bar.length) == (30.0, 90.0, 60.0)
