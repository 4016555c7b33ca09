"""A program that corrects as fast as it can, for a test that kills it: for each line `ACKS SEED` it forks a child.

The child edits, strikes, splits, joins, closes and takes back, and writes the uid of each act to the file ACKS once it
is acknowledged.
"""

from __future__ import annotations

import os
import random
import sys
from datetime import UTC, datetime, timedelta
from pathlib import Path

from filelock import FileLock
from sqlite_utils import Database

from tests.bench.plain_reader import PlainReader
from tests.bench.test_undoing import ACTS, MACHINES, SAYINGS, Bench
from worklog_tui.bench.acting import CannotAct, Done
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.undoing import redo, undo

PRELOADED = (FileLock, Database)


def bench_on(logbook: Path, seed: int) -> Bench:
    """The bench of the property tests on a logbook that is there."""
    chance = random.Random(seed)
    bench = Bench.__new__(Bench)
    now = datetime.now(UTC)

    def clock() -> datetime:
        nonlocal now
        now += timedelta(seconds=7)
        return now

    bench.desk = Desk(logbook, (), clock, f"bench-{seed}", lambda: chance.getrandbits(74), reads_with=PlainReader())
    return bench


def act_on(bench: Bench, chance: random.Random) -> Done | None:
    """One act by chance; now and then it takes one back instead."""
    try:
        if chance.random() < 0.25:
            return chance.choice((undo, redo))(bench.desk)
        deed = chance.choice(ACTS)(bench, chance.choice(MACHINES), chance.randrange(20), chance.randrange(20))
        return deed if isinstance(deed, Done) else None
    except (CannotAct, ZeroDivisionError):
        return None


def main() -> None:
    logbook = Path(sys.argv[1])
    if not logbook.exists():
        made = Bench(str(logbook.parent), logbook.name)
        for number, words in enumerate(SAYINGS * 2):
            made.say(number % 2, words, 5 * (number % 5 == 4))
    for line in sys.stdin:
        acks, seed = line.rsplit(" ", 1)
        child = os.fork()
        if child == 0:
            bench, chance = bench_on(logbook, int(seed)), random.Random(int(seed))
            handle = os.open(acks, os.O_WRONLY | os.O_CREAT | os.O_APPEND)
            while True:
                done = act_on(bench, chance)
                if done is not None:
                    os.write(handle, f"{done.act.uid}\n".encode())
        print(child, flush=True)
        os.waitpid(child, 0)
        print("gone", flush=True)


if __name__ == "__main__":
    main()
