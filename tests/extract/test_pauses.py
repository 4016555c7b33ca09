"""Where a sentence ends when speech to text sets no stop: where so long was nothing said that it must have ended."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import FollowUp, Machine, Note, Suspect
from worklog_tui.rulebook import Rulebook

SHEETER = Machine("Dough sheeter", "belt dough sheeter with a gear motor")
LINES = ("either the drive belt or the clutch", "spring, two bolts are missing")


@pytest.mark.parametrize(
    ("gap", "causes"),
    [
        (40, ["drive belt", "clutch"]),  # seven words in forty seconds: a pause
        (None, ["drive belt", "clutch spring"]),  # no times: it may go on
    ],
)
def test_a_pause_ends_a_sentence(book: Rulebook, gap: int | None, causes: list[str]) -> None:
    times = (None, None) if gap is None else (0, gap)
    notes = [Note(f"n{i}", "s", LINES[i], at=times[i], track="captions", arrival=i) for i in (0, 1)]
    found = [f.cause for f in read_session(book, SHEETER, notes) if isinstance(f, Suspect)]
    assert found == causes


def test_words_that_follow_at_once_go_on(book: Rulebook) -> None:
    notes = [
        Note("a", "s", "I'll have to order a new", at=0, track="captions", arrival=0),
        Note("b", "s", "shaft seal for this", at=3, track="captions", arrival=1),
    ]
    assert [f.about for f in read_session(book, SHEETER, notes) if isinstance(f, FollowUp)] == ["shaft seal"]
