"""The command line: a thin group whose commands are loaded when they are called."""

from __future__ import annotations

import importlib
import sys
from typing import Any

import click

from handwheel import __version__
from handwheel.numbers.faults import HandwheelError

COMMANDS = {
    "calc": "handwheel.commands.calc",
    "demo": "handwheel.commands.demo",
    "dry-run": "handwheel.commands.dry_run",
}
"""Each command and the module that holds it, as `command`."""


class _Group(click.Group):
    """A group that imports a command's module only when the command is called or described."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        found: click.Command = importlib.import_module(COMMANDS[cmd_name]).command
        return found


@click.group(cls=_Group, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="handwheel")
def group() -> None:
    """From a worn shaft's readings to a proven sheet you carry to the lathe."""


def main(arguments: list[str] | None = None) -> Any:
    """Run the command line; what makes no sense ends with status 2 and one line on standard error."""
    try:
        status = group.main(arguments, prog_name="handwheel", standalone_mode=False)
    except click.exceptions.Abort:
        _refuse("stopped")
    except click.exceptions.NoArgsIsHelpError as help_wanted:
        click.echo(help_wanted.format_message())
        sys.exit(0)
    except click.ClickException as fault:
        _refuse(fault.format_message())
    except HandwheelError as fault:
        _refuse(str(fault))
    sys.exit(status if isinstance(status, int) else 0)


def _refuse(sentence: str) -> None:
    click.echo(" ".join(sentence.split()), err=True)
    sys.exit(2)
