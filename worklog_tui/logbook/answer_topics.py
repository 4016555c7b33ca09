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
    best: tuple[float, int, Place] | None = None
    answering = _answering(lines, topic)
    of_kind = {note for word in kinds for note in lines.notes.get(word, ())} if parts else set()
    for note in answering.keys() | of_kind:
        answers, fits = answering.get(note, (0, False))
        held = lines.words[note]
        if named and not _of_parts(named, held, note in told):
            continue
        if topic.must and not (
            fits and (_of_parts(parts, held, note in told) if parts else not topic.tail or alike.get(note, 0.0) >= MUCH)
        ):
            continue
        hits = answers + 2 * fits
        hits += 2 * any(part <= held and (kinds & held if kinds else hits) for part in parts)
        score = hits + 2.0 * (note in notes) + alike.get(note, 0.0)
        if hits and (best is None or score >= best[0]):
            place = lines.history.place(note)
            best = max(best or (0.0, 0, place), (score, -place.order, place), key=lambda one: one[:2])
    return best[2] if best else None


def _answering(lines: ToldLines, topic: Topic) -> dict[str, tuple[int, bool]]:
    """The lines with words that answer the topic: how many, and whether its pattern fits; once a topic."""
    found = lines.by_topic.get(topic)
    if found is None:
        answers, pattern = _any_of(topic.answer), topic.pattern
        found = lines.by_topic[topic] = {}
        for note, words in lines.spaced.items():
            told = len(set(answers.findall(words))) if answers else 0
            fits = bool(pattern and pattern.search(words))
            if told or fits:
                found[note] = (told, fits)
    return found


@lru_cache(maxsize=100)
def _any_of(answer: tuple[str, ...]) -> re.Pattern[str] | None:
    """A pattern for the words that answer a topic, the longest first."""
    each = "|".join(re.escape(one) for one in sorted(answer, key=len, reverse=True))
    return re.compile(rf"(?<= )({each})s?(?= )") if answer else None


def _of_parts(parts: list[frozenset[str]], held: frozenset[str], told: bool) -> bool:
    """Whether a line tells of one of the parts, when there are any."""
    return told or any(part <= held for part in parts)
