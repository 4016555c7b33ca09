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
from functools import lru_cache

from worklog_tui.logbook.answer_fits import fitting, otherwise, wanted_in
from worklog_tui.logbook.answer_meets import asks, diagnosing, meets
from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import CommentWords, Topic, Wanted, holds_any
from worklog_tui.logbook.deeds import asked as deed_of
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.logbook.words import one_form, raw_words
from worklog_tui.model import Fact, Finding, FollowUp, Place, Reading, Suspect, Work

ENOUGH = 4.0
"What a line must weigh to answer."
AS_GOOD = 1.5
"What a later line may weigh less where it is asked how things stand now."
MUCH = 0.5
"The share of a suggestion's rarer words from which a line tells of the same without a fact."
MOST = 0.65
"The share from which it does so even where one of them is strange to the log."
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
_FEW = 3
"So many lines with such a figure may stand for the machine as a whole."
_SHARED = 3.0
"A line that holds all of the words."


@dataclass(slots=True)
class _Line:
    """What speaks for one line."""

    fact: float = 0.0
    words: float = 0.0
    meets: bool = False
    "Whether a suggestion was done, planned, suspected or seen there."
    named: bool = False
    "Whether its words name the thing."
    share: float = 0.0
    "The most that it holds of the words of a sentence."
    carried: bool = False
    "Whether a line shortly before names it."
    facts: list[Fact] = field(default_factory=list)


def answer(lines: ToldLines, words: CommentWords, kind: str, asked: Asked, comment: str) -> Place | None:
    """The line that best answers a comment, the earliest of equals; None when nothing does."""
    if asked.topic is not None:
        return _by_topic(lines, asked, asked.topic, lines.likeness(stems(comment) - words.small.polite))
    found = _gathered(lines, words, kind, asked, comment)
    wanted = wanted_in(words, asked.sentence) if kind == "question" else []
    if any(one.must for one in wanted):
        _carried(lines, found)
        _of_the_machine(lines, found, asked, wanted)
    late = asked.latest or asked.plan or any(one.latest for one in wanted)
    after = _last_own_question(lines, asked)
    strange = kind == "suggestion" and _strange(lines, words, asked)
    weighed: list[tuple[float, Place]] = []
    for note, line in found.items():
        fits = fitting(lines, note, wanted, line.facts, line.named or line.carried)
        worth = round(line.fact + line.words + (fits or 0.0), 6)
        if fits is None or worth < ENOUGH or otherwise(lines, words, note, comment, line.facts):
            continue
        place = lines.history.place(note)
        if _appeals(lines, words, note):
            after = max(after, place.order)
        elif kind == "question" or (line.meets and (not strange or line.share >= MOST)):
            weighed.append((worth, place))
    standing = [one for one in weighed if one[1].order > after]
    if late and standing:
        best = max(worth for worth, _ in standing)
        return max((place for worth, place in standing if worth >= best - AS_GOOD), key=lambda place: place.order)
    return max(standing, key=lambda one: (one[0], -one[1].order))[1] if standing else None


def _gathered(lines: ToldLines, words: CommentWords, kind: str, asked: Asked, comment: str) -> dict[str, _Line]:
    """The lines that may answer, with what their facts and words weigh."""
    found: dict[str, _Line] = defaultdict(_Line)
    said = stems(comment) - words.small.polite
    for fact in lines.about(thing(name, name) for name in asked.names or (asked.about,)):
        line = found[fact.main.note]
        line.fact = max(line.fact, _worth(fact, kind, asked, said))
        line.facts.append(fact)
        line.meets |= meets(lines, words, fact, asked, said)
    names = [stems(name) for name in (asked.names or (asked.about,)) if name]
    for sentence in _SENTENCES.split(comment) if kind == "suggestion" else [asked.sentence]:
        key = stems(sentence) - words.small.polite
        for note, share in lines.likeness(key).items():
            line = found[note]
            named = _named(lines, note, names)
            line.words = max(line.words, _SHARED * share + named)
            line.named |= named > 0
            line.share = max(line.share, share)
            shared = len(key & lines.words[note]) >= SEVERAL and share >= PART
            line.meets |= share >= MUCH or shared or (named > _NAMED and diagnosing(words, asked))
    for note, line in found.items():
        if not line.facts:
            told = (_FACTS[kind].get(type(f), 0.0) for f in lines.by_note.get(note, ()) if not asks(f))
            line.fact = max(told, default=0.0) / 3
        if line.named and any(f.quantity == asked.quantity for f in lines.readings(note)):
            line.fact = max(line.fact, _FACTS[kind][Reading])
    for note, share in lines.likeness(said).items():
        if note in found:
            found[note].words += share
    return found


def _carried(lines: ToldLines, found: dict[str, _Line]) -> None:
    """What a line names the next ones may tell of, without naming it again."""
    for note in [note for note, line in found.items() if line.named or line.facts]:
        worth, after = _NAMED + _WHOLLY, lines.after.get(note)
        for _ in range(_NEXT):
            if after is None or (after in found and found[after].named):
                break
            found[after].words += worth * _CARRIED
            found[after].carried = True
            after = lines.after.get(after)


def _of_the_machine(lines: ToldLines, found: dict[str, _Line], asked: Asked, wanted: list[Wanted]) -> None:
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


def _strange(lines: ToldLines, words: CommentWords, asked: Asked) -> bool:
    """Whether what is suggested, and is no cause, names something that the log never does: an inverter, vinegar."""
    told = lines.about(thing(name, name) for name in asked.names)
    known = {one_form(deed_of(asked.sentence).word)}.union(*(stems(fact.about) for fact in told))
    telling = stems(asked.about) - words.small.polite - words.small.everywhere - known
    return not diagnosing(words, asked) and any(word not in lines.notes and word.isalpha() for word in telling)


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


def _last_own_question(lines: ToldLines, asked: Asked) -> int:
    """The order of the last line in which the person asked it himself; what he said before answers nothing."""
    fitting = lines.about(thing(name, name) for name in asked.names or (asked.about,))
    return max((lines.history.place(f.main.note).order for f in fitting if asks(f)), default=-1)


def _appeals(lines: ToldLines, words: CommentWords, note: str) -> bool:
    """Whether the person asks his viewers in this line or the next."""
    return any(
        holds_any(f" {' '.join(raw_words(text)).replace(chr(39), '')} ", words.appeals)
        for text in lines.with_next(note)
    )


def _by_topic(lines: ToldLines, asked: Asked, topic: Topic, alike: dict[str, float]) -> Place | None:
    """The line that holds most of the words that answer such a question, or tells of work on such a thing."""
    if not (topic.answer or topic.things or topic.pattern):
        return None
    works = lines.about(thing(name, name) for name in topic.things)
    notes = {f.main.note for f in works if f.kind == "work"}
    told = {f.main.note for f in lines.about(thing(name, name) for name in asked.names)}
    kinds, parts = stems(" ".join(topic.things)), [stems(name) for name in asked.names]
    named = [stems(name) for name in asked.names if topic.of and name not in topic.of]
    best: tuple[float, Place] | None = None
    answers = _any_of(topic.answer)
    for note, words in lines.spaced.items():
        held = lines.words[note]
        if named and not _of_parts(named, held, note in told):
            continue
        if topic.must and not (
            topic.pattern
            and topic.pattern.search(words)
            and (_of_parts(parts, held, note in told) if parts else not topic.tail or alike.get(note, 0.0) >= MUCH)
        ):
            continue
        hits = len(set(answers.findall(words))) if answers else 0
        hits += 2 * bool(topic.pattern and topic.pattern.search(words))
        hits += 2 * any(part <= held and (kinds & held if kinds else hits) for part in parts)
        score = hits + 2.0 * (note in notes) + alike.get(note, 0.0)
        if hits and (best is None or score > best[0]):
            best = (score, lines.history.place(note))
    return best[1] if best else None


@lru_cache(maxsize=100)
def _any_of(answer: tuple[str, ...]) -> re.Pattern[str] | None:
    """A pattern for the words that answer a topic, the longest first."""
    each = "|".join(re.escape(one) for one in sorted(answer, key=len, reverse=True))
    return re.compile(rf"(?<= )({each})s?(?= )") if answer else None


def _of_parts(parts: list[frozenset[str]], held: frozenset[str], told: bool) -> bool:
    """Whether a line tells of one of the parts, when there are any."""
    return told or any(part <= held for part in parts)
