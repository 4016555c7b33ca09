"""The recorder as a program of its own: screens one after another, and a clean end whatever ends it."""

from __future__ import annotations

import asyncio
import signal
import sys
from collections.abc import Iterable
from functools import partial
from typing import TYPE_CHECKING, Any, ClassVar

from textual import events
from textual.app import App, SystemCommand
from textual.binding import Binding, BindingType
from textual.driver import Driver
from textual.screen import Screen
from textual.theme import Theme

from worklog_tui.places import own_keys
from worklog_tui.screens.errands import Errands
from worklog_tui.screens.heap import one_heap
from worklog_tui.screens.layout import FULL_NAMES
from worklog_tui.screens.recording import RecordingScreen
from worklog_tui.widgets.key_line import named_key, usable

if TYPE_CHECKING:
    from pathlib import Path

    from worklog_tui.bench.desk import Desk
    from worklog_tui.screens.start import StartScreen

PATIENCE = 10.0
"Seconds that leaving waits for the last note to be kept."


class Recorder(App[int]):
    """One window on one logbook."""

    TITLE = "worklog"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("q", "leave", "quit", id="app.quit", tooltip="Leave; every note is kept"),
        Binding("ctrl+q", "quit", "quit", show=False, id="app.quit-anywhere", tooltip="Leave, from anywhere"),
        Binding("question_mark", "keys", "keys", id="app.keys", tooltip="All keys of this place", key_display="?"),
        Binding("ctrl+p", "command_palette", "more", id="app.commands", tooltip="Everything that can be done here"),
    ]

    def __init__(self, errands: Errands, machine: str | None = None, keys: Path | None = None) -> None:
        """On the bench, with a machine or the list of them; `keys` is the file with keys of the person's own."""
        super().__init__()
        self._keys = keys
        self._keys_wrong = ""
        "What is wrong with that file, until it is said."
        self._own = errands
        if (theme := errands.chosen("theme")) in self.available_themes:
            self.theme = theme
        self._machine = machine
        self._held: list[events.Event] = []
        "Keys and pastes that came while a machine was being opened."

    def get_driver_class(self) -> type[Driver]:
        """Textual's driver; the one of Linux and macOS with pastes taken out whole."""
        found = super().get_driver_class()
        if found.__name__ != "LinuxDriver":
            return found
        from worklog_tui.screens.terminal import Terminal

        return Terminal

    def _machines(self, errands: Errands) -> Screen[Any]:
        """The list of machines."""
        from worklog_tui.screens.start import StartScreen

        return StartScreen(errands)

    def get_default_screen(self) -> Screen[Any]:
        """The machines, or the one that is named; painted at once, with no empty screen before it."""
        first = self._machines(self._own) if self._machine is None else RecordingScreen(self._own, self._machine)
        first._push_result_callback(first, None)  # as for any other screen: `switch_screen` takes it off again
        return first

    def on_mount(self) -> None:
        self._take_own_keys()
        self.theme_changed_signal.subscribe(self, self._theme_chosen)
        if not self.is_headless:
            self._listen_for_the_end()

    def _take_own_keys(self) -> None:
        if self._keys is None:
            return
        from worklog_tui.screens.own_keys import own_keys

        found, self._keys_wrong = own_keys(self._keys)
        if found:
            self.set_keymap(found)

    def _theme_chosen(self, theme: Theme) -> None:
        """Light or dark holds at the next start too."""
        self.run_worker(partial(self._own.choose, "theme", theme.name), thread=True, exit_on_error=False)

    def _listen_for_the_end(self) -> None:
        """A closed window or a shutdown ends the program as quitting does (Textual by itself would be cut off)."""
        loop = asyncio.get_running_loop()
        for name in ("SIGTERM", "SIGHUP"):
            number = getattr(signal, name, None)
            if number is not None:
                try:
                    loop.add_signal_handler(number, partial(self._leave, 128 + number))
                except (NotImplementedError, RuntimeError):
                    return

    def get_key_display(self, binding: Binding) -> str:
        """The name of a key, in words."""
        return binding.key_display or named_key(binding.key)

    def get_system_commands(self, screen: Screen[object]) -> Iterable[SystemCommand]:
        """All bindings of the present screen and of the list that it shows, and what Textual itself offers."""
        shown = screen.list_of(screen.at) if isinstance(screen, RecordingScreen) else None
        for node in (screen, shown) if shown is not None else (screen,):
            for binding in node.BINDINGS:
                if isinstance(binding, Binding) and (node is shown or binding.show or binding.id in FULL_NAMES):
                    run = partial(node.run_action, binding.action)
                    name = FULL_NAMES.get(binding.id or "", binding.description)
                    yield SystemCommand(name.capitalize(), binding.tooltip, run)
        for command in super().get_system_commands(screen):
            if command.title not in ("Maximize", "Minimize"):
                yield command

    async def on_event(self, event: events.Event) -> None:
        """What is typed while a machine is being opened waits for its note line; only leaving does not wait."""
        typed = isinstance(event, events.Paste) or (isinstance(event, events.Key) and event.key != "ctrl+q")
        if typed and not event.is_forwarded and getattr(self.screen, "opening", False):
            self._held.append(event)
        else:
            await super().on_event(event)

    async def on_recording_screen_ready(self, message: RecordingScreen.Ready) -> None:
        """The note line is there: what was typed meanwhile goes into it, in its order."""
        held, self._held = self._held, []
        message.screen.opening = False
        for event in held:
            await super().on_event(event)
        if self._keys_wrong:
            message.screen.say(self._keys_wrong)
            self._keys_wrong = ""

    def on_start_screen_opened(self, message: StartScreen.Opened) -> None:
        self.switch_screen(RecordingScreen(message.errands, message.machine))

    def action_machines(self) -> None:
        """Back to the list of machines, once all is kept."""
        self.run_worker(self._to_machines())

    async def _to_machines(self) -> None:
        errands = await self._settle()
        self.switch_screen(self._machines(errands))

    def action_keys(self) -> None:
        """The keys of the present place."""
        from worklog_tui.screens.keys import KeysScreen, told_keys

        active = usable(self.screen)
        names = {one.binding.key: self.get_key_display(one.binding) for one in active}
        self.push_screen(KeysScreen(told_keys(active, names)))

    async def action_quit(self) -> None:
        """Leave, once all is kept."""
        self._leave(0)

    def action_leave(self) -> None:
        """The same by a plain key; at the end of a session what was not heard finished is asked first."""
        here = self.screen
        if not (isinstance(here, RecordingScreen) and here.closes_up(partial(self._leave, 0))):
            self._leave(0)

    def _leave(self, code: int) -> None:
        self.run_worker(self._leave_settled(code), group="leaving", exclusive=True)

    async def _leave_settled(self, code: int) -> None:
        await self._settle()
        self.exit(code, return_code=code)

    async def _settle(self) -> Errands:
        """Wait for the notes that are on their way; gives the bench of the present screen."""
        errands = self._own
        for screen in self.screen_stack:
            if isinstance(screen, RecordingScreen):
                errands = screen.errands
                try:
                    await asyncio.wait_for(screen.settled(), PATIENCE)
                except TimeoutError:
                    continue
        return errands


def open_recorder(desk: Desk, machine: str | None = None) -> int:
    """Run the recorder until it is left; 0, or 128 and the number of the signal that ended it."""
    one_heap()
    sys.setswitchinterval(0.001)  # a key waits no longer than this for a worker thread that reads
    return Recorder(Errands(desk), machine, own_keys()).run() or 0
