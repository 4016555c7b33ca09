"""The drill: backup, lose everything, restore; every row of every table is what it was. And what is left of a damaged
file goes into a new one."""

from __future__ import annotations

import random
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from tests.bench.conftest import Clock
from tests.bench.test_undoing import ACTS, MACHINES, SAYINGS, Bench, do
from tests.keeping.conftest import ROUNDS, hashes
from worklog_tui import store
from worklog_tui.bench.backups import back_up, put_back
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.exchange import export
from worklog_tui.bench.history import history
from worklog_tui.bench.looking_after import Unsalvageable, check, salvage
from worklog_tui.bench.record import keep_note
from worklog_tui.cli import main
from worklog_tui.model import Machine


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Bench:
    """Two machines with sessions, and every kind of correction."""
    bench, chance = Bench(str(tmp_path_factory.mktemp("made"))), random.Random(7)
    for number in range(300):
        bench.say(number % 2, SAYINGS[number % len(SAYINGS)], 5 * (number % 60 == 59))
    for number in range(len(ACTS)):
        do(bench, (number, chance.choice(MACHINES), chance.randrange(20), chance.randrange(20)))
    return bench


@pytest.fixture
def bench(made: Bench, tmp_path: Path) -> Bench:
    """The same on a copy of its own."""
    copy = Bench.__new__(Bench)
    copy.clock = made.clock
    copy.desk = replace(made.desk, logbook=tmp_path / "l.db", _kept={})
    shutil.copyfile(back_up(made.desk, tmp_path / "first.db"), copy.desk.logbook)
    return copy


def lose(logbook: Path) -> None:
    for path in logbook.parent.glob(logbook.name + "*"):
        if path.is_file():
            path.unlink()


def test_backup_lose_restore(bench: Bench, tmp_path: Path) -> None:
    before, state = hashes(bench.desk.logbook), bench.state()
    copy = back_up(bench.desk, tmp_path / "copy.db")
    lose(bench.desk.logbook)
    assert put_back(bench.desk, copy).exists() is False, "there was nothing to copy aside"
    assert hashes(bench.desk.logbook) == before
    assert bench.state() == state


def test_the_same_by_commands(bench: Bench, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before, logbook, copy = hashes(bench.desk.logbook), str(bench.desk.logbook), str(tmp_path / "copy.db")
    assert main(["backup", "--logbook", logbook, copy]) == 0
    lose(bench.desk.logbook)
    assert main(["restore", "--logbook", logbook, copy]) == 0
    assert hashes(bench.desk.logbook) == before
    assert main(["check", "--logbook", logbook]) == 0
    assert "The logbook is whole." in capsys.readouterr().out


def test_a_whole_logbook_has_nothing_to_complain_of(bench: Bench) -> None:
    found = check(bench.desk)
    assert found.problems == ()
    assert (found.machines, found.waiting) == (2, 0)
    assert found.notes == 300


def test_what_is_wrong_is_told(desk: Desk, saw: Machine) -> None:
    keep_note(desk, saw.name, "the guide is cracked")
    with store.writing(desk.logbook) as connection:
        connection.execute("UPDATE note SET revision = 3")
        connection.execute("DELETE FROM note_words_docsize")
    assert check(desk).problems == ("The search knows 0 of 1 notes.", "1 notes show a wording that is not kept.")
    assert main(["check", "--logbook", str(desk.logbook)]) == 1


def test_a_damaged_file_gives_what_it_still_holds(bench: Bench, tmp_path: Path) -> None:
    whole = bench.desk.logbook.read_bytes()
    words = {note.words for name in MACHINES for note in bench.notes(name)}
    uids = {note.uid for name in MACHINES for note in bench.notes(name)}
    chance, found = random.Random(17), []
    for number in range(max(ROUNDS // 4, 5)):
        folder = tmp_path / f"{number}"
        folder.mkdir()
        damaged, to = folder / "damaged.db", folder / "new.db"
        data = bytearray(whole)
        for _ in range(3):
            page = chance.randrange(1, len(data) // 4096) * 4096
            data[page : page + 4096] = bytes(chance.randrange(256) for _ in range(4096))
        damaged.write_bytes(data)
        try:
            salvage(bench.desk, damaged, to)
        except (Unsalvageable, store.Refused):
            assert damaged.read_bytes() == data
            continue
        assert damaged.read_bytes() == data, "the damaged file is left alone"
        fresh = replace(bench.desk, logbook=to, _kept={})
        assert check(fresh).problems == ()
        kept = {n.uid: n.words for name in MACHINES for r in history(fresh, name).sessions for n in r.notes}
        found.append(len(uids & set(kept)))
        assert sum(said in words for said in kept.values()) >= 0.9 * len(kept)
    assert found
    print(f"\n{max(ROUNDS // 4, 5)} damaged files: {len(found)} gave notes, at most {max(found)} of {len(uids)}")
    assert max(found) > 200, "most of the notes come back"


def test_salvage_takes_the_notes_that_waited_and_never_overwrites(bench: Bench, tmp_path: Path) -> None:
    from filelock import FileLock

    hasty = replace(bench.desk, patience=0.05)
    with FileLock(bench.desk.logbook.with_name(bench.desk.logbook.name + ".lock")):
        waiting = keep_note(hasty, MACHINES[0], "the fence is cracked")
    assert waiting.spooled
    to = tmp_path / "new.db"
    salvage(bench.desk, bench.desk.logbook, to)
    fresh = replace(bench.desk, logbook=to, _kept={})
    assert waiting.note.uid in {n.uid for r in history(fresh, MACHINES[0]).sessions for n in r.notes}
    with pytest.raises(Unsalvageable, match="exists already"):
        salvage(bench.desk, bench.desk.logbook, to)
    (tmp_path / "text.db").write_text("not a database at all, but long enough to be looked at as one" * 20)
    with pytest.raises(Unsalvageable, match="Nothing could be read"):
        salvage(bench.desk, tmp_path / "text.db", tmp_path / "other.db")


def test_export_and_merge_by_commands(bench: Bench, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file, other = tmp_path / "all.jsonl", tmp_path / "other.db"
    assert main(["export", "--logbook", str(bench.desk.logbook), str(file)]) == 0
    assert main(["merge", "--logbook", str(other), str(file)]) == 0
    assert "300 notes" in capsys.readouterr().out
    assert main(["merge", "--logbook", str(other), str(file)]) == 0
    assert "nothing new" in capsys.readouterr().out
    file.write_text(file.read_text("utf-8").replace("cracked", "whole"), "utf-8")
    assert main(["merge", "--logbook", str(other), str(file)]) == 1
    assert "cut off or was altered" in capsys.readouterr().err


def test_an_export_is_the_same_whenever_it_is_made(bench: Bench, tmp_path: Path, clock: Clock) -> None:
    export(bench.desk, tmp_path / "one.jsonl")
    bench.clock.go_on(days=3)
    export(bench.desk, tmp_path / "two.jsonl")
    assert (tmp_path / "one.jsonl").read_bytes() == (tmp_path / "two.jsonl").read_bytes()
