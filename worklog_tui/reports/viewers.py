"""What viewers wrote, by what they ask: how many, what the log says to it, which cause it speaks for, a draft reply."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from worklog_tui.logbook.same_thing import Thing, marks_agree, same, thing
from worklog_tui.model import Advice, CommentReading, Note, OpenItem, Place, Suspect, clock
from worklog_tui.reports.film import film_second
from worklog_tui.reports.material import Material
from worklog_tui.reports.replies import Replies
from worklog_tui.reports.when import where

WORDINGS = 3
"So many wordings of a question are shown."


@dataclass(frozen=True, slots=True)
class ViewerGroup:
    """Comments that ask or suggest the same."""

    kind: str
    "question or suggestion."
    about: str
    count: int
    wordings: tuple[str, ...]
    answered: Place | None = None
    where: str = ""
    "Where the log tells it, with the film time when it is known."
    said: str = ""
    "What the log tells there."
    speaks_for: str = ""
    "The cause or step that a suggestion speaks for."
    open_item: str = ""
    "Why it is on the list, when it is."
    reply: str = ""
    perhaps: bool = False
    "Whether the log only perhaps tells it there: the question stays open."

    @property
    def settled(self) -> bool:
        """Whether the log answers it."""
        return self.answered is not None and not self.perhaps


@dataclass(frozen=True, slots=True)
class Viewers:
    """All groups, the largest first, and how many comments need no answer."""

    groups: tuple[ViewerGroup, ...]
    chatter: int

    @property
    def comments(self) -> int:
        """How many comments there were."""
        return self.chatter + sum(group.count for group in self.groups)


def viewers(of: Material, replies: Replies) -> Viewers:
    """The comments of a machine in groups."""
    rows: dict[tuple[str, str], list[CommentReading]] = {}
    chatter = 0
    for reading in of.comments:
        if reading.kind == "chatter" or not reading.about:
            chatter += 1
        else:
            rows.setdefault((reading.kind, reading.about), []).append(reading)
    seen = _Seen(of)
    groups = (_group(seen, kind, about, found, replies) for (kind, about), found in rows.items())
    return Viewers(tuple(sorted(groups, key=lambda group: -group.count)), chatter)


class _Seen:
    """What the log knows that bears on a comment."""

    def __init__(self, of: Material) -> None:
        self.notes: dict[str, Note] = {n.uid: n for record in of.history.sessions for n in record.notes}
        self.items = [item for item in of.items if item.state not in ("done", "noticed")]
        self.hopes = list(_hopes(of.advice, of))


def _hopes(advice: Advice, of: Material) -> Iterable[tuple[Thing, str]]:
    """Causes and steps with the words they are told in: what the log holds likely first, then what was suspected."""
    for cause in advice.causes:
        if cause.grade != "unlikely":
            yield thing(cause.name), f"{cause.name}, {cause.grade}"
    for step in advice.steps:
        yield thing(step.step), f"next step: {step.step}"
    for _, fact in of.everything():
        if isinstance(fact, Suspect) and fact.standing == "suspected":
            yield thing(fact.cause, fact.name), f"suspected: {fact.cause}"


def _group(seen: _Seen, kind: str, about: str, found: Sequence[CommentReading], replies: Replies) -> ViewerGroup:
    first = found[0]
    wordings = tuple(dict.fromkeys(r.comment.words for r in found))[:WORDINGS]
    speaks = _speaks_for(seen, about) if kind == "suggestion" else ""
    note = seen.notes.get(first.answered.note) if first.answered else None
    place = _where(first.answered, note)
    said = note.words if note else ""
    item = next((i for i in seen.items if _raised(i, about, found)), None)
    in_film = note is not None and film_second(note) is not None
    told = "perhaps" if first.perhaps else "answered" if in_film else "known"
    case = told if note else "speaks" if speaks else "open"
    reply = replies.to(kind, case, about=about, where=place, said=_short(said), cause=speaks, count=str(len(found)))
    on_list = "" if item is None else "left so on purpose" if item.state == "left so" else "on the list"
    return ViewerGroup(
        kind, about, len(found), wordings, first.answered, place, said, speaks, on_list, reply, first.perhaps
    )


def _raised(item: OpenItem, about: str, found: Sequence[CommentReading]) -> bool:
    return item.comment is not None and (item.about == about or item.comment in {r.comment.number for r in found})


def _speaks_for(seen: _Seen, about: str) -> str:
    one = thing(about)
    for hope, words in seen.hopes:
        shared = one.words & hope.words
        if same(one, hope) or (shared & {one.head, hope.head} and marks_agree(one, hope)):
            return words
    return ""


def _where(place: Place | None, note: Note | None) -> str:
    if place is None or note is None:
        return ""
    second = film_second(note)
    return where(place) if second is None else f"in the film of session {place.session} at {clock(second)}"


def _short(said: str) -> str:
    return said if len(said) <= 160 else said[:160].rsplit(" ", 1)[0] + " …"


def viewers_json(found: Viewers) -> dict[str, Any]:
    """The groups as JSON data."""
    return {
        "comments": found.comments,
        "chatter": found.chatter,
        "groups": [
            {
                "is": g.kind, "about": g.about, "count": g.count, "wordings": list(g.wordings),
                "answered_at": [g.answered.session, g.answered.at] if g.answered else None, "where": g.where or None,
                "said": g.said or None, "perhaps": g.perhaps, "speaks_for": g.speaks_for or None,
                "open_item": g.open_item or None, "reply": g.reply,
            }
            for g in found.groups
        ],
    }  # fmt: skip
