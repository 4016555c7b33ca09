"""The three moments with the shipped grammars: while filming, afterwards, and coming back three weeks later.

On an invented machine of the demo and on a labelled case of talk (`tests/cases`).
"""

from __future__ import annotations

import random
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from textual import events

from tests.screens.bench_in_memory import on_screen, settle, type_in
from tests.screens.logbook_desk import Clock, Here
from worklog_tui import places
from worklog_tui.app import Recorder
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history
from worklog_tui.bench.machines import add_machine, read_card
from worklog_tui.bench.review import review
from worklog_tui.screens.closing_up import ClosingUpScreen

ROOT = Path(__file__).resolve().parents[2]
FOLDERS = {
    "demo": ROOT / "demo_sessions" / "cider-mill-engine",
    "case": ROOT / "tests" / "cases" / "learnt" / "band-saw",
}
SAID = ("the drive belt is cracked, need a new one", "set the gap to 20 thou", "left it soaking for two days")
VIEWERS = """@anna_b
2 weeks ago
Which belt is on it?
Reply

@miller7
1 day ago
Lovely old thing, keep going!
Reply
"""


@pytest.mark.parametrize("folder", FOLDERS.values(), ids=list(FOLDERS))
async def test_filming_afterwards_and_coming_back(tmp_path: Path, folder: Path) -> None:
    clock, chance = Clock(datetime(2032, 4, 12, 14, 5, tzinfo=UTC)), random.Random(1)
    desk = Desk(
        tmp_path / "log.db", (places.grammars(),), clock, "bench-one", lambda: chance.getrandbits(74),
        cache=places.cache(),
    )  # fmt: skip
    name = add_machine(desk, read_card(folder / "machine.toml")[0]).name
    app = Recorder(Here(desk), name)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("f2")  # the camera runs
        await settle(pilot)
        for words in SAID:
            clock.moment += timedelta(seconds=50)
            await type_in(pilot, words)
            await settle(pilot)
            assert "Understood: " in on_screen(app)
            await pilot.press("enter")
            await settle(pilot)
            assert "Kept 14:0" in on_screen(app)
        await pilot.press("f3", "f2")  # this moment is kept, and the camera stops
        await settle(pilot)
        assert "not filming" in on_screen(app)
        app.post_message(events.Paste(sorted(folder.glob("session-1.*"))[0].read_text("utf-8")))
        await settle(pilot)
        assert "in it" in on_screen(app)
        await pilot.press("k")
        await settle(pilot)
        await pilot.press("escape")
        app.post_message(events.Paste(VIEWERS))
        await settle(pilot)
        await pilot.press("k")
        await settle(pilot)
        assert "2 comments of viewers" in on_screen(app)
        await pilot.pause(1.2)
        await settle(pilot)
        await pilot.press("escape", "g")
        await settle(pilot)
        assert isinstance(app.screen, ClosingUpScreen)
        await pilot.press("1", "escape")
        await settle(pilot)
    clock.moment += timedelta(days=21)
    later = Recorder(Here(desk), name)
    async with later.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        seen = on_screen(later)
        assert "[since last time]" in seen
        assert "3 weeks ago" in seen
        await pilot.press("escape", "s")
        await settle(pilot)
        assert "Next: " in on_screen(later)
        assert "Why: " in on_screen(later)
        await pilot.press("escape", "o")
        await settle(pilot)
        assert "belt" in on_screen(later).split("[open items", 1)[1]
    told = {note.words for one in history(desk, name).sessions for note in one.notes}
    assert set(SAID) <= told
    still = [item.about for item in review(desk, name).items if item.state in ("open", "awaited")]
    assert any("belt" in about for about in still)
