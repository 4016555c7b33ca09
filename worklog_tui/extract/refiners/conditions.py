"""How a reading was taken: dry, wet, hot, at idle, under load, after ten minutes; said in its clause, in its sentence,
or still true of the running test.
"""

from __future__ import annotations

from worklog_tui.extract.measured.sizes import sized
from worklog_tui.extract.scene import Draft, Scene

BOUNDS = {"under": "under", "over": "over"}
SHORT = {"max": "maximum", "min": "minimum", "wot": "throttle open"}
LIMITS = {
    "limits": "maximum", "minimums": "minimum", "maximums": "maximum", "mins": "minimum", "maxs": "maximum",
    "new is": "new", "you scrap them at": "scrap", "scrap them at": "scrap", "you scrap it at": "scrap",
    "chuck em at": "scrap", "chuck them at": "scrap", "bin them at": "scrap", "scrap size": "scrap",
    "throw-away size": "maximum", "nothing under": "minimum", "nothing over": "maximum",
    "tops": "maximum", "maximum": "maximum", "max": "maximum", "no more than": "maximum", "not more than": "maximum",
    "at most": "maximum", "limit": "maximum", "the limit": "maximum", "wear limit": "wear limit", "minimum": "minimum",
    "service limit": "limit", "min": "minimum", "at least": "minimum", "no less than": "minimum",
    "not less than": "minimum", "absolute floor": "minimum", "scrap at": "scrap", "scrap under": "scrap",
    "scrap below": "scrap", "when new": "new", "from new its": "new", "new its": "new",
    "you scrap em at": "scrap", "scrap em at": "scrap", "you chuck em at": "scrap", "throw them away at": "scrap",
    "worn out at": "scrap", "discard at": "scrap", "throwaway at": "scrap", "nervous under": "minimum",
    "nervous below": "minimum", "anything under": "under", "anything over": "over", "anything above": "over",
    "anything below": "under", "is the limit": "maximum", "is your limit": "maximum", "is the wear limit": "wear limit",
    "is the minimum": "minimum", "is the maximum": "maximum", "is your absolute floor": "minimum",
    "is the floor": "minimum", "is the least": "minimum", "is the most": "maximum", "s the most": "maximum",
    "when it was new": "new", "when theyre new": "new", "is where you stop": "maximum",
}  # fmt: skip
TURNING = frozenset("crank cranks cranked cranking spin spins spinning cranky".split())
CRANKED = frozenset({"voltage", "current", "speed", "pressure"})
REACH = 14


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings with their condition."""
    amounts = {d.main for d in drafts if d.kind == "reading"}
    for draft in drafts:
        if draft.kind == "reading" and not draft.fields["condition"]:
            said = _said(draft, scene, amounts) or _still(draft, scene) or _bound(draft)
            draft.fields["condition"] = ", ".join(dict.fromkeys(SHORT.get(s, s) for s in said))
    return drafts


def _said(draft: Draft, scene: Scene, amounts: set[int]) -> list[str]:
    """The words of the clause, else the ones before the number in its sentence."""
    span = scene.clause(draft.main)
    found = [scene.said(k, k) for k in span if k != draft.main and "how" in scene.tokens[k].classes
             and _is_of(draft.main, k, scene, amounts)]  # fmt: skip
    if draft.fields["role"] == "specified":
        found += _of_new(draft.main, scene)
        found += _limit(draft.main, scene, amounts)
    if draft.fields["quantity"] not in WETTED:
        found = [f for f in found if f.lower() not in ("dry", "wet")]
    if size := sized(draft.main, scene):
        return [size]
    if draft.fields["quantity"] == "compression":
        found = ["throttle open" if f.lower() in ("wide open", "wot") else f for f in found]
    found += _measured_how(draft, scene)
    found += _beside(draft.main, scene, amounts)
    if not found and draft.fields["role"] == "measured":
        found = _since(draft, scene) or _as_tested(draft, scene)
    if found or draft.fields["role"] not in ("measured", "set"):
        return found
    first = max(0, draft.main - REACH)
    before = scene.tokens[first : draft.main]
    found = [scene.said(first + n, first + n) for n, t in enumerate(before) if "how" in t.classes][-1:]
    if draft.fields["quantity"] not in WETTED:
        found = [f for f in found if f.lower() not in ("dry", "wet")]
    if not found and draft.fields["quantity"] in CRANKED and any(TURNING & set(t.low.split()) for t in before):
        return ["cranking"]
    return found


def _limit(i: int, scene: Scene, amounts: set[int]) -> list[str]:
    """The word of a limit nearest to the number: before it with no other number between, else behind it."""
    span = scene.clause(i)
    for k in range(i - 1, max(span.start, i - LIMIT_REACH) - 1, -1):
        if k in amounts:
            break
        if scene.tokens[k].low in LIMITS:
            return [LIMITS[scene.tokens[k].low]]
    for k in range(i + 1, min(span.stop, i + 1 + LIMIT_REACH)):
        if k in amounts or scene.tokens[k].kind == "number":
            break
        if scene.tokens[k].low in LIMITS:
            return [LIMITS[scene.tokens[k].low]]
    return []


LIMIT_REACH = 7


def _of_new(i: int, scene: Scene) -> list[str]:
    """`Sixteen new and scrap at eight`, `new at five`, `it's a hundred and eighteen new`."""
    after = scene.tokens[i + 1] if i + 1 < len(scene.tokens) else None
    before = [t.low for t in scene.tokens[max(0, i - 2) : i]]
    if after is not None and after.low in ("new", "when new", "from new", "brand new"):
        ends = scene.tokens[i + 2] if i + 2 < len(scene.tokens) else None
        return ["new"] if ends is None or ends.kind in ("stop", "comma") or ends.low in ENDS_NEW else []
    return ["new"] if before[:1] == ["new"] and before[1:] in (["at"], ["is"]) else []


ENDS_NEW = frozenset({"and", "but", "or", "so", "then", "when", "with"})


def _measured_how(draft: Draft, scene: Scene) -> list[str]:
    """`fifteen thou thick`, `four centimetres low`, `two quarts low`: which way the amount goes."""
    after = scene.tokens[draft.main + 1].low if draft.main + 1 < len(scene.tokens) else ""
    return [after] if draft.fields["quantity"] in ("length", "volume") and after in WAYS else []


WAYS = frozenset(
    "thick deep deeper long wide high proud undersize oversize low short over hollow deepest longer shorter out".split()
)


def _is_of(i: int, k: int, scene: Scene, amounts: set[int]) -> bool:
    """Whether the state at token k is of the number at token i: in `0.8 at the bottom and 0.9 at the top` each has its
    own; where only one is told it is of all, and so is one that stands before them.
    """
    span = scene.clause(i)
    numbers = sorted(n for n in amounts if n in span)
    states = [n for n in span if scene.tokens[n].sense("how") and n not in amounts]
    behind = [n for n in states if n > numbers[0]]
    if len(numbers) < 2 or not behind or (len(states) < 2 and numbers[0] < k):
        return True
    if k < numbers[0] and len(behind) >= len(numbers):
        return True
    at = numbers.index(i)
    if len(behind) >= len(numbers):  # each is told behind its number
        last = numbers[at + 1] if at + 1 < len(numbers) else span.stop
        return i < k < last
    before = [n for n in states if n < i]
    return not before or k > i or k == before[-1]


WETTED = frozenset({"compression", "torque", "leakage"})
"Quantities that are taken dry or with oil."
DRIFTING = frozenset({"pressure", "temperature", "length", "leakage"})
"Quantities that change while one waits."
OILED = frozenset("oil oiled squirt teaspoon".split())


def _since(draft: Draft, scene: Scene) -> list[str]:
    """`Ten minutes, 138 degrees`, `that's the six minutes and it's on five and a half`: how long it took."""
    if draft.fields["quantity"] not in DRIFTING:
        return []
    for k in range(draft.main - 1, max(draft.main - REACH, 0) - 1, -1):
        if scene.tokens[k].kind == "stop":
            return []
        if _is_time(k, scene):
            return [f"after {scene.said(k, k)}"]
    return []


def _as_tested(draft: Draft, scene: Scene) -> list[str]:
    """`oil down two, 79` is a wet test; `12.1 rest` is the battery at rest."""
    near = scene.tokens[max(0, draft.main - 8) : draft.main + 2]
    words = {w for t in near for w in t.low.split()}
    if draft.fields["quantity"] == "compression" and words & OILED:
        return ["with oil"]
    if draft.fields["quantity"] == "voltage" and "rest" in words:
        return ["at rest"]
    return []


def _beside(i: int, scene: Scene, amounts: set[int]) -> list[str]:
    """`at 150 psi`, `after ten minutes`, `ten minutes later`: another amount that says when or where it was taken."""
    found = []
    for k in scene.clause(i):
        if k == i or k not in amounts or scene.tokens[k].kind != "amount" or not k:
            continue
        before = scene.tokens[k - 1].low
        after = scene.tokens[k + 1].low if k + 1 < len(scene.tokens) else ""
        if before in ("at", "after") and scene.tokens[i].kind in ("amount", "number"):
            found.append(scene.said(k - 1, k))
        elif (after in ("later", "on") and _is_time(k, scene)) or (before == "in" and _is_time(k, scene)):
            found.append(f"after {scene.said(k, k)}")
    return found


def _is_time(k: int, scene: Scene) -> bool:
    amount = scene.tokens[k].amount
    return amount is not None and "duration" in amount.quantities


def _still(draft: Draft, scene: Scene) -> list[str]:
    """What is still true of the running test."""
    topic = scene.context.topic
    if (
        topic is None
        or topic.quantity != draft.fields["quantity"]
        or not topic.condition
        or draft.fields["role"] not in ("measured", "set")
    ):
        return []
    draft.filled.add("condition")
    return [topic.condition]


def _bound(draft: Draft) -> list[str]:
    bound = BOUNDS.get(draft.fields["bound"])
    return [bound] if bound else []
