"""What to say when a library that only some reports need is not installed."""

from __future__ import annotations

from importlib import import_module
from typing import Any


class Missing(Exception):
    """A library is not installed; the message says how to get it."""


def needed(module: str, package: str, what: str) -> Any:
    """The module; a Missing when it is not installed."""
    try:
        return import_module(module)
    except ModuleNotFoundError:
        told = f"{what} needs the package {package}: install it with `pip install {package}`, or all of them with"
        raise Missing(f"{told} `pip install 'worklog-tui[publish]'`.") from None
