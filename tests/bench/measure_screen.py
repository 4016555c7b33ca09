"""Measures the recorder in a pseudo-terminal beside a bare Textual program, in one run.

Run it as `python tests/bench/measure_screen.py`. First paint: from the fork to the words of the empty note line on the
screen. Key to screen: from the key to its sign in the output. Enter to kept: from Enter to `Kept` on the
screen. Enter to open items anew: to their number in the line of places, worked out from the whole log (a pause of a
second without a key is part of it); to advised: to the next step anew. Opening: from the fork to the newest page, to
what stands in the whole log, and to the next step.
Memory: resident at the end. Times in milliseconds; they hold for this machine only, the ratios for any.
"""

from __future__ import annotations

import argparse
import os
import pty
import re
import select
import signal
import statistics
import struct
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
ESCAPES = re.compile(rb"\x1b(?:\[[0-?]*[ -/]*[@-~]|\][^\x07\x1b]*(?:\x07|\x1b\\)|[PX^_].*?\x1b\\|[ -/]*[0-~])", re.S)
MARK = b"What do you see"
RARE = "qxzj"
COLUMNS, LINES = 120, 40

BARE = f"""
from textual.app import App
from textual.containers import Horizontal, Vertical
from textual.widgets import Footer, Log, Static, TextArea
class Bare(App):
    def compose(self):
        yield Static("head")
        with Horizontal():
            yield Log()
            with Vertical():
                yield Log()
                yield Log()
        yield TextArea(placeholder="{MARK.decode()}", soft_wrap=True)
        yield Static("below")
        yield Footer()
    def on_mount(self):
        self.query_one(TextArea).styles.height = 3
        self.query_one(TextArea).cursor_blink = False
        self.query_one(TextArea).focus()
        if __import__("sys").argv[1:] == ["full"]:
            self.query_one(Log).write_lines(f"14:05  line {{n}} of the log" for n in range(10_000))
Bare().run()
"""
OURS = """
import sys
from pathlib import Path
from worklog_tui.app import open_recorder
from worklog_tui.bench.desk import open_desk
open_recorder(open_desk(Path(sys.argv[1])), "Measured")
"""


class Program:
    """A program on a pseudo-terminal of its own."""

    def __init__(self, source: str, *arguments: str) -> None:
        self.began = time.perf_counter()
        self.pid, self.terminal = pty.fork()
        if self.pid == 0:
            os.chdir(ROOT)
            size = {"COLUMNS": str(COLUMNS), "LINES": str(LINES)}
            plain = {"TERM": "xterm-256color", "TEXTUAL_ANIMATIONS": "none", "PYTHONPATH": str(ROOT)}
            around = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
            os.execve(sys.executable, [sys.executable, "-c", source, *arguments], {**around, **size, **plain})
        self._set_size()

    def _set_size(self) -> None:
        import fcntl
        import termios

        fcntl.ioctl(self.terminal, termios.TIOCSWINSZ, struct.pack("HHHH", LINES, COLUMNS, 0, 0))

    def read_until(self, sign: bytes, seconds: float = 60.0) -> float:
        """The moment at which a sign stands in the output, escape sequences taken out; or a TimeoutError."""
        seen, end = b"", time.perf_counter() + seconds
        while time.perf_counter() < end:
            if select.select([self.terminal], [], [], 0.5)[0]:
                seen += os.read(self.terminal, 65536)
                if sign in ESCAPES.sub(b"", seen):
                    return time.perf_counter()
        raise TimeoutError(f"{sign!r} never came: {ESCAPES.sub(b'', seen)[-400:]!r}")

    def quiet(self, seconds: float = 0.03, most: float = 10.0) -> None:
        """Read on until nothing comes for so long, but not for ever."""
        end = time.perf_counter() + most
        while time.perf_counter() < end and select.select([self.terminal], [], [], seconds)[0]:
            os.read(self.terminal, 65536)

    def key(self, sign: str, awaited: bytes | None = None) -> float:
        """Milliseconds from a key to what it puts on the screen."""
        self.quiet()
        start = time.perf_counter()
        os.write(self.terminal, sign.encode())
        return (self.read_until(awaited or sign.encode()) - start) * 1000

    def memory(self) -> float:
        """Megabytes resident."""
        status = Path(f"/proc/{self.pid}/status").read_text()
        found = re.search(r"VmRSS:\s+(\d+)", status)
        return int(found[1]) / 1024 if found else 0.0

    def end(self) -> None:
        """End it."""
        os.kill(self.pid, signal.SIGKILL)
        os.waitpid(self.pid, 0)
        os.close(self.terminal)


def first_paint(start: Callable[[], Program]) -> float:
    """Milliseconds from the fork to the first paint."""
    program = start()
    try:
        return (program.read_until(MARK) - program.began) * 1000
    finally:
        program.end()


def keys(program: Program, count: int) -> list[float]:
    """Milliseconds of so many single keys, taken out again every forty."""
    taken = []
    for number in range(count):
        taken.append(program.key(RARE[number % len(RARE)]))
        if number % 40 == 39:
            os.write(program.terminal, b"\x7f" * 40)
            program.quiet(0.2)
    return taken


def enters(program: Program, count: int) -> list[float]:
    """Milliseconds from Enter to `Kept`, for so many notes."""
    taken = []
    for number in range(count):
        os.write(program.terminal, f"valve {number} gap is {number + 5} thou".encode())
        program.quiet(0.3)
        taken.append(program.key("\r", b"Kept"))
        program.quiet(0.3)
    return taken


def advised(program: Program, count: int) -> tuple[list[float], list[float]]:
    """Milliseconds from Enter to the open items anew in the line of places, and to the next step anew."""
    items, steps = [], []
    for number in range(1, count + 1):
        os.write(program.terminal, f"need a new drive belt number {number}".encode())
        program.quiet(0.3)
        start = time.perf_counter()
        os.write(program.terminal, b"\r")
        items.append((program.read_until(f"open {number}".encode()) - start) * 1000)
        steps.append((program.read_until(b"Next: ") - start) * 1000)
        program.quiet(3.0)
    return items, steps


def opening(start: Callable[[], Program], notes: int) -> tuple[float, float, float]:
    """Milliseconds from the fork to the newest page, to what stands in the log, and to the next step."""
    program = start()
    try:
        signs = (f"{notes} notes".encode(), b"Noticed", b"Next: ")
        page, log, step = ((program.read_until(sign) - program.began) * 1000 for sign in signs)
        return page, log, step
    finally:
        program.end()


def told(name: str, values: Sequence[float]) -> str:
    """One line: median, 99th percentile, and the most."""
    ordered = sorted(values)
    p99 = ordered[min(len(ordered) - 1, int(len(ordered) * 0.99))]
    middle = statistics.median(ordered)
    return f"{name:<34} median {middle:8.1f}   p99 {p99:8.1f}   most {ordered[-1]:8.1f}   n {len(ordered)}"


def make_logbook(path: Path, notes: int) -> None:
    """A logbook of one machine with so many notes in sessions of 500."""
    sys.path.insert(0, str(ROOT))
    from worklog_tui.bench.desk import open_desk
    from worklog_tui.bench.importing import keep_lines
    from worklog_tui.bench.machines import add_machine
    from worklog_tui.model import Machine

    desk = open_desk(path)
    add_machine(desk, Machine("Measured", "four-cylinder petrol engine", cylinders=4))
    for first in range(0, notes, 500):
        day = f"session 2031-{1 + first // 14000:02}-{1 + first // 500 % 28:02} 08:00\n"
        lines = (
            f"{8 + n // 60:02}:{n % 60:02} part {first + n}: the cover came off and the bolt was stiff but free"
            for n in range(500)
        )
        keep_lines(desk, "Measured", day + "\n".join(lines))


def main() -> None:
    """Measure and print."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--notes", type=int, default=10_000)
    asked.add_argument("--paints", type=int, default=9)
    asked.add_argument("--keys", type=int, default=300)
    asked.add_argument("--enters", type=int, default=40)
    given = asked.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        os.environ["PYTHONPYCACHEPREFIX"] = folder  # both as they are once installed and started before
        path = Path(folder) / "log.db"
        make_logbook(path, given.notes)
        first_paint(lambda: Program(BARE))
        first_paint(lambda: Program(OURS, str(path)))
        compare(path, given)


def compare(path: Path, given: argparse.Namespace) -> None:
    """Both programs in turn, so that a slow moment of the machine hits both."""
    paints: dict[str, list[float]] = {"bare": [], "ours": []}
    for _ in range(given.paints):
        paints["bare"].append(first_paint(lambda: Program(BARE)))
        paints["ours"].append(first_paint(lambda: Program(OURS, str(path))))
    print(told("first paint, bare", paints["bare"]))
    print(told("first paint, recorder", paints["ours"]))
    print(f"first paint, ratio of medians: {statistics.median(paints['ours']) / statistics.median(paints['bare']):.2f}")
    opened = [opening(lambda: Program(OURS, str(path)), given.notes) for _ in range(3)]
    for nth, name in enumerate(("newest page", "what stands in the log", "next step")):
        print(told(f"opening, {name}", [taken[nth] for taken in opened]))
    bare, ours = Program(BARE, "full"), Program(OURS, str(path))
    try:
        bare.read_until(MARK)
        ours.read_until(f"{given.notes} notes".encode())
        for program in (bare, ours):
            program.quiet(3.0)
        for name, program in (("bare", bare), ("recorder", ours)):
            print(told(f"key to screen, {name}", keys(program, given.keys)))
        os.write(ours.terminal, b"\x7f" * 60)
        ours.quiet(1.0)
        print(told("Enter to kept and read", enters(ours, given.enters)))
        items, steps = advised(ours, 5)
        print(told("Enter to open items anew", items))
        print(told("Enter to advised", steps))
        print(
            f"memory, bare {bare.memory():.0f} MB, recorder {ours.memory():.0f} MB: {ours.memory() / bare.memory():.2f}"
        )
    finally:
        bare.end()
        ours.end()


if __name__ == "__main__":
    main()
