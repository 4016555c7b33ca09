"""Bare numbers that the words around them tell, as it is said in every shop: `an eighth`, `one and a half out`,
`twenty a minute`, `one point eight in`, `sixty-five on all eight`.
"""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.measured.number_form import fraction, spoken_decimal
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.carry import stands_free
from worklog_tui.extract.talk.measuring import usual_unit
from worklog_tui.extract.things.subjects import as_thing
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.model import Reading

Read = tuple[str, float, str]
"Quantity, value and unit."


def by_company(token: Token, made: Draft, scene: Scene) -> Read | None:
    """What the words around a bare number make of it; None where they tell nothing."""
    i, value = made.main, token.value
    if value is None or token.high is not None:
        return None
    ways = (
        _waited,
        _turns,
        _of_an_inch,
        _drips,
        _poured_in,
        _share_of_fluid,
        _all_round,
        _plate_speed,
        _runs_at,
        _hertz,
    )
    for tells in ways:
        if (read := tells(i, value, made, scene)) is not None:
            return read
    return None


def _low(scene: Scene, k: int) -> str:
    return scene.tokens[k].low.removeprefix("\u2026") if 0 <= k < len(scene.tokens) else ""


def _ends(scene: Scene, k: int) -> bool:
    """Whether the sentence pauses, or goes on to another thought, at token k."""
    pauses = k >= len(scene.tokens) or scene.tokens[k].kind in ("stop", "comma")
    return pauses or _low(scene, k) in ("and", "but", "now")


def _talked_of(made: Draft, scene: Scene) -> Iterator[Thing]:
    """What the number may be of: what stands by it, then what was talked of last."""
    if made.thing is not None:
        yield made.thing
    yield from (t.thing for t in reversed(scene.tokens[: made.main]) if t.thing is not None)
    yield from (as_thing(s) for s in scene.context.things[:2] if s.age <= 1)


def _waited(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`That was more like twenty-five`, where twenty minutes were the last thing told: how long the wait came to."""
    last = next((f for f in reversed(scene.context.recent) if isinstance(f, Reading)), None)
    if last is None or last.quantity != "duration" or isinstance(last.value, str):
        return None
    told = last.value[0] if isinstance(last.value, tuple) else last.value
    if not told or not SHORTEST <= value / told <= LONGEST or not stands_free(scene.tokens, i):
        return None
    before = [scene.tokens[k].low for k in range(scene.clause(i).start, i)]
    led = any(" ".join(before[-n:]) in scene.book.lists["came_to"] for n in (1, 2) if len(before) >= n)
    return ("duration", value, last.unit) if led else None


SHORTEST, LONGEST = 0.5, 4.0
"How many times the time that was meant a wait may have taken."


# ---- parts of a turn, parts of an inch


def _turns(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`1 1/8 out`, `lh 1/4 out`: eighths of a turn, in or out, where screws are what is talked of."""
    if not 0 < value <= MOST_TURNS or (value * 8) % 1 or _low(scene, i + 1) not in ("out", "in", "more"):
        return None
    if not (fraction(scene.said(i, i)) or value % 1) or not _ends(scene, i + 2):
        return None
    return ("turns", value, "turn") if _is_screwed(i, made, scene) else None


MOST_TURNS = 8.0


def _is_screwed(i: int, made: Draft, scene: Scene) -> bool:
    topic = scene.context.topic
    lettered = scene.typed and _low(scene, i - 1) in ("l", "h", "t")  # the needles of a diaphragm carburettor
    turned = topic is not None and topic.quantity == "turns"
    return turned or lettered or any("turns" in t.quantities for t in _talked_of(made, scene))


def _of_an_inch(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`A sixteenth`, `3/32 low`: nothing else is divided so finely; a half and a quarter are inches beside such, or
    where inches were said.
    """
    fine = _is_fine(scene.tokens[i], scene)
    if fine and f"{_low(scene, i + 1)} {_low(scene, i + 2)}" in ("across the", "across flats"):
        return "length", value, "in"
    if not fine and not (value in COARSE and not spoken_decimal(scene.said(i, i))):
        return None
    if _low(scene, i + 1) in NO_INCH or _low(scene, i - 1) in BY_TOOL or _turned(i, made, scene):
        return None
    topic = scene.context.topic
    tested = topic.quantity if topic is not None and topic.quantity in ("gap", "length") else ""
    near = made.thing if made.thing is not None and made.thing_at is not None else None
    bears = near is not None and any(q in ("gap", "length") for q in near.quantities)
    if not (fine and (near is not None or tested)) and not ((bears or tested) and _inches_said(i, scene)):
        return None
    gap = value <= WIDEST_GAP and (near.quantities[:1] == ("gap",) if near is not None else tested == "gap")
    return "gap" if gap else "length", value, "in"


COARSE = frozenset({0.25, 0.5, 0.75})
NO_INCH = frozenset("of out in turn turns more".split())
BY_TOOL = frozenset("w/ with drill drilled another back".split())
WIDEST_GAP = 0.125
"Inches that a gap has at most, of those told in parts of an inch (common practice)."


def _is_fine(token: Token, scene: Scene) -> bool:
    """Whether a number is told in eighths, sixteenths or smaller parts."""
    said = scene.text[token.start : token.end]
    value = token.value or 0.0
    return token.kind == "number" and fraction(said) and bool((value * 4) % 1) and not (value * 64) % 1


def _turned(i: int, made: Draft, scene: Scene) -> bool:
    """Whether screws are turned in this sentence, or the running test is one of turns."""
    topic = scene.context.topic
    if topic is not None and topic.quantity == "turns" and topic.age <= 1:
        return True
    if any(t.amount is not None and t.amount.unit == "turn" for t in scene.tokens[max(0, i - 8) : i]):
        return True
    return made.thing is not None and "turns" in made.thing.quantities


def _inches_said(i: int, scene: Scene) -> bool:
    """Whether inches are what is measured in: told in this sentence, or said last of all lengths."""
    if any(_is_fine(t, scene) for t in scene.tokens):
        return True
    return usual_unit(scene.book.quantities["length"], i, scene) == "in"


def _drips(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`The gland's dripping, twenty a minute.`"""
    after = f"{_low(scene, i + 1)} {_low(scene, i + 2)}"
    if after not in ("a minute", "per minute", "the minute"):
        return None
    dripped = any(w.startswith(("drip", "drop")) for t in scene.tokens for w in t.low.split())
    return ("leakage", value, "drops/min") if dripped else None


def _poured_in(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`Engine oil changed. One point eight in.`: how much of the fluid that is talked of went in."""
    went = _low(scene, i + 1) in ("in", "back in", "went in") and _ends(scene, i + 2)
    if not went or not value % 1 or not 0 < value < MOST_LITRES:
        return None
    fluid = next((t for t in _talked_of(made, scene)), None)
    return ("volume", value, _vessel(i, scene)) if fluid is not None and fluid.kind == "fluid" else None


MOST_LITRES = 100.0


def _share_of_fluid(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`Fourteen litres, five of that's antifreeze`, `two of those are antifreeze`: a share of what went in."""
    if _low(scene, i + 1) != "of" or not _low(scene, i + 2).startswith(("that", "those", "it", "them")):
        return None
    behind = next((t.thing for t in scene.tokens[i + 3 : i + 6] if t.thing is not None), None)
    if behind is None or behind.kind != "fluid":
        return None
    return "volume", value, _vessel(i, scene)


def _vessel(i: int, scene: Scene) -> str:
    return usual_unit(scene.book.quantities["volume"], i, scene) or "L"


def _all_round(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`Wheel nuts. Sixty-five on all eight.`, `80 all round`: what every one of the bolts was pulled to."""
    after = f"{_low(scene, i + 1)} {_low(scene, i + 2)}"
    if value < LEAST_PULL or not after.startswith(("on all", "on each", "on every", "all round", "all around")):
        return None
    held = next((t for t in _talked_of(made, scene)), None)
    if held is None or held.kind != "fastener":
        return None
    return "torque", value, usual_unit(scene.book.quantities["torque"], i, scene) or "ft_lb"


LEAST_PULL = 5.0


def _plate_speed(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`plate 1.5kW 400V 3.4A 2870`: the bare figure behind the amps of a motor plate is its speed."""
    before = scene.tokens[i - 1].amount if i else None
    if before is None or before.unit not in ("A", "kW", "hp", "V") or not PLATE_SPEEDS[0] <= value <= PLATE_SPEEDS[1]:
        return None
    plate = any(t.sense("plate") or "plate" in t.low for t in scene.tokens[:i])
    return ("speed", value, "rpm") if plate and _ends(scene, i + 1) else None


PLATE_SPEEDS = (400.0, 3600.0)
"Turns a minute of mains motors (common practice)."


def _runs_at(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`Runs 1420 on slow and 2860 on fast`, `turns at about nine hundred`: how fast what runs goes round."""
    spoken = scene.clause(i)
    verbs = [_low(scene, k) for k in range(max(spoken.start, i - ROUND), i)]
    led = any(verb in scene.book.lists["goes_round"] for verb in verbs)
    turns = any(verb in scene.book.lists["turns_at"] for verb in verbs) and "at" in " ".join(verbs).split()
    led = led or (_low(scene, i - 1) in ("and", "but") and any(_is_speed(scene, k) for k in range(i - 2 * ROUND, i)))
    whole = value == int(value) and (TURNS if turns else RUNS[0]) <= value <= RUNS[1]
    fluid = made.thing is not None and made.thing.kind in ("fluid", "tool")
    if not led or not whole or fluid or not stands_free(scene.tokens, i):
        return None
    scene.bare[i] = "speed", "rpm", 1.0, value
    return "speed", value, "rpm"


def _is_speed(scene: Scene, k: int) -> bool:
    return k in scene.bare and scene.bare[k][0] == "speed"


def _hertz(i: int, value: float, made: Draft, scene: Scene) -> Read | None:
    """`Freq 47.5 no load, 44 loaded`: what a generator gives, about what the mains have (IEC 60038)."""
    named = HERTZ[0] <= value <= HERTZ[1] and any(t.name == "frequency" for t in _talked_of(made, scene))
    return ("speed", value, "Hz") if named else None


HERTZ = (40.0, 66.0)
ROUND = 3
"Tokens from the verb to its number."
RUNS = (400.0, 30000.0)
"Turns a minute; a smaller bare number behind `runs` may be a pressure or a temperature (judgement)."
TURNS = 20.0
"Turns a minute of the slowest flywheel of which is said that it turns at a number (judgement)."
