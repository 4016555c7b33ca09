"""Tightening torque by grade: a guide for known steel bolts only.

T = K D F with F = 75 % of the proof load; K = 0.20 dry, 0.15 oiled (common practice); stress areas after ASME B1.1 and
ISO 898-1. Scatter is a quarter and more. Never for threads in cast iron or alloy, studs, brass, or old bolts of
unknown make.
"""

from __future__ import annotations

import math
import tomllib
from functools import lru_cache
from typing import Any

from worklog_tui import places
from worklog_tui.trade.threads import INCH, Thread

DRY, OILED = 0.20, 0.15
SHARE_OF_PROOF = 0.75


def stress_area(thread: Thread) -> float:
    """Tensile stress area, mm²: pi/4 (D - 0.9743 P)² for inch threads, pi/4 (D - 0.9382 P)² for metric ones."""
    factor = 0.9382 if thread.series == "M" else 0.9743
    return math.pi / 4 * (thread.major - factor * thread.pitch) ** 2


def torque(thread: Thread, grade: str, oiled: bool = False) -> float:
    """Torque in N*m for a grade of SAE J429 (2, 5, 8) or ISO 898-1 (4.6, 8.8, 10.9); a ValueError for another."""
    proof = _proof(thread, grade)
    force = SHARE_OF_PROOF * proof * stress_area(thread)
    return (OILED if oiled else DRY) * thread.major / 1000 * force


def _proof(thread: Thread, grade: str) -> float:
    """Proof stress in MPa."""
    tables = _bolts()
    if thread.series == "M" and grade in tables["metric"]:
        row = tables["metric"][grade]
        return float(row["above_16"] if thread.major > 16 else row["MPa"])
    if thread.series.startswith("UN") and grade in tables["inch"]:
        row = tables["inch"][grade]
        if thread.major / INCH > row["to"] + 1e-9:
            raise ValueError(f"grade {grade} has no one proof stress above {row['to']} in")
        return float(row["ksi"]) * 6.894757
    raise ValueError(f"no grade {grade} for {thread.designation}")


@lru_cache(maxsize=1)
def _bolts() -> dict[str, dict[str, dict[str, Any]]]:
    with (places.grammars() / "trade" / "bolts.toml").open("rb") as file:
        return tomllib.load(file)
