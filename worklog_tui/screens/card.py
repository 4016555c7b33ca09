"""A card for a new machine: only the name is needed."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.widgets import Button, Input, Label, Select, Static

from worklog_tui.model import Machine
from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.field import Field
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.literal import literal

FUELS = ("petrol", "diesel", "paraffin", "gas", "none")
IGNITIONS = ("magneto", "battery", "electronic", "none")


class CardScreen(OneAnswer[Machine | None]):
    """Asks for a machine card; the answer is the machine, or None."""

    DEFAULT_CSS = """
    CardScreen {
        align: center middle;
        & > VerticalScroll {
            width: 64; max-width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 1;
            border: solid $foreground 30%;
        }
        .asks { text-style: bold; }
        .wrong { color: $text-error; height: auto; }
        .field { height: 1; }
        Label { width: 14; }
        Input, Select { width: 1fr; }
        #buttons { height: 1; margin: 1 0; }
        Button { margin-right: 2; }
        KeyLine { dock: bottom; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "make", "make the card", id="card.make", tooltip="Make the card and open the machine"),
        Binding("escape", "leave", "leave it", id="card.leave", tooltip="Make no card"),
    ]

    def __init__(self, known: Machine | None = None) -> None:
        """A card with what is known; of a known machine the name stays as it is."""
        super().__init__()
        self._known = known
        self._now = known or Machine("")

    def compose(self) -> ComposeResult:
        now = self._now
        count = str(now.cylinders or "")
        with VerticalScroll():
            yield Static("A machine card; only the name is needed. Enter makes it.", classes="asks", markup=False)
            name = Field(literal(now.name).plain, id="name", compact=True, placeholder="what you call it")
            name.disabled = self._known is not None
            yield from self._field("Name", name)
            kind = "such as single-cylinder petrol engine"
            yield from self._field("Kind", Field(literal(now.kind).plain, id="kind", compact=True, placeholder=kind))
            yield from self._field("Fuel", _choice("fuel", FUELS, now.fuel))
            yield from self._field("Ignition", _choice("ignition", IGNITIONS, now.ignition))
            cylinders = Field(count, id="cylinders", compact=True, type="integer", max_length=2)
            yield from self._field("Cylinders", cylinders)
            yield Static("", classes="wrong", markup=False)
            with Horizontal(id="buttons"):
                yield Button("Make the card", id="make", variant="primary", compact=True)
                yield Button("Leave it", id="leave", compact=True)
        yield KeyLine(wraps=True)

    def _field(self, label: str, field: Input | Select[str]) -> ComposeResult:
        with Horizontal(classes="field"):
            yield Label(literal(label))
            yield field

    def on_mount(self) -> None:
        self.query_one("#kind" if self._known is not None else "#name").focus()

    def on_button_pressed(self, event: Button.Pressed) -> None:
        if event.button.id == "make":
            self.action_make()
        else:
            self.action_leave()

    def on_input_submitted(self) -> None:
        self.action_make()

    def action_leave(self) -> None:
        self.dismiss(None)

    def action_make(self) -> None:
        name = self._text("name")
        if not name:
            self._wrong("It needs a name; a nickname will do.")
            self.query_one("#name").focus()
            return
        cylinders = self._text("cylinders")
        count = int(cylinders) if cylinders.isdecimal() else None
        if cylinders and (count is None or count > 99):
            self._wrong("How many cylinders? A whole number, or nothing.")
            return
        self.dismiss(
            replace(
                self._now,
                name=name,
                kind=self._text("kind"),
                fuel=self._chosen("fuel"),
                ignition=self._chosen("ignition"),
                cylinders=count,
            )
        )

    def _text(self, field: str) -> str:
        return literal(self.query_one(f"#{field}", Input).value).plain.strip()

    def _chosen(self, field: str) -> str:
        value = self.query_one(f"#{field}", Select).value
        return value if isinstance(value, str) else ""

    def _wrong(self, text: str) -> None:
        self.query_one(".wrong", Static).update(literal(text))


def _choice(field: str, values: tuple[str, ...], now: str) -> Select[str]:
    found: Select[str] = Select([(value, value) for value in values], prompt="not known", id=field, compact=True)
    if now in values:
        found.value = now
    return found
