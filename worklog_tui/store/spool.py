"""Notes that could not be written at once: each a file beside the logbook, until the next writer takes it in."""

from __future__ import annotations

import hashlib
import json
import os
import time
from collections.abc import Iterable
from contextlib import suppress
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from worklog_tui.model import Instant, Note, Session
from worklog_tui.store import refusals

_UNFINISHED_AFTER = 60.0  # seconds; a younger part may still be being written


@dataclass(frozen=True, slots=True)
class Spooled:
    """A note that waits, with the session that it belongs to or begins."""

    session: Session
    note: Note
    file: Path


def folder(logbook: Path) -> Path:
    """Where the notes of a logbook wait."""
    return logbook.with_name(logbook.name + ".spool")


def aside(logbook: Path) -> Path:
    """Where files go that cannot be read, so that a person can look at them."""
    return folder(logbook) / "unreadable"


def put(logbook: Path, session: Session, note: Note) -> None:
    """Keep a note; when this returns, it is on the disk."""
    body = json.dumps({"session": asdict(session), "note": asdict(note)}, ensure_ascii=False).encode()
    try:
        folder(logbook).mkdir(parents=True, exist_ok=True)
        target = folder(logbook) / f"{note.uid}.json"
        part = target.with_suffix(".part")
        with part.open("wb") as file:
            file.write(hashlib.sha256(body).hexdigest().encode() + b"\n" + body)
            file.flush()
            os.fsync(file.fileno())
        part.replace(target)
        _sync(folder(logbook))
        _sync(logbook.parent)
    except OSError as fault:
        raise refusals.of_system(fault, logbook) from fault


def waiting(logbook: Path) -> list[Spooled]:
    """The notes that wait, oldest first; torn files are set aside."""
    if not folder(logbook).is_dir():
        return []
    found = []
    for file in sorted(folder(logbook).glob("*.json")):
        try:
            found.append(_read(file))
        except FileNotFoundError:
            continue  # another writer has just taken it in
        except (ValueError, KeyError, TypeError):
            set_aside(logbook, file)
    for part in folder(logbook).glob("*.part"):
        with suppress(FileNotFoundError):
            if time.time() - part.stat().st_mtime > _UNFINISHED_AFTER:
                set_aside(logbook, part)
    return found


def discard(taken: Iterable[Spooled]) -> None:
    """Remove what has been taken in; only after the logbook has it for good."""
    for one in taken:
        one.file.unlink(missing_ok=True)


def set_aside(logbook: Path, file: Path) -> None:
    """Move a file that cannot be taken in to where a person can look at it."""
    aside(logbook).mkdir(exist_ok=True)
    with suppress(FileNotFoundError):
        file.replace(aside(logbook) / file.name)


def _read(file: Path) -> Spooled:
    told, _, body = file.read_bytes().partition(b"\n")
    if hashlib.sha256(body).hexdigest().encode() != told:
        raise ValueError(f"{file} is torn")
    data: dict[str, Any] = json.loads(body)
    session, note = dict(data["session"]), dict(data["note"])
    for part, name in ((session, "start"), (note, "instant")):
        part[name] = Instant(**part[name]) if part[name] else None
    return Spooled(Session(**session), Note(**note), file)


def _sync(place: Path) -> None:
    if os.name == "nt":
        return  # a folder cannot be opened there
    handle = os.open(place, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
