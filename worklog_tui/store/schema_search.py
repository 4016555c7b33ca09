"""The step by which a search finds a note by what was read from it too, and a word by its other endings."""

from __future__ import annotations

_FIELDS = ("name", "action", "used", "condition", "quantity", "standing", "reason", "cause")
_PIECES = "about" + "".join(f" || coalesce(' ' || json_extract(data, '$.{name}'), '')" for name in _FIELDS)
_SAID = "coalesce((SELECT group_concat(" + _PIECES + ", ' / ') FROM fact WHERE note_id = {row}.note_id), '')"
"The words of all facts of a note; what stands in no fact is left out."


def _read_again(row: str) -> str:
    """Puts the words of a note's facts together again, where they are other ones."""
    return f"""    INSERT INTO note_read (note_id, words) VALUES ({row}.note_id, {_SAID.format(row=row)})
    ON CONFLICT (note_id) DO UPDATE SET words = excluded.words WHERE words IS NOT excluded.words;"""


def _index(row: str, words: str, read: str, gone: bool = False) -> str:
    """Adds the words of a note to the index, or takes them out."""
    columns = "note_words, rowid, words, read" if gone else "rowid, words, read"
    first = "'delete', " if gone else ""
    return f"    INSERT INTO note_words ({columns}) VALUES ({first}{row}, {words}, {read});"


_NOW_READ = "coalesce((SELECT words FROM note_read WHERE note_id = NEW.id), '')"
_NOW_SAID = "(SELECT words FROM note WHERE id = NEW.note_id)"

FACTS_FOUND = (
    "DROP TRIGGER note_words_added",
    "DROP TRIGGER note_words_changed",
    "DROP TABLE note_words",
    """CREATE TABLE note_read (  -- the words of what was read from a note, for the search
    note_id INTEGER PRIMARY KEY REFERENCES note (id),
    words TEXT NOT NULL
) STRICT""",
    f"INSERT INTO note_read SELECT DISTINCT note_id, {_SAID.format(row='one')} FROM fact AS one",
    "CREATE VIEW searched AS SELECT note.id, note.words, coalesce(note_read.words, '') AS read"
    " FROM note LEFT JOIN note_read ON note_read.note_id = note.id",
    'CREATE VIRTUAL TABLE note_words USING fts5(words, read, content="searched", content_rowid="id",'
    ' tokenize="porter unicode61 remove_diacritics 2")',
    "INSERT INTO note_words (note_words) VALUES ('rebuild')",
    "CREATE TRIGGER note_words_added AFTER INSERT ON note\nBEGIN\n"
    + _index("NEW.id", "NEW.words", "''") + "\nEND",
    "CREATE TRIGGER note_words_changed AFTER UPDATE OF words ON note\nBEGIN\n"
    + _index("OLD.id", "OLD.words", _NOW_READ, gone=True) + "\n"
    + _index("NEW.id", "NEW.words", _NOW_READ) + "\nEND",
    "CREATE TRIGGER note_read_added AFTER INSERT ON note_read\nBEGIN\n"
    + _index("NEW.note_id", _NOW_SAID, "''", gone=True) + "\n"
    + _index("NEW.note_id", _NOW_SAID, "NEW.words") + "\nEND",
    "CREATE TRIGGER note_read_changed AFTER UPDATE OF words ON note_read\nBEGIN\n"
    + _index("NEW.note_id", _NOW_SAID, "OLD.words", gone=True) + "\n"
    + _index("NEW.note_id", _NOW_SAID, "NEW.words") + "\nEND",
    f"CREATE TRIGGER fact_found AFTER INSERT ON fact\nBEGIN\n{_read_again('NEW')}\nEND",
    f"CREATE TRIGGER fact_gone AFTER DELETE ON fact\nBEGIN\n{_read_again('OLD')}\nEND",
)  # fmt: skip
"A note is found by its words and by what was read from it; endings do not matter (the Porter stemmer of FTS5)."
