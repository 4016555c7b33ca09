"""What the book has for it: `front tyre nineteen, back left twenty. Book thirty-six`, of all of them.

Where one after another of several was measured, the figure of the book behind it is of no one of them.
"""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.side_words import ENDS
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading

BACK = 2
"Notes back in which it was measured, its own among them."
LEAST, MOST = 0.25, 4.0
"How many times what was measured the figure of the book may be."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Figures of the book that name nothing themselves, with what was measured, all of several."""
    said = [d for d in drafts if d.kind == "reading"]
    for draft in said:
        if draft.fields["role"] != "specified" or ("subject" not in draft.filled and draft.fields["subject"]):
            continue
        alike = [d for d in said if d.main < draft.main and d.fields["quantity"] == draft.fields["quantity"]]
        told = _measured(draft, scene) if not alike else []
        mine = str(draft.fields["subject"])
        if told and (subject := _of_all(told)) != mine and (not mine or _bare(mine) == _bare(told[0].subject)):
            draft.fields["subject"] = subject
            kept = draft.thing or Thing(subject, told[0].name, "part")
            draft.thing = replace(kept, words=subject, name=told[0].name)
            draft.trail.append(f"of {subject}: measured just before")
    return drafts


def _measured(draft: Draft, scene: Scene) -> list[Reading]:
    """The values of the quantity measured last, newest first; none where the newest is not like the figure."""
    notes = scene.context.notes
    old = set(notes[: len(notes) - BACK + 1])
    told = [
        fact
        for fact in reversed(scene.context.recent)
        if isinstance(fact, Reading) and fact.quantity == draft.fields["quantity"] and fact.role in ("measured", "set")
        and fact.subject and fact.main.note not in old
    ]  # fmt: skip
    return told if told and _like(draft, told[0]) else []


def _like(draft: Draft, fact: Reading) -> bool:
    first, second = (v[0] if isinstance(v, tuple) else v for v in (draft.fields["value"], fact.value))
    if isinstance(first, str) or isinstance(second, str) or draft.fields["unit"] != fact.unit or not second:
        return False
    return LEAST <= first / second <= MOST


def _of_all(told: list[Reading]) -> str:
    """The subject of the newest; without its side or number where others of its name were measured beside it."""
    last = told[0].subject
    bare = _bare(last)
    if last == "all cylinders":
        return last
    others = {f.subject for f in told if f.subject != last and _bare(f.subject) == bare}
    if not others or not bare:
        return last
    return "all cylinders" if bare == "cylinder" else bare if bare.endswith("s") else f"{bare}s"


def _bare(subject: str) -> str:
    return " ".join(w for w in subject.split() if not (w.isdigit() or w.lower() in ENDS - VALVES))


VALVES = frozenset("inlet exhaust intake inlets exhausts intakes in ex".split())
"The book has another figure for each."
