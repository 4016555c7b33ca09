"""Threads: from a designation to its numbers, from a measured diameter and pitch to what it can be, and tap drills.

Sizes and pitches are those of grammars/threads.toml. Formulas: ASME B1.1 (unified), ISO 68-1 (metric), BS 84 (Whitworth
form), BS 93 (BA), ISO 228 and ASME B1.20.1 (pipe).
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from worklog_tui import places
from worklog_tui.rulebook.threads import standard_threads
from worklog_tui.trade.thread_spelling import one_spelling

INCH = 25.4
ANGLES = {
    "UNC": 60.0, "UNF": 60.0, "UNEF": 60.0, "M": 60.0, "NPT": 60.0, "CEI": 60.0, "BSW": 55.0, "BSF": 55.0, "BSP": 55.0,
    "BA": 47.5,
}  # fmt: skip
_UNIFIED = re.compile(
    r"^#?(\d+ \d+/\d+|\d+/\d+|\d+)\s*-\s*(\d+(?:\.\d+)?)\s*(UNC|UNF|UNEF|NPT|BSW|BSF|BSP|CEI)?$", re.IGNORECASE
)
_METRIC = re.compile(r"^M\s*(\d+(?:\.\d+)?)(?:\s*[x×]\s*(\d+(?:\.\d+)?))?$", re.IGNORECASE)
_NAMED = re.compile(r"^(\d+ \d+/\d+|\d+/\d+|#?\d+)\s*(UNC|UNF|UNEF|BSW|BSF|BSP|NPT|CEI)$", re.IGNORECASE)
_BA = re.compile(r"^(\d+)\s*BA$", re.IGNORECASE)
_G = re.compile(r"^(?:G|R|Rc|Rp)\s*(\d+ \d+/\d+|\d+/\d+|\d+)$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Thread:
    """One standard thread, in millimetres."""

    series: str
    size: str
    major: float
    pitch: float
    angle: float

    @property
    def per_inch(self) -> float:
        """Threads an inch."""
        return INCH / self.pitch

    @property
    def designation(self) -> str:
        """The usual way to write it."""
        if self.series == "M":
            return f"M{self.size}x{self.pitch:g}"
        if self.series == "BA":
            return f"{self.size}BA"
        if self.series.startswith("UN"):
            return f"{self.size.lstrip('#')}-{self.per_inch:.3g} {self.series}"
        return f"{self.size} {self.series}"

    @property
    def minor(self) -> float:
        """Minor diameter of the nut, millimetres: D - 1.0825 P (60 degrees), D - 1.2807 P (55), D - 1.2 P (BA)."""
        factor = {60.0: 1.08253, 55.0: 1.280654, 47.5: 1.2}[self.angle]
        return self.major - factor * self.pitch

    @property
    def tap_drill(self) -> float:
        """Drill for about three quarters of the full thread, millimetres; metric: D - P (common practice)."""
        factor = {60.0: 0.97428, 55.0: 0.96049, 47.5: 0.9}[self.angle]
        return self.major - (self.pitch if self.series == "M" else factor * self.pitch)


def thread(designation: str) -> Thread:
    """The thread of a designation such as 10-32, M8x1.25, 1/4 BSW, 2BA or G1/2; a ValueError for no standard one."""
    text = one_spelling(designation)
    table = standard_threads()
    if m := _METRIC.match(text):
        size = float(m[1])
        pitches = table.metric.get(size, ())
        pitch = float(m[2]) if m[2] else (pitches[0] if pitches else 0.0)
        if pitch in pitches:
            return _metric(size, pitch)
    elif m := _BA.match(text):
        if int(m[1]) in table.ba:
            return _ba(int(m[1]))
    elif m := _G.match(text):
        if table.pitches("BSP", m[1]):
            return _inch("BSP", m[1], table.pitches("BSP", m[1])[0])
    elif m := _NAMED.match(text):
        series = m[2].upper()
        for size_text in (m[1], m[1].lstrip("#"), "#" + m[1].lstrip("#")):
            if found := table.pitches(series, size_text):
                return _inch(series, size_text, found[0])
    elif (m := _UNIFIED.match(text)) and (found_thread := _by_pitch(m[1], float(m[2]), (m[3] or "").upper())):
        return found_thread
    raise ValueError(f"{designation!r} is no thread of the standard tables")


def _by_pitch(size: str, per_inch: float, series: str) -> Thread | None:
    table = standard_threads()
    for size_text in (size, "#" + size):
        for name in table.series_of(size_text, per_inch):
            if name == series or (not series and name in ("UNC", "UNF", "UNEF")):
                return _inch(name, size_text, per_inch)
    return None


def _metric(size: float, pitch: float) -> Thread:
    return Thread("M", f"{size:g}", size, pitch, 60.0)


def _ba(number: int) -> Thread:
    """BA (BS 93): pitch 0.9 to the power of the number, rounded to 0.01 mm; major diameter 6 p^1.2, to 0.1 mm."""
    pitch = round(0.9**number, 2)
    return Thread("BA", str(number), round(6 * pitch**1.2, 1), pitch, 47.5)


def _inch(series: str, size: str, per_inch: float) -> Thread:
    pipes = _data("pipes").get(series)
    if pipes is not None:
        major = pipes.get(size, float("nan"))
    elif series.startswith("UN") and "/" not in size and (size != "1" or size.startswith("#")):
        major = (0.060 + 0.013 * int(size.lstrip("#"))) * INCH
    else:
        major = inches(size) * INCH
    return Thread(series, size, major, INCH / per_inch, ANGLES[series])


def inches(size: str) -> float:
    """A size as it is written, such as 3/8 or 1 1/8, in inches."""
    return float(sum(Fraction(part) for part in size.split()))


@lru_cache(maxsize=1)
def all_threads() -> tuple[Thread, ...]:
    """Every thread of the tables whose diameter is known."""
    table = standard_threads()
    found = [_metric(size, pitch) for size, pitches in table.metric.items() for pitch in pitches]
    found += [_ba(number) for number in sorted(table.ba)]
    for series, sizes in table.inch.items():
        found += [_inch(series, size, pitch) for size, pitches in sizes.items() for pitch in pitches]
    return tuple(t for t in found if t.major == t.major)


def candidates(diameter: float, pitch: float | None = None, worn: float = 0.25) -> list[Thread]:
    """What an outside thread of this diameter (mm) can be, the nearest first.

    A real thread measures up to `worn` mm under its major diameter and hardly over it. A pitch (mm) must agree to 3 %.
    """
    fits = [
        t for t in all_threads()
        if -0.08 <= t.major - diameter <= worn and (pitch is None or abs(t.pitch - pitch) <= 0.03 * t.pitch)
    ]  # fmt: skip
    return sorted(fits, key=lambda t: (abs(t.major - diameter - 0.06), t.series, t.size))


def look_alikes(one: Thread) -> list[tuple[Thread, str]]:
    """The threads that start in the same hole and bind or strip, each with what tells it apart."""
    found = []
    for other in all_threads():
        apart, off = abs(other.major - one.major), abs(other.pitch - one.pitch) / one.pitch
        if other == one or apart > 0.35 or off > (0.20 if apart <= 0.1 else 0.07):
            continue
        if other.angle != one.angle and abs(other.pitch - one.pitch) < 0.005:
            found.append((other, f"the same pitch, but {other.angle:g} degrees against {one.angle:g}"))
        else:
            found.append((other, f"{other.per_inch:.1f} threads an inch against {one.per_inch:.1f}"))
    return found


def nearest_drill(diameter: float) -> tuple[str, float]:
    """The number, letter or fractional inch drill nearest to a diameter in mm: its name, and its own diameter in mm."""
    return min(_drills(), key=lambda d: (abs(d[1] - diameter), d[0]))


@lru_cache(maxsize=1)
def _drills() -> tuple[tuple[str, float], ...]:
    data = _data("drills")
    found = [(f"#{n}", d * INCH) for n, d in data["number"].items()]
    found += [(letter, d * INCH) for letter, d in data["letter"].items()]
    found += [(str(Fraction(n, 64)), n / 64 * INCH) for n in range(2, 97)]
    return tuple(found)


@lru_cache(maxsize=4)
def _data(name: str) -> dict[str, dict[str, float]]:
    with (places.grammars() / "trade" / f"{name}.toml").open("rb") as file:
        return tomllib.load(file)
