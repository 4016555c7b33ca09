"""How fast a large logbook answers: a million notes over 50 machines of 200 sessions, or as many as are asked for.

`python tests/bench/measure_logbook.py [NOTES]` makes the file in a temporary folder and prints, for each thing that a
person waits for, the median and the 95th of 100 times in milliseconds of the processor, as a share of its target, and
as a ratio to what a bare lookup of one row takes in the same run. The reader is the plain one of the tests.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import count
from pathlib import Path

from tests.bench.plain_reader import PlainReader
from worklog_tui import store
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.machines import add_machine, machines
from worklog_tui.bench.note_acts import edit_note
from worklog_tui.bench.pages import page
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.review import recap
from worklog_tui.bench.search import find_notes
from worklog_tui.bench.undoing import undo
from worklog_tui.model import Machine

MACHINES, SESSIONS = 50, 200
RARE, COMMON = "trunnion", "the"
PARTS = "belt guide wheel blade fence table motor switch spring bracket arm shaft bearing pulley gib screw".split()
DID = ("is cracked", "cleaned it", "runs well now", "needs looking at", "was loose, nipped it up", "still weeping")


def words(chance: random.Random, number: int) -> str:
    rare = f" {RARE}" if number % 5000 == 0 else ""
    return f"the {chance.choice(PARTS)}{rare} {chance.choice(DID)} number {number % 977}"


def fill(desk: Desk, notes: int) -> None:
    """Notes with a finding for each crack, written straight into the tables."""
    chance, begun = random.Random(3), datetime(2021, 1, 1, 9, 0, tzinfo=UTC)
    names = [add_machine(desk, Machine(f"Machine {number}")) for number in range(MACHINES)]
    each = max(notes // (MACHINES * SESSIONS), 1)
    with store.writing(desk.logbook, 60) as connection:
        stamp = {machine.uid: desk.stamp(machine) for machine in names}
        for turn in range(SESSIONS):
            for machine_id, machine in enumerate(names, 1):
                start = begun + timedelta(days=9 * turn, minutes=machine_id)
                row = connection.execute(
                    "INSERT INTO session (uid, machine_id, arrival, source, utc) VALUES (?, ?, ?, 'live', ?)",
                    (desk.uid(), machine_id, turn, f"{start:%Y-%m-%dT%H:%M:%SZ}"),
                ).lastrowid
                connection.execute("INSERT INTO stamp VALUES (?, ?)", (row, stamp[machine.uid]))
                rows = []
                for number in range(each):
                    said = words(chance, chance.randrange(1 << 30))
                    when = start + timedelta(seconds=40 * number)
                    rows.append((desk.uid(), row, machine_id, number, 40 * number, 40 * number, f"{when:%H:%M}", said,
                                 said, f"{when:%Y-%m-%dT%H:%M:%SZ}"))  # fmt: skip
                connection.executemany(
                    "INSERT INTO note (uid, session_id, machine_id, arrival, stands_at, at, said_at, track,"
                    " first_words, words, utc) VALUES (?, ?, ?, ?, ?, ?, ?, 'live', ?, ?, ?)",
                    rows,
                )
        connection.execute(
            "INSERT INTO fact (note_id, machine_id, kind, start, stop, nth, confidence, question, about, data)"
            " SELECT id, machine_id, 'finding', instr(words, 'cracked') - 1, instr(words, 'cracked') + 6, 0, 1.0, 0,"
            " 'guide', json_object('kind', 'finding', 'main', json_array(uid, instr(words, 'cracked') - 1,"
            " instr(words, 'cracked') + 6), 'part', 'guide', 'condition', 'cracked', 'verdict', 'bad', 'quote', words)"
            " FROM note WHERE instr(words, 'cracked')"
        )


def took(do: Callable[[int], object], times: int = 100) -> tuple[float, float]:
    """Median and 95th in milliseconds of the processor; the first time is not counted."""
    do(0)
    spans = []
    for number in range(times):
        begin = time.process_time()
        do(number)
        spans.append(1000 * (time.process_time() - begin))
    spans.sort()
    return spans[times // 2], spans[int(times * 0.95)]


def main() -> None:
    notes = int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000
    numbers, moment = count(1), datetime(2031, 4, 12, 14, 5, tzinfo=UTC)
    with tempfile.TemporaryDirectory() as folder:
        desk = Desk(
            Path(folder) / "l.db", (), lambda: moment, "one", lambda: next(numbers), reads_with=PlainReader()
        )  # fmt: skip
        begin = time.perf_counter()
        fill(desk, notes)
        size = desk.logbook.stat().st_size / 1e6
        print(f"{notes:,} notes in {size:.0f} MB, made in {time.perf_counter() - begin:.0f} s")
        chance = random.Random(5)
        name = [f"Machine {number}" for number in range(MACHINES)]
        with store.reading(desk.logbook) as connection:
            bare = took(lambda n: connection.execute("SELECT * FROM note WHERE id = ?", (n + 1,)).fetchone())[0]
        last = keep_note(desk, name[3], "the guide is cracked").note
        rows: list[tuple[str, float, Callable[[int], object]]] = [
            ("search, rare word", 20, lambda n: find_notes(desk, RARE)),
            ("search, common word", 20, lambda n: find_notes(desk, COMMON)),
            ("search, two words", 20, lambda n: find_notes(desk, f"{chance.choice(PARTS)} {n}")),
            ("search, phrase", 20, lambda n: find_notes(desk, f'"{chance.choice(PARTS)} is cracked"')),
            ("search, beginning", 20, lambda n: find_notes(desk, f"{RARE[:5]}*")),
            ("search in one machine", 20, lambda n: find_notes(desk, f"{PARTS[n % 16]} {n}", name[n % 50])),
            ("first page", 50, lambda n: page(desk, name[n % 50])),
            ("recap", 100, lambda n: recap(desk, name[7])),
            ("one note kept", 5, lambda n: keep_note(desk, name[3], f"the guide {n} is cracked")),
            ("one note edited", 50, lambda n: edit_note(desk, last.uid, f"the guide {next(numbers)} is cracked")),
            ("undo", 50, lambda n: undo(desk)),
            ("list of machines", 300, lambda n: machines(replace(desk, _kept={}))),
        ]
        for what, target, do in rows:
            median, most = took(do, 20 if what in ("list of machines", "undo", "one note edited") else 100)
            print(f"{what:24} median {median:7.2f} ms  p95 {most:7.2f} ms  {most / target:5.2f} of {target:g} ms"
                  f"  {median / bare:8.0f} x a bare lookup")  # fmt: skip


if __name__ == "__main__":
    main()
