"""Calls that run in a worker thread, one at a time, with their answers handed back to the screen."""

from __future__ import annotations

import asyncio
from collections import deque
from collections.abc import Callable
from functools import partial
from typing import Any, Generic, TypeVar

from textual.message_pump import MessagePump
from textual.screen import Screen
from textual.timer import Timer

Wish = TypeVar("Wish")
Answer = TypeVar("Answer")


class Queue(Generic[Wish, Answer]):
    """Does every wish, in the order in which they came. All but the call itself happens in the screen's own thread."""

    def __init__(
        self,
        screen: Screen[Any],
        call: Callable[[Wish], Answer],
        done: Callable[[Wish, Answer], None],
        failed: Callable[[Wish, Exception], None],
    ) -> None:
        self._screen = screen
        self._call = call
        self._done = done
        self._failed = failed
        self.waiting: deque[Wish] = deque()
        "Wishes without an answer yet, the one under way first."
        self._busy = False
        self._settled = asyncio.Event()
        self._settled.set()

    def want(self, wish: Wish) -> None:
        """Have a wish done when its turn comes."""
        self.waiting.append(wish)
        self._begin()

    async def settled(self) -> None:
        """Wait until nothing is under way."""
        await self._settled.wait()

    def _begin(self) -> None:
        if self._busy or not self.waiting:
            return
        self._busy = True
        self._settled.clear()
        self._screen.run_worker(partial(self._run, self.waiting[0]), thread=True, exit_on_error=False)

    def _run(self, wish: Wish) -> None:
        """In the worker thread."""
        try:
            answer = self._call(wish)
        except Exception as error:
            hand_back(self._screen, partial(self._finish, wish, partial(self._failed, wish, error)))
        else:
            hand_back(self._screen, partial(self._finish, wish, partial(self._done, wish, answer)))

    def _finish(self, wish: Wish, tell: Callable[[], None]) -> None:
        self._busy = False
        self.waiting.popleft()
        try:
            tell()
        finally:
            self._begin()
            if not self._busy:
                self._settled.set()


class Latest(Queue[Wish, Answer]):
    """Does the latest wish only; those that came and were overtaken are dropped."""

    def want(self, wish: Wish) -> None:
        """Have this wish done next, in place of any that waits."""
        while len(self.waiting) > 1:
            self.waiting.pop()
        super().want(wish)


class Rest:
    """Has something done once nobody has asked for it for a while: a worker thread takes time from the keys."""

    def __init__(self, screen: Screen[Any], seconds: float, call: Callable[[], None]) -> None:
        self._screen = screen
        self._seconds = seconds
        self._call = call
        self._timer: Timer | None = None

    def want(self) -> None:
        """Have it done after the pause, which begins anew."""
        if self._timer is not None:
            self._timer.stop()
        self._timer = self._screen.set_timer(self._seconds, self._done)

    def put_off(self) -> None:
        """Begin the pause anew if something is wanted."""
        if self._timer is not None:
            self.want()

    def _done(self) -> None:
        self._timer = None
        self._call()


def hand_back(pump: MessagePump, tell: Callable[[], None]) -> None:
    """Have something said in the thread of a screen; nothing happens when that is gone."""
    pump.call_later(tell)


def reason(error: Exception) -> str:
    """What went wrong, as the end of a sentence."""
    return (str(error) or type(error).__name__).rstrip(".")
