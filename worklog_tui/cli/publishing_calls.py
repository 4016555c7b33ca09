"""The commands that publish, with their arguments."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from typing import Any

Command = Callable[[Any, str, str, str], argparse.ArgumentParser]


def add_publishing(commands: Any, command: Command) -> list[argparse.ArgumentParser]:
    """Adds them, and returns those that work on a logbook."""
    log = command(commands, "repair-log", "publishing:repair_log", "write the repair log for others to read")
    _of(log)
    log.add_argument("--sessions", metavar="N or N-M", help="one session or a span; else the whole life")
    log.add_argument("--as", dest="shape", choices=["page", "markdown", "json", "csv"],
                     help="else the ending of the file tells: .html, .md, .json, .csv")  # fmt: skip
    log.add_argument("--table", choices=["readings", "work", "parts"], help="with csv: which table (else readings)")
    _to(log)
    sheet = command(commands, "hand-over", "publishing:hand_over", "write the sheet for the machine's next owner")
    _of(sheet)
    sheet.add_argument(
        "--as", dest="shape", choices=["page", "markdown"], help="else the file's ending tells: .html, .md"
    )
    _to(sheet)
    film = _film(commands, command)
    said = command(commands, "comments", "viewers:comments", "sort viewers' comments, and say what the log answers")
    said.add_argument("machine", metavar="MACHINE", help="a machine of the logbook")
    said.add_argument(
        "file", metavar="FILE", nargs="?", help="pasted comments, - for standard input; else those kept before"
    )
    said.add_argument("--keep-names", action="store_true", help="keep names, addresses and links as they were pasted")
    said.add_argument("--only-look", action="store_true", help="keep nothing in the logbook")
    said.add_argument("--json", action="store_true", help="print JSON instead of text")
    _to(said)
    dates = command(
        commands, "calendar", "publishing:calendar", "write what is due and what is waited for as a calendar"
    )
    dates.add_argument("--machine", metavar="NAME", help="a machine of the logbook; else all of them")
    _to(dates)
    private = command(commands, "private", "publishing:private", "keep lines out of everything that is published")
    _of(private)
    private.add_argument("line", metavar="LINES", help="named as the timeline prints them: 2/1:23, 2/1:23-2:05, or 2")
    return [log, sheet, film, said, dates, private]


def _film(commands: Any, command: Command) -> argparse.ArgumentParser:
    film = command(commands, "film", "publishing:film", "write chapters and the text below a film")
    _of(film)
    film.add_argument("--sessions", metavar="N or N-M", help="the sessions that the film shows")
    film.add_argument(
        "--only",
        choices=["chapters", "text", "tried", "marks"],
        help="chapters, the text below, what was tried, or the moments marked while filming",
    )
    film.add_argument("--chapters", metavar="FILE", help="chapters that you edited, instead of those worked out")
    film.add_argument("--joined", metavar="LENGTHS", help="the clips of the sessions make one film: 26:50,37:10")
    _to(film)
    return film


def _of(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--machine", metavar="NAME", required=True, help="a machine of the logbook")


def _to(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("-o", dest="to", metavar="FILE", help="write into this file instead of printing")
