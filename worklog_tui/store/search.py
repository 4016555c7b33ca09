"""Finds notes by their words and by what was read from them."""

from __future__ import annotations

from functools import lru_cache

from worklog_tui.logbook.words import SAME
from worklog_tui.model import Note
from worklog_tui.store import rows
from worklog_tui.store.files import Connection

RANKED_UP_TO = 2000
"More hits than this are not ranked by fit: the newest come first in any case."


def find(
    connection: Connection, text: str, machine: str | None = None, limit: int = 20, best_first: bool = False
) -> list[Note]:
    """Notes that hold all the words, said or read, newest first; `"in quotes"` is a phrase, `word*` a beginning.

    Newest is by when it was said; of more than RANKED_UP_TO hits, by when it came into the logbook. `best_first` ranks
    by fit instead, up to as many hits, where said counts twice as much as read. A word stands for its other spellings
    in the trade and for its other endings too. `machine` is a uid.
    """
    match = query(text)
    if not match:
        return []
    order = "note_words.rowid DESC"
    if _hits(connection, match, RANKED_UP_TO + 1) <= RANKED_UP_TO:
        said = "coalesce(note.utc, session.utc, '') DESC, note_words.rowid DESC"
        order = f"bm25(note_words, 2.0, 1.0), {said}" if best_first else said
    found = connection.execute(
        f"SELECT {rows.NOTE_COLUMNS} FROM note_words CROSS JOIN note ON note.id = note_words.rowid"
        " CROSS JOIN session ON session.id = note.session_id WHERE note_words MATCH ?1 AND NOT note.struck"
        " AND (?2 IS NULL OR note.machine_id = (SELECT id FROM machine WHERE uid = ?2))"
        f" ORDER BY {order} LIMIT ?3",
        (match, machine, limit),
    )
    return [rows.note(row) for row in found]


def query(text: str) -> str:
    """What a person typed, as an FTS5 query in which nothing but quotes and a closing star has a meaning."""
    parts = []
    for place, piece in enumerate(text.replace("\0", " ").split('"')):
        inside = place % 2 == 1
        for word in [piece.strip()] if inside else piece.split():
            star = "" if inside or not word.rstrip("*") or not word.endswith("*") else "*"
            bare = word if inside else word.rstrip("*")
            if any(character.isalnum() for character in bare):
                alike = () if inside or star else sorted(_spellings().get(bare.casefold(), ()))
                either = " OR ".join(f'"{one}"' for one in (bare, *alike))
                parts.append(f"({either})" if alike else f'"{bare}"{star}')
    return " AND ".join(parts)


@lru_cache(maxsize=1)
def _spellings() -> dict[str, frozenset[str]]:
    """For each word of the trade its other spellings, of both sides of the ocean and in short."""
    groups: dict[str, set[str]] = {}
    for said, same in SAME.items():
        groups.setdefault(same, {same}).add(said)
    return {word: frozenset(group - {word}) for group in groups.values() for word in group}


def _hits(connection: Connection, match: str, upto: int) -> int:
    counted: int = connection.execute(
        "SELECT count(*) FROM (SELECT 1 FROM note_words WHERE note_words MATCH ? LIMIT ?)", (match, upto)
    ).fetchone()[0]
    return counted
