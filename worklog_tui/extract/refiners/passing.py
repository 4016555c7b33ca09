"""States that are only mentioned in passing are no findings: `wait till it knocks`, `the burnt terminal I cut off`,
`rubbed the disc flat`, `not dead, that's only asleep`.
"""

from __future__ import annotations

from collections.abc import Callable

from worklog_tui.extract.refiners.mentioned import MENTIONED
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.read_before import last_read
from worklog_tui.extract.tokens import Token

DEFINITE = frozenset("the that this those these my his her your".split())
SHOWN = frozenset("see hear feel found find at got is was are were theres heres call calls called reckon make".split())
"Words after which a definite state is what is being looked at: `look at that crack`."
ALONE = frozenset({"finding.state", "finding.state-alone"})
LISTED = ALONE | {"finding.thing-is-state"}
SIZES = frozenset("little small tiny wee big".split())
NEAR = 3
"Tokens within which the verb stands that made a thing so."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts without findings that nobody made."""
    kept: list[Draft] = []
    for draft in drafts:
        reason = _reason(draft, scene) if draft.kind == "finding" else ""
        if reason:
            scene.dropped.append(f"{scene.said(draft.main, draft.last)}: finding by {draft.rule.id} let go, {reason}")
        else:
            kept.append(draft)
    return kept


def _reason(draft: Draft, scene: Scene) -> str:
    """Why a state is only mentioned; empty where it was found."""
    for why, holds in CHECKS:
        if holds(draft, scene):
            return why
    return ""


def _before(scene: Scene, i: int) -> int:
    """The index of the token before token i, degrees and sizes passed over; -1 at the head of its clause."""
    k, tokens = i - 1, scene.tokens
    while k >= 0 and (tokens[k].sense("degree") or tokens[k].low in SIZES) and tokens[k].clause == tokens[i].clause:
        k -= 1
    return k if k >= 0 and scene.tokens[k].clause == scene.tokens[i].clause else -1


def _after(scene: Scene, draft: Draft) -> Token | None:
    k = draft.last + 1
    return scene.tokens[k] if k < len(scene.tokens) else None


def _known_already(draft: Draft, scene: Scene) -> bool:
    """`The missing corner`, `the rounded bolt has been replaced`, `that pop`: what is known, and only named again."""
    k = _before(scene, draft.main)
    if draft.rule.gives.get("from"):
        return False
    if k < 0 or scene.tokens[k].low not in DEFINITE or scene.tokens[draft.main].low.partition(" ")[0] in DEFINITE:
        return False
    j = k - 2 if k > 1 and scene.tokens[k - 1].low == "all" else k - 1  # `look at all that rust`
    before = scene.tokens[j].low if j >= 0 and scene.tokens[j].clause == scene.tokens[k].clause else ""
    if k == draft.main - 1 and scene.tokens[k].low in ("that", "this") and scene.tokens[draft.main].sense("works_well"):
        return False  # `a button, and that works`
    return before.rpartition(" ")[2] not in SHOWN


def _set_so(draft: Draft, scene: Scene) -> bool:
    """`One turn open`, `half an inch up`: how far something was set."""
    before = scene.tokens[draft.main - 1] if draft.main else None
    turned = before is not None and (
        before.kind == "amount" or before.low in ("turn", "turns", "half", "flat", "flats")
    )
    return turned and scene.tokens[draft.main].sense("position") is not None


def _made_so(draft: Draft, scene: Scene) -> bool:
    """`Rubbed the disc flat`, `jam nut loose`: how something was made, not how it was found."""
    k = draft.thing_at
    if k is None or k != draft.main - 1 or draft.rule.id != "finding.thing-is-state":
        return False
    if not scene.tokens[draft.main].sense("made_so"):
        return False
    near = [t for t in scene.tokens[max(0, k - NEAR) : k] if t.clause == scene.tokens[k].clause]
    return any(_makes(t) for t in near)


def _makes(token: Token) -> bool:
    """Whether a word makes something what the next words say."""
    verb = token.sense("did", "do", "doing") and not token.sense("copula", "reads", "person")
    return token.low in MAKES or (bool(verb) and token.low not in SHOWN)


def _by_hand(draft: Draft, scene: Scene) -> bool:
    """`Oiled`, `spun it round`, `I've blued the bar`: words of work, unless something is said to be so."""
    token = scene.tokens[draft.main]
    if not token.sense("worked"):
        return _with_object(draft, scene)
    before, after = scene.tokens[draft.main - 1] if draft.main else None, _after(scene, draft)
    if before is not None and before.clause == token.clause and before.sense("person"):
        return True
    objects = after is not None and (
        after.kind == "thing" or after.sense("article") is not None or after.low in OBJECTS
    )
    joined = before is not None and before.clause == token.clause and before.sense("copula", "degree")
    return objects or (draft.rule.id in LISTED and not joined)


def _with_object(draft: Draft, scene: Scene) -> bool:
    """`Hooked it on and bent the tag over`: a deed told behind another, for it has an object of its own."""
    token, after = scene.tokens[draft.main], _after(scene, draft)
    if (
        not (token.sense("did") and token.sense("bad"))
        or after is None
        or after.clause != token.clause
        or "part" not in draft.filled
    ):
        return False
    before = scene.tokens[draft.main - 1] if draft.main else None
    leads = before is not None and (before.low in ("and", "then", "just") or before.sense("person") is not None)
    return after.low in OBJECTS or (leads and after.sense("article") is not None)


MAKES = frozenset("get getting make making keep keeping want wants need needs put".split())
OBJECTS = frozenset("it them that em".split())


def _warm_only(draft: Draft, scene: Scene) -> bool:
    """`Now it's hot`, `engine stone cold`: how a machine was when something was done, unless heat is the trouble."""
    token = scene.tokens[draft.main]
    if not token.sense("warmth"):
        return False
    kind = draft.thing.kind if draft.thing is not None else ""
    said = any(t.sense("copula") for t in scene.tokens[draft.first_used : draft.main])
    return "part" in draft.filled or not said or kind in ("machine", "fluid", "quality")


def _of_another(draft: Draft, scene: Scene) -> bool:
    """`Barrel full`, `I bent it`: the state of a word that names no known part, or what a person did."""
    if draft.rule.id != "finding.state" or "part" not in draft.filled or draft.main == 0:
        return False
    before = scene.tokens[draft.main - 1]
    if scene.tokens[draft.main].low.partition(" ")[0] in SEES:
        return False  # `main jet, I can't see through it`
    unknown = before.kind == "word" and before.low.isalpha() and len(before.low) > 2
    unknown = unknown or before.sense("outsider") is not None
    return before.clause == scene.tokens[draft.main].clause and (unknown or before.low in DOERS)


SEES = frozenset("cant can couldnt could cannot you".split())
DOERS = frozenset("i we you to ive weve id im gonna lets".split())


def _only_a_word(draft: Draft, scene: Scene) -> bool:
    """`Okay`, `right`: in talk a filler, unless something is said to be so."""
    token = scene.tokens[draft.main]
    if not token.sense("fillers") or draft.rule.id.startswith("shown."):
        return False  # the build of the clause has joined it to a thing
    k = draft.main - 1
    if k >= 0 and scene.tokens[k].low in ("all", "both"):
        return False
    while k >= 0 and scene.tokens[k].sense("degree", "all") and not scene.tokens[k].sense("copula"):
        k -= 1
    if k < 0:
        return not scene.typed and not (_praises(token) and last_read(scene) is not None)
    before = scene.tokens[k]
    if before.kind in ("amount", "number") and (scene.typed or token.sense("judged")):
        return False
    said = before.sense("copula", "reads", "not") or scene.text[before.end - 2 : before.end] in IS
    return not said and not (scene.typed and before.kind in ("thing", "comma", "which"))


def _praises(token: Token) -> bool:
    """Whether the word alone judges what was read before it: `Seventeen and a half. Lovely.`; `okay` only goes on."""
    return bool(token.sense("judged")) or not token.sense("going_on")


IS = frozenset({"'s", "\u2019s", "'e"})


def _corrected(draft: Draft, scene: Scene) -> bool:
    """`That's not a drip, it's a tap`: denied only to say it better; talk may have
    no comma: `they're not broken they've been filed`.
    """
    token, rest = scene.tokens[draft.main], scene.tokens[draft.last + 1 : draft.last + 3]
    if "part" not in draft.filled or not rest:
        return False
    if "not" in token.stances or token.low.startswith("not "):
        anew = rest[0].low == "theyve" or rest[0].clause != token.clause
        if rest[0].low in BETTER and anew:
            return True
    comma = "not" in token.stances and len(rest) == 2 and rest[0].kind == "comma"
    return comma and rest[1].low in BETTER | {"it", "thats", "that", "but"}


BETTER = frozenset({"its", "theyre", "theyve"})


CHECKS: tuple[tuple[str, Callable[[Draft, Scene], bool]], ...] = (
    ("known already", _known_already),
    ("made so", _made_so),
    ("how far it was set", _set_so),
    ("done by hand", _by_hand),
    ("only how warm it was", _warm_only),
    ("said of something else", _of_another),
    ("only a word", _only_a_word),
    ("said better in the next words", _corrected),
    *MENTIONED,
)
