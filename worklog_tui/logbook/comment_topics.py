"""What a comment is about: a topic, or a thing of the machine with what is asked of it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from worklog_tui.logbook.comment_kinds import Kind, weigh
from worklog_tui.logbook.comment_names import called, clause, parts_of, telling
from worklog_tui.logbook.comment_words import CommentWords, Topic, holds_any
from worklog_tui.logbook.deeds import asked as deed_of
from worklog_tui.logbook.named_things import STATES, Named, named_in
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import QUANTITIES
from worklog_tui.logbook.words import word_set

Table = Mapping[str, tuple[tuple[Any, ...], ...]]
_NOT_TECHNICAL = word_set("machine good noted material")
_PLAINLY = 3
"What speaks for a kind beyond doubt; of two questions in one the first counts."
_STOPS = re.compile(r"^(?:once|when|if|because|before|after|while|instead|rather|[.?!,;:]+)$")


@dataclass(frozen=True, slots=True)
class Asked:
    """What a comment is about."""

    about: str
    "In few words, as the viewer said it."
    keys: frozenset[str]
    "Comments that share one of them ask about the same."
    names: tuple[str, ...] = ()
    "The things of the machine that it is about: the one that counts, and what goes by another name."
    topic: Topic | None = None
    quantity: str = ""
    plan: bool = False
    "Whether it asks for what is planned."
    latest: bool = False
    "Whether it asks how it stands now."
    sentence: str = ""
    "The sentence that asks or suggests."
    whole: str = ""
    "The whole comment in plain form."
    kin: str = ""
    "The part that counts in it, by its name in the vocabulary."
    bad: bool = False
    "Whether it is said to be bad: chipped reeds."
    said: str = ""
    "The part that counts as the viewer calls it."


def technical(words: CommentWords, table: Table, comment: str) -> bool:
    """Whether a comment names a part, a trouble or a topic."""
    plain = words.plain(comment)
    if any(_has(plain, words.topics[n]) for n in words.may_say("topics", plain)):
        return True
    return any(n.kind not in _NOT_TECHNICAL for n in named_in(plain.split(), table))


def asked_about(words: CommentWords, table: Table, comment: str, kind: Kind, topics: bool = True) -> Asked:
    """What the comment is about, from the sentence that made it what it is, else from the whole.

    Without `topics` only the things of the machine count: what it is about when nothing answers its topic.
    """
    plain = words.plain(comment)
    asked = _asked(words, table, plain, kind) if topics else _of_things(words, table, plain, kind)
    before = _any(words.earliest, plain)
    latest = not before and _any(words.latest, plain)
    return replace(asked, plan=_any(words.plans, plain), latest=latest, sentence=kind.sentence or plain, whole=plain)


def _asked(words: CommentWords, table: Table, plain: str, kind: Kind) -> Asked:
    said = kind.sentence.split()
    topic = _topic_in(words, kind.sentence, _things(words, said, table))
    if topic is not None:
        about = _tail(topic, kind.sentence) if topic.tail else topic.about
        tailed = any(word not in words.small.silent for word in about.split()) if topic.tail else False
        part = None if tailed and not topic.must else _part_in(topic, _things(words, said, table))
        key = frozenset({f"topic {topic.about} {part.said if part and not topic.things else ''}"})
        return Asked(
            called(words.small, said, part.start, part.end) if part else about or topic.about,
            key,
            (part.said,) if part else (),
            topic,
        )
    return _of_things(words, table, plain, kind, topics=True)


def _of_things(words: CommentWords, table: Table, plain: str, kind: Kind, topics: bool = False) -> Asked:
    """What is asked of a thing of the machine; of no thing, a topic of the whole, or the first telling words."""
    chosen = _chosen(words, kind, plain, table)
    if chosen is not None:
        return _about_thing(words, *chosen)
    topic = _topic_in(words, plain, _things(words, plain.split(), table)) if topics else None
    if topic is not None:
        return Asked(topic.about, frozenset({f"topic {topic.about}"}), (), topic)
    rest = telling(words.small, _uncompared(words, kind.sentence).split())
    return Asked(rest, frozenset({rest}))


def _things(words: CommentWords, said: list[str], table: Table) -> list[Named]:
    """The things and states that a text names; without verbs (weld that tank) and small words (can it)."""
    return [t for t in named_in(said, table) if not (t.end - t.start == 1 and _no_name(words, said, t))]


def _no_name(words: CommentWords, said: list[str], one: Named) -> bool:
    after = said[one.end] if one.end < len(said) else ""
    return one.kind not in STATES and (
        one.said in words.small.silent
        or (after in words.small.articles and _verb(one.said))
        or (one.said == "stop" and after.endswith("ing"))
    )


def _verb(word: str) -> bool:
    """Whether a word before an article tells a deed: weld the tank, fitting a seal."""
    return word.endswith("ing") or bool(deed_of(f"{word} the").actions)


def _topic_in(words: CommentWords, text: str, things: list[Named]) -> Topic | None:
    """The topic that a text asks about; not oil where the pressure of the oil is asked."""
    topics = (words.topics[n] for n in sorted(words.may_say("topics", text)))
    return next((t for t in topics if _has(text, t) and not _within(text.split(), t, things)), None)


def _within(said: list[str], topic: Topic, things: list[Named]) -> bool:
    """Whether each phrase of the topic ends inside the name of a thing."""
    ends = [n + len(p) for p in map(str.split, topic.says) for n in range(len(said)) if said[n : n + len(p)] == p]
    return bool(ends) and all(any(t.start < end < t.end for t in things) for end in ends)


def _part_in(topic: Topic, things: list[Named]) -> Named | None:
    """The part that a topic is asked of: where to buy the head gasket."""
    found = [t for t in things if t.kind in ("part", "joint", "fastener") and t.name not in topic.things]
    return min(found, key=lambda t: (*t.rank, t.start)) if found else None


def _has(text: str, topic: Topic) -> bool:
    return holds_any(f" {text} ", topic.says)


def _any(said: tuple[str, ...], text: str) -> bool:
    return any(f" {s} " in f" {text} " for s in said)


def _tail(topic: Topic, sentence: str) -> str:
    said = max((s for s in topic.says if f" {s} " in f" {sentence} "), key=len)
    row: list[str] = []
    for word in sentence.split(said, 1)[1].split():
        if _STOPS.match(word):
            break
        row.append(word)
    return " ".join(row[:7])


def _chosen(words: CommentWords, kind: Kind, plain: str, table: Table) -> tuple[list[str], list[Named], Named] | None:
    """The words, the things in them and the one that counts; of a suggestion, a thing said to be bad comes first."""
    whole = [kind.sentence, plain]
    texts = [*(_uncompared(words, t) for t in whole), *whole]
    if texts[0] != whole[0] and kind.kind == "question" and telling(words.small, texts[0].split()):
        texts = texts[:2]
    named = {text: (text.split(), _things(words, text.split(), table)) for text in dict.fromkeys(texts)}
    for text in reversed(texts[:2]) if kind.kind == "suggestion" else ():
        said, things = named[text]
        bad = [t for t in parts_of(things) if _beside_bad(t, things) and _weight(words, kind.kind, said, t)]
        if bad:
            return said, things, min(bad, key=_telling)
    for said, things in named.values():
        if parts := parts_of(things):
            weights = {t: _weight(words, kind.kind, said, t) for t in parts}
            return said, things, min(parts, key=lambda t: (-weights[t], *_telling(t)))
    return None


def _uncompared(words: CommentWords, text: str) -> str:
    """A text without what a thing is only compared with: clean them the same way you did the others."""
    cut = [n for said in words.compared if (n := f" {text} ".find(f" {said} ")) >= 0]
    if not cut:
        return text
    rest = text[min(cut) :].split(" . ", 1)
    return f"{text[: min(cut)]} . {rest[1]}" if len(rest) > 1 else text[: min(cut)].strip()


def _telling(one: Named) -> tuple[int, int, int]:
    """Smaller is more telling; of equals the first."""
    return *one.rank, one.start


def _weight(words: CommentWords, kind: str, said: list[str], one: Named) -> int:
    """How much the clause that names a thing speaks for the kind of the comment."""
    low, high = clause(words.small, said, one.start, one.end)
    weighed = weigh(words, " ".join(said[low:high]))
    return min(_PLAINLY, weighed.question if kind == "question" else weighed.suggestion)


def _beside_bad(one: Named, things: list[Named]) -> bool:
    return any(t.kind == "bad" and (t.end == one.start or 0 <= t.start - one.end <= 2) for t in things)


def _about_thing(words: CommentWords, said: list[str], things: list[Named], chosen: Named) -> Asked:
    start = chosen.start
    while (
        start > 0
        and chosen.start - start < 2
        and said[start - 1] not in words.small.silent
        and said[start - 1].isalpha()
    ):
        start -= 1
    phrase = " ".join(said[start : chosen.end])
    beside = [
        w
        for w in said[max(0, chosen.start - 6) : chosen.end + 5]
        if w in words.small.asked_of and w not in phrase.split()
    ]
    near = [t for t in things if abs(t.start - chosen.start) < 6 and t.said not in phrase]
    bad = [t.said for t in near if t.kind == "bad"]
    fluid = [t.said for t in near if t.kind == "fluid"]
    short = " ".join([phrase, *(beside or bad or fluid)[:1]])
    low, high = clause(words.small, said, chosen.start, chosen.end)
    others = [
        t.name for t in things if t.kind == "part" and low <= t.start and t.end <= high and t.name not in chosen.name
    ]
    akin = (*words.akin.get(chosen.name, ()), *words.akin.get(chosen.said, ()))
    names = (chosen.name, chosen.said, *akin, short, *others)
    quantity = next((w for w in (*beside, *phrase.split()) if w in QUANTITIES), "")
    keys = _keys(words, things, short, quantity)
    about = called(words.small, said, start, chosen.end)
    marked = bool(bad) or _beside_bad(chosen, things)
    return Asked(
        about, keys, tuple(dict.fromkeys(names)), None, quantity, kin=_kin(things).name, bad=marked, said=chosen.said
    )


def _kin(things: list[Named]) -> Named:
    """The thing by which a comment is put beside others."""
    return min((t for t in things if t.kind not in STATES), key=_telling)


def _keys(words: CommentWords, things: list[Named], short: str, quantity: str) -> frozenset[str]:
    kin = _kin(things)
    what = " ".join(sorted(thing(short).words | thing(short).marks))
    group = words.akin.get(kin.name) or words.akin.get(kin.said) or (kin.name,)
    return frozenset({what, f"{group[0]} {quantity}".strip()})
