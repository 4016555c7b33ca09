"""What a comment is about: a topic, or a thing of the machine with what is asked of it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from worklog_tui.logbook.comment_kinds import Kind
from worklog_tui.logbook.comment_words import CommentWords, Topic, holds_any
from worklog_tui.logbook.named_things import STATES, Named, named_in
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import QUANTITIES
from worklog_tui.logbook.words import FILLER, word_set

Table = Mapping[str, tuple[tuple[Any, ...], ...]]
ASKED = word_set(
    "gap clearance compression pressure voltage timing torque size thread spring height level resistance "
    "wear wobble play leak leaks leaking rust rusty spark hole key seal gasket speed temperature"
)
_NOT_TECHNICAL = word_set("machine good noted material")
_NO_NAME = FILLER | word_set(
    "you your mine my me us how what why where when which who whats ever even well much many long think "
    "know use used using put try check look make sure see say said tell show pull take clean spray swap "
    "turn run runs running not no dont cant anyone anybody because than like very too also if then . ? ! "
    ", ; : been still though people guys"
)
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


def technical(words: CommentWords, table: Table, comment: str) -> bool:
    """Whether a comment names a part, a trouble or a topic."""
    plain = words.plain(comment)
    named = named_in(plain.split(), table)
    return any(_has(plain, t) for t in words.topics) or any(n.kind not in _NOT_TECHNICAL for n in named)


def asked_about(words: CommentWords, table: Table, comment: str, kind: Kind) -> Asked:
    """What the comment is about, from the sentence that made it what it is, else from the whole."""
    plain = words.plain(comment)
    topic = next((t for t in words.topics if _has(kind.sentence, t)), None)
    if topic is not None:
        about = _tail(topic, kind.sentence) if topic.tail else topic.about
        part = "" if topic.tail or topic.things else _part_in(kind.sentence, table)
        return Asked(f"{about or topic.about} {part}".strip(), frozenset({f"topic {topic.about} {part}"}), (), topic)
    chosen = _chosen(kind, plain, table)
    if chosen is not None:
        text, things, one = chosen
        asked = _about_thing(words, text, things, one)
        return replace(asked, plan=_any(words.plans, plain), latest=_any(words.latest, plain))
    topic = next((t for t in words.topics if _has(plain, t)), None)
    if topic is not None:
        return Asked(topic.about, frozenset({f"topic {topic.about}"}), (), topic)
    rest = " ".join([w for w in kind.sentence.split() if w not in _NO_NAME][:5])
    return Asked(rest, frozenset({rest}))


def _part_in(sentence: str, table: Table) -> str:
    """The part that a topic is asked of: where to buy the head gasket."""
    found = [t for t in named_in(sentence.split(), table) if t.kind in ("part", "joint", "fastener")]
    return min(found, key=lambda t: (*t.rank, t.start)).said if found else ""


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


def _chosen(kind: Kind, plain: str, table: Table) -> tuple[list[str], list[Named], Named] | None:
    """The words, the things in them and the one that counts; of a suggestion, a thing said to be bad comes first."""
    texts = [kind.sentence.split(), plain.split()]
    for words in reversed(texts) if kind.kind == "suggestion" else ():
        things = named_in(words, table)
        bad = [t for t in things if t.kind not in STATES and _beside_bad(t, things)]
        if bad:
            return words, things, min(bad, key=lambda t: (*t.rank, t.start))
    for words in texts:
        things = named_in(words, table)
        parts = [t for t in things if t.kind not in STATES]
        if parts:
            return words, things, min(parts, key=lambda t: (*t.rank, t.start))
    return None


def _beside_bad(one: Named, things: list[Named]) -> bool:
    return any(t.kind == "bad" and (t.end == one.start or 0 <= t.start - one.end <= 2) for t in things)


def _about_thing(words: CommentWords, said: list[str], things: list[Named], chosen: Named) -> Asked:
    start = chosen.start
    while start > 0 and chosen.start - start < 2 and said[start - 1] not in _NO_NAME and said[start - 1].isalpha():
        start -= 1
    phrase = " ".join(said[start : chosen.end])
    beside = [w for w in said[max(0, chosen.start - 6) : chosen.end + 5] if w in ASKED and w not in phrase.split()]
    bad = [t.said for t in things if t.kind == "bad" and abs(t.start - chosen.start) < 6 and t.said not in phrase]
    fluid = [t.said for t in things if t.kind == "fluid" and t is not chosen and abs(t.start - chosen.start) < 6]
    about = " ".join([phrase, *(beside or bad or fluid)[:1]])
    names = (chosen.name, *words.akin.get(chosen.name, ()), *words.akin.get(chosen.said, ()), about)
    quantity = next((w for w in (*beside, phrase) if w in QUANTITIES), "")
    what = " ".join(sorted(thing(about).words | thing(about).marks))
    group = words.akin.get(chosen.name) or words.akin.get(chosen.said) or (chosen.name,)
    keys = frozenset({what, f"{group[0]} {quantity}".strip()})
    return Asked(about, keys, tuple(dict.fromkeys(names)), None, quantity)
