"""The part's panel: the size table to type in, the side view beside it, and the dial numbers that follow."""

from __future__ import annotations

import html
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from handwheel.job.values import Job
from handwheel.numbers.faults import HandwheelError
from handwheel.panels.part_state import PartState
from handwheel.sheets.bench import lines_html

_WORDS = {"to": "to", "diameter": "Ø", "large": "Ø large", "small": "Ø small", "size": "size"}


class PartPanel(widgets.VBox):
    """A thin view over a PartState; every number comes from the state."""

    def __init__(self, state: PartState, clock: Callable[[], datetime]) -> None:
        """Lay out a field for each typed size."""
        self.state = state
        self._clock = clock
        self._fields: dict[tuple[str, str], Any] = {}
        for (feature, name), typed in state.fields.items():
            entry = widgets.Text(
                value=typed,
                description=f"{feature} {_WORDS[name]}",
                continuous_update=False,
                style={"description_width": "13em"},
                layout={"width": "27em"},
            )
            entry.observe(lambda change, key=(feature, name): self._typed(key, change["new"]), "value")
            self._fields[feature, name] = entry
        self._said = widgets.HTML()
        self._drawing = widgets.HTML(layout={"width": "100%"})
        self._dials = widgets.HTML()
        self._keep = widgets.Button(description="Keep in the job", tooltip="save it; the version before it is kept too")
        self._keep.on_click(lambda _: self._kept())
        table = widgets.VBox([*self._fields.values()], layout={"flex": "0 0 28em"})
        beside = widgets.VBox(
            [widgets.HBox([self._keep, self._said]), self._drawing, self._dials],
            layout={"flex": "1 1 auto", "min_width": "0"},
        )
        super().__init__([widgets.HBox([table, beside])])
        self._show()

    def _typed(self, key: tuple[str, str], text: str) -> None:
        self.state.type_over(*key, text)
        self._show()

    def _kept(self) -> None:
        try:
            self.state.keep(self._clock())
        except HandwheelError as fault:
            self.state.sentences = (str(fault),)
        self._show()

    def _show(self) -> None:
        said = " ".join(self.state.sentences)
        kept = "Typed over, not yet kept in the job." if self.state.changed else "As kept in the job."
        self._said.value = f'<p role="status"><b>{html.escape(said) if said else html.escape(kept)}</b></p>'
        self._drawing.value = self.state.drawing()
        self._dials.value = (
            f"<p>The dials for <b>{html.escape(self.state.feature)}</b>:</p>{lines_html(self.state.lines())}"
        )
        self._keep.disabled = not self.state.changed


def for_part(job: Job, folder: Path, clock: Callable[[], datetime] = lambda: datetime.now().astimezone()) -> PartPanel:
    """Return the panel for a job's part.

    Raises:
        HandwheelError: the job as saved can't be planned.
    """
    return PartPanel(PartState(job, folder), clock)
