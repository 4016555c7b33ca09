"""A paste of several lines is shown before it is kept: one key says yes."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import Footer, Static

from worklog_tui.widgets.literal import literal

if TYPE_CHECKING:
    from worklog_tui.notes import ReadSession

SHOWN = 6
"So many lines of the paste are shown; the last one is always among them."
LONGEST = 200


class PasteQuestion(ModalScreen[bool]):
    """Shows what a paste is and asks whether to keep it; the answer is True or False."""

    DEFAULT_CSS = """
    PasteQuestion {
        align: center bottom;
        & > Vertical { width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 1; }
        & .asks { text-style: bold; margin-bottom: 1; height: auto; }
        & .lines { color: $text-muted; height: auto; margin-bottom: 1; }
        & Footer { dock: none; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("k,y", "answer(True)", "keep it", id="paste.keep", tooltip="Keep all lines of the paste as notes"),
        Binding("escape,x", "answer(False)", "leave it", id="paste.leave", tooltip="Keep nothing of the paste"),
    ]

    def __init__(self, read: ReadSession) -> None:
        super().__init__()
        self.read = read

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Static(literal(f"{shape_of(self.read)}: keep?"), classes="asks", markup=False)
            yield Static(literal("\n".join([*glimpse(self.read), *odd(self.read)])), classes="lines", markup=False)
            yield Footer(show_command_palette=False)

    def action_answer(self, keep: bool) -> None:
        self.dismiss(keep)


def shape_of(read: ReadSession) -> str:
    """What a paste is, in words: `213 lines, captions with times`."""
    count = len(read.lines)
    if not any(line.said_at for line in read.lines):
        kind = "no times"
    else:
        kind = "captions with times" if read.track == "captions" else "lines with times"
    return f"{count} {'line' if count == 1 else 'lines'}, {kind}"


def glimpse(read: ReadSession) -> list[str]:
    """The first lines of a paste and its last, each cut short."""
    lines = [f"{line.said_at:>7}  {line.words[:LONGEST]}" for line in (*read.lines[: SHOWN - 1], *read.lines[-1:])]
    if len(read.lines) <= SHOWN:
        return lines[: len(read.lines)]
    return [*lines[:-1], f"         and {len(read.lines) - SHOWN} more, to the last:", lines[-1]]


def odd(read: ReadSession) -> list[str]:
    """What was odd about the lines; they are kept all the same."""
    most = 3
    more = [f"and {len(read.complaints) - most} more like that"] if len(read.complaints) > most else []
    return [*read.complaints[:most], *more]
