"""Plays the invented machines: what is read of them, against what a person read, less what is known to fail."""

from __future__ import annotations

import json
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

from tests.demos.told_right import failures, says
from worklog_tui import places
from worklog_tui.bench.extract_files import extract
from worklog_tui.bench.machines import read_card
from worklog_tui.reports.json_out import extraction
from worklog_tui.rulebook import load
from worklog_tui.rulebook.faults import load_faults

DEMOS = sorted(path.parent for path in places.demo_sessions().glob("*/machine.toml"))
demo = pytest.mark.parametrize("folder", DEMOS, ids=lambda folder: folder.name)


@lru_cache
def played(folder: Path) -> dict[str, Any]:
    """What extract prints for a demo machine."""
    grammars = [places.grammars()]
    written = folder / "comments.txt"
    sessions = sorted(folder.glob("session-*.*"))
    card, _ = read_card(folder / "machine.toml")
    comments = written if written.is_file() else None
    found = extract(load(grammars, places.cache()), load_faults(grammars), card, sessions, comments)
    return extraction(found.history, found.items, found.advice, found.comments)


def right(folder: Path, name: str) -> Any:
    return json.loads((folder / "expected" / name).read_text(encoding="utf-8"))


def known(folder: Path) -> set[str]:
    """What is known to fail; the list may only shrink."""
    rows = (folder / "expected" / "known_failures.txt").read_text(encoding="utf-8").splitlines()
    return {row for row in rows if row and not row.startswith("#")}


def log_failures(folder: Path) -> set[str]:
    """What is not right about open items, steps and comments."""
    log, printed = right(folder, "log.json"), played(folder)
    still = [i["about"] for i in printed["open_items"] if i["state"] == "open"]
    done = [i["about"] for i in printed["open_items"] if i["state"] == "done"]
    wrong = {f"not open {w[0]}" for w in log["open"] if not any(says(about, w) for about in still)}
    wrong |= {f"not done {w[0]}" for w in log["done"] if not any(says(about, w) for about in done)}
    wrong |= {
        f"wrongly open {about}" for about in still if not any(says(about, w) for w in log["open"] + log["optional"])
    }
    steps = [step["step"] for step in printed["next_steps"][:3]]
    if not steps or not any(says(steps[0], w) for w in log["next_steps"]["good"]):
        wrong.add("first step")
    for number, (one, wanted) in enumerate(zip(printed["comments"], log["comments"], strict=True)):
        kinds = wanted["is"] if isinstance(wanted["is"], list) else [wanted["is"]]
        if one["is"] not in kinds or (wanted.get("about") and not says(one["about"], wanted["about"])):
            wrong.add(f"comment {number} {one['is']} {one['about']}")
        if "answered_at" in wanted and one["answered_at"] != wanted["answered_at"]:
            wrong.add(f"comment {number} answered at {one['answered_at']}")
    return wrong


def bad_steps(folder: Path) -> set[str]:
    """Steps among the first three that would be wrong."""
    bad = right(folder, "log.json")["next_steps"]["bad"]
    steps = [step["step"] for step in played(folder)["next_steps"][:3]]
    return {f"bad step {step}" for step in steps if any(says(step, w) for w in bad)}


def fact_failures(folder: Path) -> set[str]:
    return failures(played(folder)["facts"], right(folder, "facts.json"))


def now_failing(folder: Path) -> set[str]:
    """Everything that is not right."""
    return fact_failures(folder) | log_failures(folder) | bad_steps(folder)


@demo
def test_the_facts_are_those_that_a_person_read(folder: Path) -> None:
    assert sorted(fact_failures(folder) - known(folder)) == []


@demo
def test_the_log_is_what_a_person_found_right(folder: Path) -> None:
    assert sorted(log_failures(folder) - known(folder)) == []


@demo
def test_no_step_that_would_be_wrong_is_among_the_first_three(folder: Path) -> None:
    assert sorted(bad_steps(folder) - known(folder)) == []
