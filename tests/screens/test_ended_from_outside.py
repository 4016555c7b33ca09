"""A closed window or a shutdown ends the recorder cleanly, and what was half typed comes back."""

from __future__ import annotations

import os
import select
import signal
import sys
import time
from pathlib import Path

import pytest

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


def read_until(terminal: int, sign: bytes, seconds: float = 30.0) -> bytes:
    """What the program writes, up to a sign."""
    seen, end = b"", time.monotonic() + seconds
    while sign not in seen and time.monotonic() < end:
        if select.select([terminal], [], [], 0.2)[0]:
            try:
                seen += os.read(terminal, 65536)
            except OSError:
                break
    return seen


@pytest.mark.parametrize(("number", "restored"), [(signal.SIGTERM, True), (signal.SIGHUP, True)])
def test_a_signal_ends_it_cleanly_with_the_draft_on_the_disk(
    tmp_path: Path, number: signal.Signals, restored: bool
) -> None:
    pid, terminal = pty.fork()
    if pid == 0:
        os.chdir(ROOT)
        home = {"TERM": "xterm-256color", "PYTHONPATH": str(ROOT)}
        path = str(tmp_path / "log.db")
        os.execve(sys.executable, [sys.executable, "-c", SOURCE, path], {**os.environ, **home})
    assert b"hat do you see" in read_until(terminal, b"hat do you see")
    time.sleep(1.5)
    os.write(terminal, b"the gap was ab")
    read_until(terminal, b"ab", 5.0)
    time.sleep(0.3)
    os.kill(pid, number)
    left = read_until(terminal, b"\x1b[?1049l", 20.0)
    _, status = os.waitpid(pid, 0)
    os.close(terminal)
    assert (b"\x1b[?1049l" in left) == restored  # the terminal is out of the alternate screen
    assert os.waitstatus_to_exitcode(status) == 128 + number
    assert [path.read_text("utf-8") for path in tmp_path.glob("log.db.draft-*.txt")] == ["the gap was ab"]
