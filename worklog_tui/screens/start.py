"""The first screen: put a machine on the bench, make a card for a new one, or look at the demo."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.screen import Screen
from textual.widgets import Static

from worklog_tui.model import Machine
from worklog_tui.screens.background import Latest, Queue
from worklog_tui.screens.errands import Errands
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.literal import literal
from worklog_tui.widgets.machines import Machines

if TYPE_CHECKING:
    from worklog_tui.bench.machines import MachineLine
    from worklog_tui.widgets.rows import Rows


_HEIGHTS = [(0, "-flat"), (9, "-tall")]


class StartScreen(Screen[None]):
    """The machines of the logbook."""

    VERTICAL_BREAKPOINTS = _HEIGHTS
    DEFAULT_CSS = """
    StartScreen {
        #asks { text-style: bold; height: auto; margin: 0 1; }
        #told { height: auto; color: $text-muted; margin: 0 1; }
        Machines { height: 1fr; margin: 1 0; }
        &.-flat Machines { margin: 0; }
        &.-flat KeyLine { display: none; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("n", "new", "new machine", id="start.new", tooltip="Make a card for a new machine"),
        Binding("d", "demo", "demo", id="start.demo", tooltip="Look at invented machines; your logbook is left alone"),
    ]

    def __init__(self, errands: Errands) -> None:
        super().__init__()
        self._errands = errands
        self.opening = False
        "Whether a machine is being opened: what is typed now is meant for its note line."
        self._lists = Latest[None, "Sequence[MachineLine]"](
            self, lambda _: self._errands.machines(), self._show, self._failed
        )
        self._cards = Queue[Machine, Machine](self, self._add, self._added, self._failed)
        self._demos = Latest[None, Errands](self, lambda _: errands.lay_out_demo(), self._laid_out, self._failed)

    class Opened(Message):
        """A machine is put on the bench."""

        def __init__(self, errands: Errands, machine: str) -> None:
            super().__init__()
            self.errands = errands
            self.machine = machine

    def compose(self) -> ComposeResult:
        yield Static("Which machine is on the bench?", id="asks", markup=False)
        yield Machines()
        yield Static("", id="told", markup=False)
        yield KeyLine()

    def on_mount(self) -> None:
        self.query_one(Machines).focus()
        self.call_after_refresh(self._lists.want, None)

    def on_rows_chosen(self, message: Rows.Chosen) -> None:
        if message.row.key == Machines.NEW:
            self.action_new()
        elif message.row.key == Machines.DEMO:
            self.action_demo()
        else:
            self._open(message.row.key)

    def on_paste(self, event: events.Paste) -> None:
        event.stop()
        self.take_paste(event.text)

    def take_paste(self, text: str) -> None:
        """There is no machine yet that it could be kept for."""
        self._say("Nothing of the paste was kept: put a machine on the bench first, then paste it there.")

    def _open(self, machine: str) -> None:
        self.opening = True
        self.post_message(self.Opened(self._errands, machine))

    def action_new(self) -> None:
        def made(card: Machine | None) -> None:
            self.opening = card is not None
            if card is not None:
                self._say("Making the card …")
                self._cards.want(card)

        from worklog_tui.screens.card import CardScreen  # its fields are not needed for the first paint

        self.app.push_screen(CardScreen(), made)

    def action_demo(self) -> None:
        self._say("Laying out the demo …")
        self._demos.want(None)

    def _add(self, card: Machine) -> Machine:
        return self._errands.add_machine(card)

    def _show(self, _: None, machines: Sequence[MachineLine]) -> None:
        self.query_one(Machines).show_machines(machines)

    def _added(self, _: Machine, machine: Machine) -> None:
        self._open(machine.name)

    def _laid_out(self, _: None, demo: Errands) -> None:
        self._errands = demo
        self._say("This is the demo. Its notes are thrown away; your own logbook is left alone.")
        self._lists.want(None)

    def _failed(self, _: object, error: Exception) -> None:
        self.opening = False
        self._say(f"That did not work: {error}")

    def _say(self, text: str) -> None:
        self.query_one("#told", Static).update(literal(text))
