"""Adds what was not read from a note: said in the person's own words, or told piece by piece where those do not do."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Input, Static

from worklog_tui.screens import deeds
from worklog_tui.screens.background import Latest, Rest, reason
from worklog_tui.screens.looking_up import LookingUp, Preview
from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.field import Field
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.kinds_told import KINDS_TOLD
from worklog_tui.widgets.literal import literal
from worklog_tui.widgets.understood import Understood

if TYPE_CHECKING:
    from worklog_tui.screens.deeds import Deed

UNTOLD = "Not understood by itself; Enter asks what it is."
_BELOW = """
    & > Vertical {
        width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 1;
        border-top: solid $foreground 30%;
    }
    .asks { text-style: bold; height: auto; }
    .told { height: auto; color: $text-muted; }
"""


class Adding(OneAnswer["Deed | None"]):
    """Takes words and says what it understands; the answer adds that."""

    DEFAULT_CSS = f"Adding {{ align: center bottom; {_BELOW} }}"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "add", "add it", id="adding.add", tooltip="Add what was understood", priority=True),
        Binding("escape", "dismiss(None)", "leave it", id="adding.leave", tooltip="Add nothing"),
    ]

    def __init__(self, errands: LookingUp, note: str) -> None:
        super().__init__()
        self._errands, self._note = errands, note
        self._looks = Latest[str, Preview](self, lambda words: errands.heard(note, words), self._show, self._failed)
        self._stop = Rest(self, 0.05, lambda: self._looks.want(self._words))
        self._adds = False
        "Enter was pressed: what is understood of the words is added as soon as it is known."

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Static("What was not read? Say it in your own words.", classes="asks", markup=False)
            yield Field(placeholder="such as: the spring is worn", compact=True)
            yield Understood()
            yield KeyLine(wraps=True)

    def on_mount(self) -> None:
        self.query_one(Input).focus()

    @property
    def _words(self) -> str:
        return self.query_one(Input).value.strip()

    def on_input_changed(self) -> None:
        self._adds = False
        self._stop.want()

    def action_add(self) -> None:
        """What is understood of these words is added; where it is nothing, the person says what it is."""
        if self._words:
            self._adds = True
            self._looks.want(self._words)

    def _show(self, words: str, seen: Preview) -> None:
        if words != self._words:
            return
        self.query_one(Understood).hear(words, seen.facts, seen.unsure, UNTOLD)
        if not self._adds:
            return
        self._adds = False
        if seen.facts or seen.unsure:
            self.dismiss(deeds.add_heard(self._note, words))
        else:
            self.app.push_screen(WhatItIs(self._errands, self._note, words), self._told)

    def _told(self, deed: Deed | None) -> None:
        if deed is not None:
            self.dismiss(deed)

    def _failed(self, _: str, error: Exception) -> None:
        self.query_one(Understood).say(f"{reason(error)}.")


class WhatItIs(OneAnswer["Deed | None"]):
    """What words are that were not understood: one key, then what belongs to it."""

    DEFAULT_CSS = f"WhatItIs {{ align: center bottom; {_BELOW} }}"
    BINDINGS: ClassVar[list[BindingType]] = [
        *(
            Binding(key, f"ask('{key}')", one.does, id=f"what.{one.does.replace(' ', '-')}", tooltip=one.asks)
            for key, one in KINDS_TOLD.items()
        ),
        Binding("escape,q", "dismiss(None)", "leave it", id="what.leave", tooltip="Back to the words"),
    ]

    def __init__(self, errands: LookingUp, note: str, words: str) -> None:
        super().__init__()
        self._errands, self._note, self._words = errands, note, words

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Static("What is that?", classes="asks", markup=False)
            yield Static(literal(f"“{self._words}”"), classes="told", markup=False)
            yield KeyLine(wraps=True)

    def action_ask(self, key: str) -> None:
        """Ask what belongs to it."""
        from worklog_tui.screens.asking import Asking

        one = KINDS_TOLD[key]

        def answer(given: dict[str, str] | None) -> None:
            if given is not None:
                self.dismiss(deeds.add_told(self._note, one.kind, given | dict(one.fixed)))

        fields = {name: self._words if name == one.takes else "" for name, _ in one.fields}

        def wrong(given: dict[str, str]) -> str:
            return self._errands.not_told(one.kind, given)

        self.app.push_screen(Asking(one.asks, fields, dict(one.fields), wrong), answer)
