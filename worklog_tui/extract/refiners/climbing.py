"""A gauge that climbs: of `sixty, sixty-five, sixty-eight` on one cylinder the last figure is the reading."""

from __future__ import annotations

import itertools

from worklog_tui.extract.scene import Draft, Scene

STEP = 1.6
"How many times the figure before one stroke brings at most."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Compressions without those that the next figure of the same cylinder, right behind, goes beyond."""
    readings = sorted((d for d in drafts if d.kind == "reading"), key=lambda d: d.main)
    gone = {id(first) for first, second in itertools.pairwise(readings) if _climbs(first, second, scene)}
    return [d for d in drafts if id(d) not in gone] if gone else drafts


def _climbs(first: Draft, second: Draft, scene: Scene) -> bool:
    if not first.fields["quantity"] == second.fields["quantity"] == "compression":
        return False
    between = scene.tokens[first.last + 1 : second.main]
    if not between or any(t.kind != "comma" for t in between):
        return False
    low, high = first.fields["value"], second.fields["value"]
    if not (isinstance(low, float | int) and isinstance(high, float | int)) or not low < high <= STEP * low:
        return False
    of_one = scene.machine.cylinders == 1 or any(c.isdigit() for c in str(second.fields["subject"]))
    return of_one and first.fields["subject"] == second.fields["subject"]
