"""Words of faults and of their cures, as `trade/cured.toml` holds them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from worklog_tui.logbook.trade_files import trade_file
from worklog_tui.logbook.words import stem


@dataclass(frozen=True, slots=True)
class CuredWords:
    """What each list holds is told in the file."""

    lists: dict[str, frozenset[str]]
    "As they stand there."
    stems: dict[str, frozenset[str]]
    "Without their endings."
    opposites: tuple[tuple[frozenset[str], frozenset[str]], ...]
    "Stems of how a fault is told, and of what is said when it is gone."
    by: tuple[tuple[frozenset[str], frozenset[str]], ...]
    "Stems of how a fault is told, and the actions that put it right."


@lru_cache(maxsize=1)
def cured_words() -> CuredWords:
    """All of the file."""
    table = trade_file("cured")
    lists = {name: frozenset(words.split()) for name, words in table["words"].items()}
    opposites = tuple((_stems(row["bad"]), _stems(row["good"])) for row in table["opposites"])
    by = tuple((_stems(row["bad"]), frozenset(row["by"].split())) for row in table["opposites"] if "by" in row)
    return CuredWords(lists, {name: frozenset(map(stem, words)) for name, words in lists.items()}, opposites, by)


def is_of(text_words: Iterable[str], name: str) -> bool:
    """Whether one of the words stands in a list, in the same form."""
    return not cured_words().lists[name].isdisjoint(text_words)


def is_akin_to(stems: Iterable[str], name: str) -> bool:
    """Whether one of the words, already without endings, stands in a list."""
    return not cured_words().stems[name].isdisjoint(stems)


def _stems(words: str) -> frozenset[str]:
    return frozenset(map(stem, words.split()))
