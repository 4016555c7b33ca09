"""Asks for a few words, with those of now in place: one line or several, Enter keeps them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.widgets import Input, Label, Static

from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.field import Field
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.literal import literal


class Asking(OneAnswer[dict[str, str] | None]):
    """Fields by their names; the answer holds what stands in each, None when the person left it."""

    DEFAULT_CSS = """
    Asking {
        align: center bottom;
        & > Vertical {
            width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 1;
            border-top: solid $foreground 30%;
        }
        .asks { text-style: bold; height: auto; }
        .wrong { height: auto; display: none; }
        .field { height: 1; }
        Label { width: 19; }
        Input { width: 1fr; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "keep", "keep it", id="asking.keep", tooltip="Keep what stands here", priority=True),
        Binding("escape", "dismiss(None)", "leave it", id="asking.leave", tooltip="Change nothing"),
    ]

    def __init__(
        self,
        asks: str,
        fields: Mapping[str, str],
        labels: Mapping[str, str] | None = None,
        wrong: Callable[[dict[str, str]], str] | None = None,
    ) -> None:
        """What is asked; the fields with what stands in them, and the words before them where they need some.

        `wrong` tells what is wrong with an answer, if anything: then it is asked on.
        """
        super().__init__()
        self._wrong = wrong
        self._asks, self._fields, self._labels = asks, fields, labels or {}

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Static(literal(self._asks), classes="asks", markup=False)
            for name, words in self._fields.items():
                with Horizontal(classes="field"):
                    if name in self._labels:
                        yield Label(literal(self._labels[name]), markup=False)
                    yield Field(literal(words).plain, id=f"field-{name}", compact=True, select_on_focus=False)
            yield Static("", classes="wrong", markup=False)
            yield KeyLine(wraps=True)

    def on_mount(self) -> None:
        first = self.query(Input).first()
        first.focus()
        first.cursor_position = len(first.value)

    def action_keep(self) -> None:
        given = {name: self.query_one(f"#field-{name}", Input).value.strip() for name in self._fields}
        wrong = self._wrong(given) if self._wrong is not None else ""
        if wrong:
            said = self.query_one(".wrong", Static)
            said.display = True
            said.update(literal(wrong))
        else:
            self.dismiss(given)
