"""A paste is taken whole, shown before it is kept, and kept with one key."""

from __future__ import annotations

from pathlib import Path

import pytest
from textual import events

from tests.screens.bench_in_memory import Bench, on_screen, settle
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui.app import Recorder
from worklog_tui.bench.history import history
from worklog_tui.bench.trying import TriedOut
from worklog_tui.notes.comments import looks_like_comments, read_comments
from worklog_tui.notes.reading import read_text
from worklog_tui.screens.errands import Pasted
from worklog_tui.screens.long_work import LongWork
from worklog_tui.screens.paste import PasteQuestion, shape_of, told
from worklog_tui.widgets.note_line import NoteLine

CAPTIONS = "\n".join(f"[{n // 60}:{n % 60:02}] the belt slips at mark {n}" for n in range(50))


@pytest.mark.parametrize("size", [(80, 24), (140, 40)])
async def test_fifty_lines_are_asked_about_once_and_kept_whole(bench: Bench, size: tuple[int, int]) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        app.post_message(events.Paste(CAPTIONS))
        await settle(pilot)
        assert isinstance(app.screen, PasteQuestion)
        assert "50 lines, captions with times: keep?" in on_screen(app)
        assert "50 lines tell nothing for the log" in on_screen(app)
        await pilot.press("end")
        await pilot.pause()
        assert "the belt slips at mark 49" in on_screen(app)
        assert bench.notes == []
        await pilot.press("k")
        await settle(pilot)
        assert bench.pastes == [CAPTIONS]
        assert len(bench.notes) == 50
        assert "50 notes" in on_screen(app)


async def test_some_of_a_paste_is_kept_line_by_line_or_only_what_tells_something(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock())
    app = recorder(desk)
    lines = "[0:05] good evening\n[0:20] the guide is cracked\n[0:40] a cup of tea\n[1:00] the table cleaned"
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        app.post_message(events.Paste(lines))
        await settle(pilot)
        await pilot.press("l")
        await pilot.pause()
        assert on_screen(app).count("left out") == 2
        await pilot.press("end", "space")
        await pilot.pause()
        assert on_screen(app).count("left out") == 3
        await pilot.press("home", "space")
        await pilot.pause()
        assert on_screen(app).count("left out") == 2
        await pilot.press("k")
        await settle(pilot)
        await pilot.press("escape")
        await settle(pilot)
        app.post_message(events.Paste(lines))
        await settle(pilot)
    (record,) = history(desk, SAW).sessions
    assert [note.words for note in record.notes] == ["good evening", "the guide is cracked"]


async def test_a_paste_of_which_every_line_is_left_out_leaves_nothing(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await settle(pilot)
        app.post_message(events.Paste("[0:05] good evening\n[0:40] a cup of tea"))
        await settle(pilot)
        await pilot.press("l", "k")
        await settle(pilot)
        assert bench.notes == []
        assert "Nothing of the paste was kept." in on_screen(app)


async def test_a_paste_that_is_not_wanted_leaves_nothing(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await settle(pilot)
        app.post_message(events.Paste(CAPTIONS))
        await settle(pilot)
        await pilot.press("escape")
        await settle(pilot)
        assert bench.notes == []
        assert "Nothing of the paste was kept." in on_screen(app)


async def test_a_paste_while_a_list_is_in_use_goes_to_the_note_line(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await settle(pilot)
        await pilot.press("escape")
        app.post_message(events.Paste("one line\n"))
        await settle(pilot)
        assert app.screen.query_one(NoteLine).text == "one line"
        assert isinstance(app.focused, NoteLine)


async def test_a_pasted_line_with_escape_sequences_is_made_harmless(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await settle(pilot)
        app.post_message(events.Paste("gap \x1b[2J\x1b]0;title\x0718\u202e thou\x9b"))
        await settle(pilot)
        text = app.screen.query_one(NoteLine).text
        assert text == "gap 18 thou"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[0:02] one\n[0:05] two", "2 lines, captions with times"),
        ("14:05 one\n14:07 two\n14:20 three", "3 lines, lines with times"),
        ("it would not turn\nso I took the guard off", "2 lines, no times"),
    ],
)
def test_a_paste_is_named_by_its_shape(text: str, said: str) -> None:
    assert shape_of(pasted(text)) == said


async def test_what_each_line_tells_is_shown_and_those_that_tell_nothing_can_be_seen_alone(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        app.post_message(events.Paste("set the gap 18 thou\nhello there\nneed a new belt"))
        await settle(pilot)
        seen = on_screen(app)
        assert "Each line becomes a note: 3. 2 facts in it; 1 line tells nothing for the log." in seen
        assert "gap of the points set to 0.018 in" in seen
        await pilot.press("w")
        await pilot.pause()
        assert "hello there" in on_screen(app)
        assert "need a new belt" not in on_screen(app)


COMMENTS = "@sawdust_1\n2 weeks ago\nWhich belt is it?\nReply\n\n@other\n1 day ago\nTry a longer one\nReply"


@pytest.mark.parametrize(("key", "kept", "notes"), [("k", [COMMENTS], 0), ("o", [], 8), ("escape", [], 0)])
async def test_comments_copied_from_a_page_are_known_and_kept_as_such(
    bench: Bench, key: str, kept: list[str], notes: int
) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        app.post_message(events.Paste(COMMENTS))
        await settle(pilot)
        seen = on_screen(app)
        assert "2 comments, written by viewers: keep?" in seen
        assert "Which belt is it?" in seen
        assert "sawdust_1" not in seen
        await pilot.press(key)
        await settle(pilot)
        assert bench.comments == kept
        assert len(bench.notes) == notes


async def test_some_comments_are_left_out_as_lines_are(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        app.post_message(events.Paste(COMMENTS))
        await settle(pilot)
        await pilot.press("space", "k")
        await settle(pilot)
        assert bench.comments == ["Try a longer one"]


async def test_long_work_shows_how_far_it_is_and_is_stopped_without_loss(bench: Bench) -> None:
    text = "\n".join(f"the belt slips at mark {n}" for n in range(900))
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        app.post_message(events.Paste(text))
        await settle(pilot)
        bench.hold.clear()
        await pilot.press("k")
        await pilot.pause()
        assert isinstance(app.screen, LongWork)
        assert "Reading and keeping 900 lines." in on_screen(app)
        await pilot.press("escape")
        await pilot.pause()
        bench.hold.set()
        await settle(pilot)
        assert bench.notes == []
        assert isinstance(app.screen, PasteQuestion)  # asked about again
        await pilot.press("k")
        await settle(pilot)
        assert len(bench.notes) == 900


def test_running_text_says_how_many_notes_it_becomes() -> None:
    text = (
        "The belt was slack and came off twice. I put it back and\n"
        "tightened it. After that it ran for an hour without any\ntrouble."
    )
    found = pasted(text)
    assert "3 lines of running text are put together to 1 note" in told(found, TriedOut(1, {}, {}))


def test_lines_without_sentence_ends_stay_notes_of_their_own() -> None:
    found = pasted("\n".join(f"the cover came off and bolt {n} was stiff but free" for n in range(20_000)))
    assert len(found.read.lines) == 20_000
    assert "Each line becomes a note: 20000" in told(found, TriedOut(100, {}, {}))


def pasted(text: str) -> Pasted:
    """A paste as the recorder looks at it."""
    return Pasted(text, read_text(text), looks_like_comments(text), tuple(one.words for one in read_comments(text)))


@pytest.mark.parametrize("keys", ["t enter", "g", "question_mark", "t e", "t a", "slash", "b"])
async def test_a_paste_over_any_page_is_asked_about_and_the_page_stands_there_after(tmp_path: Path, keys: str) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "look again")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", *keys.split())
        await settle(pilot)
        before = app.screen
        app.post_message(events.Paste(CAPTIONS))
        await settle(pilot)
        assert isinstance(app.screen, PasteQuestion)
        await pilot.press("escape")
        await settle(pilot)
        assert app.screen is before


async def test_a_short_paste_of_two_lines_goes_into_a_field_whole(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "t", "e", "ctrl+u")
        app.post_message(events.Paste("the guide\nis cracked again\n"))
        await settle(pilot)
        await pilot.press("enter")
        await settle(pilot)
    assert [note.words for note in history(desk, SAW).sessions[0].notes] == ["the guide is cracked again"]


async def test_where_no_machine_is_open_a_paste_is_answered(bench: Bench) -> None:
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        app.post_message(events.Paste(CAPTIONS))
        await settle(pilot)
        assert "put a machine on the bench first, then paste it there." in " ".join(on_screen(app).split())
