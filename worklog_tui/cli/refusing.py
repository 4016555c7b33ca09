"""Why a command does not do what it was asked; the words are one plain sentence that says what to do."""

from __future__ import annotations


class BadInput(Exception):
    """What was given cannot be used."""


class WrongCall(Exception):
    """The call itself is wrong."""
