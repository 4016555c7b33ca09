"""The line of the log that answers a comment: by the facts about what is asked, and by its words.

Every line that tells of the thing, or shares much of the words, is weighed; the heaviest answers when it weighs enough.
A suggestion is answered only by a line in which it was done, planned, suspected or seen; a question for a measure (how
far, how long, what size) hardly by a line without a number. What the person asks his viewers answers nothing.
All weights are judgement, tuned on invented comments.
"""

from __future__ import annotations

import re
from collections import defaultdict
from dataclasses import dataclass, field

from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import CommentWords, Topic, Wanted, holds_any
from worklog_tui.logbook.deeds import asked as deed_of
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.logbook.words import raw_words
from worklog_tui.model import Fact, Finding, FollowUp, Place, Reading, Suspect, Work

ENOUGH = 4.0
"What a line must weigh to answer."
AS_GOOD = 1.5
"What a later line may weigh less where it is asked how things stand now."
MUCH = 0.5
"The share of a suggestion's rarer words from which a line tells of the same without a fact."
SEVERAL = 3
"So many telling words of one sentence tell of the same too."
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
_SHARED = 3.0
"A line that holds all of the words."
_FITS, _LACKS, _MEASURED = 1.5, 2.0, 0.5
"What was asked for is there, or is not; a measure was read there."
_NUMBER = re.compile(
    r"\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thir|four|fif|six|seven|eigh|nine)"
    r"(?:teen|ty)?\b|\b(?:twenty|thirty|forty|fifty|hundred|thousand|thou)\b"
)


@dataclass(slots=True)
class _Line:
    """What speaks for one line."""

    fact: float = 0.0
    words: float = 0.0
    meets: bool = False
    "Whether a suggestion was done, planned, suspected or seen there."
    facts: list[Fact] = field(default_factory=list)


def answer(lines: ToldLines, words: CommentWords, kind: str, asked: Asked, comment: str) -> Place | None:
    """The line that best answers a comment, the earliest of equals; None when nothing does."""
    if asked.topic is not None:
        return _by_topic(lines, asked, asked.topic, lines.likeness(stems(comment) - words.small.polite))
    found = _gathered(lines, words, kind, asked, comment)
    wanted = [w for w in words.wants if holds_any(f" {asked.sentence} ", w.says)] if kind == "question" else []
    after = _last_own_question(lines, asked)
    weighed: list[tuple[float, Place]] = []
    for note, line in found.items():
        worth = round(line.fact + line.words + _fitting(lines, note, wanted), 6)
        if worth < ENOUGH or _otherwise(lines, words, note, comment):
            continue
        place = lines.history.place(note)
        if _appeals(lines, words, note):
            after = max(after, place.order)
        elif kind == "question" or line.meets:
            weighed.append((worth, place))
    standing = [one for one in weighed if one[1].order > after]
    if asked.latest and standing:
        best = max(worth for worth, _ in standing)
        return max((place for worth, place in standing if worth >= best - AS_GOOD), key=lambda place: place.order)
    late = 1 if asked.plan else -1
    return max(standing, key=lambda one: (one[0], late * one[1].order))[1] if standing else None


def _gathered(lines: ToldLines, words: CommentWords, kind: str, asked: Asked, comment: str) -> dict[str, _Line]:
    """The lines that may answer, with what their facts and words weigh."""
    found: dict[str, _Line] = defaultdict(_Line)
    said = stems(comment) - words.small.polite
    for fact in lines.about(thing(name, name) for name in asked.names or (asked.about,)):
        line = found[fact.main.note]
        line.fact = max(line.fact, _worth(fact, kind, asked, said))
        line.facts.append(fact)
        line.meets |= _meets(lines, fact, asked, said)
    names = [stems(name) for name in (asked.names or (asked.about,)) if name]
    for sentence in _SENTENCES.split(comment) if kind == "suggestion" else [asked.sentence]:
        key = stems(sentence) - words.small.polite
        for note, share in lines.likeness(key).items():
            line = found[note]
            named = _named(lines, note, names)
            line.words = max(line.words, _SHARED * share + named)
            line.meets |= share >= MUCH or len(key & lines.words[note]) >= SEVERAL or named > _NAMED
    for note, line in found.items():
        if not line.facts:
            told = (_FACTS[kind].get(type(f), 0.0) for f in lines.by_note.get(note, ()) if not _asks(f))
            line.fact = max(told, default=0.0) / 3
    for note, share in lines.likeness(said).items():
        if note in found:
            found[note].words += share
    return found


def _named(lines: ToldLines, note: str, names: list[frozenset[str]]) -> float:
    """How far the words of a line name the thing."""
    held = lines.words[note]
    best = 0.0
    for name in names:
        if name and name <= held:
            best = max(best, _NAMED + _WHOLLY * (len(name) > 1))
    return best


def _worth(fact: Fact, kind: str, asked: Asked, said: frozenset[str]) -> float:
    if _asks(fact) or (isinstance(fact, Suspect) and kind == "question" and fact.standing == "suspected"):
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
    return worth


def _meets(lines: ToldLines, fact: Fact, asked: Asked, said: frozenset[str]) -> bool:
    """Whether a fact is what a suggestion suggests: the deed, the plan, the cause, the state."""
    deed = deed_of(asked.sentence)
    match fact:
        case FollowUp():
            planned = bool(thing(fact.topic).deed.actions & deed.actions) or stems(fact.topic) <= said
            return not _asks(fact) and (planned or len(said & lines.words[fact.main.note]) > 1)
        case Suspect():
            return True
        case Work():
            return fact.action in deed.actions
        case Finding():
            return bool(stems(fact.condition) & said)
    return False


def _asks(fact: Fact) -> bool:
    return isinstance(fact, FollowUp) and fact.reason == "question"


def _last_own_question(lines: ToldLines, asked: Asked) -> int:
    """The order of the last line in which the person asked it himself; what he said before answers nothing."""
    fitting = lines.about(thing(name, name) for name in asked.names or (asked.about,))
    return max((lines.history.place(f.main.note).order for f in fitting if _asks(f)), default=-1)


def _appeals(lines: ToldLines, words: CommentWords, note: str) -> bool:
    """Whether the person asks his viewers in this line or the next."""
    return any(
        holds_any(f" {' '.join(raw_words(text)).replace(chr(39), '')} ", words.appeals)
        for text in lines.with_next(note)
    )


def _fitting(lines: ToldLines, note: str, wanted: list[Wanted]) -> float:
    """What is asked for: a number, a day, a deed; weighed by whether the line has it."""
    if not wanted:
        return 0.0
    held, text = lines.words[note], lines.text[note].lower()
    acts = {f.action for f in lines.by_note.get(note, ()) if isinstance(f, Work)}
    measured = any(w.number for w in wanted) and any(isinstance(f, Reading) for f in lines.by_note.get(note, ()))
    fits = any((w.number and _NUMBER.search(text)) or w.holds & held or w.actions & acts for w in wanted)
    return _FITS + _MEASURED * measured if fits else -_LACKS


def _otherwise(lines: ToldLines, words: CommentWords, note: str, comment: str) -> bool:
    """Whether a line tells of it cold where it is asked of hot."""
    said, held = set(comment.split()), set(raw_words(lines.text[note]))
    both = [{one, other} for one, other in words.opposites]
    return any(len(pair & said) == 1 and len(pair & held) == 1 and pair & said != pair & held for pair in both)


def _by_topic(lines: ToldLines, asked: Asked, topic: Topic, alike: dict[str, float]) -> Place | None:
    """The line that holds most of the words that answer such a question, or tells of work on such a thing."""
    if not (topic.answer or topic.things or topic.pattern):
        return None
    works = lines.about(thing(name, name) for name in topic.things)
    notes = {f.main.note for f in works if f.kind == "work"}
    kinds, parts = stems(" ".join(topic.things)), [stems(name) for name in asked.names]
    best: tuple[float, Place] | None = None
    for note, text in lines.text.items():
        words, held = f" {' '.join(raw_words(text))} ", lines.words[note]
        hits = sum(f" {a} " in words or f" {a}s " in words for a in topic.answer)
        hits += 2 * bool(topic.pattern and topic.pattern.search(words))
        hits += 2 * any(part <= held and (kinds & held if kinds else hits) for part in parts)
        score = hits + 2.0 * (note in notes) + alike.get(note, 0.0)
        if hits and (best is None or score > best[0]):
            best = (score, lines.history.place(note))
    return best[1] if best else None
