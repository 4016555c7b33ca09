"""The places of a screen in one line, to click or to read which one is shown."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from textual.content import Content
from textual.message import Message
from textual.widget import Widget

from worklog_tui.widgets.literal import literal

if TYPE_CHECKING:
    from collections.abc import Mapping

    from textual import events


_WAYS = (
    ("name", "short", " "), ("name", "brief", " "), ("short", "brief", " "), ("short", "brief", ""),
    ("brief", "brief", ""), ("name", "key", " "), ("short", "key", ""),
)  # fmt: skip
"From the most telling to the shortest: how the place that is shown is called, how the others, what stands before them."


class Named(Protocol):
    """How a place is called."""

    @property
    def name(self) -> str:
        """In full."""

    @property
    def short(self) -> str:
        """In short."""

    @property
    def brief(self) -> str:
        """In one short word that begins with the key."""

    @property
    def key(self) -> str:
        """The key that leads to it."""


class Places(Widget):
    """All names; the one that is shown stands in brackets. With less room they are shorter, at last only keys."""

    DEFAULT_CSS = """
    Places { height: 1; width: 1fr; color: $text-muted; }
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

    def show(self, place: str) -> None:
        """Mark a place as the one that is shown."""
        self.here = place
        self.refresh()

    def count(self, place: str, number: int) -> None:
        """Say how many things stand in a place."""
        self.counts[place] = number
        self.refresh()

    def texts(self) -> dict[str, str]:
        """What stands for each place, one behind the other."""
        ways = [self._named(*way) for way in _WAYS]
        return next((texts for texts in ways if sum(map(len, texts.values())) <= self.size.width), ways[-1])

    def render(self) -> Content:
        """The names, that of the place shown bold, the key of each underlined."""
        drawn = Content("")
        for place, text in self.texts().items():
            named = key_underlined(text, self.places[place].key)
            drawn += named.stylize("bold $text") if place == self.here else named
        return drawn

    def starts(self) -> dict[str, int]:
        """The first cell of each name."""
        found, at = {}, 0
        for place, text in self.texts().items():
            found[place] = at
            at += len(text)
        return found

    def at(self, x: int) -> str | None:
        """The place whose name stands in that cell."""
        texts = self.texts()
        return next((one for one, start in self.starts().items() if start <= x < start + len(texts[one])), None)

    def on_mouse_move(self, event: events.MouseMove) -> None:
        place = self.at(event.x)
        self.tooltip = literal(f"Show: {self.places[place].name}") if place else None

    def on_click(self, event: events.Click) -> None:
        place = self.at(event.x)
        if place:
            self.post_message(self.Wanted(place))

    def _named(self, here: str, others: str, before: str) -> dict[str, str]:
        """Each with its name of that length, the one that is shown with another."""
        found = {}
        for place, named in self.places.items():
            said = getattr(named, here if place == self.here else others)
            number = self.counts.get(place, 0)
            text = f"{said} {number}" if number else said
            after = "" if before else " "
            found[place] = f"[{text}]{after}" if place == self.here else f"{before}{text} "
        return found


def key_underlined(text: str, key: str) -> Content:
    """The text with the first letter underlined of the word that begins with the key."""
    at = next((at for at in range(1, len(text)) if text[at] == key and text[at - 1] in " ["), 1)
    return literal(text).stylize("underline", at, at + 1)
