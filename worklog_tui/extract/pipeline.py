"""The one list: how a sentence becomes drafts. Find first (small, local, dumb), then refine, in this order."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from worklog_tui.extract.finders import findings, follow_ups, numbers, readings, suspects, traits, work
from worklog_tui.extract.finders.alike_numbers import once
from worklog_tui.extract.finders.needs import missing
from worklog_tui.extract.finders.several import spread
from worklog_tui.extract.matching import Match, matches
from worklog_tui.extract.owed.told import told as owed
from worklog_tui.extract.refiners import (
    believable,
    carry_over,
    changed,
    cleared,
    climbing,
    conditions,
    corrections,
    degrees,
    fixed,
    followed,
    hanging,
    implied,
    in_order,
    judged,
    meant,
    names,
    not_owed,
    of_the_book,
    overlap,
    paired,
    passing,
    repeats,
    roles,
    said_once,
    same_breath,
    settled,
    sides_of,
    tested,
    together,
    unnamed,
    whose_end,
)
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.told import told as shown
from worklog_tui.extract.suspected.alternatives import told
from worklog_tui.extract.suspected.causes_listed import listed
from worklog_tui.extract.talk.same_again import again
from worklog_tui.extract.worked.told import told as worked

FINDERS: dict[str, Callable[[Match, Scene], Draft | None]] = {
    "reading": readings.draft,
    "finding": findings.draft,
    "work": work.draft,
    "suspect": suspects.draft,
    "follow_up": follow_ups.draft,
    "trait": traits.draft,
    "number": numbers.draft,
}

Refiner = Callable[[list[Draft], Scene], list[Draft]]

SIFTERS: tuple[Refiner, ...] = (
    meant.refine,  # before overlap: what is not meant must not push out what is
    passing.refine,
    overlap.refine,
)
"What is let go, before the build of a clause is asked for what no pattern has read."

REFINERS: tuple[tuple[Refiner, set[str]], ...] = (
    (degrees.refine, {"finding"}),  # before what follows from the verdicts
    (sides_of.refine, {"finding"}),  # before what follows on it
    (followed.refine, {"finding"}),  # before what is implied and told twice
    (names.refine, {"number", "trait"}),  # before units are carried over and one reading is set beside another
    (carry_over.refine, {"reading"}),
    (same_breath.refine, {"reading"}),  # needs the subjects that were carried over
    (roles.refine, {"reading"}),
    (in_order.refine, {"reading"}),  # needs the subjects, the quantities and the roles
    (paired.refine, {"reading"}),  # needs the roles
    (fixed.refine, {"reading"}),  # so does this
    (changed.refine, {"reading"}),  # needs the roles and the subjects
    (of_the_book.refine, {"reading"}),  # needs the roles
    (corrections.refine, {"reading"}),  # needs the quantities, and only one draft a number
    (climbing.refine, {"reading"}),  # needs the quantities and the subjects
    (conditions.refine, {"reading"}),
    (settled.refine, {"reading"}),  # needs the roles, the conditions and the subjects
    (believable.refine, {"reading"}),
    (unnamed.refine, {"reading"}),  # needs the roles; what is guessed so is carried over to no other reading
    (implied.refine, {"reading"}),  # needs the roles
    (tested.refine, {"finding", "reading"}),  # so does this
    (whose_end.refine, {"reading"}),  # needs the subjects; before what is judged is told with them
    (judged.refine, {"reading"}),  # needs the roles and the subjects
    (repeats.refine, {"work", "follow_up"}),  # what was implied and said is one
    (together.refine, {"finding"}),
    (cleared.refine, {"finding"}),  # needs the verdicts
    (not_owed.refine, {"follow_up"}),
    (said_once.refine, {"suspect"}),  # after all that makes suspects
    (hanging.refine, {"finding"}),  # last: only how a finding is worded
)
"The order, and the kinds of drafts of which one must be there for it to do anything: a third of the calls is saved."


def drafts_of(scene: Scene) -> list[Draft]:
    """The drafts of a sentence, refined, in the order of the text."""
    found: list[Draft] = []
    for match in matches(scene.tokens, scene.book, missing(scene)):
        if "bare" in match.rule.gives and _is_read(match, found):
            continue
        draft = FINDERS[match.rule.gives["kind"]](match, scene)
        if draft is not None:
            found += spread(draft, scene)
    if [draft for draft in found if draft.kind == "number"]:
        found = once(found)
    found += told(scene, found)
    found += listed(scene, found)
    found += owed(scene, found)
    found += worked(scene, found)
    for sift in SIFTERS if found else ():
        found = sift(found, scene)
    if more := shown(scene, found):
        found += passing.refine(meant.refine(more, scene), scene)
    found += again(scene, found)
    found += judged.told(scene, found)
    return _refined(found, scene)


def _refined(found: list[Draft], scene: Scene) -> list[Draft]:
    done, many = 0, -1
    while found and len(found) != many:  # a refiner adds drafts or takes some away, never both
        many = len(found)
        for n, refine in _serving(frozenset([draft.kind for draft in found])):
            if n >= done:
                found, done = refine(found, scene), n + 1
                if len(found) != many:
                    break
    return found


@cache
def _serving(kinds: frozenset[str]) -> list[tuple[int, Refiner]]:
    """The refiners that do anything with drafts of these kinds, with their places in the order."""
    return [(n, refine) for n, (refine, of) in enumerate(REFINERS) if not kinds.isdisjoint(of)]


def _is_read(match: Match, found: list[Draft]) -> bool:
    """Whether a surer rule has read the number of a rule that takes any."""
    return any(d.kind == "reading" and d.main == match.first and d.rank[0] >= match.rule.confidence for d in found)
