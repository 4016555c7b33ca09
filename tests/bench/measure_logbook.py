"""How fast a large logbook answers: a million notes over 50 machines of 200 sessions, or as many as are asked for.

`python tests/bench/measure_logbook.py [NOTES]` makes the file in a temporary folder and prints, for each thing that a
person waits for, the median and the 95th of 100 times in milliseconds of the processor and the median by the clock;
beside it, in turn with it, what plain SQLite takes by the clock to insert or find the same words with the same
durability. The clock depends on how fast the disk writes. The reader is the plain one of the tests.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from itertools import count
from pathlib import Path

from tests.bench.plain_reader import PlainReader
from tests.bench.plain_sqlite import PlainFile
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


def took(do: Callable[[int], object], plain: Callable[[int], object] | None, times: int) -> tuple[float, ...]:
    """In milliseconds: median and 95th of the processor, median of the clock, and that of plain SQLite in turn with it.

    The first time is not counted.
    """
    busy, clock, beside = [], [], []
    for number in range(times + 1):
        begin, began = time.perf_counter(), time.process_time()
        do(number)
        busy.append(1000 * (time.process_time() - began))
        clock.append(1000 * (time.perf_counter() - begin))
        if plain is not None:
            begin = time.perf_counter()
            plain(number)
            beside.append(1000 * (time.perf_counter() - begin))
    busy, middle = sorted(busy[1:]), times // 2
    return busy[middle], busy[int(times * 0.95)], sorted(clock[1:])[middle], sorted(beside[1:] or [0.0] * times)[middle]


@dataclass(frozen=True, slots=True)
class Wait:
    """Something that a person waits for, with what plain SQLite does in its place."""

    what: str
    target: float
    do: Callable[[int], object]
    plain: Callable[[int], object] | None = None
    times: int = 100


def waits(desk: Desk, plain: PlainFile, numbers: Iterator[int]) -> list[Wait]:
    chance = random.Random(5)
    name = [f"Machine {number}" for number in range(MACHINES)]
    part = [chance.choice(PARTS) for _ in range(200)]
    last = keep_note(desk, name[3], "the guide is cracked").note
    said: list[tuple[str, Callable[[int], str]]] = [
        ("rare word", lambda n: RARE), ("common word", lambda n: COMMON), ("two words", lambda n: f"{part[n]} {n}"),
        ("phrase", lambda n: f'"{part[n]} is cracked"'), ("beginning", lambda n: f"{RARE[:5]}*"),
    ]  # fmt: skip

    def search(what: str, words: Callable[[int], str]) -> Wait:
        return Wait(f"search, {what}", 20, lambda n: find_notes(desk, words(n)), lambda n: plain.find(words(n)))

    row = (4, "2031-04-12T14:05:00Z")
    return [
        *(search(what, words) for what, words in said),
        Wait("search in one machine", 20, lambda n: find_notes(desk, f"{part[n]} {n}", name[n % 50])),
        Wait("first page", 50, lambda n: page(desk, name[n % 50]), lambda n: plain.page(n % 50 + 1)),
        Wait("recap", 100, lambda n: recap(desk, name[7])),
        Wait("one note kept", 5, lambda n: keep_note(desk, name[3], f"the guide {n} is cracked"),
             lambda n: plain.insert((*row, f"the guide {n} is cracked"))),
        Wait("  beside: file closed", 5, lambda n: keep_note(desk, name[3], f"the guide {n} is cracked"),
             lambda n: plain.insert_and_close((*row, f"the guide {n} is cracked"))),
        Wait("one note edited", 50, lambda n: edit_note(desk, last.uid, f"the guide {next(numbers)} is cracked"),
             times=20),
        Wait("undo", 50, lambda n: undo(desk), times=20),
        Wait("list of machines", 300, lambda n: machines(replace(desk, _kept={})), times=20),
    ]  # fmt: skip


def main() -> None:
    notes = int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000
    numbers, moment = count(1), datetime(2031, 4, 12, 14, 5, tzinfo=UTC)
    with tempfile.TemporaryDirectory() as folder:
        desk = Desk(
            Path(folder) / "l.db", (), lambda: moment, "one", lambda: next(numbers), reads_with=PlainReader()
        )  # fmt: skip
        begin = time.perf_counter()
        fill(desk, notes)
        plain = PlainFile(Path(folder) / "plain.db")
        with store.reading(desk.logbook) as connection:
            plain.fill(connection.execute("SELECT machine_id, coalesce(utc, ''), words FROM note ORDER BY id"))
        each = [path.stat().st_size / notes for path in (desk.logbook, plain.path)]
        print(f"{notes:,} notes, made in {time.perf_counter() - begin:.0f} s: {each[0]:.0f} bytes a note,"
              f" plain SQLite {each[1]:.0f}")  # fmt: skip
        print(f"{'milliseconds':24} processor  p95     of target   clock   plain SQLite")
        for one in waits(desk, plain, numbers):
            busy, most, clock, beside = took(one.do, one.plain, one.times)
            print(f"{one.what:24} {busy:9.2f} {most:7.2f}  {most / one.target:5.2f} of {one.target:<5g}{clock:7.2f}"
                  + (f"{beside:9.2f}" if one.plain else ""))  # fmt: skip


if __name__ == "__main__":
    main()
