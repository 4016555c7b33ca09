"""What the person announced near the end: the next job in his own words, and the test that tells two causes apart."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.job_words import JobWords, object_of, with_thing
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.sayings import Saying
from worklog_tui.diagnosis.tail_talk import Sentence, end_of
from worklog_tui.diagnosis.worded import own
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Finding, Step, Work

LAST = 4
"A bare promise (I'll ...) counts within so many last notes; before that it is mostly done at once (judgement)."
SHARE = 2
"The last half of the session is listened to: a plan with a time to it stands until it is carried out."
OFTEN = 2
"A word said in so many notes is one of the machine's, known or not (judgement)."
TRIES = ("run", "try", "test", "prove", "retest", "rerun")
"Jobs that need name no part."
SOON = 8
"What is said to come first counts within so many last notes: before that it was mostly done (judgement)."
THE_DEED = r"(?=[a-z]+ (?:the|it|those)\b)"
LIKE = 0.5
"The place of a promise without a time among what was announced with one: behind it."


def announced(log: Log, wording: Wording, safety: Safety, named: frozenset[str]) -> list[Candidate]:
    """A step for each job that was announced and not heard done since, in the order in which they would be done.

    `named`: words of the parts that the fault files know.
    """
    plans, known, found = Plans(wording), known_words(log) | named, []
    for sentence in end_of(log, SHARE):
        for n, (job, tier) in enumerate(plans.jobs_of(sentence)):
            step = _named(job, sentence, log)
            if not step or not _is_ours(step, known, wording) or safety.never(step) or _done(log, step, sentence):
                continue
            place = log.history.place(sentence.note.uid)
            why = f"You said yourself that this comes next ({log.said(place)})."
            minutes, thing, aim = wording.minutes(step), own(step).thing, wording.aim(step)
            made = Step(step, why, minutes, safety.cautions(step), (), (), "own plan", "", thing, aim)
            order = sentence.order + n / 1000 + (LIKE if tier is Tier.LISTED else 0)
            found.append(Candidate(tier, order, made, "", " ".join(object_of(step))))
    return found


class Plans:
    """Finds the jobs that a sentence announces; the wordings stand in grammars/diagnosis/talk.toml."""

    def __init__(self, wording: Wording) -> None:
        talk = wording.talk
        self._cut, self._gets = JobWords(wording.lists), frozenset(wording.lists.get("gets", ()))
        self._test, self._when, self._first = talk.pattern("test"), talk.pattern("when"), talk.pattern("at_once")
        self._after, self._off, self._noun = talk.pattern("after"), talk.pattern("put_off"), talk.pattern("next_thing")
        self._announces = (talk.pattern("announces"), talk.pattern("day_we", THE_DEED))
        self._that_is_it = talk.pattern("that_is_it")
        self._promises = talk.pattern("will", r"(?!(?:not|never)\b|n['’]t\b)")

    def jobs_of(self, sentence: Sentence) -> Iterator[tuple[str, Tier]]:
        """Each job with its tier: a plan for what comes next or is the test, else one that is left to do."""
        text = sentence.words
        if sentence.asks:
            return
        tests = self._test.search(text)
        if tests and not self._off.search(text[: tests.start()]):
            jobs = list(self._cut.jobs(text[tests.end() :], any_verb=True))
            if jobs:
                yield ", ".join(jobs), Tier.PLAN  # the jobs of one test are one step
                return
        for pattern in (*self._announces, self._promises):
            promised = self._promised(sentence, pattern)
            if promised is not None:
                yield from promised
                return
        if (ends := self._that_is_it.search(text)) and not self._off.search(text[: ends.start()]):
            yield from ((job, Tier.PLAN) for job in self._cut.jobs(text[: ends.start()], any_verb=False))
        if (noun := self._noun.match(text)) and not self._off.search(text):
            yield f"do the {text[noun.end() :].split(',')[0].strip()}", Tier.PLAN

    def _promised(self, sentence: Sentence, pattern: Saying) -> list[tuple[str, Tier]] | None:
        text = sentence.words
        said = pattern.search(text)
        if said is None or self._off.search(text[: said.end()]):
            return None
        soon = self._first.search(text, said.end()) is not None and sentence.from_end < SOON
        timed = soon or pattern is not self._promises or self._when.search(text) is not None
        jobs = list(self._cut.jobs(text[said.end() :], any_verb=True))
        later = bool(jobs) and jobs[0].split()[0] in self._gets
        if not jobs or (not timed and not later and sentence.from_end >= LAST):
            return None
        first = (timed or later) and not self._after.search(text[: said.start()])
        return [(job, Tier.PLAN if first else Tier.LISTED) for job in jobs]


def _is_ours(step: str, known: frozenset[str], wording: Wording) -> bool:
    """Whether a job is one on this machine: on something that the log speaks of, or a try of the whole."""
    told = set(object_of(step)) - set(wording.lists.get("no_things", ()))
    return step.split()[0].lower() in TRIES or not known.isdisjoint(told)


def _named(job: str, sentence: Sentence, log: Log) -> str:
    """The job with the thing that it, them or that stand for; empty where nothing tells."""
    if object_of(job):
        return job
    last = _thing_before(log, sentence)
    return with_thing(job, last) if last else ""


def _thing_before(log: Log, sentence: Sentence) -> str:
    """The last thing spoken of before, in this note or the one before it."""
    here = [e for e in log.events if sentence.order - 1 <= e.when <= sentence.order + 0.003]
    for event in reversed(here):
        fact: object = event.fact
        if isinstance(fact, (Finding, Work)) and fact.name and tokens(fact.part):
            return fact.part
    return ""


def known_words(log: Log) -> frozenset[str]:
    """The words that belong to this machine: what facts are about, and what was said in several notes."""
    counted: Counter[str] = Counter()
    for note in log.ending_notes:
        counted.update(set(tokens(note.words)))
    often = {w for w, n in counted.items() if n >= OFTEN and len(w) > 3}
    return frozenset(often | {w for e in log.events for w in (*tokens(e.fact.about), *tokens(e.name))})


def _done(log: Log, step: str, sentence: Sentence) -> bool:
    """Whether work on the same thing was told in a later note."""
    thing = object_of(step)[-1:]
    return any(_works_on(e, thing) for e in log.works if e.when > int(sentence.order) + 1)


def _works_on(event: Event, thing: tuple[str, ...]) -> bool:
    return bool(thing) and isinstance(event.fact, Work) and thing[0] in tokens(event.fact.part)[-1:]
