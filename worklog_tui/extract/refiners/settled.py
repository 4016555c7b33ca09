"""What was put right: after `two degrees, should be six`, the six that follows an adjustment was set."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading
from worklog_tui.model.facts import Value

SETTABLE = frozenset({"gap", "angle", "speed", "length", "turns"})
POINTS = ("cut-in", "cut-out")
"Pressures that are set."
NOTES = 6
"Notes back in which the figure as found, and the one of the book, were told."
LIKE = 0.02
NOW = frozenset("now nw there".split())
ALREADY = frozenset("still stil again agn recheck rechecked lapped".split())
MOVES = frozenset({"adjust", "tighten", "free", "fit", "replace", "move"})
TURNED = frozenset(
    (
        "bend bent twist twisted screw screwed turn turned move moved knock knocked wind wound tap tapped ease eased "
        "nip nipped slacken slackened loosen loosened tighten tightened set shim shimmed slid slide backed open "
        "opened close closed tight up in out down"
    ).split()
)


@dataclass(frozen=True, slots=True)
class Told:
    """A value told before: its role, and what it was of."""

    value: Value
    role: str
    subject: str
    name: str = ""


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The readings, those that tell the outcome of an adjustment as set."""
    done: list[Draft] = []
    adjusted = [d for d in drafts if d.kind == "work" and d.fields["action"] == "adjust"]
    for draft in drafts:
        if draft.kind != "reading":
            continue
        if draft.fields["role"] == "measured" and _came_of_it(draft, adjusted, done, scene):
            draft.fields["role"] = "set"
            draft.trail.append("set: it was adjusted to that")
        if draft.fields["role"] == "measured" and _settable(draft) and _is_outcome(draft, done, scene):
            draft.fields["role"] = "set"
            draft.trail.append("set: told after what it was and what it should be")
        if draft.fields["role"] == "set" and _settable(draft):
            _of_what_was_off(draft, done, scene)
        done.append(draft)
    return drafts


def _of_what_was_off(draft: Draft, done: list[Draft], scene: Scene) -> None:
    """`Needle bar should be two up, it's at 3.5. Slackened the clamp, reset to two`: of the bar, not of the clamp."""
    at, mine = draft.thing_at, str(draft.fields["subject"]).lower().split()
    if at is not None and not any(t.kind == "comma" for t in scene.tokens[at : draft.main]):
        return
    before = list(_told(draft, done, scene))
    wanted = next(
        (t for t in reversed(before) if t.role == "specified" and _off(draft.fields["value"], t.value) == 0), None
    )
    off = wanted is not None and any(
        t.role == "measured" and t.subject == wanted.subject and _off(t.value, wanted.value) > 0 for t in before
    )
    if wanted is not None and off and wanted.subject and not _alike(mine, wanted.subject.lower().split()):
        draft.fields["subject"], draft.thing = wanted.subject, Thing(wanted.subject, wanted.name, "part")
        draft.thing_at = None
        draft.filled.add("subject")
        draft.trail.append(f"of {wanted.subject}: it was off, and was brought to what it should be")


def _alike(mine: list[str], theirs: list[str]) -> bool:
    """Whether two names are of one thing: by the last word, or one within the other."""
    return mine[-1:] == theirs[-1:] or set(mine) <= set(theirs) or set(theirs) <= set(mine)


def _came_of_it(draft: Draft, adjusted: list[Draft], done: list[Draft], scene: Scene) -> bool:
    """`Twisted the distributor and it's at fourteen now`, `valves are all done, ten thou`: what the work came to."""
    if not (_settable(draft) or draft.fields["quantity"] in ("pressure", "voltage")) or _says(draft, scene, ALREADY):
        return False
    work = [w for w in adjusted if w.main < draft.main and "plan" not in scene.tokens[w.main].stances]
    if not work or any(d.main > work[-1].main and d.main < draft.main for d in done):
        return False
    between = scene.tokens[work[-1].last + 1 : draft.main]
    words = {w for t in between for w in t.low.split()}
    return len(between) <= FAR and not words & FOUND and not any(t.kind == "stop" or t.sense("break") for t in between)


FAR = 12
"Tokens from a piece of work to the figure that it came to."
FOUND = frozenset("was were found still when before had wants should measured".split())


def _settable(draft: Draft) -> bool:
    quantity, subject = draft.fields["quantity"], str(draft.fields["subject"])
    return quantity in SETTABLE or (quantity == "pressure" and subject in POINTS)


def _is_outcome(draft: Draft, done: list[Draft], scene: Scene) -> bool:
    if _says(draft, scene, ALREADY) or "load" in str(draft.fields["condition"]):
        return False
    before, value = list(_told(draft, done, scene)), draft.fields["value"]
    found = [t for t in before if t.role == "measured" and not _within(t.value, value) and _of_it(t, draft)]
    wanted = [t for t in before if t.role == "specified"]
    if not found:
        return False
    if any(_within(value, t.value) and not _within(found[-1].value, t.value) for t in wanted):
        return True
    nearer = any(_off(value, t.value) < _off(found[-1].value, t.value) for t in wanted)
    now, moved = _says(draft, scene, NOW), _moved(draft, done, scene)
    return (nearer and (now or moved)) or (now and moved)


def _told(draft: Draft, done: list[Draft], scene: Scene) -> Iterator[Told]:
    """The values of the same quantity told before, in this sentence and in the last notes."""
    quantity, unit = draft.fields["quantity"], draft.fields["unit"]
    old = set(scene.context.notes[:-NOTES])
    for fact in scene.context.recent:
        if isinstance(fact, Reading) and fact.quantity == quantity and fact.unit == unit and fact.main.note not in old:
            yield Told(fact.value, fact.role, fact.subject, fact.name)
    for other in done:
        if other.fields["quantity"] == quantity and other.fields["unit"] == unit:
            name = other.thing.name if other.thing is not None else ""
            yield Told(other.fields["value"], other.fields["role"], other.fields["subject"], name)


def _moved(draft: Draft, done: list[Draft], scene: Scene) -> bool:
    """Whether something was turned, bent or moved between the last number and this one."""
    first = max((d.main for d in done if d.main < draft.main), default=-1)
    words = {w for t in scene.tokens[first + 1 : draft.main] for w in t.low.split()}
    return bool(words & TURNED) or any(
        s.cls in ("did", "doing", "does", "do") and s.name in MOVES
        for t in scene.tokens[first + 1 : draft.main]
        for s in t.senses
    )


def _says(draft: Draft, scene: Scene, words: frozenset[str]) -> bool:
    near = scene.tokens[max(0, draft.main - 4) : draft.main + 3]
    return any(words & set(t.low.split()) for t in near if t.kind != "stop")


def _of_it(told: Told, draft: Draft) -> bool:
    """Whether a value told before is of the same thing, as far as the words tell."""
    mine, theirs = set(str(draft.fields["subject"]).lower().split()), set(told.subject.lower().split())
    return "subject" in draft.filled or mine <= theirs or theirs <= mine


def _ends(value: Value) -> tuple[float, float]:
    if isinstance(value, str):
        return 0.0, 0.0
    return value if isinstance(value, tuple) else (value, value)


def _within(value: Value, span: Value) -> bool:
    """Whether a value lies within another one, both perhaps ranges, give or take a little."""
    (low, high), (least, most) = _ends(value), _ends(span)
    return low >= least - LIKE * abs(least) - 1e-9 and high <= most + LIKE * abs(most) + 1e-9


def _off(value: Value, span: Value) -> float:
    """How far a value lies outside another one."""
    (low, high), (least, most) = _ends(value), _ends(span)
    return max(least - low, high - most, 0.0)
