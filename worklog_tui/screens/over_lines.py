"""One act over a run of lines: what they are of, whose they are, when they were said, or a word heard wrong in them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Static

from worklog_tui.screens import deeds
from worklog_tui.screens.deeds import Deed
from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.literal import literal

FIELDS = {
    "subject": ("What are these lines of? Such as: left carburettor", {"subject": ""}, {}),
    "machine": ("Which machine are they of?", {"machine": ""}, {}),
    "seconds": ("By how much were they said later? -1:30 is a minute and a half earlier.", {"later": ""},
                {"later": "later by"}),
    "day": ("On which day were they said? Such as yesterday, 12 April or 2031-04-12.", {"day": ""}, {}),
    "word": ("Which word was heard wrong, and what was meant?", {"heard": "", "meant": ""}, {"heard": "heard",
             "meant": "meant"}),
}  # fmt: skip
"What is asked for each act, the fields, and the words before them."


class OverLines(OneAnswer[Deed | None]):
    """The answer is what to do, or nothing."""

    DEFAULT_CSS = """
    OverLines {
        align: center bottom;
        & > Vertical {
            width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 1;
            border-top: solid $foreground 30%;
        }
        Static { height: auto; }
        .asks { text-style: bold; }
        .told { color: $text-muted; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("s", "ask('subject')", "what they are of", id="lines.subject", tooltip="The part that they are all of"),
        Binding("w", "ask('word')", "a word heard wrong", id="lines.word", tooltip="Put one word right in all of them"),
        Binding("t", "ask('seconds')", "time", id="lines.time", tooltip="They were said earlier or later"),
        Binding("d", "ask('day')", "day", id="lines.day", tooltip="They were said on another day"),
        Binding("m", "ask('machine')", "other machine", id="lines.machine", tooltip="They are of another machine"),
        Binding("x", "strike", "strike out", id="lines.strike", tooltip="Strike them all out"),
        Binding("escape,q", "dismiss(None)", "leave them", id="lines.leave", tooltip="Change nothing"),
    ]

    def __init__(self, notes: Sequence[str], first: str, last: str) -> None:
        """The notes by their uids, and the words of the first and the last."""
        super().__init__()
        self.notes, self._ends = notes, (first, last)

    def compose(self) -> ComposeResult:
        count, ends = len(self.notes), "\n".join(f"“{words}”" for words in dict.fromkeys(self._ends))
        with Vertical():
            yield Static(literal("One line" if count == 1 else f"{count} lines together"), classes="asks", markup=False)
            yield Static(literal(ends), classes="told", markup=False)
            yield KeyLine(wraps=True)

    def action_ask(self, what: str) -> None:
        """Ask what it takes."""
        from worklog_tui.screens.asking import Asking

        asks, fields, labels = FIELDS[what]

        def answer(given: dict[str, str] | None) -> None:
            if given is not None and all(given.values()):
                self.dismiss(deeds.over_lines(what, self.notes, *given.values()))

        self.app.push_screen(Asking(asks, fields, labels), answer)

    def action_strike(self) -> None:
        """Strike them out; it can be taken back."""
        self.dismiss(deeds.over_lines("strike", self.notes))
