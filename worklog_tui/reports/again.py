"""Why an item that was dealt with is open again, in words."""

from __future__ import annotations

from worklog_tui.model import OpenItem
from worklog_tui.reports.when import where


def open_again(item: OpenItem) -> str:
    """Such as `open again: found again (cracked) in session 2 at 13:20, after it was dealt with in session 1 at 9:40`.

    Empty for an item that was never dealt with, and for one that is done.
    """
    if item.again is None:
        return ""
    how, what = item.again.how, f" ({item.again.what})" if item.again.what else ""
    at = f" in {where(item.again.place)}" if item.again.place else ""
    was = f" in {where(item.again.dealt_with)}" if item.again.dealt_with else ""
    return f"open again: {how}{what}{at}, after it was dealt with{was}"
