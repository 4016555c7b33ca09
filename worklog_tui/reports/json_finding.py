"""Systems and causes as JSON: grades in words, figures only when asked for."""

from __future__ import annotations

from typing import Any

from worklog_tui.model import Advice, Evidence
from worklog_tui.reports.json_out import where
from worklog_tui.reports.plain_finding import trusted


def systems(found: Advice, figures: bool = False) -> list[dict[str, Any]]:
    """One object a system."""
    return [
        {
            "system": one.system,
            "standing": one.standing,
            "evidence": [_evidence(e, figures, weigh=False) for e in one.evidence],
        }
        for one in found.systems
    ]


def causes(found: Advice, figures: bool = False) -> dict[str, Any]:
    """The trouble with its causes, likeliest first."""
    return {
        "complaint": found.complaint or None,
        "remark": found.remark or None,
        "causes": [
            {
                "cause": one.name,
                "system": one.system,
                "grade": one.grade,
                **({"chance": round(one.chance, 4)} if figures else {}),
                "evidence": [_evidence(e, figures, weigh=True) for e in one.evidence],
            }
            for one in found.causes
        ],
    }


def _evidence(one: Evidence, figures: bool, weigh: bool) -> dict[str, Any]:
    told: dict[str, Any] = {"words": one.words, "at": where(one.place)}
    if weigh:
        told |= {"speaks": "for" if one.weight > 0 else "against", "trust": trusted(one.trust)}
        told |= {"weight": round(one.weight, 3), "trusted_at": round(one.trust, 3)} if figures else {}
    return told
