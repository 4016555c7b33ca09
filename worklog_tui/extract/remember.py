"""What a sentence leaves behind: the thing that `it` will mean, and the running test that gives bare numbers their
unit.
"""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.context import SUSPECTS_BACK, THINGS_BACK, Context, Subject
from worklog_tui.extract.measured.aimed import aim_of
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.misplaced import MISPLACED
from worklog_tui.extract.taken.standing import standing_after
from worklog_tui.extract.talk.listing import listing_after
from worklog_tui.extract.talk.measuring import units_after
from worklog_tui.extract.talk.running import topic_after
from worklog_tui.extract.talk.told_before import figures_after
from worklog_tui.extract.talk.trying import tried_after
from worklog_tui.extract.things.covers import taken_off, under
from worklog_tui.extract.things.salience import ranked, salience
from worklog_tui.extract.things.side_words import SIDES
from worklog_tui.extract.things.subjects import sides_from, stands_alone
from worklog_tui.extract.tokens import Thing

FORGETTABLE = frozenset({"tool", "unknown"})
SAID = 120
"Characters of a sentence that the next one may still look at."


def remember(scene: Scene, drafts: list[Draft], context: Context, upto: int) -> Context:
    """The context after the tokens before `upto`."""
    heading, named = _heading(scene, upto), _named(scene, upto)
    things = _things(scene, drafts, context, upto)
    tried, tried_age = tried_after(scene, context, upto)
    if heading is not None and not any(taken_off(scene.tokens, k) for k in scene.things(range(len(scene.tokens)))):
        things = (heading, *(t for t in things if t.words != heading.words))[:THINGS_BACK]
    return context._replace(
        things=things, heading=heading or context.heading,
        which=_which(scene, upto) or _still(named, context),
        topic=topic_after(scene, drafts, context.topic, upto),
        suspects=_suspects(drafts, context, upto), system=_system(named) or context.system,
        listing=(listing := listing_after(scene, context, upto)), listing_age=0 if listing else context.listing_age,
        units=units_after(scene.tokens[:upto], context.units),
        figures=figures_after(scene, drafts, context, upto), aim=_aim(scene, named, context, upto),
        said=scene.text[scene.tokens[0].start : scene.tokens[upto - 1].end][-SAID:],
        standing=standing_after(scene, drafts, context, upto), tried=tried, tried_age=tried_age,
    )  # fmt: skip


def _things(scene: Scene, drafts: list[Draft], context: Context, upto: int) -> tuple[Subject, ...]:
    """The things of the sentence before the older ones, those that it is about first; what stands aside comes last."""
    rows = [(k, score + _spoken_of(scene, k)) for k, score in ranked(scene, upto, drafts)]
    under_way = context.heading is not None and context.heading.age <= 1
    gone = {k for k, _ in rows if taken_off(scene.tokens, k, under_way)}
    about = [_meant(scene, k) if k in gone else scene.tokens[k].thing for k, score in rows if score > 0]
    aside = [t for k, score in rows if (score <= 0 or k in gone) and (t := scene.tokens[k].thing) and not t.loose]
    kept: dict[str, Subject] = {}
    new = [_as_subject(t) for t in _told_inside(drafts, upto)]
    new += [_as_subject(t) for t in about if t is not None and t.kind not in FORGETTABLE]
    new += [_as_subject(replace(t, kind="part", name=t.words.lower())) for t in _new_names(scene, drafts, upto)]
    late = [_as_subject(t) for t in aside if t is not None and t.kind not in FORGETTABLE]
    fresh = [s for s in context.things if s.age <= 1]
    for subject in (*new, *fresh, *late, *context.things):
        kept.setdefault(subject.words, subject)
    return tuple(kept.values())[:THINGS_BACK]


def _spoken_of(scene: Scene, k: int) -> bool:
    """Whether a clause tells of a thing whose word is often no part: `the linings are thick enough`."""
    return salience(scene, k) == 0 and k + 1 < len(scene.tokens) and scene.tokens[k + 1].low in IS


IS = frozenset("is are was were has have isnt arent".split())


def _aim(scene: Scene, named: list[Thing], context: Context, upto: int) -> Subject | None:
    """What an instrument was put on, until another part is named."""
    if upto >= len(scene.tokens) and (thing := aim_of(scene)) is not None:
        return _as_subject(thing)
    return None if any(t.kind not in ("tool", "quality") for t in named) else context.aim


def _named(scene: Scene, upto: int) -> list[Thing]:
    """The things that were named before token `upto`."""
    named = scene.things(range(min(upto, len(scene.tokens))))
    return [thing for k in named if (thing := scene.tokens[k].thing) is not None]


def _new_names(scene: Scene, drafts: list[Draft], upto: int) -> list[Thing]:
    """The names that the vocabulary does not know of which something was found or done: parts, as it turns out."""
    told = [d for d in drafts if d.kind in ("finding", "work") and d.main < upto and d.confidence >= SURE]
    return [d.thing for d in told if d.thing is not None and not d.thing.known]


def _told_inside(drafts: list[Draft], upto: int) -> list[Thing]:
    """The parts that were named within the name of a fluid that has no business there: of `water in the tank`."""
    told = [d for d in drafts if d.rule.id == MISPLACED.id and d.main < upto]
    return [d.thing for d in told if d.thing is not None and d.thing.kind not in FORGETTABLE]


SURE = 0.6
"Confidence of what makes an unknown name a part."


def _meant(scene: Scene, k: int) -> Thing | None:
    """What a cover that was taken off leaves to be talked of: what lay under it, where its name tells."""
    thing = scene.tokens[k].thing
    return under(thing, scene.book) if thing is not None else None


def _heading(scene: Scene, upto: int) -> Subject | None:
    """`Brakes.` or `Right, tappets.`: a thing that stands alone in its sentence; `coils, while the kettle's on`: before
    all the rest of one that tells nothing of it.
    """
    if upto < len(scene.tokens):
        return None
    if (named := _announced(scene)) is not None:
        return _as_subject(named)
    things = scene.things(range(len(scene.tokens)))
    if len(things) != 1:
        return None
    words = [
        t
        for t in scene.tokens
        if t.kind not in ("stop", "comma", "mark") and (t.classes.isdisjoint(SMALL) or not t.sense(*SMALL))
    ]
    counted = any(t.kind == "number" for t in words)  # `Four screws.` only says how it is held
    thing = scene.tokens[things[0]].thing if len(words) <= 2 and not counted else None
    older = scene.context.heading
    if older is not None and older.age <= 1 and taken_off(scene.tokens, things[0]):
        return None  # `Fluid. Cap off.`
    return _as_subject(thing) if thing is not None and thing.kind not in FORGETTABLE else None


WHILES = frozenset("while whilst since seeing".split())
"`Timing while the light's out`: what the talk turns to, and why now."
LEADING = frozenset({"filler", "article"})
SMALL = ("filler", "article", "break", "degree", "copula")
"Classes of words that name nothing."
SAYS = ("bad", "good", "noted", "copula", "did", "does", "do", "doing", "reads", "must", "plan", "want")
"Classes of words with which something is told of a thing."


def _announced(scene: Scene) -> Thing | None:
    """The thing with which a sentence opens, a comma behind it, that says no more of it."""
    opening = [k for k, t in enumerate(scene.tokens[:6]) if t.kind != "comma" and LEADING.isdisjoint(t.classes)]
    k = opening[0] if opening else -1
    if k < 0 or k + 2 >= len(scene.tokens) or scene.tokens[k].thing is None:
        return None
    thing = scene.tokens[k].thing
    if scene.tokens[k + 1].low in WHILES and thing is not None and thing.kind not in FORGETTABLE:
        return thing
    if scene.tokens[k + 1].kind != "comma":
        return None
    first = scene.tokens[k + 2 : k + 5]
    told = any(t.kind in ("number", "amount", "which") or t.sense(*SAYS) for t in first)
    told = told and not (scene.typed and scene.tokens[k + 1].low == ":")
    return None if told or thing is None or thing.kind in FORGETTABLE else thing


def known_as(suspect: Draft) -> str:
    """The name by which a suspect is known again: that of the vocabulary, else its own words."""
    return str(suspect.fields["name"] or suspect.fields["cause"].lower())


def _suspects(drafts: list[Draft], context: Context, upto: int) -> tuple[str, ...]:
    """The names of what is suspected and not yet cleared, newest first."""
    said = [(d.fields["standing"], known_as(d)) for d in drafts if d.kind == "suspect" and d.main < upto]
    if not said:
        return context.suspects
    gone = {name for standing, name in said if standing != "suspected"}
    new = [name for standing, name in said if standing == "suspected"]
    return tuple(n for n in dict.fromkeys((*reversed(new), *context.suspects)) if n not in gone)[:SUSPECTS_BACK]


def _which(scene: Scene, upto: int) -> str:
    """The last marker of which one in the sentence."""
    found = ""
    for k in range(min(upto, len(scene.tokens))):
        token = scene.tokens[k]
        if token.kind == "which":
            found = token.which
        elif "side" in token.classes and token.low in SIDES and stands_alone(scene, k):
            found = sides_from(scene, k)[0]
        elif token.thing is not None and token.thing.which:
            found = token.thing.which
    return found


def _still(named: list[Thing], context: Context) -> str:
    """Which one was said last, as long as nothing else is named: `Right inlet. Six drops in. Eight's a drag.`"""
    return "" if any(t.kind != "quality" for t in named) else context.which


def _as_subject(thing: Thing) -> Subject:
    return Subject(thing.words, thing.name, thing.kind, thing.which, thing.quantities, thing.system, thing.per)


def _system(named: list[Thing]) -> str:
    return next((t.system for t in reversed(named) if t.system), "")


def _tested(scene: Scene, draft: Draft) -> bool:
    """Whether the quantity of a reading is one that is tested in rows."""
    quantity = scene.book.quantities.get(draft.fields["quantity"])
    return bool(quantity and quantity.topic)
