"""The places of one machine: each behind a key, a click and a command, and all fed from one look at the log."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui.screens.acting import Acting
from worklog_tui.screens.layout import LISTS, PLACES, made_later
from worklog_tui.widgets.items import OpenItems, still_open
from worklog_tui.widgets.last_time import LastTime
from worklog_tui.widgets.next_step import NextStep
from worklog_tui.widgets.places import Places
from worklog_tui.widgets.rows import Rows

if TYPE_CHECKING:
    from worklog_tui.bench.outlook import Outlook


class Placing(Acting):
    """A screen with places."""

    outlook: Outlook | None = None
    "The last look at the whole log."

    @property
    def at(self) -> str:
        """The place that is shown."""
        return self.query_one(Places).here

    def list_of(self, place: str) -> Rows | None:
        """The list of a place; None while it is not there."""
        if place in LISTS:
            return self.query_one(LISTS[place])
        found = self.query(f"#{place}-list")
        return found.first(Rows) if found else None

    def action_go(self, place: str) -> None:
        """To one of PLACES."""
        if self.list_of(place) is None:
            made = made_later(place)
            made.id = f"{place}-list"
            self.query_one("#log").mount(made, before="#side")
            self._fill(place)
        self.show_place(place)
        found = self.list_of(place)
        if found is not None:
            found.focus()

    def show_place(self, place: str) -> None:
        """Show a place; what has the focus keeps it."""
        for name in PLACES:
            self.set_class(name == place, f"at-{name}")
            if name not in LISTS and (found := self.list_of(name)) is not None:
                found.set_class(name == place, "here")
        self.set_class(place not in LISTS, "at-later")
        self.query_one(Places).show(place)

    def on_places_wanted(self, message: Places.Wanted) -> None:
        self.action_go(message.place)

    def to_list(self) -> None:
        """To the list that is shown, where single keys work."""
        found = self.list_of(self.at)
        if found is not None:
            found.focus()

    def show_outlook(self, outlook: Outlook) -> None:
        """What was worked out from the whole log is there."""
        self.outlook = outlook
        self.query_one(OpenItems).show_items(outlook.items, outlook.noticed)
        self.query_one(Places).count("items", still_open(outlook.items))
        self.query_one(NextStep).show_advice(outlook.advice)
        self.query_one(LastTime).show_recap(
            outlook.recap, outlook.last_words, outlook.advice, self.now(), outlook.before
        )  # fmt: skip
        for place in PLACES:
            if place not in LISTS:
                self._fill(place)

    def _fill(self, place: str) -> None:
        """Show what is known in a place that was made later."""
        from worklog_tui.widgets.fault_finding import FaultFinding
        from worklog_tui.widgets.machine_card import MachineCard
        from worklog_tui.widgets.readings import Readings
        from worklog_tui.widgets.viewers import ViewersRows

        found, known = self.list_of(place), self.outlook
        if known is None:
            return
        if isinstance(found, Readings):
            found.show_series(known.series)
        elif isinstance(found, FaultFinding):
            found.show_advice(known.advice, known.odd)
        elif isinstance(found, ViewersRows):
            if known.viewers is not None:
                found.show_viewers(known.viewers)
        elif isinstance(found, MachineCard):
            found.show_card(known.machine, known.told)
