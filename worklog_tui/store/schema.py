"""The tables of the logbook, step by step: what each version of the file added.

Every table has an integer `id` that never leaves the file; what leaves it is named by its global `uid`. Times are
ISO 8601 text in UTC with Z. `fact`, `context`, `stamp` and `item` are derived: they can be made again from the rest.
"""

from __future__ import annotations

from worklog_tui.store import schema_later, schema_search

APPLICATION_ID = 0x574C4F47
"Marks the file as ours (SQLite file header, offset 68): the letters WLOG."

_INSTANT = """
    utc TEXT {null} CHECK (utc GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-6][0-9]Z'),
    zone TEXT NOT NULL DEFAULT '',
    utc_offset INTEGER NOT NULL DEFAULT 0,  -- minutes east of UTC
    known TEXT NOT NULL DEFAULT 'clock' CHECK (known IN ('clock', 'header', 'assumed'))"""
_MAYBE, _ALWAYS = _INSTANT.format(null=""), _INSTANT.format(null="NOT NULL")

KEPT = (
    "CREATE TABLE machine (id INTEGER PRIMARY KEY, uid TEXT NOT NULL UNIQUE, name TEXT NOT NULL,"
    " card TEXT NOT NULL CHECK (json_valid(card))) STRICT",
    f"""CREATE TABLE session (
    id INTEGER PRIMARY KEY,
    uid TEXT NOT NULL UNIQUE,
    machine_id INTEGER NOT NULL REFERENCES machine (id),
    arrival INTEGER NOT NULL,  -- the n-th of its machine that came, from 0
    source TEXT NOT NULL CHECK (source IN ('live', 'import')),{_MAYBE},
    UNIQUE (id, machine_id)
) STRICT""",
    "CREATE INDEX session_of_machine ON session (machine_id, arrival)",
    f"""CREATE TABLE note (
    id INTEGER PRIMARY KEY,
    uid TEXT NOT NULL UNIQUE,
    session_id INTEGER NOT NULL,
    machine_id INTEGER NOT NULL REFERENCES machine (id),
    arrival INTEGER NOT NULL,  -- the n-th of its session that came, from 0
    stands_at INTEGER NOT NULL,  -- seconds: its place in the order of the session, before arrival
    at INTEGER,  -- session time in seconds, when one was given
    said_at TEXT NOT NULL,
    track TEXT NOT NULL CHECK (track IN ('typed', 'live', 'captions')),
    first_words TEXT NOT NULL,
    words TEXT NOT NULL,
    revision INTEGER NOT NULL DEFAULT 0,
    film INTEGER,{_MAYBE},
    FOREIGN KEY (session_id, machine_id) REFERENCES session (id, machine_id) ON UPDATE CASCADE
) STRICT""",
    "CREATE INDEX note_in_session ON note (session_id, stands_at, arrival)",
    "CREATE INDEX note_of_machine ON note (machine_id, utc)",
    f"""CREATE TABLE revision (
    id INTEGER PRIMARY KEY,
    note_id INTEGER NOT NULL REFERENCES note (id),
    number INTEGER NOT NULL CHECK (number > 0),  -- number 0 is note.first_words
    words TEXT NOT NULL,{_MAYBE},
    UNIQUE (note_id, number)
) STRICT""",
    f"""CREATE TABLE act (
    id INTEGER PRIMARY KEY,
    uid TEXT NOT NULL UNIQUE,
    device TEXT NOT NULL,
    counter INTEGER NOT NULL,  -- greater than any that the device had seen
    verb TEXT NOT NULL,
    target TEXT NOT NULL,
    seen TEXT NOT NULL CHECK (json_valid(seen)),
    value TEXT CHECK (value IS NULL OR json_valid(value)),{_ALWAYS},
    UNIQUE (device, counter)
) STRICT""",
    "CREATE INDEX act_on_target ON act (target)",
    f"""CREATE TABLE clip (
    id INTEGER PRIMARY KEY,
    uid TEXT NOT NULL UNIQUE,
    session_id INTEGER NOT NULL REFERENCES session (id),
    end_utc TEXT,
    camera_offset INTEGER NOT NULL DEFAULT 0,  -- seconds that the camera's counter is ahead
{_ALWAYS.lstrip()}
) STRICT""",
    "CREATE INDEX clip_of_session ON clip (session_id)",
    "CREATE TABLE comment (id INTEGER PRIMARY KEY, uid TEXT NOT NULL UNIQUE,"
    " machine_id INTEGER NOT NULL REFERENCES machine (id), number INTEGER NOT NULL, words TEXT NOT NULL) STRICT",
    "CREATE INDEX comment_of_machine ON comment (machine_id, number)",
    """CREATE TRIGGER note_keeps_first_words BEFORE UPDATE OF first_words ON note
WHEN NEW.first_words IS NOT OLD.first_words
    AND NOT EXISTS (SELECT 1 FROM act WHERE verb = 'erase' AND target = OLD.uid)
BEGIN SELECT RAISE(ABORT, 'the first wording of a note is never altered'); END""",
    """CREATE TRIGGER note_stays BEFORE DELETE ON note
BEGIN SELECT RAISE(ABORT, 'a note is never deleted'); END""",
    """CREATE TRIGGER revision_stays BEFORE DELETE ON revision
BEGIN SELECT RAISE(ABORT, 'a wording of a note is never deleted'); END""",
    """CREATE TRIGGER revision_keeps_words BEFORE UPDATE ON revision
WHEN NOT EXISTS (SELECT 1 FROM act, note WHERE note.id = OLD.note_id AND verb = 'erase' AND target = note.uid)
BEGIN SELECT RAISE(ABORT, 'a wording of a note is never altered'); END""",
    """CREATE TRIGGER act_stays BEFORE DELETE ON act
BEGIN SELECT RAISE(ABORT, 'acts are only ever added'); END""",
    """CREATE TRIGGER act_keeps_value BEFORE UPDATE ON act
WHEN NEW.value IS NOT NULL
    OR (NEW.uid, NEW.device, NEW.counter) IS NOT (OLD.uid, OLD.device, OLD.counter)
    OR (NEW.verb, NEW.target, NEW.seen, NEW.utc) IS NOT (OLD.verb, OLD.target, OLD.seen, OLD.utc)
    OR NOT EXISTS (SELECT 1 FROM act WHERE verb = 'erase' AND target = OLD.target)
BEGIN SELECT RAISE(ABORT, 'acts are only ever added'); END""",
)

DERIVED = (
    """CREATE TABLE fact (
    id INTEGER PRIMARY KEY,
    note_id INTEGER NOT NULL REFERENCES note (id),
    machine_id INTEGER NOT NULL REFERENCES machine (id) ON UPDATE CASCADE,
    kind TEXT NOT NULL,
    start INTEGER NOT NULL,  -- characters of the note's wording, stop exclusive
    stop INTEGER NOT NULL,
    nth INTEGER NOT NULL,
    confidence REAL NOT NULL,
    question INTEGER NOT NULL CHECK (question IN (0, 1)),  -- below the confidence line: to be asked about
    about TEXT NOT NULL,
    data TEXT NOT NULL CHECK (json_valid(data)),
    UNIQUE (note_id, kind, start, stop, nth)
) STRICT""",
    "CREATE INDEX fact_of_machine ON fact (machine_id, kind)",
    """CREATE TABLE context (
    id INTEGER PRIMARY KEY,
    session_id INTEGER NOT NULL REFERENCES session (id),
    track TEXT NOT NULL CHECK (track IN ('typed', 'captions')),
    note_id INTEGER NOT NULL REFERENCES note (id),  -- the last note that it has read
    position INTEGER NOT NULL,  -- how many notes of the track it has read
    tail INTEGER NOT NULL CHECK (tail IN (0, 1)),
    data TEXT NOT NULL
) STRICT""",
    "CREATE UNIQUE INDEX context_tail ON context (session_id, track) WHERE tail",
    "CREATE UNIQUE INDEX context_snapshot ON context (note_id) WHERE NOT tail",
    "CREATE INDEX context_of_session ON context (session_id, track)",
    "CREATE TABLE stamp (session_id INTEGER PRIMARY KEY REFERENCES session (id), stamp TEXT NOT NULL) STRICT",
    """CREATE TABLE item (
    id INTEGER PRIMARY KEY,
    machine_id INTEGER NOT NULL REFERENCES machine (id),
    about TEXT NOT NULL,
    name TEXT NOT NULL,
    reason TEXT NOT NULL,
    state TEXT NOT NULL,
    raised_session INTEGER,
    raised_at TEXT,
    closed_session INTEGER,
    closed_at TEXT,
    data TEXT NOT NULL CHECK (json_valid(data))
) STRICT""",
    "CREATE INDEX item_open ON item (machine_id) WHERE state = 'open'",
    "CREATE INDEX item_of_machine ON item (machine_id)",
    "CREATE TABLE counted (machine_id INTEGER PRIMARY KEY REFERENCES machine (id), basis TEXT NOT NULL) STRICT",
)

SEARCH = (
    'CREATE VIRTUAL TABLE note_words USING fts5(words, content="note", content_rowid="id",'
    ' tokenize="unicode61 remove_diacritics 2")',
    "INSERT INTO note_words (note_words) VALUES ('rebuild')",
    """CREATE TRIGGER note_words_added AFTER INSERT ON note
BEGIN INSERT INTO note_words (rowid, words) VALUES (NEW.id, NEW.words); END""",
    """CREATE TRIGGER note_words_changed AFTER UPDATE OF words ON note
BEGIN
    INSERT INTO note_words (note_words, rowid, words) VALUES ('delete', OLD.id, OLD.words);
    INSERT INTO note_words (rowid, words) VALUES (NEW.id, NEW.words);
END""",
)

VIEWS = (
    """CREATE VIEW timeline AS
SELECT machine.name AS machine, session.utc AS session_start, note.said_at, note.at, note.utc, note.film, note.words,
    note.uid
FROM note JOIN session ON session.id = note.session_id JOIN machine ON machine.id = note.machine_id
ORDER BY machine.id, session.arrival, note.stands_at, note.arrival""",
    """CREATE VIEW open_items AS
SELECT machine.name AS machine, item.about, item.reason, item.state, item.raised_session, item.raised_at
FROM item JOIN machine ON machine.id = item.machine_id WHERE item.state <> 'done'""",
    """CREATE VIEW readings AS
SELECT machine.name AS machine, note.utc, note.said_at, json_extract(fact.data, '$.quantity') AS quantity,
    json_extract(fact.data, '$.value') AS value, json_extract(fact.data, '$.unit') AS unit,
    json_extract(fact.data, '$.subject') AS subject, json_extract(fact.data, '$.role') AS role,
    json_extract(fact.data, '$.condition') AS condition, fact.question, json_extract(fact.data, '$.quote') AS quote
FROM fact JOIN note ON note.id = fact.note_id JOIN machine ON machine.id = fact.machine_id
WHERE fact.kind = 'reading'""",
    """CREATE VIEW facts AS
SELECT machine.name AS machine, note.utc, note.said_at, fact.kind, fact.about, fact.question,
    json_extract(fact.data, '$.quote') AS quote, fact.data
FROM fact JOIN note ON note.id = fact.note_id JOIN machine ON machine.id = fact.machine_id""",
)

CORRECTED = schema_later.corrected(_MAYBE)
COPIED_DEVICES = schema_later.copied_devices(_ALWAYS, KEPT, CORRECTED[-1])

STEPS: tuple[tuple[str, ...], ...] = (
    KEPT, DERIVED, SEARCH, VIEWS, CORRECTED, COPIED_DEVICES, schema_later.IN_FILM, schema_later.ERASING,
    schema_search.FACTS_FOUND,
)  # fmt: skip
"Step n brings a file of version n-1 to version n."
VERSION = len(STEPS)
