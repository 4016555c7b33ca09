"""What speaks for each line of the log that may answer a comment: the facts about the thing, and the words.

All weights are judgement, tuned on invented comments.
"""

from __future__ import annotations

import re
from collections import defaultdict
from dataclasses import dataclass, field

from worklog_tui.logbook.answer_deeds import leading_deed, tells_deed
from worklog_tui.logbook.answer_fits import LACKS, fitting
from worklog_tui.logbook.answer_meets import STOP_GAP, asks, diagnosing, meets
from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import CommentWords, Wanted, holds_any
from worklog_tui.logbook.deeds import asked as deed_of
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.model import Fact, Finding, FollowUp, Reading, Suspect, Work

MUCH = 0.5
"The share of a suggestion's rarer words from which a line tells of the same without a fact."
SOME = 0.4
"The share from which a line is taken to tell of what is asked, though it names no thing."
SEVERAL, PART = 3, 0.3
"So many telling words of one sentence, and this share of their weight, tell of the same too."
_SENTENCES = re.compile(r"[.!?]+")
_FACTS: dict[str, dict[type[Fact], float]] = {
    "question": {Finding: 4.0, Reading: 3.5, Work: 3.0, Suspect: 2.0, FollowUp: 2.5},
    "suggestion": {FollowUp: 5.0, Work: 3.0, Suspect: 4.0, Finding: 2.5, Reading: 2.0},
}
"How well a kind of fact about the thing answers a kind of comment."
_NAMED, _WHOLLY = 1.5, 1.0
"A line that names the thing; that names all of a thing of several words."
OWED_YET = 1.5
"What is only owed says little of how it stands now."
_NEXT, _CARRIED = 2, 0.8
"So many lines after it a thing may be meant without being named; what that counts of a name."
_OUTCOME, _TOLD_ON = 4, 3.0
"So many lines on it may be told how a thing came out; what that weighs."
_FEW = 3
"So many lines with such a figure may stand for the machine as a whole."
_INTENDED = 4.0
"What is planned in words, and the stop-gap that a proper part is to replace."
_SHARED = 3.0
"A line that holds all of the words."


@dataclass(slots=True)
class Line:
    """What speaks for one line."""

    fact: float = 0.0
    words: float = 0.0
    meets: bool = False
    "Whether a suggestion was done, planned, suspected or seen there."
    named: bool = False
    "Whether its words name the thing."
    share: float = 0.0
    "The most that it holds of the words of a sentence."
    gap: bool = False
    "Whether the stop-gap is told of there in the place of which a proper part is asked for."
    several: bool = False
    "Whether it holds several of the telling words of one."
    carried: bool = False
    "Whether a line shortly before names it."
    facts: list[Fact] = field(default_factory=list)


def gathered(lines: ToldLines, words: CommentWords, kind: str, asked: Asked, comment: str) -> dict[str, Line]:
    """The lines that may answer, with what their facts and words weigh."""
    found: dict[str, Line] = defaultdict(Line)
    said = stems(comment) - words.small.polite
    for fact in lines.about(thing(name, name) for name in asked.names or (asked.about,)):
        line = found[fact.main.note]
        line.fact = max(line.fact, _worth(fact, kind, asked, said))
        line.facts.append(fact)
        line.meets |= meets(lines, words, fact, asked, said)
    led = leading_deed(words, asked.whole) if kind == "suggestion" else ""
    names = [stems(name) for name in (asked.names or (asked.about,)) if name]
    for sentence in _SENTENCES.split(comment) if kind == "suggestion" else [asked.sentence]:
        key = stems(sentence) - words.small.polite
        for note, share in lines.likeness(key).items():
            line = found[note]
            named = _named(lines, note, names)
            line.words = max(line.words, _SHARED * share + named)
            line.named |= named > 0
            line.share = max(line.share, share)
            held = len((key & lines.words[note]) - words.small.quiet) if share >= PART else 0
            shared = held >= SEVERAL
            line.several |= shared
            much = share >= MUCH and (held > 1 or named > 0)
            alike = (much or shared) and (not led or tells_deed(lines, note, led, line.facts, line.named))
            line.meets |= alike or (named > _NAMED and diagnosing(words, asked))
    for note, line in found.items():
        if not line.facts:
            line.fact = _of_any(lines, kind, note) / 3
        if line.named and any(f.quantity == asked.quantity for f in lines.readings(note)):
            line.fact = max(line.fact, _FACTS[kind][Reading])
    for note, share in lines.likeness(said).items():
        if note in found:
            found[note].words += share
    if kind == "suggestion":
        _planned_in_words(lines, words, found, names)
        _stop_gaps(lines, words, found, asked, said)
    return found


def _of_any(lines: ToldLines, kind: str, note: str) -> float:
    """What the facts of a line weigh, whatever they are about."""
    if (worth := lines.worths.get((kind, note))) is None:
        told = (_FACTS[kind].get(type(f), 0.0) for f in lines.by_note.get(note, ()) if not asks(f))
        worth = lines.worths[kind, note] = max(told, default=0.0)
    return worth


def _planned_in_words(
    lines: ToldLines, words: CommentWords, found: dict[str, Line], names: list[frozenset[str]]
) -> None:
    """A line that names the thing and tells what is to come: what is suggested is planned already."""
    for note, line in found.items():
        if line.named and _named(lines, note, names) > _NAMED and holds_any(lines.spaced[note], words.intended):
            line.fact, line.meets = max(line.fact, _INTENDED), True


def _stop_gaps(
    lines: ToldLines, words: CommentWords, found: dict[str, Line], asked: Asked, said: frozenset[str]
) -> None:
    """Where a proper part is asked for: the line that tells of the stop-gap which the comment names."""
    if not holds_any(f" {asked.whole} ", words.renewing):
        return
    for note, facts in lines.by_note.items():
        gap = any(isinstance(fact, FollowUp) and fact.reason in STOP_GAP for fact in facts)
        if gap and len(said & lines.words[note]) >= 2:
            line = found[note]
            line.fact, line.meets, line.gap = max(line.fact, _INTENDED), True, True


def carry_on(lines: ToldLines, found: dict[str, Line]) -> None:
    """What a line names the next ones may tell of, without naming it again."""
    for note in [note for note, line in found.items() if line.named or line.facts]:
        worth, after = _NAMED + _WHOLLY, lines.after.get(note)
        for _ in range(_NEXT):
            if after is None or (after in found and found[after].named):
                break
            found[after].words += worth * _CARRIED
            found[after].carried = True
            after = lines.after.get(after)


def came_out(lines: ToldLines, found: dict[str, Line], wanted: list[Wanted]) -> None:
    """How it came out is often told a few lines on, without naming it: steady, that was it."""
    for note in [note for note, line in found.items() if line.named or line.facts or line.share >= SOME]:
        after = lines.after.get(note)
        for _ in range(_OUTCOME):
            if after is None or (after in found and found[after].named):
                break
            plain = all(isinstance(fact, Finding) for fact in lines.by_note.get(after, ()))
            if plain and fitting(lines, after, wanted, (), False) not in (None, -LACKS) and not found[after].carried:
                found[after].words += _TOLD_ON
                found[after].carried = True
            after = lines.after.get(after)


def of_the_machine(lines: ToldLines, found: dict[str, Line], asked: Asked, wanted: list[Wanted]) -> None:
    """Where no thing is named, the few lines that give such a figure of anything: what does it weigh."""
    if asked.names:
        return
    measured = {
        fact.main.note
        for facts in lines.by_note.values()
        for fact in facts
        if isinstance(fact, Reading) and any(fact.quantity in one.quantities for one in wanted)
    }
    for note in measured if len(measured) <= _FEW else ():
        found[note].fact, found[note].named = 3.5, True


def _named(lines: ToldLines, note: str, names: list[frozenset[str]]) -> float:
    """How far the words of a line name the thing."""
    held = lines.words[note]
    best = 0.0
    for name in names:
        if name and name <= held:
            best = max(best, _NAMED + _WHOLLY * (len(name) > 1))
    return best


def _worth(fact: Fact, kind: str, asked: Asked, said: frozenset[str]) -> float:
    if asks(fact) or (isinstance(fact, Suspect) and kind == "question" and fact.standing == "suspected"):
        return 0.0
    worth = _FACTS[kind].get(type(fact), 0.0)
    if isinstance(fact, FollowUp) and (asked.plan or asked.latest):
        worth += 4.0 if asked.plan else -OWED_YET
    if isinstance(fact, Reading) and asked.quantity == fact.quantity:
        worth += 3.0 if (fact.role == "specified") != asked.latest else 1.5
    if isinstance(fact, Work) and fact.action in deed_of(asked.sentence).actions:
        worth += 1.0
    if isinstance(fact, Finding) and stems(fact.condition) & said:
        worth += 1.0
    if isinstance(fact, Suspect) and fact.standing != "suspected":
        worth += 1.5
    return worth
