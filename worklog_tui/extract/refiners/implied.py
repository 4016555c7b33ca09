"""Work that a reading implies: a gap that was set was adjusted, a nut that was torqued was tightened, oil that was
measured in was filled.
"""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.finders.objects import plain
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing

ADJUSTED = frozenset({"gap", "turns", "angle", "speed"})
BY_LENGTH = ("float", "level", "height", "travel", "play", "tension", "sag", "slack", "deflection", "pedal")
"What a length is set of; other lengths are only sizes."
SCREWS = frozenset("screw screws scrw scrws scrs scr adjuster adjusters adj needle".split())
"What is set by turns; a turn of a nut or a bolt sets something else."
SAME_WORK = {
    "adjust": {"adjust", "replace", "fit", "tighten", "repair", "make"},
    "tighten": {"tighten", "fit", "replace"},
    "fill": {"fill", "replace", "fit"},
}


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, with the work that readings which were set imply and nobody said."""
    said = [d for d in drafts if d.kind == "work"]
    found: list[Draft] = []
    for draft in drafts:
        action = _action(draft, scene)
        if not action or draft.thing is None or _to_come(draft, scene):
            continue
        if not _said(said + found, draft, action) and not _beside(said, draft, action, scene):
            poured = action == "fill" and draft.thing.kind == "fluid"
            fields = {"action": action, "used": draft.thing.words if poured else ""}
            words = str(draft.fields.get("subject") or draft.thing.words)
            found.append(
                replace(
                    draft,
                    kind="work",
                    thing=plain(replace(draft.thing, words=words)),
                    fields=fields,
                    filled=draft.filled | {"action"},
                    trail=[f"implied by {draft.fields['role']}"],
                )
            )
    return drafts + found


def _to_come(draft: Draft, scene: Scene) -> bool:
    """Whether it is only said what will be done: `when the spring goes back it gets one more turn`."""
    before = scene.tokens[scene.clause(draft.main).start : draft.main]
    return any(t.low in ("when", "once", "when i", "once i", "after") for t in before)


def _action(draft: Draft, scene: Scene) -> str:
    """What was done where such a reading was set; empty where it tells of no work of this thing."""
    if draft.kind != "reading" or draft.fields["role"] != "set" or draft.thing is None:
        return ""
    quantity, thing = draft.fields["quantity"], draft.thing
    if "subject" in draft.filled and quantity not in ("turns", "gap", "angle"):
        return ""
    if quantity == "torque":
        told = thing.kind == "fastener" or scene.tokens[draft.main].amount is not None
        return "tighten" if told and thing.kind not in ("fluid", "quality") else ""
    if quantity == "turns" and thing.kind == "fastener" and not set(thing.words.lower().split()) & SCREWS:
        return ""
    if quantity == "turns" and set(thing.words.lower().split()) & scene.book.lists["never_turned"]:
        return ""
    if quantity == "volume":
        return "fill"
    if quantity == "length" and any(word in thing.words for word in BY_LENGTH):
        return "adjust"
    return "adjust" if quantity in ADJUSTED and thing.kind not in ("fluid", "tool", "material") else ""


def _beside(works: list[Draft], draft: Draft, action: str, scene: Scene) -> bool:
    """Whether such work is told in the clause of a figure whose subject is only guessed, or before it of a gap or a
    level: it is that work's figure.
    """
    clause = scene.tokens[draft.main].clause
    mine = (w for w in works if w.fields["action"] in SAME_WORK[action])
    return "subject" in draft.filled and any(
        scene.tokens[w.main].clause == clause or (w.thing is not None and w.thing.kind == "quality") for w in mine
    )


def _said(works: list[Draft], draft: Draft, action: str) -> bool:
    """Whether such work of the same thing stands in the sentence already."""
    assert draft.thing is not None
    return any(
        w.fields["action"] in SAME_WORK[action]
        and w.thing is not None
        and (w.thing.name == draft.thing.name or w.thing.words == draft.thing.words or _put_in(w, draft.thing))
        for w in works
    )


def _put_in(work: Draft, thing: Thing) -> bool:
    """Whether the thing is what was used: of `filled the tank with clean oil, nine litres`, the oil."""
    return bool({thing.words.lower(), thing.name} & set(str(work.fields.get("used", "")).lower().split()))
