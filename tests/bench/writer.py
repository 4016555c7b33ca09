"""A program of its own that keeps notes as fast as it can, for tests that kill it or set two of them on one logbook.

Started once with a logbook; for each line `ACKS SEED COUNT PATIENCE` on its standard input it forks a child that keeps
COUNT notes (0: without end), waits PATIENCE seconds for the lock, and writes the uid of each to the file ACKS when
it is acknowledged. It prints the child's process id, and `gone` when the child has ended.
"""

from __future__ import annotations

import os
import random
import sys
from datetime import UTC, datetime
from itertools import count
from pathlib import Path

from filelock import FileLock  # imported before the forks, as everything else
from sqlite_utils import Database

from tests.bench.plain_reader import PlainReader
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.machines import add_machine, machines
from worklog_tui.bench.record import keep_note
from worklog_tui.model import Machine

PRELOADED = (FileLock, Database)


def keep_on(logbook: Path, acks: Path, seed: int, notes: int, patience: float) -> None:
    """Keep notes of two facts each; the file of acks has one line for each note that was acknowledged."""
    chance = random.Random(seed)
    desk = Desk(
        logbook, (), lambda: datetime.now(UTC), f"bench-{seed}", lambda: chance.getrandbits(74),
        patience=patience, reads_with=PlainReader(),
    )  # fmt: skip
    if not machines(desk):
        add_machine(desk, Machine("Band saw"))
    handle = os.open(acks, os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    for number in range(notes) if notes else count():
        kept = keep_note(desk, "Band saw", f"the guide {number} is cracked, cleaned it")
        os.write(handle, f"{kept.note.uid} {kept.spooled:d}\n".encode())


def main() -> None:
    logbook = Path(sys.argv[1])
    for line in sys.stdin:
        acks, seed, notes, patience = line.rsplit(" ", 3)
        child = os.fork()
        if child == 0:
            keep_on(logbook, Path(acks), int(seed), int(notes), float(patience))
            os._exit(0)
        print(child, flush=True)
        os.waitpid(child, 0)
        print("gone", flush=True)


if __name__ == "__main__":
    main()
