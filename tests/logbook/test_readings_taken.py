"""Readings are laid side by side as they were taken: alike taken ones are compared, and what a work altered is seen."""

from __future__ import annotations

from tests.logbook.told import Told, did, read
from worklog_tui.logbook.compressions import before_and_after, compression_tests
from worklog_tui.logbook.odd import odd
from worklog_tui.logbook.readings import readings


def test_a_figure_after_a_work_is_laid_beside_the_one_before_it() -> None:
    told = Told().say("", read("resistance", 3.4, "ohm", "earth strap", condition="hot"))
    told.say("", did("clean", "earth strap"))
    told.say("", read("resistance", 0.2, "ohm", "earth strap", condition="hot, after cleaning"))
    (pair,) = before_and_after(told.history())
    assert (pair.before.value, pair.after.value) == (3.4, 0.2)


def test_otherwise_taken_figures_are_not_laid_beside_one_another() -> None:
    told = Told().say("", read("pressure", 50, "psi", "oil pressure", condition="cold, running"))
    told.say("", did("adjust", "oil pressure relief valve"))
    told.say("", read("pressure", 20, "psi", "oil pressure", condition="hot, running"))
    history = told.history()
    assert before_and_after(history) == ()
    assert odd(history) == ()


def test_the_least_that_the_book_allows_is_no_middle_however_else_it_is_taken() -> None:
    told = Told().say("", read("pressure", 50, "psi", "oil pressure", condition="hot"))
    told.say("", read("pressure", 35, "psi", "oil pressure", "specified", condition="minimum, hot"))
    assert readings(told.history())[0].last.verdict == "good"


def test_a_test_with_the_throttle_open_may_be_dry_or_wet() -> None:
    told = Told().say("", read("compression", 70, "psi", "cylinder 1", condition="throttle open, dry"))
    told.say("", read("compression", 95, "psi", "cylinder 1", condition="throttle open, wet"))
    ((one,),) = [test.cylinders for test in compression_tests(told.history())]
    assert (one.dry, one.wet) == (70, 95)
