"""The moments of a film that were marked while it was shot, for whoever cuts it."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from worklog_tui import store
from worklog_tui.bench.history import history
from worklog_tui.logbook.standing import standing
from worklog_tui.model.acts import MARK_FILM
from worklog_tui.model.moments import clock
from worklog_tui.store import clips

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model.clip import Clip


class Marked(NamedTuple):
    """One marked moment."""

    second: int
    "What the camera's counter showed."
    mark: str
    "keep, shoot again, cut or still."


def film_marks(desk: Desk, machine: str) -> list[tuple[Clip, list[Marked]]]:
    """Every clip of a machine that has marks, with those that were not taken back, in the order of the counter."""
    known = history(desk, machine)
    of_clip: dict[str, list[Marked]] = {}
    for act in standing(known.acts):
        if act.verb == MARK_FILM and isinstance(act.value, dict):
            of_clip.setdefault(act.value["clip"], []).append(Marked(act.value["second"], act.value["mark"]))
    with store.reading(desk.logbook) as connection:
        every = [clips.of_session(connection, one.session.uid) for one in known.sessions]
    return [(clip, sorted(of_clip[clip.uid])) for found in every for clip in found if clip.uid in of_clip]


def film_marks_text(marked: list[tuple[Clip, list[Marked]]]) -> str:
    """The same as plain lines, clip by clip."""
    if not marked:
        return "No moment of a film was marked yet. While the camera runs, 2 to 4 and 6 mark one in the recorder.\n"
    rows = []
    for clip, marks in marked:
        rows += [f"Clip of {clip.start.moment():%Y-%m-%d %H:%M}", *(f"  {clock(m.second):>8}  {m.mark}" for m in marks)]
    return "\n".join(rows) + "\n"
