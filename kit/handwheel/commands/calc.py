"""`handwheel calc`: one calculation from the command line."""

from __future__ import annotations

import json

import click

from handwheel.numbers.faults import HandwheelError
from handwheel.worked import forms


@click.command()
@click.argument("name", required=False)
@click.argument("inputs", nargs=-1, metavar="[KEY=VALUE]...")
@click.option("--list", "list_all", is_flag=True, help="List the calculations, a line each.")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
@click.option("--working", is_flag=True, help="Show formula, numbers put in, result, source and cautions.")
@click.option(
    "--units",
    type=click.Choice(["in", "mm"]),
    default="in",
    show_default=True,
    help="Units of bare numbers and results.",
)
def command(
    name: str | None, inputs: tuple[str, ...], list_all: bool, as_json: bool, working: bool, units: str
) -> None:
    """Work out one calculation: handwheel calc dial-cut reduce=.250 division=.001 per-turn=.100 reads=travel."""
    if list_all:
        click.echo("\n".join(f"{one.name:<18} {one.title}: {one.usage()}" for one in forms.registry().values()))
        return
    if name is None:
        raise HandwheelError("calc: name a calculation; handwheel calc --list shows them")
    form = forms.form(name)
    if not inputs:
        raise HandwheelError(f"{name}: nothing is given; give {form.usage()}")
    answer = form.answer(units, **_pairs(inputs))
    if as_json:
        click.echo(json.dumps(answer.json(), allow_nan=False, ensure_ascii=False))
    elif working:
        click.echo(answer.worked().text())
    else:
        read = [f"read {each}" for each in answer.echoes]
        click.echo("\n".join([*read, answer.text(), *(f"Caution: {each}" for each in answer.cautions)]))


def _pairs(inputs: tuple[str, ...]) -> dict[str, object]:
    pairs: dict[str, object] = {}
    for each in inputs:
        key, sign, value = each.partition("=")
        key = key.strip().replace("_", "-")
        if not sign or not key or not value.strip():
            raise HandwheelError(f"{each!r} is no input; type key=value, such as diameter=1-3/8")
        if key in ("units", "self"):
            raise HandwheelError(f"{key!r} is no input; give the system as --units in or --units mm")
        if key in pairs:
            raise HandwheelError(f"{key} is given twice; give it once")
        pairs[key] = value.strip()
    return pairs
