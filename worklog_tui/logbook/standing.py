"""Which acts stand: undo is an act that names an act, and is itself undone by another."""

from __future__ import annotations

from collections.abc import Iterable

from worklog_tui.model import Act


def standing(acts: Iterable[Act]) -> list[Act]:
    """The acts that no standing undo names, in their order; undos and what erasing emptied are left out."""
    row = sorted(acts, key=lambda act: act.order)
    undone: set[str] = set()
    for act in reversed(row):
        if act.verb == "undo" and act.uid not in undone:
            undone.add(act.target)
    return [act for act in row if act.verb != "undo" and act.uid not in undone and not act.is_emptied]


def undone_and_done(acts: Iterable[Act], device: str) -> tuple[list[Act], list[Act]]:
    """What a device may undo, and what it may redo (the undos), each with the next one last.

    An act after an undo leaves nothing to redo; what is erased cannot be had back.
    """
    done: list[Act] = []
    undone: list[Act] = []
    row = sorted((act for act in acts if act.device == device), key=lambda act: act.order)
    by_uid = {act.uid: act for act in row}
    for act in row:
        if act.verb != "undo":
            done, undone = [*done, act], []
            continue
        taken_back = next((one for one in undone if one.uid == act.target), None)
        if taken_back is not None:
            undone.remove(taken_back)
            done.append(by_uid[taken_back.target])
        elif act.target in by_uid:
            done = [one for one in done if one.uid != act.target]
            undone.append(act)
    return [one for one in done if one.verb != "erase" and not one.is_emptied], undone
