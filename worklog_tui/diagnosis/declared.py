"""What the person says of a fault that he found: that it is the cause, that it comes first, that the part is at hand.

What he found and did not put right comes before any check; the wordings stand in grammars/diagnosis/talk.toml.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Log, proves_good
from worklog_tui.diagnosis.sound import is_sound
from worklog_tui.diagnosis.tail_talk import Sentence, end_of, tail_of
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import SIDES, tokens
from worklog_tui.model import Work

WHOLE, HALF = 1, 2
"What comes first does so until it is done; what is the cause, or at hand, counts in the last half of the session."
BACK = 2
"So many notes before the words may stand what they are about (judgement)."
SOON = 3
"What is mended within so many notes is no open fault any more (judgement)."
MENDS = ("replace", "repair", "clean", "free", "tighten", "adjust", "fill", "make", "lubricate")
FOUND = (Tier.NOTICED, Tier.OWN_CAUSE, Tier.PART, Tier.HOLDS_UP, Tier.LISTED, Tier.STOP_GAP)
BEFORE_ALL = -1e6
"Before the other steps of its tier."


def declared(candidates: Sequence[Candidate], log: Log, wording: Wording) -> list[Candidate]:
    """The candidates, with those that were declared the cause, or the first thing to do, where that puts them."""
    kept, talk = list(candidates), wording.talk
    found, first, here = talk.pattern("found_it"), talk.pattern("must_be_first"), talk.pattern("at_hand")
    late = len(tail_of(log, HALF))
    for sentence in end_of(log, WHOLE):
        if sentence.asks:
            continue
        said = log.said(log.history.place(sentence.note.uid))
        if first.search(sentence.words):
            why = f"You said yourself that it comes before anything else ({said})."
            kept = _moved(kept, sentence, log, Tier.PLAN, why)
        elif sentence.from_end >= late:
            continue
        elif found.search(sentence.words) and not _mended_soon(log, sentence):
            kept = _moved(kept, sentence, log, Tier.COMPLAINT, f"You named it yourself as what is wrong ({said}).")
        elif here.search(sentence.words):
            kept = _moved(kept, sentence, log, Tier.LISTED, f"What it takes is at hand ({said}).", 0)
    return kept


def _moved(
    candidates: list[Candidate], sentence: Sentence, log: Log, tier: Tier, why: str, back: int = BACK
) -> list[Candidate]:
    """The candidates with the one that a sentence speaks of in a tier, unless it stands higher already."""
    meant = _meant(candidates, sentence, log, back)
    if meant is None or meant.tier <= tier:
        return candidates
    order = BEFORE_ALL + sentence.order if tier is not Tier.LISTED else sentence.order
    moved = replace(meant, tier=tier, order=order, alone=False, step=replace(meant.step, why=f"{why} {meant.step.why}"))
    return [moved if c is meant else c for c in candidates]


def _meant(candidates: Sequence[Candidate], sentence: Sentence, log: Log, back: int) -> Candidate | None:
    """The fault told in the note of a sentence or just before it; of several the one it names, then the last told."""
    able = [c for c in candidates if c.tier in FOUND and _is_there(c, log) and not _done(c, sentence, log)]
    order = log.history.place(sentence.note.uid).order
    for away in range(back + 1):
        near = [c for c in able if any(log.history.place(n).order == order - away for n in c.notes)]
        if near:
            return min(near, key=lambda c: (not _is_named(c, sentence.words.lower()), c.rank))
    return None


def _is_named(candidate: Candidate, words: str) -> bool:
    return any(len(w) > 3 and w in words for w in tokens(f"{candidate.thing} {candidate.name}"))


def _is_there(candidate: Candidate, log: Log) -> bool:
    """Whether it reads as a job on something that its own notes name, the side of it too."""
    told = {w for n in candidate.notes for w in tokens(log.words_of(n))}
    return bool(told) and is_sound(candidate.step.step) and SIDES & set(tokens(candidate.thing)) <= told


def _done(candidate: Candidate, sentence: Sentence, log: Log) -> bool:
    """Whether a later note told of work on it, or that it is well."""
    later = (e for e in log.about(candidate.name, candidate.thing) if e.when > int(sentence.order) + 1)
    return any(proves_good(e.fact) or (isinstance(e.fact, Work) and e.fact.action in MENDS) for e in later)


def _mended_soon(log: Log, sentence: Sentence) -> bool:
    """Whether something was mended after a sentence, in its note or the next few: it was put right at once."""
    until = int(sentence.order) + SOON + 1
    return any(
        sentence.order < e.when < until and isinstance(e.fact, Work) and e.fact.action in MENDS for e in log.works
    )
