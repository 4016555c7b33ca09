"""Numbers that measure nothing: the size of a tool, the range of a meter, a year, a price, a count, the weather."""

from __future__ import annotations

from worklog_tui.extract.measured.by_times import counted_by_times
from worklog_tui.extract.measured.counted import counted_aloud, counts_things
from worklog_tui.extract.measured.of_tools import after_it, in_the_hand, of_a_meter, of_a_tool, where_taken
from worklog_tui.extract.measured.valves import numbered
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token

WEATHER = frozenset("here out outside overnight tonight today forecast".split())
INDICATORS = frozenset("gauge gun thermometer thermocouple reads read reading probe temp temperature stat".split())
FIRST_YEAR, LAST_YEAR = 1850, 2040
YEAR_WORDS = frozenset("in since year built made back from circa".split())


def measures_nothing(scene: Scene, i: int) -> bool:
    """Whether the number or amount at token i is one that no log of readings holds."""
    token = scene.tokens[i]
    if token.thread is not None:
        return in_the_hand(scene, i)
    return (
        _is_grade(scene, i) or of_a_tool(scene, i) or of_a_meter(scene, i) or _named_by(scene, i)
        or counts_things(scene, i) or _is_code(scene, i) or _is_year(token, scene, i)
        or _of_the_weather(scene, i) or _refused(scene, i) or _to_the_inch(scene, i) or _of_the_shop(scene, i)
        or _turned_by(scene, i) or _another_day(scene, i)
        or _a_size(scene, i) or _taken_off(scene, i) or _is_each(scene, i) or _is_money(scene, i)
        or counted_aloud(scene, i) or _share_left(scene, i) or _of_gauge(scene, i) or where_taken(scene, i)
        or bool(numbered(scene, i)) or counted_by_times(scene, i) or _wound_round(scene, i)
    )  # fmt: skip


def _wound_round(scene: Scene, i: int) -> bool:
    """`Three turns of new graphite packing`, `2 turns ptfe`: how much of it was wound round, and no screw turned."""
    amount, after = scene.tokens[i].amount, after_it(scene, i, 5)
    if amount is None or amount.unit != "turn":
        return False
    ends = next((k for k, t in enumerate(after) if t.kind in ("comma", "stop", "amount", "number")), len(after))
    return any(scene.book.lists["wound_round"] & set(t.low.split()) for t in after[:ends])


def _share_left(scene: Scene, i: int) -> bool:
    """`Nine-tenths gone`: a share of something, no thing of a tenth of a thou."""
    amount, after = scene.tokens[i].amount, after_it(scene, i)
    tenth = amount is not None and amount.said.startswith("tenth")
    return tenth and bool(after) and after[0].low in scene.book.lists["shares"]


def _of_gauge(scene: Scene, i: int) -> bool:
    """`The 7 gauge ones`, `18 gauge wire`: what needles, wire and sheet are bought by."""
    after = after_it(scene, i)
    return scene.tokens[i].amount is None and bool(after) and after[0].low.split()[0] == "gauge"


def _is_each(scene: Scene, i: int) -> bool:
    """`A pint an hour`, `a tankful a day`: for how long a measure goes is no time that anything took."""
    token, before = scene.tokens[i], scene.tokens[max(0, i - 2) : i]
    return (
        token.amount is not None and token.low in ("a", "an", "each", "every") and len(before) == 2
        and before[0].sense("article") is not None and before[1].low in scene.book.lists["sold_by"]
    )  # fmt: skip


def _is_money(scene: Scene, i: int) -> bool:
    """`ring set £46`: the sign of a currency stands right before it."""
    start = scene.tokens[i].start
    return scene.text[max(0, start - 1) : start] in CURRENCIES or scene.text[start : start + 1] in CURRENCIES


CURRENCIES = frozenset("£$€")


def _is_grade(scene: Scene, i: int) -> bool:
    """`two litres of thirty`, `a pint of forty`: the grade of an oil."""
    if i < 2 or scene.tokens[i].amount is not None or scene.tokens[i - 1].low not in ("of", "straight"):
        return False
    amount = scene.tokens[i - 2].amount or (scene.tokens[i - 3].amount if i > 2 else None)
    return amount is not None and "volume" in amount.quantities


def _named_by(scene: Scene, i: int) -> bool:
    """`a man of 91`, `a sheet of 600`, `page 40`."""
    before = scene.tokens[max(0, i - 2) : i]
    if scene.tokens[i].value is None or not before:
        return False
    if before[-1].low == "of" and len(before) > 1:
        return bool(scene.book.lists["named_by_number"] & set(before[0].low.split()[-1:]))
    return before[-1].low in ("age", "aged", "page", "chapter", "episode", "grit")


def _is_code(scene: Scene, i: int) -> bool:
    """`58-2291`: figures joined to figures by a hyphen are a code, unless they are a range."""
    token = scene.tokens[i]
    if token.value is None or token.high is not None:
        return False
    tail = scene.text[token.end : token.end + 2]
    head = scene.text[max(0, token.start - 2) : token.start]
    return (len(tail) == 2 and tail[0] == "-" and tail[1].isdigit()) or (
        len(head) == 2
        and head[1] == "-"
        and (head[0].isdigit() or (head[0].isalpha() and scene.text[token.start].isdigit()))
    )


def _is_year(token: Token, scene: Scene, i: int) -> bool:
    """A whole number that is a year: `nineteen fifty three`, `in 1962`; near a word of speed it is none."""
    if token.amount is not None or token.value is None or not FIRST_YEAR <= token.value <= LAST_YEAR:
        return False
    said = scene.said(i, i).lower()
    if said.startswith(("nineteen ", "eighteen ")) and len(said.split()) >= 3:
        return not _speed_near(scene, i)
    before = scene.tokens[i - 1].low if i else ""
    return before in YEAR_WORDS or (said.startswith("two thousand") and not _speed_near(scene, i))


def _speed_near(scene: Scene, i: int) -> bool:
    topic = scene.context.topic
    if topic is not None and topic.quantity in ("speed", "pressure") and topic.age <= 3:
        return True
    return any("speed" in (t.thing.quantities if t.thing is not None else ()) or t.sense("reads") for t in
               scene.tokens[scene.clause(i).start : i])  # fmt: skip


def _turned_by(scene: Scene, i: int) -> bool:
    """`I turned the bush round ninety degrees`: how far round, no heat."""
    amount = scene.tokens[i].amount
    if amount is None or "temperature" not in amount.quantities or amount.unit != "deg":
        return False
    after = after_it(scene, i, 3)
    slack = after[:1] and after[0].low == "of" and any(not SLACK.isdisjoint(t.low.split()) for t in after[1:])
    return bool(slack) or any(t.low.rpartition(" ")[2] in ROUND for t in scene.tokens[max(0, i - 3) : i])


SLACK = frozenset("slop play backlash slack lash movement lost".split())


def _another_day(scene: Scene, i: int) -> bool:
    """`That can wait for another day`: put off, by no time."""
    amount = scene.tokens[i].amount
    if amount is None or amount.unit != "day" or not scene.tokens[i].low.startswith("another"):
        return False
    before = {word for t in scene.tokens[max(0, i - 6) : i] for word in t.low.split()}
    return "for" in before and bool(before & PUT_OFF)


PUT_OFF = frozenset("wait job that thats one leave save video".split())
ROUND = frozenset("round turned turn rotated rotate twisted swung around".split())


def _of_the_weather(scene: Scene, i: int) -> bool:
    """`It's thirty degrees out there`, `gets to thirty below here`: nothing of the machine."""
    amount = scene.tokens[i].amount
    if amount is None or "temperature" not in amount.quantities:
        return False
    after = [t.low for t in after_it(scene, i, 2)]
    if WEATHER & set(after[:1]) or (after[:1] == ["in"] and after[1:] in (["here"], ["there"])):
        return True
    span = scene.clause(i)
    if any(scene.tokens[k].thing is not None or scene.tokens[k].sense("did", "doing") for k in span):
        return False
    words = {w for t in scene.tokens for w in t.low.split()}
    topic = scene.context.topic
    tested = (topic is not None and topic.quantity in ("temperature", "angle")) or scene.topic_before(i) == "angle"
    if after[:1] and after[0] in ("after", "before", "late", "early", "btdc", "atdc", "apart"):
        return False
    return not tested and bool(words & {"its", "it's", "it"}) and not words & INDICATORS


def _refused(scene: Scene, i: int) -> bool:
    """`the four won't go`, `five doesn't`: the feeler that is too thick tells no gap."""
    after = after_it(scene, i)
    return bool(after) and after[0].low in REFUSALS


REFUSALS = frozenset(
    ("won't|wont|doesn't|doesnt|didn't|didnt|will not|does not|won't go|doesn't go|wouldn't|wouldnt").split("|")
)


def _to_the_inch(scene: Scene, i: int) -> bool:
    """`twenty-six to the inch` is the pitch of a thread."""
    after = [t.low for t in after_it(scene, i, 4)]
    return "to the inch" in " ".join(after) or "per inch" in " ".join(after[:2]) or "tpi" in after[:1]


def _a_size(scene: Scene, i: int) -> bool:
    """`the main jet's a ninety eight`, `I've got a one oh five`: the number of a jet, a belt, a spare."""
    token = scene.tokens[i]
    if token.value is None or not i:
        return False
    span = scene.clause(i)
    named = [t for k in scene.things(range(span.start, i)) if (t := scene.tokens[k].thing) is not None]
    if named and "jet" in named[-1].name:
        return True
    return scene.tokens[i - 1].low in ("a", "an") and token.value >= 20 and not any(t.quantities for t in named)


def _taken_off(scene: Scene, i: int) -> bool:
    """`took .004 out of the right pack`, `cut two inch off`: what was taken away measures nothing that is left."""
    after = after_it(scene, i)
    if not after or after[0].low not in OFF:
        return False
    near = scene.tokens[max(0, i - 3) : i]
    return (
        any(t.low in ("took", "take", "taken", "another", "cut", "trimmed") or TAKEN & set(t.low.split()) for t in near)
    )  # fmt: skip


OFF = frozenset({"out", "off", "out of", "off of"})
TAKEN = frozenset({"took", "cut"})


def _of_the_shop(scene: Scene, i: int) -> bool:
    """`the shop shuts at twelve`."""
    if SHUTS.isdisjoint(scene.words()):
        return False
    near = {w for t in scene.tokens[max(0, i - 6) : i] for w in t.low.split()}
    return bool(near & SHUTS) and bool(near & {"shop", "shops", "store", "dealer"})


SHUTS = frozenset({"shuts", "closes", "shut", "open", "opens"})
