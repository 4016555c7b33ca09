"""What the person forbade until something is right: that comes before everything else."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.phrases import bare, inflected, one_of
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.sound import is_sound
from worklog_tui.diagnosis.tail_talk import Sentence, end_of
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Step

SHARE = 2
"The last half of the session is listened to: what is forbidden stays so to the end."
BACK = 1
"In so many notes before it may stand what it waits for (judgement)."

_NO = (
    r"(?:\b(?:nobody|no one|noone)\b[^.,;:]{0,24}?\b"
    r"|\b(?:(?:i|we) (?:wo(?:n['’]?)t|will not|shan['’]?t|shall not|['’]?ll not|['’]?m not|am not|are not|['’]?re not)"
    r"|(?:i|we)['’]ll not|(?:i['’]m|we['’]re|it['’]?s|that['’]?s|is|are|she['’]?s|he['’]?s) not"
    r"|isn['’]?t|ain['’]?t|aren['’]?t) (?:going to (?:be )?|to be |to )?"
    r"|(?:^|[,;:] ?|please |so |and )(?:don['’]?t|do not|never|no|not)(?: to| to be)? )"
)
"What forbids; that it does not start or will not cut is no ban, but a complaint."
_NONE = (
    r"\b(?:nobody|no one|noone|not)(?:['’]?s| is| are)? (?:shall|should|must|may|can|will|to|to be|allowed to)\b"
    r"[^.,;:]{0,12}?\b"
)
"A ban that names no moment at which it ends."
_LACKS = re.compile(r"\bno ([a-z-]+(?: [a-z-]+)?) (?:on|in|fitted|yet|there|at all)\b", re.IGNORECASE)
_SO = r"\b(?:so|and) (?:nobody|no one|noone) "
"A ban told as what follows: rope four is off, so nobody rides."
_KEPT = re.compile(
    r"\b(?:keep|leave|leaving|stay|stays|staying|goes nowhere|tagged|parked|locked|hold)\b[^.,;:]{0,24}?"
    r"\b(?:off|out of (?:use|service)|isolated|parked|switched off|unplugged|alone|locked|tagged|stopped)\b",
    re.IGNORECASE,
)
"A ban in other words, when it names what it waits for: keep it off till the duct is clean."
_UNTIL = re.compile(r"\b(?:until|untill|till|til|before|without)\b\s*(.*)$", re.IGNORECASE)
_STANDS = re.compile(
    r"^(?:(?:that|it|they|there|these|those|this|i|we)(?:['’]?s|['’]?ve| is| are| has| have)?\s+)?(?:got\s+|been\s+)?",
    re.IGNORECASE,
)
_RIGHT = re.compile(
    r"\s*(?:['’]?s|['’]?re| is| are| has| have| goes| comes)?(?: been)?\s*\b(?:in|on|back|back in|back on|done|fixed"
    r"|fitted|right|sorted|put right|made|there|new|changed|replaced|renewed|up|here|on it|in it|mended|finished)\b.*$",
    re.IGNORECASE,
)
_FITTED = re.compile(r"\b(?:in|on|fitted|in it|on it|here|there)\W*$", re.IGNORECASE)
"A thing that must be in, on or there is to be fitted."
_TIME = re.compile(
    r"\b(?:mon|tues|wednes|thurs|fri|satur|sun)day|tomorrow"
    r"|(?:^|next |^the )spring$|winter|summer|autumn|next|week|month|morning|noon"
    r"|o['’]?clock|dark|lunch|dinner|\d",
    re.IGNORECASE,
)


def forbidden(candidates: Sequence[Candidate], log: Log, wording: Wording, safety: Safety) -> list[Candidate]:
    """The candidates, with what a ban waits for before all others; a step of its own where no item stands for it."""
    kept, uses = list(candidates), inflected(wording.lists.get("uses", ()))
    bans, plainly = (re.compile(rf"{no}{uses}\b", re.IGNORECASE) for no in (_NO, f"(?:{_NONE}|{_SO})"))
    for sentence in end_of(log, SHARE):
        said = bans.search(sentence.words) or _kept_off(sentence.words)
        if said is None or sentence.asks:
            continue
        until = _UNTIL.search(sentence.words, said.start()) or _UNTIL.match(sentence.words.removeprefix("So "))
        thing = _thing(until[1]) if until else None
        if thing is None and (until or not plainly.search(sentence.words)):
            continue  # it waits for a time, or is no ban
        lacks = _lacking(log, sentence) if thing == "" else None
        kept = _first(kept, sentence, lacks or thing, log, wording, safety, bool(lacks))
    return kept


def _lacking(log: Log, sentence: Sentence) -> str | None:
    """What the same note says there is none of, where the ban only points at it: no guard on it yet."""
    said = _LACKS.search(log.words_of(sentence.note.uid))
    return bare(said[1]) if said and tokens(said[1]) else None


def _kept_off(words: str) -> re.Match[str] | None:
    said = _KEPT.search(words)
    return said if said and _UNTIL.search(words, said.end()) else None


def _thing(clause: str) -> str | None:
    """What a ban waits for; empty when it is only pointed at, None when it is a time."""
    if _TIME.search(clause):
        return None
    rest = _RIGHT.sub("", _STANDS.sub("", clause.strip(" .,"))).strip(" .,")
    rest = bare(re.sub(r"^(?:it|that|they|there|these)\b\s*", "", rest))
    return rest if tokens(rest) and len(rest.split()) <= 5 else ""


def _first(
    candidates: list[Candidate],
    sentence: Sentence,
    thing: str | None,
    log: Log,
    wording: Wording,
    safety: Safety,
    lacks: bool = False,
) -> list[Candidate]:
    place = log.history.place(sentence.note.uid)
    why = f"You said yourself that it is not to be used before this is done ({log.said(place)})."
    meant = _meant(candidates, sentence, thing, log)
    if meant is not None:
        step = replace(meant.step, why=f"{why} {meant.step.why}")
        first = replace(meant, tier=Tier.DANGER, order=-sentence.order, step=step)
        return [first if c is meant else c for c in candidates]
    if not thing:
        return candidates
    renewed = wording.is_consumable(thing) or _FITTED.search(sentence.words)
    say = f"fit {one_of(thing)}proper new {thing}" if renewed or lacks else f"put the {thing} right"
    made = Step(say, why, wording.minutes(say), safety.cautions(say), (), (), "own plan")
    return [*candidates, Candidate(Tier.DANGER, -sentence.order, made, "", thing)]


def _meant(candidates: list[Candidate], sentence: Sentence, thing: str | None, log: Log) -> Candidate | None:
    """The candidate that a ban waits for: on the thing that it names, else told in its own note or just before."""
    said = set(tokens(thing or ""))
    able = [c for c in candidates if (c.tier < Tier.WAITS or c.notes) and is_sound(c.step.step)]
    order = log.history.place(sentence.note.uid).order
    near = [[c for c in able if any(log.history.place(n).order == order - back for n in c.notes)] for back in range(3)]
    if danger := next((c for c in (*near[0], *near[1]) if c.tier is Tier.DANGER), None):
        return danger
    if said and (named := [c for c in able if said & set(tokens(f"{c.thing} {c.step.step}"))]):
        return _likeliest(named, "")
    if thing is None:
        return _likeliest([c for c in able if _is_said(c, sentence.words)], sentence.words)
    return _likeliest(next((there for there in near[: BACK + 1] if there), []), sentence.words) if not said else None


def _likeliest(candidates: Sequence[Candidate], words: str) -> Candidate | None:
    """The one that the sentence speaks of, else the first in rank."""
    return min(candidates, key=lambda c: (not _is_said(c, words), c.tier is Tier.DOUBTFUL, c.rank), default=None)


def _is_said(candidate: Candidate, words: str) -> bool:
    """Whether a word of a candidate's thing is in some words, be it within another: lining in relining."""
    return any(len(w) > 3 and w in words.lower() for w in tokens(f"{candidate.name} {candidate.thing}"))
