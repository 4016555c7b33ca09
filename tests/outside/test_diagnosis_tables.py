"""Public fault-finding tables: each row as the only complaint of an otherwise unknown machine.

The rows are those of U.S. government publications and old textbooks, as named in each. At least 80 % of the causes that
a row lists must be in the fault files, two of the first four must be among the three likeliest where the table is
ordered, and the first step must be one of the simple checks: those of the row, and the looks that cost nothing (common
practice). Run with -s to see the shares.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import pytest

from tests.diagnosis.workshop import Log
from worklog_tui import places
from worklog_tui.diagnosis import advise
from worklog_tui.model import Advice, Machine
from worklog_tui.rulebook.faults import FaultBook, load_faults

SMALL = Machine("Lawn roller", "single-cylinder petrol engine", "petrol", "magneto", 1)
CAR = Machine("Old van", "four-cylinder petrol van", "petrol", "battery", 4)
DIESEL = Machine("Air set", "two-cylinder diesel compressor set", "diesel", "none", 2)


@dataclass(frozen=True)
class Row:
    """One row: the complaint as it is heard, and the fault of each listed cause (empty: not in the files)."""

    source: str
    machine: Machine
    heard: tuple[str, str]
    causes: tuple[str, ...]
    simple: tuple[str, ...]
    ordered: bool = False


ROWS = [
    Row("FAA-H-8083-32 table as reproduced: fails to start", SMALL, ("engine", "won't start"),
        ("fuel.empty", "fuel.priming", "fuel.priming", "carb.choke", "ign.plug", "ign.plug_lead", "bat.flat",
         "ign.points_dirty", "fuel.water", "comp.rings", "ign.impulse", "ign.plug", "", "ign.kill_circuit"),
        ("fuel.empty", "fuel.priming", "carb.choke", "ign.spark_test", "fuel.plug_wet", "fuel.stale",
         "ign.kill_circuit")),
    Row("FAA-H-8083-32 table as reproduced: fails to idle", SMALL, ("engine", "won't idle"),
        ("carb.mixture", "carb.mixture", "carb.air_leak", "comp.valves", "ign.plug", "fuel.priming"),
        ("carb.mixture", "carb.air_leak", "air.spray", "comp.gauge", "ign.spark_test", "ign.plug")),
    Row("small-engine maker's checklist: no spark", SMALL, ("spark", "no spark"),
        ("ign.interlock", "ign.kill_circuit", "ign.air_gap", "ign.coil"),
        ("ign.interlock", "ign.kill_circuit", "ign.air_gap", "ign.plug", "ign.plug_lead")),
    Row("Whitman, Tractor Principles (1920): stops", SMALL, ("engine", "stalls"),
        ("ign.points_gap", "fuel.filter", "fuel.empty", "fuel.vent"),
        ("fuel.empty", "fuel.vent", "ign.spark_test", "fuel.flow", "fuel.filter")),
    Row("Whitman, Tractor Principles (1920): arcing points", SMALL, ("contact breaker points", "arcing"),
        ("ign.condenser", "ign.points_dirty"), ("ign.condenser", "ign.points_dirty"), True),
    Row("Whitman, Tractor Principles (1920): will not start after 12 to 20 cranks", SMALL, ("engine", "won't start"),
        ("fuel.empty", "fuel.empty", "carb.needle_stuck", "fuel.stale", "carb.floods", "fuel.water",
         "ign.plug", "ign.points_dirty"),
        ("fuel.empty", "fuel.stale", "fuel.plug_wet", "ign.spark_test", "fuel.priming", "carb.choke")),
    Row("TM 5-4240-501-14P p. 289: kicks, timing off", SMALL, ("engine", "kicks back"), ("ign.key",),
         ("ign.key", "ign.timing"), True),
    Row("generator-set maker's page: weak or no spark", SMALL, ("spark", "weak spark"),
        ("ign.plug", "ign.plug_lead", "ign.plug_gap", "ign.points_gap", "ign.coil", "ign.condenser"),
        ("ign.plug", "ign.plug_lead", "ign.plug_gap", "ign.kill_circuit", "ign.points_gap")),
    Row("common practice: battery ignition, no spark, cranks normally", CAR, ("spark", "no spark"),
        ("ign.feed", "ign.points_dirty", "ign.points_gap", "ign.condenser", "ign.points_earth", "ign.coil",
         "ign.distributor"),
        ("ign.feed", "ign.points_dirty", "ign.points_gap", "ign.distributor", "ign.plug", "ign.plug_lead")),
    Row("common practice: misses at speed under load", CAR, ("engine", "misfiring"),
        ("ign.plug_gap", "ign.points_spring", "ign.points_gap", "ign.coil", "fuel.filter"),
        ("ign.plug_gap", "ign.plug", "ign.distributor", "ign.points_gap", "ign.plug_lead", "ign.spark_test",
         "ign.feed")),
    Row("T-10-4320-309-14 p. 4-2: small diesel fails to start", DIESEL, ("engine", "won't start"),
        ("diesel.injector", "diesel.pump", "diesel.lift_pump"),
        ("diesel.empty", "diesel.line", "diesel.air", "diesel.heat")),
    Row("T-5-3895-348-14P: low compression of a diesel", DIESEL, ("compression", "low"),
        ("comp.rings", "comp.rings", "comp.head_gasket", "comp.valves", "diesel.injector", "comp.bore"),
        ("comp.clearance", "comp.stuck_valve", "comp.leak_down", "comp.decompressor", "comp.head_gasket")),
    Row("NAVEDTRA 14264 p. 209: white smoke", DIESEL, ("engine", "white smoke"),
        ("comp.rings", "comp.bore", "comp.valves", "comp.head_gasket", "diesel.injector", "diesel.fuel_bad"),
        ("diesel.heat", "diesel.air", "comp.gauge", "diesel.injector", "diesel.fuel_bad")),
    Row("NAVEDTRA 14264 p. 209: black smoke", DIESEL, ("engine", "black smoke"),
        ("diesel.fuel_bad", "diesel.air_filter", "air.exhaust", "diesel.timing", "diesel.pump",
         "comp.clearance", "diesel.injector",
         "diesel.timing"),
        ("diesel.air_filter", "diesel.fuel_bad", "diesel.injector")),
    Row("T-5-3805-254-14P-2 p. 248: overheats", CAR, ("engine", "overheating"),
        ("cool.low", "cool.low", "cool.belt", "cool.radiator", "cool.hose", "cool.cap", "cool.pump", "",
         "cool.air", "cool.air",
         "cool.thermostat", "ign.timing", "ign.advance", "carb.mixture", "comp.valves"),
        ("cool.low", "cool.belt", "cool.air", "cool.cap", "cool.hose"), True),
    Row("NAVEDTRA 14264 p. 245: low oil pressure", CAR, ("oil pressure", "low"),
        ("oil.low", "oil.bearings", "oil.low", "oil.relief", "oil.pickup", "oil.pump", "oil.pickup"),
        ("oil.low", "oil.gauge", "oil.relief"), False),
    Row("T-5-3810-307-24: battery undercharged", CAR, ("charging", "not charging"),
        ("chg.belt", "chg.wiring", "bat.connections", "bat.flat", "chg.regulator", "chg.generator"),
        ("chg.belt", "chg.wiring", "chg.volts")),
    Row("Witte, Automobile Storage Battery (1922): generator will not build up", CAR, ("dynamo", "not charging"),
        ("chg.brushes", "chg.regulator", "chg.wiring", "chg.field"), ("chg.belt", "chg.wiring", "chg.volts",
         "chg.brushes")),
    Row("T-5-3895-383-24 p. 300: starter does not turn", CAR, ("starter motor", "dead"),
        ("bat.flat", "bat.connections", "start.solenoid", "start.motor", "engine.tight"),
        ("start.volts", "bat.flat", "bat.connections", "engine.tight"), True),
    Row("T-10-3930-671-24 p. F-299: slow cranking", CAR, ("cranking", "slow cranking"),
        ("bat.flat", "bat.connections", "start.switch", "start.motor", "engine.tight"),
        ("start.volts", "bat.flat", "bat.connections", "engine.tight"), True),
    Row("T-5-3805-254-20-1 p. 2-86: grinds", CAR, ("starter motor", "grinding"), ("start.drive",),
         ("start.drive", "bat.flat"), True),
]  # fmt: skip


@lru_cache(maxsize=1)
def faults() -> FaultBook:
    return load_faults([places.grammars()])


@lru_cache(maxsize=64)
def advice_for(row: int) -> Advice:
    part, state = ROWS[row].heard
    log = Log(ROWS[row].machine).found(part, state, state=state)
    return advise(log.history(), [], faults(), None)


@pytest.mark.parametrize("row", range(len(ROWS)), ids=[r.source for r in ROWS])
def test_the_complaint_is_heard_and_gets_a_step(row: int) -> None:
    advice = advice_for(row)
    assert advice.complaint
    assert advice.steps


def test_the_listed_causes_are_in_the_files() -> None:
    known = faults().faults
    shares = {}
    for row in ROWS:
        shares[row.source] = sum(c in known for c in row.causes) / len(row.causes)
    print("\nlisted causes that the files have:")
    for source, share in shares.items():
        print(f"  {share:4.0%}  {source}")
    assert all(share >= 0.8 for share in shares.values())


def test_the_likeliest_are_those_listed_first() -> None:
    hits = []
    for n, row in enumerate(ROWS):
        if row.ordered:
            top = {c.id for c in advice_for(n).causes[:3]}
            wanted = min(2, len(set(row.causes[:4])))
            hits.append((len(top & set(row.causes[:4])) >= wanted, row.source, sorted(top)))
    print("\n", *hits, sep="\n  ")
    assert all(hit for hit, _, _ in hits)


def test_the_first_step_is_a_simple_check() -> None:
    hits = [
        (advice_for(n).steps[0].source in row.simple, row.source, advice_for(n).steps[0].source)
        for n, row in enumerate(ROWS)
    ]
    share = sum(hit for hit, _, _ in hits) / len(hits)
    print(f"\nfirst step is one of the simple checks: {share:.0%}", *hits, sep="\n  ")
    assert share >= 0.9
