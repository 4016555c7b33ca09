"""The places of one machine: each behind a key, a click and a command, and all fed from one look at the log."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from worklog_tui.screens.background import Latest, Queue
from worklog_tui.screens.dividing import Dividing
from worklog_tui.screens.errands import Errands
from worklog_tui.screens.layout import PLACES, STANDING, beside, made_later
from worklog_tui.widgets.places import Places
from worklog_tui.widgets.rows import Rows
from worklog_tui.widgets.timeline import Timeline

if TYPE_CHECKING:
    from worklog_tui.bench.outlook import Outlook
    from worklog_tui.widgets.note_line import NoteLine
    from worklog_tui.widgets.readings import Readings

ADVISED = ("step", "faults", "viewers")
"Places that wait for the advice; the others show what stands in the log."


class Placing(Dividing):
    """A screen with places."""

    outlook: Outlook | None = None
    "The last look at the whole log."

    def __init__(self, errands: Errands, machine: str) -> None:
        super().__init__(errands, machine)
        self._units = Latest[None, str](self, lambda _: errands.units(), self._told_in, self.unread)
        self._chooses = Queue[str, None](
            self, lambda units: errands.choose("units", units), lambda *_: None, self.unread
        )  # fmt: skip
        self._when_empty: dict[str, str] = {}
        "What lists that wait for the look at the log say when there is nothing for them."

    async def complete(self) -> None:
        """What the first paint did without."""
        await self.query_one("#log").mount(beside())
        for place in ("items", "step"):
            self._wait(place)

    @property
    def at(self) -> str:
        """The place that is shown."""
        return self.query_one(Places).here

    def list_of(self, place: str) -> Rows | None:
        """The list of a place; None while it is not there."""
        found = self.query(f"#{place}-list")
        return found.first(Rows) if found else None

    def action_go(self, place: str) -> None:
        """To one of PLACES."""
        self.show_place(place)
        found = self.list_of(place)
        if found is not None:
            found.focus()

    def show_place(self, place: str) -> None:
        """Show a place; what has the focus keeps it."""
        if place not in STANDING and self.list_of(place) is None:
            self.query_one("#log").mount(made_later(place), after=self.query_one(Timeline))
            self._wait(place)
            self._fill(place)
            if place == "readings":
                self._units.want(None)
        for name in PLACES:
            self.set_class(name == place, f"at-{name}")
            if name not in STANDING and (found := self.list_of(name)) is not None:
                found.set_class(name == place, "here")
        self.set_class(place not in STANDING, "at-later")
        self.query_one(Places).show(place)

    def _told_in(self, _: None, units: str) -> None:
        """The readings are told as the person had them told last."""
        from worklog_tui.widgets.readings import Readings

        if units:
            self.query_one(Readings).tell_in(units)

    def on_readings_told(self, message: Readings.Told) -> None:
        """Other units hold at the next start too."""
        self._chooses.want(message.units)

    def _wait(self, place: str) -> None:
        """Until the whole log was looked at, an empty list does not say that there is nothing."""
        found = self.list_of(place)
        if found is not None and (self.outlook is None or not self.outlook.whole):
            self._when_empty[place], found.empty = found.empty, "Working it out …"

    def on_places_wanted(self, message: Places.Wanted) -> None:
        self.action_go(message.place)

    def on_note_line_looked(self, message: NoteLine.Looked) -> None:
        """The list that is shown goes a screenful up or down, while the note line keeps the keys."""
        found = self.list_of(self.at)
        if found is not None:
            found.action_page(message.by)

    def to_list(self) -> None:
        """To the list that is shown, where single keys work."""
        found = self.list_of(self.at)
        if found is not None:
            found.focus()

    def show_outlook(self, outlook: Outlook) -> None:
        """What was worked out from the whole log is there, or the first part of it: then the last advice stays."""
        from worklog_tui.widgets.items import still_open

        before, advised = self.outlook, outlook.whole
        if before is not None and not outlook.whole:
            outlook = replace(
                outlook, advice=before.advice, odd=before.odd, cautions=before.cautions, viewers=before.viewers,
                whole=before.whole,
            )  # fmt: skip
        self.outlook = outlook
        self.query_one(Places).count("items", still_open(outlook.items))
        for place in PLACES:
            if advised or place not in ADVISED:  # the last advice stands there already
                self._fill(place)

    def _fill(self, place: str) -> None:
        """Show what is known in a place."""
        from worklog_tui.screens.filled import fill

        found, known = self.list_of(place), self.outlook
        if known is None or found is None or (place in ADVISED and not known.whole):
            return
        found.empty = self._when_empty.pop(place, found.empty)
        found.refresh()
        fill(place, found, known, self.now())
