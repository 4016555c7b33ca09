"""The commands that publish, on the invented machines."""

from __future__ import annotations

import csv
import io
import json
import sys
from pathlib import Path

import pytest

from worklog_tui.bench.demo import fill
from worklog_tui.cli import main


@pytest.fixture(scope="module")
def logbook(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("shop") / "logbook.db"
    fill(path)
    return path


@pytest.fixture(autouse=True)
def here(logbook: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("WORKLOG_TUI_LOGBOOK", str(logbook))


@pytest.mark.parametrize(
    ("name", "begins"),
    [("log.html", "<!DOCTYPE html>"), ("log.md", "# Repair log"), ("log.json", "{"), ("log.csv", "session,day")],
)
def test_the_ending_of_the_file_tells_what_is_written(name: str, begins: str, tmp_path: Path) -> None:
    assert main(["repair-log", "--machine", "Cider", "-o", str(tmp_path / name)]) == 0
    assert (tmp_path / name).read_text(encoding="utf-8").startswith(begins)
    assert [file.name for file in tmp_path.iterdir()] == [name]


def test_without_a_file_markdown_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["repair-log", "--machine", "Chapel", "--sessions", "1"]) == 0
    printed = capsys.readouterr().out
    assert "Session 1, 3 February 2025." in printed
    assert "### Session 2" not in printed


@pytest.mark.parametrize("table", ["readings", "work", "parts"])
def test_each_table_can_be_had(table: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["repair-log", "--machine", "Cider", "--as", "csv", "--table", table]) == 0
    assert len(list(csv.reader(io.StringIO(capsys.readouterr().out)))) > 1


@pytest.mark.parametrize("name", ["sheet.html", "sheet.md"])
def test_a_hand_over_sheet_tells_how_it_is_stopped(name: str, tmp_path: Path) -> None:
    assert main(["hand-over", "--machine", "Chapel", "-o", str(tmp_path / name)]) == 0
    text = (tmp_path / name).read_text(encoding="utf-8")
    assert "isolator off" in text
    assert "Stopping" in text


def test_chapters_can_be_edited_and_given_back(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made = tmp_path / "chapters.txt"
    assert main(["film", "--machine", "Cider", "--sessions", "1", "--only", "chapters", "-o", str(made)]) == 0
    mine = made.read_text(encoding="utf-8").replace("0:00 Cider mill engine", "0:00 Out of the barn <i>")
    made.write_text(mine, encoding="utf-8")
    capsys.readouterr()
    assert main(["film", "--machine", "Cider", "--sessions", "1", "--chapters", str(made)]) == 0
    assert "\n0:00 Out of the barn (i)" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("chapters", "says"),
    [("0:05 One\n1:00 Two\n2:00 Three", "not at 0:00"), ("0:00 One\n1:00 Two", "there are 2"), ("", "there are 0"),
     ("0:00 One\n0:04 Two\n2:00 Three", "shorter than ten"), ("0:00 One\nTwo\n2:00 Three", "“Two” is not")],
)  # fmt: skip
def test_edited_chapters_that_a_platform_would_not_take_are_refused(
    chapters: str, says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "chapters.txt"
    file.write_text(chapters, encoding="utf-8")
    assert main(["film", "--machine", "Cider", "--chapters", str(file)]) == 2
    assert says in capsys.readouterr().err


def test_a_film_has_valid_chapters(capsys: pytest.CaptureFixture[str]) -> None:
    from worklog_tui.reports.chapters import problems

    assert main(["film", "--machine", "Cider", "--sessions", "1", "--only", "chapters"]) == 0
    assert problems(capsys.readouterr().out.strip().splitlines()) == []


def test_comments_are_sorted_and_none_is_kept_when_only_looked_at(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    pasted = tmp_path / "pasted.txt"
    pasted.write_text("How big is the flywheel?\n\nhow big is that flywheel\n\nNice.\n", encoding="utf-8")
    assert main(["comments", "Chapel", str(pasted), "--only-look", "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert (found["comments"], found["chatter"], found["groups"][0]["count"]) == (3, 1, 2)
    assert main(["comments", "Chapel"]) == 0
    assert "There are no comments yet." in capsys.readouterr().out


def test_a_calendar_without_entries_is_not_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["calendar", "--machine", "Cider", "-o", str(tmp_path / "shop.ics")]) == 0
    assert "no calendar was written" in capsys.readouterr().err
    assert not list(tmp_path.iterdir())


def test_a_line_made_private_is_gone_until_that_is_taken_back(capsys: pytest.CaptureFixture[str]) -> None:
    words = "nephew has found the biscuits"
    assert main(["private", "--machine", "Cider", "2/2:20"]) == 0
    assert main(["repair-log", "--machine", "Cider", "--as", "page"]) == 0
    printed = capsys.readouterr()
    assert f"{words}</" not in printed.out
    assert "1 private note" in printed.err
    assert main(["undo"]) == 0
    assert main(["repair-log", "--machine", "Cider", "--as", "page"]) == 0
    assert words in capsys.readouterr().out


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (
            ["repair-log", "--machine", "Cider", "--sessions", "9"],
            "There is no such session: the machine has 2 sessions",
        ),
        (["repair-log", "--machine", "Cider", "--sessions", "last"], "named by their numbers"),
        (["repair-log", "--machine", "Cider", "--table", "work"], "--table is for --as csv alone"),
        (["repair-log", "--machine", "Cider", "-o", "no/such/folder/log.md"], "check the name"),
        (["hand-over", "--machine", "Cider", "-o", "sheet.csv"], "name the file .html or .md"),
        (["film", "--machine", "Chapel"], "No line of these sessions has a place in a film"),
        (["film", "--machine", "Cider", "--joined", "26"], "written like 26:50,37:10"),
        (["film", "--machine", "Cider", "--joined", "26:50"], "give the length of each clip"),
        (["comments", "Cider", "no-such-file.txt"], "There is no file"),
    ],
)
def test_what_cannot_be_is_told_in_one_sentence(call: list[str], says: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(call) in (1, 2)
    assert says in capsys.readouterr().err


@pytest.mark.parametrize(
    ("module", "call"),
    [
        ("jinja2", ["repair-log", "--machine", "Cider", "--as", "page"]),
        ("defusedcsv.csv", ["repair-log", "--machine", "Cider", "--as", "csv"]),
    ],
)
def test_a_missing_library_is_named_with_the_way_to_get_it(
    module: str, call: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from worklog_tui.reports import page

    page._environment.cache_clear()
    monkeypatch.setitem(sys.modules, module, None)
    assert main(call) == 1
    assert "pip install 'worklog-tui[publish]'" in capsys.readouterr().err


def test_markdown_and_json_need_no_further_library(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for module in ("jinja2", "markupsafe", "defusedcsv", "icalendar"):
        monkeypatch.setitem(sys.modules, module, None)
    for shape in ("markdown", "json"):
        assert main(["repair-log", "--machine", "Chapel", "--as", shape]) == 0
    assert capsys.readouterr().out
