"""Parts that the talk says are ordered or being made, where no open item was read from it: fit them when they come."""

from __future__ import annotations

import re
from collections.abc import Iterator

from worklog_tui.diagnosis.announced import known_words
from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.phrases import bare
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.tail_talk import Sentence, end_of
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Step

SHARE = 2
"The last half of the session is listened to."
BLOCKED = 2e6
"What is not here yet comes behind all that can be done now."
LONGEST = 5
"More words than this name no part (judgement)."

_SENT_FOR = re.compile(
    r"\b(?:(?:i|we)(?:['’]ve| have)?(?: just| already)? )?(?:called for|rang for|phoned for|sent (?:off |away )?for"
    r"|ordered(?: up)?(?! (?:from|on|for|at|in|to|by)\b)|put in (?:an order )?for|put an order in for)\s+(?:up )?(.+)$",
    re.IGNORECASE,
)
_IS_COMING = re.compile(
    r"^(?:(?:and|so|the|my|but) )*(.+?)\s*(?:['’]s|is|are|been)?\s*\b(?:ordered|on order|on (?:its|their|the) way"
    r"|in the post|sent for)\b",
    re.IGNORECASE,
)
_MADE = re.compile(
    r"\b(?:mak(?:e|ing)|turn(?:ing)?|cast(?:ing)?|send(?:ing)?|cut(?:ting)?) (?:me|us)"
    r" (?:one|some|it|them|a new one)\b",
    re.IGNORECASE,
)
_ENDS = re.compile(
    r"[,;:(]|\b(?:from|off|for|on|in|to|at|who|which|they|he|she|it|and (?:they|he|she|it|i|we|put|that)|because|but"
    r"|yesterday|today|this|last|should|with|i|we|so|then|when|by)\b",
    re.IGNORECASE,
)
_NOT = re.compile(
    r"\b(?:not|never|n['’]t|if|might|could|should|would|was|were|he|she|customer|already here|to be|about to)\b"
    r"|\b(?:came|here|arrived|fitted)\b",
    re.IGNORECASE,
)


def awaited(log: Log, wording: Wording, safety: Safety, named: frozenset[str]) -> list[Candidate]:
    """A step for each part that is on its way; `named`: words of the parts that the fault files know."""
    found, known = [], known_words(log) | named
    before = ""
    for sentence in end_of(log, SHARE):
        for thing in _things(sentence, before, known):
            step = f"fit the new {thing}"
            if len(thing.split()) > LONGEST or not tokens(thing) or safety.never(step):
                continue
            place = log.history.place(sentence.note.uid)
            why = f"It was sent for at {log.said(place)}, and it was not heard fitted since."
            if _fitted(log, thing, sentence):
                continue
            made = Step(step, why, wording.minutes(step), safety.cautions(step), (), (), "open item")
            found.append(Candidate(Tier.OWN_CAUSE, BLOCKED - sentence.order, made, "", thing))
        before = sentence.words
    return found


def without_awaited(told: list[Candidate], coming: list[Candidate]) -> list[Candidate]:
    """The candidates without faults that were merely noticed and that a part on its way will cure."""
    heads = {w for c in coming for w in tokens(c.thing)}
    return [c for c in told if c.tier is not Tier.NOTICED or not heads & set(tokens(c.name))]


def _things(sentence: Sentence, before: str, known: frozenset[str]) -> Iterator[str]:
    if sentence.asks:
        return
    words = sentence.words
    if _MADE.search(words):
        for said in re.findall(r"[a-z-]+", before.lower()):
            if set(tokens(said)) & known:
                yield said
                return
        return
    if (sent := _SENT_FOR.search(words)) and not _NOT.search(words[: sent.start()]):
        thing = _cut(sent[1])
        if set(tokens(thing)) & known:
            yield thing
    elif (coming := _IS_COMING.match(words)) and not _NOT.search(words):
        last = re.split(r"[,;.]", coming[1])[-1]
        yield _cut(last)


def _cut(text: str) -> str:
    ends = _ENDS.search(text)
    thing = bare((text[: ends.start()] if ends else text).strip(" .-"))
    thing = thing[:1].lower() + thing[1:] if thing[1:2].islower() else thing
    return re.sub(r"^(?:new|some|a new|all|the|two|three|four|five|six|(?:a )?(?:set|pair) of|\d+)\s+", "", thing)


def _fitted(log: Log, thing: str, sentence: Sentence) -> bool:
    """Whether work on it was told in a later note."""
    last = tokens(thing)[-1:]
    later = (e for e in log.works if e.when > int(sentence.order) + 1)
    return any(last[0] in tokens(e.fact.about) for e in later)
