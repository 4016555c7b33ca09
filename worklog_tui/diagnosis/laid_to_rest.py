"""What the talk itself lays to rest: a trouble that is told gone a few notes later, and what the person will live with.

Only what was merely noticed or suspected is laid to rest so; what somebody said he would come back to stays.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Any

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Log
from worklog_tui.model import Span, Work

SOON = 4
"Within so many notes a trouble told gone is the one spoken of (judgement)."
MENDS = (
    "replace", "repair", "clean", "adjust", "free", "fit", "make", "tighten", "fill", "flush", "connect", "lubricate",
)  # fmt: skip
MERELY = (Tier.NOTICED, Tier.OWN_CAUSE, Tier.COMPLAINT)

STEM = 4
"Letters by which `rattles` and `rattle` are the same trouble."
_CURED = (
    r"\b(?:cured|sorted|fixed) (?:it|that)\b|\b(?:it|that)['’]?s (?:cured|sorted|fixed)\b"
    r"|(?:^|[.,;:-] ?)(?:cured|sorted|fixed|smooth|sweet)(?= ?(?:[.,;!]|$))|\btold you\b|\bsilence\b"
    r"|\b(?:start(?:s|ed)?|fire[sd]?|go|goes|went|off)(?: up)?(?: on)?(?: the)? (?:first|1st|second|2nd)\b"
    r"|\b(?:runs|turns|moves|goes) (?:smooth|sweet|free|like)"
)
"Words that a trouble is over, whichever it is."
_WAS_WHY = re.compile(r"\bthat(?:['’]?s| is|['’]?ll be| was) (?:what (?:was|did)|why)\b", re.IGNORECASE)
"Words that it is over when something was mended, and that its cause is found when nothing was."
_STILL = re.compile(r"\bstill\b|\bno (?:better|difference|change)\b|\bthe same\b|\bback again\b", re.IGNORECASE)


@lru_cache(maxsize=8)
def _gone(troubles: tuple[str, ...]) -> re.Pattern[str]:
    """What tells that one of these troubles, or any trouble, is over."""
    heard = "|".join(map(re.escape, troubles))
    over = "gone|went|cured|sorted|fixed|stopped|disappeared"
    return re.compile(
        rf"\b(?P<gone>{heard})(?:['’]s| is| has| have|s have)?(?: all)? (?:{over})\b"
        rf"|\bno (?:more )?(?P<none>{heard})\b|{_CURED}",
        re.IGNORECASE,
    )


@lru_cache(maxsize=8)
def _lived_with(phrases: tuple[str, ...]) -> re.Pattern[str]:
    said = "|".join(map(re.escape, phrases)).replace("'", "['’]")
    return re.compile(rf"\b(?:{said})(?!\w)", re.IGNORECASE)


def laid_to_rest(candidates: Sequence[Candidate], log: Log, lists: Mapping[str, Any]) -> list[Candidate]:
    """The candidates, with what was told gone or not worth a job behind what is open; `lists`: of steps.toml."""
    return [_laid(c, log, lists) for c in candidates]


def _laid(candidate: Candidate, log: Log, lists: Mapping[str, Any]) -> Candidate:
    if candidate.tier not in MERELY or not candidate.notes:
        return candidate
    if all(is_over(log, note, lists) for note in candidate.notes):
        return replace(candidate, tier=Tier.DOUBTFUL)
    lived_with = _lived_with(tuple(lists.get("lived_with", ())))
    if any(lived_with.search(log.words_of(note)) for note in candidate.notes):
        return replace(candidate, tier=Tier.WAITS)
    return candidate


def is_lived_with(log: Log, span: Span, lists: Mapping[str, Any]) -> bool:
    """Whether the words from a place to the end of its note say that it is not worth a job."""
    found = _lived_with(tuple(lists.get("lived_with", ()))).search(log.words_of(span.note), span.start)
    return found is not None


def is_over(log: Log, note: str, lists: Mapping[str, Any]) -> bool:
    """Whether the trouble of a note is told gone within a few notes of it, and not said to be there still."""
    gone = _gone(tuple(lists.get("heard", ())))
    before, after = _around(log, note)
    told_of = " ".join(log.words_of(n) for n in before).lower()
    later = [log.words_of(n) for n in after]
    mended = _is_mended(log, (*before[-1:], *after))
    told = next(
        (n for n, words in enumerate(later)
         if _of_it(gone.search(words), told_of) or (mended and _WAS_WHY.search(words))), None
    )  # fmt: skip
    return told is not None and not any(_STILL.search(words) for words in later[told : told + 2])


def _is_mended(log: Log, notes: Sequence[str]) -> bool:
    """Whether any work was told in some notes that mends something."""
    works = (e.fact for e in log.works if e.fact.main.note in notes)
    return any(isinstance(work, Work) and work.action in MENDS for work in works)


def _of_it(said: re.Match[str] | None, told_of: str) -> bool:
    """Whether the trouble that is gone is the one told of: a leak is not cured when a knock is."""
    if said is None:
        return False
    named = (said["gone"] or said["none"] or "").lower()
    return not named or named in ANY or named[:STEM] in told_of


ANY = frozenset({"trouble", "problem", "fault", "symptom", "noise", "racket"})
"They stand for any trouble."


def _around(log: Log, note: str) -> tuple[Sequence[str], Sequence[str]]:
    """The notes up to one, itself with the few before it, and the few after it, of the same session."""
    for record in log.history.sessions:
        uids = [n.uid for n in record.notes]
        if note in uids:
            at = uids.index(note)
            return uids[max(0, at - SOON) : at + 1], uids[at + 1 : at + 1 + SOON]
    return (), ()
