"""As many figures in a row as there are cylinders are told in their order: `comp 150 148 152 120`, on a four, is of
cylinder 1 to cylinder 4.
"""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.measured.naming import one_of_them
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.subjects import with_which

BESIDE = frozenset({"and", "then", "/", ">"})
"What may stand between two figures of a row, besides commas."
WHOLE = "all cylinders"


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts; in a row of as many as the machine has cylinders each figure is of its own."""
    cylinders = scene.machine.cylinders or 0
    if cylinders < 2 or sum(d.kind == "reading" for d in drafts) < cylinders:
        return drafts
    for row in _rows(drafts, scene):
        if len(row) == cylinders:
            for n, draft in enumerate(row, 1):
                draft.fields["subject"] = _of(draft, n)
                draft.trail.append(f"of {draft.fields['subject']}: in a row of {cylinders}")
    return drafts


def _rows(drafts: list[Draft], scene: Scene) -> Iterator[list[Draft]]:
    """Readings of one quantity, of the same thing each, with nothing but commas between their figures."""
    row: list[Draft] = []
    for draft in sorted((d for d in drafts if d.kind == "reading"), key=lambda d: d.main):
        if row and not _goes_on(row[-1], draft, scene):
            yield row
            row = []
        if row or _of_several(draft):
            row.append(draft)
    if row:
        yield row


def _goes_on(before: Draft, draft: Draft, scene: Scene) -> bool:
    same = all(before.fields[key] == draft.fields[key] for key in ("quantity", "subject", "role"))
    between = scene.tokens[before.last + 1 : draft.main]
    return same and all(t.kind == "comma" or t.low in BESIDE for t in between)


def _of_several(draft: Draft) -> bool:
    """Whether the figure may be of a cylinder, or of what each cylinder has one of, and no word says of which."""
    thing = draft.thing
    if isinstance(draft.fields["value"], tuple):
        return False
    if draft.fields["subject"] == WHOLE:
        return True
    return thing is not None and thing.per == "cylinder" and thing.kind == "part" and not thing.which


def _of(draft: Draft, n: int) -> str:
    thing = draft.thing
    if draft.fields["subject"] == WHOLE or thing is None:
        return f"cylinder {n}"
    return with_which(one_of_them(thing), str(n))
