"""Moving logbooks: export to a file of JSON lines, and merging such a file, or another logbook, into this one.

The file begins with a line that names format and version, and ends with one that holds the number of records and the
SHA-256 of all lines before it. Merging the same file again, or two logbooks in either order, gives the same.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import chain
from pathlib import Path
from typing import TYPE_CHECKING, Any

from worklog_tui import store
from worklog_tui.bench.acting import work_out
from worklog_tui.bench.machines import machines
from worklog_tui.bench.taking_in import pen, read_into
from worklog_tui.store.exchange import KINDS, Taken, records, take

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

FORMAT, VERSION = "worklog logbook", 1
PATIENCE = 30.0
"Seconds that a merge waits for the lock."


class Unmergeable(ValueError):
    """The file cannot be taken in; nothing was changed. The message is a plain sentence."""


@dataclass(frozen=True, slots=True)
class Merged:
    """What a merge brought."""

    machines: int
    sessions: int
    notes: int
    comments: int
    acts: int
    left_out: int
    "Records that name something which neither logbook nor file holds."
    alike: tuple[str, ...] = ()
    "Names that more than one machine has now: perhaps they are one."


def export(desk: Desk, to: Path) -> int:
    """Write the whole logbook, with the notes that wait, to a file; gives the number of records."""
    with pen(desk):
        pass
    if not to.parent.is_dir() or not os.access(to.parent, os.W_OK):
        raise store.NoPlaceFor(to)
    part = to.with_name(to.name + ".part")
    count = 0
    try:
        with store.reading(desk.logbook) as connection, part.open("w", encoding="utf-8", newline="\n") as file:
            for line in lines(records(connection)):
                file.write(line + "\n")
                count += 1
            file.flush()
        part.replace(to)
    except OSError:
        part.unlink(missing_ok=True)
        raise
    return count - 2


def lines(found: Iterable[dict[str, Any]]) -> Iterator[str]:
    """The lines of a file with these records, without their line ends."""
    digest, count = hashlib.sha256(), -1
    for data in chain([{"format": FORMAT, "version": VERSION}], found):
        count += 1
        text = json.dumps(data, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
        digest.update(text.encode() + b"\n")
        yield text
    yield json.dumps({"records": count, "sha256": digest.hexdigest()}, sort_keys=True)


def merge(desk: Desk, other: Path) -> Merged:
    """Take an exported file, or another logbook, into this one. Raises Unmergeable and the refusals of the store."""
    with other.open("rb") as file:
        head = file.read(16)
    if head.startswith(b"SQLite format 3"):
        with store.reading(other) as connection:
            found = list(records(connection))
    else:
        found = list(read(other))
    return take_in(desk, found)


def take_in(desk: Desk, found: Iterable[dict[str, Any]]) -> Merged:
    """Take records in, in one transaction, and work out what they alter."""
    with pen(desk, PATIENCE) as connection:
        taken = Taken()
        for data in sorted(found, key=lambda one: KINDS.index(one["kind"])):
            take(connection, data, taken)
        _work_out(desk, connection, taken)
        erased = any(taken.new.values()) and store.erasing.any_erased(connection)
    if erased:
        store.scour(desk.logbook, PATIENCE)
    names = [one.name for one in machines(desk)]
    alike = tuple(sorted({name for name in names if names.count(name) > 1}))
    counts = {kind: len(uids) for kind, uids in taken.new.items()}
    return Merged(
        counts["machine"], counts["session"], counts["note"], counts["comment"], counts["act"], taken.left_out, alike
    )


def _work_out(desk: Desk, connection: store.Connection, taken: Taken) -> None:
    """Read the new notes, and carry out every act that is new or is about something new."""
    if not any(taken.new.values()) and not taken.moved:
        return
    for uid in taken.new["act"]:
        act = store.acts.by_uid(connection, uid)
        if act is not None and act.verb == "set card":
            store.machines.keep_first_card(connection, act.target)
    by_session: dict[str, list[str]] = {}
    for uid in (*taken.new["note"], *taken.moved):
        where = store.wordings.note_session(connection, uid)
        assert where is not None, "it was taken in"
        by_session.setdefault(where[0], []).append(uid)
    for session, uids in by_session.items():
        found = store.sessions.find(connection, session)
        assert found is not None
        wanted = set(uids)
        notes = store.sessions.notes_of(connection, session, with_struck=True)
        if taken.moved and wanted.intersection(taken.moved):
            store.derived.clear_session(connection, session)
            wanted = {note.uid for note in notes}
        machine = store.machines.by_uid(connection, found.machine)
        read_into(desk, connection, machine, session, [note for note in notes if note.uid in wanted])
    work_out(desk, connection, store.acts.load(connection))


def read(path: Path) -> Iterator[dict[str, Any]]:
    """The records of an exported file, after its version and checksum were checked. Raises Unmergeable."""
    try:
        text = path.read_text("utf-8").splitlines()
    except UnicodeDecodeError as fault:
        raise Unmergeable(f"{path} is not a logbook that was exported; nothing was changed.") from fault
    head = _parsed(text[0]) if text else None
    if not head or head.get("format") != FORMAT:
        raise Unmergeable(f"{path} is not a logbook that was exported; nothing was changed.")
    if int(head.get("version", 0)) > VERSION:
        raise Unmergeable(f"{path} was exported by a newer version of this program; install that to merge it.")
    foot = _parsed(text[-1])
    whole = hashlib.sha256("".join(line + "\n" for line in text[:-1]).encode()).hexdigest()
    if not foot or foot.get("sha256") != whole or foot.get("records") != len(text) - 2:
        raise Unmergeable(f"{path} is cut off or was altered: export it again; nothing was changed.")
    for number, line in enumerate(text[1:-1], 2):
        data = _parsed(line)
        if not data or data.get("kind") not in KINDS or not isinstance(data.get("uid"), str):
            raise Unmergeable(f"{path}, line {number}: that is no record of a logbook; nothing was changed.")
        yield data


def _parsed(line: str) -> dict[str, Any] | None:
    try:
        data = json.loads(line)
    except ValueError:
        return None
    return data if isinstance(data, dict) else None
