"""What a verb was done to when its rule names nothing: `cleaned it`, `snugged them up`, `topped up`, `bled the lot`."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from worklog_tui.extract.context import SUBJECT_LIFE
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.salience import salience
from worklog_tui.extract.things.subjects import as_thing, nearest
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Finding, Reading

Found = tuple[Thing | None, int | None]
POURED = frozenset({"drain", "fill", "flush", "bleed"})
HELD, HOLDS = frozenset({"drain", "fill"}), frozenset({"volume", "pressure"})
"What is drained or filled holds something."
SET = frozenset({"adjust"})
ADJUSTABLE = frozenset(
    (
        "gap gaps clearance clearances timing speed idle tickover tension level height play lash mixture tracking "
        "pressure free travel alignment dwell advance preload lift tilt"
    ).split()
)
"A gap, a timing, a level is adjusted; nothing else is done to it."
NEVER = frozenset({"quality", "machine", "tool", "unknown"})
MANY = frozenset("them em those these both all each everything they".split())
ONE = frozenset("it that this her him she one".split())
PREFERRED = {
    "drain": ("fluid",), "fill": ("fluid",), "tighten": ("fastener",), "charge": ("battery",),
    "order": ("part", "joint", "fastener"), "replace": ("part", "joint", "fastener"), "free": ("fastener", "control"),
}  # fmt: skip
"Kinds or names of what an action is done to first of all."
SOFT = frozenset({"joint"})
"What is not filed, lapped or honed."
BLED = ("brake", "fuel", "cool", "hydraulic", "clutch")
"Systems that air is let out of."


def stated(scene: Scene, at: int) -> int | None:
    """The index of the thing of the clause that a verb without pronoun is said of."""
    poured = bool(_actions(scene, at) & POURED)
    return nearest(scene, at, _poured if poured else _workable, before_first=False)


def meant(scene: Scene, at: int, match: Match) -> Found:
    """What `it` or nothing at all stands for: the likeliest of the things said before, with its index."""
    told = str(match.rule.gives["action"])
    actions = _actions(scene, at) if told.startswith("<") else frozenset({told})
    said = {t.low for t in scene.tokens[match.first : match.last]}
    many = True if said & MANY or "lot" in " ".join(said) or "pair" in " ".join(said) else False if said & ONE else None
    best: tuple[float, Thing | None, int | None] = (FLOOR, None, None)
    heading = as_thing(scene.context.heading) if scene.context.heading is not None else None
    wrong = _wrong(scene) if actions & MENDS else ""
    measured = _measured(scene) if actions <= SETS else ""
    for place, thing, k in _candidates(scene, at, match):
        if actions <= SETS and thing.name in scene.book.lists["never_set"]:
            continue  # `the faces are clean. Opened up to eighteen`
        if _fits(thing, actions, headed=k is None and thing == heading):
            score = place + _suits(thing, actions) + _agrees(thing, many)
            score += FAULTY * (k is None and thing.words.lower() == wrong)
            score += MEASURED * (k is None and bool(measured) and measured in (thing.words.lower(), thing.name))
            if score >= best[0] if k is not None else score > best[0]:
                best = (score, thing, k)
    return best[1], best[2]


FLOOR = -5.0
MENDS = frozenset({"repair", "clean", "free", "adjust", "tighten", "replace", "order"})
FAULTY = 0.8
"What is gained by the part in which the last fault was found: it is that which is put right."


def _wrong(scene: Scene) -> str:
    """The part of the last fault that was told in this note or the two before."""
    older = set(scene.context.notes[:-2])
    found = (f for f in reversed(scene.context.recent) if isinstance(f, Finding) and f.main.note not in older)
    last = next(found, None)
    return last.part.lower() if last is not None and last.verdict == "bad" else ""


def wrong_now(scene: Scene, at: int | None) -> bool:
    """Whether a fault of the thing at a token is told in the same breath: `the gib's loose, so adjust it` is what the
    speaker does.
    """
    return at is not None and any(t.sense("bad") for t in scene.tokens[at + 1 : at + 1 + NEAR])


NEAR = 6
"Tokens behind a thing within which its fault is told."
SETS = frozenset({"adjust"})
MEASURED = 1.6
"What is gained by the thing on which the last figure was taken: it is that which is set anew."


def _measured(scene: Scene) -> str:
    """The thing of which the last setting was read off in this note or the two before; empty without one."""
    older = set(scene.context.notes[:-2])
    read = (f for f in reversed(scene.context.recent) if isinstance(f, Reading) and f.main.note not in older)
    last = next((f for f in read if f.quantity in SETTINGS), None)
    return last.subject.lower() if last is not None else ""


SETTINGS = frozenset({"gap", "angle", "turns", "speed", "length", "pressure"})


def inside(scene: Scene, at: int) -> Thing | None:
    """What the verb itself names: `set the points`, `take the lead off`, `go round the head bolts`."""
    words = scene.tokens[at].low.split()
    actions = _actions(scene, at)
    articles = next((INSIDE[a] for a in actions if a in INSIDE), ("the",))
    first = next((n + 1 for n, word in enumerate(words) if word in articles), 0)
    if not first or "start" in actions:
        return None
    for last in range(len(words), first, -1):
        said = " ".join(words[first:last])
        if words[last - 1] in TANGS and (meant_by := _float(scene)) is not None:
            return meant_by
        for cls, name, kind, per, _, _, system in scene.book.table.get(said, ()):
            if cls == "part" and kind not in ("tool", "machine", "material") and name != "air":
                return Thing(said, name, kind, "", said, per, (), system)
    return None


def has_its_own(scene: Scene, k: int) -> bool:
    """Whether a verb has an object from token k on that is no known part: `the chuck's fine, I filed the whatsit`;
    dirt that was cleaned off lay on the part.
    """
    after = scene.tokens[k : k + 2]
    if len(after) < 2 or after[0].low not in NAMED:
        return False
    if after[1].thing is not None:
        return True
    known = after[1].low in WHOLE or after[1].sense("foreign", "bad", "side", "all", "degree")
    return after[1].low.isalpha() and not known


NAMED = frozenset("the this my our".split())
WHOLE = frozenset(
    "whole lot rest inside insides outside worst two pair other others same end ends old new one ones".split()
)
INSIDE = {"make": ("the", "a", "an"), "test": ("the", "a", "for")}
"After which words of a verb its object stands: `cut a gasket`, `check for spark`."


def _float(scene: Scene) -> Thing | None:
    """The float that the talk is about: bending its tang sets its level."""
    said = (scene.tokens[k].thing for k in reversed(scene.things(range(len(scene.tokens)))))
    things = [*(t for t in said if t is not None), *map(as_thing, scene.context.things)]
    return next((t for t in things if "float" in t.words.lower().split()[:1]), None)


TANGS = frozenset("tang tag tab".split())


def _candidates(scene: Scene, at: int, match: Match) -> Iterator[tuple[float, Thing, int | None]]:
    """Things with how near and how much talked of they are: those of the sentence, then those of earlier ones."""
    clause = scene.tokens[at].clause
    for k in scene.things(range(at)):
        thing = scene.tokens[k].thing
        if thing is not None and not match.first <= k < at:
            weight, back = salience(scene, k), clause - scene.tokens[k].clause
            if scene.tokens[k + 1].sense("copula"):
                weight = max(weight, 1)  # it is spoken of
                thing = thing if thing.known else replace(thing, kind="part")
            yield (3.0 if weight > 0 else 2.0 if weight > ASIDE else -1.0) - BACK * min(back, FAR), thing, k
    for n, subject in enumerate(scene.context.things):
        if subject.age <= SUBJECT_LIFE:
            yield 1.7 - 0.3 * n - 0.2 * subject.age, as_thing(subject), None
    if scene.context.heading is not None:
        stands = 0.9 if _actions(scene, at) & {"order", "test"} and scene.context.heading.age <= 4 else 0.0
        stands += 0.4 * (scene.context.heading.age == 0)
        yield 1.5 + stands - 0.2 * scene.context.heading.age, as_thing(scene.context.heading), None


BACK, FAR = 0.2, 5
"What a clause takes from a thing of the sentence, and how many of them do."
ASIDE = -3
"Salience of what is only mentioned beside."


def _actions(scene: Scene, at: int) -> frozenset[str]:
    return frozenset(s.name for s in scene.tokens[at].senses if s.cls in ("did", "do", "does", "doing"))


def _fits(thing: Thing, actions: frozenset[str], headed: bool) -> bool:
    """Whether such things are worked on so; a machine only when the talk is headed by it: `Generator. Stripped it.`"""
    if thing.kind == "quality":
        words = set(thing.words.lower().split())
        return (actions <= SET and bool(words & ADJUSTABLE)) or (bool(actions & POURED) and bool(words & LEVELS))
    if thing.kind in NEVER and not (headed and thing.kind == "machine"):
        return False
    if actions & POURED:
        return _poured(thing)
    return thing.kind not in ("fluid", "material")


def _suits(thing: Thing, actions: frozenset[str]) -> float:
    """How well a thing suits what was done."""
    score = -0.4 if thing.loose else 0.0 if thing.name else -1.0
    if actions & HELD and thing.kind != "fluid" and not HOLDS & set(thing.quantities):
        score -= 1.0
    if actions & POURED and thing.name == "solvent":
        score -= 1.0  # `swilled it out with paraffin and drained it`: it was not the paraffin that held the dirt
    for action in actions:
        kinds = PREFERRED.get(action, ())
        if thing.kind in kinds or thing.name in kinds or ("fluid" in kinds and "volume" in thing.quantities):
            score += 1.2
        if action == "bleed" and any(word in thing.system for word in BLED):
            score += 2.0
        if action == "repair" and thing.kind in SOFT:
            score -= 0.6
    return score


def _agrees(thing: Thing, many: bool | None) -> float:
    """`Them` means several, `it` mostly one."""
    if many is None:
        return 0.0
    plural = bool(thing.also) or (thing.words.lower().endswith("s") and not thing.words.lower().endswith("ss"))
    return (0.8 if plural else -0.8) if many else (-0.5 if plural else 0.2)


def _poured(thing: Thing) -> bool:
    """What is drained or filled: a fluid, or what holds it."""
    return thing.kind in ("fluid", "part", "joint") or "volume" in thing.quantities


def _workable(thing: Thing) -> bool:
    return thing.kind not in NEVER


def plain(thing: Thing) -> Thing:
    """A filled thing by its plain name: `10w30` is engine oil, `gearbox level` the gearbox."""
    words = thing.words.split()
    if thing.name == "dipstick":
        return replace(thing, words="engine oil", name="engine oil", kind="fluid")
    if thing.kind == "fluid" and thing.name and (any(c.isdigit() for c in thing.words) or words[-1] in GRADES):
        return replace(thing, words=thing.name)
    if len(words) > 1 and words[-1].lower() in LEVELS:
        return replace(thing, words=" ".join(words[:-1]))
    return thing


GRADES = frozenset("mix weight grade straight".split())
LEVELS = frozenset("lvl lev level levels".split())
