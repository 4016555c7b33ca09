"""Words in: captions, typed lines, pastes and comments become notes, with nothing that could do harm."""

from __future__ import annotations

from worklog_tui.notes.cleaning import sanitise
from worklog_tui.notes.comments import looks_like_comments, read_comments
from worklog_tui.notes.files import read_session_file
from worklog_tui.notes.header import names_offset
from worklog_tui.notes.keeping import make_notes
from worklog_tui.notes.lines import Line, ReadSession
from worklog_tui.notes.reading import read_text
from worklog_tui.notes.refusals import Unreadable

__all__ = [
    "Line",
    "ReadSession",
    "Unreadable",
    "looks_like_comments",
    "make_notes",
    "names_offset",
    "read_comments",
    "read_session_file",
    "read_text",
    "sanitise",
]
