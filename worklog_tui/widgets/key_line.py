"""The keys of a place in one line, or in as many as it takes; each can be clicked too."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from textual.content import Content
from textual.widget import Widget

from worklog_tui.widgets.literal import literal

if TYPE_CHECKING:
    from textual import events
    from textual.binding import ActiveBinding
    from textual.geometry import Size
    from textual.screen import Screen

GAP = 2
"Cells between two keys."
_SIGNS = {"slash": "/", "question_mark": "?"}
_PRINTED = {
    "enter": "Enter", "escape": "Esc", "space": "Space", "tab": "Tab", "up": "Up", "down": "Down", "left": "Left",
    "right": "Right", "slash": "/", "question_mark": "?",
}  # fmt: skip
ALL_KEYS = ("go.keys", "app.keys")
"Ids of the key that tells all keys: it stays when others find no room."


class Key(NamedTuple):
    """One key: how it is drawn, what it does in a word or two, and what is said of it."""

    key: str
    shown: str
    does: str
    tells: str
    stays: bool

    @property
    def width(self) -> int:
        """In cells."""
        return len(literal(f"{self.shown} {self.does}"))


class Stood(NamedTuple):
    """Where a key stands: its line, and its first cell."""

    line: int
    start: int
    key: Key


class KeyLine(Widget):
    """What can be pressed here: in one line, with what has no room left out, or wrapped."""

    DEFAULT_CSS = """
    KeyLine {
        height: 1;
        width: 1fr;
        color: $footer-description-foreground;
        background: $footer-background;
        &.wraps { height: auto; }
    }
    """

    def __init__(self, wraps: bool = False) -> None:
        super().__init__(classes="wraps" if wraps else None)
        self.wraps = wraps
        self.keys: tuple[Key, ...] = ()

    def on_mount(self) -> None:
        self.screen.bindings_updated_signal.subscribe(self, self._look)

    def _look(self, screen: Screen[object]) -> None:
        """The keys are other than before, or the focus is."""
        if not self.is_attached or screen is not self.screen or not screen.app.app_focus:
            return
        active = [one for one in usable(screen) if one.binding.show]
        found = {
            one.binding.action: Key(
                one.binding.key, self.app.get_key_display(one.binding), _plainly(one.binding.description), one.tooltip,
                one.binding.id in ALL_KEYS,
            )
            for one in reversed(active)
        }  # fmt: skip
        keys = tuple(reversed(found.values()))
        if keys != self.keys:
            self.keys = keys
            self.refresh(layout=self.wraps)

    def stood(self, width: int) -> list[Stood]:
        """Where the keys stand in so many cells."""
        return _in_lines(self.keys, width) if self.wraps else _in_one(self.keys, width)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """Lines that it takes."""
        return max((one.line + 1 for one in self.stood(width)), default=1)

    def render(self) -> Content:
        """The keys bold, what they do plain."""
        said, line, at = Content(""), 0, 0
        for one in self.stood(self.size.width):
            fill = "\n" * (one.line - line) + " " * (one.start - (at if one.line == line else 0))
            said += Content(fill) + literal(one.key.shown).stylize("bold") + literal(f" {one.key.does}")
            line, at = one.line, one.start + one.key.width
        return said

    def at(self, x: int, y: int) -> Key | None:
        """The key that stands there."""
        return next(
            (s.key for s in self.stood(self.size.width) if s.line == y and s.start <= x < s.start + s.key.width), None
        )

    def on_mouse_move(self, event: events.MouseMove) -> None:
        one = self.at(event.x, event.y)
        self.tooltip = literal(one.tells) if one is not None and one.tells else None

    def on_click(self, event: events.Click) -> None:
        one = self.at(event.x, event.y)
        if one is not None:
            self.app.simulate_key(one.key)


def _plainly(does: str) -> str:
    """With a small letter, as ours are: a menu of Textual's own has words of its own."""
    return f"{does[:1].lower()}{does[1:]}"


def usable(screen: Screen[object]) -> list[ActiveBinding]:
    """The keys that do something now: a field in use takes the signs that are words there, `/` and `?` too."""
    focused = screen.focused
    return [
        one
        for key, one in screen.active_bindings.items()
        if focused is None or not focused.check_consume_key(key, _SIGNS.get(key))
    ]


def named_key(key: str) -> str:
    """What is printed on a key: `Ctrl+Q`, `F5`, `Esc`, `Space`; a letter as it is."""
    *held, last = key.split("+")
    said = _PRINTED.get(last) or (last.upper() if held or last[1:].isdigit() else last)
    return "+".join([*(one.capitalize() for one in held), said])


def _in_one(keys: tuple[Key, ...], width: int) -> list[Stood]:
    """In one line, as far as there is room; the key that tells all keys stands last and is never left out."""
    last = [one for one in keys if one.stays]
    room = width - sum(one.width + GAP for one in last)
    found, at = [], 1
    for one in keys:
        if not one.stays and at + one.width <= room:
            found.append(Stood(0, at, one))
            at += one.width + GAP
    return [*found, *(Stood(0, at, one) for one in last)]


def _in_lines(keys: tuple[Key, ...], width: int) -> list[Stood]:
    found, line, at = [], 0, 1
    for one in keys:
        if at > 1 and at + one.width > width:
            line, at = line + 1, 1
        found.append(Stood(line, at, one))
        at += one.width + GAP
    return found
