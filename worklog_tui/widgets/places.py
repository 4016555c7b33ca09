"""The names of the places of a screen, in one line, to click or to read which one is shown."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.message import Message
from textual.widgets import Static

from worklog_tui.widgets.literal import literal


class PlaceName(Static):
    """One name."""

    DEFAULT_CSS = """
    PlaceName { width: auto; margin-right: 3; color: $text-muted; }
    PlaceName.here { color: $text; text-style: bold; }
    """

    def __init__(self, place: str, name: str) -> None:
        super().__init__(markup=False, id=f"place-{place}")
        self.place = place
        self.place_name = name
        self.tooltip = literal(f"Show: {name}")

    def on_click(self) -> None:
        self.post_message(Places.Wanted(self.place))


class Places(Horizontal):
    """All names; the one that is shown stands in brackets."""

    DEFAULT_CSS = """
    Places { height: 1; }
    """

    def __init__(self, places: dict[str, str]) -> None:
        """Names by place, in the order in which they stand."""
        super().__init__()
        self.places = places
        self.here = next(iter(places))
        self.counts: dict[str, int] = {}

    class Wanted(Message):
        """A name was clicked."""

        def __init__(self, place: str) -> None:
            super().__init__()
            self.place = place

    def compose(self) -> ComposeResult:
        for place, name in self.places.items():
            yield PlaceName(place, name)

    def on_mount(self) -> None:
        self._draw()

    def show(self, place: str) -> None:
        """Mark a place as the one that is shown."""
        self.here = place
        self._draw()

    def count(self, place: str, number: int) -> None:
        """Say how many things stand in a place."""
        self.counts[place] = number
        self._draw()

    def _draw(self) -> None:
        for name in self.query(PlaceName):
            number = self.counts.get(name.place, 0)
            text = f"{name.place_name} {number}" if number else name.place_name
            name.set_class(name.place == self.here, "here")
            name.update(literal(f"[{text}]" if name.place == self.here else f" {text} "))
