"""The places of a screen in one line, to click or to read which one is shown."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Protocol

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.message import Message
from textual.widgets import Static

from worklog_tui.widgets.literal import literal


class Named(Protocol):
    """How a place is called."""

    @property
    def name(self) -> str:
        """In full."""

    @property
    def short(self) -> str:
        """In short."""

    @property
    def key(self) -> str:
        """The key that leads to it."""


class PlaceName(Static):
    """One name."""

    DEFAULT_CSS = """
    PlaceName { width: auto; color: $text-muted; }
    PlaceName.here { color: $text; text-style: bold; }
    """

    def __init__(self, place: str, name: str) -> None:
        super().__init__(markup=False, id=f"place-{place}")
        self.place = place
        self.tooltip = literal(f"Show: {name}")

    def on_click(self) -> None:
        self.post_message(Places.Wanted(self.place))


class Places(Horizontal):
    """All names; the one that is shown stands in brackets, in full. In a narrow place keys stand for names."""

    DEFAULT_CSS = """
    Places { height: 1; }
    """

    def __init__(self, places: Mapping[str, Named]) -> None:
        """The places, in the order in which they stand."""
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
        for place, named in self.places.items():
            yield PlaceName(place, named.name)

    def on_mount(self) -> None:
        self._draw()

    def on_resize(self) -> None:
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
        texts = {place: self._text(place, named.short) for place, named in self.places.items()}
        if self.size.width and sum(map(len, texts.values())) > self.size.width:
            texts = {place: self._text(place, named.key) for place, named in self.places.items()}
        for name in self.query(PlaceName):
            name.set_class(name.place == self.here, "here")
            name.update(key_underlined(texts[name.place], self.places[name.place].key))

    def _text(self, place: str, short: str) -> str:
        said = self.places[place].name if place == self.here else short
        number = self.counts.get(place, 0)
        text = f"{said} {number}" if number else said
        return f"[{text}]" if place == self.here else f" {text} "


def key_underlined(text: str, key: str) -> Content:
    """The text with the first letter underlined of the word that begins with the key."""
    at = next((at for at in range(1, len(text)) if text[at] == key and text[at - 1] in " ["), 1)
    return literal(text).stylize("underline", at, at + 1)
