"""How it was meant: what is denied turns round, what is supposed, planned, asked or told by others is no fact."""

from __future__ import annotations

from worklog_tui.extract.refiners.booked import from_book
from worklog_tui.extract.refiners.rated import is_rated
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.complaints import complains

DROP = {
    "finding": frozenset({"if", "would", "asked", "plan", "memory", "joke", "rule", "maybe", "meanwhile", "wondered"}),
    "work": frozenset({"if", "would", "asked", "plan", "maybe", "reported", "memory", "joke", "rule", "not"}),
    "reading": frozenset({"if", "would", "joke", "disown"}),
    "suspect": frozenset({"if", "would", "joke", "memory"}),
    "trait": frozenset({"if", "would", "not", "asked", "joke", "disown", "plan"}),
    "number": frozenset({"if", "would", "not", "joke", "disown"}),
    "follow_up": frozenset({"would", "joke", "memory", "not", "if", "reported"}),
}
HEARSAY = frozenset({"reported", "memory"})
"What others told, or what once was: no reading of this machine today."
NEAR = 12
"Tokens before a number within which it is told that others say it; talk without stops goes on to other matters."
TOLD = frozenset({"asked", "rule", "memory", "meanwhile"})
"Words that are heard in a complaint too: `the complaint is that it screams`."
IS = frozenset("is are has have theres its".split())
OTHERS = frozenset("i we he she they ive weve id wed hed".split())
TILL = frozenset({"till", "until", "til", "untill"})
DENIALS = frozenset({"no", "not", "never", "wont", "doesnt", "without", "nothing"})
BY_OTHERS, APART = "shown.by-others", "been apart before"
TURNED = {"bad": "good", "good": "bad"}


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts that are meant, verdicts turned where they are denied."""
    kept: list[Draft] = []
    amounts = frozenset([d.main for d in drafts if d.kind == "reading"])
    for draft in drafts:
        allowed = draft.rule.gives.get("even", ())
        stances = scene.tokens[draft.main].stances
        if draft.kind == "finding" and "reported" in stances and draft.fields["verdict"] != "bad":
            continue  # what the owner complains of is a finding, what he praises is not
        against = (stances & DROP[draft.kind]).difference(allowed)
        if draft.kind == "reading" and "would" in against and _told_apart(draft.main, scene):
            against -= {"would"}
        if draft.kind == "reading" and not (from_book(draft.main, scene, amounts) or is_rated(draft, scene)):
            near = scene.tokens[max(0, draft.main - NEAR) : draft.main]
            against |= {stance for stance in stances & HEARSAY if any(t.sense(stance) for t in near)}
            against |= {"asked"} if _is_question(scene) else frozenset()
        if draft.kind == "work" and "memory" in against and _only_afterwards(draft, scene):
            against -= {"memory"}
        if draft.kind == "work" and _waited_for(draft, scene):
            against |= {"meanwhile"}
        if draft.kind == "finding" and draft.fields["verdict"] == "bad" and complains(scene):
            against -= TOLD
        if draft.rule.id == BY_OTHERS or draft.fields.get("state") == APART:
            against -= {"maybe"}  # `it looks like somebody's been at it`: that is what is seen
        if against:
            scene.dropped.append(
                f"{scene.said(draft.main, draft.last)}: {draft.kind} by {draft.rule.id} let go, "
                f"meant as: {', '.join(sorted(against))}"
            )
            continue
        if draft.kind == "finding" and "not" in stances and "not" not in allowed and not _denies(draft, scene):
            if draft.fields["verdict"] not in TURNED:
                continue
            draft.fields["verdict"] = TURNED[draft.fields["verdict"]]
            draft.fields["denied"] = True
            draft.trail.append("turned round by a denial")
        if draft.kind == "finding" and draft.fields["verdict"] == "bad" and _of_a_runner(draft, scene):
            draft.fields["verdict"] = "good"
            draft.trail.append("no fault of what runs")
        kept.append(draft)
    return kept


def _told_apart(i: int, scene: Scene) -> bool:
    """`It was at four, it should have been nineteen`: what stands before is so, and what should have been is wanted."""
    tokens = scene.tokens
    would = [k for k in scene.clause(i) if tokens[k].sense("would")]
    if not would or any(tokens[k].low.partition(" ")[0] not in SHOULD for k in would):
        return False
    return i < would[0] or i <= would[-1] + 4


SHOULD = frozenset({"should", "shouldve"})


def _waited_for(draft: Draft, scene: Scene) -> bool:
    """`It stays off till there's a new one on`: what is waited for is not done; `till I had it off` is."""
    tokens = scene.tokens
    till = next((k for k in range(draft.first_used - 1, -1, -1) if tokens[k].low in TILL), None)
    if (
        till is None
        or "meanwhile" not in tokens[draft.main].stances
        or tokens[till].clause != tokens[draft.main].clause
    ):
        return False
    said = {word for t in tokens[till + 1 : draft.last + 1] for word in t.low.split()}
    return not said.isdisjoint(IS) and said.isdisjoint(OTHERS)


def _only_afterwards(draft: Draft, scene: Scene) -> bool:
    """`New one in, I had it from last year`: what is of the past is told in a clause behind the work."""
    return all(
        t.clause > scene.tokens[draft.last].clause for t in scene.tokens if t.sense("memory") and t.stances & {"memory"}
    )


def _denies(draft: Draft, scene: Scene) -> bool:
    """Whether a state says its own no: in `not much there, no spark`, the spark is denied once."""
    return scene.tokens[draft.main].low.partition(" ")[0] in DENIALS


def _of_a_runner(draft: Draft, scene: Scene) -> bool:
    """`It ran all morning, not a cough`: of what runs, a cough that is not heard is praise; else it does not fire."""
    goes = scene.book.lists["goes"]
    return scene.tokens[draft.main].low.startswith("not a ") and any(
        t.low.partition(" ")[0] in goes and not t.stances & {"not", "if", "would"} for t in scene.tokens[: draft.main]
    )


def _is_question(scene: Scene) -> bool:
    """Whether the sentence asks from its first word on: `is it ten thou?`; `what have we, ninety?` has its answer."""
    first = next((t for t in scene.tokens if t.kind != "comma"), None)
    asks = first is not None and first.low.partition(" ")[0] in ASKING
    return asks and scene.tokens[-1].low == "?" and not any(t.kind == "comma" for t in scene.tokens)


ASKING = frozenset("is are was were does do did has have can could will would should".split())
