"""What the talk itself lays to rest: a trouble that is told gone a few notes later, and what the person will live with.

Only what was merely noticed or suspected is laid to rest so; what somebody said he would come back to stays.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Log
from worklog_tui.model import Span

SOON = 4
"Within so many notes a trouble told gone is the one spoken of (judgement)."
MERELY = (Tier.NOTICED, Tier.OWN_CAUSE, Tier.COMPLAINT)

_TROUBLE = (
    r"(?:noise|racket|knock(?:ing)?|squeak(?:ing)?|squeal(?:ing)?|rattl(?:e|ing)|clunk(?:ing)?|click(?:ing)?|flicker"
    r"|loops?|smell|smoke|leak|drip|judder|shak(?:e|ing)|vibration|whin(?:e|ing)|hum(?:ming)?|buzz(?:ing)?|wobbl(?:e|ing)"
    r"|miss(?:ing)?|misfire|hesitation|stutter|drift|creep|surg(?:e|ing)|hunting|grind(?:ing)?|scrap(?:e|ing)|trouble"
    r"|problem|fault|symptom|frog|moan(?:ing)?|chatter)"
)
_GONE = re.compile(
    rf"\b{_TROUBLE}(?:['’]s| is| has| have|s have)?(?: all)? (?:gone|went|cured|sorted|fixed|stopped|disappeared)\b"
    rf"|\bno (?:more )?{_TROUBLE}\b|\b(?:cured|sorted|fixed) (?:it|that)\b|\b(?:it|that)['’]?s (?:cured|sorted|fixed)\b"
    r"|(?:^|[.,;:-] ?)(?:cured|sorted|fixed|smooth|sweet)(?= ?(?:[.,;!]|$))|\btold you\b|\bsilence\b"
    r"|\b(?:start(?:s|ed)?|fire[sd]?|go|goes|went|off)(?: up)?(?: on)?(?: the)? (?:first|1st|second|2nd)\b"
    r"|\bthat(?:['’]?s| is|['’]?ll be| was) (?:what (?:was|did)|why)\b"
    r"|\b(?:runs|turns|moves|goes) (?:smooth|sweet|free|like)",
    re.IGNORECASE,
)
"Words that a trouble is over."
_STILL = re.compile(r"\bstill\b|\bno (?:better|difference|change)\b|\bthe same\b|\bback again\b", re.IGNORECASE)
_LIVED_WITH = re.compile(
    r"\b(?:not losing (?:any )?sleep|not (?:too |that |all that )?(?:bothered|worried|fussed)"
    r"|live with (?:it|that|them)|(?:don|does)n['’]?t (?:matter|bother me|worry me|need (?:it|that|one))"
    r"|let (?:it|them|that|her) be|forgive (?:it|them)|cosmetic|nothing to worry|won['’]?t hurt"
    r"|\b(?:in|over|for|till|until) (?:the |next |this )?(?:winter|spring|summer|autumn)\b|\bwinter job\b"
    r"|never mind (?:it|that)|the least of (?:my|our)|it['’]?s only looks"
    r"|(?:i|we)(?:['’]ll| will| shall) (?:leave|ignore) (?:it|that|them|those)(?: be| alone| as (?:it|they))?"
    r"(?=\s*(?:[.,;!]|$|for (?:this|another) (?:year|season))))",
    re.IGNORECASE,
)
"Words that a fault is not worth a job."


def laid_to_rest(candidates: Sequence[Candidate], log: Log) -> list[Candidate]:
    """The candidates, with what was told gone or not worth a job behind what is open."""
    return [_laid(c, log) for c in candidates]


def _laid(candidate: Candidate, log: Log) -> Candidate:
    if candidate.tier not in MERELY or not candidate.notes:
        return candidate
    if all(is_over(log, note) for note in candidate.notes):
        return replace(candidate, tier=Tier.DOUBTFUL)
    if any(_LIVED_WITH.search(log.words_of(note)) for note in candidate.notes):
        return replace(candidate, tier=Tier.WAITS)
    return candidate


def is_lived_with(log: Log, span: Span) -> bool:
    """Whether the words from a place to the end of its note say that it is not worth a job."""
    return _LIVED_WITH.search(log.words_of(span.note), span.start) is not None


def is_over(log: Log, note: str) -> bool:
    """Whether a trouble is told gone within a few notes of one that tells it, and not said to be there still."""
    later = [log.words_of(n) for n in _after(log, note)]
    told = next((n for n, words in enumerate(later) if _GONE.search(words)), None)
    return told is not None and not any(_STILL.search(words) for words in later[told : told + 2])


def _after(log: Log, note: str) -> Iterable[str]:
    """The next few notes of the same session."""
    for record in log.history.sessions:
        uids = [n.uid for n in record.notes]
        if note in uids:
            at = uids.index(note)
            return uids[at + 1 : at + 1 + SOON]
    return ()
