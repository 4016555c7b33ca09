"""Where something was learnt that is said of the machine: off its plate, from a book, from a person, or guessed."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene

PLATE = frozenset({"plate", "nameplate", "data plate", "stamped", "badge", "brass plate", "tag", "transfer"})
BOOKS = frozenset({"handbook", "manual", "book", "sheet", "leaflet", "spec"})


def source_at(scene: Scene, i: int) -> str:
    """plate, own handbook, handbook of a similar machine, person, guess; empty when nothing is said of it."""
    stances = scene.tokens[i].stances
    words = {w for k in scene.clause(i) for w in scene.tokens[k].low.split()}
    if words & PLATE:
        return "plate"
    if "book" in stances or words & {"handbook", "manual", "book"}:
        return "handbook of a similar machine" if _of_another(scene, i, words) else "own handbook"
    if "reported" in stances:
        return "person"
    return "guess" if doubted(scene, i) else ""


def borrowed_at(scene: Scene, i: int) -> str:
    """Who says what a number should be, where that is neither the book nor the plate of this machine: the handbook of a
    similar machine, a person, memory, a guess.
    """
    words = {w for k in scene.clause(i) for w in scene.tokens[k].low.split()}
    if _said(scene, i, scene.book.lists["from_memory"], ON):
        return "memory"
    if _said(scene, i, scene.book.lists["from_another"]) or (words & BOOKS and _of_another(scene, i, words)):
        return "handbook of a similar machine"
    if words & (PLATE | BOOKS):
        return ""
    if "reported" in scene.tokens[i].stances or _said(scene, i, scene.book.lists["persons_figure"]):
        return "person"
    return "guess" if doubted(scene, i) else ""


def _of_another(scene: Scene, i: int, words: set[str]) -> bool:
    return bool(words.intersection(scene.book.lists["similar"])) or _said(scene, i, scene.book.lists["from_another"])


def _said(scene: Scene, i: int, phrases: frozenset[str], behind: int = 0) -> bool:
    """Whether one of the phrases stands in the clause before a number, or so many tokens behind it."""
    first, last = scene.clause(i).start, min(i + behind, len(scene.tokens) - 1)
    text = scene.text[scene.tokens[first].start : scene.tokens[last].end].lower().replace("'", "")
    said = f" {' '.join(text.split())} "
    return any(f" {phrase}" in said for phrase in phrases)


BACK, ON = 4, 3
"Tokens before and after the words among which a word of doubt speaks of them."


def doubted(scene: Scene, i: int) -> bool:
    """Whether the speaker is not sure of it."""
    if scene.tokens[i].stances & {"maybe", "doubt"}:
        return True
    near = scene.tokens[max(0, i - BACK) : i + ON + 1]
    return any(t.sense("maybe", "doubt", "suspicion") for t in near)
