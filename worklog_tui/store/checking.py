"""Looking a logbook file over, and taking out of a damaged one what it still holds."""

from __future__ import annotations

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing, suppress
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from worklog_tui.model import Note
from worklog_tui.store import exchange, rows, schema, spool
from worklog_tui.store.files import Connection, reading

MOST_LOST = 20
"After so many portions in a row that cannot be read whole, the rest is given up."
STEP = 200
"Rows that are asked for at once in a damaged file; fewer where a page cannot be read."


def problems(path: Path) -> list[str]:
    """What is wrong with a logbook, in sentences; empty when it is whole. Raises the refusals of `reading`."""
    found = []
    with reading(path) as connection:
        whole = [row[0] for row in connection.execute("PRAGMA integrity_check(20)")]
        found += [] if whole == ["ok"] else [f"The file is damaged: {one}." for one in whole]
        lost = connection.execute("PRAGMA foreign_key_check").fetchall()
        found += [f"{len(lost)} rows name others that are not there."] if lost else []
        with suppress(sqlite3.DatabaseError):
            found += _search(connection)
        found += _told(connection)
    torn = spool.aside(path)
    if torn.is_dir() and any(torn.iterdir()):
        found.append(f"Notes that could not be read lie in {torn}: look at them with an editor.")
    return found


def _search(connection: Connection) -> list[str]:
    notes = connection.execute("SELECT count(*) FROM note").fetchone()[0]
    found = connection.execute("SELECT count(*) FROM note_words_docsize").fetchone()[0]
    return [] if notes == found else [f"The search knows {found} of {notes} notes."]


def _told(connection: Connection) -> list[str]:
    """Notes whose session or wording do not fit together."""
    asked = (
        ("SELECT count(*) FROM note WHERE revision > 0 AND NOT EXISTS (SELECT 1 FROM revision"
         " WHERE note_id = note.id AND number = note.revision)", "show a wording that is not kept"),
        ("SELECT count(*) FROM note JOIN session ON session.id = note.session_id"
         " WHERE session.machine_id <> note.machine_id", "stand with another machine than their session"),
    )  # fmt: skip
    counted = ((connection.execute(sql).fetchone()[0], what) for sql, what in asked)
    return [f"{number} notes {what}." for number, what in counted if number]


def waiting(path: Path) -> int:
    """How many notes wait beside the logbook."""
    return len(spool.waiting(path))


def version() -> int:
    """The version of the files that this program writes."""
    return schema.VERSION


def salvaged(path: Path) -> Iterator[dict[str, Any]]:
    """The records that can still be read from a damaged logbook; whatever cannot is passed over. It is not touched."""
    with TemporaryDirectory() as folder:
        copy = Path(folder) / "damaged.db"
        shutil.copyfile(path, copy)
        log = path.with_name(path.name + "-wal")
        if log.exists():
            shutil.copyfile(log, copy.with_name(copy.name + "-wal"))
        with closing(sqlite3.connect(copy)) as connection:
            connection.row_factory = sqlite3.Row
            connection.text_factory = lambda data: data.decode("utf-8", "replace")
            for kind in exchange.KINDS:
                yield from _rescued(connection, kind)
    for one in spool.waiting(path):
        utc, zone, offset, known = rows.instant_values(one.session.start)
        yield {
            "kind": "session", "uid": one.session.uid, "machine": one.session.machine, "arrival": one.session.arrival,
            "source": one.session.source, "utc": utc, "zone": zone, "utc_offset": offset, "known": known,
        }  # fmt: skip
        yield _note(one.note)


def _note(note: Note) -> dict[str, Any]:
    """A note that waited beside the logbook, as a record."""
    utc, zone, offset, known = rows.instant_values(note.instant)
    return {
        "kind": "note", "uid": note.uid, "session": note.session, "arrival": note.arrival, "track": note.track,
        "words": note.words, "film": note.film, "stands_at": note.at or 0, "at": note.at, "said_at": note.said_at,
        "utc": utc, "zone": zone, "utc_offset": offset, "known": known,
    }  # fmt: skip


def _rescued(connection: Connection, kind: str) -> Iterator[dict[str, Any]]:
    try:
        connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()
    except sqlite3.DatabaseError:
        return
    try:
        yield from exchange.records_of(connection, kind)
        return
    except (sqlite3.DatabaseError, ValueError):
        pass
    try:
        last = int(connection.execute(f"SELECT max(id) FROM {kind}").fetchone()[0] or 0)
    except (sqlite3.DatabaseError, TypeError):
        last = 1_000_000
    yield from _between(connection, kind, 1, last)


def _between(connection: Connection, kind: str, first: int, last: int) -> Iterator[dict[str, Any]]:
    """The records with these ids, in ever smaller portions where a page cannot be read."""
    lost = 0
    for start in range(first, last + 1, STEP):
        end = min(start + STEP - 1, last)
        try:
            yield from list(exchange.records_of(connection, kind, (start, end)))
            lost = 0
            continue
        except (sqlite3.DatabaseError, ValueError):
            lost += 1
        if lost > MOST_LOST:
            return
        for one in range(start, end + 1):
            with suppress(sqlite3.DatabaseError, ValueError):
                yield from list(exchange.records_of(connection, kind, (one, one)))
