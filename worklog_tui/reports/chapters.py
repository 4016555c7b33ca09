"""Film chapters from the turns of the work: where another thing is taken in hand, another chapter begins.

What makes a list of chapters valid for the platforms (several guides agree, none is a standard): the first line is at
0:00, there are at least three, in order, each at least ten seconds long, one `M:SS Title` a line with the time first.
One broken rule voids the whole list without a word, so the list is made to keep all of them.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from worklog_tui.model import Fact, Finding, FollowUp, Number, Reading, Suspect, Trait, Work, clock
from worklog_tui.reports.chapter_titles import in_hand, title_of
from worklog_tui.reports.film import Film, FilmLine

SHORTEST, FEWEST, MOST = 10, 3, 100
"Seconds of a chapter; chapters of a film."
_WEIGHTS: dict[type[Fact], float] = {
    Work: 3.0, Finding: 2.0, Reading: 2.0, Suspect: 1.5, FollowUp: 1.0, Trait: 0.5, Number: 0.5,
}  # fmt: skip
"How much a fact says about what is in hand (judgement)."
_TURN = 3.0
"What a further chapter costs, in weights of facts that would stand in one about another thing (judgement)."
_DEAREST, _CHEAPEST = 200.0, 0.05
"Between these costs chapters are made fewer, or more."
_REST = 0.3
"Share of that cost that is left where nothing is said for a minute: there the film turns by itself."
_PAUSE, _APART = 120, 3.0
"A pause of so many seconds within a chapter costs so much: what comes after it is another turn (judgement)."
_SWIFT, _HASTE = 45, 3.0
"Chapters shorter than so many seconds cost more, the shorter the more, up to so much (judgement)."
_LONGEST = 80
"Told lines of a chapter at most."
_A_MINUTE, _MANY = 3.0, 24
"A film of so many minutes has at most this times their root in chapters, a long one so many (judgement)."
_SOON = 300
"Chapters about one thing that begin within so many seconds are one."


@dataclass(frozen=True, slots=True)
class Chapter:
    """One chapter."""

    second: int
    title: str

    @property
    def line(self) -> str:
        """As it stands in a description."""
        return f"{clock(self.second)} {self.title}"


def chapters(film: Film, name: str) -> tuple[Chapter, ...]:
    """The chapters of a film; none when it is too short or tells too little for three."""
    told = [line for line in film.lines if _topics(line)]
    most = max(FEWEST + 1, min(_MANY, round(_A_MINUTE * math.sqrt(film.length / 60))))
    fewer = _at_cost(told, film, name, _TURN)
    dearer = _TURN
    while len(fewer) > most and dearer < _DEAREST:
        dearer *= 1.25
        found = _at_cost(told, film, name, dearer)
        fewer = found if len(found) >= FEWEST else fewer
    cheaper = _TURN
    while len(fewer) < FEWEST and cheaper > _CHEAPEST:
        cheaper /= 2
        fewer = _at_cost(told, film, name, cheaper)
    return _without_the_shortest(fewer, most, film.length) if len(fewer) >= FEWEST else ()


def _without_the_shortest(made: Sequence[Chapter], most: int, length: int) -> tuple[Chapter, ...]:
    """At most so many chapters: the shortest but the first are left out, each as part of the one before it."""
    kept = list(made)
    while len(kept) > most:
        spans = [after.second - one.second for one, after in pairwise([*kept, Chapter(length, "")])]
        del kept[min(range(1, len(kept)), key=lambda place: spans[place])]
    return tuple(kept)


def _at_cost(told: Sequence[FilmLine], film: Film, name: str, cost: float) -> tuple[Chapter, ...]:
    """The chapters where a further one costs so much."""
    return _named(_cut(told, cost, film.length), film, name)


def problems(lines: Sequence[str], length: int | None = None) -> list[str]:
    """What is wrong with a list of chapter lines; empty when it is valid. `length`: of the film, in seconds."""
    found, seconds = [], []
    for line in lines:
        time, _, title = line.partition(" ")
        parts = time.split(":")
        if not (2 <= len(parts) <= 3 and all(p.isdigit() for p in parts) and title.strip()):
            return [f"“{line}” is not a time and a title"]
        seconds.append(sum(int(p) * 60**n for n, p in enumerate(reversed(parts))))
    if not seconds or seconds[0] != 0:
        found.append("the first chapter is not at 0:00")
    if not FEWEST <= len(seconds) <= MOST:
        found.append(f"there are {len(seconds)} chapters")
    ends = [*seconds[1:], *([length] if length is not None else [])]
    if any(after - before < SHORTEST for before, after in zip(seconds, ends, strict=False)):
        found.append("a chapter is shorter than ten seconds or out of order")
    return found


class BadChapters(ValueError):
    """Chapters that a platform would not take; the message is a plain sentence."""


def edited(text: str) -> list[list[str]]:
    """Chapters as a person left them: films apart by a blank line, with or without a name above."""
    plain = text.replace("<", "(").replace(">", ")").strip()  # angle brackets are refused by the platforms
    blocks = [[" ".join(row.split()) for row in block.splitlines()] for block in re.split(r"\n\s*\n", plain)]
    for number, block in enumerate(blocks, 1):
        lines = block if not block or block[0][:1].isdigit() else block[1:]
        if wrong := problems(lines):
            where = f" of film {number}" if len(blocks) > 1 else ""
            raise BadChapters(f"The chapters{where} would not be taken: {'; '.join(wrong)}.")
    return blocks


def _topics(line: FilmLine) -> Counter[str]:
    """What a line is about, with how much it says about it."""
    found: Counter[str] = Counter()
    for fact in line.facts:
        key = in_hand(fact)
        if key and not (isinstance(fact, Reading) and fact.role not in ("measured", "set")):
            found[key] += _WEIGHTS.get(type(fact), 1.0)  # type: ignore[assignment]
    return found


def _cut(told: Sequence[FilmLine], cost: float, length: int) -> list[Sequence[FilmLine]]:
    """The lines in chapters, so that little is told of other things and few chapters are needed.

    Shortest path over the places where a chapter may begin; time is linear in the lines.
    """
    best: list[tuple[float, int]] = [(0.0, 0)]
    topics = [_topics(line) for line in told]
    for end in range(1, len(told) + 1):
        until = told[end].second if end < len(told) else length
        inside: Counter[str] = Counter()
        paused = 0.0
        found: tuple[float, int] | None = None
        for start in range(end - 1, max(end - 1 - _LONGEST, -1), -1):
            inside.update(topics[start])
            if start < end - 1 and told[start + 1].second - told[start].second >= _PAUSE:
                paused += _APART
            from_start = 0 if start == 0 else told[start].second
            if until - from_start < SHORTEST and start > 0:
                continue
            turn = cost * (_REST if start and told[start].second - told[start - 1].second >= 60 else 1.0)
            turn += _HASTE * max(0.0, 1 - (until - from_start) / _SWIFT)
            sum_of = best[start][0] + turn + paused + inside.total() - max(inside.values())
            if found is None or sum_of < found[0]:
                found = (sum_of, start)
        best.append(found or (best[end - 1][0] + cost, end - 1))
    cuts, end = [], len(told)
    while end > 0:
        cuts.append(told[best[end][1] : end])
        end = best[end][1]
    return cuts[::-1]


def _named(parts: Sequence[Sequence[FilmLine]], film: Film, name: str) -> tuple[Chapter, ...]:
    """Chapters with titles; one that begins at nought is put before them, and what is too short is joined."""
    told = [(part[0].second, [f for line in part for f in line.facts]) for part in _joined(parts)]
    rows = [Chapter(at, title_of(facts, name, first=n == 0)) for n, (at, facts) in enumerate(told)]
    rows = [row for row in rows if row.title]
    telling = [row for row in rows if ": " in row.title]  # a bare name says no more than that it was mentioned
    rows = telling if len(telling) > FEWEST else rows
    if not rows or rows[0].second >= 2 * SHORTEST:
        rows.insert(0, Chapter(0, title_of((), name)))
    else:
        rows[0] = Chapter(0, rows[0].title)
    kept: list[Chapter] = []
    for row in rows:
        if kept and (row.second - kept[-1].second < SHORTEST or row.title == kept[-1].title):
            continue
        kept.append(row)
    while len(kept) > 1 and film.length - kept[-1].second < SHORTEST:
        kept.pop()
    return _told_apart(kept)


def _joined(parts: Sequence[Sequence[FilmLine]]) -> list[list[FilmLine]]:
    """The parts, neighbours about one thing that begin soon after each other as one."""
    joined: list[list[FilmLine]] = []
    for part in parts:
        if joined and part[0].second - joined[-1][0].second < _SOON and _mostly(part) == _mostly(joined[-1]):
            joined[-1] += part
        else:
            joined.append(list(part))
    return joined


def _mostly(part: Sequence[FilmLine]) -> str:
    """What is told of most in some lines."""
    found = sum((_topics(line) for line in part), Counter[str]())
    return max(found, key=lambda key: found[key], default="")


def _told_apart(rows: Sequence[Chapter]) -> tuple[Chapter, ...]:
    """Titles that come again are numbered."""
    seen: Counter[str] = Counter()
    made = []
    for row in rows:
        seen[row.title] += 1
        again = "" if seen[row.title] == 1 else ", again" if seen[row.title] == 2 else f", time {seen[row.title]}"
        made.append(Chapter(row.second, row.title + again))
    return tuple(made)
