"""A shipped table with the person's own beside it: what both hold counts together, the person's word wins."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any


def with_own(files: Mapping[str, Mapping[str, Any]], name: str) -> dict[str, Any]:
    """The file of that name, and what the person's own file of the same name adds to it."""
    return _both(files[name], files.get(f"own/{name}", {}))


def _both(ours: Mapping[str, Any], own: Mapping[str, Any]) -> dict[str, Any]:
    found = dict(ours)
    for key, value in own.items():
        here = found.get(key)
        if isinstance(here, Mapping) and isinstance(value, Mapping):
            found[key] = _both(here, value)
        else:
            found[key] = [*here, *value] if isinstance(here, list) and isinstance(value, list) else value
    return found
