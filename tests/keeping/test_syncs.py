"""A note is acknowledged only after it was given to the disk: watched from outside, system call by system call."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.keeping.conftest import ROOT

PROGRAM = """
import os, sys
from pathlib import Path
from tests.keeping.doer import bench_on
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.note_acts import edit_note
from worklog_tui.model import Machine
desk = bench_on(Path(sys.argv[1]), 1).desk
add_machine(desk, Machine("Band saw"))
for number in range(5):
    note = keep_note(desk, "Band saw", f"the guide {number} is cracked").note
    os.write(1, b"acknowledged note\\n")
    edit_note(desk, note.uid, f"the fence {number} is cracked")
    os.write(1, b"acknowledged act\\n")
"""


@pytest.mark.skipif(shutil.which("strace") is None, reason="strace is not there to watch with")
def test_each_acknowledgement_comes_after_a_sync(tmp_path: Path) -> None:
    trace = tmp_path / "trace"
    done = subprocess.run(
        ["strace", "-f", "-y", "-e", "trace=write,pwrite64,fsync,fdatasync", "-o", str(trace),
         sys.executable, "-c", PROGRAM, str(tmp_path / "log.db")],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    if done.returncode and "ptrace" in done.stderr:
        pytest.skip("processes may not be watched here")
    assert done.returncode == 0, done.stderr
    unsynced: set[str] = set()
    syncs = acknowledged = 0
    for line in trace.read_text(errors="replace").splitlines():
        call = re.search(r"\b(write|pwrite64|fsync|fdatasync)\(\d+<([^>]*)>", line)
        if call is None:
            continue
        name, file = call[1], Path(call[2]).name
        if name in ("fsync", "fdatasync"):
            unsynced.discard(file)
            syncs += 1
        elif '"acknowledged ' in line:
            assert "log.db-wal" not in unsynced, "acknowledged before the log was on the disk"
            assert syncs, "no sync since the last acknowledgement"
            acknowledged, syncs = acknowledged + 1, 0
        elif file.startswith("log.db"):
            unsynced.add(file)
    assert acknowledged == 10
