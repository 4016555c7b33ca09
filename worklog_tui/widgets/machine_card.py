"""The machine card: what it is, what its figures should be, each with who says so."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType

from worklog_tui.reports.sentence import sentence
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows
from worklog_tui.widgets.sections import section

if TYPE_CHECKING:
    from worklog_tui.model import Machine, Number, SpecifiedValue, Trait


class MachineCard(Rows):
    """The card, and what the talk says of the machine."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("e", "screen.edit_card", "edit", id="shown-card.edit", tooltip="Change what the card says"),
        Binding(
            "a",
            "screen.add_figure",
            "add a figure",
            id="shown-card.add",
            tooltip="Say what should be measured, such as the plug gap",
        ),
    ]

    def __init__(self) -> None:
        super().__init__("Looking at the card …")
        self._figures: dict[str, SpecifiedValue] = {}

    @property
    def figure(self) -> SpecifiedValue | None:
        """The figure pointed at."""
        return self._figures.get(self.row.key) if self.row is not None else None

    def action_choose(self) -> None:
        """Enter changes a figure; what was said of the machine leads to its note."""
        if self.figure is not None:
            self.call_later(self.run_action, "screen.edit_card")
        else:
            super().action_choose()

    def show_card(self, machine: Machine, told: Sequence[Trait | Number]) -> None:
        """Show a card; `told` is what was said of the machine, later words first."""
        facts = [
            ("kind", machine.kind), ("fuel", machine.fuel), ("ignition", machine.ignition),
            ("cylinders", str(machine.cylinders or "")),
            ("firing order", " ".join(map(str, machine.firing_order if len(machine.firing_order) > 1 else ()))),
            ("pints and gallons", machine.measures),
        ]  # fmt: skip
        rows = section(machine.name, (Row.of(f"{name}: {value}") for name, value in facts if value))
        missing = [name for name, value in facts[:3] if not value]
        if missing:
            listed = ", ".join(missing)
            rows.append(Row.of(f"Not known: {listed}. If an engine drives it, press e: the advice depends on that."))
        self._figures = {f"figure {nth}": value for nth, value in enumerate(machine.specified)}
        rows += section("Should be", (_specified(value, key) for key, value in self._figures.items()))
        if not machine.specified:
            rows.append(Row.of("No figures yet. a: what a gap or a pressure should be, for the readings."))
        rows += section("Said of it", (Row.of(sentence(one), key=one.main.note) for one in reversed(told)))
        self.show(rows)


def _specified(value: SpecifiedValue, key: str) -> Row:
    below = value.source if value.quantity else "no number with a unit was found in it; it is kept as text"
    return Row.of(f"{value.subject.replace('_', ' ')}: {value.text}", below=below, key=key)
