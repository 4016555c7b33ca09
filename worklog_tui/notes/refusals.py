"""What is said when a file cannot be read at all."""

from __future__ import annotations


class Unreadable(Exception):
    """A file that cannot be read as notes; its text is one plain sentence that says what to do."""
