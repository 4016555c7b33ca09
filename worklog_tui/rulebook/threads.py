"""The standard threads that a size and a pitch can be, and how their series are said."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from worklog_tui import places


@dataclass(frozen=True, slots=True)
class ThreadTable:
    """Sizes as text ("1/4", "10" for a numbered screw), pitches in threads an inch, metric ones in mm."""

    inch: dict[str, dict[str, tuple[float, ...]]]
    "Series: size: threads an inch."
    metric: dict[float, tuple[float, ...]]
    ba: frozenset[int]
    series: dict[str, tuple[tuple[tuple[str, ...], str], ...]]
    "First word of a saying: (its words, the series), longest first."
    words: dict[str, frozenset[str]]

    def pitches(self, series: str, size: str) -> tuple[float, ...]:
        """Threads per inch of a size in a series, empty when the series has no such size."""
        return self.inch.get(series, {}).get(size, ())

    def series_of(self, size: str, pitch: float) -> tuple[str, ...]:
        """The series in which this size has this pitch."""
        return tuple(name for name, sizes in self.inch.items() if pitch in sizes.get(size, ()))


def load_threads(path: Path) -> ThreadTable:
    """The threads of a file such as grammars/threads.toml."""
    with path.open("rb") as file:
        data = tomllib.load(file)
    inch: dict[str, dict[str, tuple[float, ...]]] = {}
    for table in (data["unified"], data["whitworth"]):
        for size, pitches in table.items():
            for name, pitch in pitches.items():
                inch.setdefault(name, {})[size] = (float(pitch),)
    for name, sizes in {**data["pipe"], **data["cycle"]}.items():
        inch[name] = {size: (float(pitch),) for size, pitch in sizes.items()}
    sayings: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for name, forms in data["series"].items():
        for form in forms:
            words = tuple(form.split())
            sayings.setdefault(words[0], []).append((words, name))
    return ThreadTable(
        inch,
        {float(size): tuple(pitches) for size, pitches in data["metric"].items()},
        frozenset(data["ba"]["sizes"]),
        {first: tuple(sorted(forms, key=lambda f: -len(f[0]))) for first, forms in sayings.items()},
        {name: frozenset(words) for name, words in data["words"].items()},
    )


@lru_cache(maxsize=1)
def standard_threads() -> ThreadTable:
    """The shipped table, read once."""
    return load_threads(places.grammars() / "threads.toml")
