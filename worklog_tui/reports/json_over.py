"""What the commands that look a machine over print with --json."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from worklog_tui.logbook.compressions import BeforeAfter, CompressionTest
from worklog_tui.logbook.off_machine import AsFound
from worklog_tui.logbook.outcomes import BeforeStart, ClosingUp, DoNotStart, Left, Odd, OffPart
from worklog_tui.logbook.part_states import Fits, PartState
from worklog_tui.model import OpenItem
from worklog_tui.reports.json_out import fact, open_item, where
from worklog_tui.reports.sums_said import SumSaid


def parts(
    states: Sequence[PartState], shopping: Sequence[OpenItem], sizes: Sequence[Fits], sums: Sequence[SumSaid] = ()
) -> dict[str, Any]:
    """Parts in their states, the shopping list, sizes with what they are of, and the sums of money that were said."""
    return {
        "states": [
            {"part": one.part, "state": one.state, "at": where(one.place), "with": one.used or None,
             "stands": one.stands, "told": one.told}
            for one in states
        ],
        "shopping": [open_item(one) for one in shopping],
        "sizes": [{"what": one.what, "of": one.of, "at": where(one.place), "told": one.told} for one in sizes],
        "sums": [{"sum": one.text, "at": where(one.place), "told": one.told} for one in sums],
    }  # fmt: skip


def left(
    forbidden: Sequence[DoNotStart], states: Sequence[Left], off: Sequence[OffPart], found: Sequence[AsFound]
) -> dict[str, Any]:  # fmt: skip
    """How a machine was left."""
    return {
        "do_not_start": [{"at": where(one.place), "told": one.told} for one in forbidden],
        "left": [
            {"state": one.state, "about": one.about or None, "at": where(one.place), "asks": one.asks,
             "stops_a_start": one.stops, "told": one.told}
            for one in states
        ],
        "off": [
            {"part": one.work.part, "how": one.how, "at": where(one.place), "told": one.told,
             "start_tried_since": one.tried, "sizes": [fact(size, one.place) for size in one.sizes]}
            for one in off
        ],
        "as_found": [fact(one.reading, one.place) for one in found],
    }  # fmt: skip


def before_start(seen: BeforeStart, cautions: Sequence[str]) -> dict[str, Any]:
    """What to go through before a start."""
    return {
        **left(seen.forbidden, seen.left, seen.off, ()),
        "due": [open_item(one) for one in seen.due],
        "fluids": [{"fluid": one.name, "last_looked_at": where(one.place)} for one in seen.fluids],
        "stops_with": [where(place) for place in seen.stops_with],
        "attempts": [
            {"at": where(one.place), "ran": one.ran, "outcome": one.outcome.condition if one.outcome else None}
            for one in seen.attempts
        ],
        "cautions": list(cautions),
    }


def closing_up(asked: ClosingUp) -> dict[str, Any]:
    """The questions, numbered from 1."""
    return {
        "questions": [
            {"number": number, "kind": one.kind, "asks": one.asks, "at": where(one.place), "told": one.told,
             "answers": list(one.answers), "key": one.key,
             "read": fact(one.read, one.place) if one.read and one.place else None}
            for number, one in enumerate(asked.questions, 1)
        ],
        "more": asked.more,
    }  # fmt: skip


def odd(found: Sequence[Odd]) -> list[dict[str, Any]]:
    """What does not add up."""
    return [
        {"kind": one.kind, "says": one.says, "at": [where(place) for place in one.places], "told": list(one.told)}
        for one in found
    ]


def compression(tests: Sequence[CompressionTest], pairs: Sequence[BeforeAfter]) -> dict[str, Any]:
    """Compression tests, and readings before and after work."""
    return {
        "compression": [
            {
                "session": one.session, "unit": "psi", "lowest_share": one.lowest_share, "should_be": one.should_be,
                "should_be_source": one.source or None,
                "altitude_m": one.altitude,
                "cylinders": [
                    {"cylinder": c.cylinder or None, "dry": c.dry, "wet": c.wet,
                     "share": round(c.verdict.share, 3) if c.verdict else None,
                     "grade": c.verdict.grade if c.verdict else None, "wet_says": c.wet_says or None}
                    for c in one.cylinders
                ],
            }
            for one in tests
        ],
        "before_and_after": [
            {"work": fact(one.work, one.places[1]), "before": fact(one.before, one.places[0]),
             "after": fact(one.after, one.places[1])}
            for one in pairs
        ],
    }  # fmt: skip
