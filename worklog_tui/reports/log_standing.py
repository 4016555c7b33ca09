"""Where a machine stands, in a headline and a few rows: what someone must know who has never seen it."""

from __future__ import annotations

from worklog_tui.model import Finding, Place
from worklog_tui.reports.log_items import NOTICED, PARTS
from worklog_tui.reports.log_left import forbidden
from worklog_tui.reports.log_noticed import of_the_machine, put_down_to
from worklog_tui.reports.material import Material, spot
from worklog_tui.reports.repair_log import Group, Spot, Standing, Told
from worklog_tui.reports.sentence import briefly
from worklog_tui.reports.when import day

_NAMED = 3
"So many things are named in a row; the rest is counted."


def standing(
    of: Material, groups: tuple[Group, ...], for_now: tuple[Told, ...], not_proved: tuple[Told, ...]
) -> Standing:
    """The headline, then what was seen last, what is next, for now only, needed, open and not proved."""
    if not any(record.notes for record in of.history.sessions):
        return Standing("Nothing is in the log yet.")
    rows: list[tuple[str, str, Spot | None]] = [
        ("Do not start it", f"“{row.text}”", row.spot) for row in forbidden(of)[-1:]
    ]
    seen = _last_seen(of)
    if seen is not None:
        done = put_down_to(of, seen[0]) if seen[1].verdict == "bad" else ""
        since = f"; since then {done}" if done else ", dealt with since" if _dealt_with(of, seen[1]) else ""
        rows.append(("Last heard of it", briefly(seen[1]) + since, spot(seen[0])))
    if of.whole and of.advice.steps:
        rows.append(("Next", of.advice.steps[0].step, None))
    rest = tuple(row for g in groups if g.title not in (PARTS, NOTICED) for row in g.rows)
    parts = tuple(row for g in groups if g.title == PARTS for row in g.rows)
    named = (("For now only", for_now), (PARTS, parts), ("Still on the list", rest), ("Not proved", not_proved))
    for name, told in named:
        if told:
            rows.append((name, _named(told), None))
    mended = seen is not None and seen[1].verdict == "bad" and bool(put_down_to(of, seen[0]))
    return Standing(_headline(of, groups, for_now, mended), tuple(rows))


def _headline(of: Material, groups: tuple[Group, ...], for_now: tuple[Told, ...], mended: bool) -> str:
    """`mended`: whether what was wrong with it last was put down to a cause, and that was dealt with."""
    count = sum(len(g.rows) for g in groups if g.title != NOTICED) + len(for_now)
    left = "nothing is left on the list" if not count else _things(count, "is", "are") + " still on the list"
    when = f" at the end of session {len(of.history.sessions)}" if not of.whole else ""
    if forbidden(of):
        return f"Not to be started yet{when}; {left}."
    if of.advice.complaint:
        how = "Mended and not yet proved" if mended else "Not right yet"
        return f"{how}{when}: {of.advice.complaint.rstrip('.')}. {left[:1].upper()}{left[1:]}."
    return f"No fault of the machine as a whole is known{when}; {left}."


def _things(count: int, one: str, many: str) -> str:
    return f"one thing {one}" if count == 1 else f"{count} things {many}"


def _named(rows: tuple[Told, ...]) -> str:
    said = "; ".join(row.text for row in rows[:_NAMED])
    return said if len(rows) <= _NAMED else f"{said}; and {len(rows) - _NAMED} more"


def _dealt_with(of: Material, seen: Finding) -> bool:
    return any(item.state == "done" and seen.key in item.anchors for item in of.items)


def _last_seen(of: Material) -> tuple[Place, Finding] | None:
    """The last finding of the machine itself."""
    for place, fact in reversed(of.everything()):
        if isinstance(fact, Finding) and fact.verdict != "noted" and of_the_machine(of, fact):
            return place, fact
    return None


def span(of: Material) -> str:
    """Which sessions are told, and the days of the first and the last."""
    last = len(of.history.sessions)
    if not last:
        return "no session yet"
    numbers = f"session {last}" if of.first == last else f"sessions {of.first} to {last}"
    days = [day(r.session.start) for r in of.history.sessions[of.first - 1 :]]
    known = [d for d in days if d]
    if not known:
        return numbers
    return f"{numbers}, {known[0]}" if known[0] == known[-1] else f"{numbers}, {known[0]} to {known[-1]}"
