"""A long paste says how far it is, is kept whole or not at all, and can be looked through before it is kept."""

from __future__ import annotations

import pytest

from worklog_tui.bench.desk import Desk
from worklog_tui.bench.importing import keep_lines
from worklog_tui.bench.review import timeline
from worklog_tui.bench.telling import Stopped
from worklog_tui.bench.trying import try_out
from worklog_tui.model import Machine
from worklog_tui.notes.reading import read_text

LINES = "\n".join(f"the belt number {n} is worn" for n in range(250))
CAPTIONS = "\n".join(f"[{n // 60}:{n % 60:02}] the belt number {n} is worn" for n in range(250))


@pytest.mark.parametrize("text", [LINES, CAPTIONS])
def test_it_tells_after_every_line_how_far_it_is(desk: Desk, saw: Machine, text: str) -> None:
    told: list[int] = []
    kept = keep_lines(desk, saw.name, text, lambda done: told.append(done) or True)  # type: ignore[func-returns-value]
    assert told == list(range(1, 251))
    assert len(kept) == 250


@pytest.mark.parametrize("text", [LINES, CAPTIONS])
def test_what_is_stopped_leaves_nothing_in_the_logbook(desk: Desk, saw: Machine, text: str) -> None:
    with pytest.raises(Stopped):
        keep_lines(desk, saw.name, text, lambda done: done < 100)
    assert timeline(desk, saw.name) == ()
    assert len(keep_lines(desk, saw.name, text)) == 250


def test_looking_through_a_paste_writes_nothing_and_finds_what_keeping_finds(desk: Desk, saw: Machine) -> None:
    looks = list(try_out(desk, saw.name, read_text(LINES)))
    assert [look.done for look in looks] == [100, 200, 250]
    assert timeline(desk, saw.name) == ()
    kept = keep_lines(desk, saw.name, LINES)
    assert looks[-1].count == sum(len(one.facts) for one in kept)
    assert looks[-1].asked == sum(len(one.questions) for one in kept)
