"""What the log itself tells of how a reading was taken: after which work, as found, in which round of tightening."""

from __future__ import annotations

from itertools import pairwise

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.model import Fact, Reading, Work

ORDINALS = ("first", "second", "third", "fourth")
DOING = {
    "clean": "cleaning", "adjust": "adjusting", "tighten": "tightening", "repair": "repairing", "replace": "replacing",
    "lubricate": "oiling", "charge": "charging", "bleed": "bleeding", "flush": "flushing", "free": "freeing",
    "soak": "soaking",
}  # fmt: skip
"Work after which a second reading tells what it did."
AS_FOUND = frozenset({"turns"})
TOLD_ONCE = frozenset({"duration", "run_time", "thread", "mass", "volume", "turns", "ratio"})
BATTERIES = (6.0, 12.0, 24.0, 36.0, 48.0)
FLAT, CHARGED = 0.7, 1.1
"A battery stands at no more than this many times its name; above, something charges it (common practice)."


def stage(draft: Draft, drafts: list[Draft], scene: Scene) -> list[str]:
    """`Three goes, thirty, fifty and then sixty-five`: in which round it was tightened so far; the last has no name."""
    if draft.fields["quantity"] != "torque":
        return []
    row = [d for d in drafts if d.kind == "reading" and d.fields["quantity"] == "torque"]
    row = [d for d in row if isinstance(d.fields["value"], float)]
    if draft not in row or scene.book.taken.lists["stages"].isdisjoint(scene.lows()):
        return []
    rising = all(a.fields["value"] < b.fields["value"] for a, b in pairwise(sorted(row, key=lambda d: d.main)))
    nth = sum(d.main < draft.main for d in row)
    return [f"{ORDINALS[nth]} stage"] if rising and nth < min(len(row) - 1, len(ORDINALS)) else []


def side_of_top(draft: Draft, scene: Scene) -> list[str]:
    """`Four before`, `30 degrees before top dead centre`: on which side of it an angle of timing lies."""
    if draft.fields["quantity"] != "angle":
        return []
    lists = scene.book.taken.lists
    own = scene.said(draft.main, draft.main).lower().split()
    behind = [word for token in scene.tokens[draft.main + 1 : draft.main + 5] for word in token.low.split()]
    for words in (own, behind):
        for n in range(1, 5):
            told = " ".join(words[-n:] if words is own else words[:n])
            if told in lists["before_top"] or told in lists["after_top"]:
                return ["BTDC" if told in lists["before_top"] else "ATDC"]
    return []


def as_found(draft: Draft, scene: Scene) -> list[str]:
    """`It was three turns out`: how a screw was found."""
    if draft.fields["quantity"] not in AS_FOUND or draft.fields["role"] != "measured":
        return []
    before = {t.low for t in scene.tokens[max(0, draft.main - 4) : draft.main]}
    return [] if before.isdisjoint(scene.book.taken.lists["found_so"]) else ["as found"]


def at_rest(draft: Draft, scene: Scene) -> list[str]:
    """The volts of a battery of which nothing else is told: nothing draws on it and nothing charges it."""
    name = draft.thing.name if draft.thing is not None else ""
    if draft.fields["quantity"] != "voltage" or "battery" not in (name, draft.fields["subject"].lower()):
        return []
    value = draft.fields["value"]
    if not isinstance(value, float) or draft.fields["role"] != "measured" or scene.machine.fuel == "none":
        return []
    nominal = min(BATTERIES, key=lambda volts: abs(volts - value))
    return ["at rest"] if FLAT * nominal <= value <= CHARGED * nominal else []


def after_work(draft: Draft, drafts: list[Draft], scene: Scene) -> list[str]:
    """The second reading of a thing, other than the first, when something was done in between: `after cleaning`."""
    if draft.fields["role"] != "measured" or draft.fields["quantity"] in TOLD_ONCE:
        return []
    recent = scene.context.recent
    notes = {*scene.context.notes, recent[-1].main.note} if recent else set()
    done: tuple[str, str, str] | None = None
    for earlier in sorted((d for d in drafts if d.main < draft.main), key=lambda d: -d.main):
        if earlier.kind == "work" and earlier.fields["action"] in DOING and done is None:
            word = scene.tokens[earlier.main].low
            name = earlier.thing.name if earlier.thing is not None else ""
            done = earlier.fields["action"], _doing(word, earlier.fields["action"]), name
    for fact in reversed(recent):
        if fact.main.note not in notes:
            break
        if isinstance(fact, Work) and fact.action in DOING and done is None:
            fresh = fact.main.note in (*scene.context.notes[-1:], recent[-1].main.note)
            done = fact.action if fresh else "", _doing(fact.quote, fact.action), fact.name
        if isinstance(fact, Reading) and _is_same(fact, draft, done is not None and done[0] in CURES):
            told = done is not None and fact.value != draft.fields["value"]
            return [_after(*done[1:], draft)] if done is not None and told else []
    return []


def _doing(said: str, action: str) -> str:
    """What was done, by the verb that was said: `scraped` is scraping, whatever kind of work that is."""
    for word in said.lower().split():
        if word.endswith("ied") and len(word) > LEAST:
            return f"{word[:-3]}ying"
        if word.endswith("ed") and not word.endswith("eed") and len(word) > LEAST:
            return f"{word[:-2]}ing"
    return DOING[action]


LEAST = 4
"Letters of a word that may be such a verb."


CURES = frozenset({"clean", "repair", "tighten", "lubricate", "free"})
"Work after which one looks again at the same thing, without naming it anew."


def _is_same(fact: Fact, draft: Draft, cured: bool) -> bool:
    """Whether a reading is of the same thing; of what nobody named anew behind a cure too."""
    if not isinstance(fact, Reading) or fact.role != "measured" or fact.quantity != draft.fields["quantity"]:
        return False
    if fact.unit != draft.fields["unit"] or not fact.subject:
        return False
    if fact.subject.lower() == draft.fields["subject"].lower():
        return True
    return cured and "subject" in draft.filled and draft.thing_at is None


def _after(doing: str, part: str, draft: Draft) -> str:
    subject = draft.fields["subject"].lower()
    same = not part or part.lower() in subject or subject in part.lower()
    return f"after {doing}" if same else f"after {doing} the {part.removeprefix('the ')}"
