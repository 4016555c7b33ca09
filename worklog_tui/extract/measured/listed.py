"""Lists by number: under a running test, in `two, one-twelve` and `1:90 2:95` the first number says which one."""

from __future__ import annotations

from worklog_tui.extract.context import Context
from worklog_tui.extract.measured.sizes import AXES
from worklog_tui.extract.tokens import ARROW, WHICH, Token

MOST = 12
OF_SEVERAL = frozenset("compression gap pressure resistance density temperature leakage voltage".split())


def mark_listed(tokens: list[Token], context: Context, cylinders: int) -> None:
    """Turns such numbers into markers of which one, in place."""
    if not [token for token in tokens if token.kind == "number" or token.low == "one"]:
        return
    _mark_told_on(tokens, cylinders or MOST)
    topic = context.topic
    running = bool(topic and topic.quantity in OF_SEVERAL)
    _join_numbers(tokens, cylinders or MOST, running)
    for i in [i for i, t in enumerate(tokens) if t.kind == "number" or (running and t.low == "one")]:
        token = tokens[i]
        if running and token.low == "one" and token.kind in ("term", "word") and _opens(tokens, i):
            token.kind, token.value = "number", 1.0  # `one, one-fourteen`
            if not _value_follows(tokens, i):
                token.kind, token.value = "term", None
        if (
            token.kind != "number"
            or token.value is None
            or token.value != int(token.value)
            or not 1 <= token.value <= MOST
        ):
            continue
        if not running and not _announced(tokens[:i]):
            continue
        if (token.low.isdigit() and tokens[i].end - tokens[i].start > 2) or not _opens(tokens, i):
            continue
        if _value_follows(tokens, i) or (token.value <= (cylinders or MOST) and _state_follows(tokens, i)):
            token.kind, token.classes, token.which = "which", WHICH, f"{token.value:g}"


def _mark_told_on(tokens: list[Token], most: int) -> None:
    """`Fourteen thou on one, nine on two`: behind `on` stands which one, where two or more figures are told so."""
    told = [k + 1 for k in range(1, len(tokens) - 1) if tokens[k].low == "on" and _is_told_on(tokens, k, most)]
    if len(told) > 1:
        for k in told:
            token = tokens[k]
            number = 1.0 if token.value is None else token.value
            token.kind, token.classes, token.which = "mark", frozenset(), f"{number:g}"  # of the figure before it


def _is_told_on(tokens: list[Token], k: int, most: int) -> bool:
    """Whether a figure stands before `on` at token k, and the number of one of several behind it, which ends there."""
    token, after = tokens[k + 1], tokens[k + 2] if k + 2 < len(tokens) else None
    value = 1.0 if token.low == "one" and token.value is None else token.value if token.kind == "number" else None
    ends = after is None or after.kind in ("comma", "stop") or after.low in ("and", "but", "so")
    figure = tokens[k - 1].kind in ("number", "amount")
    return figure and ends and value is not None and value == int(value) and 1 <= value <= most


def _join_numbers(tokens: list[Token], most: int, running: bool) -> None:
    """Makes one marker of several numbers with a state behind the last of them, in place: `plugs 1 3 4 tan`."""
    for i in [i for i, t in enumerate(tokens) if t.kind == "number" or t.low == "one"]:
        if i >= len(tokens) or not (_opens(tokens, i) and (running or _announced(tokens[:i]))):
            continue
        which, end = _numbers_from(tokens, i, most)
        if len(which) > 1 and _state_follows(tokens, end - 1):
            first = tokens[i]
            first.kind, first.classes, first.which = "which", WHICH, " and ".join(which)
            first.end = tokens[end - 1].end
            del tokens[i + 1 : end]


def _numbers_from(tokens: list[Token], i: int, most: int) -> tuple[list[str], int]:
    """The small whole numbers that rise from token i on, each in words, and where they end."""
    which: list[str] = []
    value, k = 0.0, i
    while k < len(tokens):
        token = tokens[k]
        said = 1.0 if token.low == "one" and token.value is None else token.value if token.kind == "number" else None
        if said is not None and value < said <= most and said == int(said):
            value, end = said, k + 1
            which.append(f"{value:g}")
        elif not which or not (token.kind == "comma" or token.low == "and"):
            break
        k += 1
    return which, end if which else i


def _announced(before: list[Token]) -> bool:
    """Whether something that there are several of was named before in this sentence."""
    return any((s := t.sense("part")) is not None and (bool(s.per) or s.kind == "quality") for t in before)


def _opens(tokens: list[Token], i: int) -> bool:
    """Whether the number stands at the head of its clause or of the next entry of a list."""
    if i == 0 or tokens[i - 1].kind in ("stop", "comma"):
        return True
    if i + 1 < len(tokens) and tokens[i + 1].low == ":":
        return True
    if i + 1 < len(tokens) and tokens[i + 1].low == ARROW:
        return False  # `gearcase 10 -> 4` is from ten to four
    before = tokens[i - 1]
    return (
        before.low in ("and", "then", "or", "dry", "wet", "on")
        or before.kind in ("amount", "mark")
        or bool(before.sense("part"))
    )


def _value_follows(tokens: list[Token], i: int) -> bool:
    for k in range(i + 1, min(i + 4, len(tokens))):
        if tokens[k].kind in ("number", "amount"):
            beside = k == i + 1 and tokens[i].low.isalpha() and tokens[k].low[:1].isdigit()
            return (k > i + 1 or beside) and tokens[k].value != tokens[i].value + 1  # type: ignore[operator]  # not counting aloud
        if tokens[k].kind != "comma" and not tokens[k].sense("copula", "about", "how", "reads"):
            return False
    return False


def _state_follows(tokens: list[Token], i: int) -> bool:
    if i + 1 >= len(tokens):
        return False
    after = tokens[i + 1]
    if after.low in AXES:
        return False  # `thirty outside, nine wide`
    return bool(after.sense("bad", "good")) or bool(
        after.sense("copula") and i + 2 < len(tokens) and tokens[i + 2].sense("bad", "good")
    )
