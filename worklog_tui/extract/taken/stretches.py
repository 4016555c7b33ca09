"""Over which length it was measured, and how far along: `eight thou over six inches`, `four thou a foot`."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

ALONG = frozenset({"length", "gap", "angle"})
"Quantities that are told of so much of a thing."
EACH = frozenset({"per", "a", "to the", "in a", "every", "in the", "over a"})
FEET = frozenset({"foot", "ft", "metre", "meter", "yard", "inch", "inches"})
OVER = frozenset({"over", "in", "across", "at", "on"})
AWAY = frozenset({"down", "out", "away", "from", "along", "up", "off"})
ARTICLES = frozenset({"the", "a", "about", "each", "every", "its"})
REACH = 9
"Tokens between the amount and what it is told over."
FAR = 20
"So many times the amount is what it is measured over."


def stretch(draft: Draft, scene: Scene) -> list[str]:
    """Over how much of the thing the amount was found, or how far along it."""
    i = draft.main
    amount = scene.tokens[i].amount
    if draft.fields["quantity"] not in ALONG or draft.fields["role"] == "rated":
        return []
    if per := _per(i, scene) or _in_so_many(i, scene):
        return [per]
    if amount is None or amount.high <= 0:
        return []
    for k in range(i + 1, min(i + 1 + REACH, len(scene.tokens))):
        if scene.tokens[k].kind == "stop":
            break
        if _is_far(k, i, scene):
            return _behind(k, scene)
    for k in range(i - 1, max(i - 1 - REACH, -1), -1):
        if scene.tokens[k].kind == "stop":
            break
        if _is_far(k, i, scene) and (found := _before(k, i, scene)):
            return found
    return []


def _per(i: int, scene: Scene) -> str:
    """`Four thou per foot`, `.004/ft`, `two thou in the foot`."""
    for k in range(i + 1, min(i + 5, len(scene.tokens))):
        token = scene.tokens[k]
        if token.kind in ("stop", "number", "amount"):
            break
        last = token.low.rpartition(" ")[2]
        joined = scene.text[token.start - 1 : token.start] == "/" if token.start else False
        before = " ".join(t.low for t in scene.tokens[max(i + 1, k - 2) : k])
        if last in FEET and (joined or before in EACH or before.rpartition(" ")[2] in ("per", "every")):
            return f"per {'foot' if last == 'ft' else last}"
    slash = scene.text[scene.tokens[i].end : scene.tokens[i].end + 4].lower()
    return "per foot" if slash.startswith(("/ft", "/foo")) else ""


def _in_so_many(i: int, scene: Scene) -> str:
    """`.0004 in 6`: in shorthand the word that might be the unit of the one leads to the other."""
    own, after = scene.tokens[i], scene.tokens[i + 1] if i + 1 < len(scene.tokens) else None
    if after is None or after.kind != "number" or after.value is None or own.amount is None or own.amount.unit != "in":
        return ""
    alone = i + 2 == len(scene.tokens) or scene.tokens[i + 2].kind in ("stop", "comma")
    leads = scene.text[own.start : own.end].lower().endswith(" in")
    return f"in {scene.said(i + 1, i + 1)} in" if leads and alone and after.value > FAR * own.amount.high else ""


def _is_far(k: int, i: int, scene: Scene) -> bool:
    """Whether token k is a length of quite another size than the one at token i."""
    one, own = scene.tokens[k].amount, scene.tokens[i].amount
    return own is not None and one is not None and one.unit == own.unit and one.low > FAR * own.high


def _behind(k: int, scene: Scene) -> list[str]:
    """`Over six inches`, `in 6`, `five inches down`."""
    before = [t.low for t in scene.tokens[max(0, k - 2) : k] if t.low not in ARTICLES]
    if before and before[-1] in OVER:
        return [f"{before[-1]} {scene.said(k, k)}"]
    return _away(k, scene)


def _before(k: int, i: int, scene: Scene) -> list[str]:
    """`At five inches, nine thou`, `dial five inches down, three`, with no other amount between."""
    if any(t.kind in ("number", "amount") for t in scene.tokens[k + 1 : i]):
        return []
    if k and scene.tokens[k - 1].low in ("at", "over", "in"):
        return [scene.said(k - 1, k)]
    return [f"at {scene.said(k, k)}"] if k == i - 1 else _away(k, scene)


def along(scene: Scene) -> tuple[int, str] | None:
    """`Dial five inches down`: where on the thing the next figures are read, in a sentence without such a figure."""
    lengths = [k for k, token in enumerate(scene.tokens) if token.amount and "length" in token.amount.quantities]
    if len(lengths) != 1 or scene.tokens[lengths[0]].kind != "amount":
        return None
    where = _away(lengths[0], scene)
    return (lengths[0], where[0]) if where else None


def _away(k: int, scene: Scene) -> list[str]:
    after = scene.tokens[k + 1].low if k + 1 < len(scene.tokens) else ""
    return [f"at {scene.said(k, k)}"] if scene.tokens[k].amount is not None and after in AWAY else []
