"""How long an hour of talk takes to read, beside a baseline in the same run: `python tests/bench/measure_reading.py`.

The talk is that of the demo sessions, repeated to 9,000 words. The baseline is quantulum3 (quantities alone) where it
is installed, on a tenth of the text; else a plain search for numbers with units. Ratios count, not milliseconds.
"""

from __future__ import annotations

import re
import subprocess
import sys
import time
from collections.abc import Callable

from worklog_tui import places
from worklog_tui.extract import read_session
from worklog_tui.model import Machine, Note
from worklog_tui.rulebook import load

WORDS = 9_000
BENCH = Machine("Bench engine", kind="single-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=1)


def hour_of_talk() -> list[Note]:
    """Notes of 9,000 words together."""
    lines = [
        line.split("] ", 1)[-1]
        for path in sorted(places.demo_sessions().rglob("session-*.txt"))
        for line in path.read_text(encoding="utf-8").splitlines()
        if line.startswith("[")
    ]
    notes: list[Note] = []
    words = 0
    while words < WORDS:
        line = lines[len(notes) % len(lines)]
        notes.append(Note(f"n{len(notes)}", "s", line, at=len(notes) * 7, track="captions", arrival=len(notes)))
        words += len(line.split())
    return notes


def seconds(work: Callable[[], object], times: int = 5) -> float:
    """The median of several runs."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return sorted(taken)[times // 2]


def baseline(notes: list[Note]) -> tuple[str, float]:
    """Name and seconds of the baseline on the whole text."""
    text = [note.words for note in notes]
    try:
        from quantulum3 import parser
    except ImportError:
        plain = re.compile(r"\d+(?:\.\d+)?\s*(?:psi|thou|mm|volts?|amps?|degrees|minutes|hours|rpm)\b")
        return "digits and unit by one expression", seconds(lambda: [plain.findall(line) for line in text])
    tenth = text[: len(text) // 10]

    def read() -> None:
        for line in tenth:
            try:
                parser.parse(line)
            except Exception:
                continue

    return "quantulum3, quantities alone", 10 * seconds(read, 1)


def run(*words: str) -> None:
    """A Python of its own with these words."""
    subprocess.run([sys.executable, *words], check=True, stdout=subprocess.DEVNULL)


def main() -> None:
    """Prints the figures."""
    book = load([places.grammars()])
    notes = hour_of_talk()
    ours = seconds(lambda: read_session(book, BENCH, notes))
    name, theirs = baseline(notes)
    words = sum(len(note.words.split()) for note in notes)
    print(f"an hour of talk, {words} words, all kinds of facts: {ours * 1000:.0f} ms")
    print(f"{name}: {theirs * 1000:.0f} ms, so ours takes {ours / theirs:.3f} of it")
    bare, helped = seconds(lambda: run("-c", "pass")), seconds(lambda: run("-m", "worklog_tui", "--help"))
    print(f"--help: {helped * 1000:.0f} ms, a bare Python {bare * 1000:.0f} ms, ratio {helped / bare:.1f}")
    start = time.perf_counter()
    read_session(book, BENCH, [Note("h", "s", "the valve is cracked at 12 psi " * 32_000, track="captions")])
    print(f"one line of 1 MB: {time.perf_counter() - start:.2f} s")


if __name__ == "__main__":
    main()
