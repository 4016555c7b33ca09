"""The pages: one HTML file each, with nothing outside itself, by templates that escape all that people wrote."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Any

from worklog_tui.reports.counted import MOST_LISTED, MOST_READINGS, MOST_TOLD, begun, counted, earlier, in_a_row
from worklog_tui.reports.hand_over import NOT_TOLD, HandOver
from worklog_tui.reports.missing import needed
from worklog_tui.reports.repair_log import RepairLog

TEMPLATES = Path(__file__).with_name("templates")
_SECTIONS = (
    ("do-not-start", "Do not start it", ("forbidden",)), ("next", "What to do next", ("next_steps",)),
    ("cautions", "Mind this", ("cautions",)), ("open", "Still open", ("open_items",)),
    ("for-now", "For now only, and left so", ("for_now", "left_so")), ("left", "How it was left", ("left", "off")),
    ("not-proved", "Not proved", ("not_proved",)), ("readings", "Readings", ("readings",)),
    ("parts", "Parts", ("parts",)), ("settled", "What it was, and what it was not", ("settled", "systems")),
    ("starts", "Attempts to start it", ("starts",)), ("dealt-with", "Put right", ("dealt_with",)),
    ("machine", "The machine", ("card",)),
)  # fmt: skip
"Anchor, heading and the fields that fill a section; one without any is left out."


def repair_log_page(log: RepairLog, closing: str) -> str:
    """The repair log as a page; a Missing when Jinja is not installed."""
    unseen = in_a_row([s.system for s in log.systems if not s.why])
    return _render("repair_log.html", log=log, contents=contents(log), closing=closing, unseen=unseen)


def hand_over_page(sheet: HandOver, closing: str) -> str:
    """The hand-over sheet as a page; a Missing when Jinja is not installed."""
    return _render("hand_over.html", sheet=sheet, closing=closing, not_told=NOT_TOLD)


def contents(log: RepairLog) -> list[tuple[str, str]]:
    """Anchor and title of every section that the page has, and of its sessions while they are few."""
    rows = [(anchor, title) for anchor, title, names in _SECTIONS if any(getattr(log, name) for name in names)]
    sessions = [(f"session-{s.number}", s.title) for s in log.sessions]
    return [*rows, ("timeline", "Timeline"), *(sessions if len(sessions) <= MOST_LISTED else [])]


def _render(template: str, **values: Any) -> str:
    jinja, markup = _environment()
    style = (TEMPLATES / "style.css").read_text(encoding="utf-8")
    page: str = jinja.get_template(template).render(style=markup(style), **values)
    return page.rstrip() + "\n"


@lru_cache(maxsize=1)
def _environment() -> tuple[Any, Any]:
    jinja2 = needed("jinja2", "jinja2", "A page")
    loader = jinja2.FileSystemLoader(TEMPLATES)
    made = jinja2.Environment(loader=loader, autoescape=True, undefined=jinja2.StrictUndefined, auto_reload=False)
    made.filters |= {"left_out": counted, "begun": begun, "earlier": earlier}
    made.globals |= {"most_told": MOST_TOLD, "most_readings": MOST_READINGS, "most_listed": MOST_LISTED}
    return made, import_markup()


def import_markup() -> Any:
    """What marks our own style sheet as needing no escape."""
    return needed("markupsafe", "markupsafe", "A page").Markup
