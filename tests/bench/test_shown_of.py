"""What goes to the screen: all that a place shows, and no more."""

from __future__ import annotations

import pickle
from datetime import UTC, datetime
from pathlib import Path

import pytest
from textual.app import App, ComposeResult

from worklog_tui.bench.demo import fill
from worklog_tui.bench.machines import machines
from worklog_tui.bench.outlook import Outlook, outlook
from worklog_tui.bench.shown_of import shown_of
from worklog_tui.widgets.items import OpenItems
from worklog_tui.widgets.last_time import LastTime
from worklog_tui.widgets.row import Row


@pytest.fixture(scope="module")
def looks(tmp_path_factory: pytest.TempPathFactory) -> list[Outlook]:
    desk, _ = fill(Path(tmp_path_factory.mktemp("demo")) / "demo.db")
    return [outlook(desk, one.name) for one in machines(desk)]


class Places(App[None]):
    def compose(self) -> ComposeResult:
        yield LastTime()
        yield OpenItems()

    def rows(self, known: Outlook) -> list[Row]:
        last, items = self.query_one(LastTime), self.query_one(OpenItems)
        now = known.recap.start.moment() if known.recap.start else datetime(2031, 4, 12, 9, 0, tzinfo=UTC)
        last.show_recap(known.recap, known.last_words, known.advice, now, known.before)
        items.show_items(known.items, known.noticed)
        return [*last.rows, *items.rows]


async def test_since_last_time_and_the_open_items_say_the_same(looks: list[Outlook]) -> None:
    async with Places().run_test() as pilot:
        places = pilot.app
        assert isinstance(places, Places)
        for known in looks:
            assert len(places.rows(known)) > 5
            assert places.rows(shown_of(known)) == places.rows(known)


def test_an_item_is_still_named_by_its_first_anchor(looks: list[Outlook]) -> None:
    for known in looks:
        assert [i.anchors[:1] for i in shown_of(known).items] == [i.anchors[:1] for i in known.items]


def test_it_is_never_more_to_send(looks: list[Outlook]) -> None:
    assert all(len(pickle.dumps(shown_of(known))) <= len(pickle.dumps(known)) for known in looks)
