"""What states are mostly said of: every state, part and system that grammars/bearers.toml names is one that we know."""

from __future__ import annotations

import tomllib
from pathlib import Path

from worklog_tui.rulebook import Rulebook

GRAMMARS = Path(__file__).parents[2] / "grammars"
KINDS = {"part", "fluid", "joint", "fastener", "machine", "quality", "material", "control"}
STATES = {"bad", "good", "noted", "outcome"}


def test_every_state_is_one_of_the_vocabulary(book: Rulebook) -> None:
    names = {s[1] for senses in book.table.values() for s in senses if s[0] in STATES}
    words = {said for said, senses in book.table.items() if any(s[0] in STATES for s in senses)}
    assert set(book.bearers) - names - words == set()


def test_every_bearer_is_a_part_a_kind_or_a_system(book: Rulebook) -> None:
    parts = {s[1] for senses in book.table.values() for s in senses if s[0] == "part"}
    ends = {" ".join(name.split()[n:]) for name in parts for n in range(len(name.split()))}
    systems = {tomllib.loads(p.read_text(encoding="utf-8"))["system"] for p in (GRAMMARS / "parts").glob("*.toml")}
    known = ends | {f"kind:{k}" for k in KINDS} | {f"system:{s}" for s in systems} | {"whole"}
    assert {name for names in book.bearers.values() for name in names} - known == set()


def test_a_machine_knocks_and_a_joint_weeps(book: Rulebook) -> None:
    assert "whole" in book.bearers["knocks"]
    assert "kind:joint" in book.bearers["weeping"]
    assert "kind:fluid" not in book.bearers["bent"]
