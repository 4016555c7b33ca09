"""The machine card put right from the keys: what the machine is, and what its figures should be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui.screens import deeds
from worklog_tui.screens.placing import Placing

if TYPE_CHECKING:
    from worklog_tui.model import Machine, SpecifiedValue

LABELS = {"what": "which figure", "text": "should be", "source": "who says so"}
ASKS = "What should it be? Such as plug gap, 0.025 in, handbook."
ASKS_AGAIN = "What should it be? Empty: it comes off the card."


class CardActs(Placing):
    """A screen whose keys change the machine card."""

    def action_edit_card(self) -> None:
        """Change the figure pointed at, or else what the machine is."""
        from worklog_tui.screens.card import CardScreen
        from worklog_tui.widgets.machine_card import MachineCard

        if self.outlook is None:
            return
        figure = self.query_one(MachineCard).figure
        if figure is not None:
            self._ask_figure(self.outlook.machine, figure)
            return

        def made(card: Machine | None) -> None:
            if card is not None:
                self.act(deeds.card(card))

        self.app.push_screen(CardScreen(self.outlook.machine), made)

    def action_add_figure(self) -> None:
        """Put on the card what a figure should be."""
        if self.outlook is not None:
            self._ask_figure(self.outlook.machine)

    def _ask_figure(self, machine: Machine, figure: SpecifiedValue | None = None) -> None:
        from worklog_tui.screens.asking import Asking

        was = figure.subject.replace("_", " ") if figure is not None else ""
        now = {"what": was, "text": figure.text if figure else "", "source": figure.source if figure else ""}

        def wrong(given: dict[str, str]) -> str:
            if not given["what"]:
                return "Say which figure it is, such as plug gap."
            return "" if given["text"] or figure is not None else "Say how much it should be, with its unit."

        def answer(given: dict[str, str] | None) -> None:
            if given is not None and given != now:
                self.act(deeds.figure(machine, given, was))

        self.app.push_screen(Asking(ASKS_AGAIN if figure is not None else ASKS, now, LABELS, wrong), answer)
