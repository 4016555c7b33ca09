"""The keys of a place on one small page."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import ActiveBinding, Binding, BindingType
from textual.containers import VerticalScroll
from textual.widgets import Static

from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.literal import literal

HOW = "Arrow and page keys go through a list. In the note line letters are words: Esc leaves it. Esc closes this page."
LEFT_OUT = ("app.commands", "app.quit-anywhere", "app.keys", "go.keys", "go.back")


class KeysScreen(OneAnswer[None]):
    """Shows which key does what; any key that closes things closes it."""

    DEFAULT_CSS = """
    KeysScreen {
        align: center middle;
        & > VerticalScroll {
            width: 66; max-width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 2;
            border: solid $foreground 30%;
        }
        Static { height: auto; }
        .asks { text-style: bold; }
        .how { color: $text-muted; margin-bottom: 1; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,question_mark,enter,q", "dismiss", "close", id="keys.close", tooltip="Close this page"),
    ]

    def __init__(self, keys: Sequence[tuple[str, str]]) -> None:
        """Keys, each with what it does."""
        super().__init__()
        self._keys = keys

    def compose(self) -> ComposeResult:
        wide = max((len(key) for key, _ in self._keys), default=0)
        with VerticalScroll():
            yield Static("Keys here", classes="asks", markup=False)
            yield Static(literal(HOW), classes="how", markup=False)
            yield Static(literal("\n".join(f"{key:>{wide}}  {told}" for key, told in self._keys)), markup=False)


def told_keys(active: Sequence[ActiveBinding], names: dict[str, str]) -> list[tuple[str, str]]:
    """The keys that have an id of ours, each once; `names` says how a key is written."""
    found: dict[str, tuple[str, str]] = {}
    for one in active:
        name = one.binding.id or ""
        known = name in found or name in LEFT_OUT or name.startswith("rows.")
        if name and one.enabled and not known:
            found[name] = (names.get(one.binding.key, one.binding.key), one.tooltip or one.binding.description)
    places = [name for name in found if name.startswith("go.")]
    return [found[name] for name in dict.fromkeys([*places, *found])]
