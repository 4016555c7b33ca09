"""The one way by which a person's text reaches the screen."""

from __future__ import annotations

from textual.content import Content

_TAB = 4  # columns


def literal(text: str) -> Content:
    """The text as it stands: cleaned once more (old rows may hold anything), no markup, tabs as spaces."""
    if text.isascii() and text.isprintable():
        return Content(text)
    from worklog_tui.notes.cleaning import sanitise  # the first paint can do without

    return Content(sanitise(text).expandtabs(_TAB))
