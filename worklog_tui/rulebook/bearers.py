"""What states are mostly said of: `knocks` of an engine, `weeps` of a joint; from grammars/bearers.toml."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

Bearers = Mapping[str, frozenset[str]]
"Name of a state, or word of an outcome -> names of parts, `kind:…` and `system:…` that mostly have it."
FILE = "bearers.toml"


def read_bearers(files: Mapping[str, Mapping[str, Any]]) -> dict[str, frozenset[str]]:
    """The tables of our file, and of the person's own beside it; what both say of a state counts together."""
    found: dict[str, frozenset[str]] = {}
    for name in (FILE, f"own/{FILE}"):
        for row in files.get(name, {}).get("bears", []):
            by = frozenset(row["by"])  # one and the same for all its states
            for state in row["states"]:
                found[state] = found[state] | by if state in found else by
    return found
