"""By what it was read and after which doing, in so many words: `by the tank gauge`, `by nail`, `.4 aft truing`."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

AFTER = frozenset({"after", "aft"})
ARTICLES = frozenset({"the", "my", "that", "a", "his", "its", "old", "new", "same", "other"})
REACH = 5
"Tokens between the number and such words."
MOST = 3
"Tokens of the name of an instrument."
IS_SO = frozenset("running starting stopping standing sitting waiting cranking warming cooling nothing".split())
LEAST = 6
"Letters of a word such as `truing`."


def by_words(draft: Draft, numbers: list[int], scene: Scene) -> list[str]:
    """The instrument, or the doing, that is told nearest to a number with no other number between."""
    if draft.fields["role"] not in ("measured", "set") or not ({"by", *AFTER} & scene.words()):
        return []
    i = draft.main
    behind = range(i + 1, min(i + 1 + REACH, len(scene.tokens)))
    before = range(i - 1, max(i - 1 - REACH - MOST, -1), -1)
    for span in (behind, before):
        for k in span:
            if k in numbers or scene.tokens[k].kind == "stop":
                break
            if last := _ends(k, scene):
                return [scene.said(k, last).lower()] if i < k or last < i else []
    return []


def _ends(k: int, scene: Scene) -> int:
    """The last token of such words that begin at token k, 0 for none."""
    tokens = scene.tokens
    if tokens[k].low in AFTER:
        doing = tokens[k + 1].low if k + 1 < len(tokens) else ""
        word = doing.partition(" ")[0]
        return k + 1 if word not in IS_SO and word.endswith("ing") and len(word) >= LEAST else 0
    if tokens[k].low != "by":
        return 0
    for n in range(k + 1, min(k + 1 + MOST, len(tokens))):
        if tokens[n].low.rpartition(" ")[2] in scene.book.taken.lists["read_by"]:
            return n
        if tokens[n].low not in ARTICLES and tokens[n].thing is None:
            return 0
    return 0
