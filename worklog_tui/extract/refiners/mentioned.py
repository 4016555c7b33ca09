"""States that stand in talk of something else: what a cause would mean, how it was before, what was put on, words that
only tell which one or which way.
"""

from __future__ import annotations

from collections.abc import Callable

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.salience import PREPOSITIONS
from worklog_tui.extract.tokens import Token

NAMING = frozenset({"finding.thing-is-state", "finding.state"})
HAPPENS = frozenset("down up out off stopped stopping running".split())
YOURS = frozenset("your yr ur youre".split())
IT_IS = frozenset("its thats be".split()) | {"it is", "that is", "gotta be", "has to be", "must be"}
CONCLUDES = frozenset("means meaning why proves".split()) | {
    "which means",
    "that means",
    "so that means",
    "that's why",
    "thats why",
}
DOERS = frozenset("ive weve youve id wed".split())
WITH = frozenset("with w w/".split())
LATER = frozenset("itll thatll theyll shell hell".split())
JOINING = frozenset(
    "inside underneath right where when that which just all too though here there now again still".split()
)
WHOLES = frozenset("bit bits patch spot spots mark marks area ring edge end one ones line streak".split())
"Nouns for a place on a thing: `there's a burnt bit on it` tells of the thing."
RUNS_ON = ("runs on", "run on", "running on", "ran on")


def _at(scene: Scene, i: int) -> Token | None:
    return scene.tokens[i] if 0 <= i < len(scene.tokens) else None


def _clause_before(draft: Draft, scene: Scene) -> list[Token]:
    return [scene.tokens[k] for k in scene.clause(draft.main) if k < draft.main]


def _your_trouble(draft: Draft, scene: Scene) -> bool:
    """`There's your chatter`, `that's a lot of your no power`: a trouble that is known, and explained."""
    before = _at(scene, draft.main - 1)
    return before is not None and before.low in YOURS and not draft.rule.gives.get("from")


def _concluded(draft: Draft, scene: Scene) -> bool:
    """`Which means the valve is passing`, `so it's the lever valve leaking`: what follows from what was found."""
    if not (CONCLUDES.isdisjoint(scene.lows()) and {"means", "why"}.isdisjoint(scene.words())):
        said_before = _clause_before(draft, scene)
        comma = max((n for n, t in enumerate(said_before) if t.kind == "comma"), default=-1)
        if any(t.low in CONCLUDES or t.low.rpartition(" ")[2] in ("means", "why") for t in said_before[comma + 1 :]):
            return True
    k = draft.thing_at
    if k is None or draft.fields["verdict"] == "good" or draft.rule.id not in NAMING or k > draft.main or any(
        t.sense("copula", "moves") or t.kind == "comma" for t in scene.tokens[k + 1 : draft.main]
    ):  # fmt: skip
        return False
    article, verb = _at(scene, k - 1), _at(scene, k - 2)
    said = scene.text[scene.tokens[k].end - 2 : scene.tokens[k].end].lower() in ("'s", "\u2019s")
    return article is not None and article.low == "the" and verb is not None and verb.low in IT_IS and not said


def _was_before(draft: Draft, scene: Scene) -> bool:
    """`The tubes were slow before`: how it was, not how it is."""
    after = _at(scene, draft.last + 1)
    ends = _at(scene, draft.last + 2)
    return after is not None and after.low == "before" and (ends is None or ends.kind in ("stop", "comma"))


def _put_on(draft: Draft, scene: Scene) -> bool:
    """`A smear of grease`, `a cough of air`: how much of something there was."""
    k = draft.thing_at
    if k is None or k < draft.last or draft.thing is None or draft.thing.kind not in ("fluid", "material"):
        return False
    return any(t.low == "of" for t in scene.tokens[draft.last + 1 : k])


def _with_it(draft: Draft, scene: Scene) -> bool:
    """`It goes back with both clips tight`: how the rest was when something was done."""
    k = draft.thing_at
    token = scene.tokens[draft.main]
    if k is None or k > draft.main or not token.sense("made_so", "position"):
        return False
    before = [t for t in scene.tokens[max(0, k - 3) : k] if t.clause == token.clause]
    return any(t.low in WITH for t in before)


def _other_word(draft: Draft, scene: Scene) -> bool:
    """`Straight from the stud`, `hard against the end`, `high spot`."""
    after = _at(scene, draft.last + 1)
    near = after.low.partition(" ")[0] if after is not None else ""
    if scene.tokens[draft.main].low.endswith(RUNS_ON):
        return after is not None and (
            after.kind in ("number", "amount", "thing") or bool(after.sense("article", "copula", "all", "new"))
        )
    figure = _at(scene, draft.last + 2)
    if near in ("to", "within") and figure is not None and figure.kind in ("number", "amount"):
        return False  # straight to two thou
    return f"{scene.tokens[draft.main].low} {near}" in scene.book.lists["no_states"]


def _well_with_it(draft: Draft, scene: Scene) -> bool:
    """`The motor hums up to speed`, `ticks over nicely`: a sound that goes with what is well."""
    after = _at(scene, draft.last + 1)
    sound = scene.tokens[draft.main].sense("comes_and_goes") is not None
    return (
        sound
        and draft.fields["verdict"] == "bad"
        and after is not None
        and after.low != "good"
        and after.sense("good") is not None
    )


def _how_taken(draft: Draft, scene: Scene) -> bool:
    """`Compression on two, wet 135`: how a figure was taken, where what is measured is named and no part."""
    after = _at(scene, draft.last + 1)
    figure = after is not None and after.kind in ("number", "amount")
    quality = draft.thing is not None and draft.thing.kind == "quality"
    return figure and quality and scene.tokens[draft.main].sense("how") is not None


def _of_a_noun(draft: Draft, scene: Scene) -> bool:
    """`A broken bit of old ring to scrape with`, `in boiling water`: said of the noun behind it."""
    if draft.rule.id != "finding.state":
        return False
    before, after = _at(scene, draft.main - 1), _at(scene, draft.last + 1)
    if before is None or after is None or after.clause != scene.tokens[draft.main].clause:
        return False
    said = scene.tokens[draft.main].low
    if (draft.main > 1 and scene.tokens[draft.main - 2].low == "like") or said.endswith((" with", " of", " in")):
        return False
    led = before.low.removeprefix("\u2026") in ("a", "an", "in", "of", "from", "into", "another")
    noun = (
        after.kind == "thing"
        or (after.kind == "term" and not after.senses)
        or (after.kind == "word" and after.low.isalpha() and len(after.low) > 2)
    )
    return led and noun and after.low.partition(" ")[0] not in WHOLES | PREPOSITIONS | JOINING


def _by_a_person(draft: Draft, scene: Scene) -> bool:
    """`I've wiggled the lever`: done, not found."""
    before = _at(scene, draft.main - 1)
    return draft.rule.id == "finding.state" and before is not None and before.low in DOERS


def _how_much(draft: Draft, scene: Scene) -> bool:
    """`It holds one point six`, `ninety-five in the book`: an amount and where it stands, no state."""
    low = scene.tokens[draft.main].low
    before, after = _at(scene, draft.main - 1), _at(scene, draft.last + 1)
    if low in ("holds", "it holds", "still holds"):
        said = any(
            t.low.partition(" ")[0] in ("what", "whats") or t.kind == "amount" for t in _clause_before(draft, scene)
        )
        return said or (after is not None and after.kind in ("amount", "number"))
    if low.endswith("a lot") and after is not None and (after.low.endswith("er") or after.low in ("more", "less")):
        return True  # `that's a lot quicker`
    return low == "in the book" and (before is None or before.kind in ("amount", "number", "stop"))


def _to_come(draft: Draft, scene: Scene) -> bool:
    """`It'll clear`: what is expected of it."""
    first = scene.tokens[draft.first_used]
    return draft.rule.id == "finding.it-is-state" and first.low in LATER and draft.first_used < draft.main


def _said_aloud(draft: Draft, scene: Scene) -> bool:
    """`Foot down`, `strimmer stopped`: in a written note a fault, in talk only what happens."""
    return draft.rule.id == "finding.name-and-fault" and not scene.typed and scene.tokens[draft.main].low in HAPPENS


def _not_denied(draft: Draft, scene: Scene) -> bool:
    """`I'm not touching the governor`, `it's not passing a test like that`, `not rubbish till you throw it out`: what
    somebody lets be, or what is so only till then; a contact or a movement that is not there is no praise.
    """
    if not draft.fields.get("denied"):
        return False
    if scene.tokens[draft.main].low == "even" and (rest := _at(scene, draft.last + 1)) is not None:
        return rest.kind not in ("stop", "comma")  # `not even sorry`
    if draft.fields["verdict"] == "good" and scene.tokens[draft.main].sense("contact"):
        return True
    before, after = _clause_before(draft, scene)[-3:], _at(scene, draft.last + 1)
    doing = scene.tokens[draft.main].low.endswith("ing")
    by_person = doing and any(t.sense("person") and t.low != "what" for t in before)
    return by_person or (after is not None and after.low in ("till", "until", "yet"))


def _stays_done(draft: Draft, scene: Scene) -> bool:
    """`It stays squeezed`, `stays unhooked till then`: how it stays, the next word tells."""
    after = _at(scene, draft.last + 1)
    stays = scene.tokens[draft.main].low.rpartition(" ")[2] in ("stays", "stayed", "stay")
    return stays and after is not None and after.low.endswith("ed") and not after.sense("good", "bad", "noted")


def _left_so(draft: Draft, scene: Scene) -> bool:
    """`So there's a little play now`, `three mil of play` behind the work that gave it: how it was set."""
    if scene.tokens[draft.main].low.rpartition(" ")[2] not in ("play", "slack", "give", "float"):
        return False
    worked = any(
        s.cls in ("did", "doing") and s.name in ("adjust", "tighten", "fit")
        for t in scene.tokens[: draft.main]
        for s in t.senses
    )
    return worked and draft.fields["verdict"] == "bad"


MENTIONED: tuple[tuple[str, Callable[[Draft, Scene], bool]], ...] = (
    ("a trouble that is explained", _your_trouble),
    ("only concluded", _concluded),
    ("how it was before", _was_before),
    ("what was put on", _put_on),
    ("how the rest was meanwhile", _with_it),
    ("another word here", _other_word),
    ("a sound of what is well", _well_with_it),
    ("how a figure was taken", _how_taken),
    ("said of the noun behind it", _of_a_noun),
    ("done by a person", _by_a_person),
    ("an amount, no state", _how_much),
    ("only expected", _to_come),
    ("only what happens", _said_aloud),
    ("not so, but no praise", _not_denied),
    ("how it stays, not that it stays", _stays_done),
    ("left so by the work", _left_so),
)
