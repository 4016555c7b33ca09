"""The documents cannot lie: every command, room, quantity and class of words that they ought to name is named."""

from __future__ import annotations

import argparse
import re
import tomllib
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.cli.calls import build

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def commands() -> list[str]:
    """Every command of the program."""
    groups = [a for a in build()._actions if isinstance(a, argparse._SubParsersAction)]
    return sorted(name for group in groups for name in group.choices)


@pytest.mark.parametrize("command", commands())
def test_the_readme_shows_every_command(command: str) -> None:
    listed = README[README.index("## All commands") :].split("```")[1]
    assert command in re.findall(r"[a-z][a-z-]+", listed)


ROOMS = sorted(p.name for p in (ROOT / "worklog_tui").iterdir() if (p / "__init__.py").exists())


@pytest.mark.parametrize("room", ROOMS)
def test_the_map_names_every_room(room: str) -> None:
    assert f"`{room}/`" in DEVELOPERS


def test_every_file_that_the_map_names_is_there() -> None:
    for line in DEVELOPERS.splitlines():
        if line.startswith("| `") and line.count("|") >= 4:
            room, files = line.split("|")[1].strip(" `/"), line.split("|")[3]
            for name in files.replace("`", "").replace(",", " ").split():
                assert (ROOT / "worklog_tui" / room / name).exists(), f"{room}/{name}"


def test_every_kind_of_grammar_file_is_explained() -> None:
    for path in sorted(places.grammars().glob("*.toml")):
        assert path.name in DEVELOPERS, path.name
    for folder in sorted(p for p in places.grammars().iterdir() if p.is_dir()):
        assert f"`grammars/{folder.name}/`" in DEVELOPERS, folder.name


def test_every_key_of_a_quantity_file_is_explained() -> None:
    files = (places.grammars() / "quantities").glob("*.toml")
    for key in {key for path in files for key in tomllib.loads(path.read_text())} - {"quantity"}:
        assert f"`{key}`" in DEVELOPERS, key


def test_the_readme_begins_with_the_job_in_one_paragraph_and_two_commands() -> None:
    title, job, run, first, test, second = README.strip().split("\n\n")[:6]
    assert title.startswith("# ")
    assert len(job.split()) > 60
    assert "demo" in first
    assert "pytest" in second
    assert run.endswith(":")
    assert test.endswith(":")
