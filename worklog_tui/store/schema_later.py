"""The later steps of the tables: what a person corrects, and acts that two copies of one folder signed alike."""

from __future__ import annotations

IN_FILM = ("ALTER TABLE note_as_it_came ADD COLUMN film INTEGER",)
"The place in the film that a note had before an act gave it another."
ERASING = (
    "DROP TRIGGER act_keeps_value",
    """CREATE TRIGGER act_keeps_value BEFORE UPDATE ON act
WHEN NEW.value IS NOT NULL
    OR (NEW.uid, NEW.device, NEW.counter) IS NOT (OLD.uid, OLD.device, OLD.counter)
    OR (NEW.verb, NEW.target, NEW.seen, NEW.utc) IS NOT (OLD.verb, OLD.target, OLD.seen, OLD.utc)
    OR NOT EXISTS (
        SELECT 1 FROM act WHERE verb = 'erase' AND instr(OLD.target || ' ' || coalesce(OLD.value, ''), target))
BEGIN SELECT RAISE(ABORT, 'acts are only ever added'); END""",
)
"The value of an act goes when a note that it is on, or names, is erased."
_ON_ACTS = ("note_keeps_first_words", "revision_keeps_words", "act_stays", "act_keeps_value")
"The triggers that stand on the acts or ask them."


def corrected(maybe: str) -> tuple[str, ...]:
    """Places, cards and facts as they were before a person's acts; `maybe` are the columns of an instant."""
    return (
        "ALTER TABLE note ADD COLUMN struck INTEGER NOT NULL DEFAULT 0 CHECK (struck IN (0, 1))",
        f"""CREATE TABLE note_as_it_came (  -- where a note stood before acts moved it; only of notes that were moved
    note_id INTEGER PRIMARY KEY REFERENCES note (id),
    session_id INTEGER NOT NULL REFERENCES session (id),
    at INTEGER,
    said_at TEXT NOT NULL,
    stands_at INTEGER NOT NULL,{maybe}
) STRICT""",
        f"""CREATE TABLE session_as_it_came (  -- a session before acts moved or dated it; only of such sessions
    session_id INTEGER PRIMARY KEY REFERENCES session (id),
    machine_id INTEGER NOT NULL REFERENCES machine (id),{maybe}
) STRICT""",
        "CREATE TABLE card_as_it_came (machine_id INTEGER PRIMARY KEY REFERENCES machine (id), name TEXT NOT NULL,"
        " card TEXT NOT NULL CHECK (json_valid(card))) STRICT",
        """CREATE TABLE fact_as_read (  -- what was read from notes whose facts a person corrected
    id INTEGER PRIMARY KEY,
    note_id INTEGER NOT NULL REFERENCES note (id),
    question INTEGER NOT NULL CHECK (question IN (0, 1)),
    data TEXT NOT NULL CHECK (json_valid(data))
) STRICT""",
        "CREATE INDEX fact_as_read_of_note ON fact_as_read (note_id)",
        "CREATE TABLE corrected (note_id INTEGER PRIMARY KEY REFERENCES note (id)) STRICT",
        "CREATE INDEX act_by_verb ON act (verb)",
        "DROP VIEW timeline",
        """CREATE VIEW timeline AS
SELECT machine.name AS machine, session.utc AS session_start, note.said_at, note.at, note.utc, note.film, note.words,
    note.uid
FROM note JOIN session ON session.id = note.session_id JOIN machine ON machine.id = note.machine_id
WHERE NOT note.struck
ORDER BY machine.id, session.arrival, note.stands_at, note.arrival, note.uid""",
        """CREATE VIEW acts AS
SELECT act.utc, act.verb, act.target, act.value, act.uid, act.device, act.counter FROM act
ORDER BY act.counter, act.device""",
    )


def copied_devices(always: str, kept: tuple[str, ...], view_of_acts: str) -> tuple[str, ...]:
    """A folder that was copied to another computer signs with the same device: the acts of both are kept."""
    return (
        f"""CREATE TABLE act_now (
    id INTEGER PRIMARY KEY,
    uid TEXT NOT NULL UNIQUE,
    device TEXT NOT NULL,
    counter INTEGER NOT NULL,
    verb TEXT NOT NULL,
    target TEXT NOT NULL,
    seen TEXT NOT NULL CHECK (json_valid(seen)),
    value TEXT CHECK (value IS NULL OR json_valid(value)),{always}
) STRICT""",
        "INSERT INTO act_now SELECT id, uid, device, counter, verb, target, seen, value, utc, zone, utc_offset, known"
        " FROM act",
        "DROP VIEW acts",
        "DROP TRIGGER note_keeps_first_words",
        "DROP TRIGGER revision_keeps_words",
        "DROP TABLE act",
        "ALTER TABLE act_now RENAME TO act",
        "CREATE INDEX act_on_target ON act (target)",
        "CREATE INDEX act_by_verb ON act (verb)",
        "CREATE INDEX act_of_device ON act (device, counter)",
        *(statement for name in _ON_ACTS for statement in kept if statement.startswith(f"CREATE TRIGGER {name} ")),
        view_of_acts,
    )
