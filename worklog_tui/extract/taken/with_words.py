"""What was so meanwhile: `with the element in`, `without the filter`, `with all the stops drawn`."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token

MOST = 7
"Tokens of such words."
MADE_SO = ("ed", "ing", "wn", "ut")
"Endings of what was made so: drawn, pinched, bending, shut."


def with_words(draft: Draft, numbers: list[int], scene: Scene) -> list[str]:
    """The words in the sentence of a number that tell how a thing was left meanwhile."""
    lists, i = scene.book.taken.lists, draft.main
    if draft.fields["role"] == "rated" or lists["with"].isdisjoint(scene.lows()):
        return []
    for k in range(max(0, i - REACH), min(i + REACH, len(scene.tokens))):
        if scene.tokens[k].low not in lists["with"] or k == i:
            continue
        last = _ends(k, i, scene)
        if last and not any(last < n < i or i < n < k for n in numbers):
            return [scene.said(k, last).lower()]
    return []


REACH = 12


def _ends(k: int, i: int, scene: Scene) -> int:
    """The last token of such words from token k on; 0 when they tell something else."""
    tokens, lists = scene.tokens, scene.book.taken.lists
    if any(t.low in lists["not_with"] or _used_it(t) for t in tokens[max(0, k - 3) : k]):
        return 0
    if any(t.kind == "stop" for t in tokens[min(i, k) : max(i, k)]):
        return 0
    last = k
    for n in range(k + 1, min(k + 1 + MOST, len(tokens))):
        if tokens[n].kind in ("stop", "comma") or n == i or tokens[n].low in lists["new_clause"]:
            break
        if (thing := tokens[n].thing) is not None and thing.kind == "tool":
            return 0
        last = n
        if n > k + 1 and _is_so(n, scene):
            return _with_its_thing(n, i, scene)
    if last == k:
        return 0  # a line may end with it
    bare = tokens[k + 1].low in lists["nothing"] or tokens[k].low == "without"
    return last if bare and last - k <= SHORT else 0


SHORT = 4


def _with_its_thing(n: int, i: int, scene: Scene) -> int:
    """`With 170 in the tank`: the thing behind the small word belongs to it."""
    for k in range(n + 1, min(n + 4, len(scene.tokens))):
        token = scene.tokens[k]
        if token.thing is not None or token.low in ("it", "them"):
            return k if k < i or i < n else n
        if token.low not in ARTICLES:
            break
    return n


ARTICLES = frozenset({"the", "a", "an", "its", "my"})


def _used_it(token: Token) -> bool:
    """Whether a word before tells what was done: `scraped it with a knife`; not `checked with the lamp on`."""
    did = token.sense("did", "do", "doing")
    return (did is not None and did.name not in ("test", "check")) or token.sense("bad") is not None


def _is_so(n: int, scene: Scene) -> bool:
    token, lists = scene.tokens[n], scene.book.taken.lists
    last = token.low.rpartition(" ")[2]
    if token.kind in ("number", "amount") or scene.tokens[n - 1].low in ARTICLES:
        return False
    return last in lists["left_so"] or token.low in lists["left_so"] or (len(last) > LEAST and last.endswith(MADE_SO))


LEAST = 4
