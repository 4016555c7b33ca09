"""From the logbook to systems, causes, the next step and its cautions."""

from worklog_tui.diagnosis.advise import advise

__all__ = ["advise"]
