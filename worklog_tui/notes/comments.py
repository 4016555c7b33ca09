"""Viewers' comments as pasted from a page: the words, without names, handles, links and addresses."""

from __future__ import annotations

import re

from worklog_tui.model.comments import Comment
from worklog_tui.notes.cleaning import sanitise

_PARAGRAPHS = re.compile(r"\n[ \t]*+(?:\n[ \t]*+)+")
_AGO = r"(?:\d+|an?|one) (?:second|minute|hour|day|week|month|year)s? ago(?: \(edited\))?"
_BESIDE = re.compile(  # what a page prints around a comment
    rf"(?:(?:[^\n]{{0,60}}?[ •·|,-]{{1,5}})?{_AGO}|reply|\d+ (?:replies|reply|likes?)|like|"
    r"pinned(?: by [^\n]{0,60})?|translate to \w+|read more|show (?:less|more)|edited|[\d.,]+k?|@[\w.\-]{2,40})",
    re.IGNORECASE,
)
_NAME = re.compile(r"[^\n?!]{1,40}")
_WHEN = re.compile(rf"(?:[•·|,-] ?)?{_AGO}", re.IGNORECASE)
"When a comment was written, on a line by itself: the line before it is the writer's name."
_MAIL = re.compile(r"(?<![\w.+-])[\w.+-]{1,64}@[\w-]{1,63}(?:\.[\w-]{1,63}){1,5}")
_LINK = re.compile(
    r"\b(?:https?|ftp)://\S+|\bwww\.\S+|\b[\w-]{1,63}\.(?:com|net|org|info|io|tv|be)(?:/\S*|\b)", re.IGNORECASE
)
_HANDLE = re.compile(
    r"(?<![\w@])@(?!(?:tdc|bdc|idle|rest|wot|cold|hot|full|half|no|load|low|high|max|min|rpm)\b)"
    r"[A-Za-z_][\w.-]{1,40}(?<![.])[:,]?",
    re.IGNORECASE,
)
_SIGNED = re.compile(
    r" (?:[-–—~] ?|[Ff]rom )[A-Z][a-z]{1,15}(?: [A-Z]\.?[a-z]{0,15})?"
    r"(?:,? (?:in|from) [A-Z][\w ]{1,30})?[.!]?\s*\Z"
)
_GREETING = re.compile(
    r"\b((?i:cheers|thanks|regards|best wishes|all the best|yours))([,.!]?) (?:from )?[A-Z][a-z]{1,15}[.!]?\s*\Z",
)


def read_comments(text: str, keep_names: bool = False) -> tuple[Comment, ...]:
    """The comments of a text, one a paragraph, in order.

    Nobody's name, handle, link or mail address is kept, unless that is asked for.
    """
    paragraphs = (part for part in _PARAGRAPHS.split(sanitise(text).strip()) if part.strip())
    kept = (rows for part in paragraphs if (rows := _own_rows(part)))
    said = (" ".join(rows) if keep_names else _without_names(" ".join(rows)) for rows in kept)
    return tuple(Comment(number, words) for number, words in enumerate(said))


def looks_like_comments(text: str) -> bool:
    """Whether a paste shows what a page prints around viewers' comments: handles, how long ago, reply, likes."""
    rows = [" ".join(row.split()) for row in sanitise(text).split("\n") if row.strip()]
    beside = sum(bool(_BESIDE.fullmatch(row) or row.startswith("@")) for row in rows)
    return beside >= 2 and 5 * beside >= len(rows)


def _own_rows(paragraph: str) -> list[str]:
    """The rows of a paragraph that the viewer wrote, with single spaces."""
    rows = [row for line in paragraph.split("\n") if (row := " ".join(line.split()))]
    if len(rows) > 2 and _NAME.fullmatch(rows[0]) and _WHEN.fullmatch(rows[1]):
        rows = rows[2:]
    return [row for row in rows if not _BESIDE.fullmatch(row)]


def _without_names(words: str) -> str:
    words = _MAIL.sub("", words)
    words = _LINK.sub("", words)
    words = _HANDLE.sub("", words)
    words = _GREETING.sub(r"\1\2", words)
    words = _SIGNED.sub("", words)
    return " ".join(words.split())
