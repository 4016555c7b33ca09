"""Work: what was done, to what, and with what."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from worklog_tui.extract.finders.doers import bought_once, by_others, listed, only_built, put_away, to_come
from worklog_tui.extract.finders.means import used
from worklog_tui.extract.finders.no_deed import no_deed
from worklog_tui.extract.finders.objects import has_its_own, inside, meant, plain, stated, wrong_now
from worklog_tui.extract.finders.senses import suits
from worklog_tui.extract.finders.standing import by_turns, joined, only_stands, turned
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.subjects import as_thing
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading
from worklog_tui.rulebook import Sense

FORMS = ("did", "doing", "does", "do")
LABELLED = frozenset(
    ("remove strip clean check test replace fit adjust repair drain fill flush lubricate soak bleed make order "
     "connect disconnect charge start free tighten").split()
)  # fmt: skip


def draft(match: Match, scene: Scene) -> Draft | None:
    """The work of a match; None when the verb has no action for this object."""
    gives, at = match.rule.gives, _place(match)
    if at is None or not _told_so(gives, at, scene) or to_come(match, scene) or listed(match, scene):
        return None
    made = Draft(
        "work",
        at,
        at,
        match.rule,
        {},
        confidence=match.rule.confidence - (TYPED_DOUBT if gives.get("spoken") and scene.typed else 0),
        first_used=match.first,
        last_used=match.last - 1,
    )
    if not _object(made, match, scene) or (gives.get("standing") and only_stands(made, scene)):
        return None
    action, sense = gives["action"], None
    if action.startswith("<"):
        sense = action_for(scene.tokens[at].senses, made.thing)
        action = sense.name if sense is not None else ""
    if gives.get("standing") and made.thing is not None:
        action = "adjust" if turned(made, scene) else joined(action, made, scene)
    if action == "start" and made.thing is not None and made.thing.kind != "machine":
        if not made.rule.gives.get("it"):
            return None
        made.thing, made.thing_at = scene.engine(), None
    action = "adjust" if by_turns(made, action, scene) else _sensible(action, made.thing)
    if action not in LABELLED or action in gives.get("never", ()) or no_deed(made, action, scene):
        return None
    if _is_its_state(made, scene) or only_built(made, action, scene) or _of_a_test(made, action, scene):
        return None
    if bought_once(scene, made.main, action) or put_away(scene, made.main, action):
        return None
    if action == "bleed" and "part" in made.filled:
        made.thing = _bled(made.thing, scene)
    _bathed(made, action)
    made.fields = {"action": action, "used": made.fields.get("used") or used(made, match, scene, sense, action)}
    if action in ("fill", "drain"):
        _poured(made, action, scene)
    return made


def _poured(made: Draft, action: str, scene: Scene) -> None:
    """Names what was filled or drained plainly; `topped it up with coolant` is coolant."""
    if made.thing is None:
        return
    made.thing = plain(made.thing)
    if action == "fill" and "part" in made.filled and _is_fluid(made.fields["used"], scene):
        made.thing = replace(made.thing, words=made.fields["used"])


def _place(match: Match) -> int | None:
    """The index of the word that says what was done."""
    gives = match.rule.gives
    return match.slots.get(gives.get("at", gives["action"]).strip("<>"))


def _told_so(gives: dict[str, Any], at: int, scene: Scene) -> bool:
    """Whether the rule may say it here: a verb, of the speaker's own work, and typed where only typing says it so."""
    if (gives.get("typed") and not scene.typed) or _is_noun(scene, at):
        return False
    return bool(gives.get("passive")) or not by_others(scene, at)


LEADS = ("wire", "lead", "connector", "terminal")
OF_LEADS = {"fit": "connect", "remove": "disconnect"}  # said of a wire or its end
NO_WORK = frozenset({("material", "fit"), ("quality", "remove")})  # `pressure is off` takes nothing off
SET = ("clearance", "tappet", "gap", "timing")


def _is_its_state(made: Draft, scene: Scene) -> bool:
    """`The gear is stripped`, `plugs oiled`: what is meant of such a thing as its state was not done to it."""
    word = scene.tokens[made.main]
    if made.thing is None or made.thing_at is None or made.thing_at > made.main or not word.sense("did"):
        return False
    return any(s.cls == "bad" and s.of and suits(s, made.thing) for s in word.senses)


def _of_a_test(made: Draft, action: str, scene: Scene) -> bool:
    """Whether oil went into a cylinder only for the next compression reading: a wet test is no lubricating."""
    thing = made.thing
    if action != "lubricate" or thing is None:
        return False
    if thing.per != "cylinder" and thing.name not in scene.book.lists["bores"] and "part" not in made.filled:
        return False
    return any(isinstance(f, Reading) and f.quantity == "compression" for f in scene.context.recent)


def _bathed(made: Draft, action: str) -> None:
    """`washed the bearing in paraffin` is one thing for the reader: the paraffin is what it was done with."""
    if made.thing is not None and made.thing.of is not None and made.thing.of.kind == "fluid" and action in BATHED:
        made.fields["used"], made.thing = made.thing.of.words, replace(made.thing, words=made.thing.own)


def _is_fluid(words: str, scene: Scene) -> bool:
    """Whether words end in the name of a fluid."""
    last = words.lower().split()[-1:]
    return any(s[0] == "part" and s[2] == "fluid" and s[1] != "air" for w in last for s in scene.book.table.get(w, ()))


def _sensible(action: str, thing: Thing | None) -> str:
    """The action as it can be meant of a fluid or of a tool; empty when it makes no sense of it."""
    if thing is not None and thing.kind == "fluid":
        return OF_FLUIDS.get(action, action)
    if thing is not None and action == "strip" and any(word in thing.name for word in SET):
        return "adjust"  # `had to open a few up`, of clearances
    if thing is not None and (thing.kind, action) in NO_WORK:
        return ""
    if thing is not None and thing.name.endswith(LEADS):
        action = OF_LEADS.get(action, action)
    return "" if thing is not None and thing.kind == "tool" and action not in OF_TOOLS else action


def _object(made: Draft, match: Match, scene: Scene) -> bool:
    """Finds what it was done to, as the rule says; False when there is nothing."""
    part = match.rule.gives.get("part", "")
    if part.startswith("<"):
        made.thing_at = match.slots.get(part.strip("<>"))
        made.thing = scene.tokens[made.thing_at].thing if made.thing_at is not None else None
        if match.rule.gives.get("onto") and not _put_onto(made):
            return False
        if match.rule.gives.get("bath") and not (made.thing and made.thing.of and made.thing.of.kind == "fluid"):
            return False
    elif part:
        made.thing = scene.engine() if part == "engine" else Thing(part, part, "part")
    if made.thing is None or (part.startswith("<") and scene.tokens[made.main].low.endswith((" off", " back on"))):
        made.thing = inside(scene, made.main) or made.thing  # `pulled the lead off the plug`
    if made.thing is None and match.rule.gives.get("whole"):
        return False
    if made.thing is None and (own := _its_own(match, scene, made.main)):
        made.thing, made.thing_at = scene.tokens[own].thing, own
    if made.thing is None and not (match.rule.gives.get("it") or match.rule.gives.get("behind")):
        made.thing_at = stated(scene, made.main)
        made.thing = scene.tokens[made.thing_at].thing if made.thing_at is not None else None
    headed = match.rule.gives.get("headed") and not scene.things(range(made.main))
    if made.thing is None and headed and scene.context.heading is not None:
        made.filled.add("part")
        made.thing = as_thing(scene.context.heading)
    if made.thing is None and match.last == made.main + 1 and has_its_own(scene, match.last):
        return False
    if made.thing is None:
        made.filled.add("part")
        made.thing, made.thing_at = meant(scene, made.main, match)
        if _may_be_an_order(match, scene, made.main) and not wrong_now(scene, made.thing_at):
            made.confidence -= ORDERS_DOUBT
    return made.thing is not None and (bool(made.thing.name) or not made.thing.known) and "'" not in made.thing.words


def _its_own(match: Match, scene: Scene, at: int) -> int:
    """The thing that a verb told behind another names itself: `took the tank off and hung this bottle up`; else 0."""
    tokens, k = scene.tokens, at + 1
    if not match.rule.gives.get("behind") or k >= len(tokens) or not tokens[k].sense("article"):
        return 0
    end = min(len(tokens) - 1, at + 3)
    while k < end and (tokens[k].kind == "word" or tokens[k].sense("article", "filler", "new")):
        k += 1
    return k if tokens[k].kind == "thing" and tokens[k].clause == tokens[at].clause else 0


def _may_be_an_order(match: Match, scene: Scene, at: int) -> bool:
    """Whether a bare verb may be said to somebody; `bleed it again` is what one does oneself."""
    return bool(match.rule.gives.get("spoken")) and not any(s.name == "bleed" for s in scene.tokens[at].senses)


def _put_onto(made: Draft) -> bool:
    """`oil on the chain` is one thing for the reader: the chain is what was oiled. False when it lies on nothing."""
    whole = made.thing
    if whole is None or whole.of is None or not {"on", "in", "under", "behind"} & set(whole.words.lower().split()):
        return False
    made.thing = whole.of
    made.fields["used"] = whole.own
    return True


def _is_noun(scene: Scene, at: int) -> bool:
    """`a set of brushes`, `a light hone`: a verb's word that is none here."""
    after = scene.tokens[at + 1].low if at + 1 < len(scene.tokens) else ""
    before = scene.tokens[at - 1].low if at else ""
    return after == "of" and " " not in scene.tokens[at].low and before in NOUN_AFTER


OF_FLUIDS = {"fit": "", "replace": "replace", "remove": "drain", "connect": "", "disconnect": "", "strip": ""}
"What becomes of it for a fluid."
BATHED = frozenset({"clean", "soak", "flush", "lubricate"})
OF_TOOLS = frozenset({"fit", "connect", "make", "order", "repair", "disconnect"})
NOUN_AFTER = frozenset("a the new this that my one".split())
ORDERS_DOUBT = 0.08
"`Nip it up` without its thing is as often an order to somebody."
TYPED_DOUBT = 0.1
"A bare verb in a typed line is rather a plan; said while filming, it is what is being done."


def _bled(thing: Thing | None, scene: Scene) -> Thing | None:
    """What `bled it` means: the brakes where they were talked of, the fuel system of a diesel."""
    about = f"{thing.system} {thing.name}" if thing is not None else ""
    if any(word in about for word in ("clutch", "cool", "hydraulic", "radiator")):
        return thing
    if "brake" in scene.context.system or "brake" in about:
        return Thing("brakes", "brakes", "part")
    return Thing("fuel system", "fuel system", "part") if scene.machine.fuel == "diesel" else thing


def action_for(senses: tuple[Sense, ...], thing: Thing | None) -> Sense | None:
    """The action of a verb for an object: one meant of its kind first."""
    actions = [s for form in FORMS for s in senses if s.cls == form]
    fitting = [s for s in actions if s.of and thing is not None and (thing.kind in s.of or thing.name in s.of)]
    holds = [s for s in actions if "fluid" in s.of and thing is not None and "volume" in thing.quantities]
    return next(iter(fitting + [s for s in actions if not s.of] + holds), None)
