"""Whether a number is what the book, the handbook or good practice says that it should be."""

from __future__ import annotations

from worklog_tui.extract.measured.counted import IT_IS
from worklog_tui.extract.met import counting
from worklog_tui.extract.refiners.expected import is_expected
from worklog_tui.extract.refiners.limits import is_limit
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import NUMBER, Token

REACH = 9
LISTED = 6
"Tokens between two numbers of one list."
BEHIND = 5
"Tokens behind a word of the book in which its number stands."
SET_APART = frozenset("where instead rather but against not back".split())
"Words that set one number apart from the other, where a list would go on."


def from_book(i: int, scene: Scene, amounts: frozenset[int]) -> bool:
    """Whether a word of the book governs the number: before it with no other number between, or after the last one."""
    return scene.once(("from book", i, amounts), lambda: _from_book(i, scene, amounts))


def _from_book(i: int, scene: Scene, amounts: frozenset[int]) -> bool:
    return (
        _wanted(i, scene) or (_holds_book(scene) and (_before(i, scene, amounts) or _after(i, scene, amounts)))
        or _when_new(i, scene) or _looked_up(i, scene) or is_limit(i, scene) or is_expected(i, scene)
    )  # fmt: skip


def _holds_book(scene: Scene) -> bool:
    """Whether the sentence holds any word of the book at all."""
    return scene.holds("book", "proper") or scene.once(("book",), lambda: any(map(_is_book, scene.tokens)))


def _looked_up(i: int, scene: Scene) -> bool:
    """`Let's see what the book says. Twelve.`: the sentence before asks the book and has no figure of its own."""
    words = scene.context.said.lower().replace("'", "").replace("-", " ").strip(" .?!:").split()
    if BOOKS.isdisjoint(words[-4:]) or any(w.strip(".~<>")[:1].isdigit() or w in counting(scene.book) for w in words):
        return False
    return not any(t.sense("copula", "did") or _mine(k, scene) for k, t in enumerate(scene.tokens[:i]))


BOOKS = frozenset("book manual handbook spec specs specification leaflet".split())


def _when_new(i: int, scene: Scene) -> bool:
    """`They're sixteen new and scrap at eight`: what it was when it was made."""
    if _new_before(i, scene):
        return True
    after = scene.tokens[i + 1 : i + 3]
    if not after or after[0].low not in NEW or (i and scene.tokens[i - 1].sense("article")):
        return False
    return len(after) < 2 or after[1].kind in ("stop", "comma") or after[1].low in ("and", "but", "so", "or")


def _new_before(i: int, scene: Scene) -> bool:
    """`A new one is five`; shorthand: `new .10, max .15`: the size of a new one, told behind what was measured."""
    before = [t.low for t in scene.tokens[max(0, i - 3) : i] if not t.sense("about")]
    if before and before[-1] in ("is", "are", "was", "were", "ones") and {"new", "new one", "new ones"} & set(before):
        return True
    if before[-2:] == ["new", "at"] and len(before) == 3 and before[0] in BE:
        return True  # `they're new at nine`
    main = i
    i -= i > 1 and scene.tokens[i - 1].low == "="
    if i < 2 or scene.tokens[i - 1].low not in ("new", "nominal") or scene.tokens[i - 2].kind not in ("comma", "stop"):
        at_head = i == 1 and scene.tokens[0].low in ("new", "nominal")
        if not at_head:
            return False
    behind = scene.tokens[main + 1] if main + 1 < len(scene.tokens) else None
    return behind is None or (behind.kind in ("comma", "stop", "word") and behind.thing is None)


NEW = frozenset({"new", "when new", "from new", "brand new"})
BE = ("is", "are", "was", "were", "theyre", "its", "'s")
MINE = frozenset({
    "ive got", "i got", "i have", "weve got", "i get", "i make it", "mines", "its got", "im getting", "were getting",
    "im seeing", "im reading", "im on", "got", "getting", "this one", "this ones", "ours is", "ours are", "it has",
})  # fmt: skip
"Words after which a person tells what he read himself."


def _wanted(i: int, scene: Scene) -> bool:
    """Shorthand: `want <.1`, `sb .75`, `.30 wanted`."""
    before = [t.low for t in scene.tokens[max(0, i - 2) : i] if t.low not in SIGNS]
    after = scene.tokens[i + 1].low if i + 1 < len(scene.tokens) else ""
    return (bool(before) and before[-1] in WANTED) or after in WANTED_BEHIND


WANTED_BEHIND = frozenset({"wanted", "specified", "required", "reqd", "nominal", "recommended", "allowed", "permitted"})
SIGNS = frozenset({"<", ">", "=", ",", "about", "under", "over"})
WANTED = frozenset({"want", "sb", "s/b", "shd", "shud", "wnt", "scrap", "std", "lim", "reject", "nominal"})


def _before(i: int, scene: Scene, amounts: frozenset[int]) -> bool:
    tokens = scene.tokens
    k, first = i - 1, max(i - 1 - REACH, -1)
    while k > first:
        token = tokens[k]
        if token.kind == "stop":
            return False
        if _is_book(token) and token.clause >= tokens[i].clause - 1 and not _looks_back(k, scene, amounts):
            return not _denied(k, scene)
        if k in amounts:
            if not _listed(k, i, scene):
                return False
            i, first = k, max(k - 1 - REACH, -1)  # what governs the one before governs this one
        if "break" in token.classes or _mine(k, scene):
            return False
        k -= 1
    return False


def _mine(k: int, scene: Scene) -> bool:
    """Whether a person tells here what he read: `I'm getting`, `this one's`."""
    low = scene.tokens[k].low
    return low in MINE or (low in READING and k > 0 and scene.tokens[k - 1].low in PERSONS)


READING = frozenset("getting reading seeing have got make read get found".split())
PERSONS = frozenset("i im ive we were weve".split())


def _looks_back(k: int, scene: Scene, amounts: frozenset[int]) -> bool:
    """`Half an inch is proper, and the pump`: such words speak of the number before them, if there is one."""
    first = scene.clause(k).start
    if scene.tokens[k].sense("proper"):
        return any(first <= n < k for n in amounts)
    if scene.tokens[k].low in WANTED_BEHIND and k - 1 in amounts:
        return True  # `thirty nominal, and it mikes at`
    shut = k + 1 < len(scene.tokens) and scene.tokens[k + 1].kind == "comma"
    return shut and k > 1 and k - 2 in amounts and scene.tokens[k - 1].low in PRONOUNS  # `twenty they should be, and`


def _denied(k: int, scene: Scene) -> bool:
    """`Which is me and not the book`."""
    return any(t.low == "not" for t in scene.tokens[max(0, k - 2) : k])


def _is_book(token: Token) -> bool:
    """`Should be`, and what ends so: `where it should be`, with a number behind it, judges nothing."""
    return "book" in token.classes or token.low.endswith(SHOULD_BE)


SHOULD_BE = (
    "should be", "ought to be", "supposed to be", "meant to be", "wants to be", "should have been", "should of",
    "shouldve",
)  # fmt: skip


def _after(i: int, scene: Scene, amounts: frozenset[int]) -> bool:
    """`Ten and thirteen, the book says`, `half an inch is proper`."""
    tokens = scene.tokens
    last = i
    for k in range(i + 1, min(i + 1 + REACH, len(tokens))):
        token = tokens[k]
        if k == i + 1 and "book" in token.classes and _closes(k, scene) and token.low.startswith(WANTERS):
            return not token.low.endswith("say")  # `thirty-six they want`
        if k == i + 1 and token.low in PRONOUNS and _wants(k + 1, scene):
            return True  # `twenty they should be`
        if token.kind == "stop" or token.low.startswith(("you", "they")):
            return False
        if k in amounts or token.classes & NUMBER:
            if not _listed(last, k, scene) or (k == last + 1 and _own(i, scene)):
                return False  # `I got three thou, three is what they want`
            last = k
        if "proper" in token.classes:
            return token.low.startswith("say") or all(t.low in ("and", "or") for t in tokens[i + 1 : last])
        if "book" in token.classes and (tokens[k - 1].low in ("=", "as", "per", "by") or _denied(k, scene)):
            return False  # `.12 = bk`: it is what the book says
        if "book" in token.classes:
            return not _governs_next(k, scene, amounts) and (token.clause == tokens[i].clause or _closes(k, scene))
    return False


def _own(i: int, scene: Scene) -> bool:
    """Whether a person tells right before the number that he read it."""
    return i > 0 and (_mine(i - 1, scene) or (i > 1 and _mine(i - 2, scene)))


def _wants(k: int, scene: Scene) -> bool:
    """Whether a word of the book ends the clause at token k."""
    if k >= len(scene.tokens) or "book" not in scene.tokens[k].classes:
        return False
    return k + 1 >= len(scene.tokens) or scene.tokens[k + 1].kind in ("stop", "comma") or _closes(k, scene)


WANTERS = ("they ", "you ", "it ", "you'", "is ")
PRONOUNS = frozenset("they it you she he".split())


def _governs_next(k: int, scene: Scene, amounts: frozenset[int]) -> bool:
    """`And it should be three to five`: the word of the book speaks of the number behind it."""
    for n in range(k + 1, min(k + REACH, len(scene.tokens))):
        token = scene.tokens[n]
        if token.kind == "stop" or _mine(n, scene):
            return False
        if n in amounts or (token.classes & NUMBER and n < k + BEHIND):
            return n < k + BEHIND or token.clause == scene.tokens[k].clause
    return False


def _closes(k: int, scene: Scene) -> bool:
    """Whether nothing but a verb of saying follows the word of the book in its sentence."""
    rest = scene.tokens[k + 1 : k + 4]
    return not rest or all(t.kind == "stop" or t.sense("reads") for t in rest[:1])


def _listed(k: int, i: int, scene: Scene) -> bool:
    """`two inlet, four exhaust`: numbers of one list share what governs the first."""
    between = scene.tokens[k + 1 : i]
    if any(t.low in SET_APART or (t.thing is not None and t.thing.kind == "fastener") for t in between):
        return False
    if any(t.low in ("ok", "okay", "fine") for t in between):
        return False
    if any(t.low in IT_IS for t in between):
        return False  # `should be thirty-five, she's eleven`
    if _taken_otherwise(k, i, scene):
        return False
    between = [t for t in between if t.low != "on"]  # `four on the inlets and six on the exhausts`
    return len(between) <= LISTED and not any(t.sense("reads", "copula", "did", "break") for t in between)


def _taken_otherwise(k: int, i: int, scene: Scene) -> bool:
    """Typed `idle 900 shd be 650, wot 4100`: how the second was taken stands before it alone, so it was read off."""
    between = scene.tokens[k + 1 : i]
    if not scene.typed or len(between) != 2 or between[0].kind != "comma" or not between[1].sense("how"):
        return False
    behind = scene.tokens[i + 1] if i + 1 < len(scene.tokens) else None
    return behind is None or not behind.sense("how")
