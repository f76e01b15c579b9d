"""How long work takes when nobody knows exactly: a time by its short and long case, and a sum of such times."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist

from handwheel.numbers.faults import HandwheelError
from handwheel.worked.result import Number, Time

TENTH = NormalDist().inv_cdf(0.9)
"""Standard deviations from the middle to the short (one in ten) and the long case (nine in ten)."""


@dataclass(frozen=True)
class TimeSpread:
    """A lognormal time: the mean and the standard deviation of its logarithm (of minutes)."""

    log_mean: Number
    log_sd: Number

    @property
    def median(self) -> Time:
        """The time that is met in one of two cases, minutes."""
        return math.exp(self.log_mean)

    @property
    def mean(self) -> Time:
        """The average over many jobs, minutes."""
        return math.exp(self.log_mean + self.log_sd**2 / 2)

    @property
    def variance(self) -> float:
        """The variance, minutes²."""
        return self.mean**2 * (math.exp(self.log_sd**2) - 1)

    def quantile(self, share: Number) -> Time:
        """Return the time (minutes) that is met in `share` of cases, a plain number between 0 and 1."""
        return math.exp(self.log_mean + self.log_sd * NormalDist().inv_cdf(share))


def spread(low: Time, high: Time) -> TimeSpread:
    """Return the lognormal time that is shorter than `low` in a tenth of cases and longer than `high` in a tenth.

    Args:
        low: the short case, minutes.
        high: the long case, minutes; not less than the short one.

    Returns:
        The time's spread.

    Raises:
        HandwheelError: the short case is not more than 0, or the long one is shorter.

    Examples:
        >>> time = spread(20, 60)
        >>> round(time.median, 3), round(time.mean, 3), round(time.quantile(0.8), 3)
        (34.641, 37.974, 49.689)
    """
    if not 0 < low <= high < math.inf:
        raise HandwheelError("low and high: the short case must be more than 0 and the long one no shorter")
    return TimeSpread((math.log(low) + math.log(high)) / 2, (math.log(high) - math.log(low)) / (2 * TENTH))


def total(times: Sequence[TimeSpread], correlation: Number) -> TimeSpread:
    """Return the sum of times as one lognormal with the sum's mean and variance.

    Times of one job go long together: a tough bar, a strange machine. Neither the long cases nor the likely ones
    may be added.

    Args:
        times: the spreads to add; at least one.
        correlation: how far they go long together, a plain number from 0 (not at all) to 1.

    Returns:
        The sum's spread.

    Raises:
        HandwheelError: there is nothing to add, or the correlation lies outside 0 to 1.

    Examples:
        >>> both = total([spread(20, 60), spread(20, 60)], 0.0)
        >>> round(both.mean, 3)
        75.948
    """
    if not times:
        raise HandwheelError("times: there is nothing to add")
    if not 0 <= correlation <= 1:
        raise HandwheelError("correlation: lies between 0 and 1")
    mean = sum(time.mean for time in times)
    deviations = [math.sqrt(time.variance) for time in times]
    own = sum(deviation**2 for deviation in deviations)
    variance = own + correlation * (sum(deviations) ** 2 - own)
    log_variance = math.log1p(variance / mean**2)
    return TimeSpread(math.log(mean) - log_variance / 2, math.sqrt(log_variance))
