"""The repair log as Markdown (CommonMark 0.31 with tables): what people wrote stays text, whatever signs are in it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from worklog_tui.reports.counted import MOST_READINGS, MOST_TOLD, begun, counted, earlier, in_a_row
from worklog_tui.reports.repair_log import LogLine, ReadingRow, RepairLog, Spot, SystemRow, Told

_ANYWHERE = re.compile(r"[\\`*_\[\]{}<>|~&$@]|(?<=\w):(?=//)|(?<!\w):(?=[\w+-]+:)|(?<=www)\.", re.IGNORECASE)
"Signs that can mean something wherever they stand, or make a link or a picture of bare words."
_AT_THE_BEGINNING = re.compile(r"\A(?:([#+=-])|(\d{1,9})([.)])(?=\s|$))")
"Signs that make a heading or a list at the beginning of a line."


def plain(text: str) -> str:
    """Text of people as Markdown that shows it as it is, on one line."""
    said = _ANYWHERE.sub(lambda found: "\\" + found[0], " ".join(text.split()))
    return _AT_THE_BEGINNING.sub(lambda f: f"\\{f[1]}" if f[1] else f"{f[2]}\\{f[3]}", said)


def markdown_log(log: RepairLog, closing: str) -> str:
    """The whole log; links lead to the notes of the timeline."""
    rows = [f"# Repair log: {plain(log.machine)}", ""]
    rows += [f"{plain(begun(log.kind))}.", ""] if log.kind else []
    made = f" Made on {log.made}." if log.made else ""
    later = "" if log.whole else " The log goes on after this; what is told here is how it stood then."
    rows += [f"{begun(log.span)}.{made}{later}", "", "## Where it stands", ""]
    rows += [f"**{plain(log.where_it_stands.headline)}**", ""]
    rows += [f"- {name}: {plain(text)}{_at(spot)}" for name, text, spot in log.where_it_stands.rows]
    rows += _section("Do not start it", log.forbidden)
    rows += _section("What to do next", log.next_steps)
    rows += _section("Mind this", log.cautions, "Caution. ")
    for group in log.open_items:
        rows += _section(f"Still open: {group.title[:1].lower()}{group.title[1:]}", group.rows)
    rows += _section("For now only: temporary repairs that are still in place", log.for_now)
    rows += _section("Left as it is on purpose", log.left_so)
    rows += _section("How it was left, as far as was heard", log.left)
    rows += _section("Came off or apart, and was not heard refitted", log.off)
    rows += _section("Not proved", log.not_proved)
    rows += _readings(log.readings)
    put_in = ((p.part, " – ".join(filter(None, (p.state, p.later))), p.used, p.spot) for p in log.parts)
    rows += _table("Parts", ("Part", "State", "With what", "Where"), put_in)
    rows += _section("What it was, and what it was not", log.settled)
    rows += _systems(log.systems)
    rows += _section("Attempts to start it", log.starts)
    rows += _section("Put right", log.dealt_with)
    rows += _card(log.card)
    rows += _timeline(log)
    rows += ["", "---", "", f"{plain(closing)}" if closing else ""]
    left = counted(log.left_out)
    rows += ["", f"Left out on purpose: {left}."] if left else []
    return "\n".join(rows).rstrip() + "\n"


def _at(spot: Spot | None) -> str:
    return f" ([{spot.said}](#{spot.anchor}))" if spot else ""


def _section(title: str, told: Sequence[Told], before: str = "") -> list[str]:
    if not told:
        return []
    more = earlier(len(told), MOST_TOLD)
    first = [f"The latest {MOST_TOLD}. {more}", ""] if more else []
    return ["", f"## {title}", "", *first, *(_told(one, before) for one in told[-MOST_TOLD:])]


def _told(one: Told, before: str = "") -> str:
    detail = f" – {plain(one.detail)}" if one.detail else ""
    quote = f" – “{plain(one.quote)}”" if one.quote and one.quote != one.text else ""
    return f"- {before}{plain(begun(one.text))}{detail}{_at(one.spot)}{quote}"


def _readings(readings: Sequence[ReadingRow]) -> list[str]:
    rows = ((r.what, _value(r), r.should_be, r.compares, r.spot) for r in readings[-MOST_READINGS:])
    return _table("Readings", ("What", "Reading", "Should be", "Result", "Where"), rows)


def _value(row: ReadingRow) -> str:
    marks = (row.condition, "set" if row.how == "set" else "", "doubtful" if row.doubtful else "")
    return ", ".join(filter(None, (row.value, *marks)))


def _table(title: str, head: Sequence[str], body: Iterable[Sequence[str | Spot | None]]) -> list[str]:
    rows = [f"| {' | '.join(map(_cell, row))} |" for row in body]
    if not rows:
        return []
    return ["", f"## {title}", "", f"| {' | '.join(head)} |", "|" + " --- |" * len(head), *rows]


def _cell(content: str | Spot | None) -> str:
    if isinstance(content, Spot):
        return f"[{content.said}](#{content.anchor})"
    return plain(content or "")


def _systems(systems: Sequence[SystemRow]) -> list[str]:
    seen, unseen = [s for s in systems if s.why], [s.system for s in systems if not s.why]
    rows = [f"- {plain(s.system)}: {plain(s.standing)}" + "".join(f"; {plain(w.text)}" for w in s.why) for s in seen]
    rows += [f"- Not looked at: {plain(in_a_row(unseen))}"] if unseen else []
    return ["", "## System by system", "", *rows] if rows else []


def _card(card: Sequence[tuple[str, str]]) -> list[str]:
    return ["", "## The machine", "", *(f"- {plain(name)}: {plain(text)}" for name, text in card)] if card else []


def _timeline(log: RepairLog) -> list[str]:
    rows = ["", "## Timeline"]
    for session in log.sessions:
        rows += ["", f"### {session.title}", ""]
        for line in session.lines:
            rows += _line(line)
    return rows


def _line(line: LogLine) -> list[str]:
    time = f"{plain(line.time)} " if line.time else ""
    rows = [f'- <a id="{line.anchor}"></a>{time}{plain(line.words)}']
    rows += [f"  - {plain(fact)}" for fact in line.facts]
    return rows + [f"  - perhaps: {plain(fact)}" for fact in line.perhaps]
