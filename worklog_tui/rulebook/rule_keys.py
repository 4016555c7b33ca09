"""Looks through the patterns of all sayings together: says, ids, what they give, what is switched off."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from typing import Any

from worklog_tui.rulebook.mistakes import Mistake, line_in
from worklog_tui.rulebook.says import SaysError, parse

Files = Mapping[str, Mapping[str, Any]]


def rules_mistakes(files: Files, texts: Mapping[str, str]) -> Iterator[Mistake]:
    """What is wrong with them, with its line; how their tables are written was looked through before."""
    sayings = {name: data for name, data in files.items() if name.removeprefix("own/").startswith("sayings/")}
    ours = [rule["gives"] for name, data in sayings.items() if not _own(name) for rule in data.get("rule", ())]
    seen: dict[str, str] = {}
    for name, data in sayings.items():
        lines = texts[name].splitlines()
        for rule in data.get("rule", ()):
            line = line_in(lines, f'"{rule["id"]}"')
            if rule["id"] in seen:
                cure = f"give it another id (the other stands in {seen[rule['id']]}); off = [...] switches that one off"
                yield Mistake(name, line, f"rule {rule['id']} stands there twice", cure)
            seen.setdefault(rule["id"], name)
            try:
                parse(rule["says"])
            except SaysError as error:
                at = line_in(lines, "says", after=line) or line
                yield Mistake(name, at, f"the says of {rule['id']}: {error.says}", error.cure)
            yield from _gives(name, line, rule, ours) if _own(name) else ()
    yield from _off(sayings, texts, seen)


def _own(name: str) -> bool:
    return name.startswith("own/")


def _gives(name: str, line: int, rule: Mapping[str, Any], ours: list[Mapping[str, Any]]) -> Iterator[Mistake]:
    """Keys of what it gives that no pattern of ours of that kind has."""
    kind = rule["gives"].get("kind")
    if kind is None:
        cure = 'write gives = { kind = "finding" }'
        yield Mistake(name, line, f"rule {rule['id']} does not tell what kind of fact it gives", cure)
        return
    known = {key for gives in ours if gives["kind"] == kind for key in gives}
    for key in rule["gives"]:
        if known and key not in known:
            near = get_close_matches(key, sorted(known), 1)
            cure = f"did you mean {near[0]!r}?" if near else f"it may hold: {', '.join(sorted(known))}"
            yield Mistake(name, line, f"rule {rule['id']} gives a {kind} with the unknown key {key!r}", cure)


def _off(sayings: Files, texts: Mapping[str, str], seen: Mapping[str, str]) -> Iterator[Mistake]:
    for name, data in sayings.items():
        for rule_id in (one for one in data.get("off", ()) if one not in seen):
            near = get_close_matches(rule_id, sorted(seen), 1)
            cure = f"did you mean {near[0]!r}?" if near else "explain names the pattern of each fact"
            line = line_in(texts[name].splitlines(), f'"{rule_id}"')
            yield Mistake(name, line, f"no rule is called {rule_id!r}, so nothing is switched off", cure)
