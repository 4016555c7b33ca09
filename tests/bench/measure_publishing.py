"""How long the repair log of a long life takes: 200 sessions, 20,000 notes, made from the invented machines.

Run it by itself: python tests/bench/measure_publishing.py
"""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import replace
from itertools import cycle, islice
from pathlib import Path
from tempfile import TemporaryDirectory

from worklog_tui.bench.demo import fill
from worklog_tui.bench.history import history
from worklog_tui.bench.publishing import from_history
from worklog_tui.model import Fact, History, Note, SessionRecord, Span
from worklog_tui.reports.csv_tables import csv_table
from worklog_tui.reports.json_repair_log import json_repair_log
from worklog_tui.reports.markdown_log import markdown_log
from worklog_tui.reports.page import repair_log_page

SESSIONS, NOTES = 200, 100


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
            main = replace(fact.main, note=uid)
            read.append(replace(fact, main=main, evidence=(Span(uid, main.start, main.end),)))
    return SessionRecord(session, tuple(notes), tuple(read))


def main() -> None:
    """Prints the seconds of each part."""
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
        markdown_log(log, "")
        json_repair_log(log)
        csv_table(log, "readings")
        rest = time.process_time()
    print(f"{SESSIONS} sessions, {SESSIONS * NOTES} notes, {len(known.facts())} facts; seconds of processor time:")
    print(f"  gate, open items, advice {gated - start:.2f}; log {built - gated:.2f}; page {drawn - built:.2f}")
    print(f"  page in all {drawn - start:.2f} ({len(page) / 1e6:.1f} MB); Markdown, JSON and table {rest - drawn:.2f}")


if __name__ == "__main__":
    main()
