"""Calls in worker threads: in order, one at a time, the overtaken ones dropped."""

from __future__ import annotations

import threading

from textual.app import App
from textual.screen import Screen

from tests.screens.bench_in_memory import settle
from worklog_tui.screens.background import Latest, Queue


class Place(Screen[None]):
    """A screen that notes what it is told."""

    def __init__(self) -> None:
        super().__init__()
        self.told: list[object] = []


class Program(App[int]):
    """A program with that screen."""

    def on_mount(self) -> None:
        self.place = Place()
        self.push_screen(self.place)


async def test_every_wish_is_done_in_order_and_a_failure_stops_none() -> None:
    app = Program()
    async with app.run_test() as pilot:
        place = app.place

        def call(wish: int) -> int:
            assert threading.current_thread() is not threading.main_thread()
            return 12 // wish

        queue = Queue[int, int](place, call, lambda w, a: place.told.append(a), lambda w, e: place.told.append(str(e)))
        for wish in (1, 2, 0, 3):
            queue.want(wish)
        await queue.settled()
        await settle(pilot)
        assert place.told == [12, 6, "integer division or modulo by zero", 4]


async def test_only_the_latest_wish_is_done_after_the_one_under_way() -> None:
    app = Program()
    async with app.run_test() as pilot:
        place, gate = app.place, threading.Event()

        def call(wish: int) -> int:
            gate.wait(5)
            return wish

        latest = Latest[int, int](place, call, lambda w, a: place.told.append(a), lambda w, e: None)
        for wish in range(5):
            latest.want(wish)
        gate.set()
        await latest.settled()
        await settle(pilot)
        assert place.told == [0, 4]
