"""Looks through the reader's grammar files as they are written: keys, what stands behind them, ids, unread files."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from difflib import get_close_matches
from typing import Any

from worklog_tui.rulebook.mistakes import Mistake, line_in
from worklog_tui.rulebook.own_tables import with_own
from worklog_tui.rulebook.reading_schema import (
    CHOICES,
    FIXED,
    LISTED,
    NUMBER,
    OURS,
    PAIRS,
    PATTERN,
    PLACES,
    ROWS,
    SAID,
    TABLE,
    TEXT,
    TEXTS,
    TOPS,
    WORDS,
    WRITTEN,
    YES,
    Row,
)  # fmt: skip
from worklog_tui.rulebook.rule_keys import rules_mistakes
from worklog_tui.rulebook.units import BadUnits, units_from

Files = Mapping[str, Mapping[str, Any]]


def mistakes_in(files: Files, texts: Mapping[str, str]) -> list[Mistake]:
    """Every mistake that the tables of the files show, with its line."""
    found = [m for name, data in files.items() for m in of_file(name, data, texts[name], files)]
    return found or [*rules_mistakes(files, texts), *_units(files, texts)]


def of_file(name: str, data: Mapping[str, Any], text: str, files: Files) -> Iterator[Mistake]:
    """What the tables of one file show; of the person's own word lists some names are known by ours in `files`."""
    own, base = name.startswith("own/"), name.removeprefix("own/")
    place = next((p for p in PLACES if base == p or (p.endswith("/") and base.startswith(p))), "")
    if own and place in OURS:
        yield Mistake(name, 0, "of this file only ours is read", "take it out of your folder")
    elif own and not place:
        folder, _, rest = base.partition("/")
        near = get_close_matches(f"{folder}/" if rest else base, PLACES, 1)
        cure = f"did you mean {near[0]!r}?" if near else f"name it one of: {', '.join(sorted(PLACES))}"
        yield Mistake(name, 0, "nothing reads a file of this name", cure)
    lines = text.splitlines()
    if place in WORDS:
        known = files.get(base, {}) if own and place in FIXED else data
        yield from _keys(name, lines, 0, "the file", data, Row({}, dict.fromkeys(known, TEXTS)))
    elif place in (*ROWS, *TOPS):
        top, rows = TOPS.get(place, Row({})), ROWS.get(place, {})
        besides = {key: value for key, value in data.items() if key not in rows}
        yield from _keys(name, lines, 0, "the file", besides, top, also=rows)
        for kind, row in rows.items():
            yield from _tables(name, lines, kind, data.get(kind, []), row)
        if place == "conditions/" and "verdict" in data:
            yield from _choice(name, lines, 0, "the file", ("condition", "verdict"), data["verdict"])


def _tables(name: str, lines: Sequence[str], kind: str, tables: Any, row: Row) -> Iterator[Mistake]:
    if not isinstance(tables, list) or not all(isinstance(table, Mapping) for table in tables):
        line = _line_of_key(lines, kind, 0)
        yield Mistake(name, line, f"{kind} is no list of tables", f"write [[{kind}]] above each")
        return
    starts = [n for n, line in enumerate(lines, 1) if line.strip().startswith(f"[[{kind}]]")]
    for n, table in enumerate(tables):
        called = table.get("id", table.get("name", table.get("short", "")))
        start = starts[n] if len(starts) == len(tables) else line_in(lines, *(f'"{v}"' for v in _quoted(table)))
        of = f"{kind} {called}".rstrip()
        yield from _keys(name, lines, start, of, table, row)
        for (owner, key), _ in CHOICES.items():
            inside = table.get(owner) if owner != kind else table
            if isinstance(inside, Mapping) and key in inside:
                yield from _choice(name, lines, start, of, (owner, key), inside[key])


def _keys(
    name: str, lines: Sequence[str], start: int, of: str, table: Mapping[str, Any], row: Row, also: Iterable[str] = ()
) -> Iterator[Mistake]:
    known = {**row.needs, **row.may}
    for key in row.needs:
        if key not in table:
            yield Mistake(name, start, f"{of} has no {key!r}", f"give it {WRITTEN[row.needs[key]].format(key)}")
    for key, value in table.items():
        line = _line_of_key(lines, key, start)
        if key not in known:
            near = get_close_matches(key, sorted({*known, *also}), 1)
            cure = f"did you mean {near[0]!r}?" if near else f"it may hold: {', '.join(sorted({*known, *also}))}"
            yield Mistake(name, line, f"{of} has the unknown key {key!r}", cure)
        elif not _is(value, known[key]):
            cure = f"write {WRITTEN.get(known[key], '[[rule.{}]] above each').format(key)}"
            yield Mistake(name, line, f"{of}: {key} is not {known[key]}", cure)


def _line_of_key(lines: Sequence[str], key: str, start: int) -> int:
    """The first line of a table that begins at `start` on which something is given to the key."""
    given = re.compile(rf"""(?<![\w.-])["']?{re.escape(key)}["']?\s*=|^\s*\[+{re.escape(key)}\]""")
    return next((n for n, line in enumerate(lines[max(start - 1, 0) :], max(start, 1)) if given.search(line)), start)


def _is(value: Any, wanted: str) -> bool:
    if wanted == TEXT:
        return isinstance(value, str) and bool(value.strip())
    if wanted == NUMBER:
        return isinstance(value, int | float) and not isinstance(value, bool)
    if wanted == PATTERN:
        return isinstance(value, str) and _compiles(value)
    if wanted == PAIRS:
        return isinstance(value, list) and all(_is(one, TEXTS) and len(one) == 2 for one in value)
    if wanted == LISTED:
        return isinstance(value, Mapping) and all(_is(one, TEXTS) for one in value.values())
    if wanted in (YES, TABLE):
        return isinstance(value, bool if wanted == YES else Mapping)
    inside = str if wanted in (TEXTS, SAID) else Mapping
    worded = wanted != SAID or all(any(map(str.isalnum, one)) for one in value if isinstance(one, str))
    return isinstance(value, list) and worded and all(isinstance(one, inside) for one in value)


def _compiles(pattern: str) -> bool:
    try:
        return bool(re.compile(pattern))
    except re.error:
        return False


def _choice(
    name: str, lines: Sequence[str], start: int, of: str, place: tuple[str, str], value: Any
) -> Iterator[Mistake]:
    if value not in CHOICES[place]:
        line = line_in(lines, f'"{value}"', after=start) or start
        cure = f"write one of: {', '.join(CHOICES[place])}"
        yield Mistake(name, line, f"{of}: the {place[1]} {value!r} is not known", cure)


def _units(files: Files, texts: Mapping[str, str]) -> Iterator[Mistake]:
    try:
        units_from(with_own(files, "units.toml"))
    except BadUnits as error:
        says, cure = error.args
        names = [name for name in ("own/units.toml", "units.toml") if name in files]
        quoted = [f'"{word}"' for word in says.split("'")[1::2]]
        places = [(name, line) for name in names if (line := line_in(texts[name].splitlines(), *quoted))]
        yield Mistake(*(places or [(names[-1], 0)])[0], says, cure)


def _quoted(table: Mapping[str, Any]) -> Iterator[str]:
    for value in table.values():
        yield from (
            [value]
            if isinstance(value, str)
            else [v for v in value if isinstance(v, str)]
            if isinstance(value, list)
            else []
        )
