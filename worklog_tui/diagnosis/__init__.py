"""From the logbook to systems, causes, the next step and its cautions."""

from worklog_tui.diagnosis.advise import advise
from worklog_tui.diagnosis.safety import Safety

__all__ = ["Safety", "advise"]
