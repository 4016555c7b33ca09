"""How the machine was left, for somebody who was not there: asked about, never claimed."""

from __future__ import annotations

from worklog_tui.logbook.before_start import off_key
from worklog_tui.logbook.how_left import do_not_start, how_left, let_go
from worklog_tui.logbook.off_machine import off_machine
from worklog_tui.logbook.outcomes import OffPart
from worklog_tui.logbook.standing import standing
from worklog_tui.logbook.starts import start_attempts
from worklog_tui.reports.material import Material, spot
from worklog_tui.reports.repair_log import Told
from worklog_tui.reports.sentence import amount

_MOST = 12
"So many attempts to start it are told, the latest."


def forbidden(of: Material) -> tuple[Told, ...]:
    """What was said that forbids a start, and was not let go."""
    return tuple(Told(of.words(m.place.note), "", spot(m.place)) for m in do_not_start(of.history, _cleared(of)))


def left(of: Material) -> tuple[Told, ...]:
    """States that outlive a session, those that stop a start first."""
    found = sorted(how_left(of.history, _cleared(of)), key=lambda one: not one.stops)
    return tuple(
        Told(
            f"{one.state}, {one.about}" if one.about else one.state, one.asks, spot(one.place), of.words(one.place.note)
        )
        for one in found
    )


def off(of: Material) -> tuple[Told, ...]:
    """What came off or apart and was not heard refitted."""
    cleared = _cleared(of)
    return tuple(
        Told(f"{one.work.part}: {one.how}", _sizes(one), spot(one.place), of.words(one.place.note))
        for one in off_machine(of.history)
        if off_key(one) not in cleared
    )


def starts(of: Material) -> tuple[Told, ...]:
    """The attempts to start it, each with what was heard of it; those of which nothing was are counted."""
    found = [one for one in start_attempts(of.history) if one.place.session >= of.first][-_MOST:]
    told = [Told(one.outcome.condition, "", spot(one.place)) for one in found if one.outcome]
    silent = [one for one in found if not one.outcome]
    if silent:
        attempts = "one attempt" if len(silent) == 1 else f"{len(silent)} attempts"
        told.append(Told(f"{attempts} of which nothing was said", "", spot(silent[-1].place)))
    return tuple(told)


def _cleared(of: Material) -> frozenset[str]:
    return let_go(standing(of.history.acts))


def _sizes(one: OffPart) -> str:
    sizes = "; ".join(f"{amount(r.value, r.unit)} {r.subject}".strip() for r in one.sizes)
    return "; ".join(filter(None, (sizes, "a start was tried since" if one.tried else "")))
