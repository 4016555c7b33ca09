"""Complaints whose own trouble is told gone by its name: `the misfire has gone`, `no squeal now`."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Any

from worklog_tui.diagnosis.log import Event
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.told import Sentence, stem

ANY = frozenset({"trouble", "problem", "fault", "symptom"})
"They stand for the complaint that was heard last."
QUIET = "quiet"
"It stands for any noise."
NOISES = frozenset(map(stem, (
    "noise", "noisy", "racket", "knocks", "rattles", "squeals", "screeches", "shrieks", "whines", "hums", "growls",
    "rumbles", "grinds", "scrapes", "clanks", "clunks", "clicks", "squeaks", "chatters", "howls", "groans", "buzzes",
)))  # fmt: skip
_SUPPOSED = re.compile(
    r"\b(?:if|unless|until|till|once|when|hope|hopefully|wish|would|should|might|may|thought)\b", re.IGNORECASE
)


@lru_cache(maxsize=8)
def _gone(troubles: tuple[str, ...]) -> re.Pattern[str]:
    heard = "|".join(map(re.escape, troubles))
    over = "gone|went|cured|sorted|fixed|stopped|disappeared|vanished"
    here = r"(?! (?:at|from|on|in|round|under|out)\b)"  # no leak at the tap: it may leak elsewhere
    return re.compile(
        rf"\b(?P<gone>{heard})(?:['’]s| is| has| have)?(?: all| now| completely| quite)? (?:{over})\b"
        rf"|\bno (?:more |longer any )?(?P<none>{heard})\b{here}"
        rf"|\b(?P<quiet>(?:went|gone|goes|runs|ran|turns|stays) (?:\w+ )?(?:quiet|silent)|quiet (?:now|again)"
        r"|(?:it['’]?s|it is|she['’]?s|she is|they['’]?re) (?:quiet|silent))\b",
        re.IGNORECASE,
    )


def told_gone(
    signs: Mapping[str, Sign], proofs: dict[str, list[Event]], lines: Sequence[Sentence], troubles: tuple[str, ...]
) -> dict[str, Sign]:
    """The complaints, with those over whose trouble is told gone no earlier than it was last heard.

    `troubles`: the names of troubles that are heard, seen or felt; the proofs of what is over are kept in `proofs`.
    """
    told = dict(signs)
    for event, name in gone_in(lines, troubles):
        there = [s for s in told.values() if s.shows == "present"]
        last = max((s.event.when for s in there if s.event.when <= event.when), default=-1.0)
        for sign in there:
            if is_of(name, sign.words) or (name in ANY and sign.event.when == last):
                proofs.setdefault(sign.of, []).append(event)
                if sign.event.when <= event.when:
                    told[sign.of] = replace(sign, shows="absent", event=event)
    return told


def gone_in(lines: Sequence[Sentence], troubles: tuple[str, ...]) -> Iterator[tuple[Event, str]]:
    """Where a trouble is told gone, and its name."""
    pattern = _gone(troubles)
    for line in lines:
        words = str(getattr(line.event.fact, "condition", ""))
        said = None if line.asks else pattern.search(words)
        if said and not _SUPPOSED.search(words[: said.start()]):
            yield line.event, QUIET if said["quiet"] else (said["gone"] or said["none"]).lower()


def is_of(name: str, words: str) -> bool:
    """Whether the words of a complaint speak of a trouble of that name; what is quiet now made any noise."""
    told = {stem(w) for w in re.findall(r"[\w'’]+", words)}
    return not NOISES.isdisjoint(told) if name == QUIET else stem(name) in told


def is_told_gone(words: str, event: Event, lines: Sequence[Sentence], lists: Mapping[str, Any]) -> bool:
    """Whether a trouble that no complaint of the fault files is is told gone later; `lists`: of steps.toml."""
    later = (n for e, n in gone_in(lines, tuple(lists.get("heard", ()))) if e.when > event.when)
    return any(name in ANY or is_of(name, words) for name in later)
