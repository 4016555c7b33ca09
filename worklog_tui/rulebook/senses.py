"""What a term can mean."""

from __future__ import annotations

from typing import Any, NamedTuple


class Sense(NamedTuple):
    """One meaning of a term."""

    cls: str
    """part, bad, good, noted, do, does, did, doing, cause, split (a verb awaiting its particle), or the name of a
    word list.
    """
    name: str
    "The canonical name: of the part, the condition, the action, the cause."
    kind: str = ""
    "Of a part: part, fluid, joint, …; of a split verb: its particle."
    per: str = ""
    "Of a part: what there is one for; of a split verb: its form; of a condition: the part that its words already name."
    weak: bool = False
    "Counts only beside something that supports it."
    of: tuple[str, ...] = ()
    "Of a condition: the parts that it is meant of; of a part: its quantities; of an action: the kind of its object."
    system: str = ""
    "Of a part: the system that it belongs to; of an action: what its verb says that it was done with."


Table = dict[str, tuple[tuple[Any, ...], ...]]
