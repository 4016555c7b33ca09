"""How far a state goes: `a bit brown` is only noted, `works when it likes` is no praise, and a knock that is gone is
good news.
"""

from __future__ import annotations

from worklog_tui.extract.said import says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token

BACK = 3
"Tokens before a colour in which `a bit` may stand."
AHEAD = 3
"Tokens behind a praise in which it may be taken back."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, the verdicts of findings as their degree has it."""
    for draft in drafts:
        if draft.kind != "finding":
            continue
        verdict = _verdict(draft, scene)
        if verdict and verdict != draft.fields["verdict"]:
            draft.fields["verdict"] = verdict
            draft.trail.append(f"{verdict} by how far it goes")
    return drafts


def _verdict(draft: Draft, scene: Scene) -> str:
    """The verdict that the degree of a state gives it; empty where it tells nothing."""
    token, verdict = scene.tokens[draft.main], draft.fields["verdict"]
    if verdict == "bad" and token.sense("gone") and _trouble(draft, scene):
        return "good"
    if verdict == "bad" and token.sense("colour") and any(t.sense("little") for t in _before(draft, scene)):
        return "noted"
    if verdict == "good" and token.sense("works_well", "function") and _taken_back(draft, scene):
        return "bad"
    if verdict == "bad" and _let_pass(draft, scene):
        return "noted"
    return ""


def _let_pass(draft: Draft, scene: Scene) -> bool:
    """`A bit worn but they'll do`, `black, but that's to be expected`, `a little carbon, nothing unusual`."""
    at = draft.last + 1
    for k in range(at, min(at + PASS, len(scene.tokens))):
        if scene.tokens[k].kind == "stop":
            return False
        if says(scene, "let_pass", k, 5):
            return True
    return False


PASS = 8
"Tokens behind a trouble within which it may be let pass."


def _trouble(draft: Draft, scene: Scene) -> bool:
    """Whether what is gone was a trouble: a smoke, a shake, a growl."""
    k = draft.thing_at
    if k is None or "part" in draft.filled:
        return False
    last = scene.tokens[k].low.rpartition(" ")[2]
    senses = (*scene.book.table.get(last, ()), *scene.book.table.get(last.removesuffix("s"), ()))
    return any(s[0] in ("comes_and_goes", "trouble") for s in senses)


def _before(draft: Draft, scene: Scene) -> list[Token]:
    first = scene.clause(draft.main).start
    return scene.tokens[max(first, draft.main - BACK) : draft.main]


def _taken_back(draft: Draft, scene: Scene) -> bool:
    """`Only works if you swear`, `works a little`, `runs when it likes`."""
    before, after = _before(draft, scene), scene.tokens[draft.last + 1 : draft.last + 1 + AHEAD]
    if any(t.kind in ("stop", "comma") for t in after):
        after = after[: next(n for n, t in enumerate(after) if t.kind in ("stop", "comma"))]
    if before and before[-1].low in ("only", "just") and any(t.low in ("if", "when", "on", "once") for t in after[:1]):
        return True
    return bool(after) and after[0].sense("limits") is not None
