"""The camera from the keys: clips, its counter, marks for the cutting table, one key each, also while typing."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

from textual.binding import Binding, BindingType

from worklog_tui.screens.background import Queue, reason
from worklog_tui.screens.card_acts import CardActs

if TYPE_CHECKING:
    from worklog_tui.bench.camera import Filmed
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model.clip import Clip
    from worklog_tui.screens.errands import Errands

FILM_KEYS: list[BindingType] = [
    Binding("f2,1", "clip", "camera on or off", id="film.clip", tooltip="The camera goes on or off", show=False),
    Binding("f3,2", "mark('keep')", "film: keep", id="film.keep", tooltip="Film: keep this moment", show=False),
    Binding(
        "f4,3", "mark('shoot again')", "film: shoot again", id="film.again", tooltip="Film: shoot this again",
        show=False,
    ),
    Binding("f8,4", "mark('cut')", "film: cut", id="film.cut", tooltip="Film: cut this", show=False),
    Binding(
        "f10,6", "mark('still')", "film: still", id="film.still", tooltip="Film: take a still picture of this",
        show=False,
    ),
    Binding("f9,5", "counter", "camera's counter", id="film.counter", tooltip="Type what the camera shows", show=False),
]  # fmt: skip


class FilmWish(NamedTuple):
    """Something to do with the camera."""

    call: Callable[[Desk], Filmed]


class Filming(CardActs):
    """A screen that knows whether the camera runs."""

    def __init__(self, errands: Errands, machine: str) -> None:
        super().__init__(errands, machine)
        self.clip: Clip | None = None
        "The clip that runs."
        self._films: Queue[FilmWish, Filmed] = Queue(
            self, lambda wish: errands.film(wish.call), self._filmed, self._not_filmed
        )

    def look_at_camera(self) -> None:
        """Whether a clip runs since before this window was opened."""
        self._film(_running, self.machine)

    def action_clip(self) -> None:
        """The camera was switched on or off."""
        self._film(_begin_or_end, self.machine)

    def action_mark(self, what: str) -> None:
        """Mark this moment of the film."""
        self._film(_mark, self.machine, what)

    def action_counter(self) -> None:
        """Ask what the camera's counter shows."""
        from worklog_tui.screens.asking import Asking

        def answer(given: dict[str, str] | None) -> None:
            if given and given["counter"]:
                self._film(_set_counter, self.machine, given["counter"])

        self.app.push_screen(Asking("What does the camera's counter show now, such as 12:31?", {"counter": ""}), answer)

    def camera_changed(self) -> None:
        """The head line is to say so."""

    def _film(self, call: Callable[..., Filmed], *arguments: str) -> None:
        self._films.want(FilmWish(lambda desk: call(desk, *arguments)))

    def _filmed(self, _: FilmWish, filmed: Filmed) -> None:
        self.clip = filmed.clip
        if filmed.says:
            self.say(filmed.says)
        self.camera_changed()

    def _not_filmed(self, _: FilmWish, error: Exception) -> None:
        self.say(f"{reason(error)}.")


def _running(desk: Desk, machine: str) -> Filmed:
    from worklog_tui.bench import camera

    return camera.running(desk, machine)


def _begin_or_end(desk: Desk, machine: str) -> Filmed:
    from worklog_tui.bench import camera

    return camera.begin_or_end(desk, machine)


def _mark(desk: Desk, machine: str, what: str) -> Filmed:
    from worklog_tui.bench import camera

    return camera.mark(desk, machine, what)


def _set_counter(desk: Desk, machine: str, text: str) -> Filmed:
    from worklog_tui.bench import camera

    return camera.set_counter(desk, machine, text)
