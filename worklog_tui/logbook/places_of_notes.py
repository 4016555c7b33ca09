"""Where and when notes stand after a person moved them: sessions split, joined, dated, given to another machine."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Any

from worklog_tui.model import Act, Instant, clock

_FILM = re.compile(r"(?:\d+:)?\d{1,3}:\d\d")
_WALL = re.compile(r"(\d{1,2}):(\d\d)(:\d\d)?")


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a note stands."""

    session: str
    at: int | None
    said_at: str
    stands_at: int
    instant: Instant | None
    track: str = "typed"
    film: int | None = None


@dataclass(frozen=True, slots=True)
class Frame:
    """What a session is part of."""

    machine: str
    start: Instant | None


@dataclass(slots=True)
class Layout:
    """Notes and sessions by uid."""

    spots: dict[str, Spot]
    frames: dict[str, Frame]


def laid_out(came: Layout, acts: Iterable[Act]) -> Layout:
    """The layout after the acts that stand, in their order; one that names what is not there changes nothing."""
    now = Layout(dict(came.spots), dict(came.frames))
    for act in acts:
        value = act.value if isinstance(act.value, dict) else {}
        if act.verb == "shift lines":
            for uid in value.get("notes", ()):
                if uid in now.spots:
                    now.spots[uid] = shifted(now.spots[uid], int(value.get("seconds", 0)))
        elif act.verb == "place in film":
            for uid, second in value.get("places", {}).items():
                if uid in now.spots:
                    now.spots[uid] = replace(now.spots[uid], film=int(second))
        elif act.verb == "same machine":
            for uid, frame in now.frames.items():
                if frame.machine == act.target:
                    now.frames[uid] = replace(frame, machine=str(value["as"]))
        elif act.target in now.frames:
            _on_session(now, act.verb, act.target, value)
    return now


def _on_session(now: Layout, verb: str, session: str, value: Mapping[str, Any]) -> None:
    frame = now.frames[session]
    match verb:
        case "move session":
            now.frames[session] = replace(frame, machine=str(value["machine"]))
        case "date session":
            now.frames[session] = replace(frame, start=instant_of(value.get("start")))
        case "join sessions" if value.get("into") in now.frames and value["into"] != session:
            _join(now, session, str(value["into"]))
        case "split session":
            _split(now, session, value)


def _join(now: Layout, session: str, into: str) -> None:
    """The notes of a session go into another, after its own unless the clock says otherwise."""
    later, earlier = now.frames[session].start, now.frames[into].start
    apart = -1
    if later is not None and earlier is not None:
        apart = int((later.moment() - earlier.moment()).total_seconds())
    if apart < 0:
        own = [spot.stands_at for spot in now.spots.values() if spot.session == into]
        apart = max(own, default=-1) + 1
    for uid, spot in now.spots.items():
        if spot.session == session:
            at = None if spot.at is None else spot.at + apart
            now.spots[uid] = replace(spot, session=into, at=at, stands_at=spot.stands_at + apart)


def _split(now: Layout, session: str, value: Mapping[str, Any]) -> None:
    """Some notes of a session become one of their own."""
    going = [uid for uid in value.get("notes", ()) if uid in now.spots and now.spots[uid].session == session]
    if not going:
        return
    base = min(now.spots[uid].stands_at for uid in going)
    frame = now.frames[session]
    start = instant_of(value["start"]) if "start" in value else later_by(frame.start, base)
    now.frames[str(value["new"])] = Frame(str(value.get("machine") or frame.machine), start)
    for uid in going:
        spot = now.spots[uid]
        at = None if spot.at is None else max(spot.at - base, 0)
        now.spots[uid] = replace(spot, session=str(value["new"]), at=at, stands_at=spot.stands_at - base)


def shifted(spot: Spot, seconds: int) -> Spot:
    """The spot so many seconds later."""
    at = None if spot.at is None else max(spot.at + seconds, 0)
    instant = later_by(spot.instant, seconds)
    if instant is not None and spot.track == "live":
        said = f"{instant.moment():%H:%M}"
    else:
        said = _said_later(spot.said_at, spot.track, seconds)
    return replace(spot, at=at, said_at=said, stands_at=spot.stands_at + seconds, instant=instant)


def later_by(instant: Instant | None, seconds: int) -> Instant | None:
    """The instant so many seconds later."""
    if instant is None:
        return None
    return replace(instant, utc=Instant.of(instant.moment() + timedelta(seconds=seconds)).utc)


def _said_later(said: str, track: str, seconds: int) -> str:
    if track == "captions" and _FILM.fullmatch(said):
        total = 0
        for part in said.split(":"):
            total = total * 60 + int(part)
        return clock(total + seconds)
    wall = _WALL.fullmatch(said)
    if track == "captions" or wall is None:
        return said
    second = int(wall[3][1:]) if wall[3] else 0
    total = (int(wall[1]) * 3600 + int(wall[2]) * 60 + second + seconds) % 86_400
    hours, rest = divmod(total, 3600)
    return f"{hours:02}:{rest // 60:02}" + (f":{rest % 60:02}" if wall[3] else "")


def instant_of(data: Any) -> Instant | None:
    """The instant of an act's value; None for none."""
    return Instant(**data) if isinstance(data, dict) else None
