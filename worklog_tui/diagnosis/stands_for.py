"""What a stop-gap stands for, where the person says so: `a nail in place of the split pin` asks for a split pin."""

from __future__ import annotations

import re
from collections.abc import Container

from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.phrases import bare, one_of
from worklog_tui.diagnosis.worded import Worded
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import FactKey, Finding, FollowUp, OpenItem

LOST = frozenset({"missing", "gone", "lost", "sheared", "snapped", "broken", "broke"})
"What is so cannot be put right, only be replaced."
MOST = 3
"A part has at most so many words (judgement)."
JOIN = re.compile(r"\s+(on|in|for|round|around|over|under|across|at|made from|made of|made out of|out of|from)\s+")
_SMALL = r"(?:(?:the|a|an|its|his|that|their|proper|real|right|old|original|missing|broken) ){0,4}"
_INSTEAD = re.compile(
    r"\b(?:instead of|in place of|in lieu of|(?:standing|stands|stood) in for"
    r"|(?:doing|does) (?:duty|service) (?:for|as)|serv(?:es|ing) as"
    r"|for want of|where (?:there )?(?:should|ought to) be|where there(?:['’]s| is) meant to be)"
    rf" {_SMALL}(?P<instead>[a-z][a-z -]{{0,60}})"
    rf"|\bwhere {_SMALL}(?P<where>[a-z][a-z -]{{0,60}}?)"
    r" (?:should|ought to|used to|was meant to|is meant to) (?:be|go|sit)\b",
    re.IGNORECASE,
)
_STOPS = frozenset({
    "till", "until", "for", "now", "but", "and", "so", "because", "that", "which", "who", "i", "we", "he", "it", "just",
    "as", "is", "was", "on", "in", "at", "to", "while", "if", "then", "there", "here", "today", "tonight", "or", "with",
})  # fmt: skip
_SWAPPED = re.compile(
    r"\b(?:swapped|changed|replaced|substituted)(?: it| that| them)?(?: out)? (?:for|with|by) (?:a|an|some|the) ",
    re.IGNORECASE,
)


def stands_for(log: Log, item: OpenItem, about: str) -> str:
    """The part that a stop-gap is fitted in place of; empty where nothing tells."""
    for key in item.anchors:
        words = log.words_of(key.note)
        said = _INSTEAD.search(words)
        if said:
            thing = _part(said["instead"] or said["where"])
            if thing and tokens(thing)[-1] not in tokens(about)[-1:]:
                return thing
        if thing := _lost_beside(log, key, about):
            return thing
        swapped = _SWAPPED.search(words)
        if swapped and set(tokens(about)[-1:]) <= set(tokens(words[swapped.end() :])):
            here = (
                e.fact for e in log.findings if e.fact.main.note == key.note and e.fact.main.start < swapped.start()
            )
            for fact in here:
                if isinstance(fact, Finding) and fact.verdict == "bad" and tokens(fact.part):
                    return fact.part
    return ""


def _lost_beside(log: Log, key: FactKey, about: str) -> str:
    """The part that the same note says is missing or broken: the rivet's missing, so there's a bolt in it for now."""
    for event in log.findings:
        fact = event.fact
        if not isinstance(fact, Finding) or fact.main.note != key.note or fact.verdict != "bad":
            continue
        lost = not LOST.isdisjoint(tokens(fact.condition)) and tokens(fact.part)
        if lost and tokens(fact.part)[-1] not in tokens(about)[-1:]:
            return bare(fact.part)
    return ""


def held_together(log: Log, stopgap: Container[str], item: OpenItem, about: str) -> Worded | None:
    """The step for what a piece of wire, tape or a clamp stands in for: the part wanted or found bad beside it."""
    head = tokens(JOIN.split(about, maxsplit=1)[0])[-1:]
    if not head or head[0] not in stopgap or not item.anchors:
        return None
    when = log.when(item.anchors[0])
    needed = (e.fact for e in log.events if int(when) == int(e.when) and isinstance(e.fact, FollowUp))
    if wants := next((f.about for f in needed if f.reason == "part needed"), ""):
        same = set(tokens(wants)) & set(tokens(about))
        return None if same else Worded(f"order and fit {one_of(wants)}new {bare(wants)}", bare(wants))
    for event in reversed([e for e in log.findings if int(when) - 1 <= e.when <= int(when) + 0.9]):
        fact = event.fact
        bad = isinstance(fact, Finding) and fact.verdict == "bad" and fact.state and fact.name
        if bad and isinstance(fact, Finding) and not set(tokens(fact.part)) & set(tokens(about)):
            return Worded(f"mend or replace the {bare(fact.part)}", bare(fact.part))
    return None


def _part(words: str) -> str:
    """The name at the beginning of some words."""
    kept: list[str] = []
    for word in words.split()[: MOST + 1]:
        if word.lower() in _STOPS or len(kept) == MOST:
            break
        kept.append(word)
    return " ".join(kept)
