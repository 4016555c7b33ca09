"""What is said of a figure that was just read, with no part named: `eighteen megohms. Excellent for its age`, `I'll
accept that`, `not what I had hoped for` are said of what was read.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from worklog_tui.extract.finders.senses import VERDICTS
from worklog_tui.extract.said import says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.polarity import DENIES, TURNED
from worklog_tui.extract.talk.read_before import lately_read, measured_thing
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook.patterns import Rule

JUDGED = Rule("finding.judged-figure", "", {"kind": "finding"}, (), (), 0.6)
OPENERS = 7
"Small words before the judgement."
UNJUDGED = frozenset({"duration", "run_time", "thread", "mass", "volume"})
"Quantities of which it is seldom told what is thought of them."
ENDS = frozenset("and so but then though mind anyway".split())
TAILS = frozenset("for considering given at all with here now there again".split())
"With these it is told for what it is so: for its age, for what it is, all things considered."


class Judgement(NamedTuple):
    """A verdict and the tokens that tell it, both inclusive."""

    verdict: str
    first: int
    last: int


def told(scene: Scene, found: list[Draft]) -> list[Draft]:
    """The finding of a sentence that only judges the figure of the one before it."""
    thing = lately_read(scene) if _may_judge(scene) else None
    return _findings([(0, thing)], found, scene) if thing is not None else []


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, with the findings of what was read where a typed line judges it at once: `.02 ok`."""
    read = [d for d in drafts if d.kind == "reading"] if scene.typed else []
    return drafts + _findings(list(_starts(read, scene)), drafts, scene) if read else drafts


def _findings(starts: list[tuple[int, Thing]], drafts: list[Draft], scene: Scene) -> list[Draft]:
    made: list[Draft] = []
    for start, thing in starts:
        said = _judgement(scene, start)
        if said is not None and thing.kind not in ("tool", "unknown") and not _said(drafts + made, said, scene):
            made.append(_finding(said, thing))
    return made


def _may_judge(scene: Scene) -> bool:
    """Whether the sentence names no part and no figure."""
    return not scene.things(range(len(scene.tokens))) and all(t.kind not in ("number", "amount") for t in scene.tokens)


def _starts(read: list[Draft], scene: Scene) -> Iterator[tuple[int, Thing]]:
    """Where a judgement may begin, right behind a figure, with what it is of."""
    for n, draft in enumerate(read):
        if draft.fields["quantity"] not in UNJUDGED and (thing := _of(read[: n + 1], scene)) is not None:
            yield draft.last + 1, thing


def _of(read: list[Draft], scene: Scene) -> Thing | None:
    """What the last reading is of; where it only tells what another should be, what that one is of."""
    last = read[-1]
    if last.fields["role"] == "specified":
        if len(read) == 1:
            return lately_read(scene, last.fields["quantity"])
        last = read[-2] if read[-2].fields["quantity"] == last.fields["quantity"] else last
    return measured_thing(last.fields["quantity"], last.thing) if last.fields["role"] == "measured" else None


def _judgement(scene: Scene, start: int) -> Judgement | None:
    """The judgement that begins at token `start`, small words before it; None where anything else is told there."""
    denied: int | None = None
    for k in range(start, min(start + OPENERS, len(scene.tokens))):
        token = scene.tokens[k]
        if token.thing is not None or token.kind in ("number", "amount"):
            return None
        if (said := _said_here(scene, k)) is not None:
            verdict, last = said
            if not _over(scene, last + 1):
                return None
            return Judgement(TURNED[verdict] if denied is not None else verdict, k if denied is None else denied, last)
        if token.low in DENIES:
            denied = k
        elif not _small(scene, token):
            return None
    return None


def _small(scene: Scene, token: Token) -> bool:
    lead = token.low.partition(" ")[0]
    if token.kind in ("comma", "stop") or token.sense("degree", "break") is not None:
        return True
    return lead in scene.book.owed["judging"]


def _said_here(scene: Scene, k: int) -> tuple[str, int] | None:
    """The verdict of the words from token k on, and their last token."""
    for name, verdict in (("as_wished", "good"), ("accepts", "good"), ("fine", "good"), ("ill", "bad")):
        if n := says(scene, name, k, 6):
            return verdict, k + n - 1
    token = scene.tokens[k]
    verdicts = {s.cls for s in token.senses if s.cls in VERDICTS}
    if token.sense("judged") is not None and len(verdicts) == 1:
        verdict = verdicts.pop()
        return (verdict, k) if verdict in TURNED else None
    return None


def _over(scene: Scene, k: int) -> bool:
    """Whether the clause ends there, but for `for its age`, `for what it is`, `considering`."""
    if k >= len(scene.tokens):
        return True
    token = scene.tokens[k]
    if token.kind in ("stop", "comma") or token.low.partition(" ")[0] in ENDS or token.sense("break") is not None:
        return True
    span = range(k, scene.clause(k).stop)
    return token.low.partition(" ")[0] in TAILS and not any(scene.tokens[i].kind in ("number", "amount") for i in span)


def _said(drafts: list[Draft], said: Judgement, scene: Scene) -> bool:
    """Whether a finding stands there already."""
    span = scene.clause(said.first)
    return any(d.kind == "finding" and (d.main in span or said.first <= d.main <= said.last) for d in drafts)


def _finding(said: Judgement, thing: Thing) -> Draft:
    fields = {"verdict": said.verdict, "state": "", "opposite": "", "weak": False}
    return Draft("finding", said.first, said.last, JUDGED, fields, thing=thing, filled={"part"},
                 confidence=JUDGED.confidence, first_used=said.first, last_used=said.last,
                 trail=["of what was read before it"])  # fmt: skip
