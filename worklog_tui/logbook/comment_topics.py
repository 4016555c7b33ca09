"""What a comment is about: a topic, or a thing of the machine with what is asked of it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from worklog_tui.logbook.comment_words import CommentWords, Topic
from worklog_tui.logbook.named_things import STATES, Named, named_in
from worklog_tui.logbook.words import FILLER, word_set

Table = Mapping[str, tuple[tuple[Any, ...], ...]]
ASKED = word_set(
    "gap clearance compression pressure voltage timing torque size thread spring height level resistance "
    "wear wobble play leak leaks leaking rust rusty spark hole key seal gasket speed temperature"
)
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
    key: str
    "The same for all comments that ask about the same."
    things: tuple[Named, ...] = ()
    topic: Topic | None = None


def technical(words: CommentWords, table: Table, comment: str) -> bool:
    """Whether a comment names a part, a trouble or a topic."""
    plain = words.plain(comment)
    return any(_has(plain, topic) for topic in words.topics) or any(
        n.kind not in ("machine", "good", "noted", "material") for n in named_in(plain.split(), table)
    )


def asked_about(words: CommentWords, table: Table, comment: str, sentence: str) -> Asked:
    """What the comment is about, from the sentence that made it what it is, else from the whole."""
    topic = next((t for t in words.topics if _has(sentence, t)), None)
    if topic is not None:
        about = _tail(topic, sentence) if topic.tail else topic.about
        return Asked(about or topic.about, f"topic {topic.about}", tuple(_things(sentence, table)), topic)
    for text in (sentence, words.plain(comment)):
        things = _things(text, table)
        if things:
            return _about_thing(words, text.split(), things)
    topic = next((t for t in words.topics if _has(words.plain(comment), t)), None)
    if topic is not None:
        return Asked(topic.about, f"topic {topic.about}", (), topic)
    rest = " ".join([w for w in sentence.split() if w not in _NO_NAME][:5])
    return Asked(rest, rest)


def _has(text: str, topic: Topic) -> bool:
    spaced = f" {text} "
    return any(f" {said} " in spaced for said in topic.says)


def _tail(topic: Topic, sentence: str) -> str:
    said = max((s for s in topic.says if f" {s} " in f" {sentence} "), key=len)
    row: list[str] = []
    for word in sentence.split(said, 1)[1].split():
        if _STOPS.match(word):
            break
        row.append(word)
    return " ".join(row[:7])


def _things(text: str, table: Table) -> list[Named]:
    return named_in(text.split(), table)


def _about_thing(words: CommentWords, said: list[str], things: list[Named]) -> Asked:
    parts = [t for t in things if t.kind not in STATES]
    chosen = min(parts or things, key=lambda t: (*t.rank, t.start))
    name = words.akin.get(chosen.name, words.akin.get(chosen.said, chosen.name))
    start = chosen.start
    while start > 0 and chosen.start - start < 2 and said[start - 1] not in _NO_NAME and said[start - 1].isalpha():
        start -= 1
    phrase = " ".join(said[start : chosen.end])
    beside = [w for w in said[max(0, chosen.start - 6) : chosen.end + 5] if w in ASKED and w not in phrase.split()]
    states = [t.said for t in things if t.kind == "bad" and abs(t.start - chosen.start) < 6 and t.said not in phrase]
    about = " ".join([phrase, *(beside or states)[:1]])
    return Asked(
        about,
        f"{name} {beside[0] if beside and beside[0] == 'gap' else ''}".strip(),
        (chosen, *(p for p in parts if p is not chosen)),
    )
