"""In which unit a bare pressure is of what never holds many bars: `oil pressure forty-five`, told after the injectors
had been popped at a hundred and sixty bar, is in pounds.
"""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.rulebook.quantities import Bare

MOST_BARS = 12.0
"Bars that engine oil, a tyre or a cooling system hardly pass (common practice)."


def of_its_size(bare: Bare, value: float, name: str, made: Draft, scene: Scene) -> Bare:
    """How a pressure takes a bare value, in pounds where so many bars cannot be meant."""
    if name != "pressure" or bare.unit != "bar" or value <= MOST_BARS or made.thing is None:
        return bare
    words = set(f"{made.thing.name} {made.thing.words}".lower().split())
    return Bare("psi", value, value) if words & scene.book.lists["low_pressures"] else bare
