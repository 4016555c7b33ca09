"""Parts that the talk says are ordered or being made, where no open item was read from it: fit them when they come."""

from __future__ import annotations

import re
from collections.abc import Iterator

from worklog_tui.diagnosis.announced import known_words
from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.phrases import bare, is_clause
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
LEADS = re.compile(r"^(?:(?:and|so|the|my|but|a|an|there(?:['’]s| is)) )+", re.IGNORECASE)
SETS = frozenset({"set", "pair", "them", "couple", "some"})
"What is ordered so was named in the sentence before."
ORDERED_HOW = re.compile(r"(?:from|on|for|at|in|to|by)\b", re.IGNORECASE)
"What is no part behind `ordered`."


def awaited(log: Log, wording: Wording, safety: Safety, named: frozenset[str]) -> list[Candidate]:
    """A step for each part that is on its way; `named`: words of the parts that the fault files know."""
    found, orders = [], Orders(wording, known_words(log) | named)
    before = ""
    for sentence in end_of(log, SHARE):
        for thing in orders.things(sentence, before):
            step = f"fit the new {thing}"
            if len(thing.split()) > LONGEST or not tokens(thing) or safety.never(step):
                continue
            place = log.history.place(sentence.note.uid)
            why = f"It was sent for at {log.said(place)}, and it was not heard fitted since."
            if _fitted(log, thing, sentence):
                continue
            made = Step(step, why, wording.minutes(step), safety.cautions(step), (), (), "open item", "", thing)
            found.append(Candidate(Tier.OWN_CAUSE, BLOCKED - sentence.order, made, "", thing))
        before = sentence.words
    return found


def without_awaited(told: list[Candidate], coming: list[Candidate]) -> list[Candidate]:
    """The candidates without faults that were merely noticed and that a part on its way will cure."""
    heads = {w for c in coming for w in tokens(c.thing)}
    return [c for c in told if c.tier is not Tier.NOTICED or not heads & set(tokens(c.name))]


class Orders:
    """Finds the parts that a sentence says are on their way; the wordings stand in grammars/diagnosis/talk.toml."""

    def __init__(self, wording: Wording, known: frozenset[str]) -> None:
        talk, self._known = wording.talk, known
        self._sent, self._made = talk.pattern("sent_for"), talk.pattern("made_for_me")
        self._not = talk.pattern("not_coming")
        self._coming, self._ends = talk.pattern("is_coming"), talk.source("part_ends")

    def things(self, sentence: Sentence, before: str) -> Iterator[str]:
        """The parts of a sentence; `before` is the sentence before it."""
        words = sentence.words
        if sentence.asks:
            return
        if self._made.search(words):
            yield from self._last_named(before)[:1]
            return
        if (sent := self._sent.search(words)) and not self._not.search(words[: sent.start()]):
            thing = self._cut(words[sent.end() :]) if not ORDERED_HOW.match(words, sent.end()) else ""
            if set(tokens(thing)) & self._known - SETS:
                yield thing
                return
            if set(tokens(thing)) & SETS:
                yield from self._last_named(before)
                return
        if (coming := self._coming.search(words)) and not self._not.search(words):
            said = LEADS.sub("", words[: coming.start()].strip(" .,-"))
            if said and not is_clause(re.split(r"[,;.]", said)[-1]):
                yield self._cut(re.split(r"[,;.]", said)[-1])

    def _last_named(self, before: str) -> list[str]:
        """The words of a sentence that belong to the machine, the first first."""
        return [w for w in re.findall(r"[a-z-]+", before.lower()) if set(tokens(w)) & self._known - SETS]

    def _cut(self, text: str) -> str:
        ends = re.search(rf"[,;:(]|{self._ends}", text, re.IGNORECASE)
        thing = bare((text[: ends.start()] if ends else text).strip(" .-"))
        thing = thing[:1].lower() + thing[1:] if thing[1:2].islower() else thing
        return re.sub(r"^(?:new|some|a new|all|the|two|three|four|five|six|(?:a )?(?:set|pair) of|\d+)\s+", "", thing)


def _fitted(log: Log, thing: str, sentence: Sentence) -> bool:
    """Whether work on it was told in a later note."""
    last = tokens(thing)[-1:]
    later = (e for e in log.works if e.when > int(sentence.order) + 1)
    return any(last[0] in tokens(e.fact.about) for e in later)
