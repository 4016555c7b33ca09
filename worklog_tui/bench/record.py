"""Keeping what is said: one note, a paste of several lines, or whole files of sessions."""

from worklog_tui.bench.importing import Imported, import_sessions, keep_lines
from worklog_tui.bench.live import Kept, NoWords, keep_note, keep_words, preview

__all__ = ["Imported", "Kept", "NoWords", "import_sessions", "keep_lines", "keep_note", "keep_words", "preview"]
