"""What stands in the lists of machines, open items and next steps."""

from __future__ import annotations

from textual.app import App, ComposeResult

from worklog_tui.bench.machines import MachineLine
from worklog_tui.model import Advice, FactKey, Instant, OpenItem, Place, Step
from worklog_tui.widgets.items import OpenItems, still_open
from worklog_tui.widgets.machines import Machines
from worklog_tui.widgets.next_step import NextStep
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

PLACE = Place(2, "n1", "14:05")


def item(about: str, state: str = "open", reason: str = "part needed") -> OpenItem:
    return OpenItem((FactKey("n1", "follow_up", 0, 4),), about, "", reason, state, PLACE)


def texts(rows: Rows) -> list[str]:
    return [text for row in rows.rows for text in (row.words, row.below) if text]


def test_open_items_are_grouped_and_what_was_dealt_with_comes_last() -> None:
    rows = OpenItems()
    items = [item("belt"), item("paint", "left so", "to do"), item("old oil", "done"), item("blade", "awaited")]
    rows.show_items(items)
    assert texts(rows) == [
        "Open (1)", "belt", "part needed, session 2, 14:05",
        "Awaited (1)", "blade", "part needed, session 2, 14:05",
        "Left so on purpose (1)", "paint", "to do, session 2, 14:05",
        "Dealt with last (1)", "old oil", "session 2, 14:05",
    ]  # fmt: skip
    assert still_open(items) == 1


def test_an_item_of_viewers_says_how_many_asked() -> None:
    rows = OpenItems()
    rows.show_items([OpenItem((), "which oil", "", "question", "open", None, comment=3, people=4)])
    assert "a question, asked by 4 viewers" in texts(rows)


def test_the_next_step_says_why_how_long_and_what_it_would_mean() -> None:
    rows = NextStep()
    care = ("mind the shock (Source: common practice.)",)
    best = Step("look at the spark", "quick to do", 5, care, ("no spark: the coil",), ("cover",))
    rows.show_advice(Advice("will not start", steps=(best, Step("check the fuel", "it stood long"))))
    assert texts(rows) == [
        "Next: look at the spark", "Why: quick to do. About 5 minutes. First off: cover.",
        "Take care", "mind the shock", "Source: common practice.",
        "What you may see, and what it means", "no spark: the coil", "Or else", "check the fuel", "it stood long",
    ]  # fmt: skip


def test_no_word_of_the_data_format_stands_in_a_list() -> None:
    rows = OpenItems()
    rows.show_items([item("pull the head", reason="fallback"), item("gasket", reason="temporary")])
    said = " ".join(texts(rows))
    assert not any(word in said for word in ("follow_up", "fallback", "role", "verdict"))


def test_machines_tell_what_is_known_and_how_to_get_another() -> None:
    rows = Machines()
    rows.show_machines([
        MachineLine("m1", "Saw", "band saw", 2, 45, Instant("2031-04-12T14:05:00Z"), 3),
        MachineLine("m2", "Pump", "", 0, 0, None, None),
    ])  # fmt: skip
    assert texts(rows)[:4] == [
        "Saw", "band saw, 2 sessions, 45 notes, last worked on Saturday 12 April 2031, 3 open", "Pump", "no notes yet",
    ]  # fmt: skip
    assert [row.key for row in rows.rows] == ["Saw", "Pump", Machines.NEW, Machines.DEMO]


async def test_the_arrow_keys_go_from_row_to_row_past_the_headings() -> None:
    class Shown(App[None]):
        def compose(self) -> ComposeResult:
            yield Rows()

    app = Shown()
    async with app.run_test() as pilot:
        rows = app.query_one(Rows)
        rows.show([Row.of("Gap", heading=True), Row.of("points"), Row.of("Current", heading=True), Row.of("motor")])
        rows.focus()
        pointed = []
        for key in ("down", "up", "up"):
            await pilot.press(key)
            assert rows.row is not None
            pointed.append(rows.row.words)
        assert pointed == ["motor", "points", "Gap"]
