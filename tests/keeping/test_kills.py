"""Killed while a person corrects: an act is there with all that follows from it, or not at all."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

from tests.bench.test_undoing import MACHINES
from tests.keeping.conftest import ROOT, ROUNDS, hashes
from tests.keeping.doer import bench_on
from worklog_tui import store
from worklog_tui.bench.history import would_change


def test_killed_while_correcting(tmp_path: Path) -> None:
    logbook, acks, chance = tmp_path / "logbook.db", tmp_path / "acks", random.Random(31)
    program = subprocess.Popen(
        [sys.executable, "-m", "tests.keeping.doer", str(logbook)],
        cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    assert program.stdin
    assert program.stdout
    try:
        for number in range(ROUNDS):
            program.stdin.write(f"{acks} {number}\n")
            program.stdin.flush()
            child = int(program.stdout.readline())
            time.sleep(chance.uniform(0.0, 0.4))
            os.kill(child, signal.SIGKILL)
            assert program.stdout.readline().strip() == "gone"
            if number % 10 == 0 or number == ROUNDS - 1:
                look_over(logbook, acks)
    finally:
        program.communicate(timeout=20)
    done = len(acks.read_text().splitlines())
    print(f"\n{ROUNDS} kills while correcting: {done} acts acknowledged, none lost, none without what follows from it")
    assert done > ROUNDS // 4, "the kills came while acts were being done"


def look_over(logbook: Path, acks: Path) -> None:
    said = acks.read_text().rpartition("\n")[0].splitlines() if acks.exists() else []
    with store.reading(logbook) as connection:
        known = {act.uid for act in store.acts.load(connection)}
    assert set(said) <= known, "what was acknowledged is there"
    hashes(logbook)
    bench = bench_on(logbook, 999)
    for name in MACHINES:
        changed = would_change(bench.desk, name)
        assert (changed.added, changed.gone) == ((), ()), "an act without what follows from it"
