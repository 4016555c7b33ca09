"""The hand-over sheet as Markdown."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from worklog_tui.reports.counted import begun, counted
from worklog_tui.reports.hand_over import NOT_TOLD, HandOver
from worklog_tui.reports.markdown_log import plain
from worklog_tui.reports.repair_log import Spot, Told


def hand_over_markdown(sheet: HandOver, closing: str) -> str:
    """The whole sheet."""
    log = sheet.log
    rows = [f"# Hand-over: {plain(log.machine)}", ""]
    rows += [f"{plain(begun(log.kind))}.", ""] if log.kind else []
    rows += [f"**{plain(log.where_it_stands.headline)}**", ""]
    rows += [f"- {name}: {plain(begun(text))}" for name, text, _ in log.where_it_stands.rows]
    rows += _block("Do not start it", map(_told, log.forbidden))
    rows += _quotes("Starting it", sheet.starting, "started") + _quotes("Stopping it", sheet.stopping, "stopped")
    settings = (
        _bullet(what, value, should and f"should be {should}", at) for what, value, should, at in sheet.settings
    )
    rows += _block("Settings and readings, as they were last", settings)
    put_in = (_bullet(p.part, p.state, f"with {p.used}" if p.used else "", p.spot) for p in sheet.replaced)
    rows += _block("What was put in", put_in)
    named = (
        ("How it was left, as far as was heard", log.left), ("Came off or apart, and was not heard refitted", log.off),
        ("For now only: to be made good", log.for_now), ("Left as it is on purpose", log.left_so),
        ("Not proved", log.not_proved),
    )  # fmt: skip
    for title, told in named:
        rows += _block(title, map(_told, told))
    for group in log.open_items:
        rows += _block(f"Still open: {group.title[:1].lower()}{group.title[1:]}", map(_told, group.rows))
    rows += _block("Numbers and what it is", (_bullet(name, text, "", spot) for name, text, spot in sheet.numbers))
    rows += _block("Specified values", (_bullet(n, t, "", None) for n, t in log.card if n.startswith("Specified")))
    rows += _block("Mind this", (f"- Caution. {plain(one.text)}" for one in log.cautions))
    left = counted(log.left_out)
    rows += ["", "---", "", plain(closing)] + (["", f"Left out on purpose: {left}."] if left else [])
    return "\n".join(rows).rstrip() + "\n"


def _quotes(title: str, told: Sequence[Told], done: str) -> list[str]:
    rows = [f"- “{plain(one.text)}” ({one.spot.said if one.spot else ''})" for one in told]
    return ["", f"## {title}", "", *(rows or [f"**{NOT_TOLD.format(done)}**"])]


def _block(title: str, rows: Iterable[str]) -> list[str]:
    found = list(rows)
    return ["", f"## {title}", "", *found] if found else []


def _told(one: Told) -> str:
    return _bullet(begun(one.text), one.detail, "", one.spot)


def _bullet(what: str, text: str, more: str, spot: Spot | None) -> str:
    said = "; ".join(plain(part) for part in (text, more) if part)
    return f"- {plain(begun(what))}" + (f": {said}" if said else "") + (f" ({spot.said})" if spot else "")
