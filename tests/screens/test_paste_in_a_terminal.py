"""Pastes in a real terminal: a million characters, escapes, a paste without marks. No key of the program goes off."""

from __future__ import annotations

import os
import re
import select
import signal
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from worklog_tui.screens.incoming import BEGINS, ENDS

pty = pytest.importorskip("pty")
ROOT = Path(__file__).resolve().parents[2]
SOURCE = """
import sys
from pathlib import Path
from worklog_tui.app import open_recorder
from worklog_tui.bench.desk import open_desk
from worklog_tui.bench.machines import add_machine
from worklog_tui.model import Machine
desk = open_desk(Path(sys.argv[1]))
add_machine(desk, Machine("Band saw"))
sys.exit(open_recorder(desk, "Band saw"))
"""
ESCAPES = re.compile(rb"\x1b(?:\[[0-?]*[ -/]*[@-~]|\][^\x07\x1b]*(?:\x07|\x1b\\)|[ -/]*[0-~])")


class Window:
    """The recorder in a terminal of its own, on a new logbook."""

    def __init__(self, folder: Path) -> None:
        self.pid, self.terminal = pty.fork()
        if self.pid == 0:
            os.chdir(ROOT)
            own = {"TERM": "xterm-256color", "PYTHONPATH": str(ROOT)}
            size = {"COLUMNS": "100", "LINES": "30"}
            path = str(folder / "log.db")
            os.execve(sys.executable, [sys.executable, "-c", SOURCE, path], {**os.environ, **own, **size})
        self.seen = b""

    def wait_for(self, sign: str, seconds: float = 40.0) -> float:
        """Seconds until a sign stands in the output."""
        start = time.monotonic()
        while time.monotonic() < start + seconds:
            if select.select([self.terminal], [], [], 0.05)[0]:
                self.seen += os.read(self.terminal, 65536)
            if sign.encode() in ESCAPES.sub(b"", self.seen):
                self.seen = b""
                return time.monotonic() - start
        raise AssertionError(f"{sign!r} never came: {ESCAPES.sub(b'', self.seen)[-600:]!r}")

    def paste(self, text: str) -> None:
        """Write as a terminal does, while the screen is read."""
        threading.Thread(target=self._write, args=(text.encode(),), daemon=True).start()

    def _write(self, data: bytes) -> None:
        while data:
            data = data[os.write(self.terminal, data) :]

    def runs(self) -> bool:
        """Whether it is still there."""
        return os.waitpid(self.pid, os.WNOHANG) == (0, 0)


@pytest.fixture
def window(tmp_path: Path) -> Iterator[Window]:
    """A window whose note line is ready."""
    window = Window(tmp_path)
    try:
        window.wait_for("hat do you see")
        time.sleep(2.0)  # the grammar is read
        yield window
    finally:
        os.kill(window.pid, signal.SIGKILL)
        os.waitpid(window.pid, 0)
        os.close(window.terminal)


def test_a_megabyte_of_lines_is_asked_about_within_three_seconds(window: Window) -> None:
    text = "\n".join(f"the cover came off and bolt {n} was stiff but free" for n in range(20_000))
    assert len(text) > 1_000_000
    window.paste(BEGINS + text + ENDS)
    taken = window.wait_for("20000 lines")
    assert taken <= 3.0, f"{taken:.1f} s"
    assert window.runs()


def test_escapes_and_the_end_of_a_paste_inside_it_fire_no_key(window: Window) -> None:
    os.write(window.terminal, b"\x1b")  # a list is in use: letters are keys there
    time.sleep(0.5)
    window.paste(f"{BEGINS}first line\n\x1b{ENDS}q\nm\nd\n\x1bq\x1b[201~ last line{ENDS}")
    window.wait_for("last line")
    time.sleep(0.5)
    assert window.runs()


def test_a_paste_without_marks_while_a_list_is_in_use_fires_no_key(window: Window) -> None:
    os.write(window.terminal, b"\x1b")
    time.sleep(0.5)
    window.paste("\r".join(f"quit m d q line {n}" for n in range(50)) + "\r")
    window.wait_for("50 lines")
    assert window.runs()
