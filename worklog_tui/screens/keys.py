"""The keys of a place on one small page."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import ActiveBinding, Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Static

from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.literal import literal
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

HOW = "Arrow and page keys go through a list. In the note line letters are words: Esc leaves it. Esc closes this page."
LEFT_OUT = ("app.commands", "app.quit-anywhere", "app.keys", "go.keys", "go.back")


class KeyRows(Rows):
    """Keys, each with what it does."""

    def __init__(self, keys: Sequence[tuple[str, str]]) -> None:
        super().__init__("No key does anything here.")
        self.margin = 4 + max((len(key) for key, _ in keys), default=0)
        self.show(Row.of(told, key) for key, told in keys)


class KeysScreen(OneAnswer[None]):
    """Shows which key does what; any key that closes things closes it."""

    DEFAULT_CSS = """
    KeysScreen {
        align: center middle;
        & > Vertical {
            width: 66; max-width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 1;
            border: solid $foreground 30%;
        }
        KeyRows { height: auto; max-height: 100%; background: $surface; }
        Static { height: auto; }
        .asks { text-style: bold; }
        .how { color: $text-muted; }
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
        with Vertical():
            yield Static("Keys here", classes="asks", markup=False)
            yield Static(literal(HOW), classes="how", markup=False)
            yield KeyRows(self._keys)

    def on_mount(self) -> None:
        self.query_one(KeyRows).focus()

    def on_rows_chosen(self, message: Rows.Chosen) -> None:
        message.stop()
        self.dismiss(None)


def told_keys(active: Sequence[ActiveBinding], names: dict[str, str]) -> list[tuple[str, str]]:
    """What has an id of ours, each once with all its keys, the shortest first; `names` says how a key is written."""
    found: dict[str, tuple[str, str]] = {}
    for one in active:
        name, key = one.binding.id or "", names.get(one.binding.key, one.binding.key)
        if not name or not one.enabled or name in LEFT_OUT or name.startswith("rows."):
            continue
        before = [found[name][0]] if name in found else []
        keys = " ".join(sorted([*before, key], key=len))
        found[name] = (keys, one.tooltip or one.binding.description)
    places = [name for name in found if name.startswith("go.")]
    return [found[name] for name in dict.fromkeys([*places, *found])]
