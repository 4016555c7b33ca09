"""The line of the log that answers a question about no part: a price, a year, an oil, a tool."""

from __future__ import annotations

import re
from functools import lru_cache

from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import Topic
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.model import Place

MUCH = 0.5
"The share of the words of a comment that a line must hold where no part says what it is about."


def by_topic(lines: ToldLines, asked: Asked, topic: Topic, alike: dict[str, float]) -> Place | None:
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
