"""What the person forbade until something is right: that comes before everything else."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.kin import by_card
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.phrases import asked_for, bare, inflected, one_of
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.sound import is_sound
from worklog_tui.diagnosis.tail_talk import Sentence, end_of
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import holds, tokens
from worklog_tui.model import Finding, FollowUp, Step

SHARE = 1
"The whole session is listened to: what is forbidden stays so until it is done."
BACK = 1
"In so many notes before it may stand what it waits for (judgement)."
LONGEST = 5
"More words than this name no part (judgement)."
SPRING = re.compile(r"(?:^|next |^the )spring$", re.IGNORECASE)
"A season, and no part."
FITTED = re.compile(r"\b(?:in|on|fitted|in it|on it|here|there)\W*$", re.IGNORECASE)
NEW = re.compile(r"\b(?:new|another|proper) (?:one|ones|set|pair)\b", re.IGNORECASE)
"A thing that must be in, on or there is to be fitted."


class Bans:
    """Finds what is forbidden in a sentence, and what it waits for; wordings in grammars/diagnosis/talk.toml."""

    def __init__(self, wording: Wording) -> None:
        talk, uses = wording.talk, inflected(wording.lists.get("uses", ())) + r"\b"
        self._until = talk.pattern("until", r"(.*)$")
        self._kept = talk.pattern("kept_off", f".*?{talk.source('until')}")
        self._lacks = re.compile(rf"\bno ([a-z-]+(?: [a-z-]+)?) {talk.source('lacking')}", re.IGNORECASE)
        self._stands = talk.pattern("stands")
        self._right = talk.pattern("made_right", ".*$")
        self._time = talk.pattern("some_time")
        self._pointed = talk.pattern("pointed_at")
        self._verbs = frozenset(wording.lists.get("verbs", ()))
        self._helps = re.compile(
            r"(?:['’]s| is| are| has| have|s has)(?: all)? been(?= \w+(?:ed|en|ned|t)\W*$)", re.IGNORECASE
        )
        self._bans, self._plainly = talk.pattern("ban", uses), talk.pattern("ban_plainly", uses)

    def waits_for(self, sentence: Sentence) -> tuple[str | None, bool]:
        """(what it waits for, whether it is a ban): the thing is empty when it is only pointed at, None if unsaid."""
        words = sentence.words
        said = self._bans.search(words) or self._kept.search(words)
        if sentence.asks or (said is None and not self._plainly.search(words)):
            return None, False
        start = said.start() if said else 0
        until = self._until.search(words, start) or self._until.match(words.removeprefix("So "))
        if until is None:
            return None, self._plainly.search(words) is not None
        clause = until[1]
        while (again := self._until.search(clause)) and again[1].strip():  # without goggles till it is packed
            clause = again[1]
        thing = self._thing(clause)
        return thing, thing is not None

    def job(self, sentence: Sentence) -> str:
        """What is to be done first, where the ban names it: straighten the spindle, till it has been straightened."""
        ends = self._until.search(sentence.words)
        job = asked_for(self._helps.sub(" ", ends[1]).strip(" .,"), self._verbs) if ends else ""
        return job if len(job.split()) <= LONGEST + 1 and not self._pointed.search(job) else ""

    def lacking(self, words: str) -> str | None:
        """What a note says there is none of, where the ban only points at it: no guard on it yet."""
        said = self._lacks.search(words)
        return bare(said[1]) if said and tokens(said[1]) else None

    def _thing(self, clause: str) -> str | None:
        """What a ban waits for; empty when it is only pointed at, None when it is a time."""
        if self._time.search(clause) or SPRING.search(clause) or any(c.isdigit() for c in clause):
            return None
        rest = self._right.sub(self._stands.sub(clause.strip(" .,"))).strip(" .,")
        rest = bare(self._pointed.sub(rest)).strip()
        return rest if tokens(rest) and len(rest.split()) <= LONGEST else ""


def forbidden(candidates: Sequence[Candidate], log: Log, wording: Wording, safety: Safety) -> list[Candidate]:
    """The candidates, with what a ban waits for before all others; a step of its own where no item stands for it."""
    kept, bans = list(candidates), Bans(wording)
    for sentence in end_of(log, SHARE):
        thing, forbids = bans.waits_for(sentence)
        if not forbids:
            continue
        lacks = bans.lacking(log.words_of(sentence.note.uid)) if thing == "" else None
        if thing and _done_since(log, thing, sentence):
            continue
        kept = _first(kept, sentence, lacks or thing, log, wording, safety, bans.job(sentence), bool(lacks))
    return kept


def _first(
    candidates: list[Candidate],
    sentence: Sentence,
    thing: str | None,
    log: Log,
    wording: Wording,
    safety: Safety,
    job: str = "",
    lacks: bool = False,
) -> list[Candidate]:
    place = log.history.place(sentence.note.uid)
    why = f"You said yourself that it is not to be used before this is done ({log.said(place)})."
    meant = _meant(candidates, sentence, thing, log)
    if meant is not None:
        say = job if job and meant.step.step.startswith("put ") else meant.step.step
        step = replace(meant.step, step=say, why=f"{why} {meant.step.why}")
        first = replace(meant, tier=Tier.DANGER, order=-sentence.order, step=step)
        return [first if c is meant else c for c in candidates]
    thing = thing or (_told_before(log, sentence) if thing == "" else "")
    if not thing or _done_since(log, thing, sentence):
        return candidates
    thing = by_card(log, thing, wording.names)
    renewed = wording.is_consumable(thing) or FITTED.search(sentence.words) or NEW.search(sentence.words)
    say = f"fit {one_of(thing)}proper new {thing}" if renewed or lacks else job or f"put the {thing} right"
    made = Step(say, why, wording.minutes(say), safety.cautions(say), (), (), "own plan")
    return [*candidates, Candidate(Tier.DANGER, -sentence.order, made, "", thing)]


def _done_since(log: Log, thing: str, sentence: Sentence) -> bool:
    """Whether work on what a ban waits for was told in a later note."""
    last = tokens(thing)[-1:]
    later = (
        e.fact for e in log.works
        if e.when > int(sentence.order) + 1 and log.words_of(e.fact.main.note).strip(" .;!") not in sentence.words
    )  # fmt: skip
    return any(last == tokens(str(getattr(fact, "part", "")))[-1:] for fact in later)


def _told_before(log: Log, sentence: Sentence) -> str:
    """The last part found bad, or held together for now, in the note of a ban or just before it."""
    here = [e for e in log.events if int(sentence.order) - BACK <= e.when < sentence.order]
    for fact in (e.fact for e in reversed(here)):
        if isinstance(fact, Finding) and fact.verdict == "bad" and tokens(fact.part):
            return bare(fact.part)
        if isinstance(fact, FollowUp) and fact.reason == "temporary" and tokens(fact.topic):
            return bare(fact.topic)
    return ""


def _meant(candidates: list[Candidate], sentence: Sentence, thing: str | None, log: Log) -> Candidate | None:
    """The candidate that a ban waits for: on the thing that it names, else told in its own note or just before."""
    said = set(tokens(thing or ""))
    able = [c for c in candidates if (c.tier < Tier.WAITS or c.notes) and is_sound(c.step.step)]
    able = [c for c in able if not _is_the_ban(c, sentence)]
    order = log.history.place(sentence.note.uid).order
    near = [[c for c in able if any(log.history.place(n).order == order - back for n in c.notes)] for back in range(3)]
    named = [c for c in able if said & set(tokens(f"{c.thing} {c.step.step}"))]
    if danger := next((c for c in (*near[0], *near[1]) if c.tier is Tier.DANGER and (not said or c in named)), None):
        return danger
    if named:
        return _likeliest(named, "")
    if thing is None:
        spoken_of = [c for c in able if _is_said(c, sentence.words)] or [c for c in near[0] if c.tier < Tier.NOTICED]
        return _likeliest(spoken_of, sentence.words)
    return _likeliest(next((there for there in near[: BACK + 1] if there), []), sentence.words) if not said else None


def _is_the_ban(candidate: Candidate, sentence: Sentence) -> bool:
    """Whether what was read as a fault is the ban itself: that it does not do a day's work till then."""
    alone = candidate.notes == {sentence.note.uid} and candidate.reason == "fault"
    told = tokens(candidate.thing)[-2:]
    return alone and len(told) == 2 and holds(tokens(sentence.words), told) and candidate.tier >= Tier.NOTICED


def _likeliest(candidates: Sequence[Candidate], words: str) -> Candidate | None:
    """The one that the sentence speaks of, else the first in rank."""
    return min(candidates, key=lambda c: (not _is_said(c, words), c.tier is Tier.DOUBTFUL, c.rank), default=None)


def _is_said(candidate: Candidate, words: str) -> bool:
    """Whether a word of a candidate's thing is in some words, be it within another: lining in relining."""
    return any(len(w) > 3 and w in words.lower() for w in tokens(f"{candidate.name} {candidate.thing}"))
