"""How long the repair log of a long life takes, and ten thousand comments on it: 200 sessions, 20,000 notes.

The log is made from the invented machines, the comments from those that the tests of viewers hold.

Run it by itself: python tests/bench/measure_publishing.py
"""

from __future__ import annotations

import random
import resource
import time
import tomllib
from collections.abc import Iterator
from dataclasses import replace
from itertools import cycle, islice
from pathlib import Path
from tempfile import TemporaryDirectory

from worklog_tui import places
from worklog_tui.bench.demo import fill
from worklog_tui.bench.history import history
from worklog_tui.bench.publishing import from_history
from worklog_tui.logbook.answers import read_all
from worklog_tui.logbook.comment_words import load_comment_words
from worklog_tui.model import Comment, Fact, History, Note, SessionRecord, Span
from worklog_tui.reports.csv_tables import csv_table
from worklog_tui.reports.json_repair_log import json_repair_log
from worklog_tui.reports.markdown_log import markdown_log
from worklog_tui.reports.page import repair_log_page
from worklog_tui.rulebook import load
from worklog_tui.rulebook.uncollected import uncollected

SESSIONS, NOTES, COMMENTS = 200, 100, 10_000


def long_life(known: History) -> History:
    """The machine's sessions again and again, each with notes of its own."""
    notes = [note for record in known.sessions for note in record.notes]
    facts: dict[str, list[Fact]] = {}
    for fact in known.facts():
        facts.setdefault(fact.main.note, []).append(fact)
    row = cycle(notes)
    return replace(known, sessions=tuple(_session(known, n, row, facts) for n in range(SESSIONS)), _places={})


def _session(known: History, number: int, row: Iterator[Note], facts: dict[str, list[Fact]]) -> SessionRecord:
    session = replace(known.sessions[0].session, uid=f"s{number}")
    notes, read = [], []
    for place, note in enumerate(islice(row, NOTES)):
        uid = f"{number}-{place}"
        notes.append(replace(note, uid=uid, session=session.uid))
        for fact in facts.get(note.uid, ()):
            main = fact.main._replace(note=uid)
            read.append(replace(fact, main=main, evidence=(Span(uid, main.start, main.end),)))
    return SessionRecord(session, tuple(notes), tuple(read))


def comments() -> list[Comment]:
    """Comments of the tests, mixed two by two."""
    data = [tomllib.loads(p.read_text("utf-8")) for p in sorted(Path(__file__).parents[1].glob("viewers/**/*.toml"))]
    rows = [words for table in data for group in table.get("group", ()) for words in group["comments"]]
    rows += [one["words"] for table in data for one in table.get("comment", ())]
    pick = random.Random(3).choice
    return [Comment(n, f"{pick(rows)} {pick(rows) if n % 3 == 0 else ''}") for n in range(COMMENTS)]


def main() -> None:
    """Prints the seconds of each part, and the most memory that the process held until the page was drawn."""
    with TemporaryDirectory() as folder:
        desk, names = fill(Path(folder) / "logbook.db")
        known = long_life(history(desk, names[1]))
        start = time.process_time()
        found = from_history(desk, known, None)
        gated = time.process_time()
        log = found.log()
        built = time.process_time()
        page = repair_log_page(log, found.closing())
        drawn = time.process_time()
        most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        markdown_log(log, "")
        json_repair_log(log)
        csv_table(log, "readings")
        rest = time.process_time()
    print(f"{SESSIONS} sessions, {SESSIONS * NOTES} notes, {len(known.facts())} facts; seconds of processor time:")
    print(f"  gate, open items, advice {gated - start:.2f}; log {built - gated:.2f}; page {drawn - built:.2f}")
    begun = time.process_time()
    with uncollected():  # as `review.comments` does
        read_all(known, load_comment_words([places.grammars()]), load([places.grammars()]).table, comments())
    print(f"  {COMMENTS} comments {time.process_time() - begun:.2f}")
    print(f"  page in all {drawn - start:.2f} ({len(page) / 1e6:.1f} MB); Markdown, JSON and table {rest - drawn:.2f}")
    print(f"  at most {most:.0f} MB (ru_maxrss, in KiB on Linux), the log itself and the grammars with it")


if __name__ == "__main__":
    main()
