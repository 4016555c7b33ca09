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
    if behind := place_behind(draft, numbers, scene):
        return behind
    for k in range(i - 1, max(-1, i - 1 - BEFORE), -1):
        if k in numbers or scene.tokens[k].kind == "stop":
            break
        if last := _ends(k, scene):
            return _named(k, last, draft, scene)
    return []


def place_behind(draft: Draft, numbers: set[int], scene: Scene) -> list[str]:
    """The place that is told right behind the number."""
    lists, i = scene.book.taken.lists, draft.main
    if draft.fields["quantity"] not in lists["places_of"]:
        return []
    if i + 1 < len(scene.tokens) and scene.tokens[i + 1].low in lists["bare_places"]:
        return [scene.tokens[i + 1].low]
    for k in range(i + 1, min(i + 1 + BEHIND, len(scene.tokens))):
        if k in numbers or scene.tokens[k].kind == "stop":
            break
        if (last := _ends(k, scene)) and last + 1 not in numbers:
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
            return _on_a_part(k, n, scene)
    return 0


def _on_a_part(k: int, n: int, scene: Scene) -> int:
    """`At the bearing end`, `at the skirt`: the last token of a place that is named by a part."""
    tokens = scene.tokens
    if tokens[k].low not in ("at", "near") or tokens[n - 1].low not in ARTICLES:
        return 0
    for last in range(n, min(n + 3, len(tokens))):
        if tokens[last].kind in ("stop", "comma", "number", "amount"):
            return 0
        after = tokens[last + 1] if last + 1 < len(tokens) else None
        if after is None or after.kind in ("stop", "comma") or after.low in ENDS:
            ends = tokens[last].low.rpartition(" ")[2] in scene.book.taken.lists["places"]
            return last if ends or tokens[last].thing is not None or tokens[last].sense("part") else 0
    return 0


ENDS = frozenset({"and", "but", "so", "now", "where", "with", "which"})


def _named(k: int, last: int, draft: Draft, scene: Scene) -> list[str]:
    """The words of the place, unless they are what the reading is of; `at the end` is both."""
    own = draft.thing_at is not None and k <= draft.thing_at <= last
    end = scene.tokens[k].low == "at" and scene.tokens[last].low.rpartition(" ")[2] in ("end", "ends")
    return [] if own and not end else [scene.said(k, last)]
