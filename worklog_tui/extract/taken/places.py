"""Where on the thing it was measured, and which way the amount goes: `at the nose`, `four mil thick`."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

ARTICLES = frozenset({"the", "its", "each", "both", "one", "my", "a"})
BEFORE, BEHIND = 8, 4
"Tokens from a place to its number, and from a number to its place."


def way(draft: Draft, scene: Scene) -> list[str]:
    """`fifteen thou thick`, `out of round`, `two quarts low`: which way the amount goes."""
    lists = scene.book.taken.lists
    if draft.fields["quantity"] not in lists["quantities_with_ways"]:
        return []
    said = ""
    found: list[str] = []
    for k in range(draft.main + 1, min(draft.main + 4, len(scene.tokens))):
        said = f"{said} {scene.tokens[k].low}".strip()
        if said in lists["ways"] or (said in lists["ends_way"] and _is_last(k, scene)):
            found = [said]
    return found


def _is_last(k: int, scene: Scene) -> bool:
    return k + 1 >= len(scene.tokens) or scene.tokens[k + 1].kind in ("stop", "comma")


def place(draft: Draft, drafts: list[Draft], scene: Scene) -> list[str]:
    """The place nearest to the number: right behind it, else before it with no other number between."""
    lists = scene.book.taken.lists
    if draft.fields["quantity"] not in lists["places_of"]:
        return []
    numbers = {d.main for d in drafts if d.kind == "reading"}
    i = draft.main
    for k in range(i + 1, min(i + 1 + BEHIND, len(scene.tokens))):
        if k in numbers or scene.tokens[k].kind == "stop":
            break
        if (last := _ends(k, scene)) and last + 1 not in numbers:
            return _named(k, last, draft, scene)
    for k in range(i - 1, max(-1, i - 1 - BEFORE), -1):
        if k in numbers or scene.tokens[k].kind == "stop":
            break
        if last := _ends(k, scene):
            return _named(k, last, draft, scene)
    return []


def _ends(k: int, scene: Scene) -> int:
    """The last token of a place that begins at token k, 0 for none."""
    tokens, lists = scene.tokens, scene.book.taken.lists
    if tokens[k].low not in lists["at"]:
        return 0
    for n in range(k + 1, min(k + 4, len(tokens))):
        word = tokens[n].low
        if word in lists["places"] or word in lists["sides"] or word.rpartition(" ")[2] in lists["places"]:
            return n
        if word not in ARTICLES:
            return 0
    return 0


def _named(k: int, last: int, draft: Draft, scene: Scene) -> list[str]:
    """The words of the place, unless they are what the reading is of."""
    return [] if draft.thing_at is not None and k <= draft.thing_at <= last else [scene.said(k, last)]
