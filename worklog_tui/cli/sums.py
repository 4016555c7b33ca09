"""The command of the shop sums."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from worklog_tui.cli.calls import Call
from worklog_tui.cli.output import say, say_json, width
from worklog_tui.cli.refusing import WrongCall

STANDING = "These sums are reminders: the machine's handbook, local codes and licensed practice come first."
_OF_THREADS = frozenset({"thread", "tap-drill", "torque"})


def list_sums(call: Call) -> None:
    """Prints which sums there are."""
    from worklog_tui.trade.shop_sums import SUMS

    say("\n".join(f"{name:13} {one.what}" for name, one in SUMS.items()))


def work_out(call: Call) -> None:
    """Prints one sum: formula, results in both systems of units, range, source, caution."""
    from worklog_tui.trade.shop_sums import work_out as worked

    given = vars(call)
    if call.sum in _OF_THREADS:
        from worklog_tui.bench.said_thread import designated

        given = given | {"given": designated(str(given["given"]))}
    try:
        found = worked(call.sum, given)
    except ValueError as wrong:
        raise WrongCall(f"{str(wrong)[:1].upper()}{str(wrong)[1:]}.") from None
    if call.json:
        plain: dict[str, Any] = {"sum": call.sum, **asdict(found), "standing": STANDING}
        say_json(plain)
        return
    from worklog_tui.reports.plain_sum import sum_text

    say(sum_text(found, width(), STANDING))
