"""The reading that the talk has just left: what is judged in the next words is judged of it."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.model import Reading


def last_read(scene: Scene) -> Reading | None:
    """The last fact before this sentence where it is a value that was measured, in this note or the one before."""
    last = scene.context.recent[-1] if scene.context.recent else None
    if not isinstance(last, Reading) or last.role != "measured" or last.main.note in scene.context.notes[:-1]:
        return None
    return last
