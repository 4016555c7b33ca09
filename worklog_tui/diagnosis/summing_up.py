"""The person's own list at the end of the last session, taken from his words where no follow-up was read from them."""

from __future__ import annotations

import re
from collections.abc import Container, Iterator, Sequence

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.kin import full_name
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Note, OpenItem, Step

TAIL = 4
"The share of a session's notes that may hold its summing-up: the last quarter (judgement)."
LONGEST = 7
"More words than this between two commas are talk, not a job (judgement)."
NO_JOB = frozenset({"it", "that", "them", "look", "go", "video", "photo", "tea", "one", "some", "more", "bit", "you"})
"Words that alone name nothing to work on."
LAST, BARE_LIST = 3, 3
"Bare names, so many or more, in one of so many last notes are a list (judgement)."

_OPENS = re.compile(
    r"\b(?:still to do|left to do|to do next|what['’]?s left|what is left|that leaves|todo|to do|jobs left|left over|"
    r"still needs?|outstanding|on the list|the list)\b\s*(?:is|are|then|now)?\s*[:,-]?\s*(?:to\b)?",
    re.IGNORECASE,
)
_PLANS = re.compile(
    r"\b(?:next time|next session|next weekend|next week|tomorrow|first thing|first job|first off|in the morning)\b"
    r"[^.!?]{0,40}?\b(?:i['’]?ll|i will|i['’]?m going to|we['’]?ll|i['’]?ll have to|i want to|i shall)\s+",
    re.IGNORECASE,
)
_LATER = re.compile(
    r"\b(?:i['’]?ll|i will|i shall|we['’]?ll)\s+((?:\w+[\s,]+){1,8}?)"
    r"(?:tomorrow|next time|next week|next weekend|in the morning|first thing|on saturday|on sunday)\b",
    re.IGNORECASE,
)
_PARTS = re.compile(r"\s*(?:,|;|\+|&|\band\b|\bthen\b|\bplus\b)\s*", re.IGNORECASE)
_ENDS = re.compile(r"[.!?](?:\s|$)|\b(?:if|but|because|when|unless|so that|or else)\b", re.IGNORECASE)
_TALK = re.compile(r"^(?:i|i'll|i'm|we|you|he|she|it|they|that's|there)\b", re.IGNORECASE)
_GET = re.compile(r"^(?:get|have)\s+(?:the|that|this|those|it's)?\s*(.+?)\s+(\w+)$", re.IGNORECASE)


def listed(log: Log, wording: Wording, safety: Safety) -> list[Candidate]:
    """A step for each job of the list, in its order."""
    found: list[Candidate] = []
    verbs = wording.lists.get("verbs", ())
    for note in _tail(log):
        place = log.history.place(note.uid)
        for n, piece in enumerate(_list_in(note, log, verbs)):
            step = _step(piece, log, wording)
            if not step or safety.never(step):
                continue
            why = f"You named it yourself as what is left to do ({log.said(place)})."
            made = Step(step, why, wording.minutes(step), safety.cautions(step), (), (), "own plan")
            found.append(Candidate(Tier.PLAN, place.order + n / 1000, made, "", piece))
    return found


def _is_job(piece: str, verbs: Container[str]) -> bool:
    """Whether a piece of a plan begins with a job and names what it is done to."""
    first, _, rest = piece.lower().partition(" ")
    return first in verbs and bool(tokens(rest)) and not NO_JOB.issuperset(tokens(rest))


def _list_in(note: Note, log: Log, verbs: Container[str]) -> list[str]:
    """The jobs that a note lists: after words that open a list, or bare names one after another at the very end."""
    if planned := _PLANS.search(note.words):
        return [p for p in _pieces(note.words[planned.end() :]) if _is_job(p, verbs)]
    if later := _LATER.search(note.words):
        return [p for p in _pieces(later[1]) if _is_job(p, verbs)]
    if opened := _OPENS.search(note.words):
        return list(_pieces(note.words[opened.end() :]))
    if note in log.last_notes[-LAST:]:
        for sentence in re.split(r"[.!?:]\s*", note.words):
            found = list(_pieces(sentence))
            if len(found) >= BARE_LIST and sentence.count(",") >= 2 and all(_is_known(p, log) for p in found):
                return found
    return []


def _is_known(piece: str, log: Log) -> bool:
    """Whether a short name was spoken of before."""
    said = tokens(piece)
    return len(said) <= 3 and any(said[-1] in tokens(e.fact.about)[-1:] for e in log.events)


def _tail(log: Log) -> Sequence[Note]:
    notes = log.last_notes
    return notes[-max(6, len(notes) // TAIL) :]


def _pieces(text: str) -> Iterator[str]:
    ends = _ENDS.search(text)
    for piece in _PARTS.split(text[: ends.start()] if ends else text):
        said = piece.strip(" .:-")
        if 0 < len(said.split()) <= LONGEST and tokens(said) and not _TALK.match(said):
            yield said


def _step(piece: str, log: Log, wording: Wording) -> str:
    if (got := _GET.match(piece)) and got[2].lower() in wording.lists.get("verbs", ()):
        return f"{got[2].lower()} the {_as_known(got[1], log)}"
    about = _as_known(piece, log)
    return wording.step(OpenItem((), about, "", "to do", "open", None, quote=piece))


def _as_known(piece: str, log: Log) -> str:
    """A bare word of the list under the fuller name that the log has for it."""
    said = tokens(piece)
    if len(said) != 1:
        return piece
    for event in reversed([e for e in log.events if tokens(e.fact.about)[-1:] == said]):
        for known in (event.fact.about, event.name, full_name(log, piece, (event.fact.key,))):
            if len(tokens(known)) > 1 and tokens(known)[-1:] == said:
                return known
    return piece
