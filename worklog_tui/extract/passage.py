"""The text that is read at once: a note with the unfinished words before it, its shorthand written out."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.context import Context
from worklog_tui.extract.finish import Piece
from worklog_tui.extract.heard.noises import without_noises
from worklog_tui.extract.heard.written_out import changes
from worklog_tui.extract.new_thought import begins_anew
from worklog_tui.model import Note
from worklog_tui.rulebook import Rulebook

LONG_NOTE, MOST_CHARACTERS = 3_000, 60_000
"Characters of a note as only a line without end has them, and how many of such a line are read."


@dataclass(slots=True)
class Passage:
    """A note with the unfinished words before it, as one text."""

    text: str
    pieces: tuple[Piece, ...]
    boundary: int
    "Where the note itself begins in the text."


def passage_of(context: Context, note: Note, book: Rulebook) -> Passage:
    """The passage of the next note."""
    words = without_noises(note.words[:MOST_CHARACTERS], note.track == "captions")
    if note.track != "captions":
        return typed(note.uid, words, book)
    if context.tail is None:
        return Passage(words, (Piece(note.uid, 0, len(words), 0),), 0)
    ended = context.tail.ended_before(note) or begins_anew(context.tail.words, words, book)
    before = context.tail.words + (". " if ended else " ")
    pieces = (
        Piece(context.tail.note, 0, len(context.tail.words), context.tail.offset),
        Piece(note.uid, len(before), len(before) + len(words), 0),
    )
    return Passage(before + words, pieces, len(before))


def alone(words: str, track: str, book: Rulebook) -> Passage:
    """The passage of a note that nothing stands before."""
    return Passage(words, (Piece("", 0, len(words), 0),), 0) if track == "captions" else typed("", words, book)


def typed(uid: str, words: str, book: Rulebook) -> Passage:
    """A typed line with its shorthand written out; a line without end is read as it stands."""
    found = changes(words, book) if len(words) < LONG_NOTE else []
    text, at = "", 0
    pieces: list[Piece] = []
    for start, end, meant in found:
        if at < start:
            pieces.append(Piece(uid, len(text), len(text) + start - at, at))
        text += words[at:start]
        pieces.append(Piece(uid, len(text), len(text) + len(meant), start, words[start:end]))
        text, at = text + meant, end
    if at < len(words) or not pieces:
        pieces.append(Piece(uid, len(text), len(text) + len(words) - at, at))
    return Passage(text + words[at:], tuple(pieces), 0)
