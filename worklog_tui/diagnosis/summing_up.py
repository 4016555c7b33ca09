"""The person's own list at the end of the last session, taken from his words where no follow-up was read from them.

The words that open a list, and those that end it, stand in grammars/diagnosis/talk.toml.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.kin import said_with
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.phrases import bare, is_clause, one_of
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.sayings import Saying, Sayings
from worklog_tui.diagnosis.worded import Worded, own
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Note, OpenItem, Step

TAIL = 4
"The share of a session's notes that may hold its summing-up: the last quarter (judgement)."
LONGEST = 7
"More words than this between two commas are talk, not a job (judgement)."
LAST, BARE_LIST = 3, 3
"Bare names, so many or more, in one of so many last notes are a list (judgement)."

_PARTS = re.compile(r"\s*(?:,|;|\+|&|\band\b|\bthen\b|\bplus\b)\s*", re.IGNORECASE)
OPENED = r"\s*(?:is|are|then|now)?\s*[:,-]?\s*(?:to\b)?"
"What may stand between the words that open a list and its first job."
_TALK = re.compile(r"^(?:i|i'll|i'm|we|you|he|she|it|they|that's|there)\b", re.IGNORECASE)
_OF_IT = re.compile(r"\s(?:at|on|in|for|with|under|of|after)\s")
_PROPER = re.compile(
    r"^(?:(?:a|an|some|the|proper|real|new|decent|fresh)\s+)*(?:proper|real|new|decent|fresh)\s+", re.IGNORECASE
)
_GET = re.compile(r"^(?:get|have)\s+(?:the|that|this|those|it's)?\s*(.+?)\s+(\w+)$", re.IGNORECASE)


def listed(log: Log, wording: Wording, safety: Safety) -> list[Candidate]:
    """A step for each job of the list, in its order."""
    found: list[Candidate] = []
    opens = wording.talk.pattern("list_opens", OPENED)
    for note in _tail(log):
        place = log.history.place(note.uid)
        opened = opens.search(note.words)
        needs = opened is not None and "need" in opened[0].lower()
        for n, piece in enumerate(_list_in(note, log, wording.talk, opened)):
            worded = _step(piece, log, wording, needs)
            step = worded.say
            if not step or safety.never(step):
                continue
            why = f"You named it yourself as what is left to do ({log.said(place)})."
            minutes, aim = wording.minutes(step), wording.aim(step)
            made = Step(step, why, minutes, safety.cautions(step), (), (), "own plan", "", worded.thing, aim)
            found.append(Candidate(Tier.PLAN, place.order + n / 1000, made, "", piece))
    return found


def _list_in(note: Note, log: Log, talk: Sayings, opened: re.Match[str] | None) -> list[str]:
    """The jobs that a note lists: after words that open a list, or bare names one after another at the very end."""
    stops = talk.pattern("list_stops")
    if opened:
        return list(_pieces(note.words[opened.end() :], stops))
    if note in log.ending_notes[-LAST:]:
        for sentence in re.split(r"[.!?:]\s*", note.words):
            found = list(_pieces(sentence, stops))
            if len(found) >= BARE_LIST and sentence.count(",") >= 2 and all(_is_known(p, log) for p in found):
                return found
    return []


def _is_known(piece: str, log: Log) -> bool:
    """Whether a short name was spoken of before."""
    said = tokens(piece)
    return len(said) <= 3 and any(said[-1] in tokens(e.fact.about)[-1:] for e in log.events)


def _tail(log: Log) -> Sequence[Note]:
    notes = log.ending_notes
    return notes[-max(6, len(notes) // TAIL) :]


def _pieces(text: str, stops: Saying) -> Iterator[str]:
    text = re.split(r"[.!?](?:\s|$)", text, maxsplit=1)[0]
    ends = stops.search(text)
    for piece in _PARTS.split(text[: ends.start()] if ends else text):
        said = piece.strip(" .:-")
        if 0 < len(said.split()) <= LONGEST and tokens(said) and not _TALK.match(said):
            yield said


def _step(piece: str, log: Log, wording: Wording, needs: bool) -> Worded:
    if (got := _GET.match(piece)) and got[2].lower() in wording.lists.get("verbs", ()):
        thing = _as_known(got[1], log)
        return Worded(f"{got[2].lower()} the {thing}", thing)
    if piece.lower().startswith("re-"):
        return own(piece)
    about = _as_known(piece, log)
    if (proper := _PROPER.match(about)) and not is_clause(about):
        thing = about[proper.end() :]
        head = tokens(_OF_IT.split(thing)[0])
        if head and head[-1] in wording.lists.get("process", ()):
            return own(f"do {one_of(thing)}proper {thing}")  # a test is done, not fitted
        return Worded(f"fit {one_of(thing)}proper new {thing}", thing) if tokens(thing) else Worded("")
    worded = wording.worded(OpenItem((), about, "", "to do", "open", None, quote=piece))
    if needs and worded.say.startswith("see to "):
        return Worded(f"get and fit {one_of(about)}proper {bare(about)}", bare(about))
    return worded


def _as_known(piece: str, log: Log) -> str:
    """A bare word of the list under the fuller name that the log has for it."""
    said = tokens(piece)
    if len(said) != 1:
        return piece
    for event in reversed([e for e in log.events if tokens(e.fact.about)[-1:] == said]):
        for known in (event.fact.about, event.name, said_with(log, piece, (event.fact.key,))):
            if len(tokens(known)) > 1 and tokens(known)[-1:] == said and log.has_said(known):
                return known
    return piece
