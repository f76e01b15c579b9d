"""`handwheel calc`: one calculation from the command line."""

from __future__ import annotations

import json

import click

from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.reading import EXAMPLES
from handwheel.worked import forms
from handwheel.worked.result import Kind, shown_unit


@click.command(add_help_option=False)
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
@click.option("-h", "--help", "help_wanted", is_flag=True, help="Show this; after a NAME, what it takes and gives.")
@click.pass_context
def command(
    context: click.Context,
    name: str | None,
    inputs: tuple[str, ...],
    list_all: bool,
    as_json: bool,
    working: bool,
    units: str,
    help_wanted: bool,
) -> None:
    """Work out one calculation: handwheel calc dial-cut reduce=.250 division=.001 per-turn=.100 reads=travel."""
    if help_wanted:
        click.echo(context.get_help() if name is None else _described(forms.form(name), units))
        return
    if list_all:
        width = max(map(len, forms.registry()))
        click.echo("\n".join(f"{one.name:<{width}}  {one.title}: {one.usage()}" for one in forms.registry().values()))
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


def _described(form: forms.Form, units: str) -> str:
    """Return what a calculation takes and gives, a line each."""
    wanted = {name for one in form.calculation.given for name in one}
    takes = {
        field.name: field.meaning + _typed_as(field.kind) + ("" if field.python_name in wanted else "; may be left out")
        for field in form.fields
    }
    gives = {name: f"{words} [{_unit(kind, units)}]" for name, (kind, words) in form.results().items()}
    width = max(map(len, (*takes, *gives)))
    lines = [form.title, f"Give {form.usage()}."]
    for title, rows in (("Takes", takes), ("Gives", gives)):
        lines += ["", title, *(f"  {name:<{width}}  {words}" for name, words in rows.items())]
    return "\n".join(lines)


def _typed_as(kind: Kind) -> str:
    if kind.choices:
        return f" ({' or '.join(kind.choices)})"
    return f" ({EXAMPLES[kind.name]})" if kind.name in EXAMPLES else ""


def _unit(kind: Kind, units: str) -> str:
    return {"text": "text", "count": "whole number"}.get(kind.name) or shown_unit(kind.name, units)


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
