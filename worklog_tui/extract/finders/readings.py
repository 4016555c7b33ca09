"""Readings: a number with what it measures, of what, and how it is meant."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.measured.aimed import pointed, span_of, still_aimed
from worklog_tui.extract.measured.bare_numbers import bare_reading, degrees
from worklog_tui.extract.measured.by_times import crossed, crossed_part
from worklog_tui.extract.measured.come_to import come_to
from worklog_tui.extract.measured.headed import headed_by
from worklog_tui.extract.measured.naming import only_names_the_test, subject_words
from worklog_tui.extract.measured.nearest import HELD, joined_after, measurable, nearest_measured
from worklog_tui.extract.measured.never import never
from worklog_tui.extract.measured.no_measure import measures_nothing
from worklog_tui.extract.measured.poured import poured, spread_of
from worklog_tui.extract.measured.quantity import quantity_of, suits, support, turns
from worklog_tui.extract.measured.sizes import AXES, sized, sized_part
from worklog_tui.extract.measured.times import DAYS, of_work
from worklog_tui.extract.measured.vacuum import of_mercury
from worklog_tui.extract.measured.whose import owner
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.spelt_out import spelt_out
from worklog_tui.extract.things.subjects import Fits, as_thing
from worklog_tui.extract.tokens import Thing, Token


def draft(match: Match, scene: Scene) -> Draft | None:
    """The reading of a match; None when nothing tells what the number measures."""
    gives = match.rule.gives
    at = match.slots.get(str(gives["value"]).strip("<>"))
    if at is None:
        return None
    made = Draft("reading", at, at, match.rule, {}, confidence=match.rule.confidence,
                 first_used=match.first, last_used=match.last - 1)  # fmt: skip
    token = scene.tokens[at]
    if scene.once(("measures nothing", at), lambda: measures_nothing(scene, at)):
        return None
    _of(made, match, scene)
    word = _valve_word(match, scene)
    if word and token.value is not None and token.value == int(token.value):
        return None  # `in two`: no valve
    read = _amount(made, token, scene, "gap" if word else str(gives.get("quantity", "")) or _named(match, scene))
    if read is None:
        return None
    quantity, value, unit = read
    _ask_again(made, match, scene, quantity)
    subject = _come_to(made, scene, quantity) or _spelt(made, subject_words(made, match, scene, quantity))
    made.fields = {
        "quantity": quantity, "value": value, "unit": unit, "role": gives.get("role", ""),
        "subject": subject,
        "bound": token.amount.bound if token.amount else "",
        "rough": bool(token.amount and token.amount.rough), "condition": gives.get("condition", ""),
    }  # fmt: skip
    return made


def _come_to(made: Draft, scene: Scene, quantity: str) -> str:
    """The subject of a figure that a work came to, in words; empty where it is none."""
    if (came := come_to(scene, made.main, quantity)) is None:
        return ""
    made.thing, of_two = came
    made.thing_at = None
    if of_two:
        made.filled.discard("subject")  # each of the two is of its own
    else:
        made.filled.add("subject")
    return made.thing.words


def _named(match: Match, scene: Scene) -> str:
    """`Pressure's forty-four`: the quantity that the thing right before a bare number names, if it names one."""
    at = match.slots.get(str(match.rule.gives.get("subject", "")).strip("<>"))
    value = match.slots.get(str(match.rule.gives["value"]).strip("<>"))
    thing = scene.tokens[at].thing if at is not None else None
    if thing is None or at is None or value is None or at > value or thing.kind != "quality":
        return ""
    return scene.book.topics.get(thing.name, "") if scene.tokens[value].kind == "number" else ""


def _spelt(made: Draft, words: str) -> str:
    """The subject without shorthand."""
    return spelt_out(words, made.thing.name if made.thing is not None else "")


MIXED = frozenset("mix mixed premix fuel petrol oil ratio compression reduction gearing two-stroke".split())


def _is_mix(made: Draft, scene: Scene) -> bool:
    """A ratio in words is one beside a mix, a compression or a gear; `nine to one` may be a score."""
    if ":" in scene.said(made.main, made.main):
        return True
    return any(MIXED & set(t.low.split()) for t in scene.tokens[max(0, made.main - 8) : made.main + 6])


def _valve_word(match: Match, scene: Scene) -> bool:
    """`in` and `ex` are valves only where clearances are measured."""
    at = match.slots.get("which")
    return at is not None and scene.tokens[at].low in ("in", "ex")


def _of(made: Draft, match: Match, scene: Scene) -> None:
    """The thing that the number is of: the part whose size it is, else what the words tell."""
    if crossed(made.main, scene):
        made.thing, made.thing_at = crossed_part(made.main, scene)
    else:
        _subject(made, match, scene)


def _subject(made: Draft, match: Match, scene: Scene, known: tuple[str, ...] = ()) -> None:
    """The thing that the number is of: as the rule says, else the nearest one that it can be of, else what is talked
    of.
    """
    said = str(made.rule.gives.get("subject", ""))
    if said and not said.startswith("<"):
        made.thing = Thing(said, said, "quality")
        return
    wanted = known or _wanted(made, scene)
    size = sized(made.main, scene) != ""

    def meant(thing: Thing) -> bool:
        if (size and thing.own.lower() in AXES) or never(thing, wanted, scene.book):
            return False
        if thing.kind == "fastener":
            return bool(HELD & set(wanted))
        if "speed" in wanted[:1] and turns(thing):
            return True
        return measurable(thing) and any(suits(thing, q, scene.book.quantities.get(q)) for q in wanted)

    if not size and (span := _between(made, wanted, scene)):
        made.thing, made.thing_at = Thing(span, "", "part", own=span), None
        return
    _beside(made, match, scene, wanted, meant, size)
    if size and (part := sized_part(made.main, scene)) is not None:
        made.thing, made.thing_at = part, None
        made.filled.add("subject")
        return
    if made.thing is not None and not only_names_the_test(made.thing, scene):
        return
    if scene.context.aim is not None and made.thing_at is None and not size and still_aimed(scene, made.main, wanted):
        made.thing = as_thing(scene.context.aim)
        made.filled.add("subject")
        return
    if not size and (head := headed_by(scene, made.main, wanted)) is not None:
        made.thing, made.thing_at = head, None
        return
    if (found := scene.once(("owner", made.main, wanted), lambda: owner(made, scene, wanted, meant))) is not None:
        made.thing, made.thing_at = found
    if made.thing_at is None:
        made.filled.add("subject")


def _ask_again(made: Draft, match: Match, scene: Scene, quantity: str) -> None:
    """What the number is of is asked once more where only its quantity tells: of `wheel nuts. Sixty-five`, of `two mil`
    that turns out a gap.
    """
    wanted, own = _wanted(made, scene), "subject" not in made.filled and made.thing is not None
    if made.thing is not None and quantity not in wanted[:1] and never(made.thing, (quantity,), scene.book):
        made.thing_at, own = None, False
    if wanted == (quantity,) or made.thing_at is not None or own or made.confidence < SURE:
        return
    made.filled.discard("subject")
    before = made.thing
    made.thing = None
    _subject(made, match, scene, (quantity,))
    if made.thing is None:
        made.thing = before


def _beside(made: Draft, match: Match, scene: Scene, wanted: tuple[str, ...], meant: Fits, size: bool) -> None:
    """The thing that the rule names, else the one that stands by the number or is joined to it."""
    said = str(made.rule.gives.get("subject", ""))
    made.thing_at = match.slots.get(said.strip("<>")) if said else None
    named = scene.tokens[made.thing_at].thing if made.thing_at is not None else None
    named = pointed(named) if named is not None else None
    if named is not None and never(named, wanted, scene.book):
        made.thing_at = None
    if named is not None and not ((measurable(named) and not size) or meant(named)):
        made.thing_at = None
    if made.thing_at is None:
        key = "nearest", made.main, wanted
        made.thing_at = scene.once(key, lambda: nearest_measured(scene, made.main, meant))
    if made.thing_at is None and not size:
        made.thing_at = joined_after(scene, made.main)
    if made.thing_at is not None and (said_of := scene.tokens[made.thing_at].thing) is not None:
        made.thing = pointed(said_of)


def _between(made: Draft, wanted: tuple[str, ...], scene: Scene) -> str:
    """The two ends between which volts or ohms were taken."""
    return span_of(scene, made.main) if ELECTRICAL & set(wanted[:1]) else ""


ELECTRICAL = frozenset({"voltage", "resistance"})
SURE = 0.5
"Confidence below which it is not sure what the number measures."
REVOLUTIONS = 100
"From so many turns on they are those of a minute: `fourteen forty revolutions` on a plate."
SAID_BEFORE = 12
"Tokens before a bare number in which an amount tells what it is."


def _wanted(made: Draft, scene: Scene) -> tuple[str, ...]:
    """The quantities that the number may be, from its unit or from the running test."""
    if scene.tokens[made.main].thread is not None:
        return ("thread",)
    amount = scene.tokens[made.main].amount
    if amount and poured(amount, made, scene):
        return ("volume",)
    if amount and of_mercury(made.main, scene):
        return ("pressure",)
    if amount:
        return amount.quantities
    for token in reversed(scene.tokens[max(0, made.main - SAID_BEFORE) : made.main]):
        if token.amount is not None and len(token.amount.quantities) < 3:
            return token.amount.quantities
    topic = scene.topic_before(made.main) or (scene.context.topic.quantity if scene.context.topic else "")
    return (topic,) if topic else ()


def _amount(
    made: Draft, token: Token, scene: Scene, told: str
) -> tuple[str, float | tuple[float, float] | str, str] | None:
    """(quantity, value, unit) of a thread, an amount or a bare number."""
    if token.thread is not None:
        return "thread", token.thread.designation, ""
    if token.amount is not None:
        amount = token.amount
        if poured(amount, made, scene):
            return "volume", spread_of(amount), "ml"
        if of_mercury(made.main, scene):
            return "pressure", spread_of(amount), "inHg"
        quantity = told or quantity_of(amount.quantities, made, scene)
        if quantity == "turns" and amount.low >= REVOLUTIONS:
            return "speed", spread_of(amount), "rpm"
        days = DAYS.get(amount.unit, 1)
        value = amount.low * days if amount.low == amount.high else (amount.low * days, amount.high * days)
        if quantity in ("duration", "age") and not of_work(made, scene):
            made.confidence = 0.45
        if len(amount.quantities) > 2 and quantity and not support(quantity, made, scene):
            made.confidence = 0.45  # pounds of money, as likely as not
        if quantity == "leakage" and not support(quantity, made, scene):
            made.confidence = 0.45  # a share of anything
        unit = degrees(amount.low, scene) if (quantity, amount.unit) == ("temperature", "deg") else amount.unit
        unit = "lb" if (quantity, unit) == ("mass", "psi") else unit  # pounds on a spring balance
        return (quantity, value, "day" if amount.unit in DAYS else unit) if quantity else None
    if token.kind == "ratio" and token.value is not None:
        return ("ratio", token.value, "") if _is_mix(made, scene) else None
    if token.value is None:
        return None
    return bare_reading(token, made, scene, told)
