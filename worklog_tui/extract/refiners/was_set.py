"""Whether a person brought what was read to its figure: a word of setting or of adjusting governs the number."""

from __future__ import annotations

from itertools import pairwise

from worklog_tui.extract.scene import Scene

REACH = 9
"Tokens from the word to the number."
SET_ACTIONS = frozenset({"adjust", "tighten", "fill"})


def was_set(i: int, scene: Scene, amounts: frozenset[int], quantity: str) -> bool:
    """Whether a person set what the number at token i measures; other numbers stand at `amounts`."""
    tokens = scene.tokens
    for k in range(i - 1, max(i - 1 - REACH, -1), -1):
        if tokens[k].kind == "stop" or k in amounts or "break" in tokens[k].classes or tokens[k].low in CAME_OUT:
            return False
        if _adjusts(k, scene):
            return not (left_so(k, scene) or (quantity in EFFECTS and _goes_on(k, i, scene)))
        if "setto" in tokens[k].classes and not _is_noun(k, scene):
            elsewhere = tokens[k].low in CAME_TO and _leads_elsewhere(k, i, scene)
            by_itself = _came_to(k, scene, quantity) or _stands_so(k, scene) or left_so(k, scene)
            return not (elsewhere or by_itself)
        if "reads" in tokens[k].classes and tokens[k].low not in ("at", "now", "is", "was", "are", "up to", "down to"):
            return False
    return False


CAME_OUT = frozenset({"was", "were", "came out", "comes out", "came out at", "comes out at", "mikes", "miked"})
"With these the figure is read off, whatever was tightened for it: `nipped up, and the lead came out at five thou`."


def left_so(k: int, scene: Scene) -> bool:
    """`Somebody set the plug at forty`, `it had been torqued to ninety`: by whoever was there before."""
    before = scene.tokens[scene.clause(k).start : k]
    others = scene.book.owed["somebody"]
    return any(t.low in others or t.low in ("had been", "hed", "theyd", "been") for t in before)


EFFECTS = frozenset({"voltage", "current", "pressure", "temperature", "compression"})
"What work on another part brings about; a gap or a length is what the work itself sets."


def _goes_on(k: int, i: int, scene: Scene) -> bool:
    """`Tightened the belt and it's charging at fourteen volts`: what the machine does then was read off."""
    between = scene.tokens[k + 1 : i]
    return any(t.low in ITS and n.low.split()[0].endswith("ing") for t, n in pairwise(between))


ITS = frozenset("its hes shes theyre".split())


def _adjusts(k: int, scene: Scene) -> bool:
    """Whether a token tells that something was set; a state (`bent`), a side (`top`) and `dropping` tell nothing."""
    token = scene.tokens[k]
    if _is_noun(k, scene) or _is_so(k, scene) or token.sense("side", "bad", "judged"):
        return False
    if token.low in FELL:
        return False
    if k and scene.tokens[k - 1].low in ("have", "has") and not _by_a_person(k - 1, scene):
        return False
    if token.low == "moved" and k and (scene.tokens[k - 1].thing is not None or scene.tokens[k - 1].sense("pronoun")):
        return False  # `the clock moved twelve thou`
    return any(s.cls in ("did", "doing", "does", "do") and s.name in SET_ACTIONS for s in token.senses)


FELL = frozenset("dropping falling losing drops falls loses".split())


def _is_noun(k: int, scene: Scene) -> bool:
    """`Left set, nineteen thou`, `the set of them`: a set of parts."""
    token = scene.tokens[k]
    if token.low != "set" or not k:
        return False
    before, after = scene.tokens[k - 1], scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    ends = after is None or after.kind in ("comma", "stop") or after.low == "of"
    return ends and bool(before.sense("side", "article") or before.low in ("one", "other", "whole"))


def _is_so(k: int, scene: Scene) -> bool:
    """`Plug gap's forty thou`: a noun and `is`, however much it looks like a verb."""
    token = scene.tokens[k]
    noun = k > 0 and (scene.tokens[k - 1].thing is not None or scene.tokens[k - 1].kind == "which")
    return scene.text[token.end - 2 : token.end] in OWNS or (noun and bool(token.sense("does")))


OWNS = ("'s", "\u2019s")


def _came_to(k: int, scene: Scene, quantity: str) -> bool:
    """`It's down to four`, `that one got up to fifty-five`, `the quill's dropping down to`: it came there by itself."""
    if scene.tokens[k].low == "gets" and k + 1 < len(scene.tokens) and scene.tokens[k + 1].low in ("to", "as", "up"):
        return True
    if k and scene.tokens[k - 1].low in ("have", "has", "had") and not _by_a_person(k - 1, scene):
        return True  # `these have opened up to forty`
    if scene.tokens[k].low not in CAME_TO or not k:
        return False
    if scene.tokens[k].low == "back to" and quantity in ("gap", "turns", "angle"):
        return False  # `the points are back to twenty`: nobody but a person brings them back
    before = scene.tokens[k - 1]
    owns = scene.text[max(0, before.end - 2) : before.end] in OWNS or before.low in ("theyre", "its", "im", "youre")
    return (
        bool(before.sense("copula"))
        or before.low in scene.book.lists["came_by_itself"]
        or owns
        or before.low.endswith(("dropped", "dropping"))
    )


def _by_a_person(k: int, scene: Scene) -> bool:
    """Whether a person stands before the verb at token k."""
    return k > 0 and bool(scene.tokens[k - 1].sense("person") or scene.tokens[k - 1].low in ("i", "we", "he", "she"))


CAME_TO = frozenset({"down to", "up to", "back to", "into"})


def _stands_so(k: int, scene: Scene) -> bool:
    """`The overload's wound up to two and a half`: how it was found wound."""
    by = scene.tokens[k - 1] if k else None
    owns = by is not None and scene.text[max(0, by.end - 2) : by.end] in OWNS
    turned = scene.tokens[k].low.startswith(("wound ", "screwed ", "cranked "))
    return turned and (owns or bool(by and by.sense("copula")))


def _leads_elsewhere(k: int, i: int, scene: Scene) -> bool:
    """`From the post down to the starter, point two`: behind `to` stands a part, and not the figure."""
    return any(t.kind == "thing" for t in scene.tokens[k + 1 : i])
