"""The draft beside the logbook: one for each window, there after a crash, gone when all is kept."""

from __future__ import annotations

from pathlib import Path

from worklog_tui.screens.draft import Draft


def test_a_draft_is_there_for_the_next_window_once_the_first_has_gone(tmp_path: Path) -> None:
    log = tmp_path / "log.db"
    first = Draft(log, "Band saw")
    assert first.take() == ""
    first.words = "half a thought\nand ½ more"
    first.leave()
    assert Draft(log, "Band saw").take() == "half a thought\nand ½ more"


def test_two_windows_on_one_machine_do_not_share_a_draft(tmp_path: Path) -> None:
    log = tmp_path / "log.db"
    first, second = Draft(log, "Band saw"), Draft(log, "Band saw")
    first.take()
    first.words = "mine"
    first.write()
    assert second.take() == ""
    second.words = "yours"
    second.write()
    first.leave()
    assert Draft(log, "Band saw").take() == "mine"


def test_each_machine_has_its_own(tmp_path: Path) -> None:
    log = tmp_path / "log.db"
    saw = Draft(log, "Band saw")
    saw.take()
    saw.words = "of the saw"
    saw.leave()
    assert Draft(log, "Pump").take() == ""


def test_no_words_no_file(tmp_path: Path) -> None:
    draft = Draft(tmp_path / "log.db", "Band saw")
    draft.take()
    draft.words = "some"
    draft.write()
    draft.words = ""
    draft.write()
    assert list(tmp_path.glob("*.txt")) == []


def test_a_place_that_cannot_be_written_costs_nothing_but_the_draft(tmp_path: Path) -> None:
    draft = Draft(tmp_path / "no" / "such" / "folder" / "log.db", "Band saw")
    assert draft.take() == ""
    draft.words = "some"
    draft.write()
    draft.leave()
