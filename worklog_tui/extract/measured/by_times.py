"""Sizes with a times sign, as typed on lists: `v-belt 13 x 1075`, `hose 3/4 x 2 m`, `stud M8 x 40`; not `seals x 2`."""

from __future__ import annotations

from worklog_tui.extract.measured.number_form import fraction
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Thing, Token

TIMES = frozenset({"x", "by"})
FIGURES = frozenset({"number", "amount", "thread"})
BOUGHT = frozenset({"part", "joint", "fastener", "material", "electric", "control"})
"Kinds of things that have such sizes."
LEADS = frozenset("size new a : is of need".split())
"What may stand between the thing and its sizes."
CODE, MANY, FEW = 1000.0, 20.0, 6.0
"From where on a figure before the sign is the number of a part; up to how many of a part, of a screw are told so."
LEAST = 3.0
"Millimetres from which a bare figure of two is taken for them; a smaller one counts (common practice)."


def crossed(i: int, scene: Scene) -> str:
    """The unit of the size at token i, which has a times sign beside it, right by the part that it is of; else ""."""
    if not scene.typed or not TIMES & scene.lows() or (found := _group(i, scene)) is None:
        return ""
    first, last = found
    tokens, token = scene.tokens, scene.tokens[i]
    if (
        _part_at(first, last, scene) is None
        or _counts(i, scene)
        or (token.amount is not None and "length" not in token.amount.quantities)
    ):
        return ""
    if token.amount is not None:
        return token.amount.unit
    if token.thread is not None or token.value is None or (token.value >= CODE and _counts(i + 2, scene)):
        return ""  # `brg 6203 x 2`
    if (
        fraction(scene.said(i, i))
        or token.low.startswith(".")
        or crossed_part(i, scene)[0].name in scene.book.lists["sold_by_inches"]
    ):
        return "in"
    units = {t.amount.unit for t in tokens[first : last + 1] if t.amount is not None}
    if "in" in units:
        return "in"
    return "mm" if token.value >= LEAST or "mm" in units else ""


def crossed_part(i: int, scene: Scene) -> tuple[Thing, int]:
    """The part that the size at token i is of, and its token; only for a size that `crossed` knows."""
    at = _part_at(*(_group(i, scene) or (i, i)), scene) or 0
    thing = scene.tokens[at].thing
    assert thing is not None
    return thing, at


def counted_by_times(scene: Scene, i: int) -> bool:
    """`Brg 6206 x 2`, `seals x 2`, `links x 58`: how many there are."""
    return scene.typed and i > 1 and scene.tokens[i - 1].low == "x" and _counts(i, scene)


def _counts(i: int, scene: Scene) -> bool:
    tokens = scene.tokens
    if i >= len(tokens):
        return False
    value, whose = tokens[i].value, tokens[i - 2] if i > 1 else None
    behind = tokens[i + 1] if i + 1 < len(tokens) else None
    if value is None or value != int(value) or "/" in tokens[i].low:
        return False
    if behind is not None and behind.low.split()[0] in COUNTED:
        return True
    if behind is not None and behind.low in TIMES and i + 2 < len(tokens) and tokens[i + 2].kind == "thread":
        return True  # `4 x M8`
    if whose is None or tokens[i - 1].low != "x" or value > MANY or (behind is not None and behind.low in TIMES):
        return False
    if whose.thing is not None or whose.kind == "comma":
        return True
    if whose.kind == "number" and whose.value is not None:
        return whose.value >= CODE or (whose.value < 1 and fraction(whose.low) is None and value <= FEW)
    return whose.kind == "thread" and value <= FEW


COUNTED = frozenset("links link teeth off pcs pieces holes turns".split())


def _group(i: int, scene: Scene) -> tuple[int, int] | None:
    """The first and the last token of the figures with times signs between, of which token i is one; None for one."""
    tokens = scene.tokens
    first = last = i
    while first > 1 and tokens[first - 1].low in TIMES and tokens[first - 2].kind in FIGURES:
        first -= 2
    while last + 2 < len(tokens) and tokens[last + 1].low in TIMES and tokens[last + 2].kind in FIGURES:
        last += 2
    return (first, last) if first < last else None


def _part_at(first: int, last: int, scene: Scene) -> int | None:
    """The token of the part that the sizes stand right by."""
    tokens = scene.tokens
    before = first - 1
    while before > 0 and _leads(tokens[before]):
        before -= 1
    near = (k for k in (before, last + 1) if 0 <= k < len(tokens))
    return next((k for k in near if (thing := tokens[k].thing) is not None and thing.kind in BOUGHT), None)


def _leads(token: Token) -> bool:
    return token.low in LEADS or token.sense("article", "new", "side") is not None
