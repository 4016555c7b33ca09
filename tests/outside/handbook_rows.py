"""The rows of public fault-finding tables, numbered as in the specification, as complaints and faults."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.model import Machine

SMALL = Machine("Lawn roller", "single-cylinder petrol engine", "petrol", "magneto", 1)
CAR = Machine("Old van", "four-cylinder petrol van", "petrol", "battery", 4)
DIESEL = Machine("Air set", "two-cylinder diesel compressor set", "diesel", "none", 2)
SET = Machine("Yard set", "single-cylinder petrol generator set", "petrol", "magneto", 1)
LOADER = Machine("Quarry loader", "four-cylinder diesel loader, hydraulic", "diesel", "none", 4)
DRILL = Machine("Bench drill", "single-phase pillar drill, belt driven", "none", "none")


@dataclass(frozen=True)
class Row:
    """One row: the complaint as it is heard, and the fault of each listed cause (empty: not in the files)."""

    number: int
    source: str
    machine: Machine
    heard: tuple[str, str]
    causes: tuple[str, ...]
    simple: tuple[str, ...]
    ordered: bool = False


ROWS = [
    Row(1, "FAA-H-8083-32 table as reproduced: fails to start", SMALL, ("engine", "won't start"),
        ("fuel.empty", "fuel.priming", "fuel.priming", "carb.choke", "ign.plug", "ign.plug_lead", "bat.flat",
         "ign.points_dirty", "fuel.water", "comp.rings", "ign.impulse", "ign.plug", "", "ign.kill_circuit"),
        ("fuel.empty", "fuel.priming", "carb.choke", "ign.spark_test", "fuel.plug_wet", "fuel.stale",
         "ign.kill_circuit")),
    Row(2, "FAA-H-8083-32 table as reproduced: fails to idle", SMALL, ("engine", "won't idle"),
        ("carb.mixture", "carb.mixture", "carb.air_leak", "comp.valves", "ign.plug", "fuel.priming"),
        ("carb.mixture", "carb.air_leak", "air.spray", "comp.gauge", "ign.spark_test", "ign.plug")),
    Row(3, "small-engine maker's checklist: no spark", SMALL, ("spark", "no spark"),
        ("ign.interlock", "ign.kill_circuit", "ign.air_gap", "ign.coil"),
        ("ign.interlock", "ign.kill_circuit", "ign.air_gap", "ign.plug", "ign.plug_lead")),
    Row(4, "Whitman, Tractor Principles (1920): stops", SMALL, ("engine", "stalls"),
        ("ign.points_gap", "fuel.filter", "fuel.empty", "fuel.vent"),
        ("fuel.empty", "fuel.vent", "ign.spark_test", "fuel.flow", "fuel.filter")),
    Row(5, "Whitman, Tractor Principles (1920): arcing points", SMALL, ("contact breaker points", "arcing"),
        ("ign.condenser", "ign.points_dirty"), ("ign.condenser", "ign.points_dirty"), True),
    Row(6, "Whitman, Tractor Principles (1920): will not start after 12 to 20 cranks", SMALL, ("engine", "won't start"),
        ("fuel.empty", "fuel.empty", "carb.needle_stuck", "fuel.stale", "carb.floods", "fuel.water",
         "ign.plug", "ign.points_dirty"),
        ("fuel.empty", "fuel.stale", "fuel.plug_wet", "ign.spark_test", "fuel.priming", "carb.choke")),
    Row(7, "TM 5-4240-501-14P p. 289: kicks, timing off", SMALL, ("engine", "kicks back"), ("ign.key",),
         ("ign.key", "ign.timing"), True),
    Row(8, "generator-set maker's page: weak or no spark", SMALL, ("spark", "weak spark"),
        ("ign.plug", "ign.plug_lead", "ign.plug_gap", "ign.points_gap", "ign.coil", "ign.condenser"),
        ("ign.plug", "ign.plug_lead", "ign.plug_gap", "ign.kill_circuit", "ign.points_gap")),
    Row(9, "common practice: battery ignition, no spark, cranks normally", CAR, ("spark", "no spark"),
        ("ign.feed", "ign.points_dirty", "ign.points_gap", "ign.condenser", "ign.points_earth", "ign.coil",
         "ign.distributor"),
        ("ign.feed", "ign.points_dirty", "ign.points_gap", "ign.distributor", "ign.plug", "ign.plug_lead")),
    Row(10, "common practice: misses at speed under load", CAR, ("engine", "misfiring"),
        ("ign.plug_gap", "ign.points_spring", "ign.points_gap", "ign.coil", "fuel.filter"),
        ("ign.plug_gap", "ign.plug", "ign.distributor", "ign.points_gap", "ign.plug_lead", "ign.spark_test",
         "ign.feed", "fuel.filter")),
    Row(11, "T-10-4320-309-14 p. 4-2: small diesel fails to start", DIESEL, ("engine", "won't start"),
        ("diesel.injector", "diesel.pump", "diesel.lift_pump"),
        ("diesel.empty", "diesel.line", "diesel.air", "diesel.heat")),
    Row(13, "T-5-3895-348-14P: low compression of a diesel", DIESEL, ("compression", "low"),
        ("comp.rings", "comp.rings", "comp.head_gasket", "comp.valves", "diesel.injector", "comp.bore"),
        ("comp.clearance", "comp.stuck_valve", "comp.leak_down", "comp.decompressor", "comp.head_gasket")),
    Row(14, "NAVEDTRA 14264 p. 209: white smoke", DIESEL, ("engine", "white smoke"),
        ("comp.rings", "comp.bore", "comp.valves", "comp.head_gasket", "diesel.injector", "diesel.fuel_bad"),
        ("diesel.heat", "diesel.air", "comp.gauge", "diesel.injector", "diesel.fuel_bad")),
    Row(15, "NAVEDTRA 14264 p. 209: black smoke", DIESEL, ("engine", "black smoke"),
        ("diesel.fuel_bad", "diesel.air_filter", "air.exhaust", "diesel.timing", "diesel.pump",
         "comp.clearance", "diesel.injector",
         "diesel.timing"),
        ("diesel.air_filter", "diesel.fuel_bad", "diesel.injector")),
    Row(17, "T-5-3805-254-14P-2 p. 248: overheats", CAR, ("engine", "overheating"),
        ("cool.low", "cool.low", "cool.belt", "cool.radiator", "cool.hose", "cool.cap", "cool.pump", "",
         "cool.air", "cool.air",
         "cool.thermostat", "ign.timing", "ign.advance", "carb.mixture", "comp.valves"),
        ("cool.low", "cool.belt", "cool.air", "cool.cap", "cool.hose"), True),
    Row(20, "NAVEDTRA 14264 p. 245: low oil pressure", CAR, ("oil pressure", "low"),
        ("oil.low", "oil.bearings", "oil.low", "oil.relief", "oil.pickup", "oil.pump", "oil.pickup"),
        ("oil.low", "oil.gauge", "oil.relief"), False),
    Row(26, "T-5-3810-307-24: battery undercharged", CAR, ("charging", "not charging"),
        ("chg.belt", "chg.wiring", "bat.connections", "bat.flat", "chg.regulator", "chg.generator"),
        ("chg.belt", "chg.wiring", "chg.volts")),
    Row(24, "Witte, Automobile Storage Battery (1922): generator will not build up", CAR, ("dynamo", "not charging"),
        ("chg.brushes", "chg.regulator", "chg.wiring", "chg.field"), ("chg.belt", "chg.wiring", "chg.volts",
         "chg.brushes")),
    Row(28, "T-5-3895-383-24 p. 300: starter does not turn", CAR, ("starter motor", "dead"),
        ("bat.flat", "bat.connections", "start.solenoid", "start.motor", "engine.tight"),
        ("start.volts", "bat.flat", "bat.connections", "engine.tight"), True),
    Row(30, "T-10-3930-671-24 p. F-299: slow cranking", CAR, ("cranking", "slow cranking"),
        ("bat.flat", "bat.connections", "start.switch", "start.motor", "engine.tight"),
        ("start.volts", "bat.flat", "bat.connections", "engine.tight"), True),
    Row(32, "T-10-3930-638-24P: a starter on the bench, by speed and current", CAR, ("starter current", "high"),
        ("start.open", "start.grounded", "start.dirty", "start.friction", "start.friction", "start.field"),
        ("start.bench",)),
    Row(29, "T-5-3805-254-20-1 p. 2-86: grinds", CAR, ("starter motor", "grinding"), ("start.drive",),
         ("start.drive", "bat.flat"), True),
    Row(12, "T-5-3895-348-14P: will not restart after running dry", DIESEL, ("engine", "won't start"),
        ("diesel.air", "diesel.filter", "diesel.empty"), ("diesel.empty", "diesel.air", "diesel.line", "diesel.heat")),
    Row(16, "NAVEDTRA 14264 p. 209: blue smoke", CAR, ("engine", "blue smoke"),
        ("oil.overfull", "oil.overfull", "oil.guides", "comp.rings", "comp.bore", "comp.bore", "", "comp.bore"),
        ("oil.overfull",), True),
    Row(18, "T-5-3820-256-24-5 p. 464: boils", CAR, ("engine", "boiling"),
        ("cool.radiator", "cool.air", "cool.air", "cool.thermostat", "cool.pump", "cool.hose", "cool.cap",
         "comp.head_gasket", "cool.pump", "cool.radiator"),
        ("cool.low", "cool.belt", "cool.air", "cool.cap", "cool.hose")),
    Row(19, "T-5-3810-300-10 p. 57: overheats, as its driver sees it", CAR, ("engine", "overheating"),
        ("cool.belt", "cool.low", "comp.head_gasket", "cool.radiator", "cool.pump", "ign.timing", "", "brk.stuck",
         "cool.thermostat"), ("cool.low", "cool.belt", "cool.air", "cool.cap", "cool.hose")),
    Row(21, "NAVEDTRA 14264 p. 245: high oil pressure", CAR, ("oil pressure", "high"),
        ("oil.stuck_relief", "oil.stuck_relief", "oil.stuck_relief", "oil.gallery"),
        ("oil.stuck_relief", "oil.gauge", "oil.sender")),
    Row(22, "NAVEDTRA 14264 p. 245: gauge reads wrong", CAR, ("oil pressure gauge", "reads wrong"), ("oil.sender",),
        ("oil.sender",), True),
    Row(23, "NAVEDTRA 14081 p. 99: no oil pressure after the start", CAR, ("oil pressure", "no oil pressure"),
        ("oil.low",), ("oil.low", "oil.sender")),
    Row(25, "Witte, Automobile Storage Battery (1922): third-brush output too high", CAR, ("charging", "overcharging"),
        ("chg.line", "chg.line", "chg.brushes"), ("chg.line",)),
    Row(27, "regulator maker's chart in TM form: set gives no voltage", SET, ("generator end", "no power"),
        ("gen.residual", "gen.switch", "gen.speed", "gen.regulator", "gen.regulator", "gen.winding", "gen.winding"),
        ("gen.switch", "gen.speed", "gen.residual"), True),
    Row(31, "FAA starting-system figure: starter will not operate", CAR, ("starter motor", "dead"),
        ("start.switch", "start.switch", "start.drive", "start.motor"),
        ("start.volts", "bat.flat", "bat.connections", "engine.tight", "start.switch")),
    Row(33, "NAVEDTRA 14076 p. 149: popping and sputtering", LOADER, ("hydraulic pump", "popping"),
        ("hyd.suction", "hyd.suction", "hyd.low", "hyd.low"), ("hyd.low", "hyd.air", "hyd.suction"), True),
    Row(34, "NAVEDTRA 14076 p. 149: hammering", LOADER, ("hydraulics", "hammering"), ("hyd.air",),
        ("hyd.low", "hyd.air"), True),
    Row(35, "NAVEDTRA 14329 p. 431: sluggish", LOADER, ("hydraulics", "slow"),
        ("hyd.low", "hyd.leak", "hyd.seals", "hyd.pump", "hyd.valve"), ("hyd.low", "hyd.leak"), True),
    Row(36, "OD 1007 p. 42: pressure builds fast at the start", LOADER, ("hydraulic pressure", "high"),
        ("hyd.blocked",),
        ("hyd.blocked",), True),
    Row(37, "TB 9-2300-426-20 section II: spongy pedal", CAR, ("brake pedal", "spongy"),
        ("brk.air", "brk.air", "brk.leak", "brk.leak"),
        ("brk.pump_pedal", "brk.air", "brk.master", "brk.leak"), True),  # its text: bleed, pump, soft again is a leak
    Row(38, "TB 9-2300-426-20 section II: pedal sinks", CAR, ("brake pedal", "sinks"), ("brk.leak", "brk.master"),
        ("brk.air", "brk.master", "brk.leak"), True),
    Row(39, "T-10-3930-638-24P p. 2-262: spongy after bleeding", CAR, ("brakes", "spongy"),
        ("brk.leak", "brk.master", "brk.leak"), ("brk.air", "brk.master", "brk.leak"), True),
    Row(40, "T-5-3825-226-24: brakes do not release", CAR, ("brakes", "dragging"), ("brk.port",),
        ("brk.port", "brk.linkage", "brk.stuck"), True),
    Row(41, "maker's text: low on one cylinder", CAR, ("compression", "low"),
        ("comp.rings", "comp.bore", "comp.valves", "comp.head_gasket"),
        ("comp.wet", "comp.clearance", "comp.leak_down", "comp.gauge", "comp.stuck_valve", "comp.head_gasket")),
    Row(42, "Page, Aviation Engines (1918): noisy operation", CAR, ("engine", "knocking"),
        ("comp.slap", "comp.mounting", "comp.clearance", "oil.guides", "oil.bearings"),
        ("comp.mounting", "comp.clearance", "comp.slap", "oil.low"), True),
    Row(43, "common practice: motor hums and will not start", DRILL, ("electric motor", "hums"),
        ("motor.capacitor", "motor.winding", "tool.overloaded", "motor.supply", "motor.supply"),
        ("motor.capacitor", "spindle.bearings", "drive.belt", "motor.supply", "tool.overloaded"), True),
    Row(44, "common practice: spindle heats, chatters", DRILL, ("spindle", "chatters"),
        ("spindle.bearings", "tool.cold_oil", "drive.belt", "slide.loose", "tool.backlash"),
        ("tool.cutter", "slide.loose", "spindle.bearings", "tool.cold_oil", "motor.bearings", "drive.belt")),
]  # fmt: skip

NOT_HELD: dict[int, str] = {}
"""Rows of the specification that no complaint of the files stands for, and why."""
