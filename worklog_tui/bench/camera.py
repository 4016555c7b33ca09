"""The camera beside the work: clips that begin and end, its counter, and marks for the cutting table."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, sign
from worklog_tui.bench.live import keep_note
from worklog_tui.bench.machines import named
from worklog_tui.bench.open_session import session_at
from worklog_tui.bench.taking_in import pen
from worklog_tui.model.acts import MARK_FILM
from worklog_tui.model.clip import Clip
from worklog_tui.model.moments import clock
from worklog_tui.store import clips

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

MARKS = ("keep", "shoot again", "cut", "still")
LONGEST = 6 * 3600
"Seconds: a clip that seems to run for longer was forgotten; it is ended where the next one begins."
_COUNTER = re.compile(r"(?:(\d{1,2})[:.])?(\d{1,3})[:.](\d{2})|(\d{1,5})")


@dataclass(frozen=True, slots=True)
class Filmed:
    """What the camera does now, and what was done, in a plain sentence."""

    clip: Clip | None
    "The clip that runs; None when the camera does not."
    says: str = ""


def running(desk: Desk, machine_name: str) -> Filmed:
    """Whether the camera runs."""
    with store.reading(desk.logbook) as connection:
        clip = clips.running(connection, named(connection, machine_name).uid)
    return Filmed(clip if clip is not None and clip.second(desk.now()) - clip.offset < LONGEST else None)


def begin_or_end(desk: Desk, machine_name: str) -> Filmed:
    """The camera was switched on or off; without an open session one begins with a note that says so."""
    if running(desk, machine_name).clip is None:
        return _begin(desk, machine_name)
    with pen(desk) as connection:
        clip = clips.running(connection, named(connection, machine_name).uid)
        if clip is None:
            raise CannotAct("The camera does not run.")
        clips.end(connection, clip.uid, desk.instant().utc)
    return Filmed(None, f"The clip ends at {clock(clip.second(desk.now()))}.")


def _begin(desk: Desk, machine_name: str) -> Filmed:
    with store.reading(desk.logbook) as connection:
        last = store.sessions.last_live(connection, named(connection, machine_name).uid)
    session = session_at(last, desk.instant(), desk.quiet_hours)
    uid = session.uid if session is not None else keep_note(desk, machine_name, "Filming begins.").session.uid
    clip = Clip(desk.uid(), uid, desk.instant())
    with pen(desk) as connection:
        forgotten = clips.running(connection, named(connection, machine_name).uid)
        if forgotten is not None:
            clips.end(connection, forgotten.uid, clip.start.utc)
        clips.add(connection, clip)
        number = len(clips.of_session(connection, uid))
    return Filmed(clip, f"Clip {number} begins.")


def set_counter(desk: Desk, machine_name: str, text: str) -> Filmed:
    """What the camera's counter shows now, such as 12:31; the clip counts on from there."""
    found = _COUNTER.fullmatch(text.strip())
    if found is None:
        raise CannotAct(f"“{text}” is no time of a counter; write it as 12:31 or 1:02:05.")
    hours, minutes, seconds, alone = (int(part) if part else 0 for part in found.groups())
    shown = hours * 3600 + minutes * 60 + seconds + alone
    with pen(desk) as connection:
        clip = clips.running(connection, named(connection, machine_name).uid)
        if clip is None:
            raise CannotAct("The camera does not run; begin a clip first.")
        clip = replace(clip, offset=shown - (clip.second(desk.now()) - clip.offset))
        clips.set_offset(connection, clip.uid, clip.offset)
    return Filmed(clip, f"The camera's counter stands at {clock(shown)}.")


def mark(desk: Desk, machine_name: str, what: str) -> Filmed:
    """Mark this moment of the film: one of MARKS."""
    if what not in MARKS:
        raise CannotAct(f"A moment can be marked {', '.join(MARKS)}.")
    with pen(desk) as connection:
        clip = clips.running(connection, named(connection, machine_name).uid)
        if clip is None:
            raise CannotAct("The camera does not run; begin a clip first.")
        second = clip.second(desk.now())
        sign(desk, connection, MARK_FILM, clip.session, {"clip": clip.uid, "second": second, "mark": what})
    return Filmed(clip, f"Film {clock(second)}: {what}.")
