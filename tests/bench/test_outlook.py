"""A look at the whole log comes in two parts: what stands in the log at once, the advice when it is worked out."""

from __future__ import annotations

from pathlib import Path

from worklog_tui import places
from worklog_tui.bench.desk import Desk, open_desk
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.outlook import outlook, worked_out_apart
from worklog_tui.bench.record import keep_note
from worklog_tui.model import Machine


def on_the_bench(folder: Path) -> Desk:
    desk = open_desk(folder / "log.db")
    add_machine(desk, Machine("Chaff cutter", kind="single-cylinder petrol engine"))
    for words in ("the engine will not start, no spark at the plug", "need a new drive belt"):
        keep_note(desk, "Chaff cutter", words)
    return desk


def test_open_items_come_before_the_advice_from_a_process_of_its_own(tmp_path: Path) -> None:
    assert places.grammars().is_dir()
    desk = on_the_bench(tmp_path)
    first, last = worked_out_apart(desk, "Chaff cutter")
    assert [item.about for item in first.items if item.state == "open"] == ["drive belt"]
    assert (first.whole, first.advice.steps) == (False, ())
    assert last.whole
    assert last.advice.steps
    assert last.cautions
    here = outlook(desk, "Chaff cutter")
    assert (here.items, here.advice.steps[0].step) == (last.items, last.advice.steps[0].step)
