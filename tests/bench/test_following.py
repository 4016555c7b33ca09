"""Lines that another program writes become notes as they come, also while somebody else writes to the logbook."""

from __future__ import annotations

import io
import threading
import time
from dataclasses import replace
from pathlib import Path

from worklog_tui import store
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.following import follow, lines_of_file, lines_of_stream
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.review import timeline
from worklog_tui.model import Machine


def words(desk: Desk, saw: Machine) -> list[str]:
    return [line.note.words for session in timeline(desk, saw.name) for line in session.lines]


def test_every_line_is_a_note_and_empty_ones_are_passed_over(desk: Desk, saw: Machine) -> None:
    stream = io.BytesIO("the guide is cracked\n\n \x1b[2J\r\nthe t\u00e4ble cleaned".encode())
    assert follow(desk, saw.name, lines_of_stream(stream)) == 2
    assert words(desk, saw) == ["the guide is cracked", "the t\u00e4ble cleaned"]


def test_a_file_that_grows_is_followed_from_its_end(desk: Desk, saw: Machine, tmp_path: Path) -> None:
    path = tmp_path / "talk.txt"
    path.write_text("said before\n")
    stop = threading.Event()
    lines = lines_of_file(path, goes_on=lambda: not stop.is_set())
    thread = threading.Thread(target=follow, args=(desk, saw.name, lines))
    thread.start()
    time.sleep(0.6)
    for piece in ("the guide is ", "cracked\nthe ta", "ble cleaned\n", "and half a li"):
        with path.open("a") as file:
            file.write(piece)
        time.sleep(0.4)
    stop.set()
    thread.join(10)
    assert words(desk, saw) == ["the guide is cracked", "the table cleaned"]


def test_a_file_that_is_written_anew_is_read_from_its_start(tmp_path: Path) -> None:
    path = tmp_path / "talk.txt"
    path.write_text("a long first line\n")
    lines = lines_of_file(path, from_start=True)
    assert next(lines) == "a long first line"
    path.write_text("short\n")
    assert next(lines) == "short"


def test_while_another_program_writes_the_lines_wait_beside_the_logbook(desk: Desk, saw: Machine) -> None:
    hasty = replace(desk, patience=0.1)
    with store.writing(desk.logbook, 5.0):
        assert follow(hasty, saw.name, iter(["the guide is cracked"])) == 1
    keep_note(desk, saw.name, "the table cleaned")
    assert words(desk, saw) == ["the guide is cracked", "the table cleaned"]
