"""Looks through the tables of the fault files as they are written: missing and unknown keys, ids said twice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from difflib import get_close_matches
from typing import Any

from worklog_tui.rulebook.mistakes import Mistake

_JOB = {"say", "minutes", "access", "cautions", "parts"}
NEEDS: Mapping[str, tuple[str, ...]] = {
    "fault": ("id", "name", "prior", "repair"), "check": ("id", "say", "minutes", "outcomes", "base", "p"),
    "symptom": ("id", "says", "leak", "heard", "causes"), "access": ("id", "says", "minutes"),
    "caution": ("tag", "says", "source"), "danger": ("id", "any", "says"), "never": ("id", "any", "says"),
    "has": ("id",), "discovery": ("id", "heard"), "kind": ("id", "words", "check", "minutes", "bad", "good"),
}  # fmt: skip
"""What a table of each kind must hold."""
MAY: Mapping[str, tuple[str, ...]] = {
    "fault": ("system", "heard", "look", "measure", "mended_by", "applies_when", "source", "told"),
    "check": ("access", "cautions", "parts", "combine", "heard", "means", "only_for", "answers", "quantity", "subjects",
              "bands", "unit", "applies_when", "source", "told"),
    "symptom": ("cured", "first", "vague", "general", "running", "ends_running", "applies_when", "source", "told"),
    "access": ("needs", "parts"), "caution": ("words", "applies_when", "unless"),
    "danger": ("cautions", "applies_when", "say", "cleared_by", "works", "told", "mended",
               "make_safe"),
    "never": ("cautions", "applies_when"),
    "has": ("kind", "said", "not_kind", "fuel", "ignition", "unless_told", "never", "kind_alone"),
    "discovery": ("voids", "quantities"),
    "kind": ("cautions", "not_ill", "measured"),
}  # fmt: skip
"""What it may hold besides."""
INSIDE: Mapping[str, set[str]] = {
    "heard": {"parts", "states", "verdicts", "causes"}, "cured": {"parts", "states", "verdicts", "causes"},
    "look": _JOB, "repair": _JOB, "measure": {"quantity", "subjects", "within"},
    "applies_when": {"fuel", "ignition", "kind", "not_kind", "has", "lacks"},
}  # fmt: skip
"""What the tables inside them may hold."""


def mistakes_in(name: str, text: str, data: Mapping[str, Any]) -> list[Mistake]:
    """Every mistake of one file that its keys show, with its line."""
    return [m for kind in NEEDS for m in _of_kind(name, text.splitlines(), kind, data.get(kind, []))]


def _of_kind(name: str, lines: Sequence[str], kind: str, tables: Any) -> Iterator[Mistake]:
    starts = [n for n, line in enumerate(lines, 1) if line.strip().startswith(f"[[{kind}]]")]
    seen: dict[str, int] = {}
    if not isinstance(tables, list):
        yield Mistake(name, 0, f"{kind} is no list of tables", f"write [[{kind}]] above each")
        return
    for n, table in enumerate(tables):
        start = starts[n] if n < len(starts) else 0
        called = str(table.get("id", table.get("tag", "")))
        of = f"{kind} {called}".rstrip()
        for key in NEEDS[kind]:
            if key not in table:
                yield Mistake(name, start, f"{of} has no {key!r}", f"give it {key!r}")
        if called in seen and called:
            yield Mistake(name, start, f"{of} stands there twice", f"take one out, or rename it (line {seen[called]})")
        seen.setdefault(called, start)
        known = {*NEEDS[kind], *MAY[kind]}
        yield from _unknown(name, lines, start, of, table, known)
        for key, inside in INSIDE.items():
            if isinstance(table.get(key), Mapping) and (kind, key) != ("check", "heard"):
                yield from _unknown(name, lines, start, f"{of}: {key}", table[key], inside)


def _unknown(
    name: str, lines: Sequence[str], start: int, of: str, table: Mapping[str, Any], known: set[str]
) -> Iterator[Mistake]:
    for key in table:
        if key not in known:
            near = get_close_matches(key, sorted(known), 1)
            cure = f"did you mean {near[0]!r}?" if near else f"it may hold: {', '.join(sorted(known))}"
            line = next((n for n, text in enumerate(lines[start - 1 :], start) if key in text), start) if start else 0
            yield Mistake(name, line, f"{of} has the unknown key {key!r}", cure)
