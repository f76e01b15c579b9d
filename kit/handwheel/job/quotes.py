"""A quote given to the customer: kept as it was given, and a word where today's numbers differ."""

from __future__ import annotations

import attrs

from handwheel import __version__
from handwheel.estimate.time import Estimate
from handwheel.job.values import Job, Quote
from handwheel.numbers import showing


def give_quote(job: Job, estimate: Estimate, when: str) -> Job:
    """Return the job with a quote kept as it is given at a time (`when`, in words that sort)."""
    return attrs.evolve(job, quotes=[*job.quotes, _quote(estimate, when)])


def quote_today(quote: Quote, estimate: Estimate) -> str:
    """Return a word where today's numbers are not those that were quoted, else nothing."""
    today = _quote(estimate, quote.when)
    if (today.price, today.time) == (quote.price, quote.time):
        return ""
    return (
        f"Quoted on {quote.when}: {quote.price} for {quote.time}; today's numbers give {today.price} for "
        f"{today.time}. The quote stands as it was given."
    )


def _quote(estimate: Estimate, when: str) -> Quote:
    return Quote(when, showing.money(estimate.price, estimate.currency), showing.minutes(estimate.quoted), __version__)
