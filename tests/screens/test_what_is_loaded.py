"""A recorder lies open for hours: it loads what it shows, and nothing of what another process works out for it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FILLED = """
import sys
from pathlib import Path
from worklog_tui.bench.desk import open_desk
from worklog_tui.bench.importing import keep_lines
from worklog_tui.bench.machines import add_machine
from worklog_tui.model import Machine

desk = open_desk(Path(sys.argv[1]))
add_machine(desk, Machine("Planer"))
keep_lines(desk, "Planer", "session 2031-05-02 08:00\\n08:00 the drive belt is off and needs replacing")
"""
LOOKED_AT = """
import asyncio, sys
from pathlib import Path
from worklog_tui.app import Recorder
from worklog_tui.bench.desk import open_desk
from worklog_tui.screens.errands import Errands

async def look():
    app = Recorder(Errands(open_desk(Path(sys.argv[1]))), "Planer")
    async with app.run_test(size=(120, 40)) as pilot:
        for _ in range(600):
            await pilot.pause(0.1)
            if app.screen.outlook is not None and app.screen.outlook.whole:
                break
        print(len(app.screen.outlook.items), *sorted(m for m in sys.modules if m.startswith("worklog_tui.")))

asyncio.run(look())
"""


def printed(program: str, logbook: Path) -> list[str]:
    """The words that a process of its own prints."""
    done = subprocess.run(
        [sys.executable, "-c", program, str(logbook)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.split()


def test_the_recorder_loads_nothing_of_what_works_out_where_a_machine_stands(tmp_path: Path) -> None:
    logbook = tmp_path / "log.db"
    printed(FILLED, logbook)
    items, *loaded = printed(LOOKED_AT, logbook)
    assert items == "1"
    of_log = {name.rpartition(".")[2] for name in loaded if name.startswith("worklog_tui.logbook.")}
    assert "outcomes" in of_log
    assert of_log <= {"outcomes", "wait", "standing", "corrections"}  # nouns, and which acts stand, for the card
    assert not [name for name in loaded if name.startswith(("worklog_tui.diagnosis.", "worklog_tui.notes.read"))]
    making = {"worklog_tui.rulebook.making", "worklog_tui.rulebook.lexicon", "worklog_tui.rulebook.says"}
    assert not making & set(loaded)  # the grammars were made ready by another process
    never_seen = {"worklog_tui.widgets.readings", "worklog_tui.widgets.viewers", "worklog_tui.widgets.machine_card"}
    assert not never_seen & set(loaded)
