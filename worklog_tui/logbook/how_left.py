"""How the machine was left: states that outlive a session, and marks that forbid a start."""

from __future__ import annotations

from worklog_tui.logbook.mending import things_of
from worklog_tui.logbook.outcomes import DoNotStart, Left
from worklog_tui.logbook.same_thing import Thing, same
from worklog_tui.logbook.starts import ran_at
from worklog_tui.logbook.trade_words import LeftState, trade_words
from worklog_tui.model import Act, Fact, History, Work


def how_left(history: History, cleared: frozenset[str] = frozenset()) -> tuple[Left, ...]:
    """The states that were heard and not heard ended; `cleared` are those a person let go, as `left_key` names them."""
    words = trade_words()
    facts: dict[str, list[Fact]] = {}
    for fact in history.facts():
        facts.setdefault(fact.main.note, []).append(fact)
    still: dict[tuple[str, str], tuple[Left, LeftState, Thing | None]] = {}
    for record in history.sessions:
        for note in record.notes:
            here = facts.get(note.uid, [])
            hinted = words.hinted(note.words)
            if not hinted and not here:
                continue
            said = note.words if hinted else ""
            still = {key: one for key, one in still.items() if not _ends(one[1], one[2], said, here)}
            for state in words.states if hinted else ():
                if state.says.search(note.words) and not (state.never and state.never.search(note.words)):
                    if state.ends_with and state.ends_with.search(note.words):
                        continue
                    about = None if state.names_its_thing else next((one for one in here if one.about), None)
                    part = things_of(about)[0] if about else None
                    left = Left(
                        state.name, about.about if about else "", history.place(note.uid), note.words, state.asks,
                        state.stops,
                    )  # fmt: skip
                    still[state.name, part.head if part else ""] = (left, state, part)
    return tuple(left for left, _, _ in still.values() if left_key(left) not in cleared)


def left_key(left: Left) -> str:
    """How a person's act names a state that is asked about."""
    return f"{left.place.note}/left {left.state}/0/0/0"


def let_go(acts: tuple[Act, ...] | list[Act]) -> frozenset[str]:
    """What a person said need not be asked again, of the acts that stand."""
    return frozenset(act.target for act in acts if act.verb == "let go")


def _ends(state: LeftState, part: Thing | None, words: str, here: list[Fact]) -> bool:
    if state.ends_with and state.ends_with.search(words):
        return True
    done = [fact for fact in here if isinstance(fact, Work) and fact.action in state.ends]
    return any(part is None or fact.action == "start" or same(things_of(fact)[0], part) for fact in done)


def do_not_start(history: History, cleared: frozenset[str] = frozenset()) -> tuple[DoNotStart, ...]:
    """What forbids a start: said after the machine last ran, and not let go."""
    last = max(ran_at(history), default=-1)
    found = []
    for record in history.sessions:
        for note in record.notes:
            place = history.place(note.uid)
            if place.order > last and trade_words().do_not_start.search(note.words):
                found.append(DoNotStart(place, note.words))
    return tuple(one for one in found if f"{one.place.note}/do not start/0/0/0" not in cleared)
