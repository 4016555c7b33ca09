"""Words are drawn as they are, whatever is in them: nothing is run, nothing vanishes, nothing reaches the terminal."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from textual import events

from tests.screens.bench_in_memory import Bench, on_screen, settle, type_in
from worklog_tui.app import Recorder
from worklog_tui.model import Machine

WORDS = [
    "[b]bold[/b] torque [/] 40",
    "[/",
    '[/red] [type=x, v={"a[0]"}]',
    "[@click=app.quit]press[/]",
    "[0.5mm] [photo 3]",
    "$primary [on red]",
    "\\[escaped\\]",
    "<script>alert(1)</script>",
    "{{7*7}} ${HOME} `id`",
    ":wrench: :smile:",
]
DIRTY = [
    ("gap \x1b[31mred\x1b[0m", "gap red"),
    ("a\x1b]0;owned\x07b", "ab"),
    ("a\x9b2Jb", "ab"),
    ("abc\u202edef", "abcdef"),
    ("nul\x00 bell\x07 del\x7f", "nul bell del"),
    ("zero\u200bwidth", "zerowidth"),
]
_CONTROL = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2066-\u2069]")


@pytest.mark.parametrize("size", [(80, 24), (140, 40)])
@pytest.mark.parametrize("words", WORDS)
async def test_notes_items_and_advice_are_literal(bench: Bench, words: str, size: tuple[int, int]) -> None:
    bench.keep_note("Band saw", words)
    bench.keep_note("Band saw", f"need a new belt {words}")
    bench.step = words
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        assert words in on_screen(app)
        await pilot.press("escape", "s")
        await pilot.pause()
        assert on_screen(app).count(words) >= (1 if size[0] < 110 else 2)
        await pilot.press("o")
        await pilot.pause()
        assert not _CONTROL.search(on_screen(app))
        assert app.is_running


@pytest.mark.parametrize("words", WORDS)
async def test_typed_words_and_refusals_are_literal(bench: Bench, words: str) -> None:
    bench.refuse = ValueError(words)
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, f"{words} x")
        await settle(pilot)
        assert f"{words} x" in on_screen(app)
        await pilot.press("enter")
        await settle(pilot)
        assert f"Not kept: {words}" in on_screen(app)


@pytest.mark.parametrize("words", WORDS)
async def test_names_of_machines_are_literal(bench: Bench, words: str) -> None:
    bench.cards.append(Machine(words, kind=words, uid="m2"))
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert on_screen(app).count(words) == 2
        await pilot.press("down", "enter")
        await settle(pilot)
        assert on_screen(app).startswith(f"{words}, not filming, no notes yet")


@pytest.mark.parametrize("words", WORDS)
async def test_a_paste_is_shown_literally(bench: Bench, words: str) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        app.post_message(events.Paste(f"{words} one\n{words} two"))
        await settle(pilot)
        assert f"{words} one" in on_screen(app)


@pytest.mark.parametrize(("words", "shown"), DIRTY)
async def test_old_words_with_control_characters_reach_the_screen_without_them(
    bench: Bench, words: str, shown: str
) -> None:
    bench.keep_note("Band saw", words)
    bench.cards[0] = Machine("Band saw", kind=words, uid="m1")
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert shown in on_screen(app)
        assert not _CONTROL.search(on_screen(app))
        await pilot.press("escape", "m")
        await settle(pilot)
        assert shown in on_screen(app)
        assert not _CONTROL.search(on_screen(app))


def test_no_screen_and_no_widget_hands_text_to_textual_without_the_one_safe_way() -> None:
    rooms = Path(__file__).parents[2] / "worklog_tui"
    for file in [*rooms.glob("screens/*.py"), *rooms.glob("widgets/*.py")]:
        text = file.read_text("utf-8")
        assert not re.search(r"\.update\((?!literal\(|key_underlined\(|value=literal\()", text), file.name
        assert not re.search(r"\bStatic\((?!literal\(|\"[^\"{]*\"|\))", text), file.name
        assert "notify(" not in text, file.name
