"""Commands that publish: repair log, hand-over sheet, film, calendar."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui.cli.calls import Call
from worklog_tui.cli.looking import desk_of
from worklog_tui.cli.output import complain, say, write_out
from worklog_tui.cli.refusing import WrongCall

if TYPE_CHECKING:
    from worklog_tui.bench.publishing import Published
    from worklog_tui.reports.chapters import Chapter
    from worklog_tui.reports.repair_log import RepairLog

ENDINGS = {".html": "page", ".htm": "page", ".md": "markdown", ".markdown": "markdown", ".json": "json", ".csv": "csv"}
"What a file's ending asks for."


def repair_log(call: Call) -> None:
    """Writes the repair log as a page, Markdown, JSON or CSV."""
    found = _published(call)
    shape = _shape(call, "markdown")
    if call.table and shape != "csv":
        raise WrongCall("--table is for --as csv alone; see `worklog-tui repair-log --help`.")
    write_out(_AS[shape](found.log(), found, call), call.to)


def hand_over(call: Call) -> None:
    """Writes the hand-over sheet as a page or Markdown."""
    found = _published(call)
    shape = _shape(call, "markdown")
    if shape == "page":
        from worklog_tui.reports.page import hand_over_page as written
    elif shape == "markdown":
        from worklog_tui.reports.markdown_sheet import hand_over_markdown as written
    else:
        raise WrongCall("The hand-over sheet is a page or Markdown; name the file .html or .md.")
    write_out(written(found.hand_over(), found.closing()), call.to)


def film(call: Call) -> None:
    """Writes the chapters of the film, the text below it, and what was tried; or the moments that were marked."""
    if call.only == "marks":
        from worklog_tui.bench.film_marks import film_marks, film_marks_text

        write_out(film_marks_text(film_marks(desk_of(call), call.machine)), call.to)
        return
    found = _published(call)
    clips = [] if call.chapters else film_chapters(found, lengths_of(call.joined))
    blocks = found.gate.words_only(edited_chapters(call.chapters) if call.chapters else chapter_blocks(clips))
    if call.only == "tried":
        written = found.tried()
    elif call.only == "chapters":
        written = "\n\n".join("\n".join(lines) for lines in blocks) + "\n"
    else:
        written = found.film_text(blocks)
        written += "" if call.only else f"\n{found.tried()}"
    for title, chapters in clips:
        if not chapters:
            complain(f"{title or 'The film'}: too short, or too little is told in it, for three chapters.")
    write_out(written, call.to)


def edited_chapters(path: str) -> list[list[str]]:
    """The chapters of a file that a person edited; a WrongCall says what a platform would not take."""
    from worklog_tui.notes.cleaning import sanitise
    from worklog_tui.reports.chapters import BadChapters, edited

    try:
        return edited(sanitise(Path(path).read_text(encoding="utf-8-sig", errors="replace")))
    except OSError as fault:
        raise WrongCall(f"{path}: cannot be read ({fault.strerror or fault}).") from fault
    except BadChapters as fault:
        raise WrongCall(f"{path}: {fault}") from fault


def chapter_blocks(clips: list[tuple[str, tuple[Chapter, ...]]]) -> list[list[str]]:
    """The chapter lines of each film, below its name when there are several."""
    blocks = [(title, [chapter.line for chapter in chapters]) for title, chapters in clips if chapters]
    return [[title, *lines] if len(blocks) > 1 else lines for title, lines in blocks]


def film_chapters(found: Published, lengths: list[int] | None) -> list[tuple[str, tuple[Chapter, ...]]]:
    """The chapters of each film of the sessions, or of all their clips as one."""
    from worklog_tui.reports.chapters import chapters
    from worklog_tui.reports.film import NoFilm, films, joined

    clips = films(found.material)
    if not clips:
        raise NoFilm("No line of these sessions has a place in a film; take in the captions of the film first.")
    made = clips if lengths is None else (joined(clips, lengths),)
    return [(one.title, chapters(one, found.material.history.machine.name)) for one in made]


def lengths_of(said: str | None) -> list[int] | None:
    """Lengths of clips such as 26:50,37:10 in seconds; a WrongCall for anything else."""
    if said is None:
        return None
    parts = [part.strip() for part in said.split(",")]
    if not all(re.fullmatch(r"(?:\d{1,2}:)?\d{1,3}:[0-5]\d", part) for part in parts):
        raise WrongCall("The lengths of the clips are written like 26:50,37:10.")
    return [sum(int(n) * 60**place for place, n in enumerate(reversed(part.split(":")))) for part in parts]


def calendar(call: Call) -> None:
    """Writes a calendar of what is due, waited for and awaited."""
    from worklog_tui.bench.publishing import calendar as made

    written, count = made(desk_of(call), call.machine)
    if not count:  # a calendar without an entry is not valid
        complain("Nothing has a date, and nothing is awaited: no calendar was written.")
        return
    complain(f"Entries: {count}.")
    write_out(written.decode("utf-8"), call.to)


def private(call: Call) -> None:
    """Keeps lines out of everything that is published."""
    from worklog_tui.bench.history import history
    from worklog_tui.bench.lines import lines
    from worklog_tui.bench.private_notes import keep_private

    desk = desk_of(call)
    say(keep_private(desk, [note.uid for note in lines(history(desk, call.machine), call.line)]).says)


def _page(log: RepairLog, found: Published, _: Call) -> str:
    from worklog_tui.reports.page import repair_log_page

    return repair_log_page(log, found.closing())


def _markdown(log: RepairLog, found: Published, _: Call) -> str:
    from worklog_tui.reports.markdown_log import markdown_log

    return markdown_log(log, found.closing())


def _json(log: RepairLog, *_: object) -> str:
    import json

    from worklog_tui.reports.json_repair_log import json_repair_log

    return json.dumps(json_repair_log(log), ensure_ascii=False, indent=1) + "\n"


def _csv(log: RepairLog, _: Published, call: Call) -> str:
    from worklog_tui.reports.csv_tables import csv_table

    return csv_table(log, call.table or "readings")


_AS: dict[str, Callable[[RepairLog, Published, Call], str]] = {
    "page": _page, "markdown": _markdown, "json": _json, "csv": _csv,
}  # fmt: skip


def _published(call: Call) -> Published:
    """What may go out; what stayed behind is told on standard error."""
    from worklog_tui.bench.publishing import published
    from worklog_tui.reports.counted import counted

    found = published(desk_of(call), call.machine, sessions_of(getattr(call, "sessions", None)))
    left = counted(found.left_out)
    if left:
        complain(f"Left out on purpose: {left}.")
    return found


def sessions_of(said: str | None) -> tuple[int, int] | None:
    """The sessions that are meant by 3 or 2-4; a WrongCall for anything else."""
    if said is None:
        return None
    found = re.fullmatch(r"(\d{1,6})(?:\s*[-–]\s*(\d{1,6}))?", said.strip())
    if not found:
        raise WrongCall("Sessions are named by their numbers, such as 3 or 2-4.")
    return int(found[1]), int(found[2] or found[1])


def _shape(call: Call, otherwise: str) -> str:
    """What is asked for: by name, else by the ending of the file."""
    if call.shape:
        return str(call.shape)
    return ENDINGS.get(Path(call.to).suffix.lower(), otherwise) if call.to else otherwise
