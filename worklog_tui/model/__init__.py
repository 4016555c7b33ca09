"""The nouns of the program: frozen values without behaviour that needs another room."""

from worklog_tui.model.acts import Act
from worklog_tui.model.comments import Comment, CommentReading
from worklog_tui.model.facts import (
    Fact,
    FactKey,
    Finding,
    FollowUp,
    Number,
    Reading,
    Span,
    Suspect,
    Trait,
    Value,
    Work,
)
from worklog_tui.model.history import History, SessionRecord
from worklog_tui.model.items import Due, OpenItem, Place
from worklog_tui.model.machine import Machine, SpecifiedValue
from worklog_tui.model.moments import Instant, clock
from worklog_tui.model.note import Note, Revision, Session
from worklog_tui.model.steps import Advice, Cause, Evidence, Step, SystemStanding

__all__ = [
    "Act",
    "Advice",
    "Cause",
    "Comment",
    "CommentReading",
    "Due",
    "Evidence",
    "Fact",
    "FactKey",
    "Finding",
    "FollowUp",
    "History",
    "Instant",
    "Machine",
    "Note",
    "Number",
    "OpenItem",
    "Place",
    "Reading",
    "Revision",
    "Session",
    "SessionRecord",
    "Span",
    "SpecifiedValue",
    "Step",
    "Suspect",
    "SystemStanding",
    "Trait",
    "Value",
    "Work",
    "clock",
]
