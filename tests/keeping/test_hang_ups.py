"""A closed window or a shutdown while somebody types: what was typed a second before comes back, the terminal is left
clean, and every note that was reported as kept is in the logbook."""

from __future__ import annotations

import os
import random
import signal
import sys
import time
from pathlib import Path

import pytest

from tests.keeping.conftest import HANG_UPS, ROOT
from tests.screens.test_ended_from_outside import SOURCE, read_until
from worklog_tui import store

pty = pytest.importorskip("pty")
WORDS = "the wheel bearing feels rough and the guard is off again so the belt was slack by half an inch ".split()


def test_hung_up_while_typing(tmp_path: Path) -> None:
    chance = random.Random(41)
    for number in range(HANG_UPS):
        folder = tmp_path / f"{number}"
        folder.mkdir()
        kind = signal.SIGTERM if number % 2 else signal.SIGHUP
        typed, when, left, status = typed_and_hung_up(folder, kind, chance)
        drafts = [path.read_text("utf-8") for path in folder.glob("log.db.draft-*.txt")]
        kept = notes(folder / "log.db")
        assert status == 128 + kind
        assert b"\x1b[?1049l" in left, "the terminal is out of the alternate screen"
        assert kept == ["the belt is slack"]
        draft = drafts[0] if drafts else ""
        assert typed.startswith(draft)
        assert len(draft) >= sum(at < when - 1.0 for at in typed_times), "no older than a second"
    print(f"\n{HANG_UPS} hang-ups while typing: each note kept, each draft no older than a second")


typed_times: list[float] = []


def typed_and_hung_up(folder: Path, kind: signal.Signals, chance: random.Random) -> tuple[str, float, bytes, int]:
    """What was typed after one note was kept, when the signal came, what the terminal got then, and how it ended."""
    pid, terminal = pty.fork()
    if pid == 0:
        os.chdir(ROOT)
        home = {"TERM": "xterm-256color", "PYTHONPATH": str(ROOT)}
        os.execve(sys.executable, [sys.executable, "-c", SOURCE, str(folder / "log.db")], {**os.environ, **home})
    assert b"hat do you see" in read_until(terminal, b"hat do you see", 60.0)
    time.sleep(1.5)
    os.write(terminal, b"the belt is slack\r")
    wait_for_note(folder / "log.db", terminal)
    typed = ""
    typed_times.clear()
    end = time.monotonic() + chance.uniform(0.3, 2.5)
    while time.monotonic() < end:
        letter = (chance.choice(WORDS) + " ")[0] if not typed or typed[-1] == " " else chance.choice("abcdefgh ")
        if letter == " " and (not typed or typed[-1] == " "):
            continue
        os.write(terminal, letter.encode())
        typed += letter
        typed_times.append(time.monotonic())
        read_until(terminal, b"\0", 0.05)
    when = time.monotonic()
    os.kill(pid, kind)
    left = read_until(terminal, b"\x1b[?1049l", 30.0)
    _, status = os.waitpid(pid, 0)
    os.close(terminal)
    return typed, when, left, os.waitstatus_to_exitcode(status)


def wait_for_note(logbook: Path, terminal: int) -> None:
    end = time.monotonic() + 30.0
    while time.monotonic() < end and not notes(logbook):
        read_until(terminal, b"\0", 0.1)
    read_until(terminal, b"\0", 0.3)


def notes(logbook: Path) -> list[str]:
    with store.reading(logbook) as connection:
        return [
            note.words
            for machine in store.machines.all_machines(connection)
            for _, said in store.sessions.of_machine(connection, machine.uid)
            for note in said
        ]
