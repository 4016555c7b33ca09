"""The throw-away logbook of the demo, the check of the grammar files, and the trail of a line."""

from __future__ import annotations

from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.bench.demo import fill
from worklog_tui.bench.explain import trail
from worklog_tui.bench.grammar_files import mistakes, warnings
from worklog_tui.bench.review import review
from worklog_tui.model import Machine
from worklog_tui.rulebook import Rulebook


@pytest.fixture
def own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A person's own grammars, and a home of their own."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    folder = tmp_path / "own"
    folder.mkdir()
    return folder


def test_the_demo_fills_a_logbook(own: Path, tmp_path: Path) -> None:
    desk, names = fill(tmp_path / "demo.db")
    assert names == ["Chapel organ blower", "Cider mill engine", "Print shop guillotine"]
    assert all(len(review(desk, name).history.sessions) == 2 for name in names)
    seen = review(desk, "Cider mill engine")
    assert seen.items
    assert len(seen.comments) == 9


def test_the_shipped_grammars_are_in_order() -> None:
    assert mistakes([places.grammars()]) == []


def test_no_shipped_pattern_waits_for_a_name_that_nothing_has() -> None:
    assert warnings([places.grammars()]) == []


def test_a_pattern_that_can_never_match_is_told(own: Path) -> None:
    (own / "sayings").mkdir(exist_ok=True)
    (own / "sayings" / "own.toml").write_text(
        '[[rule]]\nid = "own.wombat"\nsays = "(<thing=wombat grease>|<thing=hose>) glows"\n'
        'gives = { kind = "finding", part = "hose", condition = "glows", verdict = "bad" }\n'
        'examples = [{ text = "hose glows", part = "hose" }, { text = "the hose glows", part = "hose" }]\n'
        'never = ["hose"]\nconfidence = 0.8\n',
        encoding="utf-8",
    )
    (told,) = warnings([places.grammars(), own])
    assert "own.wombat" in told
    assert "<thing=wombat grease>" in told


@pytest.mark.parametrize(
    ("file", "text"),
    [
        ("comments.toml", "[[cue]\n"),
        ("comments.toml", '[[cue]]\nkind = "question"\n'),
        ("parts/own.toml", "part = [\n"),
    ],
)
def test_a_mistake_names_its_file_and_what_mends_it(own: Path, file: str, text: str) -> None:
    (own / file).parent.mkdir(exist_ok=True)
    (own / file).write_text(text, encoding="utf-8")
    found = mistakes([places.grammars(), own])
    assert found
    assert all(file in said and "; " in said for said in found)


def test_a_line_has_a_trail(book: Rulebook) -> None:
    said = "\n".join(trail(book, Machine("Cider mill engine"), "points gap is eight thou\x1b[2J"))
    assert "eight thou" in said
    assert "\x1b" not in said
