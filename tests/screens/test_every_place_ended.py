"""In every place the window may be closed, the program be killed, or the terminal be made tiny: nothing is lost."""

from __future__ import annotations

import fcntl
import os
import signal
import struct
import sys
import termios
import time
from pathlib import Path

import pytest

from tests.screens.test_ended_from_outside import ROOT, SOURCE, read_until
from worklog_tui.bench.desk import open_desk
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.review import timeline
from worklog_tui.bench.taking_in import take_in_waiting
from worklog_tui.model import Machine
from worklog_tui.screens.layout import PLACES

pty = pytest.importorskip("pty")
ENDS = (signal.SIGKILL, signal.SIGHUP, signal.SIGTERM)
OPEN = SOURCE.replace('add_machine(desk, Machine("Band saw"))\n', "")


def resize(terminal: int, columns: int, lines: int) -> None:
    fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", lines, columns, 0, 0))


@pytest.mark.parametrize("place", PLACES)
def test_a_note_and_half_typed_words_outlast_every_end(tmp_path: Path, place: str) -> None:
    book = tmp_path / "log.db"
    desk = open_desk(book)
    add_machine(desk, Machine("Band saw"))
    keep_note(desk, "Band saw", "the guide is cracked")
    end = ENDS[list(PLACES).index(place) % len(ENDS)]
    own = {"TERM": "xterm-256color", "PYTHONPATH": str(ROOT)}
    pid, terminal = pty.fork()
    if pid == 0:
        os.chdir(ROOT)
        os.execve(sys.executable, [sys.executable, "-c", OPEN, str(book)], {**os.environ, **own})
    resize(terminal, 80, 24)
    try:
        assert b"1 note" in read_until(terminal, b"1 note")
        os.write(terminal, b"the fence is bent\r")
        assert b"Kept" in read_until(terminal, b"Kept", 60.0)
        for words in (b"half ty", b"\x1b", PLACES[place].key.encode()):
            os.write(terminal, words)
            time.sleep(0.6)
        for columns, lines in ((20, 5), (80, 24), (20, 5)):
            resize(terminal, columns, lines)
            read_until(terminal, b"no such words", 0.4)
        assert os.waitpid(pid, os.WNOHANG) == (0, 0)
        time.sleep(1.2)  # what is half typed goes to the disk every second
        os.kill(pid, end)
        read_until(terminal, b"no such words", 1.0)
    finally:
        status = os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1])
        os.close(terminal)
    assert status == (-end if end is signal.SIGKILL else 128 + end)
    take_in_waiting(open_desk(book), 10.0)  # as the next window does: the first note may wait beside the logbook
    said = [line.note.words for one in timeline(open_desk(book), "Band saw") for line in one.lines]
    assert said == ["the guide is cracked", "the fence is bent"]
    assert [path.read_text("utf-8") for path in tmp_path.glob("log.db.draft-*.txt")] == ["half ty"]
