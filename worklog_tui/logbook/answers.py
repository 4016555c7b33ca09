"""Viewers' comments read against the log: what each is, what it is about, and the line that already answers it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from worklog_tui.logbook.comment_groups import grouped
from worklog_tui.logbook.comment_kinds import kind_of
from worklog_tui.logbook.comment_topics import Asked, Table, asked_about, technical
from worklog_tui.logbook.comment_words import CommentWords, Topic
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.logbook.words import raw_words
from worklog_tui.model import Comment, CommentReading, Fact, FollowUp, History, Place, Reading, Suspect

_POLITE = stems("see please anyone anybody know tell think reckon")
"Words of a comment that no line need share."
_ANSWERS = {
    "question": {"finding": 4.0, "reading": 3.5, "work": 3.0, "suspect": 2.0, "follow_up": 2.5},
    "suggestion": {"follow_up": 5.0, "work": 3.0, "suspect": 3.0, "finding": 2.5, "reading": 2.0},
}
"How well a kind of fact answers a kind of comment (judgement)."
TAKEN_UP = 0.6
"The share of the words of an own question that a comment must hold to be about it."
OF_THE_SAME = 0.35
"From what share of a suggestion's rarer words a line in which nothing was understood may answer it."
MUCH_ALIKE = 0.3
"From what share of a comment's rarer words a line speaks of the same without naming the thing."
ENOUGH = 4.0
"What a line must weigh to answer."


def read_all(
    history: History, words: CommentWords, table: Table, comments: Sequence[Comment]
) -> tuple[CommentReading, ...]:
    """Each comment read; the ones that ask the same share the wording of the first."""
    lines = ToldLines.of(history)
    table = words.with_akin(table)
    kinds = [kind_of(words, one.words, technical(words, table, one.words)) for one in comments]
    telling = [n for n, kind in enumerate(kinds) if kind.kind != "chatter"]
    plain = [words.plain(comments[n].words) for n in telling]
    asked = [
        _own_question(lines, text) or asked_about(words, table, comments[n].words, kinds[n])
        for n, text in zip(telling, plain, strict=True)
    ]
    found = [CommentReading(one, kind.kind) for one, kind in zip(comments, kinds, strict=True)]
    shared: dict[int, CommentReading] = {}
    groups = grouped([kinds[n].kind for n in telling], asked, plain)
    wordings = _wordings(groups, asked)
    for place, group in enumerate(groups):
        n = telling[place]
        if group not in shared:
            known = answer(lines, kinds[n].kind, asked[place], plain[place])
            shared[group] = replace(found[n], about=wordings[group], answered=known)
        found[n] = replace(shared[group], comment=comments[n])
    return tuple(found)


def _wordings(groups: Sequence[int], asked: Sequence[Asked]) -> dict[int, str]:
    """How each group is called: by its first comment, or by the first whose words no group before it goes by."""
    said: dict[int, list[str]] = {}
    for group, one in zip(groups, asked, strict=True):
        said.setdefault(group, []).append(one.about)
    called: dict[int, str] = {}
    taken: set[str] = set()
    for group, abouts in said.items():
        called[group] = next((about for about in abouts if about not in taken), abouts[0])
        taken.add(called[group])
    return called


def _own_question(lines: ToldLines, comment: str) -> Asked | None:
    """What the person himself asked, when a viewer takes it up: most of its words are in the comment."""
    said = stems(comment)
    for fact, words in lines.questions:
        shared = len(words & said)
        if shared >= 2 and (shared >= TAKEN_UP * len(words) or (shared > 2 and shared >= TAKEN_UP / 2 * len(words))):
            return Asked(fact.topic, frozenset({f"own {fact.topic}"}), (fact.topic,))
    return None


def answer(lines: ToldLines, kind: str, asked: Asked, comment: str) -> Place | None:
    """The line that best answers a comment, the earliest of equals; None when nothing does.

    What the person still asks himself is not answered by what he said before.
    """
    alike = lines.likeness(stems(comment) - _POLITE)
    if asked.topic is not None:
        return _by_topic(lines, asked.topic, alike)
    fitting = lines.about(thing(name, name) for name in asked.names or (asked.about,))
    questions = [f for f in fitting if isinstance(f, FollowUp) and f.reason == "question"]
    after = max((lines.history.place(f.main.note).order for f in questions), default=-1)
    worth = {id(f): (f, _worth(f, kind, asked)) for f in fitting if f not in questions}
    if not questions:
        near = (f for note, share in alike.items() if share >= MUCH_ALIKE for f in lines.by_note.get(note, ()))
        worth = {id(f): (f, _ANSWERS[kind].get(f.kind, 0.0)) for f in near if not _asks(f)} | worth
    best = _best(lines, worth.values(), alike, after, asked.latest)
    return _by_words(lines, alike) if best is None and kind == "suggestion" and not questions else best


def _best(
    lines: ToldLines, worth: Iterable[tuple[Fact, float]], alike: Mapping[str, float], after: int, latest: bool
) -> Place | None:
    best: tuple[float, int, Place] | None = None
    for fact, weight in worth:
        place = lines.history.place(fact.main.note)
        score = round(weight + 2 * alike.get(fact.main.note, 0.0), 6)
        rank = (score, place.order if latest else -place.order)
        if weight and score >= ENOUGH and place.order > after and (best is None or rank > best[:2]):
            best = (*rank, place)
    return best[2] if best else None


def _asks(fact: Fact) -> bool:
    return isinstance(fact, FollowUp) and fact.reason == "question"


def _by_words(lines: ToldLines, alike: Mapping[str, float]) -> Place | None:
    """The line that speaks most of the same, when it speaks much of it: a test that was done without naming a part."""
    best = max(alike, key=lambda note: (alike[note], -lines.history.place(note).order), default=None)
    return lines.history.place(best) if best is not None and alike[best] >= OF_THE_SAME else None


def _worth(fact: Fact, kind: str, asked: Asked) -> float:
    if isinstance(fact, Suspect) and kind == "question" and fact.standing == "suspected":
        return 0.0
    worth = _ANSWERS[kind].get(fact.kind, 0.0)
    if asked.plan and isinstance(fact, FollowUp):
        worth += 4.0
    if isinstance(fact, Reading) and asked.quantity == fact.quantity:
        worth += 3.0 if fact.role == "specified" else 1.5
    return worth


def _by_topic(lines: ToldLines, topic: Topic, alike: Mapping[str, float]) -> Place | None:
    """The line that holds most of the words that answer such a question, or tells of work on such a thing."""
    if not (topic.answer or topic.things):
        return None
    works = lines.about(thing(name, name) for name in topic.things)
    notes = {f.main.note for f in works if f.kind == "work"}
    best: tuple[float, Place] | None = None
    for record in lines.history.sessions:
        for note in record.notes:
            words = f" {' '.join(raw_words(note.words))} "
            hits = sum(f" {a} " in words or f" {a}s " in words for a in topic.answer)
            score = hits + 2.0 * (note.uid in notes) + alike.get(note.uid, 0.0)
            if hits and (best is None or score > best[0]):
                best = (score, lines.history.place(note.uid))
    return best[1] if best else None
