"""The grammars made ready by a process of its own, when they are new: it takes no time from the keys and no memory."""

from __future__ import annotations

from threading import Lock
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

_MAKING = Lock()
"Of several threads that want it one has it made, and the others wait."
PATIENCE = 120.0
"Seconds; after these they are made ready here."


def make_ready(desk: Desk) -> None:
    """When what is made of the grammars is not kept from an earlier start, have it made and kept.

    Whatever goes wrong there is told when they are loaded here.
    """
    import subprocess
    import sys
    from contextlib import suppress

    from worklog_tui.bench.apart import environment
    from worklog_tui.rulebook import is_kept

    if desk.can_read or desk.cache is None:
        return
    order = [sys.executable, "-P", "-m", "worklog_tui.bench.grammars_ready", str(desk.cache), *map(str, desk.grammars)]
    with _MAKING, suppress(OSError, subprocess.SubprocessError):
        if is_kept(desk.grammars, desk.cache):
            return
        subprocess.run(
            order, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False,
            env=environment(), timeout=PATIENCE,
        )  # fmt: skip


def _answer() -> None:
    """In that process: the place to keep it, and the folders, are its arguments."""
    import sys
    from pathlib import Path

    from worklog_tui.rulebook import load

    cache, *folders = map(Path, sys.argv[1:])
    load(folders, cache)


if __name__ == "__main__":
    _answer()
