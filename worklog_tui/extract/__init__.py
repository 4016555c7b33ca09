"""Reads facts out of notes: finders, then refiners, in one visible list (pipeline.py)."""

from worklog_tui.extract.card import read_specified
from worklog_tui.extract.context import Context
from worklog_tui.extract.reader import CONFIDENCE_LINE, Changes, feed, read_session
from worklog_tui.extract.trail import Trail, explain, patterns_met

__all__ = [
    "CONFIDENCE_LINE",
    "Changes",
    "Context",
    "Trail",
    "explain",
    "feed",
    "patterns_met",
    "read_session",
    "read_specified",
]
