"""From facts to the log: timeline, open items, readings over time, recap, answers. Pure functions of a history."""
