"""Nothing acknowledged is ever lost: kills, two writers, a held lock, a torn log, a full disk.

The number of rounds is 40, or what the variable WORKLOG_ROUNDS says (500 is the target of the design).
"""

from __future__ import annotations

import errno
import os
import random
import shutil
import signal
import sqlite3
import subprocess
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

import pytest
from filelock import FileLock

from tests.bench.conftest import Clock
from worklog_tui import store
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history, is_stale
from worklog_tui.bench.machines import add_machine, machines
from worklog_tui.bench.record import keep_lines, keep_note
from worklog_tui.model import Machine
from worklog_tui.store import files

ROUNDS = int(os.environ.get("WORKLOG_ROUNDS", "40"))
ROOT = Path(__file__).parents[2]


class Writer:
    """The program `writer.py`, at work on one logbook."""

    def __init__(self, logbook: Path) -> None:
        self.process = subprocess.Popen(
            [sys.executable, "-m", "tests.bench.writer", str(logbook)],
            cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
        )  # fmt: skip

    def start(self, acks: Path, seed: int, notes: int = 0, patience: float = 2.0) -> int:
        assert self.process.stdin
        self.process.stdin.write(f"{acks} {seed} {notes} {patience}\n")
        self.process.stdin.flush()
        return int(self._line())

    def wait(self) -> None:
        assert self._line() == "gone"

    def _line(self) -> str:
        assert self.process.stdout
        return self.process.stdout.readline().strip()

    def close(self) -> None:
        self.process.communicate(timeout=20)


@contextmanager
def writer(logbook: Path) -> Iterator[Writer]:
    made = Writer(logbook)
    try:
        yield made
    finally:
        made.close()


def acknowledged(acks: Path) -> list[str]:
    if not acks.exists():
        return []
    whole, _, _torn = acks.read_text().rpartition("\n")
    return [line.split()[0] for line in whole.splitlines()]


def look_over(logbook: Path) -> set[str]:
    """The uids of the notes in a logbook, after checking that it is sound and that each note has its two facts."""
    with store.reading(logbook):
        pass  # what a killed program left half done is put in order by whoever comes next
    connection = sqlite3.connect(f"{logbook.as_uri()}?mode=ro", uri=True)
    try:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
        facts = connection.execute(
            "SELECT note.uid, count(fact.id) FROM note LEFT JOIN fact ON fact.note_id = note.id GROUP BY note.id"
        ).fetchall()
        assert {number for _, number in facts} <= {2}, "a note without its facts"
        tails = "SELECT position FROM context WHERE tail ORDER BY session_id"
        read = "SELECT count(*) FROM note GROUP BY session_id ORDER BY session_id"
        assert connection.execute(tails).fetchall() == connection.execute(read).fetchall(), "a note without its context"
        return {uid for uid, _ in facts}
    finally:
        connection.close()


def one_note(program: Writer, acks: Path) -> float:
    """Seconds that starting and keeping one note takes now: a busy machine is slower."""
    begin = time.perf_counter()
    program.start(acks, 5000, 1)
    program.wait()
    return time.perf_counter() - begin


def words_found(logbook: Path, words: str) -> int:
    with store.reading(logbook) as connection:
        return len(store.search.find(connection, words, limit=100_000))


def test_killed_at_any_moment(tmp_path: Path) -> None:
    logbook, acks, chance = tmp_path / "logbook.db", tmp_path / "acks", random.Random(20)
    with writer(logbook) as program:
        program.start(acks, ROUNDS, 1)
        program.wait()
        span = max(0.15, 4 * one_note(program, acks))
        for number in range(ROUNDS):
            child = program.start(acks, number)
            time.sleep(chance.uniform(0.0, span))
            os.kill(child, signal.SIGKILL)
            program.wait()
            if logbook.exists() and (number % 10 == 0 or number == ROUNDS - 1):
                assert set(acknowledged(acks)) <= look_over(logbook)
    notes = look_over(logbook)
    assert len(acknowledged(acks)) > ROUNDS // 2, "the kills came while notes were being kept"
    assert words_found(logbook, "guide cracked") == len(notes)


def test_killed_while_the_logbook_is_being_made(tmp_path: Path) -> None:
    chance = random.Random(21)
    for number in range(max(ROUNDS // 4, 5)):
        logbook, acks = tmp_path / f"{number}" / "logbook.db", tmp_path / f"acks-{number}"
        with writer(logbook) as program:
            child = program.start(acks, number)
            time.sleep(chance.uniform(0.0, 0.03))
            os.kill(child, signal.SIGKILL)
            program.wait()
            program.start(acks, number + 1000, 2)
            program.wait()
        said = acknowledged(acks)
        assert len(said) >= 2
        assert set(said) <= look_over(logbook)


def test_killed_while_notes_go_to_the_spool(tmp_path: Path) -> None:
    logbook, acks, chance = tmp_path / "logbook.db", tmp_path / "acks", random.Random(23)
    with writer(logbook) as program:
        program.start(acks, 0, 1)
        program.wait()
        span = max(0.08, 3 * one_note(program, acks))
        kept = look_over(logbook)
        with held(logbook):
            for number in range(1, ROUNDS + 1):
                child = program.start(acks, number, patience=0)
                time.sleep(chance.uniform(0.0, span))
                os.kill(child, signal.SIGKILL)
                program.wait()
        assert look_over(logbook) == kept
        program.start(acks, ROUNDS + 1, 1)
        program.wait()
    assert len(acknowledged(acks)) > ROUNDS // 2
    assert set(acknowledged(acks)) <= look_over(logbook)
    assert list(store.spool.folder(logbook).glob("*.json")) == []
    aside = store.spool.aside(logbook)
    assert not (aside.is_dir() and list(aside.glob("*.json"))), "a file that was kept is whole; parts may be set aside"


def test_two_programs_write_at_once(tmp_path: Path) -> None:
    logbook = tmp_path / "logbook.db"
    with writer(logbook) as one, writer(logbook) as other:
        one.start(tmp_path / "acks-1", 1, 60)
        other.start(tmp_path / "acks-2", 2, 60)
        one.wait()
        other.wait()
    said = acknowledged(tmp_path / "acks-1") + acknowledged(tmp_path / "acks-2")
    assert len(said) == 120
    assert look_over(logbook) == set(said)
    connection = sqlite3.connect(logbook)
    assert connection.execute("SELECT count(*) FROM machine").fetchone() == (1,), "each saw the other's machine"
    assert connection.execute("SELECT count(*) FROM session").fetchone() == (1,), "each joined the open session"
    arrivals = [row[0] for row in connection.execute("SELECT arrival FROM note ORDER BY arrival")]
    assert arrivals == list(range(120))
    connection.close()


@pytest.mark.usefixtures("saw")
def test_two_threads_of_one_program_write_at_once(desk: Desk) -> None:
    with ThreadPoolExecutor(2) as pool:
        kept = list(pool.map(lambda n: keep_note(desk, "Band saw", f"guide {n} cracked, cleaned"), range(30)))
    last = keep_note(desk, "Band saw", "the arm cracked, cleaned")  # takes in what had to wait, on a busy machine
    assert look_over(desk.logbook) == {one.note.uid for one in (*kept, last)}
    (record,) = history(desk, "Band saw").sessions
    assert sorted(note.arrival for note in record.notes) == list(range(31))


@contextmanager
def held(logbook: Path) -> Iterator[None]:
    """Another program that does not let go of the lock."""
    with FileLock(logbook.with_name(logbook.name + ".lock")):
        yield


@pytest.mark.usefixtures("saw")
def test_a_held_lock_sends_the_note_to_the_spool(desk: Desk, clock: Clock) -> None:
    hasty = replace(desk, patience=0.05)
    keep_note(hasty, "Band saw", "the guide is cracked, cleaned it")
    clock.go_on(minutes=1)
    with held(desk.logbook):
        waiting = keep_note(hasty, "Band saw", "the wheel is cracked, cleaned it")
        clock.go_on(minutes=1)
        more = keep_lines(hasty, "Band saw", "the arm is cracked, cleaned\nthe arm is cracked, cleaned again")
    assert waiting.spooled
    assert waiting.facts, "it is read all the same"
    assert all(one.spooled for one in more)
    assert len(look_over(desk.logbook)) == 1
    clock.go_on(minutes=1)
    last = keep_note(hasty, "Band saw", "the fence is cracked, cleaned it")
    (record,) = history(desk, "Band saw").sessions
    assert [note.words.split()[1] for note in record.notes] == ["guide", "wheel", "arm", "arm", "fence"]
    assert {waiting.note.uid, last.note.uid} <= look_over(desk.logbook)
    assert store.spool.waiting(desk.logbook) == []
    assert not is_stale(desk, "Band saw")


def test_the_first_notes_of_a_session_may_wait_too(desk: Desk, saw: Machine, clock: Clock) -> None:
    hasty = replace(desk, patience=0.05)
    with held(desk.logbook):
        keep_note(hasty, "Band saw", "the guide is cracked, cleaned it")
        clock.go_on(minutes=1)
        keep_note(hasty, "Band saw", "the wheel is cracked, cleaned it")
    add_machine(desk, saw)
    (record,) = history(desk, "Band saw").sessions
    assert [(note.at, note.words.split()[1]) for note in record.notes] == [(0, "guide"), (60, "wheel")]


@pytest.mark.usefixtures("saw")
def test_a_note_that_was_taken_in_is_not_taken_in_twice(desk: Desk) -> None:
    with held(desk.logbook):
        kept = keep_note(replace(desk, patience=0.05), "Band saw", "the guide is cracked, cleaned it")
    (file,) = store.spool.folder(desk.logbook).glob("*.json")
    copy = file.read_bytes()
    keep_note(desk, "Band saw", "the wheel is cracked, cleaned it")
    file.write_bytes(copy)  # as after a kill between the writing and the tidying up
    keep_note(desk, "Band saw", "the arm is cracked, cleaned it")
    assert not file.exists()
    assert len(look_over(desk.logbook)) == 3
    assert kept.note.uid in look_over(desk.logbook)


@pytest.mark.usefixtures("saw")
def test_a_torn_spool_file_is_set_aside(desk: Desk) -> None:
    with held(desk.logbook):
        keep_note(replace(desk, patience=0.05), "Band saw", "the guide is cracked, cleaned it")
    (file,) = store.spool.folder(desk.logbook).glob("*.json")
    torn = file.read_bytes()[:-20]
    file.write_bytes(torn)
    old_part = file.with_name("left.part")
    old_part.write_bytes(b"half a n")
    os.utime(old_part, (0, 0))
    keep_note(desk, "Band saw", "the wheel is cracked, cleaned it")
    aside = store.spool.aside(desk.logbook)
    assert (aside / file.name).read_bytes() == torn
    assert (aside / "left.part").exists()
    assert len(look_over(desk.logbook)) == 1


def test_a_note_of_another_logbook_is_set_aside(desk: Desk, saw: Machine) -> None:
    with held(desk.logbook):
        keep_note(replace(desk, patience=0.05), "Band saw", "the guide is cracked, cleaned it")
    for file in desk.logbook.parent.glob("logbook.db*"):
        if file.is_file():
            file.unlink()
    add_machine(desk, replace(saw, uid="", name="Lathe"))
    assert len(list(store.spool.aside(desk.logbook).iterdir())) == 1
    assert [line.notes for line in machines(desk)] == [0]


def test_a_torn_write_ahead_log_gives_the_notes_before_the_tear(desk: Desk, saw: Machine, tmp_path: Path) -> None:
    with store.reading(desk.logbook) as reader:
        store.machines.all_machines(reader)  # a reader that looks at the old state keeps the log from being emptied
        said = [keep_note(desk, "Band saw", "the guide is cracked, cleaned it").note.uid for _ in range(30)]
        assert store.machines.all_machines(reader) == [saw]
        chance = random.Random(22)
        lengths = []
        for number in range(ROUNDS):
            copy = tmp_path / f"{number}" / "logbook.db"
            copy.parent.mkdir()
            shutil.copy(desk.logbook, copy)
            log = bytearray(desk.logbook.with_name("logbook.db-wal").read_bytes())
            if number % 2:
                del log[chance.randrange(len(log)) :]
            else:
                log[chance.randrange(len(log))] ^= 1 << chance.randrange(8)
            copy.with_name("logbook.db-wal").write_bytes(log)
            notes = look_over(copy) if number % 4 else look_over_after_writing(copy, desk)
            assert notes == set(said[: len(notes)]), "the notes before the tear, all of them, and no other"
            lengths.append(len(notes))
    assert min(lengths) < 15 < max(lengths)


def look_over_after_writing(copy: Path, desk: Desk) -> set[str]:
    kept = keep_note(replace(desk, logbook=copy), "Band saw", "the arm is cracked, cleaned it")
    return look_over(copy) - {kept.note.uid}


@pytest.mark.usefixtures("saw")
def test_a_full_disk_is_told_and_costs_nothing(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    keep_note(desk, "Band saw", "the guide is cracked, cleaned it")
    really = files._open_to_write

    def full(path: Path, timeout: float) -> store.Connection:
        connection = really(path, timeout)
        pages = connection.execute("PRAGMA page_count").fetchone()[0]
        connection.execute(f"PRAGMA max_page_count = {pages}")
        return connection

    with monkeypatch.context() as patch:
        patch.setattr(files, "_open_to_write", full)
        with pytest.raises(store.NoRoom, match=r"There is no room left .* make room, then enter it again"):
            keep_lines(desk, "Band saw", "the wheel is cracked, cleaned it\n" * 500)
    assert len(look_over(desk.logbook)) == 1
    keep_note(desk, "Band saw", "the arm is cracked, cleaned it")
    assert len(look_over(desk.logbook)) == 2


@pytest.mark.usefixtures("saw")
@pytest.mark.parametrize(
    ("fault", "refusal"), [(errno.ENOSPC, store.NoRoom), (errno.EIO, store.FailingDisk), (errno.EROFS, store.NoPlace)]
)
def test_a_full_disk_under_the_spool_is_told_too(
    desk: Desk, monkeypatch: pytest.MonkeyPatch, fault: int, refusal: type[Exception]
) -> None:
    def fail(handle: int) -> None:
        raise OSError(fault, os.strerror(fault))

    with held(desk.logbook), monkeypatch.context() as patch:
        patch.setattr(os, "fsync", fail)
        with pytest.raises(refusal):
            keep_note(replace(desk, patience=0.05), "Band saw", "the guide is cracked, cleaned it")
    keep_note(desk, "Band saw", "the wheel is cracked, cleaned it")
    assert len(look_over(desk.logbook)) == 1, "what was not acknowledged does not come back"


@pytest.mark.usefixtures("saw")
def test_the_store_part_of_a_note_takes_milliseconds(desk: Desk, clock: Clock) -> None:
    took = []
    for _ in range(60):
        clock.go_on(seconds=1)
        begin = time.process_time()
        keep_note(desk, "Band saw", "the guide is cracked, cleaned it")
        took.append(time.process_time() - begin)
    assert sorted(took)[len(took) // 2] < 0.015, "about 4 ms of the processor's time; the rest is the disk's"
