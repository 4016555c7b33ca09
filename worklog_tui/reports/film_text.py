"""The text below a film: chapters, what was found and done, parts, readings, open questions."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from worklog_tui.logbook.told_lines import stems
from worklog_tui.reports.counted import begun
from worklog_tui.reports.repair_log import RepairLog, Told

LONGEST = 5_000
"Letters that a description may have (the limit of the largest platform, from memory)."
_NOT_IN = ("needed", "ordered")
_PUT_IN = ("replaced", "fitted", "made", "substituted", "used again", "from a donor")
_TO_DO = ("Still to do", "Not put right yet")
_MORE = "(more in the repair log)"


def description(log: RepairLog, chapters: Sequence[Sequence[str]], closing: str) -> str:
    """The whole text, within the limit: what comes last is left out first."""
    blocks = [[_plain(f"{log.machine}. {log.where_it_stands.headline}")]]
    blocks += [list(lines) for lines in chapters]
    asked = (row for group in log.open_items if group.title == "Open questions" for row in group.rows)
    questions = [row.text for row in asked if row.spot is not None]  # what viewers ask is no question to them
    blocks += [
        _block("Do you know?", questions),
        _block("Parts put in", (_part(p.part, p.used) for p in log.parts if p.state.startswith(_PUT_IN))),
        _block("Parts still needed", (p.part for p in log.parts if p.state.startswith(_NOT_IN))),
        _block("Readings", _readings(log)),
        _block("For now only", (row.text for row in log.for_now)),
        _block("Still to do", (row.text for g in log.open_items if g.title in _TO_DO for row in g.rows)),
    ]  # fmt: skip
    return _within([block for block in blocks if block], [_plain(closing)] if closing else [])


def tried_text(rows: Sequence[Told]) -> str:
    """What was tried, each with what was heard after it."""
    if not rows:
        return "Nothing was tried yet.\n"
    lines = (_plain(f"- {begun(r.text)} ({r.spot.said if r.spot else ''}): {r.detail}") for r in rows)
    return "\n".join(["What was tried, and what was heard after it", "", *lines]) + "\n"


def _block(title: str, rows: Iterable[str]) -> list[str]:
    said = list(dict.fromkeys(_plain(f"- {begun(row)}") for row in rows))
    return [title, *said] if said else []


def _part(part: str, used: str) -> str:
    fresh = stems(used) - stems(part)  # a new belt in the place of a belt says no more
    return f"{part}: {used}" if fresh else part


def _readings(log: RepairLog) -> list[str]:
    """The last reading of each subject that has something to be laid beside, or was set."""
    last: dict[tuple[str, str, str], str] = {}
    for row in log.readings:
        if row.should_be or row.how == "set":
            said = f"{row.what}: {row.value}" + (f", {row.condition}" if row.condition else "")
            key = (row.subject.lower(), row.quantity, row.condition)
            last.pop(key, None)
            last[key] = said + (f" (should be {row.should_be})" if row.should_be else "")
    return list(last.values())


def _within(blocks: list[list[str]], end: list[str]) -> str:
    rest = LONGEST - sum(len(line) + 2 for line in end) - len(_MORE) - 4
    kept: list[str] = []
    for number, block in enumerate(blocks):
        lines = ["", *block] if number else block
        for line in lines:
            if rest < len(line) + 1:
                return "\n".join([*kept, _MORE, "", *end]).rstrip() + "\n"
            kept.append(line)
            rest -= len(line) + 1
    return "\n".join([*kept, "", *end]).rstrip() + "\n"


def _plain(text: str) -> str:
    """One line without angle brackets, which the platforms refuse."""
    return " ".join(text.replace("<", "(").replace(">", ")").split())
