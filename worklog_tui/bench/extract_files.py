"""From session files to a log, without a logbook: what `extract` prints."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui.model import Advice, Comment, CommentReading, Fact, History, Machine, Note, OpenItem, SessionRecord

if TYPE_CHECKING:
    from worklog_tui.rulebook import Rulebook
    from worklog_tui.rulebook.faults import FaultBook


@dataclass(frozen=True, slots=True)
class Extraction:
    """All that was read from the files of one machine."""

    history: History
    items: tuple[OpenItem, ...]
    advice: Advice
    comments: tuple[CommentReading, ...]
    complaints: tuple[str, ...]
    "What was odd in the files, each with its file and line."


def extract(
    book: Rulebook, faults: FaultBook, card: Machine, sessions: Sequence[Path], comments: Path | None = None,
    now: datetime | None = None,
) -> Extraction:  # fmt: skip
    """Reads the sessions in the order given, then the viewers' comments; an Unreadable names what cannot be read.

    Without `now` the start of the last session is taken, so that the same files always give the same answer.
    """
    from worklog_tui.diagnosis import advise
    from worklog_tui.logbook.answers import read_all
    from worklog_tui.logbook.comment_words import load_comment_words
    from worklog_tui.logbook.open_items import open_items

    card = _with_figures(book, card)
    records, complaints = _records(book, card, sessions)
    written = _comments(comments)
    history = History(card, records, (), written)
    readings = read_all(history, load_comment_words(comment_folders()), book.table, written) if written else ()
    items = open_items(history, readings)
    advice = advise(history, items, faults, now or _last_start(records))
    return Extraction(history, items, advice, readings, complaints)


def _with_figures(book: Rulebook, card: Machine) -> Machine:
    """The card with the figures of its specified texts read."""
    from worklog_tui.extract import read_specified

    read = (v if v.quantity else read_specified(book, v.subject, v.text, v.source) for v in card.specified)
    return replace(card, specified=tuple(read))


def _records(
    book: Rulebook, card: Machine, sessions: Sequence[Path]
) -> tuple[tuple[SessionRecord, ...], tuple[str, ...]]:
    from worklog_tui.notes.files import read_session_file
    from worklog_tui.notes.keeping import make_notes

    records: list[SessionRecord] = []
    complaints: list[str] = []
    for path in sessions:
        read = read_session_file(path)
        complaints += [f"{path.name}, {c}" for c in read.complaints]
        session, notes = make_notes(read, card.uid or card.name)
        sure, doubtful = split_by_confidence(_facts(book, card, notes))
        records.append(SessionRecord(session, notes, sure, doubtful))
    return tuple(records), tuple(complaints)


def _facts(book: Rulebook, card: Machine, notes: Sequence[Note]) -> tuple[Fact, ...]:
    from worklog_tui.extract import read_session

    return tuple(read_session(book, card, notes))


def split_by_confidence(facts: Sequence[Fact]) -> tuple[tuple[Fact, ...], tuple[Fact, ...]]:
    """The facts that are taken, and those that are only asked about."""
    from worklog_tui.extract import CONFIDENCE_LINE

    sure = tuple(f for f in facts if f.confidence >= CONFIDENCE_LINE)
    return sure, tuple(f for f in facts if f.confidence < CONFIDENCE_LINE)


def _comments(path: Path | None) -> tuple[Comment, ...]:
    if path is None:
        return ()
    from worklog_tui.notes.comments import read_comments

    return read_comments(path.read_text(encoding="utf-8", errors="replace"))


def comment_folders() -> list[Path]:
    """The folders that hold the words by which comments are told apart."""
    from worklog_tui import places

    return [places.grammars(), places.own_grammars()]


def _last_start(records: Sequence[SessionRecord]) -> datetime | None:
    starts = [r.session.start for r in records if r.session.start is not None]
    return starts[-1].moment() if starts else None
