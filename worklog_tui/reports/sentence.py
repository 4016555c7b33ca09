"""What was understood, as one plain phrase of the trade a fact."""

from __future__ import annotations

from collections.abc import Callable
from functools import singledispatch

from worklog_tui.model import Fact, Finding, FollowUp, Number, Reading, Suspect, Trait, Value, Work

UNITS = {
    "degC": "°C", "degF": "°F", "um": "µm", "N*m": "Nm", "ft_lb": "ft lb", "in_lb": "in lb", "deg": "°", "percent": "%",
    "drops/min": "drops a minute", "sg": "", "inH2O": "in of water", "mmH2O": "mm of water",
}  # fmt: skip
"How a unit is written for people, where that is not its short name."

_DECISIVE = ("quantity", "unit")
_CLOSE = {"°C", "°F", "°", "%"}
_COUNTED = {"turn", "day", "pint"}

_NAMED_BY = {
    "length": frozenset(
        "tension slack deflection play travel lift height depth level run-out runout wear stroke bore diameter "
        "thickness width length sag drop step groove float backlash throw taper".split()
    ),
    "gap": frozenset("clearance clearances gap gaps play backlash float end-float".split()),
    "duration": frozenset("time run test soak".split()),
    "angle": frozenset("timing advance dwell".split()),
    "speed": frozenset("idle speed tickover revs".split()),
}  # fmt: skip
"Last words of a thing that say already what was measured on it: `belt tension: 30 mm`."

QUANTITIES = {"run_time": "hours run", "density": "specific gravity", "duration": "time", "volume": "amount"}
"How a quantity is called for people, where that is not its name."

DONE = {
    "remove": "removed", "strip": "stripped", "clean": "cleaned", "check": "checked", "test": "tested", "replace":
    "replaced", "fit": "fitted", "adjust": "adjusted", "repair": "repaired", "drain": "drained", "fill": "filled",
    "flush": "flushed", "lubricate": "lubricated", "soak": "soaked", "bleed": "bled", "make": "made", "order":
    "ordered", "connect": "connected", "disconnect": "disconnected", "charge": "charged", "start": "start tried",
    "free": "freed", "tighten": "tightened",
}  # fmt: skip

_STANDINGS = {"suspected": "suspected cause", "ruled out": "cause ruled out", "confirmed": "cause confirmed"}
_VERDICTS = {"bad": " (a fault)", "good": " (good)"}

REASONS = {
    "temporary": "for now only", "part needed": "part needed", "fault": "not put right yet", "to do": "to do",
    "fallback": "if the rest does not help", "question": "a question",
}  # fmt: skip
"Why something must be come back to, in words for people."

_BARE = {
    "the", "a", "an", "all", "both", "each", "every", "number", "this", "that", "these", "those", "my", "our",
    "its", "his", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
}  # fmt: skip


def sentence(fact: Fact, brief: bool = False) -> str:
    """A fact as one phrase without a full stop, such as `compression of cylinder 3: 40 psi, dry`.

    What was not said but filled in stands in brackets at the end; `brief`: only where that decides what the number is.
    """
    return _say(fact) + _unsaid([name for name in fact.filled if not brief or name in _DECISIVE], fact)


def briefly(fact: Fact) -> str:
    """The same without what was filled in."""
    return _say(fact)


def amount(value: Value, unit: str) -> str:
    """A value with its unit as people write it: `18 to 20 ft lb`, `0.018 in`, `1/4-20`."""
    if unit == "h" and isinstance(value, int | float) and 0 < value < 1:
        return amount(value * 60, "min")
    number = " to ".join(_figure(v) for v in value) if isinstance(value, tuple) else _figure(value)
    word = UNITS.get(unit, unit)
    if unit in _COUNTED and number != "1":
        word += "s"
    return number + ("" if word in _CLOSE or not word else " ") + word


def _figure(value: float | str) -> str:
    if isinstance(value, str):
        return value
    text = f"{value:.6f}".rstrip("0").rstrip(".")
    return "0" if text in ("", "-0") else text


def _the(thing: str) -> str:
    """The thing with its article, unless it is named (`cylinder 3`) or has one."""
    first = thing.split(" ", 1)[0].lower()
    named = first in _BARE or any(c.isdigit() for c in thing)
    return thing if named else f"the {thing}"


def _unsaid(names: list[str], fact: Fact) -> str:
    values = [(name, str(getattr(fact, name, "") or "")) for name in names]
    words = [UNITS.get(v, v) if name == "unit" else QUANTITIES.get(v, v) for name, v in values if v]
    return f" ({', '.join(w for w in words if w)} not said)" if any(words) else ""


@singledispatch
def _say(fact: Fact) -> str:
    return fact.quote


@_say.register
def _reading(fact: Reading) -> str:
    bound = fact.condition if fact.condition in ("under", "over") else ""
    value = " ".join(filter(None, (bound, amount(fact.value, fact.unit))))
    if fact.quantity == "ratio" and not isinstance(fact.value, str):
        value += " to 1"
    said = _BY_ROLE.get(fact.role, _measured)(fact, value)
    if fact.condition and not bound:
        said += f", {fact.condition}"
    return said + _source(fact.source) + (", doubtful" if fact.doubtful else "")


def _head(fact: Reading) -> str:
    quantity = QUANTITIES.get(fact.quantity, fact.quantity.replace("_", " "))
    words = fact.subject.lower().split()
    if quantity in words or (fact.quantity in _NAMED_BY and words and words[-1] in _NAMED_BY[fact.quantity]):
        return fact.subject
    return f"{quantity} of {_the(fact.subject)}" if fact.subject else quantity


def _measured(fact: Reading, value: str) -> str:
    return f"{_head(fact)}: {value}"


def _set(fact: Reading, value: str) -> str:
    if fact.subject and fact.quantity == "torque":
        return f"{fact.subject} tightened to {value}"
    if fact.subject and fact.quantity == "volume":
        return f"{fact.subject}: {value} put in"
    if fact.subject and fact.quantity == "turns":
        return f"{fact.subject} set to {value}"
    return f"{_head(fact)} set to {value}"


_BY_ROLE: dict[str, Callable[[Reading, str], str]] = {
    "set": _set,
    "specified": lambda fact, value: f"{_head(fact)} should be {value}",
    "planned": lambda fact, value: f"{_head(fact)}, planned: {value}",
    "rated": lambda fact, value: f"{_head(fact)}, nominal: {value}",
}


@_say.register
def _finding(fact: Finding) -> str:
    return f"{fact.part}: {fact.condition}" + _VERDICTS.get(fact.verdict, "")


@_say.register
def _work(fact: Work) -> str:
    done = DONE.get(fact.action, fact.action)
    link = ": " if fact.action == "start" else " "
    return (f"{fact.part}{link}{done}" if fact.part else done) + (f", with {fact.used}" if fact.used else "")


@_say.register
def _suspect(fact: Suspect) -> str:
    return f"{_STANDINGS.get(fact.standing, 'suspected cause')}: {fact.cause}"


@_say.register
def _follow_up(fact: FollowUp) -> str:
    reason = REASONS.get(fact.reason, "")
    return f"to come back to: {fact.topic}" + (f", {reason}" if reason else "")


@_say.register
def _trait(fact: Trait) -> str:
    doubt = ", doubtful" if fact.doubtful else ""
    return f"{fact.trait}: {fact.value}{_source(fact.source)}{doubt}"


@_say.register
def _number(fact: Number) -> str:
    thing = f"{fact.of}: " if fact.of else ""
    return f"{thing}number {fact.number}{_source(fact.source)}"


def _source(source: str) -> str:
    return f" ({source})" if source else ""
