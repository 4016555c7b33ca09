"""Systems and causes as plain text: the word first, then what it rests on. Grades in words; figures when asked for."""

from __future__ import annotations

from worklog_tui.model import Advice, Evidence
from worklog_tui.reports.counted import in_a_row
from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.reports.when import where


def systems_text(advice: Advice, width: int, figures: bool = False) -> str:
    """One line a system, with its evidence below."""
    rows = heading("Systems")
    if not advice.systems:
        return "\n".join([*rows, "Nothing was looked at yet."])
    for one in advice.systems:
        if not one.evidence:
            continue
        rows += wrapped(f"{one.standing[:1].upper()}{one.standing[1:]}: {one.system}", width)
        for evidence in one.evidence:
            rows += wrapped(_told(evidence, figures, weigh=False), width, "   ", "   ")
    unseen = [one.system for one in advice.systems if not one.evidence]
    rows += wrapped(f"Not looked at: {in_a_row(unseen)}", width, "", "   ") if unseen else []
    return "\n".join(rows)


def causes_text(advice: Advice, width: int, figures: bool = False) -> str:
    """The causes of the open trouble, likeliest first, with what speaks for and against each."""
    rows = heading("Causes")
    if not advice.complaint:
        return "\n".join([*rows, "No trouble is open."])
    rows += wrapped(f"Trouble: {advice.complaint}", width)
    for one in advice.causes:
        chance = f" ({one.chance:.0%})" if figures else ""
        rows += ["", *wrapped(f"{one.grade[:1].upper()}{one.grade[1:]}{chance}: {one.name}", width)]
        for evidence in one.evidence:
            rows += wrapped(_told(evidence, figures, weigh=True), width, "   ", "   ")
    rows += ["", *wrapped(advice.remark, width)] if advice.remark else []
    return "\n".join(rows)


def _told(evidence: Evidence, figures: bool, weigh: bool) -> str:
    """One line of the log: for or against, where it was said, and how far it is trusted."""
    side = ("For: " if evidence.weight > 0 else "Against: ") if weigh else ""
    at = f" ({where(evidence.place)})" if evidence.place else ""
    trust = f"; {trusted(evidence.trust)}" if weigh else ""
    sums = f"; log odds {evidence.weight:+.2f}, trust {evidence.trust:.2f}" if figures and weigh else ""
    return f"{side}{evidence.words}{at}{trust}{sums}"


def trusted(trust: float) -> str:
    """How far something is believed, in words."""
    return "trusted" if trust >= 0.8 else "fairly trusted" if trust >= 0.55 else "hardly trusted"
