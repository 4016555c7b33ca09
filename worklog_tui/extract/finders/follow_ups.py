"""Follow-ups: what must be come back to, and why."""

from __future__ import annotations

from worklog_tui.extract.finders.left_in import left_in
from worklog_tui.extract.finders.owed_thing import returnable, thing_talked_of
from worklog_tui.extract.finders.several import first_member
from worklog_tui.extract.finders.without_duty import without_duty
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.listing import LISTS
from worklog_tui.extract.things.subjects import earlier, remembered
from worklog_tui.extract.tokens import Token
from worklog_tui.model import Finding

LONGEST = 9
FARTHEST = 24
"Tokens from an `if` to its `then`."


def draft(match: Match, scene: Scene) -> Draft | None:
    """The follow-up of a match: what it is about, in the speaker's words, and the reason."""
    gives = match.rule.gives
    if not _in_its_list(str(gives["reason"]), match, scene):
        return None
    topic = str(gives["topic"])
    buys = _buys(match, scene)
    if buys and "thing" in match.slots:
        topic = "<thing>"
    slots = [match.slots[s.strip("<>")] for s in topic.split() if s.strip("<>") in match.slots]
    made = Draft("follow_up", match.first, match.last - 1, match.rule, {}, confidence=match.rule.confidence,
                 first_used=match.first, last_used=match.last - 1)  # fmt: skip
    if topic == "clause":
        words = "" if _unreal(match, scene) else _rest(match, scene, made)
    elif topic == "list":
        made.main, made.thing = match.last, first_member(scene, match.last)
        words = made.thing.words if made.thing else ""
    elif slots:
        made.main, made.last = min(slots), max(slots)
        made.thing = next((scene.tokens[k].thing for k in slots if scene.tokens[k].thing), None)
        words = without_duty(scene, made)
        if made.thing is None:
            talked = thing_talked_of(match, scene, made)
            words = f"{talked.words} {words}" if talked else words if " the " in words else ""
            made.thing = talked
    else:
        made.thing = thing_talked_of(match, scene, made)
        words = made.thing.words if made.thing else ""
    if not words or _is_a_time(made, scene) or _of_its_working(match, scene):
        return None
    reason = _reason(made, match, scene, buys)
    if not reason:
        return None
    if "topic" in made.filled:
        made.confidence -= 0.04 if gives["reason"] == "left" and _points_back(match, scene) else 0.08
    made.fields = {"topic": words, "reason": reason, "name": made.thing.name if made.thing else ""}
    return made


def _reason(made: Draft, match: Match, scene: Scene, buys: bool) -> str:
    """The reason of a follow-up; empty where the words raise nothing after all."""
    reason = "part needed" if buys else str(match.rule.gives["reason"])
    if reason in ("listed", VIEWERS):
        reason = scene.context.listing
    if reason in ("part needed", "temporary") and made.thing is not None and made.thing.kind == "tool":
        return ""
    if reason == "temporary" and left_in(scene, match.first):
        return "to do"
    if reason == "temporary" and _on_a_list(match, scene):
        return ""
    if reason == LET_BE:
        return "fault" if _just_found_bad(made, match, scene) else ""
    if reason == "left":
        return "fault" if _is_bad(made, scene) or _let_be(match, scene) else "to do"
    return reason


def _on_a_list(match: Match, scene: Scene) -> bool:
    """`It's on the list for now`, `ok for now but it wants a new one`, `tappets cold for now`: nothing was patched."""
    before = scene.tokens[match.first - 1] if match.first else None
    if before is None or not scene.tokens[match.first].low.endswith(" now"):
        return False
    return before.low in ("cold", "hot") or before.sense("shopping", "jobs", "good") is not None


def _is_a_time(made: Draft, scene: Scene) -> bool:
    """Whether what is named tells when: `I'll look again at the end`."""
    said = scene.said(max(0, made.main - 2), made.main).lower().split()
    return made.last == made.main and said[-3:-1] == ["at", "the"] and said[-1] in scene.book.lists["when_named"]


def _of_its_working(match: Match, scene: Scene) -> bool:
    """Whether the words say what a part does by its nature: `the engine's supposed to drop to a tickover`."""
    tokens, k = scene.tokens, match.first - 1
    if tokens[match.first].low != "supposed to" or "be" in [t.low for t in tokens[match.first : match.last]]:
        return False
    while k >= 0 and tokens[k].sense("copula"):
        k -= 1
    return k >= 0 and (tokens[k].thing is not None or tokens[k].low in ("its", "it", "thats", "that", "theyre", "they"))


VIEWERS = "put to viewers"
LET_BE = "left faulty"
"A fault that is let be; nothing where nothing was found bad."
ASKS = frozenset("did does do is are was can may should which what how where who why has have would".split())


def _in_its_list(reason: str, match: Match, scene: Scene) -> bool:
    """Whether a member of a list stands in one, and a question to the viewers after its announcement."""
    if reason == VIEWERS:
        asked = match.first == 0 or scene.tokens[-1].low == "?"
        first = not any("asked" in t.classes or t.low in ASKS for t in scene.tokens[: match.first])
        return scene.context.listing == "question" and asked and first
    if reason == "listed" and any(t.sense("copula", "did", "bad") for t in _member(match, scene) if t.thing is None):
        return False  # what is told of a thing is no member of a list
    return reason != "listed" or scene.context.listing in LISTS


def _member(match: Match, scene: Scene) -> list[Token]:
    """The words of a member of a list, without what is told aside behind a comma."""
    end = next((k for k in range(match.first, match.last) if scene.tokens[k].kind == "comma"), match.last)
    return scene.tokens[match.first : end]


def _buys(match: Match, scene: Scene) -> bool:
    """Whether what is to be done is to order something: a part is needed then."""
    return "act" in match.slots and any(s.name == "order" for s in scene.tokens[match.slots["act"]].senses)


def _unreal(match: Match, scene: Scene) -> bool:
    """Whether the words say what would have been."""
    tokens = scene.tokens[match.first : match.last]
    return any(t.low == "had" or "would" in t.stances for t in tokens) or (
        match.rule.gives["reason"] == "fallback" and len(tokens) > 1 and tokens[-2].low in ("so", "but")
    )


def _is_bad(made: Draft, scene: Scene) -> bool:
    """Whether the thing was just found bad: in this sentence, or by a finding of the last notes."""
    if made.thing is None:
        return False
    if any(t.sense("bad") and "not" not in t.stances for t in scene.tokens):
        return True
    return any(
        isinstance(f, Finding) and f.verdict == "bad" and f.name == made.thing.name for f in scene.context.recent
    )


def _just_found_bad(made: Draft, match: Match, scene: Scene) -> bool:
    """Whether the last thing told of it, or of anything, was that it is bad."""
    if made.thing is None or scene.tokens[-1].low == "!":
        return False
    here = any(t.sense("bad") and "not" not in t.stances for t in scene.tokens[: match.first])
    last = scene.context.recent[-2:]
    return here or any(isinstance(f, Finding) and f.verdict == "bad" and f.name == made.thing.name for f in last)


def _points_back(match: Match, scene: Scene) -> bool:
    """Whether the words point at what was talked of: `skip it`, `I'll leave that`; not `next time`, `a winter job`."""
    return any(word in scene.said(match.first, match.last - 1).lower().split() for word in ("it", "that", "those"))


def _let_be(match: Match, scene: Scene) -> bool:
    """Whether the words leave it as it is: `I'll leave that for a wet day`; `next time` only puts it off."""
    words = scene.said(match.first, match.last - 1).lower()
    return any(word in words for word in ("leav", "not doing", "live with", "living with"))


def _rest(match: Match, scene: Scene, made: Draft) -> str:
    """The words after the match up to the end of the sentence, at most a few; what was talked of in front when not
    said.
    """
    first = match.slots.get("from", match.last)
    if made.rule.gives["reason"] == "fallback":
        span = range(match.first, _stop(scene, match.first))
        first = next((k + 1 for k in span if scene.tokens[k].low == "then"), first)
    while first < len(scene.tokens) and (
        scene.tokens[first].kind in ("comma", "stop")
        or scene.tokens[first].low in SKIPPED
        or scene.tokens[first].low in GUESSED
        or (made.rule.gives["reason"] == "fallback" and scene.tokens[first].sense("plan"))
    ):
        first += 1
    last = first
    while last < len(scene.tokens) and last - first < LONGEST and not _ends(scene, first, last):
        last += 1
    if last - first > 1 and scene.tokens[last - 1].low in OPENERS and not _closes(scene, last):
        last -= 1  # the word with which the next thought opens
    if last == first:
        return ""
    made.main, made.last = first, last - 1
    made.thing = next((scene.tokens[k].thing for k in range(first, last) if scene.tokens[k].thing), None)
    words = scene.said(first, last - 1)
    if made.rule.gives["reason"] == "fallback" and not _names_work(scene, first, last):
        return ""
    if made.rule.gives["reason"] == "question":
        points = any(t.low in POINTING for t in scene.tokens[match.last : first])
        k = earlier(scene, match.first, returnable)
        thing = scene.tokens[k].thing if k is not None else remembered(scene, returnable, fresh=int(not points))
        if thing is not None and (made.thing is None or (points and thing.words not in words)):
            made.thing = made.thing or thing
            words = f"{thing.words}: {words}"
    return words


def _closes(scene: Scene, k: int) -> bool:
    """Whether a sentence ends before token k."""
    return k >= len(scene.tokens) or scene.tokens[k].kind == "stop"


def _stop(scene: Scene, first: int) -> int:
    """The index of the stop after token first, at most some tokens on."""
    end = min(len(scene.tokens), first + FARTHEST)
    return next((k for k in range(first, end) if scene.tokens[k].kind == "stop"), end)


def _comes_off(low: str) -> bool:
    return low.split()[-1:] in (["off"], ["out"], ["apart"])


def _names_work(scene: Scene, first: int, last: int) -> bool:
    """Whether the words name something that could be done or gone after."""
    tokens = scene.tokens[first:last]
    told = any(t.thing is not None or t.sense("do", "doing", "cause", "did") or _comes_off(t.low) for t in tokens)
    return told or (last == first + 1 and not tokens[0].sense("filler", "pronoun", "break"))


def _ends(scene: Scene, first: int, k: int) -> bool:
    """Whether what is to be done ends before token k: at a stop, a question, a new thought."""
    token = scene.tokens[k]
    return token.kind == "stop" or bool(token.sense("whoknows")) or (
        k > first and token.clause != scene.tokens[k - 1].clause
    )  # fmt: skip


OPENERS = frozenset("right so okay ok well anyway now".split())
POINTING = frozenset("it its that thats this".split())
"With these a question is of what was told before: `is that the sender or the earth?`."
GUESSED = frozenset({"i guess", "i suppose", "i reckon", "i think", "guess", "suppose", "reckon"})
SKIPPED = frozenset(
    (
        "if that thats its is it know whether can you get just so for of lot guys tell me this on the then ill im i "
        "but and well"
    ).split()
)
